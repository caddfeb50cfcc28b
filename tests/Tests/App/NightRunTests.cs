using Scuff.App.Programmes;

namespace Tests.App;

public sealed class NightRunTests
{
    private static readonly DateTimeOffset Half = new(2026, 12, 5, 19, 30, 0, TimeSpan.FromHours(1));
    private static readonly EveningPlan Begun = NightRun.Begin(
        EveningPlan.Empty with
        {
            Stops = [new EveningStop { AtMinute = 8, Minutes = 10 }, new EveningStop { AtMinute = 40, Minutes = 20, IsLesson = true, DanceId = "d3" }],
            Requests = [new EveningRequest { DanceId = "d1" }, new EveningRequest { DanceId = "d3" }],
            Pins = [new EveningPin { Kind = EveningPinKind.Somewhere, DanceId = "d1" }],
            OpeningId = "d1",
            Programme = Line.Programme(Line.Of("d1", 0), Line.Of("d2", 1), Line.Rest(1, 480, 600), Line.Of("d3", 0, stretch: 2, start: 1080)),
        },
        Half);

    [Fact]
    public void A_tick_takes_the_first_line_and_only_the_one_she_saw()
    {
        EveningPlan ticked = NightRun.Tick(Begun, 0, Half.AddMinutes(4))!;

        Assert.Equal(["d2", "", "d3"], ticked.Programme!.Items.Select(i => i.DanceId));
        Assert.Equal("d1", Assert.Single(ticked.Night!.Done).Item.DanceId);
        Assert.Null(NightRun.Tick(ticked, 0, Half.AddMinutes(5)));
    }

    [Fact]
    public void A_tick_is_taken_back_whole()
        => Assert.Equal(Begun.Text(), NightRun.Back(NightRun.Tick(Begun, 0, Half.AddMinutes(4))!)!.Text());

    [Fact]
    public void A_line_to_come_is_left_out_and_the_present_one_stays()
    {
        EveningPlan left = NightRun.Skip(Begun, 240, Half.AddMinutes(1))!;

        Assert.Equal(["d1", "", "d3"], left.Programme!.Items.Select(i => i.DanceId));
        Assert.True(left.Night!.Done[0].IsSkipped);
        Assert.Null(NightRun.Skip(left, 240, Half.AddMinutes(2)));
    }

    [Fact]
    public void Time_is_short_when_the_last_line_would_end_after_the_end()
    {
        Assert.False(NightRun.IsShort(Begun, 22, 0));
        Assert.True(NightRun.IsShort(Begun, 22, 300));
        Assert.False(NightRun.IsShort(Begun with { Night = Begun.Night! with { EndMinute = 40 } }, 22, 300));
    }

    [Fact]
    public void An_evening_counts_from_its_time_and_a_rehearsal_from_when_it_began()
    {
        Assert.Equal(Half, NightRun.Origin(Half, new EveningNight { BegunAt = Half.AddMinutes(20) }));
        Assert.Equal(Half.AddDays(-3), NightRun.Origin(Half, new EveningNight { BegunAt = Half.AddDays(-3) }));
    }

    [Fact]
    public void A_rest_that_is_over_lies_where_it_was_and_a_lesson_to_come_begins_when_it_can()
    {
        EveningPlan plan = NightRun.Tick(NightRun.Tick(Begun, 0, Half.AddMinutes(4))!, 240, Half.AddMinutes(8))!;
        plan = NightRun.Tick(plan, 480, Half.AddMinutes(25))!;

        EveningPlan asked = NightRun.Asked(plan, Half, 45 * 60);

        Assert.Equal([(8, 17), (45, 20)], asked.Stops.Select(s => (s.AtMinute, s.Minutes)));
    }

    [Fact]
    public void A_rest_left_out_ahead_of_its_time_takes_no_time_of_the_rest()
    {
        EveningPlan plan = NightRun.Skip(Begun, 480, Half.AddMinutes(2))!;

        EveningStop stop = NightRun.Asked(plan, Half, 4 * 60).Stops[0];

        Assert.True(stop.AtMinute + stop.Minutes <= 4, $"{stop}");
    }

    [Fact]
    public void What_was_danced_is_no_wish_any_more_and_what_was_taught_still_is()
    {
        EveningItem lesson = new() { Stretch = 1, Place = 0, Start = 240, Seconds = 600, DanceId = "d3", Title = "D3" };
        EveningPlan plan = Begun with { Programme = Line.Programme(Line.Of("d1", 0), lesson, Line.Of("d3", 0, stretch: 2, start: 840)) };
        plan = NightRun.Tick(NightRun.Tick(plan, 0, Half.AddMinutes(4))!, 240, Half.AddMinutes(14))!;

        EveningPlan asked = NightRun.Asked(plan, Half, 14 * 60);

        Assert.Equal(["d3"], asked.Requests.Select(r => r.DanceId));
        Assert.Empty(asked.Pins);
        Assert.Equal("", asked.OpeningId);
    }
}
