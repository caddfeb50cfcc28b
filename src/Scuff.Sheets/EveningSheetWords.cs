using System.Globalization;
using Scuff.Analysis;
using Scuff.Analysis.Cautions;
using Scuff.Dances;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>
/// An evening in sentences, from the entries <c>evening.…</c> of a language's file. Languages that have none say them in English (so do all but English now).
/// </summary>
/// <param name="paper">The evening.</param>
/// <param name="words">The language.</param>
internal sealed class EveningSheetWords(EveningPaper paper, Wording words)
{
    private readonly SheetFacts _facts = new(words);
    private readonly BreakWords _breaks = new(words);
    private readonly TrackWords _tracks = new(words);

    /// <summary>Day and place: <c>Saturday, 28 November 2026, Harbour Hall</c>.</summary>
    public string ByLine
    {
        get
        {
            string date = words.Date(paper.Date.ToString("d MMMM yyyy", CultureInfo.InvariantCulture));

            // an English day before a German date would be worse than none
            string? day = words.Language.FindOwn("evening.day." + paper.Date.DayOfWeek.ToString().ToLowerInvariant());
            date = day is null ? date : words.Say("evening.date", ("day", day), ("date", date));
            return paper.Place.Length > 0 ? words.Say("evening.by", ("date", date), ("place", paper.Place)) : date;
        }
    }

    /// <summary>From when to when it goes.</summary>
    public string Hours => words.Say("evening.hours", ("from", paper.ClockAt(0)), ("to", paper.ClockAt(paper.Minutes * 60)));

    /// <summary>From when to when it goes, and how much of what is in it: a sentence each.</summary>
    public IEnumerable<string> Facts
    {
        get
        {
            yield return Hours;
            foreach ((string key, int number) in ((string, int)[])
            [
                ("evening.facts.dances", paper.Lines.Count(l => l.Kind == EveningLineKind.Dance)),
                ("evening.facts.splits", paper.Lines.Count(l => l.IsSplit)),
                ("evening.facts.lessons", paper.Lines.Count(l => l.Kind == EveningLineKind.Lesson)),
                ("evening.facts.rests", paper.Lines.Count(l => l.Kind == EveningLineKind.Rest)),
            ])
            {
                if (number > 0)
                {
                    yield return words.Say(key, ("number", Digits(number)));
                }
            }
        }
    }

    /// <summary>What a line is, without its song: both dances of a split floor, the dance of a lesson, the length of a rest.</summary>
    /// <param name="line">The line.</param>
    /// <param name="withLevels">Whether the levels of two dances stand beside their titles.</param>
    public string Line(EveningLine line, bool withLevels) => line.Kind switch
    {
        EveningLineKind.Lesson => words.Say("evening.line.lesson", ("dance", line.Title), ("minutes", Minutes(line.Seconds))),
        EveningLineKind.Rest => words.Say("evening.line.rest", ("minutes", Minutes(line.Seconds))),
        _ when !line.IsSplit => line.Title,
        _ when withLevels && line is { Level: { } level, OtherLevel: { } other } => words.Say(
            "evening.line.split-levels",
            ("dance", line.Title),
            ("level", LevelOf(level)),
            ("other", line.OtherTitle),
            ("otherlevel", LevelOf(other))),
        _ => words.Say("evening.line.split", ("dance", line.Title), ("other", line.OtherTitle)),
    };

    /// <summary>The song with its artist; empty when none is named.</summary>
    public string Song(EveningLine line) => line.Song.Length == 0 ? "" : line.Artist.Length > 0
        ? words.Say("track.by", ("title", line.Song), ("artist", line.Artist))
        : words.Say("track.alone", ("title", line.Song));

    /// <summary>What stands at the right of a line: its level; of a split floor, that it is one. Null when there is nothing to say.</summary>
    public string? Right(EveningLine line) => line.IsSplit ? words["evening.split"] : line.Level is { } level ? LevelOf(level) : null;

