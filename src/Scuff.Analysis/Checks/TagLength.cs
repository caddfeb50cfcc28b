using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A tag's stated length against its counts.</summary>
public sealed class TagLength : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "tag/length-differs",
        Severity.Error,
        "The {tag} is said to have {claimed}, but its lines have {length}.",
        "One count too few in a tag puts the whole floor beside the music for the rest of the track.",
        """
        Short

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-2  sway R, sway L

        wall 2: after 8 tag "Buoys"
        """,
        """
        Short

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 2 counts
        1-2  sway R, sway L

        wall 2: after 8 tag "Buoys"
        """,
        "trade rule R24");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        foreach (Tag tag in context.Dance.Tags)
        {
            // where the reader counted moves and labels of a line and found them apart, that is the complaint
            if (tag.ClaimedLength is { } claimed
                && claimed != tag.Body.Length
                && !tag.Body.Lines.Any(line => context.IsDoubtful(line.Span)))
            {
                string name = (tag.IsBridge ? "bridge" : "tag") + (tag.Name.Length == 0 ? "" : " " + tag.Name);
                yield return TheRule.At(
                    tag.Span, ("tag", name), ("claimed", Words.Of(claimed)), ("length", Words.Of(tag.Body.Length)));
            }
        }
    }
}
