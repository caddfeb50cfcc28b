using System.Globalization;
using Scuff.Analysis.Calls;
using Scuff.Analysis.Lessons;
using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Sheets.Languages;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>
/// A lesson plan in sentences, from the entries <c>lesson.…</c> of a language's file. Languages that have none say them in English (so do all but English now).
/// </summary>
public sealed class LessonWords
{
    private const int Tenths = 10;
    private readonly LessonPlan _plan;
    private readonly Dance _dance;
    private readonly Wording _words;

    /// <summary>The words of a plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="dance">The dance it was made for.</param>
    /// <param name="language">The language.</param>
    public LessonWords(LessonPlan plan, Dance dance, SheetLanguage language) => (_plan, _dance, _words) = (plan, dance, new Wording(language));

    /// <summary>The heading of the plan.</summary>
    public string Title => _words.Say("lesson.title", ("title", _dance.Title.Length > 0 ? _dance.Title : _words["untitled"]));

    /// <summary>How long it is, for whom, and how long it usually takes: a sentence each.</summary>
    /// <param name="isAsked">Whether the length was asked for.</param>
    public ValueList<string> Facts(bool isAsked) =>
    [
        _words.Say(isAsked ? "lesson.facts.asked" : "lesson.facts.takes", ("minutes", Minutes(_plan.Seconds)), ("level", LevelOf(_plan.Class))),
        _words.Say("lesson.facts.usual", ("minutes", Minutes(_plan.UsualSeconds))),
        _words["lesson.facts.rest"],
    ];

    /// <summary>What is to be said of the plan as a whole.</summary>
    public ValueList<string> Notes => [.. _plan.Notes.Select(Sentence), .. _plan.Shared.Select(Sentence)];

    private string Sentence(LessonShared known) => _words.Say(
        known.Shared.IsMirrored ? "lesson.shared.mirrored" : known.Shared.Percent == 100 ? "lesson.shared" : "lesson.shared.nearly",
        ("section", known.Shared.Section),
        ("title", known.Title),
        ("other", known.Shared.OtherSection));

    /// <summary>What to take care of: the warm-up, the cautions of the dance, when to stop, and whose rules go before.</summary>
    public ValueList<string> Cautions =>
    [
        _words[_plan.Steps.Any(s => s.Kind == LessonStepKind.WarmUp) ? "lesson.warm-up" : "lesson.no-warm-up"],
        _words["lesson.stop"],
        .. _plan.Cautions.Count > 0 ? CautionWords.Of(_plan.Cautions, _words) : [_words.Language.Cautions.Deference],
    ];

    /// <summary>A length in minutes, to a quarter: <c>1½ min</c>.</summary>
    public string Minutes(int seconds) => _words.Say("lesson.minutes", ("number", SheetWords.Amount(new Ratio(seconds, 60))));

    /// <summary>When something begins: <c>12:30</c>, minutes and seconds of the lesson.</summary>
    public static string Mark(int seconds) => string.Create(CultureInfo.InvariantCulture, $"{seconds / 60}:{seconds % 60:00}");

    /// <summary>The heading under which a step stands.</summary>
    public string Phase(LessonStepKind kind) => _words[kind switch
    {
        LessonStepKind.WarmUp or LessonStepKind.Name or LessonStepKind.Listen => "lesson.phase.begin",
        LessonStepKind.Figure or LessonStepKind.Chunk or LessonStepKind.Join => "lesson.phase.learn",
        LessonStepKind.Whole or LessonStepKind.SecondWall or LessonStepKind.Tag or LessonStepKind.Break => "lesson.phase.whole",
        LessonStepKind.Practise or LessonStepKind.CoolDown => "lesson.phase.close",
        _ => "lesson.phase.music",
    }];

