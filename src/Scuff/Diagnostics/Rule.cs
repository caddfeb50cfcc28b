namespace Scuff.Diagnostics;

/// <summary>A thing Scuff complains about. Static data; each has a page in docs/rules made from it.</summary>
/// <param name="Id">Stable id in words: <c>weight/foot-not-free</c>. Never reused.</param>
/// <param name="Severity">Default severity.</param>
/// <param name="Message">English sentence with named places in braces: <c>{foot}</c>.</param>
/// <param name="Reason">Why it is a trouble on the floor, one or two sentences.</param>
/// <param name="Breaks">The text of a small dance that breaks just this rule.</param>
/// <param name="Keeps">The nearest text that does not.</param>
/// <param name="Source">Where the rule comes from (an id of the trade's rule table, a handbook), or "ours".</param>
public sealed record Rule(
    string Id,
    Severity Severity,
    string Message,
    string Reason,
    string Breaks,
    string Keeps,
    string Source)
{
    /// <summary>A track written by hand that the examples are danced to, for rules on what was heard; empty for all others.</summary>
    public string Music { get; init; } = "";

    /// <summary>Makes a complaint of this rule.</summary>
    public Diagnostic At(TextSpan span, params ReadOnlySpan<(string Name, string Value)> arguments)
        => new(this, Severity, span, ToArguments(arguments), default, default);

    private static ValueList<DiagnosticArgument> ToArguments(ReadOnlySpan<(string Name, string Value)> arguments)
    {
        DiagnosticArgument[] made = new DiagnosticArgument[arguments.Length];
        for (int i = 0; i < made.Length; i++)
        {
            made[i] = new DiagnosticArgument(arguments[i].Name, arguments[i].Value);
        }

        return ValueList.Create<DiagnosticArgument>(made);
    }
}
