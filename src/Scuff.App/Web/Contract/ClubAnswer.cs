namespace Scuff.App.Web.Contract;

/// <summary>The club she works in.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Folder">Where it lies on this machine.</param>
/// <param name="LinkedFolder">The folder of dance files that is its library; null when none is.</param>
/// <param name="Dances">How many dances it has.</param>
/// <param name="Tracks">How many tracks it has.</param>
/// <param name="InBin">How many dances lie in the bin.</param>
/// <param name="Tags">Tags in use for dances.</param>
/// <param name="Levels">Levels in use.</param>
/// <param name="FirstDance">A dance to begin with; null in an empty club.</param>
/// <param name="Version">The program's version.</param>
internal sealed record ClubAnswer(
    string Name,
    string Folder,
    string? LinkedFolder,
    int Dances,
    int Tracks,
    int InBin,
    IReadOnlyList<TagUse> Tags,
    IReadOnlyList<string> Levels,
    string? FirstDance,
    string Version);

/// <summary>A tag in use.</summary>
/// <param name="Tag">The tag.</param>
/// <param name="Count">On how many.</param>
internal sealed record TagUse(string Tag, int Count);

/// <summary>A page of a list of dances.</summary>
/// <param name="Rows">The dances.</param>
/// <param name="Total">How many there are in all.</param>
internal sealed record DanceList(IReadOnlyList<DanceItem> Rows, int Total);

/// <summary>A dance in a list.</summary>
/// <param name="Id">Its name in addresses.</param>
/// <param name="Title">Its title; empty where the text has none.</param>
/// <param name="By">Who made it, or empty.</param>
/// <param name="Facts">What it is: <c>32 counts, 4 walls, improver</c>.</param>
/// <param name="Standing">How it stands: <c>clean</c>, <c>2 errors and 1 question</c>.</param>
/// <param name="IsClean">Whether nothing worse than a hint was found.</param>
/// <param name="Songs">Songs it names.</param>
/// <param name="Tags">Her tags.</param>
/// <param name="SavedAt">When its text last changed (ISO 8601).</param>
/// <param name="RemovedAt">When it went into the bin; null when it is not there.</param>
/// <param name="FileName">The file of the linked folder that holds it, or null.</param>
internal sealed record DanceItem(
    string Id,
    string Title,
    string By,
    string Facts,
    string Standing,
    bool IsClean,
    IReadOnlyList<string> Songs,
    IReadOnlyList<string> Tags,
    string SavedAt,
    string? RemovedAt,
    string? FileName);

/// <summary>A dance with its text.</summary>
/// <param name="Item">What a list shows.</param>
/// <param name="Revision">Names the text; a save must say upon which it was written.</param>
/// <param name="Text">The text.</param>
internal sealed record DanceBody(DanceItem Item, int Revision, string Text);

/// <summary>A text to keep.</summary>
/// <param name="Text">The text.</param>
/// <param name="Revision">The revision it was written upon.</param>
/// <param name="Hand">The page that saves: the same name from its opening to its closing.</param>
internal sealed record DanceSave(string Text, int Revision, string Hand);

/// <summary>The text is kept.</summary>
/// <param name="Revision">What names it now.</param>
/// <param name="Trouble">Why the file of the linked folder could not be written, or null.</param>
internal sealed record DanceSaved(int Revision, string? Trouble);

/// <summary>The text was not kept: another page or program saved in between.</summary>
/// <param name="Sentence">What happened and what can be done.</param>
/// <param name="Revision">The revision of the text that is there.</param>
/// <param name="Text">The text that is there.</param>
internal sealed record DanceClash(string Sentence, int Revision, string Text);

/// <summary>Versions of a dance, latest first.</summary>
/// <param name="Rows">The versions.</param>
internal sealed record DanceVersions(IReadOnlyList<VersionItem> Rows);

/// <summary>A version.</summary>
/// <param name="Number">Its number.</param>
/// <param name="Name">Her name for it; empty for one that was kept unasked.</param>
/// <param name="SavedAt">When it was the present text (ISO 8601).</param>
internal sealed record VersionItem(int Number, string Name, string SavedAt);

/// <summary>A name for a version.</summary>
/// <param name="Name">The name.</param>
internal sealed record VersionName(string Name);

/// <summary>Going back to a version.</summary>
/// <param name="Revision">The revision of the present text as she sees it.</param>
internal sealed record VersionReturn(int Revision);

/// <summary>Tags.</summary>
/// <param name="Tags">The tags.</param>
internal sealed record TagsBody(IReadOnlyList<string> Tags);

/// <summary>Dances that look like one and the same.</summary>
/// <param name="Groups">Groups.</param>
internal sealed record DuplicateList(IReadOnlyList<DuplicateItem> Groups);

/// <summary>A group of them.</summary>
/// <param name="Reason">Why, in words.</param>
/// <param name="Dances">The dances.</param>
internal sealed record DuplicateItem(string Reason, IReadOnlyList<DanceItem> Dances);

/// <summary>A folder on this machine.</summary>
/// <param name="Path">Its path; empty for none.</param>
internal sealed record FolderBody(string Path);

/// <summary>What was done with a folder.</summary>
/// <param name="Sentences">One sentence for each thing that happened.</param>
internal sealed record FolderAnswer(IReadOnlyList<string> Sentences);

/// <summary>Something was done.</summary>
/// <param name="Sentence">What, for her to read.</param>
internal sealed record DoneAnswer(string Sentence);
