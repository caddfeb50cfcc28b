using System.CommandLine;
using System.Globalization;
using Scuff.App.Classes;
using Scuff.App.Json;
using Scuff.Repertoire;

namespace Scuff.App.Nights;

/// <summary><c>scuff night</c>: the evenings there are.</summary>
internal sealed class ListAct : INightAct
{
    public const string Word = "list";

    public string Name => Word;

    public string Usage => "";

    public int Fewest => 0;

    public int Most => 0;

    public IReadOnlyList<string> Takes => [NightOptions.Json];

    public Task<int> RunAsync(IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        ValueList<EveningRow> evenings = club.Evenings.List();
        if (options.IsJson(parsed))
        {
            ScuffJson.Write(terminal.Out, [.. evenings.Select(e => new NightRow(e.Id, e.Title, DayWords.Plain(e.Date), DayWords.Clock(e.Starts), e.Minutes, e.Place))]);
        }
        else if (evenings.Count == 0)
        {
            terminal.Out.WriteLine($"There is no evening yet. Make one: {CommandTree.Name} night make \"Harbour social\" 2026-12-05");
        }
        else
        {
            Table.Write(
                terminal.Out,
                terminal.Paint,
                ["day", "starts", "minutes", "evening"],
                [.. evenings.Select(e => (string[])
                [
                    DayWords.Plain(e.Date), DayWords.Clock(e.Starts), e.Minutes.ToString(CultureInfo.InvariantCulture), e.Place.Length > 0 ? $"{e.Title}, {e.Place}" : e.Title,
                ])]);
        }

        return Task.FromResult(ExitCode.Clean);
    }
}
