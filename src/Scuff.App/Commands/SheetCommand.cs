using System.CommandLine;
using System.CommandLine.Completions;
using System.Text;
using Scuff.Analysis;
using Scuff.App.Files;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Languages;

namespace Scuff.App.Commands;

/// <summary><c>scuff sheet</c>: the dance as a step sheet.</summary>
internal sealed class SheetCommand : IProgramCommand
{
    private const string English = "en";

    public string Name => "sheet";

    public IReadOnlyList<Example> Examples =>
    [
        new("sheet my-dance.dance", "show the sheet as plain text"),
        new("sheet --format html my-dance.dance > my-dance.html", "make a page that stands alone"),
        new("sheet --since old.dance my-dance.dance", "say on the sheet what changed since the version before"),
        new("sheet --output handouts demo/dances", "write a page for every dance of a folder"),
        new("sheet --language de,fr --output handouts my-dance.dance", "write it in German and in French"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<string?> format = new("--format") { Description = "How to draw it; text on the screen and html into a folder when not said." };

        // Asked only when the option is there: finding the formats would cost every start of every command.
        format.Validators.Add(result =>
        {
            string? name = result.GetValueOrDefault<string?>();
            if (name is not null && SheetFormats.Find(name) is null)
            {
                result.AddError($"There is no format {name}. The formats are {string.Join(", ", SheetFormats.All.Select(f => f.Name))}.");
            }
        });
        format.CompletionSources.Add(_ => SheetFormats.All.Select(f => new CompletionItem(f.Name)));
        Option<string?> output = new("--output", "-o") { Description = "Write a file for each dance into this folder, which is made if needed.", HelpName = "folder" };
        Option<string> paper = new("--paper") { Description = "The paper: a4 or letter.", DefaultValueFactory = _ => "a4" };
        paper.AcceptOnlyFromAmong("a4", "letter");
        Option<bool> large = new("--large") { Description = "Print large, for the far side of the hall." };
        Option<bool> card = new("--card") { Description = "Print the caller's card: one side, the headings and the breaks." };
        Option<bool> bare = new("--no-diagrams") { Description = "Leave the foot diagrams out." };
        Option<string> language = new("--language")
        {
            Description = "The language of the sheet, by its code; several with commas between, each a sheet of its own.",
            DefaultValueFactory = _ => English,
            HelpName = "codes",
        };
        language.Validators.Add(result =>
        {
            string codes = result.GetValueOrDefault<string>() ?? "";
            if (SheetLanguages.Unknown(codes) is { } unknown)
            {
                result.AddError($"There is no language {unknown}. The languages are {string.Join(", ", SheetLanguage.Codes)}.");
            }
        });
        language.CompletionSources.Add(_ => SheetLanguage.Codes.Select(c => new CompletionItem(c)));
        Option<string?> since = new("--since") { Description = "Say on the sheet what changed since this earlier version.", HelpName = "dance" };
        Command command = new(Name, "Print dances as step sheets.") { files, format, output, language, paper, large, card, bare, since };
        command.SetAction(parsed =>
        {
            SheetChoices choices = new()
            {
                Paper = parsed.GetValue(paper) == "letter" ? Paper.Letter : Paper.A4,
                IsLarge = parsed.GetValue(large),
                IsCard = parsed.GetValue(card),
                HasDiagrams = !parsed.GetValue(bare),
            };
            return Add(ref choices, parsed.GetValue(since), terminal)
                ? Run(parsed.GetValue(files), parsed.GetValue(format), parsed.GetValue(output), choices, SheetLanguages.Split(parsed.GetValue(language) ?? English), terminal)
                : ExitCode.Trouble;
        });
        return command;
    }

    private static bool Add(ref SheetChoices choices, string? since, Terminal terminal)
    {
        if (since is null)
        {
            return true;
        }

        DanceInput earlier = InputReader.Read([since], terminal).First();
        if (!DanceFiles.IsReadable(earlier, terminal))
        {
            return false;
        }

        choices = choices with { Earlier = DanceAnalysis.Of(DanceReader.Read(earlier.Text)) };
        return true;
    }

    private static int Run(string[]? names, string? formatName, string? output, SheetChoices choices, IReadOnlyList<string> languages, Terminal terminal)
    {
        IEnumerable<DanceInput>? inputs = DanceFiles.Read(names, terminal);
        if (inputs is null)
        {
            return ExitCode.Trouble;
        }

        if (choices.Earlier is not null && names is { Length: > 1 })
        {
            terminal.Tell("--since compares one dance with its earlier version; name one dance.");
            return ExitCode.Trouble;
        }

        ISheetFormat format = SheetFormats.Find(formatName ?? (output is null ? "text" : "html"))!;
        if (!format.IsText && output is null && !terminal.OutputIsPiped)
        {
            terminal.Tell($"A {format.Name} cannot be shown on the screen. Name a folder with --output, or send it into a file with >.");
            return ExitCode.Trouble;
        }

        if (!format.IsText && output is null)
        {
            // asked before anything is drawn: half an answer in the file would pass for a whole one
            DanceInput[] all = [.. inputs];
            if (all.Length * languages.Count > 1)
            {
                terminal.Tell($"Several sheets do not go into one {format.Name}. Name a folder with --output.");
                return ExitCode.Trouble;
            }

            inputs = all;
        }

        SheetFolder? folder = output is null ? null : new SheetFolder(output, terminal);
        int code = ExitCode.Clean;
        bool isFirst = true;
        foreach (DanceInput input in inputs)
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                continue;
            }

            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
            code = Math.Max(code, Complained.Tell(input, analysis.Report, terminal));
            foreach (string language in languages)
            {
                SheetModel sheet = SheetBuilder.Build(analysis, choices with { Language = language });
                if (folder is not null)
                {
                    code = folder.Write(input, sheet, format) ? code : ExitCode.Trouble;
                    continue;
                }

                Show(sheet, format, isFirst, terminal);
                isFirst = false;
            }
        }

        return code;
    }

    private static void Show(SheetModel sheet, ISheetFormat format, bool isFirst, Terminal terminal)
    {
        using MemoryStream drawn = new();
        format.Write(sheet, drawn);
        if (!format.IsText)
        {
            using Stream output = terminal.OpenOutput();
            drawn.WriteTo(output);
            return;
        }

        if (!isFirst)
        {
            // a form feed starts a new page on a printer
            terminal.Out.Write('\f');
        }

        terminal.Out.Write(Encoding.UTF8.GetString(drawn.GetBuffer(), 0, (int)drawn.Length));
    }
}
