using System.Globalization;
using System.Text;
using System.Text.Json;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Steps;
using Tests.Golden;
using Tests.House;

namespace Tests.App;

/// <summary>The club in <c>demo/</c>: its dances are what they say, and its faulty ones have the one fault they are named after.</summary>
public sealed class DemoClubTests
{
    /// <summary>Every faulty dance with the only complaint worse than a hint that it may give.</summary>
    private static readonly Dictionary<string, string> Faults = new(StringComparer.Ordinal)
    {
        ["coaster-on-the-other-foot"] = "figure/foot-differs",
        ["coaster-that-is-none"] = "figure/detail-differs",
        ["count-used-twice"] = "count/doubled",
        ["does-not-repeat"] = "weight/does-not-repeat",
        ["ends-at-the-side"] = "ending/facing",
        ["feet-too-quick"] = "feet/too-quick",
        ["foot-not-free"] = "weight/foot-not-free",
        ["gesture-by-standing-foot"] = "weight/gesture-not-free",
        ["heel-switch-without-and"] = "weight/switch-needs-step",
        ["intro-in-wrong-seconds"] = "track/intro-differs",
        ["missing-count"] = "count/missing",
        ["option-on-the-wrong-foot"] = "option/differs",
        ["pivot-the-wrong-way"] = "turn/pivot-direction",
        ["restart-beyond-the-wall"] = "interruption/beyond-wall",
        ["restart-cuts-a-figure"] = "interruption/cuts-figure",
        ["restart-on-the-wrong-foot"] = "interruption/foot-not-free",
        ["restarts-miscounted"] = "interruption/restarts-differ",
        ["sections-do-not-join"] = "weight/section-hand-over",
        ["sequence-with-unknown-part"] = "sequence/unknown-part",
        ["spin-on-one-foot"] = "turn/on-one-foot",
        ["step-too-far-for-its-time"] = "feet/too-far",
        ["stomp-that-stays-free"] = "weight/stomp-unclear",
        ["tag-ends-on-the-wrong-foot"] = "tag/foot-not-free",
        ["tag-too-short"] = "tag/length-differs",
        ["tag-without-a-body"] = "interruption/unknown-tag",
        ["tempo-twice-the-beat"] = "track/tempo-unusual",
        ["turn-too-fast"] = "turn/too-fast",
        ["turn-without-direction"] = "turn/direction-missing",
        ["two-readings"] = "reading/two-readings",
        ["two-steps-for-three-counts"] = "count/moves-do-not-fit",
        ["two-tempi-for-one-song"] = "track/tempo-differs",
        ["unknown-words"] = "reading/unknown-words",
        ["unwind-without-weight"] = "weight/end-unstated",
        ["walls-differ"] = "facing/walls-differ",
        ["waltz-in-eights"] = "count/section-length",
        ["wrong-facing"] = "facing/claim-differs",
        ["wrong-total"] = "count/total-differs",
    };

    public static TheoryData<string> Dances => [.. NamesIn("dances")];

    public static TheoryData<string> FaultyDances => [.. NamesIn("faulty")];

    [Theory]
    [MemberData(nameof(Dances))]
    public void A_dance_of_the_club_is_clean_and_keeps_what_its_heading_claims(string name)
    {
        using ProgramRun run = new();
        run.Put("dance.dance", Text("dances", name));

        int code = run.Run("check", "--json", "dance.dance");

        Assert.Equal([], Worse(run.Out));
        Assert.Equal(0, code);
    }

    [Theory]
    [MemberData(nameof(FaultyDances))]
    public void A_faulty_dance_gives_the_complaint_it_is_named_after_and_no_other(string name)
    {
        using ProgramRun run = new();
        run.Put("dance.dance", Text("faulty", name));

        int code = run.Run("check", "--json", "dance.dance");

        Assert.True(Faults.TryGetValue(name, out string? fault), $"{name} is not in the table of faults.");
        Assert.Equal([fault], Worse(run.Out));
        Assert.Equal(1, code);
    }

    [Fact]
    public void Every_fault_of_the_table_has_its_dance_which_tells_it_in_its_first_line()
    {
        Assert.Equal(Faults.Keys.Order(StringComparer.Ordinal), NamesIn("faulty"));
        Assert.All(Faults.Keys, name => Assert.StartsWith("# ", Text("faulty", name), StringComparison.Ordinal));
    }

