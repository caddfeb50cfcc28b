using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Tests.Prose;

namespace Tests.Analysis.Lessons;

/// <summary>Whatever is in the text, there is a plan that adds up.</summary>
public sealed class LessonHardInputTests
{
    private const int Fuzzed = 150;

    [Theory]
    [InlineData("")]
    [InlineData("Only a Title")]
    [InlineData("Empty Section\n\nsection 1\n")]
    [InlineData("Empty Parts\n\nsequence: A B A\n\npart A\n\npart B\n")]
    public void A_dance_without_counts_says_so(string text)
    {
        LessonPlan plan = LessonSamples.Read(text).Lesson(new LessonOptions { Minutes = 30 });

        Assert.Contains(plan.Notes, n => n.Kind == LessonNoteKind.NothingToTeach);
        Assert.Equal(30 * 60, plan.Steps.Sum(s => s.Seconds));
        Assert.Equal(0, plan.Taught);
    }

    [Fact]
    public void Words_that_could_not_be_read_are_taught_by_her()
    {
        LessonPlan plan = LessonSamples.Read("Odd\n\nwalls: 4\n\nsection 1\n1-4   frobnicate the widget\n5-8   vine right, touch L\n").Lesson();

        Assert.Contains(plan.Notes, n => n.Kind == LessonNoteKind.UnknownWords && n.Number == 1);
        Assert.Contains(plan.Chunks.SelectMany(c => c.Reasons), r => r.Kind == LessonReasonKind.Unknown);
        Assert.Contains(plan.Chunks.SelectMany(c => c.Moves), m => m.IsUnknown);
        Assert.Contains(plan.Steps, s => s.Kind == LessonStepKind.SecondWall);
    }

    [Fact]
    public void No_tempo_is_reckoned_with_and_said()
        => Assert.Contains(LessonSamples.Read("Quiet\n\nsection 1\n1-8   vine right, touch L, vine left, touch R\n").Lesson().Notes, n => n.Kind == LessonNoteKind.TempoTaken);

    [Fact]
    public void Faulty_dances_have_plans_that_add_up() => Assert.All(SeedTexts.Faulty, d => Judge(LessonSamples.Read(d.Text)));

    [Fact]
    public void Texts_that_nobody_would_write_have_plans_that_add_up()
    {
        for (int number = 0; number < Fuzzed; number++)
        {
            Judge(LessonSamples.Read(FuzzTexts.Make(number)));
        }
    }

    [Fact]
    public void The_same_question_has_the_same_plan()
    {
        LessonOptions options = new() { Minutes = 25, ForKnees = true };
        LessonPlan plan = LessonSamples.Club("gull-on-the-rail").Lesson(options);

        Assert.Equal(plan.Steps, LessonSamples.Club("gull-on-the-rail").Lesson(options).Steps);
    }

    private static void Judge(DanceAnalysis analysis)
    {
        foreach (int? minutes in (int?[])[null, 1, 17, 600])
        {
            LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = minutes, ForKnees = true, ForBeginners = true });

            Assert.Equal(plan.Seconds, plan.Steps.Sum(s => s.Seconds));
            Assert.Equal(analysis.Dance.Length.Value.Floor, plan.Chunks.Sum(c => c.Span.Length.Value.Floor));
            Assert.Equal(plan.Steps.Count, plan.Steps.Select(s => s.Id).Distinct().Count());
        }
    }
}
