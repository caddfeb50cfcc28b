using Scuff.Analysis.Checks.Walks;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Analysis.Checks;

/// <summary>The stated tempo against what is usual for the stated rhythm.</summary>
public sealed class TempoUnusual : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "track/tempo-unusual",
        Severity.Warning,
        "“{track}” has {tempo} counts a minute; {rhythm} is usually danced at {usual}{guess}.",
        "Half and double tempo are the usual mistakes with music: a program, or a list, that counts every other beat. Dancers who look for music by the figure find the wrong songs.",
        """
        Hurry

        rhythm: polka

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "All Aboard the Little Boat" by The Ferry Queue, 236 bpm, intro 32
        """,
        """
        Hurry

        rhythm: polka
        counted: half time

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        track: "All Aboard the Little Boat" by The Ferry Queue, 236 bpm, intro 32
        """,
        "trade rule R28");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        ValueList<UsualRange> ranges = UsualTempo.Of(dance.Rhythm);
        if (ranges.Count == 0 || dance.BeatsPerCount.Sign <= 0)
        {
            yield break;
        }

        foreach (Track track in dance.Tracks)
        {
            if (track.Tempo is not { } tempo || !DancedTempo.IsBelievable(tempo.BeatsPerMinute) || IsUsual(tempo.BeatsPerMinute / dance.BeatsPerCount))
            {
                continue;
            }

            Ratio counts = tempo.BeatsPerMinute / dance.BeatsPerCount;
            string counted = IsUsual(counts / 2) ? "half" : IsUsual(counts * 2) ? "double" : "";
            Diagnostic found = TheRule.At(
                track.Span,
                ("track", track.Title),
                ("tempo", Words.Tenths(counts)),
                ("rhythm", dance.Rhythm),
                ("usual", string.Join(" or ", ranges.Select(range => $"{Words.Of(range.From)} to {Words.Of(range.To)}"))),
                ("guess", counted.Length > 0 ? $": perhaps {counted} of it is meant, or the dance is counted in {counted} time" : ""));
            if (counted.Length == 0)
            {
                found = found with { Severity = Severity.Hint };
            }
            else if (dance.BeatsPerCount == 1)
            {
                found = found.WithFixes(new Fix($"write counted: {counted} time", new DanceEdit.SetHeader("counted", counted + " time"), IsSafe: false));
            }

            yield return found;
        }

        bool IsUsual(Ratio tempo) => ranges.Any(range => tempo >= range.From && tempo <= range.To);
    }
}
