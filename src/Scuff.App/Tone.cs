namespace Scuff.App;

/// <summary>What a colour on the screen stands for; words and signs always say it too.</summary>
internal enum Tone
{
    /// <summary>It is wrong.</summary>
    Bad,

    /// <summary>It is open.</summary>
    Open,

    /// <summary>It is well.</summary>
    Good,

    /// <summary>A place or a name.</summary>
    Name,

    /// <summary>Second text.</summary>
    Soft,
}
