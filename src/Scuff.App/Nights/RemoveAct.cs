using System.CommandLine;
using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Scuff.App.Nights;

/// <summary><c>scuff night remove EVENING</c>: removes an evening for good.</summary>
internal sealed class RemoveAct : INightAct
{
    public string Name => "remove";

    public string Usage => "EVENING";

    public int Fewest => 1;

    public int Most => 1;

    public IReadOnlyList<string> Takes => [];

    public Task<int> RunAsync(IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        ClubEvening evening = NightNames.Evening(club, words[0], DateOnly.FromDateTime(now.DateTime));
        club.Evenings.Remove(evening.Id);
        terminal.Out.WriteLine($"Removed {evening.Title} on {DayWords.Plain(evening.Date)} for good.");
        return Task.FromResult(ExitCode.Clean);
    }
}
