namespace Scuff.Repertoire.Storage;

/// <summary>
/// Who has a club open. Every open club shares the lock; who brings the database to a newer form, or puts another in the place of a damaged one,
/// holds it alone. The system lets go of it when a program ends, however it ends.
/// </summary>
internal sealed class ClubLock : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(50);

    private readonly FileStream _held;

    private ClubLock(FileStream held) => _held = held;

    /// <summary>Shares the lock.</summary>
    /// <exception cref="ClubTrouble">Another program holds it alone and does not let go, or the folder cannot be used.</exception>
    public static ClubLock Shared(string folder) => Wait(folder, () => Take(folder, FileShare.Read));

    /// <summary>Holds the lock alone.</summary>
    /// <exception cref="ClubTrouble">Another program has the club open, or the folder cannot be used.</exception>
    public static ClubLock Alone(string folder) => Wait(folder, () => TryAlone(folder));

    /// <summary>Holds the lock alone; null when another program has the club open.</summary>
    /// <exception cref="ClubTrouble">The folder cannot be used.</exception>
    public static ClubLock? TryAlone(string folder) => Take(folder, FileShare.None);

    /// <summary>Asks again and again until there is an answer: the system has no way to tell when another program lets go.</summary>
    /// <exception cref="ClubTrouble">There was none for five seconds.</exception>
    public static T Wait<T>(string folder, Func<T?> answer)
        where T : class
    {
        using ManualResetEventSlim never = new();
        for (TimeSpan waited = TimeSpan.Zero; waited < Patience; waited += Pause)
        {
            if (answer() is { } found)
            {
                return found;
            }

            never.Wait(Pause);
        }

        throw ClubWords.IsHeld(folder);
    }

    public void Dispose() => _held.Dispose();

    private static ClubLock? Take(string folder, FileShare share)
    {
        string path = Path.Combine(folder, "club.lock");
        try
        {
            return new ClubLock(new FileStream(path, FileMode.OpenOrCreate, FileAccess.Read, share));
        }
        catch (IOException e) when (e is not (DirectoryNotFoundException or PathTooLongException) && !Files.FileWords.IsFull(e) && File.Exists(path))
        {
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ClubWords.Of(e, folder);
        }
    }
}
