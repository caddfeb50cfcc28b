namespace Scuff.Diagnostics;

/// <summary>A named value put into a message.</summary>
/// <param name="Name">Place name in the template, without braces.</param>
/// <param name="Value">The value, already in trade words.</param>
public sealed record DiagnosticArgument(string Name, string Value);
