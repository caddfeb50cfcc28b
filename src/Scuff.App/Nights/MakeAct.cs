using System.CommandLine;
using Scuff.App.Book;
using Scuff.App.Classes;
using Scuff.App.Programmes;
using Scuff.Repertoire;

namespace Scuff.App.Nights;

/// <summary><c>scuff night make TITLE DAY</c>: begins an evening with its wishes.</summary>
internal sealed class MakeAct : INightAct
{
    public string Name => "make";

    public string Usage => "TITLE DAY";

    public int Fewest => 2;

    public int Most => 2;

    public IReadOnlyList<string> Takes => NightOptions.OfWishes;

    public Task<int> RunAsync(IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        DateOnly day = BookWords.DayOf(words[1], DateOnly.FromDateTime(now.DateTime));
        ClubEvening evening = options.Timed(parsed, new ClubEvening { Title = words[0], Date = day });
        ClubEvening kept = NightNames.Keep(club, evening, options.Wished(parsed, club, EveningPlan.Empty));
        terminal.Out.WriteLine($"Kept {kept.Title} on {DayWords.Plain(kept.Date)}. Plan it: {CommandTree.Name} night plan {kept.Id}");
        return Task.FromResult(ExitCode.Clean);
    }
}
