using Scuff.Sheets;
using Scuff.Sheets.Formats;

namespace Scuff.App.Handouts;

/// <summary>The programme for the wall and the caller's notes, in every format of sheets.</summary>
internal sealed class PrintedEvening : IHandoutMaker<EveningOut>
{
    public IEnumerable<Handout<EveningOut>> Handouts => SheetFormats.All.SelectMany(format => (Handout<EveningOut>[])
    [
        Of("programme", "Programme for the wall", format, evening => ProgrammeSheet.Of(evening.Paper, evening.Choices)),
        Of("notes", "Caller's notes", format, evening => CallerNotesSheet.Of(evening.Paper, evening.Dances, evening.Choices)),
    ]);

    private static Handout<EveningOut> Of(string name, string title, ISheetFormat format, Func<EveningOut, SheetModel> sheetOf) => new(
        name + format.Extension,
        $"{title} ({format.Extension[1..].ToUpperInvariant()})",
        format.MediaType,
        format.IsText,
        (evening, stream, cancel) => HandoutBytes.SendAsync(to => format.Write(sheetOf(evening), to), stream, cancel));
}
