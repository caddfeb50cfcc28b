using System.CommandLine;
using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Easier;
using Scuff.Analysis.Levels;
using Scuff.App.Complaints;
using Scuff.App.Easing;
using Scuff.App.Files;
using Scuff.App.Json;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Timing;

namespace Scuff.App.Commands;

/// <summary><c>scuff easier</c>: easier ways for the hard moves of a dance, as options or as a version of its own.</summary>
internal sealed class EasierCommand : IProgramCommand
{
    private const int LeastWidth = 20;
    private const int MostOffers = 9;

    public string Name => "easier";

    public IReadOnlyList<Example> Examples =>
    [
        new("easier my-dance.dance", "offer easier ways for all that is above beginner, with reasons"),
        new("easier --for knees my-dance.dance", "for knees: no twist, no jump, no turn on one foot"),
        new("easier --for turns --section 2 --counts 5-8 my-dance.dance", "without turning, for some counts only"),
        new("easier --write my-dance.dance", "put the best one for each move into the text, as options"),
        new("easier --level \"absolute beginner\" --output easy.dance my-dance.dance", "write an easier version as a text of its own"),
        new("easier --json my-dance.dance", "the same for a script"),
    ];

    public string Closing =>
        """
        Every offer takes the same counts, leaves the same foot free and ends at the same wall,
        at most half a metre from those who dance the original. A version of its own has its
        author's name and a note: ask her before you hand it on.
        """;

    public Command Create(Terminal terminal)
    {
        Argument<string[]> files = DanceFiles.CreateArgument();
        Option<string?> aim = new("--for") { Description = "For whom: level (the default), knees, turns or speed.", HelpName = "whom" };
        Option<string?> level = new("--level") { Description = "The level of the class: beginner unless you say another.", HelpName = "level" };
        Option<string?> part = new("--part") { Description = "Only this part of a phrased dance, or this tag.", HelpName = "name" };
        Option<int?> section = new("--section") { Description = "Only this section.", HelpName = "number" };
        Option<string?> counts = new("--counts") { Description = "Only these counts of the section, for example 5-8.", HelpName = "counts" };
        Option<int> most = new("--most") { Description = "So many offers for a move at most.", HelpName = "number", DefaultValueFactory = _ => 3 };
        Option<bool> write = new("--write") { Description = "Put the best offer for each move into the text, as an option." };
        Option<string?> output = new("--output", "-o") { Description = "Write an easier version of the whole dance into this file.", HelpName = "file" };
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per file." };
        Command command = new(Name, "Offer easier ways for the hard moves of a dance.") { files, aim, level, part, section, counts, most, write, output, json };
        command.SetAction(parsed => Run(
            parsed.GetValue(files),
            new Asked(
                parsed.GetValue(aim) ?? EasierWords.Aims[0],
                parsed.GetValue(level) ?? LevelPhrases.Name(Level.Beginner),
                parsed.GetValue(part),
                parsed.GetValue(section),
                parsed.GetValue(counts),
                parsed.GetValue(most),
                parsed.GetValue(write),
                parsed.GetValue(output),
                parsed.GetValue(json)),
            terminal));
        return command;
    }

    private static int Run(string[]? names, Asked asked, Terminal terminal)
    {
        if (QuestionOf(asked, terminal) is not { } question || DanceFiles.Read(names, terminal) is not { } inputs)
        {
            return ExitCode.Trouble;
        }

        int code = ExitCode.Clean;
        bool isFirst = true;
        List<EasedFile> answers = [];
        foreach (DanceInput input in asked.Output is null ? inputs : inputs.Take(2).ToArray() is [_, _] several ? Refused(several, terminal) : inputs)
        {
            if (!DanceFiles.IsReadable(input, terminal))
            {
                code = ExitCode.Trouble;
                answers.Add(EasedFile.Unreadable(input));
                continue;
            }

            DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(input.Text));
            code = Math.Max(code, Complained.Tell(input, analysis.Report, terminal));
            if (asked.AsJson)
            {
                answers.Add(EasedFile.Of(input, new EasierOffers(analysis, question), asked.Most));
                continue;
            }

            if (!isFirst)
            {
                terminal.Out.WriteLine();
            }

            isFirst = false;
            bool isDone = asked.Output is { } output ? WriteVersion(analysis, question, output, terminal)
                : asked.IsWriting ? WriteOptions(input, analysis, question, terminal)
                : Show(input, analysis, question, asked.Most, terminal);
            code = isDone ? code : ExitCode.Trouble;
        }

        if (asked.AsJson)
        {
            ScuffJson.Write(terminal.Out, answers);
        }

