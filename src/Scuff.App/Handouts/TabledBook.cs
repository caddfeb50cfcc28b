using Scuff.App.Spreadsheets;

namespace Scuff.App.Handouts;

/// <summary>The book of a club as tables: all of them in one workbook, or each alone.</summary>
internal sealed class TabledBook : IHandoutMaker<BookOut>
{
    public IEnumerable<Handout<BookOut>> Handouts =>
    [
        new(
            "book.xlsx",
            "Dances, sessions, what is known, classes as a spreadsheet (XLSX)",
            XlsxGrids.MediaType,
            IsText: false,
            (book, stream, cancel) => XlsxGrids.WriteAsync(book.Name, BookGrids.Of(book), stream, cancel)),
        Table("dances.csv", "Dances as a table (CSV)", BookGrids.Dances),
        Table("sessions.csv", "Sessions as a table (CSV)", BookGrids.Sessions),
        Table("known.csv", "Who knows what, as a table (CSV)", BookGrids.Known),
        Table("classes.csv", "Classes as a table (CSV)", BookGrids.Classes),
    ];

    private static Handout<BookOut> Table(string name, string title, Func<BookOut, Grid> gridOf) => new(
        name,
        title,
        CsvGrid.MediaType,
        IsText: true,
        (book, stream, cancel) => HandoutBytes.SendAsync(CsvGrid.Write(gridOf(book)), withMark: true, stream, cancel));
}
