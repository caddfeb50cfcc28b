using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>The heading of a sheet as sentences: how a teacher would tell another what dance this is.</summary>
internal static class SheetFacts
{
    // What the sentences already say, or what is told further down; all else in the heading is printed as written.
    private static readonly string[] Told =
        ["by", "author", "choreographer", "title", "level", "counts", "walls", "rhythm", "start", "ending", "restarts", "tags", "counted", "sequence"];

    /// <summary>The name of who made it, or empty.</summary>
    public static string AuthorOf(Dance dance)
        => dance.Header.FirstOrDefault(h => h.Key is "by" or "author" or "choreographer")?.Value ?? "";

    /// <summary>Header fields that no sentence tells.</summary>
    public static IEnumerable<SheetNote> ParticularsOf(Dance dance) => dance.Header
        .Where(h => !Told.Contains(h.Key, StringComparer.OrdinalIgnoreCase) && h.Value.Length > 0)
        .Select(h => new SheetNote(h.Key, h.Value));

    /// <summary>The sentences.</summary>
    public static IEnumerable<string> Of(DanceAnalysis analysis)
    {
        Dance dance = analysis.Dance;
        yield return Kind(dance) + ": " + Size(analysis) + ".";
        if (!dance.IsPhrased && analysis.NetTurn is { } turn && Progress(turn) is { Length: > 0 } progress)
        {
            yield return progress;
        }

        yield return StartOf(analysis) switch
        {
            Weight.Left => "Start with the weight on the left foot.",
            Weight.Right => "Start with the weight on the right foot.",
            _ => "Start with the weight on both feet.",
        };
        if (dance.BeatsPerCount != 1)
        {
            yield return dance.BeatsPerCount == 2
                ? "Counted in half time: one count takes two beats of the music."
                : dance.BeatsPerCount == new Ratio(1, 2)
                    ? "Counted in double time: two counts to one beat of the music."
                    : $"One count takes {SheetWords.Amount(dance.BeatsPerCount)} beats of the music.";
        }
    }

    // Where the heading does not say it, the foot that dances count 1 does.
    private static Weight StartOf(DanceAnalysis analysis)
    {
        if (analysis.Dance.StartIsStated)
        {
            return analysis.Dance.Start;
        }

        foreach (TimedStep step in analysis.PlainTimeline.Steps)
        {
            if (step.Action.Kind == ActionKind.Unknown)
            {
                break;
            }

            if (step.Action.Traits.FootRule == FootRule.Free && step.Action.Foot.ToFoot() is { } first)
            {
                return first.Other().ToWeight();
            }
        }

        return analysis.Dance.Start;
    }

    private static string Kind(Dance dance)
    {
        string level = dance.ClaimedLevel switch
        {
            Level.AbsoluteBeginner => "absolute beginner",
            Level.Beginner => "beginner",
            Level.Improver => "improver",
            Level.Intermediate => "intermediate",
            Level.Advanced => "advanced",
            _ => dance.Header.FirstOrDefault(h => h.Key == "level")?.Value ?? "",
        };
        string kind = (dance.IsPhrased ? "phrased " : "") + (level.Length > 0 ? level + " " : "");
        string noun = dance.Rhythm.Length > 0 ? dance.Rhythm : "dance";
        string words = kind + noun;
        string article = "aeiouAEIOU".Contains(words[0], StringComparison.Ordinal) ? "An " : "A ";
        return article + words;
    }

    private static string Size(DanceAnalysis analysis)
    {
        Dance dance = analysis.Dance;
        if (dance.IsPhrased)
        {
            return SheetWords.Row([.. dance.Parts.Select(p => $"part {p.Name} {SheetWords.Counts(p.Length)}")]);
        }

        string counts = SheetWords.Counts(dance.Length);
        return analysis.Walls is { } walls ? $"{counts}, {SheetWords.Number(walls, "wall")}" : counts;
    }

    private static string Progress(Turn turn)
    {
        Ratio eighths = turn.Eighths.Modulo(8);
        if (eighths == 0)
        {
            return "";
        }

        string side = eighths > 4 ? "left" : "right";
        Ratio amount = eighths > 4 ? 8 - eighths : eighths;
        return amount == 4
            ? "Each wall starts half a turn from the last."
            : $"Each wall starts {Share(amount)} to the {side} of the last.";
    }

    private static string Share(Ratio eighths) => eighths switch
    {
        { Numerator: 1, Denominator: 1 } => "an eighth of a turn",
        { Numerator: 2, Denominator: 1 } => "a quarter turn",
        { Numerator: 3, Denominator: 1 } => "three eighths of a turn",
        _ => SheetWords.Amount(eighths / 8) + " of a turn",
    };
}
