using Scuff.Dances;

namespace Scuff.Analysis;

/// <summary>Another sheet with the same title.</summary>
/// <param name="Name">What it is called by whoever keeps it, a file's name.</param>
/// <param name="Edition">Its version or date as written, or empty.</param>
public sealed record Namesake(string Name, string Edition)
{
    // The fields that tell one edition of a dance from another, the surest first.
    private static readonly string[] Keys = ["version", "changed", "date"];

    /// <summary>The version (else the date) that a dance's heading states, or empty.</summary>
    public static string EditionOf(Dance dance) => Keys
        .Select(key => dance.Header.FirstOrDefault(field => field.Key == key && field.Value.Length > 0)?.Value)
        .FirstOrDefault(value => value is not null) ?? "";
}
