using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>The heading's restarts against those that happen.</summary>
public sealed class RestartCount : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/restarts-differ",
        Severity.Error,
        "The heading says {claimed}, but the dance begins again {counted}: every time counts, not every place.",
        "Dancers listen for as many restarts as they were told. Restarts at the end of a wall, or after a tag there, are none.",
        """
        Restarts

        restarts: 1

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 3: after 4 restart
        wall 6: after 4 restart
        """,
        """
        Restarts

        restarts: 2

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 3: after 4 restart
        wall 6: after 4 restart
        """,
        "trade rule R25");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Dance.ClaimedRestarts is not { } claim || !InterruptionEvents.AreAllRead(context))
        {
            yield break;
        }

        List<(int Wall, string Words)> events = [.. InterruptionEvents.Of(context.Dance)
            .Where(i => i.Restarts && IsWithinWall(context, i))
            .SelectMany(i => i.Walls.Distinct().Select(wall => (wall, i.PartName)))];
        if (events.Count == claim.Value)
        {
            yield break;
        }

        string counted = events.Count switch
        {
            0 => "nowhere",
            1 => "once (wall " + Words.Of(events[0].Wall) + ")",
            _ => Words.Of(events.Count) + " times (walls " + Words.Join([.. events.Select(e => Words.Of(e.Wall))]) + ")",
        };
        string value = Words.Of(events.Count);
        yield return TheRule
            .At(claim.Span, ("claimed", claim.Value == 1 ? "1 restart" : Words.Of(claim.Value) + " restarts"), ("counted", counted))
            .WithFixes(new Fix("write restarts: " + value, new DanceEdit.SetHeader("restarts", value), IsSafe: true));
    }

    private static bool IsWithinWall(CheckContext context, Interruption interruption)
        => interruption.AfterCounts is { } after && (context.PartOf(interruption) is not { } part || after < part.Length);
}