    /// <summary>What is done in a step, as one sentence without its full stop.</summary>
    public string Step(LessonStep step) => step.Kind switch
    {
        LessonStepKind.WarmUp => _words["lesson.step.warm-up"],
        LessonStepKind.Name => _words.Say("lesson.step.name", ("facts", NameFacts())),
        LessonStepKind.Listen => _plan.Track?.Intro is { } intro && intro > Counts.Zero
            ? _words.Say("lesson.step.listen-intro", ("counts", _words.Counts(intro)))
            : _words["lesson.step.listen"],
        LessonStepKind.Figure => _words.Say("lesson.step.figure", ("figure", SheetWords.Capital(step.Figure!.Definition.Name)), ("times", Times(step.Times))),
        LessonStepKind.Chunk => _words.Say("lesson.step.chunk", ("place", Place(step.Chunk!)), ("times", Times(step.Times))),
        LessonStepKind.Join => _words.Say(
            "lesson.step.join",
            ("first", First(_plan.Chunks[step.From - 1])),
            ("last", Last(_plan.Chunks[step.To - 1])),
            ("times", Times(step.Times))),
        LessonStepKind.Whole => _words.Say(_plan.Taught == _plan.Chunks.Count ? "lesson.step.whole" : "lesson.step.whole-part", ("times", Times(step.Times))),
        LessonStepKind.SecondWall => _plan.SecondWall is { } facing
            ? _words.Say("lesson.step.second-wall", ("facing", facing.ToString()), ("times", Times(step.Times)))
            : _words.Say("lesson.step.second-wall-open", ("times", Times(step.Times))),
        LessonStepKind.Tag => _words.Say("lesson.step.tag", ("act", Act(step.Break!)), ("times", Times(step.Times))),
        LessonStepKind.Break => _words.Say("lesson.step.break", ("where", Where(step.Break!)), ("act", WholeAct(step.Break!)), ("times", Times(step.Times))),
        LessonStepKind.Rung => step.IsOtherMusic
            ? _words.Say("lesson.step.rung-other", ("pace", Pace(step.Pace)), ("walls", Walls(step)))
            : _words.Say("lesson.step.rung", ("percent", Digits(step.Percent)), ("walls", Walls(step))),
        LessonStepKind.EveryStep => _words.Say("lesson.step.every-step", ("walls", Walls(step))),
        LessonStepKind.Headings => _words["lesson.step.headings"],
        LessonStepKind.Warnings => _words["lesson.step.warnings"],
        LessonStepKind.Silent => _words["lesson.step.silent"],
        LessonStepKind.Spare => _words["lesson.step.spare"],
        LessonStepKind.Practise => _plan.Practise.Count > 0
            ? _words.Say("lesson.step.practise", ("places", _words.Row([.. _plan.Practise.Select(n => Place(_plan.Chunks[n - 1]))])))
            : _words["lesson.step.practise-open"],
        LessonStepKind.CoolDown => _words["lesson.step.cool-down"],
        _ => throw new ArgumentOutOfRangeException(nameof(step)),
    };

    /// <summary>What hangs on a step: its moves, pace, cue word, why it is repeated so often, what to offer.</summary>
    public ValueList<SheetNote> Details(LessonStep step)
    {
        List<SheetNote> details = [];
        switch (step.Kind)
        {
            case LessonStepKind.Chunk:
                Add("steps", _words.Moves.Describe(step.Chunk!.Moves));
                Add("why", string.Join("; ", step.Chunk.Reasons.Where(r => r.Kind != LessonReasonKind.Counts).Select(Why)));
                foreach (LessonOffer offer in _plan.Offers.Where(o => o.Chunk == step.Chunk.Number))
                {
                    Add("offer", Offer(offer));
                }

                break;
            case LessonStepKind.Figure:
                Add("mind", step.Figure!.Definition.Note ?? "");
                break;
            case LessonStepKind.Tag when step.Break!.Body is { } body:
                Add("steps", _words.MovesOf(body));
                break;
            case LessonStepKind.Break:
                Add("cue", _words.Say("lesson.cue", ("word", Cue(step.Break!))));
                Add("mind", step.Break!.IsChanged ? _words["lesson.changed"] : "");
                Add("also", step.Break.Walls.Count > 1
                    ? _words.Say("lesson.also", ("walls", _words.Row([.. step.Break.Walls.Skip(1).Select(w => _words.Say("lesson.also.wall", ("number", Digits(w))))])))
                    : "");
                break;
            case LessonStepKind.Whole:
                Add("pace", _words.Say("lesson.pace", ("pace", Pace(step.Pace))));
                break;
            case LessonStepKind.Rung:
                Add("pace", _words.Say("lesson.pace.music", ("pace", Pace(step.Pace)), ("full", Pace(_plan.Tempo))));
                break;
            default:
                break;
        }

        return details.ToValueList();

        void Add(string lead, string words)
        {
            if (words.Length > 0)
            {
                details.Add(new SheetNote(_words["lesson.lead." + lead], words));
            }
        }
    }

