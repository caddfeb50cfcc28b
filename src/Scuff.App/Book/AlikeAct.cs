using System.Globalization;
using Scuff.Analysis.Likeness;
using Scuff.App.Json;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary><c>scuff book alike DANCE</c>: which dances resemble a dance by what the feet do, and which sections they share.</summary>
internal sealed class AlikeAct : IBookActAtOnce
{
    // below it all dances resemble each other: everybody steps and touches
    private const int Least = 40;
    private const int UsualMost = 10;

    public string Name => "alike";

    public string Usage => "DANCE";

    public int Fewest => 1;

    public int Most => 1;

    public IReadOnlyList<string> Takes => [BookOptions.All, BookOptions.Json];

    public int Run(BookQuestion question, Club club, Terminal terminal)
    {
        DanceRow dance = BookNames.Dance(club, question.Words[0]);
        FeetPrint print = FeetPrint.Read(dance.Facts.Feet);
        BookAlikeRow[] found =
        [
            .. club.Dances.Every()
                .Where(d => d.Id != dance.Id && d.Facts.Feet.Length > 0)
                .Select(d => (Row: d, Likeness: DanceLikeness.Between(print, FeetPrint.Read(d.Facts.Feet))))
                .Where(d => question.IsAll || d.Likeness.Percent >= Least || d.Likeness.Shared.Count > 0)
                .OrderByDescending(d => d.Likeness.Percent)
                .ThenBy(d => d.Row.Facts.Title, StringComparer.OrdinalIgnoreCase)
                .Take(question.IsAll ? int.MaxValue : UsualMost)
                .Select(d => new BookAlikeRow(d.Row.Id, d.Row.Facts.Title, d.Likeness.Percent, d.Likeness.IsMirrored, [.. d.Likeness.Shared.Select(Words)])),
        ];
        if (question.AsJson)
        {
            ScuffJson.Write(terminal.Out, found);
        }
        else if (found.Length == 0)
        {
            terminal.Out.WriteLine($"No dance of the club is like {dance.Facts.Title}.");
        }
        else
        {
            Table.Write(
                terminal.Out,
                terminal.Paint,
                ["dance", "alike", "in both"],
                [.. found.Select(f => (string[])[f.Title, f.Percent.ToString(CultureInfo.InvariantCulture) + " %", string.Join("; ", f.Shared)])]);
        }

        return ExitCode.Clean;
    }

    private static string Words(SharedSection shared)
        => $"section {shared.Section} is its {shared.OtherSection}{(shared.Percent == 100 ? "" : ", nearly")}{(shared.IsMirrored ? ", in the other foot" : "")}";
}
