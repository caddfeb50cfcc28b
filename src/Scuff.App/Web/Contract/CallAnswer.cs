namespace Scuff.App.Web.Contract;

/// <summary>What is called, in the order said.</summary>
/// <param name="Calls">The calls.</param>
/// <param name="CountIn">Counts of count-in before the first count.</param>
internal sealed record CallAnswer(IReadOnlyList<CalledWords> Calls, int CountIn);

/// <summary>A call.</summary>
/// <param name="Kind">count-in, move, heading, tag, restart, new-wall, last-one, ending or wait.</param>
/// <param name="Words">What is said.</param>
/// <param name="At">The danced count on which the words begin; below zero in the count-in.</param>
/// <param name="Until">The danced count on which they end.</param>
/// <param name="For">The danced count on which begins what they name.</param>
/// <param name="Wall">The wall, from 1.</param>
/// <param name="Seconds">When the words begin.</param>
/// <param name="Due">When that begins which they name.</param>
/// <param name="From">Where the words that are called start in the text; equal to <paramref name="To"/> where nothing is written.</param>
/// <param name="To">Where they end.</param>
internal sealed record CalledWords(string Kind, string Words, double At, double Until, double For, int Wall, double Seconds, double Due, int From, int To);

/// <summary>What the page asks to have called.</summary>
/// <param name="Text">The text.</param>
/// <param name="Track">Title of the track whose tags and restarts are danced; null as the sheet has it; <c>none</c> for plain repetitions.</param>
/// <param name="Ending">Whether the ending is danced.</param>
/// <param name="CountsPerMinute">The pace of the click; null where <paramref name="Table"/> is given.</param>
/// <param name="Table">Counts and seconds of a track, both rising, as the fit answers them; null for the click.</param>
/// <param name="Speed">Practice speed: 1 as it is.</param>
/// <param name="Help">How much is said in each wall: every-step, headings, warnings or silent; the last goes on. Null for thinning out as usual.</param>
/// <param name="Easier">Whether the easier options of the text are danced.</param>
/// <param name="Plays">A track of the club that it is danced to by the plan in the text, in place of track, ending, pace and table; null for none.</param>
/// <param name="FirstWall">The wall at which the help begins, from 1: who starts in the middle is told as at the start.</param>
internal sealed record CallQuestion(
    string Text,
    string? Track,
    bool Ending,
    double? CountsPerMinute,
    double[][]? Table,
    double Speed,
    string[]? Help,
    bool Easier = false,
    string? Plays = null,
    int FirstWall = 1);
