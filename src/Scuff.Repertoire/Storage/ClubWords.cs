using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Scuff.Repertoire.Files;

namespace Scuff.Repertoire.Storage;

/// <summary>The one place that turns what goes wrong with a club into sentences.</summary>
internal static class ClubWords
{
    // https://sqlite.org/rescode.html
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    /// <summary>
    /// Whether an exception is a trouble of the world that there is a sentence for; others are faults of the program and should be loud.
    /// </summary>
    public static bool Knows(Exception trouble) => Find(trouble, "") is not null;

    /// <summary>The trouble behind an exception that <see cref="Knows"/>.</summary>
    /// <param name="trouble">What was thrown.</param>
    /// <param name="folder">The folder of the club.</param>
    public static ClubTrouble Of(Exception trouble, string folder)
        => Find(trouble, folder) ?? throw new ArgumentException("There is no sentence for this.", nameof(trouble));

    /// <summary>The database of the club cannot be read.</summary>
    public static ClubTrouble IsDamaged(string folder, Exception? cause = null) => new(
        ClubTroubleKind.Damaged,
        $"The file club.db in {folder} is damaged and cannot be read. Restore the latest backup; the damaged file is kept aside. "
            + "Backups that Scuff made by itself lie in the folder kept there.",
        cause);

    /// <summary>Another program does not let go of the club.</summary>
    public static ClubTrouble IsHeld(string folder, Exception? cause = null)
        => new(ClubTroubleKind.Busy, $"Another program is at work on the club in {folder}. Try again in a moment; if it stays so, close the other program.", cause);

    /// <summary>The database is of a later program.</summary>
    public static ClubTrouble IsNewer(string what)
        => new(ClubTroubleKind.Newer, $"{what} was written by a newer Scuff than this one. Nothing in it was touched. Start the newer Scuff, or install it here.");

    /// <summary>The database is of some other program.</summary>
    public static ClubTrouble IsNoClub(string folder)
        => new(ClubTroubleKind.NotAClub, $"The file club.db in {folder} is not a club of Scuff. Choose another folder, or move that file away.");

    /// <summary>What kind of trouble with files it is.</summary>
    public static ClubTroubleKind KindOf(Exception trouble) => trouble switch
    {
        UnauthorizedAccessException => ClubTroubleKind.NotAllowed,
        _ when FileWords.IsFull(trouble) => ClubTroubleKind.DiskFull,
        _ => ClubTroubleKind.Folder,
    };

    private static ClubTrouble? Find(Exception trouble, string folder) => trouble switch
    {
        DbUpdateException { InnerException: { } inner } => Find(inner, folder),
        SqliteException sqlite => sqlite.SqliteErrorCode switch
        {
            Busy or Locked => IsHeld(folder, sqlite),
            ReadOnly => new ClubTrouble(
                ClubTroubleKind.NotAllowed,
                $"The club in {folder} may not be written: the folder or its files are read-only.",
                sqlite),
            Full => new ClubTrouble(ClubTroubleKind.DiskFull, "The disk is full, so nothing was saved. Make some room and save again.", sqlite),
            InputOutput => new ClubTrouble(
                ClubTroubleKind.Folder,
                $"The disk under {folder} could not be read or written. If it is a drive that was taken out, put it back.",
                sqlite),
            CannotOpen => new ClubTrouble(
                ClubTroubleKind.Folder,
                $"The club in {folder} could not be opened: the folder is gone, or permission is missing.",
                sqlite),
            Corrupt or NotADatabase => IsDamaged(folder, sqlite),
            _ => null,
        },
        IOException or UnauthorizedAccessException => new ClubTrouble(KindOf(trouble), FileWords.NotWritten($"The club in {folder}", trouble), trouble),
        _ => null,
    };
}
