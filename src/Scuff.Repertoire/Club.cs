namespace Scuff.Repertoire;

/// <summary>
/// A club: the dances, tracks and settings of one person or one group, kept in a folder. All members may be called from many threads at once; writing
/// is one at a time. Two programs may have the same club open: each sees what the other has saved.
/// </summary>
/// <remarks>
/// The folder holds <c>club.db</c> (SQLite with its two companions while it is open), <c>music/</c> (audio, each file named by the digest of its
/// content), and <c>kept/</c> (backups made before the database was brought to a newer form or replaced). What a member has returned from is on the disk:
/// the database is written ahead (WAL) with <c>synchronous=FULL</c>, of which SQLite's documentation says that transactions are durable across a loss of
/// power (https://sqlite.org/pragma.html#pragma_synchronous).
/// </remarks>
public sealed class Club : IDisposable
{
    private Club(string folder) => Folder = folder;

    /// <summary>Told after every change, on the thread that made it. A change by another program is not told.</summary>
    public event EventHandler<ClubChange>? Changed;

    /// <summary>Full path of the folder.</summary>
    public string Folder { get; }

    /// <summary>Its dances.</summary>
    public ClubDances Dances => throw Unfinished;

    /// <summary>Its tracks.</summary>
    public ClubTracks Tracks => throw Unfinished;

    /// <summary>Its settings.</summary>
    public ClubSettings Settings => throw Unfinished;

    /// <summary>The folder of <c>.dance</c> files that is its library, if she linked one.</summary>
    public LinkedFolder Linked => throw Unfinished;

    internal static NotSupportedException Unfinished => new("This is being written.");

    /// <summary>
    /// Opens a club, and makes it where there is none. A database of an older form is brought to the present one, after a backup of it went into
    /// <c>kept/</c>. If a folder is linked, a look through it begins in the background.
    /// </summary>
    /// <param name="folder">The folder; made if needed.</param>
    /// <param name="clock">Tells the time of saves and the age of versions.</param>
    /// <param name="reader">Reads the facts of dances.</param>
    /// <exception cref="ClubTrouble">It is no club, of a newer form, damaged, held by another program, or the folder cannot be used.</exception>
    public static Club Open(string folder, TimeProvider clock, IDanceFactReader reader) => throw Unfinished;

    /// <summary>
    /// Puts a backup in the place of the club in a folder, also where that one is damaged or absent. No program may have the club open if it is damaged.
    /// Everything about the backup is checked first; the club as it was is kept aside in <c>kept/</c>; whatever fails on the way leaves it as it was.
    /// Audio that the club has and the backup has not stays.
    /// </summary>
    /// <param name="folder">The folder of the club; made if needed.</param>
    /// <param name="file">The backup.</param>
    /// <param name="clock">The clock.</param>
    /// <param name="reader">Reads the facts of dances.</param>
    /// <exception cref="ClubTrouble">The file is no backup, damaged, or of a newer Scuff; or the club is held by another program.</exception>
    public static RestoreReport Restore(string folder, string file, TimeProvider clock, IDanceFactReader reader) => throw Unfinished;

    /// <summary>The same for the club that is open here, which goes on being open. See <see cref="Restore(string, string, TimeProvider, IDanceFactReader)"/>.</summary>
    /// <param name="file">The backup.</param>
    /// <exception cref="ClubTrouble">The file is no backup, damaged, or of a newer Scuff.</exception>
    public RestoreReport Restore(string file) => throw Unfinished;

    /// <summary>
    /// Writes everything into one file, whole or not at all: a zip archive with the database as it stands at this moment and, if wished, the music.
    /// Others may go on writing meanwhile.
    /// </summary>
    /// <param name="file">Full path of the file. One that is there is replaced.</param>
    /// <param name="withMusic">Whether the audio goes in too.</param>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public void Backup(string file, bool withMusic) => throw Unfinished;

    /// <summary>The same into a stream, which need not seek.</summary>
    /// <param name="output">Where it goes; left open.</param>
    /// <param name="withMusic">Whether the audio goes in too.</param>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    /// <exception cref="IOException">The stream could not be written.</exception>
    public void Backup(Stream output, bool withMusic) => throw Unfinished;

    /// <summary>Takes in the <c>.dance</c> files of a folder (not of folders in it). The files are not touched.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="sameTitle">What is done with a title that is here already.</param>
    /// <exception cref="ClubTrouble">The folder is not there or cannot be read.</exception>
    public ImportReport Import(string folder, SameTitle sameTitle) => throw Unfinished;

    /// <summary>
    /// Writes every dance that is not in the bin as a <c>.dance</c> file named after its title. A file that is there with another text is never written
    /// over: the dance goes beside it under a name with a number. Tags and versions stay behind: a backup carries them.
    /// </summary>
    /// <param name="folder">The folder; made if needed.</param>
    /// <exception cref="ClubTrouble">The folder cannot be made or read.</exception>
    public ExportReport Export(string folder) => throw Unfinished;

    /// <summary>Closes it. What was saved is on the disk already.</summary>
    public void Dispose() => Changed?.Invoke(this, new ClubChange([], [], everything: true));
}
