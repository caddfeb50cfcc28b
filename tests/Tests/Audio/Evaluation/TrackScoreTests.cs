using System.Text.Json;
using Scuff.Audio.Evaluation;

namespace Tests.Audio.Evaluation;

public sealed class TrackScoreTests
{
    // twenty beats, two a second, an eight that begins on the fifth beat, then a bar of two before the next section
    private static readonly TrackTruth Truth = new()
    {
        Id = "small",
        Group = "generated",
        Style = "polka",
        Meter = 4,
        Beats = [.. Enumerable.Range(0, 20).Select(i => i / 2.0)],
        BarPosition = [1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 3, 4, 1, 2, 1, 2, 3, 4, 1, 2],
        BeatsInBar = [4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 4, 2, 2, 4, 4, 4, 4, 4, 4],
        Downbeats = [0, 2, 4, 6, 7, 9],
        Counts = [5, 6, 7, 8, 1, 2, 3, 4, 5, 6, 7, 8, 1, 2, 1, 2, 3, 4, 5, 6],
        CountCycle = 8,
        TempoBpm = 120,
        TempoNominal = 120,
        Sections = [new(2, 7, "A", "verse", 10, 3), new(7, 10, "B", "chorus", 6, 2)],
        Breaks = [new(6, 7, AnswerBreak.Stop, 2), new(7, 10, AnswerBreak.Drop, 6)],
        SwingRatio = 2,
        SwingLevel = "eighth",
        Features = new Dictionary<string, JsonElement> { ["half_bar"] = JsonSerializer.SerializeToElement(1) },
        Checks = new(),
    };

    private static readonly TrackAnswer Right = new()
    {
        Beats = Truth.Beats,
        Downbeats = Truth.Downbeats,
        TempoBpm = 120,
        CountOnes = [2, 6, 7],
        Sections = [new(2, 7, "x"), new(7, 10, "y")],
        Breaks = [new(6, 7)],
        SwingRatio = 2,
    };

    [Fact]
    public void The_truth_itself_is_right_in_all()
    {
        ScoreMeans means = ScoreMeans.Over([TrackScore.Of(Truth, Right)]);
        Assert.All(ScoreMeans.Columns, c => Assert.Equal(c == "SwE" ? 0 : 1, means.Mean(c)));
    }

    [Fact]
    public void What_is_not_said_is_not_scored()
    {
        ScoreMeans means = ScoreMeans.Over([TrackScore.Of(Truth, new TrackAnswer { Beats = [] })]);
        Assert.Equal(0, means.Mean("F"));
        Assert.Null(means.Mean("DbF"));
        Assert.Null(means.Mean("BrkF"));
        Assert.Null(means.Mean("Sw"));
        Assert.Throws<ArgumentOutOfRangeException>(() => means.Mean("none"));
    }

    [Fact]
    public void What_nobody_knows_is_not_scored()
    {
        TrackTruth unsure = Truth with { Checks = new(Downbeats: false, Sections: false, Counts: false, Swing: false) };
        TrackScore score = TrackScore.Of(unsure, Right);
        Assert.Equal(1, score.BeatF);
        Assert.Null(score.DownbeatF);
        Assert.Null(score.CountOneF);
        Assert.Null(score.LabelF);
        Assert.Null(score.Breaks);
        Assert.Null(score.SwingError);
    }

    [Fact]
    public void The_count_may_be_given_by_one_beat_and_runs_on_by_eight()
    {
        TrackAnswer answer = new() { Beats = Truth.Beats, FirstCountBeatIndex = 12 };
        Assert.Equal([2, 6], answer.CountOnesOf(8).Select(t => t));

        // two of two and two of three: the section after the bar of two begins anew
        TrackScore score = TrackScore.Of(Truth, answer);
        Assert.Equal(0.8, score.CountOneF!.Value, 12);
        Assert.True(score.IsFirstCountRight);
    }

    [Fact]
    public void Indices_count_in_order_of_time() => Assert.Equal([1.0], new TrackAnswer { Beats = [3, 2, 1], FirstCountBeatIndex = 0 }.CountOnesOf(8).Select(t => t));

