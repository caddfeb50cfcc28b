namespace Scuff.Repertoire.Storage;

/// <summary>A text that a dance had before.</summary>
internal sealed class VersionEntry
{
    public long Key { get; set; }

    public long DanceKey { get; set; }

    public int Number { get; set; }

    public string Name { get; set; } = "";

    public DateTimeOffset SavedAt { get; set; }

    public string Hand { get; set; } = "";

    public string Text { get; set; } = "";
}
