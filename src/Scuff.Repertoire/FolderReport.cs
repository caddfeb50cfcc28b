namespace Scuff.Repertoire;

/// <summary>What a look through the linked folder found and did.</summary>
public sealed record FolderReport
{
    /// <summary>A report with nothing in it.</summary>
    public static FolderReport Nothing { get; } = new();

    /// <summary>Dances that came from new files, or came back from the bin with their files.</summary>
    public ValueList<string> Added { get; init; }

    /// <summary>Dances whose files were edited outside.</summary>
    public ValueList<string> Edited { get; init; }

    /// <summary>Dances whose files have another name now.</summary>
    public ValueList<string> Renamed { get; init; }

    /// <summary>Dances that went into the bin because their files are gone.</summary>
    public ValueList<string> Binned { get; init; }

    /// <summary>Dances whose files were written from the club, or taken away because the dance is in the bin.</summary>
    public ValueList<string> Written { get; init; }

    /// <summary>Dances of which file and club had both changed; they are among the edited as well.</summary>
    public ValueList<FolderClash> Clashes { get; init; }

    /// <summary>What could not be read or written, a sentence each.</summary>
    public ValueList<string> Troubles { get; init; }
}
