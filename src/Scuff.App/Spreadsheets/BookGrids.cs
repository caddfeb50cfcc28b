using System.Globalization;
using Scuff.App.Handouts;
using Scuff.Repertoire;

namespace Scuff.App.Spreadsheets;

/// <summary>The book of a club as tables. Her own words stand in them as she wrote them: this is her copy.</summary>
internal static class BookGrids
{
    /// <summary>All tables: the dances, the sessions, what is known, the classes.</summary>
    public static ValueList<Grid> Of(BookOut book) => [Dances(book), Sessions(book), Known(book), Classes(book)];

    /// <summary>A row for each dance: what it is, when it was taught and last danced, and who knows it how well.</summary>
    public static Grid Dances(BookOut book)
    {
        Dictionary<string, ClubClass> classes = book.Classes.ToDictionary(c => c.Id, StringComparer.Ordinal);
        ILookup<string, (DateOnly Date, ItemRole Role)> danced = book.Sessions
            .Where(s => s.IsHeld)
            .SelectMany(s => s.Items.Where(i => i.DanceId is not null).Select(i => (i.DanceId, s.Date, i.Role)))
            .ToLookup(i => i.DanceId!, i => (i.Date, i.Role), StringComparer.Ordinal);
        ILookup<string, KnownMark> known = Latest(book).ToLookup(m => m.DanceId, StringComparer.Ordinal);
        return new Grid(
            "Dances",
            [
                new("Title", 28), new("Choreographer", 22), new("Counts", 8), new("Walls", 7), new("Level", 18), new("Rhythm", 12), new("Music", 40),
                new("Slowest bpm", 9), new("Fastest bpm", 9), new("First taught", 12), new("Last danced", 12), new("Known by", 44), new("Tags", 24),
            ],
            [
                .. Ordered(book).Select(d => (ValueList<GridCell>)
                [
                    new GridCell.Text(d.Facts.Title),
                    new GridCell.Text(d.Facts.Choreographer),
                    GridCell.Of(d.Facts.Counts),
                    GridCell.Of(d.Facts.Walls),
                    new GridCell.Text(d.Facts.Level),
                    new GridCell.Text(d.Facts.Rhythm),
                    new GridCell.Text(string.Join("; ", d.Facts.Songs)),
                    GridCell.Of(d.Facts.SlowestTempo),
                    GridCell.Of(d.Facts.FastestTempo),
                    GridCell.Of(Least(danced[d.Id].Where(i => i.Role == ItemRole.Taught).Select(i => i.Date))),
                    GridCell.Of(Most(danced[d.Id].Select(i => i.Date))),
                    new GridCell.Text(string.Join("; ", known[d.Id]
                        .Where(m => classes.ContainsKey(m.ClassId))
                        .OrderBy(m => classes[m.ClassId].Title, StringComparer.OrdinalIgnoreCase)
                        .Select(m => $"{classes[m.ClassId].Title}: {RoleWords.Known(m.Knowing!.Value)}"))),
                    new GridCell.Text(string.Join(", ", d.Tags)),
                ]),
            ]);
    }

    /// <summary>A row for each dance of each session, the latest session first; a session without dances has one row.</summary>
    public static Grid Sessions(BookOut book)
    {
        Dictionary<string, ClubClass> classes = book.Classes.ToDictionary(c => c.Id, StringComparer.Ordinal);
        return new Grid(
            "Sessions",
            [
                new("Date", 12), new("Class", 26), new("State", 9), new("People", 8), new("Role", 12), new("Dance", 28), new("Version", 8), new("Minutes", 8),
                new("Note", 40), new("How it went", 40),
            ],
            [
                .. book.Sessions.OrderByDescending(s => s.Date).ThenBy(s => s.ClassId, StringComparer.Ordinal).ThenBy(s => s.Id, StringComparer.Ordinal).SelectMany(Rows),
            ]);

        IEnumerable<ValueList<GridCell>> Rows(ClassSession session) => session.Items.Count == 0
            ? [Row(session, null, isFirst: true)]
            : session.Items.Select((item, i) => Row(session, item, i == 0));

        ValueList<GridCell> Row(ClassSession session, SessionItem? item, bool isFirst) =>
        [
            new GridCell.Day(session.Date),
            new GridCell.Text(classes.TryGetValue(session.ClassId, out ClubClass? group) ? group.Title : ""),
            new GridCell.Text(session.IsHeld ? "held" : "planned"),
            isFirst ? GridCell.Of(session.People) : GridCell.None,
            new GridCell.Text(item is null ? "" : session.IsHeld ? RoleWords.Done(item.Role) : RoleWords.Planned(item.Role)),
            new GridCell.Text(item?.Title ?? ""),
            GridCell.Of(item?.Revision),
            GridCell.Of(item?.Minutes),
            new GridCell.Text(item?.Note ?? ""),
            new GridCell.Text(isFirst ? session.HowItWent : ""),
        ];
    }