    /// <summary>
    /// The steps to leave out when the class runs late, the first to go first, each with what it saves; those at the very beginning are done by then.
    /// </summary>
    public ValueList<SheetBreak> WhenLate =>
    [
        .. _plan.Steps.Where(s => s is { LeaveOut: not null, Kind: not (LessonStepKind.WarmUp or LessonStepKind.Listen) })
            .OrderBy(s => s.LeaveOut)
            .Select(s => new SheetBreak(Step(s), _words.Say("lesson.save", ("minutes", Minutes(s.Seconds))))),
    ];

    /// <summary>What else is to be known: what there was no time for, what is never left out, and why the order is what it is.</summary>
    public ValueList<SheetNote> More
    {
        get
        {
            List<SheetNote> more = [];
            if (_plan.LeftOut.Count > 0)
            {
                more.Add(new SheetNote(_words["lesson.lead.left-out"], string.Join("; ", _plan.LeftOut.Select(Step)) + "."));
            }

            more.Add(new SheetNote(_words["lesson.lead.never"], _words["lesson.never"] + "."));
            if (_plan.Order == LessonOrder.Backward)
            {
                more.Add(new SheetNote(_words["lesson.lead.order"], _words.Say(
                    _plan.IsOrderAsked ? "lesson.order.asked" : "lesson.order.backward",
                    ("ending", _words.Decimal(_plan.EndingPoints)),
                    ("other", _words.Decimal(_plan.OtherPoints)))));
            }

            return more.ToValueList();
        }
    }

