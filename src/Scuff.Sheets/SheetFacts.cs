using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>The heading of a sheet as sentences: how a teacher would tell another what dance this is.</summary>
/// <param name="words">The language.</param>
internal sealed class SheetFacts(Wording words)
{
    // What the sentences already say, or what is told further down; all else in the heading is printed as written.
    private static readonly string[] Told =
        ["by", "author", "choreographer", "title", "level", "counts", "walls", "rhythm", "start", "ending", "restarts", "tags", "counted", "sequence", "place", "version", "date", "page"];

    /// <summary>Where students find the page of the dance; null where the heading says none that a telephone can go to.</summary>
    public SheetAddress? AddressOf(Dance dance)
    {
        string address = Field(dance, "page");
        return HeadingWords.IsAddress(address)
            ? new SheetAddress(words["label.page"], address, AddressPicture.Of(address, words["label.page"] + ": " + address))
            : null;
    }

    /// <summary>The name of who made it, or empty.</summary>
    public static string AuthorOf(Dance dance)
        => dance.Header.FirstOrDefault(h => h.Key is "by" or "author" or "choreographer")?.Value ?? "";

    /// <summary>Header fields that no sentence tells.</summary>
    public IEnumerable<SheetNote> ParticularsOf(Dance dance) => dance.Header
        .Where(h => !Told.Contains(h.Key, StringComparer.OrdinalIgnoreCase) && h.Value.Length > 0)
        .Select(ToNote);

    /// <summary>Who made it and where: <c>by Ann, Tarbarrow Quay</c>; empty when neither is written.</summary>
    public string ByLineOf(Dance dance)
    {
        string author = AuthorOf(dance);
        string place = Field(dance, "place");
        string by = author.Length == 0 ? "" : words["label.by"] + " " + author;
        return place.Length == 0 || author.Contains(place, StringComparison.OrdinalIgnoreCase) ? by
            : by.Length == 0 ? place
            : by + ", " + place;
    }

    /// <summary>Version and date: <c>version 4, March 2025</c>; empty when neither is written.</summary>
    public string EditionOf(Dance dance)
    {
        string version = Field(dance, "version");
        string date = words.Date(Field(dance, "date"));
        string first = version.Length > 0 && char.IsAsciiDigit(version[0]) ? words.Say("edition.version", ("version", version)) : version;
        return string.Join(", ", ((string[])[first, date]).Where(w => w.Length > 0));
    }

    /// <summary>The sentences.</summary>
    public IEnumerable<string> Of(DanceAnalysis analysis)
    {
        Dance dance = analysis.Dance;
        yield return Kind(analysis);
        if (!dance.IsPhrased && dance.Length == Counts.Zero)
        {
            // nothing is danced yet, so there are no walls and no first step
            yield break;
        }

        if (!dance.IsPhrased && analysis.NetTurn is { } turn && Progress(turn) is { Length: > 0 } progress)
        {
            yield return progress;
        }

        yield return StartOf(analysis) switch
        {
            Weight.Left => words["start.left"],
            Weight.Right => words["start.right"],
            _ => words["start.both"],
        };
        if (dance.BeatsPerCount != 1)
        {
            yield return dance.BeatsPerCount == 2 ? words["beats.half-time"]
                : dance.BeatsPerCount == new Ratio(1, 2) ? words["beats.double-time"]
                : words.Say("beats.other", ("amount", SheetWords.Amount(dance.BeatsPerCount)));
        }

        if (EditionOf(dance) is { Length: > 0 } edition)
        {
            // a number alone on the last line would be lost
            yield return SheetWords.Capital(edition).TrimEnd('.').Replace(' ', '\u00a0') + ".";
        }
    }

    /// <summary>Counts and walls of a dance, or the counts of its parts: <c>32 counts, 4 walls</c>.</summary>
    public string Size(DanceAnalysis analysis)
    {
        Dance dance = analysis.Dance;
        if (dance.IsPhrased)
        {
            return words.Row([.. dance.Parts.Select(p => words.Say("length.part", ("name", p.Name), ("counts", words.Counts(p.Length))))]);
        }

        string counts = words.Counts(dance.Length);
        return dance.Length > Counts.Zero && analysis.Walls is { } walls ? words.Say("length.walls", ("counts", counts), ("walls", words.Walls(walls))) : counts;
    }

    /// <summary>Where the weight is at the start: as stated, or as the foot that dances count 1 asks for.</summary>
    public static Weight StartOf(DanceAnalysis analysis)
    {
        if (analysis.Dance.StartIsStated)
        {
            return analysis.Dance.Start;
        }

        foreach (TimedStep step in analysis.PlainTimeline.Steps)
        {
            if (step.Action.Kind == ActionKind.Unknown)
            {
                break;
            }

            if (step.Action.Traits.FootRule == FootRule.Free && step.Action.Foot.ToFoot() is { } first)
            {
                return first.Other().ToWeight();
            }
        }

        return analysis.Dance.Start;
    }

    private static string Field(Dance dance, string key)
        => dance.Header.FirstOrDefault(h => string.Equals(h.Key, key, StringComparison.OrdinalIgnoreCase))?.Value ?? "";

    private string Kind(DanceAnalysis analysis)
    {
        Dance dance = analysis.Dance;
        string level = dance.ClaimedLevel is { } claimed
            ? words["level." + SheetLanguage.KeyOf(claimed.ToString())]
            : dance.Header.FirstOrDefault(h => h.Key == "level")?.Value ?? "";
        string kind = dance.Rhythm.Length > 0 ? words.Usual("rhythm", dance.Rhythm) : words["kind.dance"];
        kind = level.Length > 0 ? words.Say("kind.level", ("level", level), ("dance", kind)) : kind;
        kind = dance.IsPhrased ? words.Say("kind.phrased", ("kind", kind)) : kind;
        bool isVowel = "aeiouAEIOU".Contains(kind[0], StringComparison.Ordinal);
        string article = words.Language.FindOwn(isVowel ? "article.vowel" : "article.consonant") ?? "";
        return SheetWords.Capital(words.Say("kind.sentence", ("a", article), ("kind", kind), ("size", Size(analysis))));
    }

    private SheetNote ToNote(HeaderField field) => new(words.Usual("field", field.Key), field.Value);

    private string Progress(Turn turn)
    {
        Ratio eighths = turn.Eighths.Modulo(8);
        if (eighths == 0)
        {
            return "";
        }

        Ratio amount = eighths > 4 ? 8 - eighths : eighths;
        return amount == 4
            ? words["progress.half"]
            : words.Say(eighths > 4 ? "progress.left" : "progress.right", ("share", Share(amount)));
    }

    private string Share(Ratio eighths) => eighths switch
    {
        { Numerator: 1, Denominator: 1 } => words["share.eighth"],
        { Numerator: 2, Denominator: 1 } => words["share.quarter"],
        { Numerator: 3, Denominator: 1 } => words["share.three-eighths"],
        _ => words.Say("share.other", ("amount", SheetWords.Amount(eighths / 8))),
    };
}
