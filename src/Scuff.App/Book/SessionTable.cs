using System.Globalization;
using Scuff.App.Classes;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>Sessions in a table, a line for each dance.</summary>
internal static class SessionTable
{
    private static readonly string[] Head = ["day", "class", "role", "minutes", "dance"];

    /// <summary>Writes them; nothing when no dance is in them.</summary>
    public static void Write(IReadOnlyList<ClassSession> sessions, Club club, Terminal terminal)
    {
        Dictionary<string, string> titles = club.Book.Classes(includeEnded: true).ToDictionary(c => c.Id, c => c.Title);
        List<IReadOnlyList<string>> rows = [];
        foreach (ClassSession session in sessions)
        {
            string day = DayWords.Plain(session.Date) + (session.IsHeld ? "" : " planned");
            string held = Plain.Line(titles[session.ClassId]);
            if (session.Items.Count == 0)
            {
                rows.Add([day, held, "", "", ""]);
            }

            foreach (SessionItem item in session.Items)
            {
                rows.Add([day, held, BookWords.Of(item.Role), item.Minutes?.ToString(CultureInfo.InvariantCulture) ?? "", Plain.Line(Named(item))]);
                (day, held) = ("", "");
            }
        }

        if (rows.Count > 0)
        {
            Table.Write(terminal.Out, terminal.Paint, Head, rows);
        }
    }

    private static string Named(SessionItem item)
    {
        string title = item.DanceId is null ? $"{item.Title} (not in the club)" : item.Title;
        return item.Note.Length == 0 ? title : $"{title}: {item.Note}";
    }
}
