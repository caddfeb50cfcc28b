using Scuff.Analysis.Checks.Walks;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>A tag that is played but not written.</summary>
public sealed class InterruptionUnknownTag : ICheck
{
    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "interruption/unknown-tag",
        Severity.Error,
        "There is no {tag} on this sheet{known}.",
        "What is danced there is not written anywhere.",
        """
        Missing

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-4  sway R, sway L, sway R, sway L

        wall 2: after 8 tag "Ropes"
        """,
        """
        Missing

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        tag "Buoys" 4 counts
        1-4  sway R, sway L, sway R, sway L

        wall 2: after 8 tag "Buoys"
        """,
        "trade rule R20");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        Dance dance = context.Dance;
        foreach (Interruption interruption in context.Interruptions)
        {
            foreach (string name in interruption.Acts.OfType<InterruptionAct.PlayTag>().Select(act => act.Name).Distinct(StringComparer.OrdinalIgnoreCase))
            {
                if (dance.FindTag(name) is not null)
                {
                    continue;
                }

                string tag = name.Length == 0 ? "tag" : "tag " + name;
                string known = dance.Tags.Count == 0 ? "" : "; it has " + Words.Join([.. dance.Tags.Select(t => t.Name)]);
                yield return TheRule.At(interruption.Span, ("tag", tag), ("known", known));
            }
        }
    }
}
