using System.CommandLine;
using Scuff.App.Book;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Solving;

namespace Scuff.App.Nights;

/// <summary><c>scuff night show EVENING</c>: the programme as it was planned.</summary>
internal sealed class ShowAct : INightAct
{
    public string Name => "show";

    public string Usage => "EVENING";

    public int Fewest => 1;

    public int Most => 1;

    public IReadOnlyList<string> Takes => [NightOptions.Why, NightOptions.Json];

    public Task<int> RunAsync(IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        ClubEvening evening = NightNames.Evening(club, words[0], DateOnly.FromDateTime(now.DateTime));
        EveningPlan plan = NightNames.PlanOf(evening);
        if (plan.Programme is null)
        {
            throw BookWords.Cannot($"{evening.Title} has no programme yet. Plan it: {CommandTree.Name} night plan {evening.Id}");
        }

        PlanAct.Show(club, evening, plan, new NightDesk(new ExactProgrammeSolver()), options, parsed, terminal);
        return Task.FromResult(ExitCode.Clean);
    }
}
