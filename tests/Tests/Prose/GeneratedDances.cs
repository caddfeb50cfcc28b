using System.Globalization;
using System.Text;
using Scuff;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Prose;

/// <summary>
/// Dances put together from the catalogue: any entry may come next whose starting weight fits. They can be danced, repeat from
/// their last count into the first, and are written in canonical words.
/// </summary>
internal static class GeneratedDances
{
    private const string Heading = "Generated\n\nstart: weight on L\n";

    // What a sheet cannot say by a name alone: a turn that has to be stated is stated with the figure, and without an amount it is no turn.
    private static readonly HashSet<ActionKind> Turning = [ActionKind.Pivot, ActionKind.Turn, ActionKind.Unwind];

    // Entries whose canonical words are those of another move ("waltz half turn R back" is read as the half turn of a waltz going
    // forward), or join the move before them (arms), or lose a count (drag): the writer reads every line back first, so it never writes these unasked.
    private static readonly HashSet<string> NotReadBack =
    [
        "arms", "body_angle", "flea_hop", "heel_bounce_one", "kick_ball_back", "kick_cross_back", "lock_single", "look", "lower", "military_turn", "paddle_turn", "pencil_turn", "rise", "slap", "slap_body", "spiral", "step_drag",
        "waltz_half_turn_back",
    ];

    private static readonly StepDefinition[] Entries =
    [
        .. StepCatalogue.Default.Definitions.Where(d =>
            d.Rows.Count > 0 && !NotReadBack.Contains(d.Id) && !d.Rows.Any(r => Turning.Contains(r.Action.Kind) && r.Action.Turn == Turn.None)),
    ];

    private static readonly HashSet<string> StatesTurn = [.. Entries.Where(AsksForTurn).Select(d => d.Id)];

    /// <summary>So many dances of one to four sections, each of a few figures over about eight counts; the same ones every time.</summary>
    public static IEnumerable<Dance> Some(int many) => Enumerable.Range(0, many).Select(seed => Make(seed, (seed % 4) + 1));

    /// <summary>The dance of a number.</summary>
    public static Dance Make(int seed, int sections)
    {
        Random random = new(seed);
        Weight weight = Weight.Left;
        List<Section> made = [];
        for (int i = 0; i < sections; i++)
        {
            (Section section, weight) = Section(random, i + 1, weight, isLast: i == sections - 1);
            made.Add(section);
        }

        return new Dance { Title = "Generated", Start = Weight.Left, Parts = [new Part("", made.ToValueList(), default)] };
    }

    /// <summary>The dance in canonical words.</summary>
    public static string Write(Dance dance)
    {
        StringBuilder text = new(Heading);
        foreach (Section section in dance.Sections)
        {
            text.Append(CultureInfo.InvariantCulture, $"\nsection {section.Number}: figures ({section.Length} counts)\n");
            foreach (WrittenLine line in section.Lines)
            {
                text.Append(DanceWriter.Line(line)).Append('\n');
            }
        }

        return text.ToString();
    }

    private static bool AsksForTurn(StepDefinition entry)
    {
        WrittenMove move = Figure(entry, Foot.Right, 0, statesTurn: false);
        Draft draft = DanceReader.Read($"Turn\n\nstart: weight on {(entry.From == RelativeWeight.Same ? 'R' : 'L')}\n\nsection 1\n{DanceWriter.Line(Line([move], 1))}\n");
        return draft.Report.Complaints.Any(c => c.Rule.Id is "turn/amount-missing" or "turn/direction-missing");
    }

    private static (Section Section, Weight Weight) Section(Random random, int number, Weight weight, bool isLast)
    {
        List<WrittenLine> lines = [];
        int at = 0;
        while (at < 8)
        {
            List<WrittenMove> moves = [];
            int most = random.Next(1, 4);
            for (int i = 0; i < most && at < 8; i++)
            {
                (WrittenMove move, int length) = Move(random, at, weight);
                moves.Add(move);
                at += length;
                weight = After(move, weight);
            }

            lines.Add(Line(moves, lines.Count + 1));
        }

        if (isLast && weight != Weight.Left)
        {
            // the first step's foot has to be free again
            WrittenMove close = Figure(StepCatalogue.Default.Find("step")!, Foot.Left, at, statesTurn: false);
            lines.Add(Line([close], lines.Count + 1));
            at++;
            weight = Weight.Left;
        }

        Section section = new()
        {
            Number = number,
            Length = Counts.FromWhole(at),
            Lines = lines.ToValueList(),
            Span = default,
        };
        return (section, weight);
    }

