using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A part or tag in the sequence that is not written.</summary>
public sealed class SequenceUnknownPart : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "sequence/unknown-part",
        Severity.Error,
        "The sequence has {name}, but the sheet has no such {kind}{known}.",
        "What is danced there is not written anywhere.",
        """
        Order

        sequence: A C A

        part A
        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        part B
        section 1
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together
        """,
        """
        Order

        sequence: A B A

        part A
        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        part B
        section 1
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R forward, touch L together
        7-8  step L back, touch R together
        """,
        "trade rule R30");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        HashSet<string> told = new(StringComparer.OrdinalIgnoreCase);
        foreach (SequenceItem item in dance.Sequence.Concat(dance.Tracks.SelectMany(track => track.Sequence)))
        {
            bool isThere = item.IsTag ? dance.FindTag(item.Name) is not null : dance.FindPart(item.Name) is not null;
            if (!isThere && told.Add(item.Name))
            {
                yield return Tell(dance, item.Span, item.Name, item.IsTag);
            }
        }

        foreach (Interruption interruption in context.Interruptions)
        {
            if (interruption.PartName.Length > 0 && dance.FindPart(interruption.PartName) is null && told.Add(interruption.PartName))
            {
                yield return Tell(dance, interruption.Span, interruption.PartName, isTag: false);
            }
        }
    }

    private static Diagnostic Tell(Dance dance, TextSpan span, string name, bool isTag)
    {
        List<string> names = [.. isTag ? dance.Tags.Select(tag => tag.Name) : dance.Parts.Select(part => part.Name).Where(part => part.Length > 0)];
        string known = names.Count == 0 ? "" : "; it has " + Words.Join(names);
        return TheRule.At(span, ("name", name), ("kind", isTag ? "tag" : "part"), ("known", known));
    }
}
