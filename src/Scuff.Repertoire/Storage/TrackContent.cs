namespace Scuff.Repertoire.Storage;

/// <summary>What a list of tracks does not show: the map, packed, and what a person said.</summary>
internal sealed class TrackContent
{
    public long Key { get; set; }

    public byte[]? Map { get; set; }

    public string Corrections { get; set; } = "";
}
