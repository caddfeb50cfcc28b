namespace Scuff.Prose.Reading;

/// <summary>How a clause hangs on the one before it.</summary>
internal enum Link
{
    /// <summary>The line begins here, or a comma or the like stands between.</summary>
    Hard,

    /// <summary>"and", "with", "then".</summary>
    Soft,

    /// <summary>Nothing stands between.</summary>
    None,

    /// <summary>An &amp; sign.</summary>
    Amp,
}