    private static (WrittenMove Move, int Length) Move(Random random, int at, Weight weight)
    {
        while (true)
        {
            StepDefinition entry = Entries[random.Next(Entries.Length)];
            Foot named = entry.NamedBy == NamedBy.None || random.Next(2) == 0 ? Foot.Right : Foot.Left;
            if (Fits(entry, named, weight))
            {
                return (Figure(entry, named, at, StatesTurn.Contains(entry.Id)), entry.Length.Value.Floor);
            }
        }
    }

    private static bool Fits(StepDefinition entry, Foot named, Weight weight)
    {
        // a pick-up needs the end of the count before it, which the move before may have taken
        if (entry.Rows[0].At < Counts.Zero)
        {
            return false;
        }

        foreach (PatternRow row in entry.Rows)
        {
            StepAction action = row.For(named);
            bool fits = action.Traits.FootRule switch
            {
                FootRule.Free => action.Foot.ToFoot() is not Foot foot || (weight != foot.ToWeight() && (weight != Weight.Shared || row == entry.Rows[0])),
                FootRule.Standing => action.Foot.ToFoot() is not Foot foot || weight == foot.ToWeight(),
                _ => true,
            };
            if (!fits || !AgreesWith(entry.From, named, row == entry.Rows[0], weight))
            {
                return false;
            }

            weight = action.WeightAfter(weight);
        }

        return weight is Weight.Left or Weight.Right;
    }

    private static bool AgreesWith(RelativeWeight from, Foot named, bool isFirst, Weight weight) => !isFirst || from switch
    {
        RelativeWeight.Same => weight == named.ToWeight(),
        RelativeWeight.Other => weight == named.Other().ToWeight(),
        RelativeWeight.Both => weight == Weight.Shared,
        _ => true,
    };

    private static WrittenMove Figure(StepDefinition entry, Foot named, int at, bool statesTurn)
    {
        List<WrittenStep> steps = [];
        foreach (PatternRow row in entry.Rows)
        {
            Counts place = Counts.FromWhole(at) + row.At;
            StepAction action = row.For(named);
            if (steps.Count > 0 && steps[^1].Count.Place == place)
            {
                // a clap on the same count
                steps[^1] = steps[^1] with { With = [.. steps[^1].With, action] };
                continue;
            }

            steps.Add(new WrittenStep(new WrittenCount(CountGrid.LabelOf(place), place), Counts.One, action, default, 1));
        }

        WrittenMove move = new()
        {
            Definition = entry,
            Named = entry.NamedBy == NamedBy.None ? null : named,
            Steps = steps.ToValueList(),
            Span = default,
            StatedTurn = statesTurn ? named == Foot.Right ? entry.TotalTurn : -entry.TotalTurn : null,
            Words = "",
        };
        return move with { Words = Phrasing.Describe(move) };
    }

    private static WrittenLine Line(List<WrittenMove> moves, int number)
    {
        Counts first = moves[0].Steps[0].Count.Place;
        int from = first.Value.Floor;
        WrittenMove last = moves[^1];
        int to = last.Steps[0].Count.Place.Value.Floor + last.Definition!.Length.Value.Floor;

        // every whole count of the line, also where a figure lets one pass
        List<WrittenCount> places = [.. moves.SelectMany(m => m.Steps).Select(s => s.Count)];
        for (int i = from; i < to; i++)
        {
            Counts whole = Counts.FromWhole(i);
            if (!places.Exists(p => p.Place == whole))
            {
                places.Add(new WrittenCount(CountGrid.LabelOf(whole), whole));
            }
        }

        places.Sort((a, b) => a.Place.CompareTo(b.Place));
        return new WrittenLine
        {
            Label = CountWriter.Label([.. places.Select(p => p.Place)]),
            Counts = new CountSpan(Counts.FromWhole(from), Counts.FromWhole(to)),
            Moves = moves.ToValueList(),
            Places = places.ToValueList(),
            Span = default,
            Number = number,
        };
    }

    private static Weight After(WrittenMove move, Weight weight)
    {
        foreach (WrittenStep step in move.Steps)
        {
            weight = step.Action.WeightAfter(weight);
        }

        return weight;
    }
}
