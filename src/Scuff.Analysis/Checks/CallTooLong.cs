using System.Globalization;
using Scuff.Analysis.Calls;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A call of her own that nobody can say in time.</summary>
public sealed class CallTooLong : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "call/too-long",
        Severity.Hint,
        "At {tempo} counts a minute there is no room for “{words}” before it is danced, so it is not called.",
        "A call has to end before its move begins, and has two short words a beat at most. Shorter words, or a slower practice speed, bring it back.",
        """
        Called

        section 1
        1-2  step R to side, touch L together
             call 1: and now everybody takes one easy step to the right hand side of the hall where the big windows are
        3-4  step L to side, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together

        track: "Quay Road", 120 bpm, intro 16
        """,
        """
        Called

        section 1
        1-2  step R to side, touch L together
             call 1: easy right
        3-4  step L to side, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together

        track: "Quay Road", 120 bpm, intro 16
        """,
        "trade: teaching notes, section 2 (common practice)");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        bool isCalled = context.Dance.Sections.Concat(context.Dance.Tags.Select(t => t.Body)).Any(s => s.Calls.Count > 0);
        if (!isCalled || context.Tempo is not { } tempo || context.WallTimeline.Length <= Timing.Counts.Zero)
        {
            yield break;
        }

        // the second wall is called as the first, but without the count-in in its way
        CountClock clock = CountClock.Even(tempo.CountsPerMinute.ToDouble());
        CallScript script = CallWriter.Write(
            context.Dance, context.PlainTimeline, clock, new CallOptions { HelpByWall = [CallHelp.EveryStep], WithCountIn = false, Intro = 16 });
        string said = tempo.CountsPerMinute.ToDouble().ToString("0.#", CultureInfo.InvariantCulture);
        foreach (Call call in script.Unsaid.DistinctBy(c => c.Span))
        {
            if (!script.Calls.Any(c => c.Span == call.Span))
            {
                yield return TheRule.At(call.Span, ("tempo", said), ("words", call.Words));
            }
        }
    }
}
