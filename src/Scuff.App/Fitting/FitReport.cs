using System.Globalization;
using Scuff.Analysis.Fit;
using Scuff.App.Complaints;
using Scuff.App.Tracks;
using Scuff.Music;
using Scuff.Prose;

namespace Scuff.App.Fitting;

/// <summary>Tells how a dance fits a track: the kindest plan, what fewer interruptions would cost, and what to print.</summary>
internal static class FitReport
{
    private const string Indent = "  ";

    /// <summary>Writes it.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="chosen">The plan to tell at length; null for the kindest.</param>
    /// <param name="terminal">Where to.</param>
    public static void Write(FitAnswer answer, FitPlan? chosen, Terminal terminal)
    {
        TrackMap map = answer.Music.Map;
        string dance = answer.Dance.Title.Length > 0 ? answer.Dance.Title : "The dance";
        terminal.Out.WriteLine(terminal.Paint.Of(Tone.Name, Plain.Line($"{dance} to “{map.Title}”"))
            + terminal.Paint.Of(Tone.Soft, Plain.Line($"  ({TrackWords.Length(map.Seconds)}, {TrackWords.Tempo(answer.Music.CountsPerMinute)} counts a minute)")));
        foreach (FitRemark remark in answer.Remarks)
        {
            Wrapped(FitWords.Of(remark, answer), terminal, Tone.Open);
        }

        if ((chosen ?? answer.Kindest) is not { } plan)
        {
            return;
        }

        Wrapped(FitWords.Beginning(plan), terminal);
        foreach (FitBreak at in plan.Breaks)
        {
            Wrapped(FitWords.Break(at, plan, map), terminal);
        }

        Wrapped(FitWords.Ending(plan), terminal);

        terminal.Out.WriteLine();
        Table.Write(
            terminal.Out,
            terminal.Paint,
            ["wall", "begins", "faces", "counts", "in the music"],
            [.. plan.Walls.Select(w => (IReadOnlyList<string>)[
                w.Number.ToString(CultureInfo.InvariantCulture) + (w.Part.Length > 0 ? " " + w.Part : ""),
                TrackWords.Time(w.Seconds),
                FitWords.Facing(w.Facing),
                w.Danced.ToString(CultureInfo.InvariantCulture),
                FitWords.Strength(w, map)])]);
        terminal.Out.WriteLine();
        foreach (FitAccent accent in AccentFinder.Find(answer.Music, plan))
        {
            Wrapped(FitWords.Accent(accent), terminal);
        }

        Choices(answer, plan, terminal);
        terminal.Out.WriteLine();
        terminal.Out.WriteLine(terminal.Paint.Of(Tone.Soft, Indent + "On the sheet"));
        string lines = string.Concat(plan.MadeTags.Select(t => TrackWriter.TagLines(t) + "\n")) + TrackWriter.Block(plan.Track);
        foreach (string line in lines.TrimEnd('\n').Split('\n'))
        {
            terminal.Out.WriteLine((Indent + Plain.Line(line)).TrimEnd());
        }
    }

    // What each number of interruptions costs: the choice is hers.
    private static void Choices(FitAnswer answer, FitPlan chosen, Terminal terminal)
    {
        foreach (FitPlan plan in answer.Plans)
        {
            string mark = ReferenceEquals(plan, chosen) ? " (told above)" : "";
            Wrapped($"{FitWords.Interruptions(plan.Interruptions)}{mark}: {Points(plan)}", terminal);
        }

        if (answer.AsWritten is { } written)
        {
            Wrapped($"as the text has it, {FitWords.Interruptions(written.Interruptions)}: {Points(written)}", terminal);
        }
    }

    private static string Points(FitPlan plan)
    {
        string items = FitWords.Items(plan);
        return string.Create(CultureInfo.InvariantCulture, $"{plan.Price} points") + (items.Length > 0 ? $" ({items})" : "");
    }

    private static void Wrapped(string words, Terminal terminal, Tone? tone = null)
    {
        string indent = Indent;
        foreach (string row in Wrapping.Wrap(Plain.Line(words), terminal.Width - (2 * Indent.Length)))
        {
            terminal.Out.WriteLine(indent + (tone is { } colour ? terminal.Paint.Of(colour, row) : row));
            indent = Indent + Indent;
        }
    }
}
