using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>Tracks that do not say when to begin.</summary>
public sealed class IntroMissing : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/intro-missing",
        Severity.Hint,
        "“{track}” has {missing}: write for example intro 16.",
        "When do I come in? is the first thing that a stranger asks. With counts and a tempo the sheet prints the seconds too.",
        """
        Waiting

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Stones in a Row" by Captain Oyster, 120 bpm
        """,
        """
        Waiting

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "Stones in a Row" by Captain Oyster, 120 bpm, intro 16
        """,
        "trade rule R26");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Dance.Header.Any(field => field.Key == "intro"))
        {
            yield break;
        }

        foreach (Track track in context.Dance.Tracks)
        {
            string missing = (track.Intro, track.IntroSeconds, track.Tempo) switch
            {
                (null, null, _) => "no intro",
                (null, _, _) => "an intro in seconds only",
                (_, null, null) => "an intro without seconds, and no tempo to compute them from",
                _ => "",
            };
            if (missing.Length > 0)
            {
                yield return TheRule.At(track.Span, ("track", track.Title), ("missing", missing));
            }
        }
    }
}
