using CsCheck;
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
    private const int Tries = 400;

    [Fact]
    public void A_written_dance_is_read_back_equal() => GeneratedDances.Any.Sample(
        dance =>
        {
            string text = GeneratedDances.Write(dance);
            Draft draft = DanceReader.Read(text);

            AssertUnderstood(draft);
            AssertSame(Danced.Of(dance), Danced.Of(draft.Dance), text);
        },
        iter: Tries);

    [Fact]
    public void Tidying_a_written_dance_changes_nothing() => GeneratedDances.Any.Sample(
        dance =>
        {
            string text = GeneratedDances.Write(dance);

            Assert.Equal(text, DanceWriter.Tidy(DanceReader.Read(text)));
        },
        iter: Tries);

    [Fact]
    public void The_checks_find_no_foot_that_is_not_free() => GeneratedDances.Any.Sample(
        dance =>
        {
            string text = GeneratedDances.Write(dance);
            Report report = DanceAnalysis.Of(DanceReader.Read(text)).Report;

            Assert.True(!report.Complaints.Any(c => c.Rule.Id.StartsWith("weight/", StringComparison.Ordinal) && c.Severity == Severity.Error), Asked(text, report));
        },
        iter: Tries);

    [Fact]
    public void Turns_add_to_the_facing_and_the_weight_is_never_nowhere() => GeneratedDances.Any.Sample(
        dance =>
        {
            Timeline timeline = Unroller.Unroll(dance, PlanBuilder.Plain(dance));

            Assert.NotEmpty(timeline.Steps);
            DancedLaws.AssertHeld(timeline);
        },
        iter: Tries);

    [Fact]
    public void All_walls_lead_back_to_the_starting_spot_when_a_wall_turns()
    {
        int turned = 0;
        GeneratedDances.Any.Sample(
            dance =>
            {
                if (NetTurn(dance).Eighths.Modulo(8).Sign != 0)
                {
                    Interlocked.Increment(ref turned);
                    DancedLaws.AssertComesHome(Unroller.Unroll(dance, PlanBuilder.Plain(dance)));
                }
            },
            iter: Tries);

        Assert.True(turned > Tries / 10, $"only {turned} of the dances turn");
    }

    [Fact]
    public void Mirrored_twice_it_is_the_dance_again() => GeneratedDances.Any.Sample(
        dance =>
        {
            Dance mirrored = DanceMirror.Mirror(dance);

            Assert.NotEqual(dance, mirrored);
            Assert.Equal(dance, DanceMirror.Mirror(mirrored));
        },
        iter: Tries);

    [Fact]
    public void The_mirrored_dance_can_be_written_and_read_as_well() => GeneratedDances.Any.Sample(
        dance =>
        {
            Dance mirrored = DanceMirror.Mirror(dance);
            string text = GeneratedDances.Write(mirrored).Replace("start: weight on L", "start: weight on R", StringComparison.Ordinal);
            Draft draft = DanceReader.Read(text);

            AssertUnderstood(draft);
            AssertSame(Danced.Of(mirrored), Danced.Of(draft.Dance), text);
        },
        iter: Tries);

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

    // Where figures with a customary filler share a line there may be two readings; the one that is taken is compared.
    private static void AssertUnderstood(Draft draft) => Assert.True(
        !draft.Report.Complaints.Any(c => c.Severity >= Severity.Question && c.Rule.Id != "reading/two-readings"),
        Asked(draft.Text, draft.Report));

    private static Turn NetTurn(Dance dance)
    {
        Turn sum = Turn.None;
        foreach (WrittenStep step in dance.Sections.SelectMany(s => s.Steps))
        {
            sum += step.Action.Turn;
        }

        return sum;
    }

    private static void AssertSame(List<string> written, List<string> read, string text)
    {
        for (int i = 0; i < Math.Max(written.Count, read.Count); i++)
        {
            string a = i < written.Count ? written[i] : "nothing";
            string b = i < read.Count ? read[i] : "nothing";
            Assert.True(a == b, $"written: {a}\nread:    {b}\n{text}");
        }
    }

    private static string Asked(string text, Report report)
        => string.Join('\n', report.Complaints.Where(c => c.Severity >= Severity.Question).Select(c => $"{c.Rule.Id} {c.Message}").Append(text));
}
