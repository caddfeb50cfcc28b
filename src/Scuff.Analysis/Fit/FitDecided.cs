namespace Scuff.Analysis.Fit;

/// <summary>What was decided of a count of the music.</summary>
internal enum FitDecided
{
    /// <summary>Nothing: anything may happen.</summary>
    Free,

    /// <summary>A part begins on it.</summary>
    Begins,

    /// <summary>Extra counts begin on it.</summary>
    Extra,

    /// <summary>Both at once, which cannot be.</summary>
    Nothing,
}
