using System.Security.Cryptography;
using System.Text;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>
/// Makes the bytes of a PDF follow from its content alone. The library puts the time and chance into it in a few places; each is
/// overwritten by something of the same length, so that every position in the file stays true.
/// </summary>
internal static class StableBytes
{
    private const int NamePrefix = 6;

    /// <summary>Overwrites and returns the bytes.</summary>
    public static byte[] Of(byte[] file)
    {
        // the time it was made, in the list of facts and in the metadata
        Blank(file, "/CreationDate"u8, ")"u8);
        Blank(file, "/ModDate"u8, ")"u8);
        Blank(file, "<xmp:CreateDate>"u8, "</xmp:CreateDate>"u8);
        Blank(file, "<xmp:ModifyDate>"u8, "</xmp:ModifyDate>"u8);
        NameSubsets(file);

        // the names of this very file
        List<(int At, int Length)> names = [.. Between(file, ">uuid:"u8, "<"u8), .. Identifiers(file)];
        foreach ((int at, int length) in names)
        {
            file.AsSpan(at, length).Fill((byte)'0');
        }

        string hash = Convert.ToHexString(SHA256.HashData(file));
        foreach ((int at, int length) in names)
        {
            string name = length == 36 ? $"{hash[..8]}-{hash[8..12]}-{hash[12..16]}-{hash[16..20]}-{hash[20..32]}".ToLowerInvariant() : hash[..length];
            Encoding.ASCII.GetBytes(name, file.AsSpan(at, length));
        }

        return file;
    }

    private static void Blank(byte[] file, ReadOnlySpan<byte> from, ReadOnlySpan<byte> upto)
    {
        int at = file.AsSpan().IndexOf(from);
        if (at >= 0)
        {
            int end = file.AsSpan(at).IndexOf(upto);
            file.AsSpan(at, end + upto.Length).Fill((byte)' ');
        }
    }

    // A part of a font is named by six letters and a plus before the name of the whole.
    private static void NameSubsets(byte[] file)
    {
        Dictionary<string, string> names = [];
        foreach (int at in Places(file, "/FontName/"u8).Concat(Places(file, "/BaseFont/"u8)).Order())
        {
            if (file[at + NamePrefix] == '+')
            {
                string old = Encoding.ASCII.GetString(file, at, NamePrefix);
                if (!names.TryGetValue(old, out string? name))
                {
                    name = "SCUFF" + (char)('A' + names.Count);
                    names.Add(old, name);
                }

                Encoding.ASCII.GetBytes(name, file.AsSpan(at, NamePrefix));
            }
        }
    }

    private static List<(int At, int Length)> Identifiers(byte[] file)
    {
        int trailer = file.AsSpan().LastIndexOf("/ID["u8);
        if (trailer < 0)
        {
            return [];
        }

        int end = trailer + file.AsSpan(trailer).IndexOf("]"u8);
        return [.. Between(file.AsSpan(0, end), "<"u8, ">"u8, trailer)];
    }

    private static List<(int At, int Length)> Between(ReadOnlySpan<byte> file, ReadOnlySpan<byte> from, ReadOnlySpan<byte> upto, int start = 0)
    {
        List<(int At, int Length)> found = [];
        for (int at = start; ;)
        {
            int next = file[at..].IndexOf(from);
            if (next < 0)
            {
                return found;
            }

            at += next + from.Length;
            int length = file[at..].IndexOf(upto);
            if (length < 0)
            {
                return found;
            }

            found.Add((at, length));
            at += length;
        }
    }

    private static List<int> Places(ReadOnlySpan<byte> file, ReadOnlySpan<byte> mark)
    {
        List<int> places = [];
        for (int at = 0; ;)
        {
            int next = file[at..].IndexOf(mark);
            if (next < 0)
            {
                return places;
            }

            at += next + mark.Length;
            places.Add(at);
        }
    }
}
