using Scuff.Analysis.Planning;

namespace Scuff.App.Programmes;

/// <summary>Something she has decided, as the document keeps it: a <see cref="ProgrammePin"/> in one shape.</summary>
internal sealed record EveningPin
{
    /// <summary>What is decided.</summary>
    public required EveningPinKind Kind { get; init; }

    /// <summary>The dance.</summary>
    public required string DanceId { get; init; }

    /// <summary>The other dance of <see cref="EveningPinKind.Before"/> and <see cref="EveningPinKind.Split"/>; else empty.</summary>
    public string OtherId { get; set; } = "";

    /// <summary>Index of the stretch in the whole evening, from 0, for <see cref="EveningPinKind.At"/> and <see cref="EveningPinKind.Within"/>.</summary>
    public int Stretch { get; set; }

    /// <summary>Index of the place within that stretch, from 0 and with what was danced there already, for <see cref="EveningPinKind.At"/>.</summary>
    public int Place { get; set; }

    /// <summary>Key of the song of <see cref="EveningPinKind.Song"/>; else empty.</summary>
    public string SongKey { get; set; } = "";

    /// <summary>What a planner is told.</summary>
    public ProgrammePin ToPin() => Kind switch
    {
        EveningPinKind.At => new ProgrammePin.At(DanceId, Stretch, Place),
        EveningPinKind.Within => new ProgrammePin.Within(DanceId, Stretch),
        EveningPinKind.Somewhere => new ProgrammePin.Somewhere(DanceId),
        EveningPinKind.Never => new ProgrammePin.Never(DanceId),
        EveningPinKind.Closing => new ProgrammePin.Closing(DanceId),
        EveningPinKind.Before => new ProgrammePin.Before(DanceId, OtherId),
        EveningPinKind.Split => new ProgrammePin.Split(DanceId, OtherId),
        EveningPinKind.Song => new ProgrammePin.Song(DanceId, SongKey),
        _ => throw new InvalidOperationException($"There is no pin {Kind}."),
    };
}
