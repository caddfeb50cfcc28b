namespace Scuff.App.Programmes;

/// <summary>What she may decide of a programme; each is a case of <see cref="Analysis.Planning.ProgrammePin"/>.</summary>
internal enum EveningPinKind
{
    /// <summary>At one place.</summary>
    At,

    /// <summary>Somewhere within a stretch.</summary>
    Within,

    /// <summary>Danced, wherever.</summary>
    Somewhere,

    /// <summary>Not danced.</summary>
    Never,

    /// <summary>Closes the evening.</summary>
    Closing,

    /// <summary>Before another.</summary>
    Before,

    /// <summary>At once with another, to one song.</summary>
    Split,

    /// <summary>To this song.</summary>
    Song,
}