    [Theory]
    [InlineData(2.07, true)]
    [InlineData(2.5, false)]
    [InlineData(6.0, true)]
    public void The_first_count_given_from_the_first_true_one_on_decides(double first, bool right)
    {
        Assert.Equal(right, TrackScore.Of(Truth, new TrackAnswer { CountOnes = [0.5, first] }).IsFirstCountRight);
    }

    [Fact]
    public void No_count_is_no_right_one()
    {
        Assert.False(TrackScore.Of(Truth, new TrackAnswer { CountOnes = [] }).IsFirstCountRight);
        Assert.False(TrackScore.Of(Truth, new TrackAnswer { CountOnes = [0.5] }).IsFirstCountRight);
    }

    [Fact]
    public void Only_stops_are_counted_as_breaks()
        => Assert.Equal(new BreakTally(1, 1, 1), TrackScore.Of(Truth, new TrackAnswer { Breaks = [new(6, 7), new(7, 10, AnswerBreak.Drop)] }).Breaks);

    [Fact]
    public void Means_leave_out_songs_that_lack_the_measure()
    {
        ScoreMeans means = ScoreMeans.Over([TrackScore.Of(Truth, Right), TrackScore.Of(Truth, Right with { Beats = [], SwingRatio = null })]);
        Assert.Equal(2, means.Songs);
        Assert.Equal(0.5, means.Mean("F"));
        Assert.Equal(1, means.Mean("Sw"));
    }

    [Fact]
    public void A_truth_comes_back_from_its_file_as_it_was()
    {
        string json = Truth.Write();
        TrackTruth again = TrackTruth.Read(json);
        Assert.Equal(json, again.Write());
        Assert.Equal(Truth.Beats, again.Beats);
        Assert.Equal(Truth.Sections, again.Sections);
        Assert.Equal(Truth.Breaks, again.Breaks);
        Assert.Equal(1, again.Features["half_bar"].GetInt32());
        Assert.Equal(Truth.Checks, again.Checks);
    }

    [Fact]
    public void A_truth_is_written_in_the_names_of_the_corpus()
    {
        using JsonDocument file = JsonDocument.Parse(Truth.Write());
        Assert.Equal(
            [
                "bar_position", "beats", "beats_in_bar", "breaks", "checks", "count_cycle", "counts", "downbeats", "features", "group", "id", "meter",
                "sections", "style", "swing_level", "swing_ratio", "tempo_bpm", "tempo_nominal",
            ],
            file.RootElement.EnumerateObject().Select(p => p.Name).Order(StringComparer.Ordinal));
        Assert.Equal(
            ["start", "end", "label", "name", "beats", "bars"],
            file.RootElement.GetProperty("sections")[0].EnumerateObject().Select(p => p.Name));
    }

    [Fact]
    public void An_unknown_form_is_read_as_unknown()
    {
        TrackTruth real = TrackTruth.Read("""
            { "id": "r", "group": "real", "style": "any", "meter": 4, "beats": [1, 2], "counts": null, "sections": null, "swing_ratio": null,
              "tempo_bpm": 60, "package": "somewhere", "features": { "note": "words" },
              "checks": { "beats": true, "downbeats": false, "sections": false, "counts": false, "swing": false, "tempo": true } }
            """);
        Assert.Null(real.Sections);
        Assert.Null(real.Counts);
        Assert.Empty(real.CountOnes);
        Assert.False(real.Checks.Downbeats);
        Assert.Throws<JsonException>(() => TrackTruth.Read("{}"));
        Assert.Throws<JsonException>(() => TrackTruth.Read("null"));
    }

    [Fact]
    public void An_answer_comes_back_from_its_file_as_it_was()
    {
        TrackAnswer answer = Right with { FirstCountBeatIndex = 4, Seconds = 1.5 };
        Assert.Equal(answer, TrackAnswer.Read(answer.Write()));
        Assert.Contains("\"first_count_beat_index\":4", answer.Write(), StringComparison.Ordinal);
        Assert.DoesNotContain("cpu_seconds", answer.Write(), StringComparison.Ordinal);
    }
}
