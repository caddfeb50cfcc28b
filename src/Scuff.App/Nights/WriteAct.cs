using System.CommandLine;
using Scuff.App.Book;
using Scuff.App.Handouts;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Solving;

namespace Scuff.App.Nights;

/// <summary><c>scuff night write EVENING FORM</c>: writes the programme, the notes, a playlist, a calendar entry or a table as a file of the present folder.</summary>
internal sealed class WriteAct : INightAct
{
    public string Name => "write";

    public string Usage => "EVENING FORM [FILE]";

    public int Fewest => 2;

    public int Most => 3;

    public IReadOnlyList<string> Takes => NightOptions.OfPrint;

    public async Task<int> RunAsync(
        IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        ClubEvening evening = NightNames.Evening(club, words[0], DateOnly.FromDateTime(now.DateTime));
        EveningPlan plan = NightNames.PlanOf(evening);
        Handout<EveningOut> form = EveningHandouts.Find(words[1])
            ?? throw BookWords.Cannot($"An evening cannot be written as {words[1]}. Forms are {string.Join(", ", EveningHandouts.All.Select(h => h.Name))}.");
        if (plan.Programme is null)
        {
            throw BookWords.Cannot($"{evening.Title} has no programme yet. Plan it: {CommandTree.Name} night plan {evening.Id}");
        }

        NightDesk desk = new(new ExactProgrammeSolver());
        EveningOut taken = TakenOut.Evening(club, evening, plan, desk.Words(club, evening, plan), options.Choices(parsed), now);
        string name = words.Count > 2 ? words[2] : form.FileNameFor(evening.Title);
        string file = terminal.FullPath(name);
        try
        {
            await WholeFile.WriteAsync(file, stream => form.WriteAsync(taken, stream, cancel)).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubTroubleKind.Folder, FileWords.NotWritten(name, e), e);
        }

        terminal.Out.WriteLine($"Wrote {name}");
        return ExitCode.Clean;
    }
}
