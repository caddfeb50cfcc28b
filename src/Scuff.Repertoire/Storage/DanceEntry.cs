namespace Scuff.Repertoire.Storage;

/// <summary>A dance as a row of the database. All that is derived from the text can be made again from it.</summary>
internal sealed class DanceEntry
{
    public long Key { get; set; }

    public int Revision { get; set; } = 1;

    public string Title { get; set; } = "";

    public string FoldedTitle { get; set; } = "";

    public string Choreographer { get; set; } = "";

    public string FoldedChoreographer { get; set; } = "";

    public string Level { get; set; } = "";

    public int? Counts { get; set; }

    public int? Walls { get; set; }

    public string Rhythm { get; set; } = "";

    public double? SlowestTempo { get; set; }

    public double? FastestTempo { get; set; }

    /// <summary>A song a line.</summary>
    public string Songs { get; set; } = "";

    public int Errors { get; set; }

    public int Questions { get; set; }

    public int Warnings { get; set; }

    public string Fingerprint { get; set; } = "";

    /// <summary>Digest of the text, its white space and case aside.</summary>
    public string TextDigest { get; set; } = "";

    /// <summary>The version of the reader that gave the facts.</summary>
    public string FactsBy { get; set; } = "";

    /// <summary>A tag a line, and each folded with a line feed before and after.</summary>
    public string Tags { get; set; } = "";

    public string FoldedTags { get; set; } = "";

    public DateTimeOffset AddedAt { get; set; }

    public DateTimeOffset SavedAt { get; set; }

    public DateTimeOffset? RemovedAt { get; set; }

    /// <summary>The hand of the present text.</summary>
    public string Hand { get; set; } = "";

    /// <summary>The highest number given to a version.</summary>
    public int LastVersion { get; set; }

    /// <summary>Its file in the linked folder; null when it has none.</summary>
    public string? FileName { get; set; }

    /// <summary>Digest of the bytes of the file when it and the club last agreed; kept when the file goes, to know it again.</summary>
    public string? FileDigest { get; set; }

    /// <summary>The revision that the file held then.</summary>
    public int FileRevision { get; set; }

    public int? Effort { get; set; }

    public int? Rank { get; set; }

    public string Feet { get; set; } = "";

    public DanceText Body { get; set; } = null!;
}
