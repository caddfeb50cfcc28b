namespace Scuff.Repertoire.Folders;

/// <summary>What the club knows about a dance and its file.</summary>
/// <param name="Key">The dance.</param>
/// <param name="FileName">The file; null when it has none.</param>
/// <param name="FileDigest">The digest of the file when both last agreed; null when it never had one.</param>
/// <param name="IsBinned">Whether the dance is in the bin.</param>
internal sealed record KnownFile(long Key, string? FileName, string? FileDigest, bool IsBinned);
