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

    /// <summary>The revision that this text was; null for versions that are older than the counting of it here.</summary>
    public int? Revision { get; set; }

    /// <summary>The fingerprint of its facts, as the reader of that name read them; both empty when nobody did.</summary>
    public string Fingerprint { get; set; } = "";

    public string FactsBy { get; set; } = "";
}
