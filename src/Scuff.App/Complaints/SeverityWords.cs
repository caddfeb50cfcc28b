using Scuff.Diagnostics;

namespace Scuff.App.Complaints;

/// <summary>Severities in words.</summary>
internal static class SeverityWords
{
    /// <summary>The severities, worst first.</summary>
    public static IReadOnlyList<Severity> WorstFirst { get; } = [Severity.Error, Severity.Question, Severity.Warning, Severity.Hint];

    /// <summary>One word, the same in JSON.</summary>
    public static string Of(Severity severity) => severity switch
    {
        Severity.Error => "error",
        Severity.Question => "question",
        Severity.Warning => "warning",
        Severity.Hint => "hint",
        _ => throw new ArgumentOutOfRangeException(nameof(severity)),
    };
}
