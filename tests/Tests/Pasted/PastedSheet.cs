using System.Globalization;
using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Tests.House;

namespace Tests.Pasted;

/// <summary>
/// A whole sheet as somebody typed it, and what a careful teacher understands from it: facts of the heading, where each section ends, tags and restarts.
/// </summary>
internal sealed record PastedSheet(string File, IReadOnlyDictionary<string, string> Want, string Text)
{
    /// <summary>The sheets of a folder, in order of name.</summary>
    public static List<PastedSheet> Load(string folder)
        => [.. Directory.EnumerateFiles(Path.Combine(Repository.Root, "tests", "Tests", "Pasted", folder), "*.txt").Order(StringComparer.Ordinal).Select(Read)];

    /// <summary>What was understood otherwise, and what was asked.</summary>
    public (List<string> Wrong, List<string> Asked) Run()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Text));
        Dance dance = analysis.Dance;
        List<string> wrong = [];
        foreach ((string key, string want) in Want)
        {
            string got = key switch
            {
                "title" => dance.Title.TrimEnd('!').Replace('’', '\''),
                "counts" => dance.Length.ToString(),
                "walls" => dance.ClaimedWalls?.Value.ToString(CultureInfo.InvariantCulture) ?? Walls(dance),
                "level" => dance.ClaimedLevel is { } level ? LevelWords(level) : "",
                "intro" => Intro(dance),
                "ends" => string.Join("; ", Ends(dance)),
                "plan" => WallByWall(Plan(dance)),
                _ => throw new InvalidDataException($"{File}: {key}"),
            };
            if (!string.Equals(got, Usual(key, want), StringComparison.OrdinalIgnoreCase))
            {
                wrong.Add($"{key}: wanted {want}, got {got}");
            }
        }

        if (!Want.ContainsKey("plan") && Plan(dance).Length > 0)
        {
            wrong.Add("plan: none wanted, got " + Plan(dance));
        }

        return (wrong, [.. analysis.Report.Complaints.Where(c => c.Severity >= Severity.Warning
            && OfReading(c.Rule.Id)).Select(c => $"{c.Rule.Id} {c.Message}")]);
    }

    // what the dance itself may be found fault with (a quick turn, a hard level) is no matter of reading
    private static bool OfReading(string rule) => rule.Split('/')[0] is not ("turn" or "level" or "body" or "floor" or "load" or "sheet" or "option");

    private static PastedSheet Read(string file)
    {
        string[] parts = System.IO.File.ReadAllText(file).Replace("\r\n", "\n", StringComparison.Ordinal).Split("\n----\n", 2);
        Dictionary<string, string> want = parts[0].Split('\n', StringSplitOptions.RemoveEmptyEntries)
            .Select(l => l.Split(':', 2)).ToDictionary(p => p[0].Trim(), p => p[1].Trim(), StringComparer.Ordinal);
        return new PastedSheet(Path.GetFileName(file), want, parts[1]);
    }

    private static string Usual(string key, string want) => key switch
    {
        // the names that levels of ours have
        "level" => want switch { "high beginner" => "improver", "easy intermediate" => "intermediate", _ => want },
        "plan" => WallByWall(want),
        "title" => want.TrimEnd('!'),
        _ => want,
    };

    // "2,6/32 tag" and "2/32 tag; 6/32 tag" are one plan
    private static string WallByWall(string plan) => string.Join("; ", plan.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)
        .SelectMany(p => p.IndexOf('/', StringComparison.Ordinal) is > 0 and int slash ? p[..slash].Split(',').Select(w
            => w + p[slash..]) : [p]).Order(StringComparer.Ordinal));

    private static string LevelWords(Level level) => string.Concat(level.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? " " + c : c.ToString()));

    private static string Intro(Dance dance)
    {
        string words = dance.Tracks.Select(t => t.Intro?.ToString()).FirstOrDefault(c => c is not null)
            ?? dance.Header.FirstOrDefault(h => h.Key == "intro")?.Value ?? "";
        return new string([.. words.SkipWhile(c => !char.IsAsciiDigit(c)).TakeWhile(char.IsAsciiDigit)]);
    }

    private static string Walls(Dance dance)
    {
        Turn turn = dance.Sections.SelectMany(s => s.Steps).Aggregate(Turn.None, (sum, s) => sum + s.Action.Turn);
        Facing facing = Facing.Front;
        int walls = 0;
        do
        {
            facing += turn;
            walls++;
        }
        while (facing != Facing.Front && walls < 9);

        return walls.ToString(CultureInfo.InvariantCulture);
    }

    private static IEnumerable<string> Ends(Dance dance)
    {
        Facing facing = Facing.Front;
        Weight weight = dance.Start;
        foreach (Section section in dance.Sections)
        {
            foreach (WrittenStep step in section.Steps.OrderBy(s => s.Count.Place))
            {
                facing += step.Action.Turn;
                weight = step.Action.WeightAfter(weight);
            }

            yield return $"{facing} {weight switch { Weight.Left => "L", Weight.Right => "R", Weight.Shared => "B", _ => "?" }}";
        }
    }

    private static string Plan(Dance dance) => string.Join("; ", dance.Interruptions.Concat(dance.Tracks.SelectMany(t => t.Interruptions)).Select(i =>
    {
        string walls = i.Walls.Count == 0 ? "every" : string.Join(',', i.Walls);
        IEnumerable<string> acts = i.Acts.Select(a => a switch
        {
            InterruptionAct.PlayTag { Times: 1 } => "tag",
            InterruptionAct.PlayTag tag => string.Create(CultureInfo.InvariantCulture, $"tag x{tag.Times}"),
            InterruptionAct.Restart => "restart",
            _ => a.GetType().Name,
        });
        return $"{walls}/{i.AfterCounts ?? dance.Length} {string.Join(' ', acts)}";
    }).Order(StringComparer.Ordinal));
}
