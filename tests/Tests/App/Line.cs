using Scuff.Analysis.Planning;
using Scuff.App.Programmes;

namespace Tests.App;

/// <summary>Lines of a programme for tests: four minutes each, one after the other.</summary>
internal static class Line
{
    public const int Seconds = 240;

    public static EveningItem Of(string danceId, int place, int stretch = 0, string otherId = "", int? start = null) => new()
    {
        Stretch = stretch,
        Place = place,
        Start = start ?? place * Seconds,
        Seconds = Seconds,
        DanceId = danceId,
        Title = danceId.ToUpperInvariant(),
        OtherId = otherId,
        SongKey = "song of " + danceId,
    };

    public static EveningItem Rest(int stretch, int start, int seconds) => new() { Stretch = stretch, Place = 0, Start = start, Seconds = seconds };

    public static EveningProgramme Programme(params EveningItem[] items) => new()
    {
        Stretches = [new EveningStretch { Kind = StretchKind.Dancing, Start = 0, Seconds = 3600 }],
        Items = items,
    };
}
