using System.CommandLine;
using Scuff.App.Book;
using Scuff.App.Handouts;
using Scuff.App.Playlists;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Solving;

namespace Scuff.App.Nights;

/// <summary><c>scuff night playlist EVENING [FOLDER]</c>: writes a folder that plays, with the songs in it and silence between them.</summary>
internal sealed class PlaylistAct : INightAct
{
    public string Name => "playlist";

    public string Usage => "EVENING [FOLDER]";

    public int Fewest => 1;

    public int Most => 2;

    public IReadOnlyList<string> Takes => [];

    public async Task<int> RunAsync(
        IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        ClubEvening evening = NightNames.Evening(club, words[0], DateOnly.FromDateTime(now.DateTime));
        EveningPlan plan = NightNames.PlanOf(evening);
        if (plan.Programme is null)
        {
            throw BookWords.Cannot($"{evening.Title} has no programme yet. Plan it: {CommandTree.Name} night plan {evening.Id}");
        }

        NightDesk desk = new(new ExactProgrammeSolver());
        EveningOut taken = TakenOut.Evening(club, evening, plan, desk.Words(club, evening, plan), options.Choices(parsed), now);
        Playlist playlist = EveningPlaylist.ForFolder(taken.Paper, taken.AudioPathOf, copies: true);
        string name = words.Count > 1 ? words[1] : SafeFileName.StemOf(evening.Title);
        foreach (string sentence in playlist.LeftOut)
        {
            terminal.Tell(sentence);
        }

        await PlaylistFolder.WriteAsync(playlist, terminal.FullPath(name), cancel).ConfigureAwait(false);
        terminal.Out.WriteLine($"Wrote {name}: {PlaylistFolder.Songs(playlist).Count()} songs, with silence between them. Open playlist.m3u8 or playlist.xspf in a player.");
        return ExitCode.Clean;
    }
}
