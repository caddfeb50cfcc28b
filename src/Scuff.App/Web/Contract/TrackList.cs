using Scuff.App.Json;

namespace Scuff.App.Web.Contract;

/// <summary>A page of a list of tracks.</summary>
/// <param name="Rows">The tracks.</param>
/// <param name="Total">How many were found in all.</param>
internal sealed record TrackList(IReadOnlyList<TrackItem> Rows, int Total);

/// <summary>A track in a list.</summary>
/// <param name="Id">Its name in addresses.</param>
/// <param name="Title">Its title, or the name of its file.</param>
/// <param name="Artist">Who plays it, or empty.</param>
/// <param name="Facts">What it is: <c>3:25, 112 beats a minute</c>; or that it was not heard yet.</param>
/// <param name="Seconds">Its length; null when it was not heard.</param>
/// <param name="Tempo">Beats a minute; null when unknown.</param>
/// <param name="FileName">The name its file came with.</param>
/// <param name="MediaType">What the browser has to play; empty where there is no sound.</param>
/// <param name="NeedsSamples">Whether the browser has to decode it and hand over its samples to have it heard.</param>
/// <param name="IsHeard">Whether it has a map.</param>
/// <param name="IsOld">Whether another version of the program heard it.</param>
/// <param name="IsByHand">Whether a person wrote its map.</param>
/// <param name="Tags">Her tags.</param>
/// <param name="RemovedAt">When it went into the bin (ISO 8601); null when it is not there.</param>
/// <param name="Job">The work that waits or runs for it; null when there is none.</param>
internal sealed record TrackItem(
    string Id,
    string Title,
    string Artist,
    string Facts,
    double? Seconds,
    double? Tempo,
    string FileName,
    string MediaType,
    bool NeedsSamples,
    bool IsHeard,
    bool IsOld,
    bool IsByHand,
    IReadOnlyList<string> Tags,
    string? RemovedAt,
    TrackJobItem? Job);

/// <summary>Long work on a track.</summary>
/// <param name="Id">Its name in addresses.</param>
/// <param name="Kind"><c>hear</c>, or <c>play</c> for a song that our own band plays first.</param>
/// <param name="Title">Of what.</param>
/// <param name="Track">The track; null as long as there is none.</param>
/// <param name="State">waiting, running, done, failed or stopped.</param>
/// <param name="Part">The part that is done, 0 to 1.</param>
/// <param name="Sentence">What she should know of how it ended, or empty.</param>
internal sealed record TrackJobItem(string Id, string Kind, string Title, string? Track, string State, double Part, string Sentence);

/// <summary>All long work, oldest first.</summary>
/// <param name="Rows">The work.</param>
internal sealed record TrackJobList(IReadOnlyList<TrackJobItem> Rows);

/// <summary>What became of a file that she dropped.</summary>
/// <param name="Track">The track.</param>
/// <param name="WasNew">False when the club had this very file.</param>
/// <param name="Sentence">What she should know of it, or empty.</param>
/// <param name="NeedsSamples">Whether the browser has to decode it and hand over its samples, because Scuff does not know the kind of file.</param>
internal sealed record TrackTaken(TrackItem Track, bool WasNew, string Sentence, bool NeedsSamples);

/// <summary>What she writes about a track.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Artist">Who plays it.</param>
internal sealed record TrackFactsBody(string Title, string Artist);

/// <summary>The songs of the demo club.</summary>
/// <param name="Rows">The songs.</param>
internal sealed record SongList(IReadOnlyList<SongItem> Rows);

/// <summary>A song of the demo club, played by our own band.</summary>
/// <param name="Title">Its title; also how it is asked for.</param>
/// <param name="Artist">The band.</param>
/// <param name="Dance">The dance it was made for, by the name of its file.</param>
/// <param name="Tempo">Beats a minute.</param>
/// <param name="Track">The track of the club that has it; null when none has.</param>
internal sealed record SongItem(string Title, string Artist, string Dance, double Tempo, string? Track);

/// <summary>Which songs are to be played into the club.</summary>
/// <param name="Titles">Their titles; empty for all.</param>
internal sealed record SongQuestion(IReadOnlyList<string> Titles);

/// <summary>Texts about a track: a map by hand, label files, corrections.</summary>
/// <param name="Name">The name of the file; its ending says what it is.</param>
/// <param name="Text">What it says.</param>
/// <param name="Sections">The label file of sections that goes with one of beats, or null.</param>
/// <param name="Track">The track it is about; null for a track without sound of its own.</param>
/// <param name="Revision">For corrections: the revision they are said upon.</param>
internal sealed record TrackTextBody(string Name, string Text, string? Sections, string? Track, int Revision);

/// <summary>How tracks suit a dance, or dances a track, the best first.</summary>
/// <param name="Rows">The tracks or dances.</param>
/// <param name="Sentence">What she should know of the list, or empty.</param>
internal sealed record MatchAnswer(IReadOnlyList<MatchedItem> Rows, string Sentence);

/// <summary>How a track suits a dance.</summary>
/// <param name="Match">All that is known of it.</param>
/// <param name="Track">The track.</param>
/// <param name="Dance">The dance; null for the text that was asked about.</param>
internal sealed record MatchedItem(MatchRow Match, string Track, string? Dance);

/// <summary>Which tracks suit a text.</summary>
/// <param name="Text">The text of the dance.</param>
/// <param name="NoTags">Only those that need no interruption.</param>
/// <param name="Most">How many are named.</param>
internal sealed record MatchTracksQuestion(string Text, bool NoTags, int Most);

/// <summary>Which dances of the club suit a track.</summary>
/// <param name="Track">The track.</param>
/// <param name="NoTags">Only those that need no interruption.</param>
/// <param name="Most">How many are named.</param>
internal sealed record MatchDancesQuestion(string Track, bool NoTags, int Most);
