namespace Scuff.Analysis.Planning;

/// <summary>What she has decided herself; the planner keeps to it exactly. Equal by value.</summary>
public abstract record ProgrammePin
{
    private ProgrammePin()
    {
    }

    /// <summary>A dance at one place. The closing dance of a programme is pinned by <see cref="Closing"/>.</summary>
    /// <param name="DanceId">The dance.</param>
    /// <param name="Stretch">Index of the stretch, from 0.</param>
    /// <param name="Place">Index of the place within it, from 0.</param>
    public sealed record At(string DanceId, int Stretch, int Place) : ProgrammePin;

    /// <summary>A dance somewhere within a stretch.</summary>
    /// <param name="DanceId">The dance.</param>
    /// <param name="Stretch">Index of the stretch, from 0.</param>
    public sealed record Within(string DanceId, int Stretch) : ProgrammePin;

    /// <summary>A dance that must be danced, wherever.</summary>
    /// <param name="DanceId">The dance.</param>
    public sealed record Somewhere(string DanceId) : ProgrammePin;

    /// <summary>A dance that must not be danced.</summary>
    /// <param name="DanceId">The dance.</param>
    public sealed record Never(string DanceId) : ProgrammePin;

    /// <summary>The dance that closes the programme.</summary>
    /// <param name="DanceId">The dance.</param>
    public sealed record Closing(string DanceId) : ProgrammePin;

    /// <summary>One dance before another, if both are danced.</summary>
    /// <param name="DanceId">The earlier.</param>
    /// <param name="OtherId">The later.</param>
    public sealed record Before(string DanceId, string OtherId) : ProgrammePin;

    /// <summary>Two dances at once to one song, one each side of the floor, wherever.</summary>
    /// <param name="DanceId">One dance.</param>
    /// <param name="OtherId">The other; both must have the song.</param>
    public sealed record Split(string DanceId, string OtherId) : ProgrammePin;

    /// <summary>The song that a dance is danced to.</summary>
    /// <param name="DanceId">The dance.</param>
    /// <param name="SongKey">Key of one of its songs.</param>
    public sealed record Song(string DanceId, string SongKey) : ProgrammePin;
}
