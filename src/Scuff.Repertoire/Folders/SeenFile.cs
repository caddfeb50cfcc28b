using System.Security.Cryptography;
using Scuff.Repertoire.Files;

namespace Scuff.Repertoire.Folders;

/// <summary>A file of the linked folder as it was found.</summary>
/// <param name="Name">Its name in the folder.</param>
/// <param name="File">What was read; holds the trouble if it could not be.</param>
/// <param name="Digest">The digest of its bytes; empty when it could not be read.</param>
internal sealed record SeenFile(string Name, TextFile File, string Digest)
{
    /// <summary>Reads a file.</summary>
    public static SeenFile Read(string folder, string name)
    {
        TextFile file = TextFile.Read(name, Path.Combine(folder, name));
        return new SeenFile(name, file, file.Trouble is null ? DigestOf(file.Bytes.Span) : "");
    }

    /// <summary>The digest of bytes.</summary>
    public static string DigestOf(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
