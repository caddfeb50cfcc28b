using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Scuff.Analysis;
using Scuff.Analysis.Effort;
using Scuff.Analysis.Likeness;
using Scuff.App.Json;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Repertoire;
using Scuff.Timelines;

namespace Scuff.App.Clubs;

/// <summary>What a club keeps of a dance beside its text.</summary>
internal sealed class DanceFactReader : IDanceFactReader
{
    // The compiler names every build of a program part after its content, so another reading is another name.
    private static readonly string ThisVersion = string.Concat(
        new[] { typeof(DanceReader), typeof(DanceAnalysis), typeof(Dance), typeof(DanceFactReader) }.Select(t => t.Module.ModuleVersionId.ToString("N", CultureInfo.InvariantCulture)[..8]));

    public string Version => ThisVersion;

    public DanceFacts Read(string text)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
        Dance dance = analysis.Dance;
        double? fastest = analysis.Tempo?.BeatsPerMinute.ToDouble();
        double? slowest = dance.Tracks.Select(t => t.Tempo?.BeatsPerMinute.ToDouble()).Where(t => t is > 0).Min() ?? fastest;
        return new DanceFacts
        {
            Title = dance.Title,
            Choreographer = dance.Header.FirstOrDefault(h => h.Key == "by")?.Value ?? "",
            Level = LevelWords.Of(dance) ?? "",
            Counts = dance.Length.Value.Floor,
            Walls = analysis.Walls,
            Rhythm = dance.Rhythm,
            SlowestTempo = slowest,
            FastestTempo = fastest,
            Songs = dance.Tracks.Select(t => t.Title).Where(t => t.Length > 0).Distinct(StringComparer.OrdinalIgnoreCase).ToValueList(),
            Errors = analysis.Report.Complaints.Count(c => c.Severity == Severity.Error),
            Questions = analysis.Report.Complaints.Count(c => c.Severity == Severity.Question),
            Warnings = analysis.Report.Complaints.Count(c => c.Severity == Severity.Warning),
            Fingerprint = FingerprintOf(analysis.OnceTimeline),
            Rank = (int)(dance.ClaimedLevel ?? analysis.Level.Level),
            Effort = DanceEffort.Of(analysis).Tenths,
            Feet = FeetPrint.Of(analysis),
        };
    }

    // Two dances have one fingerprint when the same feet do the same things on the same counts, whatever the words.
    private static string FingerprintOf(Timeline timeline)
    {
        if (timeline.Steps.Count == 0)
        {
            return "";
        }

        StringBuilder danced = new();
        foreach (TimedStep step in timeline.Steps)
        {
            danced.Append(CultureInfo.InvariantCulture, $"{step.At} {Phrasing.Describe(step.Action)};");
        }

        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(danced.ToString())))[..32];
    }
}