    /// <summary>Everything a caller needs for a line.</summary>
    /// <param name="line">The line.</param>
    /// <param name="dance">Its dance; null when the club has no sheet of it.</param>
    /// <param name="other">The dance on the other side of a split floor; null when there is none, or no sheet of it.</param>
    public ValueList<SheetNote> Notes(EveningLine line, DanceAnalysis? dance, DanceAnalysis? other)
    {
        List<SheetNote> notes = [];
        switch (line.Kind)
        {
            case EveningLineKind.Rest:
                Add("say", words.Say("evening.say.rest", ("minutes", Minutes(line.Seconds))));
                Add("time", Until(line));
                break;
            case EveningLineKind.Lesson:
                Add("say", words.Say("evening.say.lesson", ("dance", line.Title), ("facts", SayFacts(line.Level, dance))));
                Add("time", Until(line));
                break;
            default:
                Add("say", line.IsSplit
                    ? words.Say(
                        "evening.say.split",
                        ("dance", line.Title),
                        ("facts", SayFacts(line.Level, dance)),
                        ("other", line.OtherTitle),
                        ("otherfacts", SayFacts(line.OtherLevel, other)))
                    : words.Say("evening.say.dance", ("dance", line.Title), ("facts", SayFacts(line.Level, dance))));
                AddDance(dance, line, line.IsSplit ? line.Title : "");
                if (line.IsSplit)
                {
                    AddDance(other, line, line.OtherTitle);
                }

                Add("song", SongFacts(line, dance));
                Add("time", Time(line));
                break;
        }

        Add("why", string.Join(' ', line.Reasons));
        Add("note", line.Note);
        return notes.ToValueList();

        void Add(string lead, string said)
        {
            if (said.Length > 0)
            {
                notes.Add(new SheetNote(words["evening.lead." + lead], said));
            }
        }

        void AddDance(DanceAnalysis? of, EveningLine on, string title)
        {
            if (of is null)
            {
                // of a dance without a sheet nothing is claimed
                notes.Add(new SheetNote(title.Length > 0 ? title : words["evening.lead.dance"], words["evening.no-sheet"]));
                return;
            }

            Track? track = TrackOf(of.Dance, on);
            ValueList<SheetBreak> breaks = BreaksOf(of, track);
            string told = breaks.Count > 0 ? "" : words[track is null && of.Dance.Tracks.Any(t => t.Interruptions.Count > 0) ? "evening.say.other-song" : "evening.say.no-breaks"];
            ValueList<SequenceItem> order = track is { Sequence.Count: > 0 } ? track.Sequence : of.Dance.Sequence;
            string start = Start(of, track);
            if (title.Length > 0)
            {
                notes.Add(new SheetNote(title, told.Length > 0 ? words.Say("evening.then", ("first", start), ("next", told)) : start));
            }
            else
            {
                Add("start", start);
                Add("breaks", told);
            }

            Add("order", string.Join(" · ", SheetBuilder.Sequence(order, words)));
            foreach (SheetBreak pause in breaks)
            {
                notes.Add(new SheetNote(title.Length > 0 ? words.Say("evening.break.of", ("dance", title), ("where", pause.Where)) : pause.Where, pause.What));
            }

            Add("ending", EndingOf(of, track));
        }
    }

    /// <summary>What to take care of on the whole evening, each thing once.</summary>
    /// <param name="dances">Its dances by title, each with its analysis.</param>
    public ValueList<string> Cautions(IReadOnlyList<(string Title, DanceAnalysis Analysis)> dances)
    {
        List<string> said = [words["evening.caution.begin"], words["lesson.stop"], words["evening.caution.air"], words["evening.caution.hearing"], words["evening.caution.floor"]];
        if (paper.Lines.Any(l => l.IsSplit))
        {
            said.Add(words["evening.caution.split"]);
        }

        foreach (CautionKind kind in Enum.GetValues<CautionKind>())
        {
            string[] titles = [.. dances.Where(d => d.Analysis.Cautions.Any(c => c.Kind == kind)).Select(d => d.Title).Distinct(StringComparer.Ordinal)];
            if (titles.Length > 0)
            {
                said.Add(words.Say("evening.caution." + SheetLanguage.KeyOf(kind.ToString()), ("dances", words.Row(titles))));
            }
        }

        said.Add(words.Language.Cautions.Deference);
        return said.ToValueList();
    }

