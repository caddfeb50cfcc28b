using System.Globalization;
using Scuff.Dances;
using Scuff.Timing;

namespace Tests.Corpus;

/// <summary>A dance for sentences to be about: of thirty-two counts with a tag, or in parts A and B.</summary>
internal sealed class PlanFrame
{
    private const string Eight = "1-2 step R to side, step L together\n3-4 step R forward, step L together\n5-6 step R to side, step L together\n7-8 step R back, step L together\n";

    private const string Tag = "\ntag 4 counts\n1-4 sway R, sway L, sway R, sway L\n\n";

    private static readonly PlanFrame Sentences = new(isPhrased: false, $"Corpus\n\nsection 1\n{Eight}\nsection 2\n{Eight}\nsection 3\n{Eight}\nsection 4\n"
        + Eight.Replace("step R back, step L together", "step R forward, pivot 1/4 left", StringComparison.Ordinal) + Tag);

    private static readonly PlanFrame Phrased = new(isPhrased: true,
        $"Corpus\n\npart A\nsection 1\n{Eight}\nsection 2\n{Eight}\nsection 3\n{Eight}\npart B\nsection 1\n{Eight}{Tag}");

    private readonly bool isPhrased;
    private readonly string above;

    private PlanFrame(bool isPhrased, string above)
    {
        this.isPhrased = isPhrased;
        this.above = above;
    }

    /// <summary>The frame a case starts in, or null when it is a line of steps.</summary>
    public static PlanFrame? Of(string start) => start switch
    {
        "sentences" => Sentences,
        "phrased" => Phrased,
        _ => null,
    };

    /// <summary>The whole text with the sentences under it.</summary>
    public string With(IEnumerable<string> sentences) => above + string.Join('\n', sentences) + "\n";

    /// <summary>What was understood: "plan 3/16 restart; 5/32 tag", or "sequence A B tag A16".</summary>
    public string Told(Dance dance) => isPhrased
        ? "sequence " + string.Join(' ', dance.Sequence.Select(i => i.IsTag ? "tag" : i.Name + (i.Upto is Counts upto ? upto.ToString() : "")))
        : ("plan " + string.Join("; ", dance.Interruptions.Select(Told))).TrimEnd();

    /// <summary>A plan with each wall for itself, in their order: "3,7/16 restart" and "3/16 restart; 7/16 restart" are danced alike.</summary>
    public static string ByWall(string plan)
    {
        if (!plan.StartsWith("plan ", StringComparison.Ordinal))
        {
            return plan;
        }

        IEnumerable<(int Wall, string Told)> breaks = plan[5..].Split("; ", StringSplitOptions.RemoveEmptyEntries).SelectMany(told =>
        {
            int slash = told.IndexOf('/', StringComparison.Ordinal);
            return told[..slash].Split(',').Select(w => (int.TryParse(w, CultureInfo.InvariantCulture, out int wall) ? wall : 0, told[slash..]));
        });
        return "plan " + string.Join("; ", breaks.OrderBy(b => b.Wall).Select(b => string.Create(CultureInfo.InvariantCulture, $"{b.Wall}{b.Told}")));
    }

    private static string Told(Interruption told)
    {
        string walls = told.Walls.Count == 0 ? "every" : string.Join(',', told.Walls);
        string after = (told.AfterCounts ?? Counts.FromWhole(32)).ToString();
        IEnumerable<string> acts = told.Acts.Select(act => act switch
        {
            InterruptionAct.PlayTag tag => tag.Times == 1 ? "tag" : string.Create(CultureInfo.InvariantCulture, $"tag x{tag.Times}"),
            InterruptionAct.Wait wait => $"wait:{wait.Length}",
            InterruptionAct.Restart => "restart",
            InterruptionAct.GoOn => "go-on",
            _ => act.GetType().Name,
        });
        return $"{walls}/{after} {(told.Changes.Count > 0 ? "change " : "")}{string.Join(' ', acts)}";
    }
}
