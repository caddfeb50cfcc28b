namespace Scuff.Prose;

/// <summary>What the words of a heading may be, for who prints them.</summary>
public static class HeadingWords
{
    /// <summary>Most letters an address may have: more make a picture for the camera whose squares are too small to read over a sheet.</summary>
    public const int LongestAddress = 300;

    /// <summary>Whether words are an address on the net that a telephone can go to: http or https, with a host, without a name to sign in by.</summary>
    public static bool IsAddress(string words) => words.Length <= LongestAddress
        && !words.Any(c => char.IsWhiteSpace(c) || char.IsControl(c))
        && Uri.TryCreate(words, UriKind.Absolute, out Uri? address)
        && (address.Scheme == Uri.UriSchemeHttps || address.Scheme == Uri.UriSchemeHttp)
        && address.Host.Contains('.', StringComparison.Ordinal)
        && address.UserInfo.Length == 0;
}
