using System.Globalization;
using Scuff.Diagnostics;

namespace Scuff.Steps;

/// <summary>A fault in a data file of the step catalogue.</summary>
/// <param name="File">The file's name.</param>
/// <param name="Line">One-based line.</param>
/// <param name="Diagnostic">The complaint; its span is the line within the file.</param>
public sealed record CatalogueComplaint(string File, int Line, Diagnostic Diagnostic)
{
    /// <summary>File, line, rule and sentence, as a compiler prints them.</summary>
    public override string ToString()
        => string.Create(CultureInfo.InvariantCulture, $"{File}:{Line}: {Diagnostic.Rule.Id}: {Diagnostic.Message}");
}
