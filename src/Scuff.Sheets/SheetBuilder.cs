using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets.Drawings;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Makes the sheet of a dance.</summary>
public static class SheetBuilder
{
    /// <summary>What stands in the place of a missing title.</summary>
    public const string Untitled = "Untitled dance";

    /// <summary>Makes the sheet in English, as usually printed; never throws for what is in the text.</summary>
    public static SheetModel Build(DanceAnalysis analysis) => Build(analysis, SheetChoices.Usual);

    /// <summary>Makes the sheet; never throws for what is in the text.</summary>
    public static SheetModel Build(DanceAnalysis analysis, SheetChoices choices)
    {
        Dance dance = analysis.Dance;
        FacingTable facings = new(analysis.PlainTimeline);
        ValueList<SheetPart> parts = [.. dance.Parts.Select(p => ToPart(dance, p, facings))];
        ValueList<SheetSection> tags = [.. dance.Tags.Select(ToSection)];
        SheetModel sheet = new()
        {
            Language = choices.Language,
            Paper = choices.Paper,
            IsLarge = choices.IsLarge,
            IsCard = choices.IsCard,
            Title = dance.Title.Length > 0 ? dance.Title : Untitled,
            Author = SheetFacts.AuthorOf(dance),
            Facts = SheetFacts.Of(analysis).ToValueList(),
            Particulars = SheetFacts.ParticularsOf(dance).ToValueList(),
            Key = KeyWords(dance, parts, tags),
            Changes = choices.Earlier is { } earlier ? ChangeWords.ForSheet(DanceComparison.Of(earlier, analysis), ChangeLabels.English) : default,
            Cautions = CautionWords.Of(analysis.Cautions, CautionLabels.English),
            Parts = parts,
            Tags = tags,
            Sequence = Sequence(dance.Sequence),
            Breaks = BreakWords.Of(dance, dance.Interruptions, analysis.TimelineFor(null)),
            Ending = dance.Ending is { } ending ? BreakWords.Of(analysis, ending, null) : null,
            Tracks = dance.Tracks.Select(t => ToTrack(analysis, t)).ToValueList(),
            Moves = dance.OwnMoves.Select(ToSection).ToValueList(),
            // a move of her own is shown as a table of its own
            Notes = dance.Notes.Where(n => n.Kind != "move").Select(n => new SheetNote(n.Kind, n.Words)).ToValueList(),
        };
        return choices.IsCard
            ? CardBuilder.Of(SheetPictures.AddTo(sheet, analysis, hasFeet: false))
            : SheetPictures.AddTo(sheet, analysis, choices.HasDiagrams);
    }

    // What is written for every track is met on the first track as well, when no timeline is without one.
    private static Timeline? TimelineFor(this DanceAnalysis analysis, Track? track)
    {
        TrackTimeline? first = null;
        foreach (TrackTimeline danced in analysis.TrackTimelines)
        {
            first ??= danced;
            if (ReferenceEquals(danced.Track, track))
            {
                return danced.Timeline;
            }
        }

        return track is null ? first?.Timeline : null;
    }

    private static SheetPart ToPart(Dance dance, Part part, FacingTable facings)
    {
        string heading = dance.IsPhrased ? $"Part {part.Name}, {SheetWords.Counts(part.Length)}" : "";
        return new SheetPart(heading, part.Sections.Select(s => ToSection(dance, s, facings)).ToValueList());
    }

    private static SheetSection ToSection(Dance dance, Section section, FacingTable facings)
    {
        string heading = $"Section {section.Number}" + (section.Title.Length > 0 ? $": {section.Title}" : "");
        int usual = dance.BeatsPerBar == 3 ? 6 : 8;
        if (section.Length != Counts.FromWhole(usual))
        {
            heading += $" ({SheetWords.Counts(section.Length)})";
        }

        return new SheetSection(heading, section.Lines.Select(l => ToLine(l, facings)).ToValueList(), Notes(section.Notes));
    }

    private static SheetSection ToSection(Tag tag)
    {
        string kind = tag.IsBridge ? "Bridge" : "Tag";
        string name = tag.Name.Length > 0 ? $" “{tag.Name}”" : "";
        return new SheetSection(
            $"{kind}{name}, {SheetWords.Counts(tag.Body.Length)}",
            tag.Body.Lines.Select(l => ToLine(l, FacingTable.None)).ToValueList(),
            Notes(tag.Body.Notes));
    }

    private static SheetSection ToSection(StepDefinition move) => new(
        SheetWords.Capital(move.Name) + $", {SheetWords.Counts(move.Length)}",
        move.Rows.Select(r => new SheetLine { Counts = r.Label, Words = Phrasing.Describe(r.Action) }).ToValueList(),
        move.Note is { Length: > 0 } note ? [new SheetNote("note", note)] : []);