    // The file was held against the dances count by count by reading; it changes only when a dance does.
    [Fact]
    public void Feet_weight_and_facing_are_danced_as_they_were_meant()
    {
        StringBuilder all = new();
        foreach (string name in NamesIn("dances"))
        {
            all.Append(name).Append('\n').AppendJoin('\n', Danced(Text("dances", name))).Append("\n\n");
        }

        GoldenFile.Matches("demo-club.txt", all.ToString());
    }

    [Theory]
    [MemberData(nameof(Dances))]
    public void Tidying_a_dance_leaves_every_foot_where_it_was(string name)
    {
        string text = Text("dances", name);

        string tidy = DanceWriter.Tidy(DanceReader.Read(text));

        Assert.Equal(Danced(text), Danced(tidy));
        Assert.Equal(tidy, DanceWriter.Tidy(DanceReader.Read(tidy)));
    }

    [Fact]
    public void Together_the_dances_use_most_of_the_catalogue()
    {
        HashSet<string> used = [];
        foreach (string name in NamesIn("dances"))
        {
            Dance dance = DanceReader.Read(Text("dances", name)).Dance;
            IEnumerable<WrittenLine> lines = dance.Sections.Concat(dance.Tags.Select(t => t.Body)).SelectMany(s => s.Lines);
            used.UnionWith(lines.SelectMany(l => l.Moves.Concat(l.Options.SelectMany(o => o.Moves))).Select(m => m.Definition?.Id ?? ""));
        }

        int entries = StepCatalogue.Default.Definitions.Count;
        int danced = StepCatalogue.Default.Definitions.Count(d => used.Contains(d.Id));
        Assert.True(3 * danced >= 2 * entries, string.Create(CultureInfo.InvariantCulture, $"Only {danced} of {entries} entries are danced by the club."));
    }

    private static string Folder(string room) => Path.Combine(Repository.Root, "demo", room);

    private static IEnumerable<string> NamesIn(string room)
        => Directory.GetFiles(Folder(room), "*.dance").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal);

    private static string Text(string room, string name) => File.ReadAllText(Path.Combine(Folder(room), name + ".dance"));

    /// <summary>Ids of the complaints that are worse than a hint.</summary>
    private static string[] Worse(string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return
        [
            .. document.RootElement[0].GetProperty("complaints").EnumerateArray()
                .Where(c => c.GetProperty("severity").GetString() != "hint")
                .Select(c => c.GetProperty("id").GetString()!),
        ];
    }

    /// <summary>
    /// One line a section, as danced the first time: <c>1R 1&amp;L 2R</c> is a step on each, <c>4(L)</c> a touch, <c>8-</c> a count
    /// without a foot, <c>5B</c> both; the weight where it is shared, and the facing where it changes.
    /// </summary>
    private static List<string> Danced(string text)
    {
        using ProgramRun run = new();
        run.Put("dance.dance", text);
        run.Run("explain", "--json", "dance.dance");
        using JsonDocument document = JsonDocument.Parse(run.Out);

        List<string> lines = [];
        HashSet<string> seen = [];
        string current = "";
        string? facing = null;
        bool shown = false;
        foreach (JsonElement step in document.RootElement[0].GetProperty("events").EnumerateArray())
        {
            string section = step.GetProperty("section").ToString();
            string key = step.GetProperty("wall").ToString() + "/" + section;
            if (key != current)
            {
                current = key;
                shown = seen.Add(section);
                if (shown)
                {
                    lines.Add($"  {section,-6} from {facing ?? "12:00"}:");
                }
            }

            string foot = step.GetProperty("foot").GetString()!;
            string weight = step.GetProperty("weight").GetString()!;
            string letter = foot switch { "none" => "-", "both" => "B", _ => foot == weight ? foot : $"({foot})" };
            string shared = foot is not "both" && weight is "both" or "unknown" ? $"/{weight}" : "";
            string? now = step.GetProperty("facing").GetString();
            string turned = now == facing || (facing is null && now == "12:00") ? "" : $"[{now}]";
            facing = now;
            if (shown)
            {
                lines[^1] += $" {step.GetProperty("count").GetString()}{letter}{shared}{turned}";
            }
        }

        return lines;
    }
}
