namespace Scuff.Audio.Decoding;

/// <summary>Gathers title, artist and album while a file is read; of several answers the first counts.</summary>
internal sealed class TagCollector
{
    // longer than any title; keeps a hostile tag out of tables and logs
    private const int Longest = 300;

    /// <summary>Name of the track, or null.</summary>
    public string? Title { get; private set; }

    /// <summary>Who plays it, or null.</summary>
    public string? Artist { get; private set; }

    /// <summary>The collection it is from, or null.</summary>
    public string? Album { get; private set; }

    /// <summary>Takes a title unless there is one.</summary>
    public void OfferTitle(string? text) => Title ??= Clean(text);

    /// <summary>Takes an artist unless there is one.</summary>
    public void OfferArtist(string? text) => Artist ??= Clean(text);

    /// <summary>Takes an album unless there is one.</summary>
    public void OfferAlbum(string? text) => Album ??= Clean(text);

    /// <summary>Takes what another collector has where this one has nothing.</summary>
    public void Offer(TagCollector other)
    {
        OfferTitle(other.Title);
        OfferArtist(other.Artist);
        OfferAlbum(other.Album);
    }

    // Text ends at a zero; control characters and lone surrogates become spaces. Null when nothing is left.
    private static string? Clean(string? text)
    {
        if (text is null)
        {
            return null;
        }

        int zero = text.IndexOf('\0', StringComparison.Ordinal);
        ReadOnlySpan<char> all = zero < 0 ? text : text.AsSpan(0, zero);
        char[] kept = all[..Math.Min(all.Length, Longest)].ToArray();
        for (int i = 0; i < kept.Length; i++)
        {
            bool paired = char.IsHighSurrogate(kept[i])
                ? i + 1 < kept.Length && char.IsLowSurrogate(kept[i + 1])
                : !char.IsLowSurrogate(kept[i]) || (i > 0 && char.IsHighSurrogate(kept[i - 1]));
            if (!paired || char.IsControl(kept[i]) || kept[i] == '\uFEFF')
            {
                kept[i] = ' ';
            }
        }

        string said = new string(kept).Trim();
        return said.Length == 0 ? null : said;
    }
}
