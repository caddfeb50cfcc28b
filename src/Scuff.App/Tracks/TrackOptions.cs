using System.CommandLine;

namespace Scuff.App.Tracks;

/// <summary>The options on reading tracks that several commands share, and the reading itself.</summary>
internal sealed class TrackOptions
{
    private readonly Option<string?> _corrections = new("--corrections")
    {
        Description = "Corrections of the track, or a folder of them, each named after its track and ending in .corrections.json.",
        HelpName = "file",
    };

    private readonly Option<string?> _cache = new("--cache") { Description = "Keep what was heard in this folder instead of the usual one.", HelpName = "folder" };

    private readonly Option<bool> _noCache = new("--no-cache") { Description = "Hear every track anew, and keep nothing." };

    /// <summary>Adds the options to a command.</summary>
    public void AddTo(Command command)
    {
        command.Add(_corrections);
        command.Add(_cache);
        command.Add(_noCache);
    }

    /// <summary>
    /// The tracks of files and folders with what a person said of them, in order and as they are heard; of one that cannot be used the trouble has been told
    /// and the map is null. Null, after telling why, when the options do not go together.
    /// </summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="names">Files and folders.</param>
    /// <param name="terminal">Where names start from and troubles are told.</param>
    public IEnumerable<HeardTrack>? Read(ParseResult parsed, IReadOnlyList<string> names, Terminal terminal)
    {
        IReadOnlyList<(string Name, string? Trouble)> files = TrackFiles.Find([.. names], terminal);
        SaidCorrections? said = parsed.GetValue(_corrections) is { } c ? new SaidCorrections(c, terminal) : null;
        if (said is { IsFolder: false } && files.Count > 1)
        {
            terminal.Tell("--corrections with a file speaks of one track; name one track, or a folder of corrections.");
            return null;
        }

        string? folder = parsed.GetValue(_noCache) ? null
            : parsed.GetValue(_cache) is { Length: > 0 } named ? named
            : TrackCache.UsualFolder(terminal.Variable, terminal.Home);
        TrackReader reader = new(new TrackCache(folder is null ? null : terminal.FullPath(folder)), terminal.FullPath);
        return Heard(files, reader, said, terminal);
    }

    private static IEnumerable<HeardTrack> Heard(
        IReadOnlyList<(string Name, string? Trouble)> files, TrackReader reader, SaidCorrections? said, Terminal terminal)
    {
        HearingProgress progress = new(files.Count, terminal);
        foreach (HeardTrack heard in InParallel.Run(files.Count, Environment.ProcessorCount, Hear))
        {
            progress.Clear();
            yield return Corrected(heard, said, terminal);
        }

        progress.Clear();

        HeardTrack Hear(int i)
        {
            (string name, string? trouble) = files[i];
            IProgress<double> part = progress.Of(i, Path.GetFileName(name));
            HeardTrack track = trouble is null ? reader.Read(name, part) : HeardTrack.Refused(name, trouble);
            part.Report(1);
            return track;
        }
    }

    private static HeardTrack Corrected(HeardTrack track, SaidCorrections? said, Terminal terminal)
    {
        if (track.Trouble is { } trouble)
        {
            terminal.Tell(trouble);
            return track;
        }

        return said is null ? track
            : said.For(track) is { } corrections ? track with { Map = corrections.ApplyTo(track.Map!) }
            : track with { Map = null, Trouble = "Its corrections could not be read." };
    }
}
