using System.Globalization;
using System.Text;
using Scuff;
using Scuff.Analysis;
using Scuff.Analysis.Checks;
using Scuff.Analysis.Easier;
using Scuff.Analysis.Levels;
using Scuff.App.Easing;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;
using Tests.Prose;

namespace Tests.Analysis.Easier;

public sealed class EasierFinderTests
{
    // issue 7: "found for at least 80 % of the moves above beginner level in the demo club"
    private const double LeastFound = 0.8;

    public static TheoryData<string, string> DancesAndAims => [.. SeedTexts.Demo.SelectMany(d => EasierWords.Aims.Select(aim => (d.Name, aim)))];

    [Theory]
    [MemberData(nameof(DancesAndAims))]
    public void Every_offer_drops_in_passes_every_check_and_is_easier(string name, string aim)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(SeedTexts.Demo.First(d => d.Name == name).Text));
        EasierQuestion question = new() { Aim = EasierWords.Find(aim)!.Value };
        EasierOffers offers = new(analysis, question);
        List<string> faults = [];
        foreach (EasierPlace place in offers.Places)
        {
            foreach (EasierOffer offer in offers.For(place, 3))
            {
                if (Fault(analysis, offer, question) is { } fault)
                {
                    faults.Add($"{place.Place.Words}: {offer.Line}: {fault}");
                }
            }
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));
    }

    [Fact]
    public void Something_easier_is_found_for_at_least_eighty_of_a_hundred_moves_above_beginner_in_the_demo_club()
    {
        int moves = 0;
        int found = 0;
        StringBuilder table = new("dance | moves above beginner | with an easier way\n--- | ---: | ---:\n");
        foreach ((string name, string text) in SeedTexts.Demo)
        {
            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
            EasierOffers offers = new(analysis, new EasierQuestion());

            // counted without the finder: every danced move whose catalogue level or computed load is above beginner
            int hard = LineRewriter.LinesOf(analysis.Dance).SelectMany(line => line.Moves).Count(move => move.Steps.Count > 0 && MoveDemand.Of([move], WeightBefore(move)).Level > Level.Beginner);
            int eased = offers.Places.Count(place => offers.For(place, 1).Count > 0);
            Assert.Equal(hard, offers.Places.Count);
            moves += hard;
            found += eased;
            table.Append(CultureInfo.InvariantCulture, $"{Path.GetFileNameWithoutExtension(name)} | {hard} | {eased}\n");
        }

        table.Append(CultureInfo.InvariantCulture, $"all | {moves} | {found}\n");
        TestContext.Current.TestOutputHelper?.WriteLine(table.ToString());
        Assert.True(moves > 100, $"only {moves} moves above beginner");
        Assert.True(found >= LeastFound * moves, table.ToString());
    }

    [Theory]
    [InlineData(Foot.Right)]
    [InlineData(Foot.Left)]
    public void Something_easier_is_found_for_most_entries_of_the_catalogue_and_always_drops_in(Foot named)
    {
        int entries = 0;
        int found = 0;
        List<string> faults = [];
        List<string> none = [];
        List<string> unread = [];
        foreach (StepDefinition definition in StepCatalogue.Default.Definitions)
        {
            if (DanceWith(definition, named) is not { } text)
            {
                if (LevelPhrases.Find(definition.Level) > Level.Beginner)
                {
                    unread.Add(definition.Id);
                }

                continue;
            }

            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
            EasierQuestion question = new() { Section = 1 };
            EasierOffers offers = new(analysis, question);
            if (offers.Places.Count == 0)
            {
                continue;
            }

            entries++;
            bool isFound = true;
            foreach (EasierPlace place in offers.Places)
            {
                IReadOnlyList<EasierOffer> ways = offers.For(place, 2);
                isFound &= ways.Count > 0;
                faults.AddRange(ways.Select(offer => Fault(analysis, offer, question) is { } fault ? $"{definition.Id}: {offer.Line}: {fault}" : "").Where(f => f.Length > 0));
            }

            found += isFound ? 1 : 0;
            if (!isFound)
            {
                none.Add(definition.Id);
            }
        }

        TestContext.Current.TestOutputHelper?.WriteLine($"{found} of {entries}; none for {string.Join(", ", none)}; by themselves no dance: {string.Join(", ", unread)}");
        Assert.True(faults.Count == 0, string.Join('\n', faults.Take(20)));
        Assert.True(entries > 80, $"only {entries} entries");
        Assert.True(found >= LeastFound * entries, $"{found} of {entries}; none for {string.Join(", ", none)}");
    }

    [Fact]
    public void A_full_turn_on_two_counts_becomes_two_steps_without_a_turn()
    {
        EasierOffer offer = BestFor("7-8  full turn forward right\n", EasierAim.Turns);

        Assert.Equal("7-8", offer.Label);
        Assert.Contains(offer.Way.Reasons, reason => reason.Words == "no turn instead of a full turn");
        Assert.Contains(offer.Way.Reasons, reason => reason.Words == "ends on the same foot and wall");
        Assert.Equal(2, offer.Way.After.Steps);
    }

    [Fact]
    public void A_quarter_that_is_needed_for_the_wall_stays()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Around("7-8  step L forward, pivot 1/4 right\n")));
        EasierOffers offers = new(analysis, new EasierQuestion { Aim = EasierAim.Turns });

        EasierPlace place = Assert.Single(offers.Places);
        Assert.Empty(offers.For(place, 3));
    }

    [Fact]
    public void Where_the_dance_is_cut_an_easier_way_is_not_laid_across()
    {
        string text = Around("7-8  full turn forward right\n") + "\nwall 2: after 7 restart\n";
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
        EasierFinder finder = new(analysis, new EasierQuestion { Aim = EasierAim.Turns });

        Counts cut = Counts.FromWhole(7);
        Assert.All(finder.Places.SelectMany(finder.WaysFor).Take(20), way => Assert.False(way.Counts.Start < cut && cut < way.Counts.End));
    }

    [Fact]
    public void The_same_question_gets_the_same_answer()
    {
        string text = SeedTexts.Demo.First(d => d.Name.StartsWith("lighthouse", StringComparison.Ordinal)).Text;

        Assert.Equal(Lines(), Lines());

        List<string> Lines()
        {
            EasierOffers offers = new(DanceAnalysis.Of(DanceReader.Read(text)), new EasierQuestion());
            return [.. offers.Places.SelectMany(place => offers.For(place, 3)).Select(offer => offer.Line)];
        }
    }

    [Fact]
    public void An_offer_for_knees_has_no_twist_no_landing_and_no_bend()
    {
        EasierOffer offer = BestFor("7&8&  applejack R, applejack L\n", EasierAim.Knees);

        Assert.False(offer.Way.After.IsForKnees);
        Assert.Equal("kind to knees", offer.Name);
    }

    private static EasierOffer BestFor(string line, EasierAim aim)
    {
        EasierOffers offers = new(DanceAnalysis.Of(DanceReader.Read(Around(line))), new EasierQuestion { Aim = aim });
        return offers.For(offers.Places[0], 1)[0];
    }

    private static string Around(string line) => $"""
        Around

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        {line}
        """;

    private static Weight WeightBefore(WrittenMove move)
        => move.Steps[0].Action.Foot.ToFoot() is { } foot && move.Steps[0].Action.Traits.FootRule == FootRule.Free ? foot.Other().ToWeight() : Weight.Left;

    // The entry on counts of its own, between steps that do not mind what they follow; null where its words are not read as itself.
    private static string? DanceWith(StepDefinition definition, Foot named)
    {
        int most = definition.Meter == 3 ? 6 : 8;
        if (definition.Length > Counts.FromWhole(most))
        {
            return null;
        }

        WrittenMove move = new()
        {
            Definition = definition,
            Named = named,
            StatedTurn = definition.TotalTurn.Sign == 0 ? null : named == Foot.Right ? definition.TotalTurn : -definition.TotalTurn,
            Steps = definition.Rows.Select(row => new WrittenStep(new WrittenCount(row.Label, row.At), Counts.Half, row.For(named), default, 0)).ToValueList(),
            Span = default,
            Words = "",
        };
        Counts[] places = [.. definition.Rows.Select(row => row.At)];
        Foot? first = definition.Rows.Select(row => row.For(named)).Select(action => action.Foot.ToFoot()).FirstOrDefault(foot => foot is not null);
        bool standing = definition.Rows[0].Action.Traits.FootRule == FootRule.Standing;
        string start = (standing ? first : first?.Other()) == Foot.Right ? "R" : "L";
        string label = CountWriter.Label(places);
        int length = definition.Length.Value.Floor;
        string rest = length == most ? "" : length + 1 == most ? $"{most}  hold\n" : string.Create(CultureInfo.InvariantCulture, $"{length + 1}-{most}  hold\n");
        string rhythm = most == 6 ? "rhythm: waltz\n" : "";
        string once = $"One entry\n\n{rhythm}start: weight on {start}\n\nsection 1\n{label}  {Phrasing.Describe(move)}\n{rest}";
        if (!IsReadAs(once, move, most == 6 ? 7 : 6))
        {
            return null;
        }

        // the dance has to come out: if the entry changes the foot, its mirror follows
        DanceAnalysis alone = DanceAnalysis.Of(DanceReader.Read(once));
        string text = alone.WallTimeline.WeightAfter == alone.Dance.Start
            ? once
            : $"{once}\nsection 2\n{label}  {DanceMirror.MirrorWords(Phrasing.Describe(move))}\n{rest}";
        return DanceAnalysis.Of(DanceReader.Read(text)) is var danced && danced.Report.Complaints.All(c => c.Severity < Severity.Error)
            && danced.WallTimeline.WeightAfter == danced.Dance.Start ? text : null;
    }

    private static bool IsReadAs(string text, WrittenMove move, int line)
        => DanceReader.Read(text).Dance.Sections.SelectMany(s => s.Steps).Where(s => s.Line == line).Select(s => (s.Action.Kind, s.Action.Foot))
            .SequenceEqual(move.Steps.Select(s => (s.Action.Kind, s.Action.Foot)));

    private static string? Fault(DanceAnalysis before, EasierOffer offer, EasierQuestion question)
    {
        string text = EditWriter.Apply(before.Draft.Text, offer.Edits);
        DanceAnalysis after = DanceAnalysis.Of(DanceReader.Read(text));
        if (after.Report.Complaints.Any(c => c.Rule == OptionDiffers.TheRule && text[c.Span.Start..c.Span.End].EndsWith(offer.Words, StringComparison.Ordinal)))
        {
            return "option/differs";
        }

        if (after.Report.Complaints.Count(c => c.Severity > Severity.Hint) > before.Report.Complaints.Count(c => c.Severity > Severity.Hint))
        {
            return "a complaint that was not there";
        }

        (Section section, StepOption option) = after.Dance.Sections.Concat(after.Dance.Tags.Select(tag => tag.Body))
            .SelectMany(s => s.Lines.SelectMany(line => line.Options).Select(o => (s, o)))
            .First(pair => text[pair.o.Span.Start..pair.o.Span.End] == offer.Line && pair.s.Number == offer.Way.Section.Number && pair.s.Title == offer.Way.Section.Title
                && pair.o.Replaces == offer.Way.Counts);
        if (!option.Steps.Select(s => (s.Count.Place, s.Action with { Contact = Contact.Air }))
            .SequenceEqual(offer.Way.Moves.SelectMany(m => m.Steps).Select(s => (s.Count.Place, s.Action with { Contact = Contact.Air }))))
        {
            return "read as something else";
        }

        bool isEasier = question.Aim switch
        {
            EasierAim.Level => offer.Way.After.Level <= question.Level && offer.Way.After.Level < offer.Way.Before.Level,
            EasierAim.Knees => !offer.Way.After.IsForKnees && offer.Way.Before.IsForKnees,
            EasierAim.Turns => offer.Way.After.Turn < offer.Way.Before.Turn,
            _ => offer.Way.After is { OffBeats: 0 } && offer.Way.After.Steps < offer.Way.Before.Steps,
        };
        return isEasier ? Equivalence.Fault(after.Dance, section, option) : "not easier";
    }
}
