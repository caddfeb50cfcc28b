namespace Scuff.App.Web.Contract;

/// <summary>What is shown in the hall, whole, so that who comes late or comes back needs nothing but the latest.</summary>
/// <param name="Number">Rises by one with every change.</param>
/// <param name="Dance">What is danced; null while nothing is.</param>
/// <param name="Playhead">Where it is; null until somebody said.</param>
internal sealed record HallNews(long Number, HallDanceName? Dance, HallPlayhead? Playhead);

/// <summary>A dance as the hall knows it.</summary>
/// <param name="Number">Another number when anything about it changed; its feet are asked for with it.</param>
/// <param name="Title">Its title; empty where it has none.</param>
internal sealed record HallDanceName(long Number, string Title);

/// <summary>Where the playhead is.</summary>
/// <param name="At">When it was there, on the clock of the hall, in milliseconds.</param>
/// <param name="Count">The danced count.</param>
/// <param name="Playing">Whether it moves.</param>
/// <param name="Pace">Counts a second, with the practice speed.</param>
/// <param name="Speed">The practice speed, a part of the full one.</param>
/// <param name="CountIn">Counts of the count-in; 0 without one.</param>
/// <param name="Waits">Counts of it that are still to be heard.</param>
/// <param name="LoopFrom">Where the section starts that is danced again and again, or null.</param>
/// <param name="LoopTo">Where it ends, or null.</param>
/// <param name="View">From where she sees it: <c>above</c>, <c>behind</c>, <c>front</c> or <c>mirror</c>.</param>
internal sealed record HallPlayhead(
    double At,
    double Count,
    bool Playing,
    double Pace,
    double Speed,
    double CountIn,
    double Waits,
    double? LoopFrom,
    double? LoopTo,
    string View);

/// <summary>A page tells where its playhead is.</summary>
/// <param name="Hand">A name for the page, the same from its opening to its closing.</param>
/// <param name="Takes">Whether the hall follows this page from now on: she has pressed play on it, or opened the hall from it.</param>
/// <param name="Playhead">Where it is.</param>
internal sealed record HallTell(string Hand, bool Takes, HallPlayhead Playhead);

/// <summary>A page tells what is danced.</summary>
/// <param name="Hand">A name for the page.</param>
/// <param name="Takes">Whether the hall follows this page from now on.</param>
/// <param name="Title">Its title.</param>
/// <param name="Eight">Counts after which the ones come again.</param>
/// <param name="Floor">What the page asked to see danced.</param>
/// <param name="Calls">What it asked to have called; null where nothing is.</param>
internal sealed record HallTellDance(string Hand, bool Takes, string Title, int Eight, FloorQuestion Floor, CallQuestion? Calls = null);

/// <summary>What a remote asks of the page that the hall follows.</summary>
/// <param name="Kind">play, stop, again, speed, section, wall, help or view.</param>
/// <param name="Number">The speed as a part of the full one; the number of the wall; the count at which the section begins, null for the whole dance.</param>
/// <param name="To">The count at which the section ends.</param>
/// <param name="Word">The help, or the view.</param>
internal sealed record HallAsk(string Kind, double? Number, double? To, string? Word);

/// <summary>Whether the hall follows the page that told.</summary>
/// <param name="Leads">It does; when not, another page leads.</param>
internal sealed record HallTold(bool Leads);

/// <summary>The dance that the hall sees.</summary>
/// <param name="Number">Its number in <see cref="HallNews"/>.</param>
/// <param name="Title">Its title.</param>
/// <param name="Eight">Counts after which the ones come again.</param>
/// <param name="Floor">Its feet.</param>
/// <param name="Calls">What is called; empty where nothing is.</param>
/// <param name="Help">How much is called: every-step, headings, warnings, silent or thinning; empty where it is not practised but only danced.</param>
internal sealed record HallDance(long Number, string Title, int Eight, FloorAnswer Floor, IReadOnlyList<CalledWords> Calls, string Help);
