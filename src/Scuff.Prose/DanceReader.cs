using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Prose;

/// <summary>Reads step text. Never throws on any text.</summary>
public static class DanceReader
{
    /// <summary>Reads a whole text.</summary>
    public static Draft Read(string text) => new(text, new Dance(), Report.Empty);
}
