namespace Scuff.Repertoire.Storage;

/// <summary>A text with the facts that were read from it, before anything is locked.</summary>
/// <param name="Text">The text as the club keeps it.</param>
/// <param name="Facts">Its facts.</param>
/// <param name="FactsBy">The version of the reader.</param>
internal sealed record ReadDance(string Text, DanceFacts Facts, string FactsBy)
{
    /// <summary>Reads a text.</summary>
    public static ReadDance Of(string text, IDanceFactReader reader)
    {
        string tidy = DanceWriting.Tidy(text);
        return new ReadDance(tidy, reader.Read(tidy), reader.Version);
    }
}
