namespace Scuff.App.Web.Contract;

/// <summary>A dance on a track, by the plan that its text has for it.</summary>
/// <param name="Tracks">Tracks that the text names and the club can play.</param>
/// <param name="Track">The one that is danced to; null where there is none.</param>
/// <param name="Title">Its title in the text, or empty.</param>
/// <param name="Floor">The dance danced on it from its first count to the end of the music; null where there is none.</param>
/// <param name="Table">Danced counts with the seconds of the track, both rising; empty where there is none.</param>
/// <param name="Sentence">Why it cannot be danced to a track, with a way out; empty where it can.</param>
internal sealed record PlayedAnswer(
    IReadOnlyList<PlayedTrack> Tracks,
    string? Track,
    string Title,
    FloorAnswer? Floor,
    IReadOnlyList<double[]> Table,
    string Sentence);

/// <summary>A track of the club that the text names.</summary>
/// <param name="Id">Its name in the club.</param>
/// <param name="Title">Its title.</param>
internal sealed record PlayedTrack(string Id, string Title);

/// <summary>What the page asks to have danced to a track as the text has it.</summary>
/// <param name="Text">The text.</param>
/// <param name="Track">A track of the club; null for the first that the text names and the club can play.</param>
/// <param name="Easier">Whether the easier options of the text are danced.</param>
internal sealed record PlayedQuestion(string Text, string? Track, bool Easier);
