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

        Wrapped(
            $"Begins after {TrackWords.Counts(plan.Intro)} of intro, at {TrackWords.Time(plan.BeginsSeconds)}, and goes through {Walls(plan)} with {FitWords.Interruptions(plan.Interruptions)}.",
            terminal);
        foreach (FitBreak at in plan.Breaks)
        {
            Wrapped(Sentence(at, plan, map), terminal);
        }

        if (plan.Ending is { } ending)
        {
            string turn = ending.Turn.Sign == 0 ? "" : $", turning {ending.Turn} to the front";
            Wrapped(
                $"Ends in wall {ending.Wall} after {TrackWords.Counts(ending.After)}, at {TrackWords.Time(ending.Seconds)}, facing {FitWords.Facing(ending.Facing)}{turn}.",
                terminal);
        }

        else
        {
            Wrapped(plan.EndsAtFront ? "The music ends while the floor faces the front." : "No ending was found that turns to the front in time.", terminal);
        }

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
            Wrapped(Accent(accent), terminal);
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

    private static string Walls(FitPlan plan) => plan.Walls.Count == 1 ? "1 wall" : string.Create(CultureInfo.InvariantCulture, $"{plan.Walls.Count} walls");

    private static string Sentence(FitBreak at, FitPlan plan, TrackMap map)
    {
        string section = FitWords.Section(map, at.Section);
        string where = section.Length > 0 ? $", in {section} of the music" : "";
        FitWall? next = plan.Walls.FirstOrDefault(w => w.Begins >= at.Begins + at.Length && w.Number > at.Wall);
        bool goesOn = !at.IsAtEnd && !at.Restarts;
        string then = goesOn || next is null ? "" : $" Wall {next.Number} then begins facing {FitWords.Facing(next.Facing)}.";
        string change = string.Join("; ", at.Written.Changes.Select(c =>
            $", with count {string.Join(", ", c.Steps.Select(s => s.Count.Label))} danced as {string.Join(", ", c.Steps.Select(s => Phrasing.Describe(s.Action)))}"));
        return $"{Capital(FitWords.Wall(at.Wall, at.Part))}, after {TrackWords.Counts(at.After)}, at {TrackWords.Time(at.Seconds)}{where}: "
            + $"{FitWords.Done(at, plan.Dance)}{change}. The floor faces {FitWords.Facing(at.Facing)}.{then}";
    }

    private static string Accent(FitAccent accent)
    {
        string place = accent.Section > 0
            ? $"{FitWords.Wall(accent.Wall, accent.Part)}, section {accent.Section}, count {accent.Count}"
            : $"{FitWords.Wall(accent.Wall, accent.Part)}, in what is put in";
        string danced = string.Join(", ", accent.Danced.Select(s => Phrasing.Describe(s.Action)));
        string what = accent.Danced.Count == 0 || accent.Meets ? "nothing moves against it"
            : accent.Suggested is { } action ? $"{danced} is danced; {Phrasing.Describe(action)} would meet it"
            : $"{danced} is danced";
        return $"The music stops for {TrackWords.Counts(accent.Counts)} at {TrackWords.Time(accent.Seconds)} ({place}): {what}.";
    }

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

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
