namespace Scuff.App.Web.Contract;

/// <summary>The classes she gives.</summary>
/// <param name="Today">The day it is, as <c>2026-11-29</c>.</param>
/// <param name="Classes">Those that go on, by weekday and time.</param>
/// <param name="Ended">Those that have ended, the last to end first.</param>
/// <param name="Levels">The levels there are, easiest first.</param>
/// <param name="Files">What the book of classes can be taken along as.</param>
internal sealed record ClassList(
    string Today,
    IReadOnlyList<ClassItem> Classes,
    IReadOnlyList<ClassItem> Ended,
    IReadOnlyList<string> Levels,
    IReadOnlyList<FileOffer> Files);

/// <summary>A class.</summary>
/// <param name="Id">Its name in addresses.</param>
/// <param name="Title">What she calls it.</param>
/// <param name="Level">Its level, or empty.</param>
/// <param name="Weekday">The day it meets, 0 for Sunday to 6 for Saturday; null when it has none.</param>
/// <param name="Starts">When it begins, as <c>19:00</c>; null when she does not say.</param>
/// <param name="Minutes">How long it lasts.</param>
/// <param name="Place">Where, or empty.</param>
/// <param name="People">About how many come; null when she does not say.</param>
/// <param name="Notes">Her words about it.</param>
/// <param name="EndedOn">The day after which it does not meet any more; null while it goes on.</param>
/// <param name="Words">When, how long, where and how many, in one line.</param>
/// <param name="Next">When it meets next and whether that is planned, in one line; empty when it has ended.</param>
internal sealed record ClassItem(
    string Id,
    string Title,
    string Level,
    int? Weekday,
    string? Starts,
    int Minutes,
    string Place,
    int? People,
    string Notes,
    string? EndedOn,
    string Words,
    string Next);

/// <summary>What she says of a class.</summary>
/// <param name="Title">What she calls it.</param>
/// <param name="Level">Its level, or empty.</param>
/// <param name="Weekday">The day it meets, 0 for Sunday to 6 for Saturday; null for none.</param>
/// <param name="Starts">When it begins, as <c>19:00</c>; null for not said.</param>
/// <param name="Minutes">How long it lasts, 1 to 600.</param>
/// <param name="Place">Where, or empty.</param>
/// <param name="People">About how many come; null for not said.</param>
/// <param name="Notes">Her words about it.</param>
/// <param name="EndedOn">The last day it met; null while it goes on.</param>
internal sealed record ClassBody(string Title, string Level, int? Weekday, string? Starts, int Minutes, string Place, int? People, string Notes, string? EndedOn);

/// <summary>A file that can be taken along.</summary>
/// <param name="Name">Its name in the address.</param>
/// <param name="Words">What the button says.</param>
/// <param name="Extension">Ending of its name, with the dot.</param>
internal sealed record FileOffer(string Name, string Words, string Extension);
