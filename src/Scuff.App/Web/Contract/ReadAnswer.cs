namespace Scuff.App.Web.Contract;

/// <summary>Everything that the page shows of a text while she types. Places are zero-based UTF-16 offsets, half open.</summary>
internal sealed record ReadAnswer
{
    /// <summary>Title, or empty.</summary>
    public required string Title { get; init; }

    /// <summary>What it is and how it stands: <c>32 counts, 4 walls, clean</c>.</summary>
    public required string Standing { get; init; }

    /// <summary>The level in words, and whether all could be read.</summary>
    public required string Level { get; init; }

    /// <summary>Counts of one repetition.</summary>
    public required double Counts { get; init; }

    /// <summary>Beats in a bar.</summary>
    public required int BeatsPerBar { get; init; }

    /// <summary>A tempo to practise at: the one stated, or the usual of the rhythm.</summary>
    public required double BeatsPerMinute { get; init; }

    /// <summary>Whether nothing worse than a hint was found.</summary>
    public required bool IsClean { get; init; }

    /// <summary>Complaints in the order of their places.</summary>
    public required IReadOnlyList<ReadComplaint> Complaints { get; init; }

    /// <summary>Count lines in the order written.</summary>
    public required IReadOnlyList<ReadLine> Lines { get; init; }

    /// <summary>Sections and tags in the order written.</summary>
    public required IReadOnlyList<ReadSection> Sections { get; init; }

    /// <summary>Moves in the order written.</summary>
    public required IReadOnlyList<ReadMove> Moves { get; init; }

    /// <summary>Pieces of the text that are drawn in a way of their own, in order, none overlapping.</summary>
    public required IReadOnlyList<ReadMark> Marks { get; init; }

    /// <summary>Tracks that the text names.</summary>
    public required IReadOnlyList<ReadTrack> Tracks { get; init; }
}

/// <summary>One complaint.</summary>
/// <param name="Id">The rule.</param>
/// <param name="Severity">error, question, warning or hint.</param>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Count">The count it is about, or null.</param>
/// <param name="Message">The sentence.</param>
/// <param name="Why">Why it is a trouble on the floor.</param>
/// <param name="Related">Other places that belong to it.</param>
/// <param name="Fixes">Mends, best first.</param>
internal sealed record ReadComplaint(
    string Id,
    string Severity,
    int From,
    int To,
    string? Count,
    string Message,
    string Why,
    IReadOnlyList<ReadRelated> Related,
    IReadOnlyList<ReadFix> Fixes);

/// <summary>Another place of a complaint.</summary>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Words">Why it belongs to it.</param>
internal sealed record ReadRelated(int From, int To, string Words);

/// <summary>A mend with the words on its button.</summary>
/// <param name="Title">A verb phrase.</param>
/// <param name="Edits">What it changes in the text, none overlapping.</param>
internal sealed record ReadFix(string Title, IReadOnlyList<ReadEdit> Edits);

/// <summary>A replacement in the text.</summary>
/// <param name="From">Where what goes starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Text">What comes.</param>
internal sealed record ReadEdit(int From, int To, string Text);

/// <summary>A count line as danced the first time.</summary>
/// <param name="From">Where it starts in the text.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Number">One-based line of the text.</param>
/// <param name="Label">The counts as printed.</param>
/// <param name="At">Danced count of its start, from zero; null for what no plain repetition dances (a tag, an ending).</param>
/// <param name="Length">Counts it covers.</param>
/// <param name="Weight">L, R, both or unknown after it; empty when it is not danced.</param>
/// <param name="Facing">Facing after it, or null when unknown.</param>
internal sealed record ReadLine(int From, int To, int Number, string Label, double? At, double Length, string Weight, string? Facing);

/// <summary>A section or a tag.</summary>
/// <param name="From">Where its heading starts.</param>
/// <param name="Name">How it is called: <c>section 2</c>, <c>tag “Lamps”</c>.</param>
/// <param name="Title">Its title, or empty.</param>
/// <param name="Counts">Its length.</param>
/// <param name="At">Danced count of its start; null for a tag.</param>
/// <param name="Facing">Facing at its end, or null.</param>
internal sealed record ReadSection(int From, string Name, string Title, double Counts, double? At, string? Facing);

/// <summary>A move with what it does, count by count.</summary>
/// <param name="From">Where its words start.</param>
/// <param name="To">Where they end.</param>
/// <param name="Name">The figure's name; empty for words that could not be read.</param>
/// <param name="Level">Level at which dancers usually first meet it, or empty.</param>
/// <param name="Call">What a caller says, or empty.</param>
/// <param name="Note">A remark on how it is done, or empty.</param>
/// <param name="Rows">What is danced.</param>
internal sealed record ReadMove(int From, int To, string Name, string Level, string Call, string Note, IReadOnlyList<ReadRow> Rows);

/// <summary>One action of a move.</summary>
/// <param name="Count">The printed count.</param>
/// <param name="Words">What is danced.</param>
/// <param name="Weight">Weight after it.</param>
/// <param name="Facing">Facing after it, or null.</param>
internal sealed record ReadRow(string Count, string Words, string Weight, string? Facing);

/// <summary>A piece of text with its kind.</summary>
/// <param name="From">Where it starts.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Kind">title, key, heading, count, move, unknown, claim, note, track or break.</param>
internal sealed record ReadMark(int From, int To, string Kind);

/// <summary>A track that the text names.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Artist">Who plays it, or empty.</param>
internal sealed record ReadTrack(string Title, string Artist);

/// <summary>What the page asks to have read.</summary>
/// <param name="Text">The text as it stands in the editor.</param>
/// <param name="Dance">The dance it belongs to, so that its tracks and namesakes are known; null for a text alone.</param>
internal sealed record ReadQuestion(string Text, string? Dance);
