using Scuff.Dances;

namespace Scuff.Analysis.Checks;

/// <summary>The interruptions that a heading's numbers are about.</summary>
internal static class InterruptionEvents
{
    /// <summary>
    /// What is written for every track, and beside it what the first track with interruptions adds: a heading counts for the
    /// track the dance was made for.
    /// </summary>
    public static IEnumerable<Interruption> Of(Dance dance) => dance.Interruptions
        .Concat(dance.Tracks.FirstOrDefault(track => track.Interruptions.Count > 0)?.Interruptions ?? default);

    /// <summary>Whether every sentence about the pattern was understood; else nothing is known about their number.</summary>
    public static bool AreAllRead(CheckContext context)
        => !context.Draft.Report.Complaints.Any(complaint => complaint.Rule.Id == "reading/unknown-sentence");
}
