namespace Scuff.Repertoire.Folders;

/// <summary>Tells when something happens in a folder, once it has been quiet for a moment: programs save in several steps.</summary>
internal sealed class FolderWatch : IDisposable
{
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(300);

    private readonly FileSystemWatcher _watcher;
    private readonly ITimer _timer;

    private FolderWatch(FileSystemWatcher watcher, ITimer timer)
    {
        _watcher = watcher;
        _timer = timer;
        FileSystemEventHandler changed = (_, _) => Wait();
        _watcher.Changed += changed;
        _watcher.Created += changed;
        _watcher.Deleted += changed;
        _watcher.Renamed += (_, _) => Wait();
        // told of too much at once: something happened, whatever it was
        _watcher.Error += (_, _) => Wait();
        _watcher.EnableRaisingEvents = true;
    }

    /// <summary>Begins to watch; null where the system does not watch (a network drive, too many watchers): then a look on demand remains.</summary>
    public static FolderWatch? Begin(string folder, string filter, TimeProvider clock, Action happened)
    {
        FileSystemWatcher? watcher = null;
        ITimer? timer = null;
        try
        {
            watcher = new FileSystemWatcher(folder, filter) { NotifyFilter = NotifyFilters.FileName | NotifyFilters.LastWrite | NotifyFilters.Size };
            timer = clock.CreateTimer(_ => happened(), null, Timeout.InfiniteTimeSpan, Timeout.InfiniteTimeSpan);
            return new FolderWatch(watcher, timer);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or PlatformNotSupportedException)
        {
            timer?.Dispose();
            watcher?.Dispose();
            return null;
        }
    }

    public void Dispose()
    {
        _watcher.Dispose();
        _timer.Dispose();
    }

    private void Wait()
    {
        try
        {
            _timer.Change(Quiet, Timeout.InfiniteTimeSpan);
        }
        catch (ObjectDisposedException)
        {
            // told in the very moment of closing
        }
    }
}