    private string Sentence(LessonNote note) => note.Kind switch
    {
        LessonNoteKind.NothingToTeach => _words["lesson.note.nothing-to-teach"],
        LessonNoteKind.UnknownWords => _words.Say("lesson.note.unknown-words", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.TooShort => _plan.Taught < _plan.Chunks.Count
            ? _words.Say(
                "lesson.note.too-short",
                ("number", _words.Decimal(note.Number)),
                ("taught", Digits(_plan.Taught)),
                ("all", Digits(_plan.Chunks.Count)))
            : _words.Say("lesson.note.too-short-open", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.Shorter => _words[_plan.LeftOut.Count > 0 ? "lesson.note.shorter-left-out" : "lesson.note.shorter"],
        LessonNoteKind.LeftOver => _words.Say("lesson.note.left-over", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.ManyNew => _words.Say("lesson.note.many-new", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.AboveClass => _words.Say("lesson.note.above-class", ("level", LevelOf(_plan.Class + note.Number.Floor))),
        LessonNoteKind.TempoTaken => _words.Say("lesson.note.tempo-taken", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.TooSlow => _words.Say("lesson.note.too-slow", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.NotSlower => _words.Say("lesson.note.not-slower", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.LongBlock => _words.Say("lesson.note.long-block", ("number", _words.Decimal(note.Number))),
        LessonNoteKind.OtherTrack => _words["lesson.note.other-track"],
        _ => throw new ArgumentOutOfRangeException(nameof(note)),
    };

    private static string Digits(int number) => number.ToString(CultureInfo.InvariantCulture);

    private string LevelOf(Level level) => _words["level." + LevelPhrases.Name(level).Replace(' ', '-')];

    private string NameFacts()
    {
        List<string> facts = [_words.Counts(_dance.Length)];
        if (_plan.Walls is { } walls)
        {
            facts.Add(_words.Walls(walls));
        }

        if (_plan.Breaks.Count > 0)
        {
            facts.Add(_plan.Breaks.Count == 1 ? _words["lesson.name.breaks.one"] : _words.Say("lesson.name.breaks.other", ("number", Digits(_plan.Breaks.Count))));
        }

        if (_plan.NewFigures.Count > 0)
        {
            facts.Add(_words.Say("lesson.name.new", ("figures", _words.Row([.. _plan.NewFigures.Select(f => f.Definition.Name)]))));
        }

        return string.Join(", ", facts);
    }

    private string Times(int times) => times switch
    {
        1 => _words["lesson.times.once"],
        2 => _words["lesson.times.twice"],
        _ => _words.Say("lesson.times.many", ("number", Digits(times))),
    };

    private string Walls(LessonStep step) => step.Walls == 0 ? _words["lesson.walls.track"] : _words.Walls(step.Walls);

    private string Pace(Ratio? pace) => Digits((((pace ?? 0) * Tenths) + 5).Floor / Tenths);

    private string Place(LessonChunk chunk) => _words.Row([.. chunk.Pieces.Select(Place)]);

    private string First(LessonChunk chunk) => chunk.Pieces.Count > 0 ? Place(chunk.Pieces[0]) : "";

    private string Last(LessonChunk chunk) => chunk.Pieces.Count > 0 ? Place(chunk.Pieces[chunk.Pieces.Count - 1]) : "";

    private string Place(LessonPiece piece)
    {
        string label = SheetWords.Label(piece.Counts);
        string place = piece.IsWhole
            ? _words.Say("lesson.place.section", ("section", Digits(piece.Section)))
            : _words.Say("lesson.place.counts", ("section", Digits(piece.Section)), ("counts", _words.Say("count.span", ("label", label))));
        return piece.Part.Length > 0 ? _words.Say("lesson.place.part", ("part", piece.Part), ("place", place)) : place;
    }

    private string Act(LessonBreak pause) => pause.Kind switch
    {
        LessonBreakKind.Tag => Named("lesson.act.tag", pause.Name),
        LessonBreakKind.Bridge => Named("lesson.act.bridge", pause.Name),
        LessonBreakKind.Wait => _words["lesson.act.wait"],
        _ => _words["lesson.act.restart"],
    };

    private string WholeAct(LessonBreak pause) => pause is { ThenRestarts: true, Kind: not LessonBreakKind.Restart }
        ? _words.Say("lesson.act.then-restart", ("act", Act(pause)))
        : Act(pause);

    private string Named(string key, string name) => name.Length > 0 ? _words.Say(key + "-named", ("name", name)) : _words[key];

    // The very word the caller will say: hers where she wrote one.
    private string Cue(LessonBreak pause) => pause.Body?.Calls.FirstOrDefault(c => c.Counts is null) is { Words.Length: > 0 } hers ? hers.Words
        : pause.Kind == LessonBreakKind.Wait ? CallWords.English.With("wait", pause.Length.Value.Floor)
        : pause.Kind == LessonBreakKind.Restart ? CallWords.English["restart"]
        : CallWords.English[_dance.FindTag(pause.Name) is { IsBridge: true } ? "bridge" : "tag"];

    private string Where(LessonBreak pause)
    {
        string where = _words.Say("lesson.where.walls", ("number", Digits(pause.Walls.Count > 0 ? pause.Walls[0] : 1)));
        where = pause.Facing is { } facing ? _words.Say("lesson.where.facing", ("where", where), ("facing", facing.ToString())) : where;
        return _words.Say("lesson.where.after", ("where", where), ("counts", _words.Counts(pause.After)));
    }

    private string Why(LessonReason reason)
    {
        string key = "lesson.why." + SheetLanguage.KeyOf(reason.Kind.ToString());
        return reason.Kind is LessonReasonKind.Turns or LessonReasonKind.OneFoot
            ? _words.Say(key, ("turn", SheetWords.Amount(reason.Number / 8)))
            : _words.Say(key, ("number", _words.Decimal(reason.Number)));
    }

    private string Offer(LessonOffer offer) => offer.Option is { } option
        ? string.Create(CultureInfo.InvariantCulture, $"{_words.Usual("option", option.Name)}, {option.Label}: {_words.Moves.Describe(option.Moves)}")
        : _words["lesson.offer." + SheetLanguage.KeyOf(offer.Kind.ToString())];
}
