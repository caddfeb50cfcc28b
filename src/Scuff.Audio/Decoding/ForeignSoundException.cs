namespace Scuff.Audio.Decoding;

/// <summary>Raised inside this room when a file is of a kind that only another program reads; the front door then asks that program.</summary>
/// <param name="kind">The kind with its article, as it stands in a sentence: <c>an M4A file</c>.</param>
/// <param name="name">The kind by name: <c>M4A</c>.</param>
internal sealed class ForeignSoundException(string kind, string name) : Exception(kind)
{
    /// <summary>The kind with its article.</summary>
    public string Kind => Message;

    /// <summary>The kind by name.</summary>
    public string Name { get; } = name;
}
