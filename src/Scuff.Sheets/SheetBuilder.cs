using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.Dances;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Makes the sheet of a dance.</summary>
public static class SheetBuilder
{
    /// <summary>Makes the sheet in English, as usually printed; never throws for what is in the text.</summary>
    public static SheetModel Build(DanceAnalysis analysis) => Build(analysis, SheetChoices.Usual);

    /// <summary>Makes the sheet; never throws for what is in the text.</summary>
    /// <exception cref="ArgumentException">There is no such language.</exception>
    public static SheetModel Build(DanceAnalysis analysis, SheetChoices choices)
    {
        SheetLanguage language = SheetLanguage.Find(choices.Language)
            ?? throw new ArgumentException($"There is no language {choices.Language}.", nameof(choices));
        Wording words = new(language);
        SheetFacts facts = new(words);
        BreakWords breaks = new(words);
        Dance dance = analysis.Dance;
        FacingTable facings = new(analysis.PlainTimeline);
        ValueList<SheetPart> parts = [.. dance.Parts.Select(p => ToPart(dance, p, facings, words))];
        ValueList<SheetSection> tags = [.. dance.Tags.Select(t => ToSection(t, words))];
        SheetModel sheet = new()
        {
            Language = choices.Language,
            Labels = language.Labels,
            Paper = choices.Paper,
            IsLarge = choices.IsLarge,
            IsCard = choices.IsCard,
            Title = dance.Title.Length > 0 ? dance.Title : words["untitled"],
            Author = SheetFacts.AuthorOf(dance),
            ByLine = facts.ByLineOf(dance),
            Facts = facts.Of(analysis).ToValueList(),
            Particulars = facts.ParticularsOf(dance).ToValueList(),
            Edition = facts.EditionOf(dance),
            PageSign = facts.AddressOf(dance),
            Key = KeyWords(dance, parts, tags, words),
            Changes = choices.Earlier is { } earlier ? ChangeWords.ForSheet(DanceComparison.Of(earlier, analysis), language) : default,
            Cautions = CautionWords.Of(analysis.Cautions, words),
            Parts = parts,
            Tags = tags,
            Sequence = Sequence(dance.Sequence, words),
            Breaks = breaks.Of(dance, dance.Interruptions, analysis.TimelineFor(null), dance.Tracks is [var only] ? only : null),
            Ending = dance.Ending is { } ending ? breaks.Of(analysis, ending, null) : null,
            Tracks = dance.Tracks.Select(t => ToTrack(analysis, t, words)).ToValueList(),
            Moves = dance.OwnMoves.Select(m => ToSection(m, words)).ToValueList(),
            // a move of her own is shown as a table of its own
            Notes = Notes(dance.Notes.Where(n => n.Kind is not ("move" or "closing")), words),
        };
        return choices.IsCard
            ? CardBuilder.Of(SheetPictures.AddTo(sheet, analysis, hasFeet: false))
            : SheetPictures.AddTo(sheet, analysis, choices.HasDiagrams);
    }

    // What is written for every track is met on the first track as well, when no timeline is without one.
    internal static Timeline? TimelineFor(this DanceAnalysis analysis, Track? track)
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

    private static SheetPart ToPart(Dance dance, Part part, FacingTable facings, Wording words)
    {
        string heading = dance.IsPhrased ? words.Say("heading.part", ("name", part.Name), ("counts", words.Counts(part.Length))) : "";
        return new SheetPart(heading, part.Sections.Select(s => ToSection(dance, s, facings, words)).ToValueList());
    }

    private static SheetSection ToSection(Dance dance, Section section, FacingTable facings, Wording words)
    {
        string number = section.Number.ToString(CultureInfo.InvariantCulture);
        string heading = section.Title.Length > 0
            ? words.Say("heading.section-titled", ("number", number), ("title", section.Title))
            : words.Say("heading.section", ("number", number));
        int usual = dance.BeatsPerBar == 3 ? 6 : 8;
        if (section.Length != Counts.FromWhole(usual))
        {
            heading = words.Say("heading.unusual", ("heading", heading), ("counts", words.Counts(section.Length)));
        }

        return new SheetSection(heading, section.Lines.Select(l => ToLine(l, facings, words)).ToValueList(), Notes(section.Notes, words));
    }

