using Scuff.Dances;
using Scuff.Prose.Reading;
using Scuff.Prose.Words;

namespace Scuff.Prose;

/// <summary>Reads step text. Never throws on any text: what is not understood is kept and asked about.</summary>
public static class DanceReader
{
    /// <summary>Reads a whole text. Cost grows linearly with its length.</summary>
    public static Draft Read(string text) => new TextReaderRun(text, Lexicon.Default).Read();
}
