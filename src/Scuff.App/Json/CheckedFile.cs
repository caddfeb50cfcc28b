using System.Text.Json.Serialization;
using Scuff.Analysis;
using Scuff.App.Complaints;
using Scuff.App.Files;
using Scuff.Timing;

namespace Scuff.App.Json;

/// <summary>What <c>check --json</c> says about one file. The names are fixed: scripts depend on them.</summary>
internal sealed record CheckedFile
{
    /// <summary>The file as named.</summary>
    public required string File { get; init; }

    /// <summary>Why it could not be read; absent when it was.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Error { get; init; }

    /// <summary>The complaints in the order of their places.</summary>
    public required IReadOnlyList<Complaint> Complaints { get; init; }

    /// <summary>Counts of one repetition (of all parts once, for a phrased dance).</summary>
    public double? Counts { get; init; }

    /// <summary>Turn of one repetition in eighths, right positive; null when unknown.</summary>
    public double? NetTurnEighths { get; init; }

    /// <summary>Walls: 1, 2, 4 or 8; null when unknown.</summary>
    public int? Walls { get; init; }

    /// <summary>The level that the heading states, or null.</summary>
    public string? Level { get; init; }

    /// <summary>A file that was read.</summary>
    public static CheckedFile Of(DanceInput input, DanceAnalysis analysis)
    {
        TextLines lines = new(analysis.Draft.Text);
        return new CheckedFile
        {
            File = input.Name,
            Complaints = [.. analysis.Report.Complaints.Select(d => Complaint.Of(d, lines))],
            Counts = Number(analysis.Dance.Length.Value),
            NetTurnEighths = analysis.NetTurn is { } turn ? Number(turn.Eighths) : null,
            Walls = analysis.Walls,
            Level = LevelWords.Of(analysis.Dance),
        };
    }

    /// <summary>A file that could not be read.</summary>
    public static CheckedFile Unreadable(DanceInput input) => new() { File = input.Name, Error = input.Trouble, Complaints = [] };

    private static double Number(Ratio ratio) => ratio.ToDouble();
}