    private static string Digits(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Clock(int seconds) => TrackWords.Clock(new Ratio(seconds, 1));

    private string LevelOf(Level level) => words["level." + SheetLanguage.KeyOf(level.ToString())];

    private string Minutes(int seconds) => words.Say("evening.minutes", ("number", words.Decimal(new Ratio(seconds, 60))));

    // The name is announced with the level (common practice); counts and walls tell those who know several dances of a name apart.
    private string SayFacts(Level? level, DanceAnalysis? dance)
    {
        List<string> facts = [];
        if (level is { } known)
        {
            facts.Add(LevelOf(known));
        }

        if (dance is not null)
        {
            facts.Add(_facts.Size(dance));
        }

        return facts.Count > 0 ? string.Join(", ", facts) : words["evening.no-sheet"];
    }

    // The song of the evening as the sheet knows it, by its title; where the evening names none, the only one there is.
    private static Track? TrackOf(Dance dance, EveningLine line) => dance.Tracks.FirstOrDefault(t => IsSame(t.Title, line.Song))
        ?? (line.Song.Length == 0 && dance.Tracks is [var only] ? only : null);

    // The planner names a song with its artist in one text.
    private static bool IsSame(string title, string song) => title.Length > 0
        && (string.Equals(title, song, StringComparison.OrdinalIgnoreCase)
            || song.StartsWith(title + " ", StringComparison.OrdinalIgnoreCase)
            || song.StartsWith(title + ",", StringComparison.OrdinalIgnoreCase));

    private ValueList<SheetBreak> BreaksOf(DanceAnalysis analysis, Track? track)
    {
        Dance dance = analysis.Dance;
        ValueList<SheetBreak> always = _breaks.Of(dance, dance.Interruptions, analysis.TimelineFor(null), track ?? (dance.Tracks is [var only] ? only : null));
        return track is null ? always : [.. always, .. _breaks.Of(dance, track.Interruptions, analysis.TimelineFor(track), track)];
    }

    private string EndingOf(DanceAnalysis analysis, Track? track)
    {
        Ending? ending = track?.Ending ?? analysis.Dance.Ending;
        SheetBreak? told = ending is null ? null : _breaks.Of(analysis, ending, track);
        return told is null ? "" : words.Say("evening.ending", ("where", told.Where), ("act", told.What));
    }

    private string Start(DanceAnalysis analysis, Track? track)
    {
        string weight = words[SheetFacts.StartOf(analysis) switch
        {
            Weight.Left => "evening.start.left",
            Weight.Right => "evening.start.right",
            _ => "evening.start.both",
        }];
        string intro = track is null ? "" : _tracks.Intro(analysis.Dance, track);
        return intro.Length > 0 ? words.Say("evening.then", ("first", intro), ("next", weight)) : weight;
    }

    private string SongFacts(EveningLine line, DanceAnalysis? dance)
    {
        string song = Song(line);
        string tempo = dance is not null && TrackOf(dance.Dance, line) is { } track ? _tracks.Tempo(track) : "";
        return song.Length == 0 || tempo.Length == 0 ? song + tempo : words.Say("evening.then", ("first", song), ("next", tempo));
    }

    private string Time(EveningLine line)
    {
        string end = paper.ClockAt(line.StartSeconds + line.Seconds);
        if (line.SongSeconds == 0)
        {
            return Until(line);
        }

        string music = Clock(line.SongSeconds);
        return line.LeadSeconds > 0
            ? words.Say("evening.time.dance", ("before", words.Say("evening.seconds", ("number", Digits(line.LeadSeconds)))), ("music", music), ("end", end))
            : words.Say("evening.time.music", ("music", music), ("end", end));
    }

    private string Until(EveningLine line) => words.Say("evening.time.until", ("end", paper.ClockAt(line.StartSeconds + line.Seconds)));
}
