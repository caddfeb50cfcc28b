using System.CommandLine;
using System.CommandLine.Completions;
using System.Globalization;
using Scuff.App.Tracks;
using Scuff.Audio.Songs;

namespace Scuff.App.Commands;

/// <summary><c>scuff songs</c>: the tracks of the demo club, played by our own band into sound files.</summary>
internal sealed class SongsCommand : IProgramCommand
{
    public string Name => "songs";

    public IReadOnlyList<Example> Examples =>
    [
        new("songs", "name the songs of the demo club and their dances"),
        new("songs --output music", "play them all into a folder, one WAV file each"),
        new("songs --output music tin-lantern", "only the song of one dance"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> dances = new("dances") { Description = "Demo dances, by the names of their files; all when not said.", Arity = ArgumentArity.ZeroOrMore };
        dances.CompletionSources.Add(_ => DemoSongs.All.Select(s => new CompletionItem(s.Dance)).DistinctBy(c => c.Label));
        Option<string?> output = new("--output", "-o") { Description = "Write a file for each song into this folder, which is made if needed.", HelpName = "folder" };
        Command command = new(Name, "Play the songs of the demo club.") { dances, output };
        command.SetAction(parsed => Run(parsed.GetValue(dances) ?? [], parsed.GetValue(output), terminal));
        return command;
    }

    private static int Run(string[] dances, string? output, Terminal terminal)
    {
        if (!Options.AreKnown(dances, terminal))
        {
            return ExitCode.Trouble;
        }

        string[] unknown = [.. dances.Where(d => DemoSongs.All.All(s => s.Dance != d))];
        if (unknown.Length > 0)
        {
            terminal.Tell($"No song of the demo club goes with {unknown[0]}. There are songs for {string.Join(", ", DemoSongs.All.Select(s => s.Dance).Distinct())}.");
            return ExitCode.Trouble;
        }

        DemoSong[] songs = [.. DemoSongs.All.Where(s => dances.Length == 0 || dances.Contains(s.Dance))];
        if (output is null)
        {
            foreach (DemoSong song in songs)
            {
                terminal.Out.WriteLine(string.Create(
                    CultureInfo.InvariantCulture, $"{song.Dance,-22} “{song.Recipe.Title}” by {song.Artist}, {song.Recipe.Tempo:0.#} beats a minute"));
            }

            return ExitCode.Clean;
        }

        int code = ExitCode.Clean;
        int at = 0;
        foreach (StereoSound sound in InParallel.Run(songs.Length, Environment.ProcessorCount, i => SongRenderer.Render(Song.From(songs[i].Recipe))))
        {
            code = Written(sound, songs[at++], output, terminal) ? code : ExitCode.Trouble;
        }

        return code;
    }

    private static bool Written(StereoSound sound, DemoSong song, string folder, Terminal terminal)
    {
        string shown = Path.Combine(folder, DemoSongFile.NameOf(song));
        try
        {
            string path = terminal.FullPath(shown);
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            WholeFile.Write(path, stream => sound.WriteWav(stream, song.Recipe.Title, song.Artist));
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(shown, trouble));
            return false;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {shown}"));
        return true;
    }
}
