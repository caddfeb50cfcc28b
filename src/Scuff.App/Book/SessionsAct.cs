using Scuff.App.Json;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book sessions CLASS</c>: what the last sessions of a class, or of all, were.</summary>
internal sealed class SessionsAct : IBookActAtOnce
{
    private const int UsualMost = 10;

    public string Name => "sessions";

    public string Usage => "[CLASS]";

    public int Fewest => 0;

    public int Most => 1;

    public IReadOnlyList<string> Takes => [BookOptions.All, BookOptions.Json];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        string? held = question.Words.Count == 0 ? null : BookNames.Class(club, question.Words[0]).Id;
        SessionPage page = club.Book.Sessions(new SessionQuery { ClassId = held, Take = question.IsAll ? int.MaxValue : UsualMost });
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, [.. page.Sessions.Select(BookSessionRow.Of)]);
        }
        else if (page.Total == 0)
        {
            terminal.Out.WriteLine("None yet.");
        }
        else
        {
            SessionTable.Write(page.Sessions, club, terminal);
            if (page.Total > page.Sessions.Count)
            {
                terminal.Out.WriteLine(terminal.Paint.Of(Tone.Soft, $"  and {page.Total - page.Sessions.Count} before these (--all)"));
            }
        }

        return ExitCode.Clean;
    }
}
