using System.CommandLine;
using System.CommandLine.Completions;
using System.Globalization;
using System.Text;
using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Analysis.Levels;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Timing;

namespace Scuff.App.Commands;

/// <summary><c>scuff lesson</c>: how to teach a dance to a class in the time there is.</summary>
internal sealed class LessonCommand : IProgramCommand
{
    private const string Json = "json";

    public string Name => "lesson";

    public IReadOnlyList<Example> Examples =>
    [
        new("lesson my-dance.dance", "plan as long a lesson as the dance takes"),
        new("lesson --minutes 30 --class beginner my-dance.dance", "fit it into half an hour with a beginner class"),
        new("lesson --knows old-one.dance --knows old-two.dance my-dance.dance", "say which dances the class knows, so that only what is new is taught alone"),
        new("lesson --minutes 45 --format pdf --output plan.pdf my-dance.dance", "write a plan to print, with a box to tick for each step"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string> dance = new("dance") { Description = "The dance; - reads standard input.", HelpName = "dance" };
        Option<int?> minutes = new("--minutes") { Description = "Minutes there are, warm-up within them; as long as it takes when not said.", HelpName = "number" };
        minutes.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<int?>() is < LessonLimits.LeastMinutes or > LessonLimits.MostMinutes)
            {
                result.AddError($"A lesson has {LessonLimits.LeastMinutes} to {LessonLimits.MostMinutes} minutes.");
            }
        });
        Option<string?> level = new("--class") { Description = "Level of the class; that of the dance when not said.", HelpName = "level" };
        string[] levels = [.. Enum.GetValues<Level>().Select(LevelPhrases.Name)];
        level.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<string?>() is { } name && LevelPhrases.Find(name.Replace('-', ' ')) is null)
            {
                result.AddError($"There is no level {name}. The levels are {string.Join(", ", levels)}.");
            }
        });
        level.CompletionSources.Add(_ => levels.Select(l => new CompletionItem(l.Replace(' ', '-'))));
        Option<string[]> knows = new("--knows") { Description = "A dance that the class knows; may be said several times.", HelpName = "dance", Arity = ArgumentArity.ZeroOrMore };
        Option<string> track = new("--track") { Description = "Title of the track it is taught to; the first one of the dance when not said.", HelpName = "title", DefaultValueFactory = _ => "" };
        Option<decimal?> practice = new("--practice-tempo") { Description = "Tempo of slower practice music, in counts a minute.", HelpName = "number" };
        practice.Validators.Add(result =>
        {
            if (result.GetValueOrDefault<decimal?>() is < 20 or > 400)
            {
                result.AddError("A tempo lies between 20 and 400 counts a minute.");
            }
        });
        Option<string?> order = new("--order") { Description = "Chain forward or backward; what suits the dance when not said." };
        order.AcceptOnlyFromAmong("forward", "backward");
        Option<bool> knees = new("--for-knees") { Description = "Say what to offer instead of steps that are hard on knees and ankles." };
        Option<bool> beginners = new("--for-beginners") { Description = "Say what to offer to beginners." };
        Option<bool> noWarmUp = new("--no-warm-up") { Description = "Leave warm-up and cool-down out: the dance is taught in the middle of a class." };
        Option<string> format = new("--format") { Description = $"How to draw it: {string.Join(", ", Formats())}.", DefaultValueFactory = _ => "text" };
        format.Validators.Add(result =>
        {
            string name = result.GetValueOrDefault<string>() ?? "";
            if (name != Json && SheetFormats.Find(name) is null)
            {
                result.AddError($"There is no format {name}. The formats are {string.Join(", ", Formats())}.");
            }
        });
        format.CompletionSources.Add(_ => Formats().Select(f => new CompletionItem(f)));
        Option<string?> output = new("--output", "-o") { Description = "Write it into this file.", HelpName = "file" };
        Option<string> paper = new("--paper") { Description = "The paper: a4 or letter.", DefaultValueFactory = _ => "a4" };
        paper.AcceptOnlyFromAmong("a4", "letter");
        Option<bool> large = new("--large") { Description = "Print large." };
        Command command = new(Name, "Plan a lesson: how to teach a dance in the time there is.")
        {
            dance, minutes, level, knows, track, practice, order, knees, beginners, noWarmUp, format, output, paper, large,
        };
        command.SetAction(parsed =>
        {
            LessonOptions? options = Known(parsed.GetValue(knows) ?? [], terminal, new LessonOptions
            {
                Minutes = parsed.GetValue(minutes),
                Class = parsed.GetValue(level) is { } name ? LevelPhrases.Find(name.Replace('-', ' ')) : null,
                Track = parsed.GetValue(track) ?? "",
                PracticeTempo = parsed.GetValue(practice) is { } tempo ? new Ratio((long)Math.Round(tempo * 10), 10) : null,
                Order = parsed.GetValue(order) is { } way ? way == "forward" ? LessonOrder.Forward : LessonOrder.Backward : null,
                ForKnees = parsed.GetValue(knees),
                ForBeginners = parsed.GetValue(beginners),
                HasWarmUp = !parsed.GetValue(noWarmUp),
            });
            SheetChoices choices = new() { Paper = parsed.GetValue(paper) == "letter" ? Paper.Letter : Paper.A4, IsLarge = parsed.GetValue(large) };
            return options is null
                ? ExitCode.Trouble
                : Run(parsed.GetValue(dance) ?? DanceInput.StandardInput, options, choices, parsed.GetValue(format) ?? "text", parsed.GetValue(output), terminal);
        });
        return command;
    }

    // Asked only when needed: finding the formats would cost every start of every command.
    private static IEnumerable<string> Formats() => [.. SheetFormats.All.Select(f => f.Name).Append(Json).Order(StringComparer.Ordinal)];

    private static LessonOptions? Known(string[] names, Terminal terminal, LessonOptions options)
    {
        if (names.Length == 0)
        {
            return options;
        }

        List<DanceAnalysis> known = [];
        foreach (DanceInput input in InputReader.Read(names, terminal))
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                return null;
            }

            known.Add(DanceAnalysis.Of(DanceReader.Read(input.Text)));
        }

        return options.Knowing(known);
    }

    private static int Run(string name, LessonOptions options, SheetChoices choices, string formatName, string? output, Terminal terminal)
    {
        if (!Options.AreKnown(name == DanceInput.StandardInput ? [] : [name], terminal))
        {
            return ExitCode.Trouble;
        }

        ISheetFormat? format = SheetFormats.Find(formatName);
        if (format is { IsText: false } && output is null && !terminal.OutputIsPiped)
        {
            terminal.Tell($"A {formatName} cannot be shown on the screen. Name a file with --output, or send it into a file with >.");
            return ExitCode.Trouble;
        }

        DanceInput[] inputs = [.. InputReader.Read([name], terminal)];
        if (inputs.Length != 1)
        {
            terminal.Tell("A lesson teaches one dance; name one file.");
            return ExitCode.Trouble;
        }

        if (!DanceFiles.IsReadable(inputs[0], terminal))
        {
            return ExitCode.Trouble;
        }

        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(inputs[0].Text));
        LessonPlan plan = analysis.Lesson(options);
        int code = Complained.Tell(inputs[0], analysis.Report, terminal);
        using MemoryStream drawn = new();
        if (format is null)
        {
            using StringWriter writer = new(CultureInfo.InvariantCulture) { NewLine = "\n" };
            ScuffJson.Write(writer, LessonFile.Of(inputs[0], analysis, plan));
            drawn.Write(Encoding.UTF8.GetBytes(writer.ToString()));
        }
        else
        {
            format.Write(LessonSheet.Of(analysis, plan, options.Minutes is not null, choices), drawn);
        }

        return output is null ? Show(drawn, format is { IsText: false }, code, terminal) : Keep(drawn, output, code, terminal);
    }

    private static int Show(MemoryStream drawn, bool isBinary, int code, Terminal terminal)
    {
        if (isBinary)
        {
            using Stream stream = terminal.OpenOutput();
            drawn.WriteTo(stream);
        }
        else
        {
            terminal.Out.Write(Encoding.UTF8.GetString(drawn.GetBuffer(), 0, (int)drawn.Length));
        }

        return code;
    }

    private static int Keep(MemoryStream drawn, string output, int code, Terminal terminal)
    {
        try
        {
            WholeFile.Write(terminal.FullPath(output), drawn.WriteTo);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or ArgumentException)
        {
            terminal.Tell(FileWords.NotWritten(output, trouble));
            return ExitCode.Trouble;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {output}"));
        return code;
    }
}
