namespace Scuff.Repertoire;

/// <summary>A file of the linked folder and its dance in the club that had both changed. The text of the file is the dance's now.</summary>
/// <param name="Id">The dance.</param>
/// <param name="Version">The number of the version that holds the text the club had. It bears a name, so it is never thinned out.</param>
public sealed record FolderClash(string Id, int Version);
