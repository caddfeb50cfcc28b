using System.CommandLine;
using Scuff.App.Complaints;
using Scuff.App.Json;
using Scuff.Steps;

namespace Scuff.App.Commands;

/// <summary><c>scuff steps</c>: the catalogue, searched.</summary>
internal sealed class StepsCommand : IProgramCommand
{
    // More entries than fit a screen are named, not shown.
    private const int MostShown = 6;
    private const int MostSources = 3;

    public string Name => "steps";

    public IReadOnlyList<Example> Examples =>
    [
        new("steps coaster", "show the coaster steps, count by count"),
        new("steps", "name every move that Scuff knows"),
        new("steps shuffle --json", "the same for a script"),
    ];

    public Command Create(Terminal terminal)
    {
        Argument<string[]> words = new("words") { Description = "Words of a name, a call or an id.", Arity = ArgumentArity.ZeroOrMore };
        Option<bool> json = new("--json") { Description = "Answer in JSON: an array with one object per move." };
        Command command = new(Name, "Search the catalogue of moves.") { words, json };
        command.SetAction(parsed => Run(parsed.GetValue(words) ?? [], parsed.GetValue(json), terminal));
        return command;
    }

    private static int Run(string[] words, bool asJson, Terminal terminal)
    {
        if (!Options.AreKnown(words, terminal))
        {
            return ExitCode.Trouble;
        }

        StepCatalogue catalogue = StepCatalogue.Default;
        IReadOnlyList<StepDefinition> found = CatalogueSearch.Find(catalogue, words);
        if (asJson)
        {
            ScuffJson.Write(terminal.Out, [.. found.Select(d => CatalogueEntry.Of(d, catalogue))]);
            return found.Count > 0 ? ExitCode.Clean : ExitCode.Complaints;
        }

        if (found.Count == 0)
        {
            terminal.Tell($"No move is called {string.Join(' ', words)}. Try one word of its name; {CommandTree.Name} steps names them all.");
            return ExitCode.Complaints;
        }

        if (found.Count > MostShown || words.Length == 0)
        {
            foreach (StepDefinition definition in found)
            {
                terminal.Out.WriteLine($"{definition.Name}, {Summary.Number(definition.Length.Value.Floor, "count")}"
                    + terminal.Paint.Of(Tone.Soft, $"  {definition.Id}"));
            }

            terminal.Out.WriteLine();
            terminal.Out.WriteLine($"{Summary.Number(found.Count, "move")}; name one more closely to see it count by count.");
            return ExitCode.Clean;
        }

        bool isFirst = true;
        foreach (StepDefinition definition in found)
        {
            if (!isFirst)
            {
                terminal.Out.WriteLine();
            }

            isFirst = false;
            Show(definition, catalogue, terminal);
        }

        return ExitCode.Clean;
    }

    private static void Show(StepDefinition definition, StepCatalogue catalogue, Terminal terminal)
    {
        CatalogueStep entry = CatalogueEntry.Of(definition, catalogue);
        terminal.Out.WriteLine(terminal.Paint.Of(Tone.Name, definition.Name)
            + $", {Summary.Number(definition.Length.Value.Floor, "count")}, {definition.Level}"
            + terminal.Paint.Of(Tone.Soft, $"  {definition.Id}"));
        Say(terminal, "also", string.Join("; ", definition.Aliases));
        Say(terminal, "call", definition.Call);
        Say(terminal, "danced", Named(definition.NamedBy));
        Table.Write(
            terminal.Out,
            terminal.Paint,
            ["count", "foot", "weight", "action"],
            [.. entry.Rows.Select(r => (IReadOnlyList<string>)[r.Count, r.Foot, r.Weight, r.Action])]);
        Say(terminal, "weight", $"before it on {Side(entry.WeightBefore)}; after it on {Side(entry.WeightAfter)}");
        Say(terminal, "note", definition.Note ?? "");
        Say(terminal, "sources differ", definition.Conflict ?? "");
        Say(terminal, "may also mean", string.Join("; ", entry.Alternatives));
        Say(terminal, entry.Sources.Count > 1 ? "sources" : "source", Sources(definition, entry));
    }

    private static string Sources(StepDefinition definition, CatalogueStep entry)
    {
        if (entry.Sources.Count == 0)
        {
            return definition.Confidence == Confidence.Sourced ? "" : "common practice; no glossary that defines it was read";
        }

        string named = string.Join("; ", entry.Sources.Take(MostSources).Select(s => s.Title));
        int more = entry.Sources.Count - MostSources;
        return more > 0 ? $"{named}; and {more} more, which --json names" : named;
    }

    private static void Say(Terminal terminal, string lead, string words)
    {
        if (words.Length == 0)
        {
            return;
        }

        string indent = "  ";
        foreach (string line in Wrapping.Wrap($"{lead}: {words}", terminal.Width - 4))
        {
            terminal.Out.WriteLine(indent + line);
            indent = "    ";
        }
    }

    private static string Side(string side) => side switch
    {
        "same" => "the named foot",
        "other" => "the other foot",
        "both" => "both feet",
        _ => "either foot",
    };

    private static string Named(NamedBy by) => by switch
    {
        NamedBy.FirstFoot => "shown as right; right and left name the foot that moves first",
        NamedBy.ActingFoot => "shown as right; right and left name the foot that acts",
        NamedBy.Travel => "shown as right; right and left name the way it travels",
        NamedBy.Turn => "shown as right; right and left name the way it turns",
        NamedBy.StandingFoot => "shown as right; right and left name the standing foot",
        _ => "the same to the right and to the left",
    };
}
