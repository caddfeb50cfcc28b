using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Tests.Prose;

/// <summary>What holds of every dance that can be danced, tried on dances put together from the catalogue.</summary>
public sealed class GeneratedDanceTests
{
    private const int Tries = 500;

    [Fact]
    public void A_written_dance_is_read_back_equal()
    {
        int compared = GeneratedDances.Some(Tries).Count(d => IsReadBack(d, GeneratedDances.Write(d)));

        Assert.True(compared > Tries * 3 / 4, $"only {compared} of {Tries} dances are read without a question");
    }

    [Fact]
    public void The_mirrored_dance_is_read_back_equal_as_well()
    {
        int compared = GeneratedDances.Some(Tries).Select(DanceMirror.Mirror).Count(d => IsReadBack(
            d,
            GeneratedDances.Write(d).Replace("start: weight on L", "start: weight on R", StringComparison.Ordinal)));

        Assert.True(compared > Tries * 3 / 4, $"only {compared} of {Tries} dances are read without a question");
    }

    [Fact]
    public void Tidying_a_written_dance_changes_nothing()
    {
        int compared = 0;
        foreach (string text in GeneratedDances.Some(Tries).Select(GeneratedDances.Write))
        {
            // where it is asked which of two dances is meant, one of them is written
            Draft draft = DanceReader.Read(text);
            if (!IsInDoubt(draft.Report))
            {
                Assert.Equal(text, DanceWriter.Tidy(draft));
                compared++;
            }
        }

        Assert.True(compared > Tries * 3 / 4, $"only {compared} of {Tries} dances are read without a question");
    }

    [Fact]
    public void The_checks_find_no_foot_that_is_not_free()
    {
        foreach (string text in GeneratedDances.Some(Tries).Select(GeneratedDances.Write))
        {
            Report report = DanceAnalysis.Of(DanceReader.Read(text)).Report;

            Assert.True(
                IsInDoubt(report) || !report.Complaints.Any(c => c.Rule.Id.StartsWith("weight/", StringComparison.Ordinal) && c.Severity == Severity.Error),
                Asked(text, report));
        }
    }

    [Fact]
    public void Turns_add_to_the_facing_and_the_weight_is_never_nowhere()
    {
        foreach (Dance dance in GeneratedDances.Some(Tries))
        {
            Timeline timeline = Unroller.Unroll(dance, PlanBuilder.Plain(dance));

            Assert.NotEmpty(timeline.Steps);
            DancedLaws.AssertHeld(timeline);
        }
    }

    [Fact]
    public void All_walls_lead_back_to_the_starting_spot_when_a_wall_turns()
    {
        // dance 10380 of four: its long step leads exactly as far as a leg reaches, which rounding once took for too far on some walls
        int turned = 0;
        foreach (Dance dance in GeneratedDances.Some(4 * Tries).Append(GeneratedDances.Make(10380, 1)))
        {
            if (NetTurn(dance).Eighths.Modulo(8).Sign != 0)
            {
                turned++;
                DancedLaws.AssertComesHome(Unroller.Unroll(dance, PlanBuilder.Plain(dance)));
            }
        }

        Assert.True(turned > Tries, $"only {turned} of the dances turn");
    }

    [Fact]
    public void Mirrored_twice_it_is_the_dance_again()
    {
        foreach (Dance dance in GeneratedDances.Some(Tries))
        {
            Dance mirrored = DanceMirror.Mirror(dance);

            Assert.NotEqual(dance, mirrored);
            Assert.Equal(dance, DanceMirror.Mirror(mirrored));
        }
    }

    [Fact]
    public void Most_of_the_catalogue_takes_part()
    {
        HashSet<string> met = [];
        for (int seed = 0; seed < 600; seed++)
        {
            met.UnionWith(GeneratedDances.Make(seed, 4).Sections.SelectMany(s => s.Lines).SelectMany(l => l.Moves).Select(m => m.Definition!.Id));
        }

        Assert.True(met.Count >= StepCatalogue.Default.Definitions.Count * 8 / 10, $"{met.Count} of {StepCatalogue.Default.Definitions.Count}");
    }

    private static Turn NetTurn(Dance dance)
    {
        Turn sum = Turn.None;
        foreach (WrittenStep step in dance.Sections.SelectMany(s => s.Steps))
        {
            sum += step.Action.Turn;
        }

        return sum;
    }

    /// <summary>Asserts that nothing else is read. False where the line has two readings, which the reader asks about.</summary>
    private static bool IsReadBack(Dance dance, string text)
    {
        Draft draft = DanceReader.Read(text);
        if (IsInDoubt(draft.Report))
        {
            return false;
        }

        Assert.True(!draft.Report.Complaints.Any(c => c.Severity >= Severity.Question), Asked(text, draft.Report));
        List<string> written = Danced.Of(dance);
        List<string> read = Danced.Of(draft.Dance);
        for (int i = 0; i < Math.Max(written.Count, read.Count); i++)
        {
            string a = i < written.Count ? written[i] : "nothing";
            string b = i < read.Count ? read[i] : "nothing";
            Assert.True(a == b, $"written: {a}\nread:    {b}\n{text}");
        }

        return true;
    }

    // Figures with a customary filler on the last count ("toe fan, pose" over three counts) may be shared out in two ways.
    private static bool IsInDoubt(Report report) => report.Complaints.Any(c => c.Rule.Id == "reading/two-readings");

    private static string Asked(string text, Report report)
        => string.Join('\n', report.Complaints.Where(c => c.Severity >= Severity.Question).Select(c => $"{c.Rule.Id} {c.Message}").Append(text));
}