    private static SheetSection ToSection(Tag tag, Wording words)
    {
        string kind = tag.IsBridge ? "heading.bridge" : "heading.tag";
        string counts = words.Counts(tag.Body.Length);
        return new SheetSection(
            tag.Name.Length > 0 ? words.Say(kind + "-named", ("name", tag.Name), ("counts", counts)) : words.Say(kind, ("counts", counts)),
            tag.Body.Lines.Select(l => ToLine(l, FacingTable.None, words)).ToValueList(),
            Notes(tag.Body.Notes, words));
    }

    private static SheetSection ToSection(StepDefinition move, Wording words) => new(
        words.Say("heading.move", ("name", SheetWords.Capital(move.Name)), ("counts", words.Counts(move.Length))),
        move.Rows.Select(r => new SheetLine { Counts = LabelOf(r), Words = words.Moves.Describe(r.Action) }).ToValueList(),
        move.Note is { Length: > 0 } note ? [new SheetNote(words.Usual("note", "note"), note)] : []);

    // what falls between two counts is told by its letter, as in the sections
    private static string LabelOf(PatternRow row) => char.IsAsciiLetter(row.Label[^1]) || row.Label[^1] == '&' ? row.Label[^1..] : row.Label;

    private static SheetLine ToLine(WrittenLine line, FacingTable facings, Wording words)
    {
        (Facing? before, Facing? after) = facings.Around(line);
        return new SheetLine
        {
            Counts = line.Label,
            Words = words.Moves.Describe(line.Moves),
            Facing = after?.ToString(),
            Turns = after is not null && before != after,
            Notes = Notes(line.Notes, words),
            Options = line.Options.Select(o => ToOption(o, words)).ToValueList(),
        };
    }

    private static SheetOption ToOption(StepOption option, Wording words) => new(
        words.Usual("option", option.Name.Length > 0 ? option.Name : "option"),
        option.Label.Length > 0 ? option.Label : SheetWords.Label(option.Replaces),
        words.Moves.Describe(option.Moves));

    private static SheetTrack ToTrack(DanceAnalysis analysis, Track track, Wording words)
    {
        Timeline? timeline = analysis.TimelineFor(track);
        TrackWords tracks = new(words);
        BreakWords breaks = new(words);
        return new SheetTrack(
            tracks.Name(track),
            tracks.Facts(analysis.Dance, track),
            Sequence(track.Sequence, words),
            breaks.Of(analysis.Dance, track.Interruptions, timeline, track),
            track.Ending is { } ending ? breaks.Of(analysis, ending, track) : null,
            Notes(track.Notes, words));
    }

    internal static ValueList<string> Sequence(ValueList<SequenceItem> sequence, Wording words) => sequence
        .Select(i =>
        {
            string item = !i.IsTag ? i.Name
                : i.Name.Length > 0 ? words.Say("sequence.tag-named", ("name", i.Name))
                : words["sequence.tag"];
            return i.Upto is { } upto ? words.Say("sequence.upto", ("item", item), ("counts", words.Counts(upto))) : item;
        })
        .ToValueList();

    private static ValueList<SheetNote> Notes(IEnumerable<Note> notes, Wording words)
        => notes.Select(n => new SheetNote(words.Usual("note", n.Kind), n.Words)).ToValueList();

    // Only what stands on this sheet is explained.
    private static string KeyWords(Dance dance, ValueList<SheetPart> parts, ValueList<SheetSection> tags, Wording words)
    {
        List<SheetLine> lines = [.. parts.SelectMany(p => p.Sections).Concat(tags).SelectMany(s => s.Lines)];
        List<string> key = [];
        if (lines.Exists(l => HasWord(l.Words, words["foot.right"]) || HasWord(l.Words, words["foot.left"])))
        {
            key.Add(words["key.feet"]);
        }

        AddCount(key, lines, '&', words["key.and"]);
        AddCount(key, lines, 'e', words["key.e"]);
        AddCount(key, lines, 'a', words["key.a"]);
        if (lines.Exists(l => l.Facing is not null))
        {
            key.Add(words[dance.IsPhrased ? "key.clock-phrased" : "key.clock"]);
        }

        // a language that abbreviates nothing has nothing to explain
        string all = key.Where(k => k.Length > 0).Aggregate("", (all, next) => all.Length == 0 ? next : words.Say("key.then", ("first", all), ("next", next)));
        return all.Length == 0 ? "" : SheetWords.Capital(all) + ".";
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