    private static SheetLine ToLine(WrittenLine line, FacingTable facings)
    {
        (Facing? before, Facing? after) = facings.Around(line);
        return new SheetLine
        {
            Counts = line.Label,
            Words = SheetWords.Moves(line.Moves),
            Facing = after?.ToString(),
            Turns = after is not null && before != after,
            Notes = Notes(line.Notes),
            Options = line.Options.Select(ToOption).ToValueList(),
        };
    }

    private static SheetOption ToOption(StepOption option) => new(
        option.Name.Length > 0 ? option.Name : "option",
        option.Label.Length > 0 ? option.Label : SheetWords.Label(option.Replaces),
        SheetWords.Moves(option.Moves));

    private static SheetTrack ToTrack(DanceAnalysis analysis, Track track)
    {
        Timeline? timeline = analysis.TimelineFor(track);
        return new SheetTrack(
            TrackWords.Name(track),
            TrackWords.Facts(analysis.Dance, track),
            Sequence(track.Sequence),
            BreakWords.Of(analysis.Dance, track.Interruptions, timeline),
            track.Ending is { } ending ? BreakWords.Of(analysis, ending, track) : null,
            Notes(track.Notes));
    }

    private static ValueList<string> Sequence(ValueList<SequenceItem> sequence) => sequence
        .Select(i => (i.IsTag ? "tag" + (i.Name.Length > 0 ? $" “{i.Name}”" : "") : i.Name)
            + (i.Upto is { } upto ? $" ({SheetWords.Counts(upto)})" : ""))
        .ToValueList();

    private static ValueList<SheetNote> Notes(ValueList<Note> notes) => notes.Select(n => new SheetNote(n.Kind, n.Words)).ToValueList();

    // Only what stands on this sheet is explained.
    private static string KeyWords(Dance dance, ValueList<SheetPart> parts, ValueList<SheetSection> tags)
    {
        List<SheetLine> lines = [.. parts.SelectMany(p => p.Sections).Concat(tags).SelectMany(s => s.Lines)];
        List<string> key = [];
        if (lines.Exists(l => HasWord(l.Words, "R") || HasWord(l.Words, "L")))
        {
            key.Add("R and L are the right and the left foot");
        }

        AddCount(key, lines, '&', "& is half a count");
        AddCount(key, lines, 'e', "e is a quarter of a count");
        AddCount(key, lines, 'a', "a is three quarters of a count");
        if (lines.Exists(l => l.Facing is not null))
        {
            key.Add(dance.IsPhrased
                ? "the clock is the wall you face the first time that part is danced, 12:00 where the dance starts"
                : "the clock is the wall you face, 12:00 where the dance starts");
        }

        return key.Count == 0 ? "" : SheetWords.Capital(string.Join("; ", key)) + ".";
    }

    private static void AddCount(List<string> key, List<SheetLine> lines, char letter, string words)
    {
        if (lines.Exists(l => l.Counts.Contains(letter, StringComparison.Ordinal)))
        {
            key.Add(words);
        }
    }

    private static bool HasWord(string words, string word)
        => words.Split([' ', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries).Contains(word, StringComparer.Ordinal);

    /// <summary>Where each written action first leaves the dance facing.</summary>
    private sealed class FacingTable
    {
        private readonly Dictionary<WrittenStep, TimedStep> _first = new(ReferenceEqualityComparer.Instance);
        private Facing? _carried = Facing.Front;

        public FacingTable(Timeline timeline)
        {
            foreach (TimedStep step in timeline.Steps)
            {
                _first.TryAdd(step.Written, step);
            }
        }

        /// <summary>A table for what is danced at many facings.</summary>
        public static FacingTable None { get; } = new(new Timeline(default, default, Counts.Zero, 0)) { _carried = null };

        /// <summary>Facing before and after a line; asked for in written order, a line without actions keeps the last one.</summary>
        public (Facing? Before, Facing? After) Around(WrittenLine line)
        {
            Facing? before = _carried;
            bool isKnown = false;
            bool hasSteps = false;
            foreach (WrittenStep step in line.Steps)
            {
                hasSteps = true;
                if (_first.TryGetValue(step, out TimedStep? timed))
                {
                    before = isKnown ? before : timed.FacingBefore;
                    isKnown = true;
                    _carried = timed.FacingAfter;
                }
            }

            if (hasSteps && !isKnown)
            {
                // a part that the sequence never dances faces nowhere
                _carried = null;
            }

            return (before, _carried);
        }
    }
}
