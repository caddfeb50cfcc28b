using Scuff.Music;
using Scuff.Music.Corrections;

namespace Tests.Music.Corrections;

public sealed class CorrectionsTextTests
{
    private static readonly TrackCorrections OneOfEach = new(
    [
        new Correction.TapAlong([1, 1.523, 2.04], 0.5, 30),
        new Correction.TapAlong([1, 2]),
        new Correction.ChangeBeat(BeatLevel.Half),
        new Correction.ChangeBeat(BeatLevel.OffBeat, 2, 8.25),
        new Correction.ShiftOne(-2, 31.5),
        new Correction.SetMeter(Meter.Three),
        new Correction.SetMeter(new Meter(4, IsCompound: true)),
        new Correction.MoveBoundary(9, 11),
        new Correction.AddBoundary(40.125, "C"),
        new Correction.RemoveBoundary(61),
        new Correction.NameSection(40.2, "D", "bridge \"quiet\"\twith a tab"),
        new Correction.SetSwing(1.8),
        new Correction.SetFirstCount(17.3),
    ]);

    [Fact]
    public void What_is_written_is_read_again()
    {
        CorrectionsReading reading = CorrectionsText.Read(CorrectionsText.Write(OneOfEach));

        Assert.Empty(reading.Troubles);
        Assert.Equal(OneOfEach, reading.Corrections);
        Assert.Equal(TrackCorrections.None, CorrectionsText.Read(CorrectionsText.Write(TrackCorrections.None)).Corrections);
    }

    [Fact]
    public void Every_kind_is_in_the_round_trip()
    {
        Type[] kinds = [.. typeof(Correction).GetNestedTypes().Where(t => t.IsSubclassOf(typeof(Correction)) && t != typeof(Correction.Unknown))];

        Assert.Equal(10, kinds.Length);
        Assert.All(kinds, k => Assert.Contains(OneOfEach.All, c => c.GetType() == k));
    }

    [Fact]
    public void What_a_newer_Scuff_says_is_kept_as_it_stands()
    {
        const string text = """
            {"corrections": 1, "said": [{"kind": "swing", "ratio": 2}, {"kind": "hum", "deep": {"a": [1, 2]}}]}
            """;

        CorrectionsReading reading = CorrectionsText.Read(text);

        Assert.Empty(reading.Troubles);
        Assert.Contains("""{"kind": "hum", "deep": {"a": [1, 2]}}""", CorrectionsText.Write(reading.Corrections!), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "is not JSON: line 1")]
    [InlineData("{\n\"corrections\": 1,\n oops}", "is not JSON: line 3")]
    [InlineData("[]", "no corrections of a track")]
    [InlineData("{\"corrections\": 2, \"said\": []}", "version 2")]
    [InlineData("{\"corrections\": 1}", "\"said\" is missing")]
    [InlineData("{\"corrections\": 1, \"said\": [7]}", "Correction 1: it is no object")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"swing\", \"ratio\": 2}, {\"kind\": \"swing\"}]}", "Correction 2: \"ratio\" must be a number")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"swing\", \"ratio\": -2}]}", "\"ratio\" is -2, and must be a number from 0.5 to 4")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"one\", \"beats-later\": 1.5}]}", "must be a whole number")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"taps\", \"seconds\": [1, \"two\"]}]}", "holds \"two\"")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"beat\", \"is\": \"triple\"}]}", "half, double, off-beat")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"meter\", \"is\": \"3/4\", \"form\": 9}]}", "\"form\" is not known")]
    [InlineData("{\"corrections\": 1, \"said\": [{\"kind\": \"first-count\", \"at\": 1e999}]}", "\"at\"")]
    public void What_is_wrong_is_told_in_a_sentence(string text, string words)
    {
        CorrectionsReading reading = CorrectionsText.Read(text);

        Assert.Null(reading.Corrections);
        Assert.Contains(words, Assert.Single(reading.Troubles), StringComparison.Ordinal);
    }
}
