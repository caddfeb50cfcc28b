using System.Text;
using Scuff.Music.Corrections;

namespace Scuff.App.Tracks;

/// <summary>The corrections that go with tracks: one file for one track, or a folder with <c>NAME.corrections.json</c> for each.</summary>
/// <param name="name">The file or folder as named.</param>
/// <param name="terminal">Where names start from and troubles are told.</param>
internal sealed class SaidCorrections(string name, Terminal terminal)
{
    private const int Largest = 4 * 1024 * 1024;

    /// <summary>Whether it is a folder, and so good for any number of tracks.</summary>
    public bool IsFolder => Directory.Exists(terminal.FullPath(name));

    /// <summary>What was said about a track, none if nothing was; null, after telling why, when it cannot be read.</summary>
    public TrackCorrections? For(HeardTrack track)
    {
        string file = IsFolder ? Path.Combine(name, track.Stem + TrackFiles.CorrectionsEnding) : name;
        string path = terminal.FullPath(file);
        if (IsFolder && !File.Exists(path))
        {
            return TrackCorrections.None;
        }

        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > Largest })
            {
                terminal.Tell($"{file} is too large to be corrections of a track.");
                return null;
            }

            CorrectionsReading reading = CorrectionsText.Read(Encoding.UTF8.GetString(File.ReadAllBytes(path)));
            foreach (string trouble in reading.Troubles)
            {
                terminal.Tell($"{file}: {trouble}");
            }

            return reading.Corrections;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotRead(file, trouble));
            return null;
        }
    }
}
