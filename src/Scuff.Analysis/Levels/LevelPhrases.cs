using System.Globalization;
using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Levels;

/// <summary>Levels and their reasons in English.</summary>
public static class LevelPhrases
{
    /// <summary>The level's name.</summary>
    public static string Name(Level level) => level switch
    {
        Level.AbsoluteBeginner => "absolute beginner",
        Level.Beginner => "beginner",
        Level.Improver => "improver",
        Level.Intermediate => "intermediate",
        Level.Advanced => "advanced",
        _ => throw new ArgumentOutOfRangeException(nameof(level)),
    };

    /// <summary>The level of a name, or null when there is none.</summary>
    public static Level? Find(string name) => name switch
    {
        "absolute beginner" => Level.AbsoluteBeginner,
        "beginner" => Level.Beginner,
        "improver" => Level.Improver,
        "intermediate" => Level.Intermediate,
        "advanced" => Level.Advanced,
        _ => null,
    };

    /// <summary><c>a, b and c</c>.</summary>
    public static string Join(IReadOnlyList<string> words) => words.Count switch
    {
        0 => "",
        1 => words[0],
        _ => string.Join(", ", words.Take(words.Count - 1)) + " and " + words[^1],
    };

    internal static string Reason(LevelReason reason)
    {
        string below = Name(reason.Level - 1);
        string most = reason.Most.Sign == 0 ? "none" : reason.Measure switch
        {
            LevelMeasure.TurnSize or LevelMeasure.TurnInOne or LevelMeasure.TurnInTwo or LevelMeasure.TurnInEight or LevelMeasure.TurnOnOneFoot
                => Turn(reason.Most),
            _ => Number(reason.Most),
        };
        return $"{Value(reason)}; {below} allows {most}";
    }

    internal static string Remedy(LevelReason reason)
    {
        string most = Number(reason.Most);
        return reason.Measure switch
        {
            LevelMeasure.Counts => $"shorten it to {most} counts",
            LevelMeasure.NewCounts => $"repeat more, so that at most {most} counts are new",
            LevelMeasure.Turns => "keep " + (reason.Most == 1 ? "one turning figure" : most + " turning figures"),
            LevelMeasure.TurnSize => $"turn no more than {Turn(reason.Most)} in one figure",
            LevelMeasure.TurnInOne => $"turn no more than {Turn(reason.Most)} on a count",
            LevelMeasure.TurnInTwo => $"turn no more than {Turn(reason.Most)} in two counts",
            LevelMeasure.TurnInEight => $"turn no more than {Turn(reason.Most)} in eight counts",
            LevelMeasure.TurnOnOneFoot => $"turn no more than {Turn(reason.Most)} on one foot",
            LevelMeasure.OffBeats => "step on whole counts only",
            LevelMeasure.QuarterBeats => "step on whole and half counts only",
            LevelMeasure.Tags => reason.Most.Sign > 0 ? $"dance tags {most} times at most" : reason.Value == 1 ? "drop the tag" : "drop the tags",
            LevelMeasure.Restarts => reason.Value == 1 ? "drop the restart" : "drop the restarts",
            LevelMeasure.EarlyRestarts => "put no restart in or after the first section",
            LevelMeasure.Parts => reason.Most == 1 ? "make it one part" : $"make it {most} parts",
            LevelMeasure.Tempo => $"find a track of at most {most} counts a minute",
            LevelMeasure.StepRate => "take fewer steps, or a slower track",
            LevelMeasure.Jumps => reason.Most.Sign > 0 ? $"keep {most} jumps" : "step instead of jumping",
            LevelMeasure.HigherFigures => $"keep {most} of its harder figures",
            _ => throw new ArgumentOutOfRangeException(nameof(reason)),
        };
    }

    private static string Value(LevelReason reason)
    {
        string value = Number(reason.Value);
        return reason.Measure switch
        {
            LevelMeasure.Counts => value + " counts",
            LevelMeasure.NewCounts => value + " counts that are not repeated",
            LevelMeasure.Turns => value + " turning figures",
            LevelMeasure.TurnSize => Turn(reason.Value) + " in one figure",
            LevelMeasure.TurnInOne => Turn(reason.Value) + " on one count",
            LevelMeasure.TurnInTwo => Turn(reason.Value) + " in two counts",
            LevelMeasure.TurnInEight => Turn(reason.Value) + " in eight counts",
            LevelMeasure.TurnOnOneFoot => Turn(reason.Value) + " on one foot",
            LevelMeasure.OffBeats => Times(reason.Value, "step") + " between counts",
            LevelMeasure.QuarterBeats => Times(reason.Value, "step") + " on a quarter of a count",
            LevelMeasure.Tags => "a tag " + Often(reason.Value),
            LevelMeasure.Restarts => "a restart " + Often(reason.Value),
            LevelMeasure.EarlyRestarts => "a restart in or after the first section " + Often(reason.Value),
            LevelMeasure.Parts => Times(reason.Value, "part"),
            LevelMeasure.Tempo => value + " counts a minute",
            LevelMeasure.StepRate => value + " weight changes a second over six counts",
            LevelMeasure.Jumps => Times(reason.Value, "jump"),
            LevelMeasure.HigherFigures => value + " figures that are met later (" + reason.Figures + ")",
            _ => throw new ArgumentOutOfRangeException(nameof(reason)),
        };
    }

    private static string Times(Ratio number, string noun) => Number(number) + " " + noun + (number == 1 ? "" : "s");

    private static string Often(Ratio number) => number == 1 ? "once" : number == 2 ? "twice" : Number(number) + " times";

    // One decimal is as exact as a stated tempo.
    private static string Number(Ratio number)
    {
        int tenths = ((number * 10) + new Ratio(1, 2)).Floor;
        return tenths % 10 == 0
            ? (tenths / 10).ToString(CultureInfo.InvariantCulture)
            : string.Create(CultureInfo.InvariantCulture, $"{tenths / 10}.{tenths % 10}");
    }

    private static string Turn(Ratio eighths)
    {
        Ratio turns = eighths / 8;
        Ratio rest = turns - turns.Floor;
        return (turns.Floor, rest.Sign) switch
        {
            (1, 0) => "a full turn",
            (var whole, 0) => whole.ToString(CultureInfo.InvariantCulture) + " full turns",
            (0, _) => rest + " of a turn",
            (var whole, _) => whole.ToString(CultureInfo.InvariantCulture) + " " + rest + " turns",
        };
    }
}
