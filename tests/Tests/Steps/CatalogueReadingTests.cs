using System.Text;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Steps;

/// <summary>
/// Every entry of the catalogue is read from each of its names, right and left, over its own counts, and dances the entry's rows:
/// the same actions by the same feet on the same counts, with the same weight after each and the same turns, without a question.
/// </summary>
public sealed class CatalogueReadingTests
{
    public static TheoryData<string> Ids => [.. StepCatalogue.Default.Definitions.Select(d => d.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void An_entry_is_read_from_each_of_its_names(string id)
    {
        StepDefinition entry = StepCatalogue.Default.Find(id)!;
        List<string> failures = [];
        foreach (string name in Names(entry))
        {
            foreach (Foot named in Sides(entry))
            {
                foreach (string words in Phrases(entry, name, named).Distinct(StringComparer.Ordinal))
                {
                    string line = $"{Label(entry)} {words}";
                    if (Fault(entry, named, line) is string fault)
                    {
                        failures.Add($"{line}: {fault}");
                    }
                }
            }
        }

        Assert.True(failures.Count == 0, $"{id}\n  {string.Join("\n  ", failures)}");
    }

    [Fact]
    public void The_labels_are_those_of_the_rows()
    {
        // what all of the above rests on
        Assert.Equal("1&2", Label(StepCatalogue.Default.Find("coaster_back")!));
        Assert.Equal("1-4", Label(StepCatalogue.Default.Find("vine")!));
        Assert.Equal("&1", Label(StepCatalogue.Default.Find("ball_change")!));
        Assert.Equal("1-2 3&4", Label(StepCatalogue.Default.Find("cha_cha_half_back")!));
    }

    private static IEnumerable<string> Names(StepDefinition entry) => entry.Aliases.Prepend(entry.Name).Distinct(StringComparer.Ordinal);

    private static IEnumerable<Foot> Sides(StepDefinition entry) => entry.NamedBy == NamedBy.None ? [Foot.Right] : [Foot.Right, Foot.Left];

    /// <summary>The words a teacher writes: the side before the name or after it.</summary>
    private static IEnumerable<string> Phrases(StepDefinition entry, string name, Foot named)
    {
        string words = name + CueFor(entry, name);
        string side = named == Foot.Right ? "right" : "left";
        string letter = named == Foot.Right ? "R" : "L";
        return entry.NamedBy switch
        {
            NamedBy.None => [words],

            // "right heels" is the heel of the right foot: a single move goes by its direction only when that stands after it
            NamedBy.Travel or NamedBy.Turn => entry.Rows.Count == 1 ? [$"{words} {side}"] : [$"{words} {side}", $"{side} {words}"],

            // the side after a turn is the way it goes
            _ => entry.TotalTurn.Sign != 0 ? [$"{side} {words}"] : [$"{side} {words}", $"{words} {letter}"],
        };
    }

    /// <summary>A name that several entries share means the default one; another is picked by its cue.</summary>
    private static string CueFor(StepDefinition entry, string name)
    {
        bool shared = StepCatalogue.Default.Definitions.Any(d => d.Id != entry.Id && Names(d).Contains(name, StringComparer.Ordinal));
        return !shared || entry.IsDefaultOfName || entry.Cues.Count == 0 ? "" : " " + entry.Cues[^1];
    }

    /// <summary>The counts of the rows as a sheet prints them: <c>1-4</c>, <c>1&amp;2</c>, <c>1-2 3&amp;4</c>.</summary>
    private static string Label(StepDefinition entry)
    {
        List<string> labels = [.. entry.Rows.Select(r => r.Label.Trim("0123456789".ToCharArray()) is { Length: > 0 } mark ? mark : r.Label)];
        StringBuilder words = new();
        for (int i = 0; i < labels.Count; i++)
        {
            bool whole = char.IsAsciiDigit(labels[i][0]);
            bool quickBefore = i > 0 && !char.IsAsciiDigit(labels[i - 1][0]);
            bool quickAfter = i + 1 < labels.Count && !char.IsAsciiDigit(labels[i + 1][0]);
            if (i > 0 && whole && !quickBefore)
            {
                // a run of plain counts takes a dash; what is quick stands in a group of its own
                bool run = !quickAfter && words.Length >= labels[i - 1].Length && !words.ToString().Split(' ')[^1].Any(c => !char.IsAsciiDigit(c) && c != '-');
                if (run)
                {
                    int start = words.ToString().LastIndexOf('-');
                    int blank = words.ToString().LastIndexOf(' ');
                    if (start > blank)
                    {
                        words.Length = start;
                    }
                }

                words.Append(run ? '-' : ' ');
            }

            words.Append(labels[i]);
        }

        return words.ToString();
    }

    private static string? Fault(StepDefinition entry, Foot named, string line)
    {
        Weight start = entry.From switch
        {
            RelativeWeight.Both => Weight.Shared,
            RelativeWeight.Same => named.ToWeight(),
            _ => named.Other().ToWeight(),
        };
        List<StepAction> rows = [.. entry.Rows.Select(r => r.For(named))];
        string rhythm = entry.Meter == 3 ? "rhythm: waltz\n" : "";
        Draft draft = Read(rhythm, line, start);
        List<Diagnostic> asked = [.. draft.Report.Complaints.Where(d => d.Severity >= Severity.Warning)];
        if (asked.Exists(d => d.Rule.Id == "turn/amount-missing"))
        {
            // "right pivot turn": the name leaves the amount open and the reader asks for it; with the amount there is nothing to ask
            Turn turn = entry.TotalTurn.Sign != 0 ? entry.TotalTurn : Turn.FromEighths(4);
            turn = named == Foot.Right ? turn : -turn;
            if (entry.TotalTurn.Sign == 0)
            {
                // an entry without an amount of its own turns as far as is said
                rows[0] = rows[0] with { Turn = turn };
            }

            draft = Read(rhythm, $"{line} {Amount(turn)} {(turn.Sign > 0 ? "right" : "left")}", start);
            asked = [.. draft.Report.Complaints.Where(d => d.Severity >= Severity.Warning)];
        }

        if (asked.Count > 0)
        {
            return string.Join("; ", asked.Select(d => $"{d.Rule.Id} {d.Message}"));
        }

        string want = Danced(entry.Rows.Zip(rows, (r, action) => (r.At, action)), start);
        string got = Danced(draft.Dance.Sections.SelectMany(s => s.Steps).SelectMany(s => s.With.Prepend(s.Action).Select(a => (s.Count.Place, a))), start);
        return want == got ? null : $"wanted {want} but read {got}";
    }

    private static Draft Read(string rhythm, string line, Weight start)
    {
        string stand = start switch { Weight.Right => "weight on R", Weight.Left => "weight on L", _ => "weight on both" };
        return DanceReader.Read($"Catalogue\n\n{rhythm}start: {stand}\n\nsection 1\n{line}\n");
    }

    private static string Amount(Turn turn) => turn.Amount.Modulo(8).Numerator switch
    {
        1 => "1/8",
        2 => "1/4",
        3 => "3/8",
        4 => "1/2",
        6 => "3/4",
        _ => "full",
    };

    private static string Danced(IEnumerable<(Counts Place, StepAction Action)> steps, Weight weight)
    {
        List<string> shown = [];
        foreach ((Counts place, StepAction action) in steps)
        {
            weight = action.WeightAfter(weight);
            string turn = action.Turn.Sign == 0 ? "" : $" {action.Turn}";

            // a turn that takes the weight back to the other foot is a recover in the catalogue and a pivot in the words of a sheet
            string kind = action is { Kind: ActionKind.Recover, Effect: WeightEffect.Takes } && turn.Length > 0 ? ActionTraits.Of(ActionKind.Pivot).Word : action.Traits.Word;
            shown.Add($"{CountGrid.LabelOf(place)} {kind} {action.Foot}>{weight}{turn}");
        }

        return string.Join(", ", shown);
    }
}
