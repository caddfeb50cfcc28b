using System.Globalization;
using System.Text.Json;
using Scuff.Audio.Evaluation;

namespace Bench;

/// <summary>A folder of estimates measured against a corpus, as one table: a line a style, then a line a group.</summary>
internal static class Scores
{
    /// <summary>Prints the table; songs without an estimate are counted below it and scored as if nothing had been found.</summary>
    public static void Print(TextWriter output, string corpus, string estimates)
    {
        TrackAnswer nothing = new() { Beats = [], Downbeats = [], TempoBpm = 0, CountOnes = [], Sections = [], Breaks = [] };
        List<(string Group, string Style, TrackScore Score)> rows = [];
        int missing = 0;
        using JsonDocument manifest = JsonDocument.Parse(File.ReadAllText(Path.Combine(corpus, "manifest.json")));
        foreach (JsonElement song in manifest.RootElement.GetProperty("songs").EnumerateArray())
        {
            string file = song.GetProperty("id").GetString() + ".json";
            TrackTruth truth = TrackTruth.Read(File.ReadAllText(Path.Combine(corpus, "truth", file)));
            string path = Path.Combine(estimates, file);
            bool given = File.Exists(path);
            missing += given ? 0 : 1;
            rows.Add((song.GetProperty("group").GetString()!, truth.Style, TrackScore.Of(truth, given ? TrackAnswer.Read(File.ReadAllText(path)) : nothing)));
        }

        output.WriteLine("part                        n " + string.Concat(ScoreMeans.Columns.Select(c => $"{c,7}")));
        foreach (var style in rows.GroupBy(r => $"{r.Group}: {r.Style}"))
        {
            Line(style.Key, [.. style.Select(r => r.Score)]);
        }

        foreach (var group in rows.GroupBy(r => r.Group))
        {
            Line("all of " + group.Key, [.. group.Select(r => r.Score)]);
        }

        if (missing > 0)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"songs without an estimate: {missing}"));
        }

        void Line(string name, TrackScore[] scores) => output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name,-24} {scores.Length,4} ")
            + string.Concat(ScoreMeans.Over(scores).Values.Select(v => v is double value
                ? string.Create(CultureInfo.InvariantCulture, $"{value,7:F3}")
                : "      -")));
    }
}
