using System.CommandLine;
using System.CommandLine.Completions;
using System.Globalization;
using Scuff.App.Json;
using Scuff.Sheets.Languages;
using Scuff.Steps;

namespace Scuff.App.Commands;

/// <summary><c>scuff languages</c>: the languages of sheets, how sure their words are, and which a native should read.</summary>
internal sealed class LanguagesCommand : IProgramCommand
{
    public string Name => "languages";

    public IReadOnlyList<Example> Examples =>
    [
        new("languages", "name the languages of sheets and how sure their words are"),
        new("languages it", "list the words that an Italian dancer should read"),
        new("languages --json", "all of it for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string?> code = new("code") { Description = "A language, by its code; all in a table when not said.", Arity = ArgumentArity.ZeroOrOne };
        code.CompletionSources.Add(_ => SheetLanguage.Codes.Select(c => new CompletionItem(c)));
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per language." };
        Command command = new(Name, "Tell the languages of sheets and how sure their words are.") { code, json };
        command.SetAction(parsed => Run(parsed.GetValue(code), parsed.GetValue(json), terminal));
        return command;
    }

    private static int Run(string? code, bool asJson, Terminal terminal)
    {
        if (code is not null && SheetLanguages.Unknown(code) is not null)
        {
            terminal.Tell($"There is no language {code}. The languages are {string.Join(", ", SheetLanguage.Codes)}.");
            return ExitCode.Trouble;
        }

        List<SheetLanguage> languages = [.. (code is null ? SheetLanguage.Codes : [.. SheetLanguages.Split(code)]).Select(c => SheetLanguage.Find(c)!)];
        if (asJson)
        {
            ScuffJson.Write(terminal.Out, [.. languages.Select(ToRow)]);
        }
        else if (code is null)
        {
            Count(languages, terminal);
        }
        else
        {
            foreach (SheetLanguage language in languages)
            {
                ListDoubtful(language, terminal);
            }
        }

        return ExitCode.Clean;
    }

    private static void Count(List<SheetLanguage> languages, Terminal terminal)
    {
        Table.Write(
            terminal.Out,
            terminal.Paint,
            ["code", "language", "sourced", "common practice", "from memory", "English kept", "missing"],
            [.. languages.Select(l => (IReadOnlyList<string>)
            [
                l.Code,
                $"{l.Name} ({l.EnglishName})",
                Digits(Count(l, Confidence.Sourced)),
                Digits(Count(l, Confidence.CommonPractice)),
                Digits(Count(l, Confidence.FromMemory)),
                Digits(l.Entries.Count(e => e.IsEnglishKept)),
                Digits(l.Gaps.Count),
            ])]);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine($"Name one to see what a dancer of that language should read: {CommandTree.Name} languages it");
    }

    private static void ListDoubtful(SheetLanguage language, Terminal terminal)
    {
        List<LanguageEntry> doubtful = [.. language.Entries.Where(e => e.Confidence == Confidence.FromMemory)];
        terminal.Out.WriteLine(terminal.Paint.Of(Tone.Name, $"{language.Name} ({language.EnglishName})")
            + $": {Digits(doubtful.Count)} from memory, which a dancer of that language should read first.");
        foreach (LanguageEntry entry in doubtful)
        {
            terminal.Out.WriteLine($"  {entry.Key}  {entry.Text}");
            if (SheetLanguage.English.FindOwn(entry.Key) is { Length: > 0 } english)
            {
                terminal.Out.WriteLine(terminal.Paint.Of(Tone.Soft, $"      {english}"));
            }
        }

        if (language.Gaps.Count > 0)
        {
            terminal.Out.WriteLine($"Missing, so English there: {string.Join(", ", language.Gaps)}");
        }
    }

    private static int Count(SheetLanguage language, Confidence confidence) => language.Entries.Count(e => e.Confidence == confidence);

    private static string Digits(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static LanguageRow ToRow(SheetLanguage language) => new(
        language.Code,
        language.Name,
        language.EnglishName,
        Count(language, Confidence.Sourced),
        Count(language, Confidence.CommonPractice),
        Count(language, Confidence.FromMemory),
        language.Entries.Count(e => e.IsEnglishKept),
        [.. language.Gaps],
        [.. language.Entries.Where(e => e.Confidence == Confidence.FromMemory)
            .Select(e => new LanguageWords(e.Key, e.Text, SheetLanguage.English.FindOwn(e.Key)))],
        [.. language.Sources.Select(s => new CatalogueSource(s.Key, s.Title, s.Address))]);
}
