using Scuff.Analysis.Memory;

namespace Tests.Analysis.Memory;

public sealed class DanceMemoryTests
{
    private static readonly DateOnly Today = new(2026, 11, 30);

    [Fact]
    public void What_was_never_danced_cannot_be_forgotten()
        => Assert.Null(DanceMemory.Of(2, [Today.AddDays(1)], Today));

    [Fact]
    public void Of_a_new_dance_half_is_left_after_a_week()
        => Assert.Equal(0.5, DanceMemory.Of(1, [Today.AddDays(-7)], Today)!.Left, 1e-9);

    [Fact]
    public void The_better_it_was_known_and_the_oftener_it_was_danced_the_more_is_left()
    {
        double[] byKnowing = [.. Enumerable.Range(1, 4).Select(k => DanceMemory.Of(k, [Today.AddDays(-40)], Today)!.Left)];
        double[] byDays = [.. Enumerable.Range(1, 6).Select(n => DanceMemory.Of(3, Enumerable.Range(0, n).Select(i => Today.AddDays(-40 - (7 * i))), Today)!.Left)];

        Assert.Equal(byKnowing.Order(), byKnowing);
        Assert.Equal(byDays.Order(), byDays);
        Assert.Equal(6, byDays.Distinct().Count());
    }

    [Fact]
    public void It_is_forgotten_from_day_to_day()
    {
        double[] left = [.. Enumerable.Range(0, 400).Select(d => DanceMemory.Of(3, [Today.AddDays(-d)], Today)!.Left)];

        Assert.Equal(left.OrderDescending(), left);
    }

    [Fact]
    public void What_was_danced_this_week_is_not_due_and_what_is_all_but_gone_is_less_due_than_what_is_going()
    {
        int fresh = DanceMemory.Of(4, [Today.AddDays(-3)], Today)!.Due;
        int going = DanceMemory.Of(2, [Today.AddDays(-90)], Today)!.Due;
        int gone = DanceMemory.Of(1, [Today.AddDays(-3000)], Today)!.Due;

        Assert.Equal(0, fresh);
        Assert.InRange(gone, 1, going - 1);
    }

    [Fact]
    public void Where_nobody_marked_it_the_days_say_how_well_it_is_known()
        => Assert.Equal(DanceMemory.Of(2, Days(3), Today), DanceMemory.Of(0, Days(3), Today));

    private static IEnumerable<DateOnly> Days(int count) => Enumerable.Range(0, count).Select(i => Today.AddDays(-30 - i));
}
