using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Tests.App;

public sealed class ClassPlanningTests
{
    private static readonly DateOnly Sunday = new(2026, 11, 29);
    private static readonly ClubClass Tuesdays = new() { Id = "c1", Title = "Tuesdays", Weekday = DayOfWeek.Tuesday, Starts = new TimeOnly(19, 0), Level = "improver", People = 16 };

    [Fact]
    public void A_class_meets_next_on_its_day()
    {
        Assert.Equal(new DateOnly(2026, 12, 1), ClassPlanning.Next(Tuesdays, [], null, Sunday)!.Date);
        Assert.Equal(new DateOnly(2026, 12, 1), ClassPlanning.Next(Tuesdays, [], new DateOnly(2026, 11, 24), new DateOnly(2026, 12, 1))!.Date);
        Assert.Equal(new DateOnly(2026, 12, 8), ClassPlanning.Next(Tuesdays, [], new DateOnly(2026, 12, 1), new DateOnly(2026, 12, 1))!.Date);
        Assert.Equal(Sunday, ClassPlanning.Next(Tuesdays with { Weekday = null }, [], null, Sunday)!.Date);
    }

    [Fact]
    public void What_is_planned_and_not_held_comes_first_even_when_its_day_is_over()
    {
        ClassSession late = new() { Id = "s1", ClassId = "c1", Date = new DateOnly(2026, 11, 24) };

        Assert.Same(late, ClassPlanning.Next(Tuesdays, [new ClassSession { ClassId = "c1", Date = Sunday }, late], null, Sunday));
        Assert.Equal("This was planned for five days ago. Was it held?", ClassWords.Past(late, Sunday));
        Assert.Equal("", ClassWords.Past(late with { IsHeld = true }, Sunday));
    }

    [Fact]
    public void A_class_that_has_ended_meets_no_more()
        => Assert.Null(ClassPlanning.Next(Tuesdays with { EndedOn = new DateOnly(2026, 11, 24) }, [], null, Sunday));

    [Fact]
    public void A_class_and_its_sessions_are_said_in_a_line()
    {
        Assert.Equal("improver, Tuesdays at 19:00, 60 minutes, about 16 people", ClassWords.Of(Tuesdays));
        Assert.Equal("no fixed day, 1 minute", ClassWords.Of(new ClubClass { Title = "x", Minutes = 1 }));
        Assert.Equal("Next on Tuesday 1 December, planned", ClassWords.Next(new DateOnly(2026, 12, 1), isPlanned: true, Sunday));
        Assert.Equal("Next tomorrow, not planned yet", ClassWords.Next(new DateOnly(2026, 11, 30), isPlanned: false, Sunday));
        Assert.Equal(
            "Warmed up with A. Taught B and C. Calmed down with a dance without a title.",
            ClassWords.Danced(
                [
                    new SessionItem { Role = ItemRole.Taught, DanceId = "b", Title = "Old B" },
                    new SessionItem { Role = ItemRole.CoolDown },
                    new SessionItem { Role = ItemRole.WarmUp, Title = "A" },
                    new SessionItem { Role = ItemRole.Taught, Title = "C" },
                ],
                id => id == "b" ? "B" : null));
    }

    [Theory]
    [InlineData(0, "today")]
    [InlineData(1, "yesterday")]
    [InlineData(13, "13 days ago")]
    [InlineData(21, "three weeks ago")]
    [InlineData(120, "four months ago")]
    [InlineData(1000, "two years ago")]
    public void How_long_ago_a_day_was_is_said_as_one_says_it(int days, string words) => Assert.Equal(words, DayWords.Ago(Sunday.AddDays(-days), Sunday));

    [Fact]
    public void What_changed_in_a_sheet_says_whether_feet_are_touched()
    {
        TaughtSheet sheet = new("d1", "Moorings", new DateOnly(2026, 3, 3), 1, 2, IsNewer: true, FeetChanged: true);

        Assert.Equal("Steps changed since you taught it on Tuesday 3 March.", ClassWords.Sheet(sheet, Sunday));
        Assert.Equal("Only words changed since you taught it on Tuesday 3 March; the steps are the same.", ClassWords.Sheet(sheet with { FeetChanged = false }, Sunday));
        Assert.Equal("The sheet changed since you taught it on Tuesday 3 March.", ClassWords.Sheet(sheet with { FeetChanged = null }, Sunday));
        Assert.Equal("", ClassWords.Sheet(sheet with { IsNewer = false }, Sunday));
    }

    [Theory]
    [InlineData(3, 2, "Dance these three again on Tuesday")]
    [InlineData(1, 9, "Dance this one again next week")]
    [InlineData(2, 0, "Dance these two again today")]
    public void The_offer_says_when(int many, int days, string words) => Assert.Equal(words, ClassWords.Again(many, Sunday.AddDays(days), Sunday));
}
