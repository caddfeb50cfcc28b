using System.Globalization;
using Scuff.Analysis.Fit;
using Scuff.App.Tracks;

namespace Scuff.App.Fitting;

/// <summary>Why a track suits a dance as it does, in a sentence.</summary>
internal static class MatchWords
{
    // Below three hundredths nobody notices (trade: music, 5).
    private const double Noticed = 0.03;

    /// <summary>The sentence.</summary>
    public static string Why(TrackMatch match)
    {
        if (match.Interruptions is not { } interruptions)
        {
            return match.Map.Beats.Count == 0 ? "No beat was found in it." : "The dance could not be fitted to it.";
        }

        List<string> points =
        [
            interruptions == 0 ? "needs no tag" : $"needs {FitWords.Interruptions(interruptions)}",
            Tempo(match),
        ];
        AddIf(match.Meter > 0, match.Dance.BeatsPerBar == 3 ? "is no waltz" : "is a waltz");
        AddIf(match.Feel > 0, match.Map.Swing.Value < 1.5 ? "is straight where the dance swings" : "swings where the dance is straight");
        AddIf(match.Length > 0, match.Map.Seconds < 200 ? $"is short ({TrackWords.Length(match.Map.Seconds)})" : $"is long ({TrackWords.Length(match.Map.Seconds)})");
        AddIf(interruptions == 0 && match.Phrases > 600, "has phrases that walls do not always begin with");
        AddIf(match.Doubt > 0, "is hard to hear");
        return $"It {string.Join(", ", points.Take(points.Count - 1))}{(points.Count > 1 ? " and " : "")}{points[^1]}.";

        void AddIf(bool holds, string words)
        {
            if (holds)
            {
                points.Add(words);
            }
        }
    }

    private static string Tempo(TrackMatch match)
    {
        string counts = $"has {TrackWords.Tempo(match.CountsPerMinute)} counts a minute";
        return Math.Abs(match.TempoAway) < Noticed
            ? counts
            : string.Create(CultureInfo.InvariantCulture, $"{counts}, {Math.Abs(match.TempoAway) * 100:0} % {(match.TempoAway > 0 ? "faster" : "slower")} than usual for it");
    }
}