    /// <summary>A row for each dance that a class knows, a column for each class, in the cell how well it knows it.</summary>
    public static Grid Known(BookOut book)
    {
        ClubClass[] classes = [.. book.Classes.OrderBy(c => c.EndedOn is not null).ThenBy(c => c.Title, StringComparer.OrdinalIgnoreCase)];
        Dictionary<(string, string), KnownMark> known = Latest(book).ToDictionary(m => (m.DanceId, m.ClassId));
        HashSet<string> dances = new(known.Keys.Select(k => k.Item1), StringComparer.Ordinal);
        return new Grid(
            "Known",
            [new("Dance", 28), .. classes.Select(c => new GridColumn(c.Title, 18))],
            [
                .. Ordered(book).Where(d => dances.Contains(d.Id)).Select(d => (ValueList<GridCell>)
                [
                    new GridCell.Text(d.Facts.Title),
                    .. classes.Select(c => known.TryGetValue((d.Id, c.Id), out KnownMark? mark) ? new GridCell.Text(RoleWords.Known(mark.Knowing!.Value)) : GridCell.None),
                ]),
            ]);
    }

    /// <summary>A row for each class.</summary>
    public static Grid Classes(BookOut book) => new(
        "Classes",
        [
            new("Class", 26), new("Level", 18), new("Day", 11), new("Begins", 8), new("Minutes", 8), new("Place", 24), new("People", 8), new("Ended", 12),
            new("Notes", 40),
        ],
        [
            .. book.Classes.OrderBy(c => c.EndedOn is not null).ThenBy(c => c.Title, StringComparer.OrdinalIgnoreCase).Select(c => (ValueList<GridCell>)
            [
                new GridCell.Text(c.Title),
                new GridCell.Text(c.Level),
                new GridCell.Text(c.Weekday is { } day ? CultureInfo.InvariantCulture.DateTimeFormat.GetDayName(day) : ""),
                c.Starts is { } starts ? new GridCell.Clock(starts) : GridCell.None,
                new GridCell.Number(c.Minutes),
                new GridCell.Text(c.Place),
                GridCell.Of(c.People),
                GridCell.Of(c.EndedOn),
                new GridCell.Text(c.Notes),
            ]),
        ]);

    private static IEnumerable<DanceRow> Ordered(BookOut book)
        => book.Dances.OrderBy(d => d.Facts.Title, StringComparer.OrdinalIgnoreCase).ThenBy(d => d.Id, StringComparer.Ordinal);

    // Of several marks of one day the last one holds, and what was taken back is not known.
    private static IEnumerable<KnownMark> Latest(BookOut book) => book.Marks
        .Where(m => m.Date <= book.Today)
        .GroupBy(m => (m.DanceId, m.ClassId))
        .Select(g => g.Aggregate((a, b) => b.Date >= a.Date ? b : a))
        .Where(m => m.Knowing is not null);

    private static DateOnly? Least(IEnumerable<DateOnly> dates) => dates.Select(d => (DateOnly?)d).Min();

    private static DateOnly? Most(IEnumerable<DateOnly> dates) => dates.Select(d => (DateOnly?)d).Max();
}
