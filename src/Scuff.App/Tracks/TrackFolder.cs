
namespace Scuff.App.Tracks;

/// <summary>A folder that files about tracks are written into, named after the tracks.</summary>
/// <param name="name">The folder as named; made when the first file is written.</param>
/// <param name="terminal">Where names start from and where to tell what was done.</param>
internal sealed class TrackFolder(string name, Terminal terminal)
{
    private readonly Dictionary<string, string> _written = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Writes a file and says so, on standard error: the answer goes on beside it.</summary>
    /// <returns>Whether it was written; if not, why not has been told.</returns>
    public bool Write(HeardTrack track, string ending, string text)
    {
        string file = track.Stem + ending;
        string shown = Path.Combine(name, file);
        if (!_written.TryAdd(file, track.Name))
        {
            terminal.Tell($"{shown} was not written for {track.Name}: it already holds that of {_written[file]}.");
            return false;
        }

        try
        {
            Directory.CreateDirectory(terminal.FullPath(name));
            WholeFile.Write(terminal.FullPath(shown), text);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(shown, trouble));
            return false;
        }

        terminal.Out.Flush();
        terminal.Error.WriteLine(Plain.Line($"Wrote {shown}"));
        return true;
    }
}
