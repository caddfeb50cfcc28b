namespace Scuff.App.Web.Contract;

/// <summary>All that a page for students shows and plays; it stands in the page itself.</summary>
/// <param name="Title">The title, or a stand-in.</param>
/// <param name="By">Who made it and where, or empty.</param>
/// <param name="Edition">Version and date, or empty.</param>
/// <param name="Facts">What kind of dance it is, in sentences.</param>
/// <param name="Cautions">What to take care of, in sentences.</param>
/// <param name="Address">Where the page is found, or empty.</param>
/// <param name="Eight">Counts after which the ones come again: 8, or 6 in three-four.</param>
/// <param name="CountsPerMinute">The tempo at full speed.</param>
/// <param name="Sections">The words of the sheet: sections, then tags.</param>
/// <param name="Breaks">Where the pattern breaks, and how it ends.</param>
/// <param name="Tracks">The music by name; none of it is in the page.</param>
/// <param name="Plain">The dance as written.</param>
/// <param name="Easier">The dance with its easier options; null where there are none.</param>
internal sealed record StudentPage(
    string Title,
    string By,
    string Edition,
    IReadOnlyList<string> Facts,
    IReadOnlyList<string> Cautions,
    string Address,
    int Eight,
    double CountsPerMinute,
    IReadOnlyList<StudentSection> Sections,
    IReadOnlyList<StudentWords> Breaks,
    IReadOnlyList<string> Tracks,
    StudentDance Plain,
    StudentDance? Easier);

/// <summary>A way to dance it.</summary>
/// <param name="Floor">The feet: as the studio has them, but each list of numbers as its first number and then the differences, which are short.</param>
/// <param name="Steps">Its actions, which the floor leaves out.</param>
/// <param name="Calls">What is called, for each amount of help.</param>
internal sealed record StudentDance(FloorAnswer Floor, StudentSteps Steps, IReadOnlyList<StudentCalls> Calls);

/// <summary>The actions of a dance in danced order, each list of the same length: what the page needs to know of them.</summary>
/// <param name="At">Danced counts.</param>
/// <param name="Count">Printed counts.</param>
/// <param name="Facing">Facing after each, or empty.</param>
internal sealed record StudentSteps(double[] At, string[] Count, string[] Facing);

/// <summary>What is called with so much help.</summary>
/// <param name="Help">every-step, headings or warnings.</param>
/// <param name="Calls">The calls.</param>
internal sealed record StudentCalls(string Help, IReadOnlyList<StudentCall> Calls);

/// <summary>A call.</summary>
/// <param name="Kind">As in the studio: move, heading, tag, restart, new-wall, last-one, ending or wait.</param>
/// <param name="Words">What is said.</param>
/// <param name="At">The danced count on which the words begin.</param>
/// <param name="For">The danced count on which begins what they name.</param>
/// <param name="Wall">The wall, from 1.</param>
internal sealed record StudentCall(string Kind, string Words, double At, double For, int Wall);

/// <summary>A section of the sheet.</summary>
/// <param name="Heading">Its heading.</param>
/// <param name="Lines">Its lines.</param>
/// <param name="Notes">Notes on the whole of it.</param>
internal sealed record StudentSection(string Heading, IReadOnlyList<StudentLine> Lines, IReadOnlyList<StudentWords> Notes);

/// <summary>A line of the sheet.</summary>
/// <param name="Number">Its line in the text, from 1: the lines of the floor carry the same number.</param>
/// <param name="Counts">Its counts as printed.</param>
/// <param name="Words">What is danced.</param>
/// <param name="Facing">Where the dance faces after it, or empty.</param>
/// <param name="Notes">Notes and options.</param>
internal sealed record StudentLine(int Number, string Counts, string Words, string Facing, IReadOnlyList<StudentWords> Notes);

/// <summary>Words with what they are about before them.</summary>
/// <param name="Lead">What they are about, as printed.</param>
/// <param name="Words">The words.</param>
internal sealed record StudentWords(string Lead, string Words);
