using Scuff.App.Spreadsheets;

namespace Scuff.App.Handouts;

/// <summary>The programme of an evening as a table.</summary>
internal sealed class TabledEvening : IHandoutMaker<EveningOut>
{
    public IEnumerable<Handout<EveningOut>> Handouts =>
    [
        new(
            "evening.xlsx",
            "Programme as a spreadsheet (XLSX)",
            XlsxGrids.MediaType,
            IsText: false,
            (evening, stream, cancel) => XlsxGrids.WriteAsync(evening.Paper.Title, [EveningGrid.Of(evening.Paper)], stream, cancel)),
        new(
            "evening.csv",
            "Programme as a table (CSV)",
            CsvGrid.MediaType,
            IsText: true,
            (evening, stream, cancel) => HandoutBytes.SendAsync(CsvGrid.Write(EveningGrid.Of(evening.Paper)), withMark: true, stream, cancel)),
    ];
}
