using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Sheets;

namespace Tests.Analysis.Lessons;

public sealed class LessonSharedTests
{
    private const string Known = "Old Harbour\n\nsection 1\n1-4 vine right, touch L\n5-8 vine left, touch R\n\nsection 2\n1-4 rocking chair R\n5-8 jazz box R\n";
    private const string New = "New Harbour\n\nsection 1\n1-4 rocking chair R\n5-8 jazz box R\n\nsection 2\n1-4 vine left, touch R\n5-8 vine right, touch L\n\nsection 3\n1-8 walk R, L, R, L, R, L, R, L\n";

    [Fact]
    public void Sections_that_the_class_knows_from_another_dance_are_named_in_the_plan()
    {
        DanceAnalysis dance = LessonSamples.Read(New);

        LessonPlan plan = dance.Lesson(LessonOptions.Usual.Knowing([LessonSamples.Read(Known)]));

        Assert.Equal([("1", "2", false), ("2", "1", true)], plan.Shared.Select(s => (s.Shared.Section, s.Shared.OtherSection, s.Shared.IsMirrored)));
        SheetModel sheet = LessonSheet.Of(dance, plan, isAsked: false, SheetChoices.Usual);
        Assert.Contains("Section 1 is known already: it is section 2 of “Old Harbour”.", sheet.Facts);
        Assert.Contains("Section 2 is known already in the other foot: see section 1 of “Old Harbour”.", sheet.Facts);
    }

    [Fact]
    public void Where_nobody_says_what_the_class_knows_nothing_is_named()
        => Assert.Empty(LessonSamples.Read(New).Lesson(LessonOptions.Usual).Shared);
}