        return asked.Output is not null && isFirst && !asked.AsJson ? ExitCode.Trouble : code;
    }

    private static IEnumerable<DanceInput> Refused(DanceInput[] several, Terminal terminal)
    {
        terminal.Tell($"Several dances do not go into one file ({several[0].Spoken}, {several[1].Spoken}). Name one dance with --output.");
        return [];
    }

    private static EasierQuestion? QuestionOf(Asked asked, Terminal terminal)
    {
        string? trouble = null;
        EasierAim? aim = EasierWords.Find(asked.Aim);
        Level? level = LevelPhrases.Find(asked.Level.Trim().ToLowerInvariant());
        CountSpan? counts = null;
        if (aim is null)
        {
            trouble = $"--for is one of {string.Join(", ", EasierWords.Aims)}.";
        }
        else if (level is null or Level.Advanced)
        {
            trouble = $"--level is one of {EasierWords.Levels}.";
        }
        else if (asked.Most is < 1 or > MostOffers)
        {
            trouble = $"--most is a number from 1 to {MostOffers}.";
        }
        else if (asked.Section is < 1)
        {
            trouble = "--section is the number of a section, 1 or more.";
        }
        else if (asked.Counts is { } words)
        {
            counts = CountsOf(words);
            trouble = counts is null ? "--counts are counts of a section, for example 5-8."
                : asked.Section is null ? "Say with --section in which section these counts are."
                : null;
        }
        else if (asked is { IsWriting: true, Output: not null } or { AsJson: true, IsWriting: true } or { AsJson: true, Output: not null })
        {
            trouble = "--write, --output and --json go one at a time.";
        }

        if (trouble is not null)
        {
            terminal.Tell(trouble);
            return null;
        }

        return new EasierQuestion { Aim = aim!.Value, Level = level!.Value, Part = asked.Part, Section = asked.Section, Counts = counts };
    }

    private static CountSpan? CountsOf(string words)
    {
        string[] ends = words.Split('-');
        return ends.Length is 1 or 2
            && int.TryParse(ends[0], NumberStyles.None, CultureInfo.InvariantCulture, out int first)
            && int.TryParse(ends[^1], NumberStyles.None, CultureInfo.InvariantCulture, out int last)
            && first >= 1 && last >= first && last <= 1000
            ? new CountSpan(Counts.FromWhole(first - 1), Counts.FromWhole(last))
            : null;
    }

    private static bool Show(DanceInput input, DanceAnalysis analysis, EasierQuestion question, int most, Terminal terminal)
    {
        EasierOffers offers = new(analysis, question);
        List<(EasierPlace Place, IReadOnlyList<EasierOffer> Offers)> found = [.. offers.Places.Select(place => (place, offers.For(place, most)))];
        string title = analysis.Dance.Title.Length > 0 ? analysis.Dance.Title : input.Spoken;
        Line(
            found.Count == 0
                ? $"{title}: nothing {EasierWords.Sought(question)}"
                : $"{title}: {EasierWords.Moves(found.Count)} {EasierWords.Sought(question)}, an easier way for {found.Count(f => f.Offers.Count > 0)}",
            "",
            Tone.Name);
        foreach ((EasierPlace place, IReadOnlyList<EasierOffer> ways) in found)
        {
            terminal.Out.WriteLine();
            Line($"{place.Place.Words}: {Phrasing.Describe(place.Move)} ({EasierWords.Of(place.Demand)})", "");
            if (ways.Count == 0)
            {
                Line(EasierWords.None(question.Aim), "  ", Tone.Soft);
            }

            foreach (EasierOffer offer in ways)
            {
                Line(offer.Line, "  ");
                Line(EasierWords.Of(offer.Way), "    ", Tone.Soft);
            }
        }

        return true;

        void Line(string text, string indent, Tone? tone = null)
        {
            foreach (string row in Wrapping.Wrap(Plain.Line(text), Math.Max(LeastWidth, terminal.Width - indent.Length)))
            {
                terminal.Out.WriteLine(indent + (tone is { } colour ? terminal.Paint.Of(colour, row) : row));
            }
        }
    }

    private static bool WriteOptions(DanceInput input, DanceAnalysis analysis, EasierQuestion question, Terminal terminal)
    {
        EasierOffer[] offers = [.. new EasierOffers(analysis, question).BestForAll(besideOptions: true)];
        string text = EditWriter.Apply(input.Text, offers.SelectMany(offer => offer.Edits));
        if (input.IsStandardInput)
        {
            terminal.Out.Write(text);
            return true;
        }

        if (offers.Length == 0)
        {
            terminal.Out.WriteLine(Plain.Line($"No option to write into {input.Name}."));
            return true;
        }

        if (!Write(input.Name, text, input.Form == TextForm.Utf8WithMark, terminal))
        {
            return false;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {(offers.Length == 1 ? "1 option" : $"{offers.Length} options")} into {input.Name}:"));
        foreach (EasierOffer offer in offers)
        {
            terminal.Out.WriteLine(Plain.Line("  " + offer.Line));
        }

        return true;
    }

    private static bool WriteVersion(DanceAnalysis analysis, EasierQuestion question, string output, Terminal terminal)
    {
        EasierText version = EasierText.Of(analysis, question);
        if (File.Exists(terminal.FullPath(output)))
        {
            terminal.Tell($"{output} is there already, and nothing is written over it. Name another file.");
            return false;
        }

        if (!Write(output, version.Text, withMark: false, terminal))
        {
            return false;
        }

        terminal.Out.WriteLine(Plain.Line($"Wrote {output}: {EasierWords.Moves(version.Taken.Count)} made easier{(version.Left.Count == 0 ? "." : $", {version.Left.Count} left as they are:")}"));
        foreach (EasierPlace place in version.Left)
        {
            terminal.Out.WriteLine(Plain.Line($"  {place.Place.Words}: {Phrasing.Describe(place.Move)}"));
        }

        return true;
    }

    private static bool Write(string name, string text, bool withMark, Terminal terminal)
    {
        try
        {
            WholeFile.Write(terminal.FullPath(name), text, withMark);
            return true;
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            terminal.Tell(FileWords.NotWritten(name, trouble));
            return false;
        }
    }

    private sealed record Asked(
        string Aim,
        string Level,
        string? Part,
        int? Section,
        string? Counts,
        int Most,
        bool IsWriting,
        string? Output,
        bool AsJson);
}
