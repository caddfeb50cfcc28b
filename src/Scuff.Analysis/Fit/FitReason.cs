namespace Scuff.Analysis.Fit;

/// <summary>What a plan pays for; see <see cref="FitPrices"/>.</summary>
public enum FitReason
{
    /// <summary>The dance begins elsewhere than where it most likely would.</summary>
    StartsElsewhere,

    /// <summary>A wall begins where little or nothing of the music does.</summary>
    WallOffPhrase,

    /// <summary>Something of the music begins inside a section of the dance.</summary>
    PhraseInside,

    /// <summary>Something of the music begins inside a tag or hold.</summary>
    PhraseInTag,

    /// <summary>A restart, with the price of its place.</summary>
    Restart,

    /// <summary>A tag, bridge or quotation, with the price of its place and length.</summary>
    Tag,

    /// <summary>The dancers stand still, with the price of place and length.</summary>
    Hold,

    /// <summary>A kind of interruption that was not there before.</summary>
    NewKind,

    /// <summary>The music ends inside a section of the dance.</summary>
    EndsInside,
}
