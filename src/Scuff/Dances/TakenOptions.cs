using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>
/// A dance with the options that its text offers danced instead of what they replace: same counts, and, as far as the checks found nothing,
/// the same foot and wall after them. Options whose name says that they are harder are left.
/// </summary>
public static class TakenOptions
{
    private const string BestName = "easier";

    private static readonly string[] Harder = ["hard", "advanced", "challenge"];

    /// <summary>Whether the text offers anything easier.</summary>
    public static bool IsOffered(Dance dance) => Bodies(dance).Any(s => Taken(s).Count > 0);

    /// <summary>The dance with every easier option taken. Of two for the same counts the one named “easier” is danced, else the first.</summary>
    public static Dance Of(Dance dance) => dance with
    {
        Parts = [.. dance.Parts.Select(p => p with { Sections = [.. p.Sections.Select(Of)] })],
        Tags = [.. dance.Tags.Select(t => t with { Body = Of(t.Body) })],
    };

    private static IEnumerable<Section> Bodies(Dance dance) => dance.Sections.Concat(dance.Tags.Select(t => t.Body));

    private static Section Of(Section section)
    {
        List<StepOption> taken = Taken(section);
        return taken.Count == 0 ? section : section with { Lines = [.. section.Lines.Select(l => Of(l, taken))] };
    }

    private static List<StepOption> Taken(Section section)
    {
        List<StepOption> taken = [];
        IEnumerable<StepOption> offered = section.Lines
            .SelectMany(l => l.Options)
            .Where(o => o.Moves.Count > 0 && !Array.Exists(Harder, w => o.Name.Contains(w, StringComparison.OrdinalIgnoreCase)))
            .OrderByDescending(o => string.Equals(o.Name, BestName, StringComparison.OrdinalIgnoreCase));
        foreach (StepOption option in offered)
        {
            if (!taken.Exists(t => t.Replaces.Overlaps(option.Replaces)))
            {
                taken.Add(option);
            }
        }

        return taken;
    }

    private static WrittenLine Of(WrittenLine line, List<StepOption> taken)
    {
        List<WrittenMove> moves = [];
        foreach (WrittenMove move in line.Moves)
        {
            WrittenStep[] left = [.. move.Steps.Where(s => !taken.Exists(o => o.Replaces.Contains(s.Count.Place))).Select(s => Shortened(s, taken))];

            // a move without actions (words of a remark) stays where it is
            if (left.Length > 0 || move.Steps.Count == 0)
            {
                moves.Add(move with { Steps = [.. left] });
            }
        }

        moves.AddRange(line.Options.Where(taken.Contains).SelectMany(o => o.Moves));
        return line with
        {
            Moves = [.. moves.OrderBy(m => m.Steps.Count == 0 ? line.Counts.Start : m.Steps[0].Count.Place)],
            Options = [.. line.Options.Where(o => !taken.Contains(o))],
        };
    }

    // What was held up to the next action is held up to the first of the option.
    private static WrittenStep Shortened(WrittenStep step, List<StepOption> taken)
    {
        Counts end = step.Count.Place + step.Duration;
        foreach (StepOption option in taken)
        {
            if (step.Count.Place < option.Replaces.Start)
            {
                end = Counts.Min(end, option.Replaces.Start);
            }
        }

        return step with { Duration = end - step.Count.Place };
    }
}
