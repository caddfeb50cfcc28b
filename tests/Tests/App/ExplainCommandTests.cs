using System.Text.Json;

namespace Tests.App;

public sealed class ExplainCommandTests
{
    private const string Turning = """
        Quarter Tide

        by: Scuff demo
        level: beginner
        counts: 8
        walls: 4

        section 1
        &1&2  step R to side, step L together, step R to side, touch L together
        3&4   shuffle L forward
        5-6   step R forward, pivot 1/4 left
        7-8   step R together, hold
        """;

    [Fact]
    public void Json_has_every_event_in_danced_order_with_the_fixed_fields()
    {
        using ProgramRun run = new();
        run.Put("box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, run.Run("explain", "--json", "box.dance"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement file = Assert.Single(json.RootElement.EnumerateArray().ToArray());
        Assert.Equal("box.dance", file.GetProperty("file").GetString());
        JsonElement[] events = [.. file.GetProperty("events").EnumerateArray()];
        Assert.Equal(16, events.Length);
        Assert.Equal(
            """{"wall":1,"section":1,"count":"1","foot":"R","action":"step R to side","weight":"R","facing":"12:00","line":9}""",
            JsonSerializer.Serialize(events[0]));
        Assert.Equal(
            """{"wall":1,"section":2,"count":"8","foot":"L","action":"step L in place","weight":"L","facing":"12:00","line":18}""",
            JsonSerializer.Serialize(events[15]));
    }

    [Fact]
    public void An_and_is_named_after_the_count_it_follows_and_before_count_1_it_is_0()
    {
        using ProgramRun run = new();

        run.RunWithInput(Turning, "explain", "--json", "--wall", "1");

        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Equal(
            ["0&", "1", "1&", "2", "3", "3&", "4", "5", "6", "7", "8"],
            json.RootElement[0].GetProperty("events").EnumerateArray().Select(e => e.GetProperty("count").GetString()));
    }

    [Fact]
    public void One_wall_can_be_asked_for_and_one_that_is_not_danced_is_told()
    {
        using ProgramRun run = new();

        run.RunWithInput(Turning, "explain", "--json", "--wall", "3");
        using JsonDocument json = JsonDocument.Parse(run.Out);
        JsonElement[] events = [.. json.RootElement[0].GetProperty("events").EnumerateArray()];
        Assert.All(events, e => Assert.Equal(3, e.GetProperty("wall").GetInt32()));
        Assert.Equal("6:00", events[0].GetProperty("facing").GetString());

        Assert.Equal(2, run.RunWithInput(Turning, "explain", "--wall", "99"));
        Assert.Contains("there is no wall 99", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_table_for_people_names_repeated_walls_instead_of_showing_them_again()
    {
        using ProgramRun run = new();

        run.RunWithInput(Turning, "explain");

        Assert.Contains("Wall 1, starts at 12:00", run.Out, StringComparison.Ordinal);
        Assert.Contains("Wall 2, starts at 9:00", run.Out, StringComparison.Ordinal);
        Assert.Single(run.Out.Split('\n'), l => l.Contains("count", StringComparison.Ordinal) && l.Contains("foot", StringComparison.Ordinal));

        run.RunWithInput(Turning, "explain", "--all");
        Assert.Equal(4, run.Out.Split('\n').Count(l => l.Contains("count", StringComparison.Ordinal) && l.Contains("foot", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_taller_dancer_takes_longer_steps()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.RunWithInput(ProgramRun.CleanDance, "explain", "--height", "1.5"));
        int small = PlaceOfFirstStep(run.Out);
        run.RunWithInput(ProgramRun.CleanDance, "explain", "--height", "2");
        int tall = PlaceOfFirstStep(run.Out);

        Assert.True(small > 0 && tall > small, $"{small} and {tall}");
        Assert.Contains("for a dancer of 2.00 m", run.Out, StringComparison.Ordinal);
    }

    private static int PlaceOfFirstStep(string table)
    {
        string row = table.Split('\n').First(l => l.EndsWith("step R to side", StringComparison.Ordinal));
        return int.Parse(row.Split(' ', StringSplitOptions.RemoveEmptyEntries)[4], System.Globalization.CultureInfo.InvariantCulture);
    }

    [Fact]
    public void A_file_that_cannot_be_read_is_an_object_with_an_error()
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.Run("explain", "--json", "gone.dance"));

        using JsonDocument json = JsonDocument.Parse(run.Out);
        Assert.Contains("gone.dance", json.RootElement[0].GetProperty("error").GetString(), StringComparison.Ordinal);
        Assert.Equal(0, json.RootElement[0].GetProperty("events").GetArrayLength());
    }
}
