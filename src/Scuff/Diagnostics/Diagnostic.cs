using System.Text;

namespace Scuff.Diagnostics;

/// <summary>One complaint: which rule, where, with which values, and what would mend it. Words come last.</summary>
/// <param name="Rule">The rule.</param>
/// <param name="Severity">The severity in this case.</param>
/// <param name="Span">The trouble's place, as narrow as possible.</param>
/// <param name="Arguments">Values for the message.</param>
/// <param name="Related">Other places.</param>
/// <param name="Fixes">Mends, best first.</param>
public sealed record Diagnostic(
    Rule Rule,
    Severity Severity,
    TextSpan Span,
    ValueList<DiagnosticArgument> Arguments,
    ValueList<RelatedPlace> Related,
    ValueList<Fix> Fixes)
{
    /// <summary>The count it is about, as printed (<c>3&amp;</c>), or null when it is about none.</summary>
    public string? Count { get; init; }

    /// <summary>The English sentence.</summary>
    public string Message
    {
        get
        {
            StringBuilder words = new(Rule.Message);
            foreach (DiagnosticArgument argument in Arguments)
            {
                words.Replace("{" + argument.Name + "}", argument.Value);
            }

            return words.ToString();
        }
    }

    /// <summary>The same complaint with mends.</summary>
    public Diagnostic WithFixes(params ReadOnlySpan<Fix> fixes) => this with { Fixes = ValueList.Create(fixes) };

    /// <summary>The same complaint with another place that belongs to it.</summary>
    public Diagnostic WithRelated(TextSpan span, string words) => this with { Related = [.. Related, new RelatedPlace(span, words)] };

    /// <summary>The same complaint, tied to a count.</summary>
    public Diagnostic OnCount(string? count) => this with { Count = count };
}
