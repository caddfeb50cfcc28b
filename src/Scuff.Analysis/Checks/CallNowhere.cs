using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A call of her own on counts on which nothing begins.</summary>
public sealed class CallNowhere : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "call/nothing-begins",
        Severity.Warning,
        "“{words}” is to be called for count {counts}, but no move of this section begins there, so it is never said.",
        "A call belongs to the move that begins on its counts. On a count in the middle of a move there is nothing new to say.",
        """
        Called

        section 1
        1-4  vine right, touch L
             call 9: and away
        5-8  vine left, touch R
        """,
        """
        Called

        section 1
        1-4  vine right, touch L
             call 1: and away
        5-8  vine left, touch R
        """,
        "ours");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Section section in context.Dance.Sections.Concat(context.Dance.Tags.Select(t => t.Body)))
        {
            foreach (WrittenCall call in section.Calls)
            {
                if (call is { Counts: { } counts, Words.Length: > 0 } && !section.Steps.Any(s => counts.Contains(s.Count.Place)))
                {
                    yield return TheRule.At(call.Span, ("words", call.Words), ("counts", call.Label.Length > 0 ? call.Label : "this"));
                }
            }
        }
    }
}
