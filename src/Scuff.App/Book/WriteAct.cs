using Scuff.App.Handouts;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Solving;

namespace Scuff.App.Book;

/// <summary><c>scuff book write FORM [FILE]</c>: writes the book as a calendar or as tables into a file of the present folder.</summary>
internal sealed class WriteAct : IBookAct
{
    public string Name => "write";

    public string Usage => "FORM [FILE]";

    public int Fewest => 1;

    public int Most => 2;

    public IReadOnlyList<string> Takes => [];

    public async Task<int> RunAsync(BookQuestion question, Club club, Terminal terminal, CancellationToken cancel)
    {
        Handout<BookOut> form = BookHandouts.Find(question.Words[0])
            ?? throw BookWords.Cannot($"The book cannot be written as {question.Words[0]}. Forms are {string.Join(", ", BookHandouts.All.Select(h => h.Name))}.");
        BookOut taken = TakenOut.Book(club, new NightDesk(new ExactProgrammeSolver()), question.Now);
        string name = question.Words.Count > 1 ? question.Words[1] : form.FileNameFor(taken.Name);
        try
        {
            await WholeFile.WriteAsync(terminal.FullPath(name), stream => form.WriteAsync(taken, stream, cancel)).ConfigureAwait(false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubTroubleKind.Folder, FileWords.NotWritten(name, e), e);
        }

        terminal.Out.WriteLine($"Wrote {name}");
        return ExitCode.Clean;
    }
}
