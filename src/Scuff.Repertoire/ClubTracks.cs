namespace Scuff.Repertoire;

/// <summary>The tracks of a club: audio, what was heard in it, and what a person said about it.</summary>
public sealed class ClubTracks
{
    internal ClubTracks()
    {
    }

    /// <summary>Larger sound files are not taken: 1 GiB, about 100 minutes of CD sound.</summary>
    public const long LargestBytes = 1L << 30;

    /// <summary>
    /// Takes in a sound file, whole or not at all. The same file twice is one track. The club does not look into it: whether it is sound is the
    /// caller's to find out, before or after.
    /// </summary>
    /// <param name="audio">The file, read to its end from where it stands.</param>
    /// <param name="fileName">The name it came with; only its last part is kept, and its ending says the media type.</param>
    /// <param name="facts">What is known about it already.</param>
    /// <exception cref="ClubTrouble">It is larger than <see cref="LargestBytes"/>, or could not be written.</exception>
    public TrackAdded Add(Stream audio, string fileName, TrackFacts facts) => throw Club.Unfinished;

    /// <summary>Adds a track without audio: its map is written by hand, or its audio is where the club may not keep it.</summary>
    /// <param name="name">What to call it, as a file name.</param>
    /// <param name="facts">What is known about it.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public TrackRow AddWithoutAudio(string name, TrackFacts facts) => throw Club.Unfinished;

    /// <summary>A track, in the bin or not; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public TrackRow? Get(string id) => throw Club.Unfinished;

    /// <summary>Changes what is known about a track.</summary>
    /// <returns>The track; null when there is none of that id.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public TrackRow? SetFacts(string id, TrackFacts facts) => throw Club.Unfinished;

    /// <summary>Opens the audio of a track; it can seek.</summary>
    /// <exception cref="ClubTrouble">There is no such track, it has no audio, or the file is missing.</exception>
    public Stream OpenAudio(string id) => throw Club.Unfinished;

    /// <summary>Full path of the audio file of a track, to read from; null when it has none or the file is missing.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? AudioPath(string id) => throw Club.Unfinished;

    /// <summary>Keeps the map of a track, in a form that only the caller knows.</summary>
    /// <param name="id">The track.</param>
    /// <param name="map">The map.</param>
    /// <param name="heardBy">Names the program version that made it, or who wrote it; not empty.</param>
    /// <returns>Whether there is such a track.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool SaveMap(string id, string map, string heardBy) => throw Club.Unfinished;

    /// <summary>The map of a track as it was kept; null when there is none.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? Map(string id) => throw Club.Unfinished;

    /// <summary>What a person said about a track, kept apart from its map so that it outlives another hearing; null when there is no such track.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public TrackCorrection? Corrections(string id) => throw Club.Unfinished;

    /// <summary>Saves what a person said about a track, in a form that only the caller knows. As with dances, never over what someone else said meanwhile.</summary>
    /// <param name="id">The track.</param>
    /// <param name="text">The corrections; empty takes them all back.</param>
    /// <param name="baseRevision">The revision they were made upon; 0 for the first.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public SaveOutcome SaveCorrections(string id, string text, int baseRevision) => throw Club.Unfinished;

    /// <summary>Gives a track these tags instead of those it has. White space at the ends goes, and so do empty ones and repetitions.</summary>
    /// <returns>The tags as kept; null when there is no such track.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public ValueList<string>? SetTags(string id, IReadOnlyList<string> tags) => throw Club.Unfinished;

    /// <summary>The tags in use, in order of the alphabet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<TagCount> Tags() => throw Club.Unfinished;

    /// <summary>Looks for tracks. Any words are allowed.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public TrackPage Search(TrackQuery query) => throw Club.Unfinished;

    /// <summary>Tracks outside the bin of the same title and artist that are as long within a second. The same file is never there twice.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DuplicateGroup> Duplicates() => throw Club.Unfinished;

    /// <summary>Puts a track into the bin.</summary>
    /// <returns>Whether there was such a track outside the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool Remove(string id) => throw Club.Unfinished;

    /// <summary>Takes a track out of the bin.</summary>
    /// <returns>Whether there was such a track in the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool BringBack(string id) => throw Club.Unfinished;

    /// <summary>Removes what lies in the bin for good, with its audio.</summary>
    /// <returns>How many tracks that were.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public int EmptyBin() => throw Club.Unfinished;
}
