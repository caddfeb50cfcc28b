namespace Scuff.Repertoire;

/// <summary>The dances of a club.</summary>
public sealed class ClubDances
{
    internal ClubDances()
    {
    }

    /// <summary>Adds a dance.</summary>
    /// <param name="text">Its text; line ends become line feeds.</param>
    /// <param name="hand">Who brings it (<see cref="Hands"/>).</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public StoredDance Add(string text, string hand) => throw Club.Unfinished;

    /// <summary>A dance, in the bin or not; null when there is none of that id.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public StoredDance? Get(string id) => throw Club.Unfinished;

    /// <summary>
    /// Saves a text. Someone else's text is never written over unseen: the save must say upon which revision it was written. The very text that is there
    /// already is a success, so a save whose answer was lost can be sent again. A dance in the bin comes back from it.
    /// </summary>
    /// <remarks>
    /// The text before is kept as a version when it was saved more than <see cref="EditSession"/> ago or by another hand.
    /// </remarks>
    /// <param name="id">The dance.</param>
    /// <param name="text">The new text.</param>
    /// <param name="baseRevision">The revision it was written upon.</param>
    /// <param name="hand">Who saves: for a page a name of its own, the same from its opening to its closing.</param>
    /// <exception cref="ClubTrouble">It could not be written; the text that was there is untouched.</exception>
    public SaveOutcome Save(string id, string text, int baseRevision, string hand) => throw Club.Unfinished;

    /// <summary>Saves that follow each other within this time, by one hand, are one session of editing: ten minutes.</summary>
    public static TimeSpan EditSession { get; } = TimeSpan.FromMinutes(10);

    /// <summary>Puts a dance into the bin. In a linked folder its file goes; its text is in the bin.</summary>
    /// <returns>Whether there was such a dance outside the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool Remove(string id) => throw Club.Unfinished;

    /// <summary>Takes a dance out of the bin.</summary>
    /// <returns>Whether there was such a dance in the bin.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public bool BringBack(string id) => throw Club.Unfinished;

    /// <summary>Removes what lies in the bin for good, with its versions.</summary>
    /// <returns>How many dances that were.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public int EmptyBin() => throw Club.Unfinished;

    /// <summary>Gives a dance these tags instead of those it has. White space at the ends goes, and so do empty ones and repetitions.</summary>
    /// <returns>The tags as kept; null when there is no such dance.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public ValueList<string>? SetTags(string id, IReadOnlyList<string> tags) => throw Club.Unfinished;

    /// <summary>The tags in use, in order of the alphabet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<TagCount> Tags() => throw Club.Unfinished;

    /// <summary>The levels in use outside the bin, in order of the alphabet.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<string> Levels() => throw Club.Unfinished;

    /// <summary>Looks for dances. Any words are allowed.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public DancePage Search(DanceQuery query) => throw Club.Unfinished;

    /// <summary>Dances that look like one and the same. A group is left out when a surer reason names all of it.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DuplicateGroup> Duplicates() => throw Club.Unfinished;

    /// <summary>Keeps the present text as a version under a name. Named versions stay until the dance goes for good.</summary>
    /// <returns>The version; null when there is no such dance.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public DanceVersion? KeepVersion(string id, string name) => throw Club.Unfinished;

    /// <summary>The versions of a dance, latest first; empty when there is no such dance.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<DanceVersion> Versions(string id) => throw Club.Unfinished;

    /// <summary>The text of a version; null when there is none of that number.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? VersionText(string id, int number) => throw Club.Unfinished;

    /// <summary>Makes a version the present text: a save like another, by <see cref="Hands.Version"/>, so the text before it becomes a version.</summary>
    /// <exception cref="ClubTrouble">There is no such version, or it could not be written.</exception>
    public SaveOutcome GoBack(string id, int number, int baseRevision) => throw Club.Unfinished;

    /// <summary>Dances whose facts another version of the program read, and which <see cref="RefreshFacts"/> would read again.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public ValueList<string> NeedingFacts() => throw Club.Unfinished;

    /// <summary>Reads the facts again of dances that need it. Can be stopped at any time and goes on where it stood.</summary>
    /// <param name="cancel">Stops it.</param>
    /// <returns>How many were read.</returns>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public int RefreshFacts(CancellationToken cancel) => throw Club.Unfinished;
}
