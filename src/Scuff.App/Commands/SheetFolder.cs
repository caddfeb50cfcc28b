using System.Text;
using Scuff.App.Files;
using Scuff.Sheets;
using Scuff.Sheets.Formats;

namespace Scuff.App.Commands;

/// <summary>A folder that sheets are written into, one file a dance, format and language, named after the dance's file; English is not named.</summary>
/// <param name="name">The folder as named; made when the first sheet is written.</param>
/// <param name="terminal">Where names start from and where to tell what was done.</param>
internal sealed class SheetFolder(string name, Terminal terminal)
{
    private readonly Dictionary<string, string> _written = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Writes a sheet and says so.</summary>
    /// <returns>Whether it was written; if not, why not has been told.</returns>
    public bool Write(DanceInput input, SheetModel sheet, ISheetFormat format)
    {
        string language = sheet.Language == "en" ? "" : "." + sheet.Language;
        string file = Stem(input, sheet) + language + format.Extension;
        string shown = Path.Combine(name, file);
        if (!_written.TryAdd(file, input.Name))
        {
            terminal.Tell($"{shown} was not written for {input.Spoken}: it already holds the sheet of {_written[file]}.");
            return false;
        }

        using MemoryStream drawn = new();
        format.Write(sheet, drawn);
        try
        {
            Directory.CreateDirectory(terminal.FullPath(name));
            WholeFile.Write(terminal.FullPath(shown), stream =>
            {
                drawn.Position = 0;
                drawn.CopyTo(stream);
            });
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(shown, trouble));
            return false;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {shown}"));
        return true;
    }

    private static string Stem(DanceInput input, SheetModel sheet)
    {
        if (!input.IsStandardInput)
        {
            return Path.GetFileNameWithoutExtension(input.Name);
        }

        StringBuilder stem = new();
        foreach (char c in sheet.Title)
        {
            if (char.IsLetterOrDigit(c))
            {
                stem.Append(char.ToLowerInvariant(c));
            }
            else if (stem.Length > 0 && stem[^1] != '-')
            {
                stem.Append('-');
            }

            if (stem.Length == 60)
            {
                break;
            }
        }

        string made = stem.ToString().Trim('-');
        return made.Length > 0 ? made : "dance";
    }
}
