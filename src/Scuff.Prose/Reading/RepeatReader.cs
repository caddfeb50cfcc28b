using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Reads a line that only says to repeat counts that are written out already.</summary>
internal sealed class RepeatReader(ReaderState state)
{
    /// <summary>"Repeat 1-4 on the other foot": the moves of those counts again, mirrored when said or when only that is possible.</summary>
    public LineContent? Read(List<Clause> clauses, IReadOnlyList<LabelPlace> places, TextSpan whole, int line, string label,
        List<(Facing Facing, TextSpan Span)> clocks, List<Clause>? restated = null, bool onlyMirrored = false,
        (Clause Where, Clause Turn)? turning = null)
    {
        if (places.Count == 0)
        {
            return null;
        }

        Clause repeat = clauses.First(c => c.IsRepeat);
        bool mirrored = clauses.Any(c => c.IsMirrored);
        Clause? otherTurn = OtherTurn(clauses);
        Foot? leading = clauses.Where(c => !ChangesEnd(c)).SelectMany(c => c.Feet).Select(f => (Foot?)f.Foot).FirstOrDefault() ?? clauses.Select(c =>
            c.DirSide ?? (otherTurn is null ? c.TurnSide : null)).FirstOrDefault(s => s is not null);
        Counts length = LabelPlaces.EndOf(places.Max(p => p.Place)) - Counts.FromWhole(places[0].Place.Value.Floor);
        Counts from;

        // "3-8 repeat 1-2 three more times": how often those counts go into the line's
        int often = repeat.TimesStated && repeat.Times is > 1 and int told && length.Value.Floor % told == 0 && !mirrored ? told : 1;
        Counts unit = often > 1 ? Counts.FromWhole(length.Value.Floor / often) : length;
        if (often > 1 && repeat.RepeatCounts is (int begun, int ended) && Counts.FromWhole(ended - begun + 1) != unit)
        {
            (often, unit) = (1, length);
        }

        length = unit;
        List<WrittenLine> source = state.SectionLines;
        if (repeat.RepeatSection is int named && named >= 1 && named <= state.Sections.Count)
        {
            source = [.. state.Sections[named - 1].Lines];
            repeat.RepeatCounts ??= (1, state.Sections[named - 1].Length.Value.Floor);
        }
        else if (repeat.RepeatSection is not null)
        {
            return null;
        }

        if (repeat.RepeatCounts is (int first, int lastCount))
        {
            from = Counts.FromWhole(first - 1);
            Counts to = Counts.FromWhole(lastCount);
            if (to - from != length)
            {
                state.Add(ReadingRules.MovesDoNotFit.At(whole, ("counts", label), ("labels", LabelPlaces.Many(length.Value.Floor, "count")),
                    ("actions", LabelPlaces.Many((to - from).Value.Floor, "count"))).OnCount(LabelPlaces.FirstCount(places)));
                length = Counts.Min(length, to - from);
            }

            if (repeat.RepeatSection is null && (first > 8 || source.Count == 0 || !source.Any(l => l.Counts.Start <= from && l.Counts.End > from)))
            {
                if (state.Sections.Count > 0)
                {
                    source = [.. state.Sections[^1].Lines];
                }
            }
        }
        else
        {
            from = Counts.FromWhole(places[0].Place.Value.Floor) - length;
            if (from < Counts.Zero && state.Sections.Count > 0)
            {
                source = [.. state.Sections[^1].Lines];
                from = Counts.Zero;
            }

            if (from < Counts.Zero || source.Count == 0)
            {
                return null;
            }

            if (onlyMirrored && (source[^1].Counts.Start != from || source[^1].Counts.End != from + length || leading is not Foot turnedTo
                || state.Weight.FreeFoot() != turnedTo || FirstFoot(source[^1]) != turnedTo.Other()))
            {
                return null;
            }

            string taken = string.Create(CultureInfo.InvariantCulture, $"{from.Value.Floor + 1}-{(from + length).Value.Floor}");
            bool wholeLine = source.Count > 0 && source[^1].Counts.Start == from && source[^1].Counts.End == from + length;
            if (!wholeLine && (places[0].Place.Value.Floor != length.Value.Floor || from != Counts.Zero))
            {
                state.Add(ReadingRules.RepeatWithoutCounts.At(whole, ("taken", taken)).OnCount(LabelPlaces.FirstCount(places)));
            }
            else
            {
                state.Add(ReadingRules.RepeatWithoutCounts.At(whole,
                    ("taken", taken)).OnCount(LabelPlaces.FirstCount(places)) with
                { Severity = Severity.Hint });
            }
        }

        List<WrittenMove> copied = [];
        Foot? sourceFirst = null;
        Counts begins = Counts.FromWhole(places[0].Place.Value.Floor) - from;
        foreach (int time in Enumerable.Range(0, often))
        {
            Counts shift = begins + Counts.FromWhole(time * unit.Value.Floor);
            foreach (WrittenMove move in source.SelectMany(w => w.Moves))
            {
                List<WrittenStep> steps = [];
                foreach (WrittenStep step in move.Steps)
                {
                    Counts place = step.Count.Place;
                    if (place < from || place >= from + length)
                    {
                        continue;
                    }

                    sourceFirst ??= step.Action.Foot.ToFoot();
                    Counts moved = place + shift;
                    steps.Add(step with { Count = new WrittenCount(CountGrid.LabelOf(moved), moved), Span = whole, Line = line });
                }

                if (steps.Count > 0)
                {
                    copied.Add(move with { Steps = steps.ToValueList(), Span = whole });
                }
            }
        }

        int spoken = MannerOf(repeat.Head);
        if (copied.Count == 0 || (spoken > 0 && !copied.SelectMany(m => m.Steps).Any(s => Manner(s.Action.Kind) == spoken
            || s.With.Any(w => Manner(w.Kind) == spoken))))
        {
            // "repeat the heel split" where none is among those counts
            return null;
        }

        if (TowardsCorner(clauses) && copied.SelectMany(m => m.Steps).Any(s => s.Action.Direction is Direction.DiagonalForward or Direction.DiagonalBack))
        {
            // "do the same to the left front corner": the diagonals lie on the other side by themselves
        }
        else if (RepeatedWay(clauses) is Direction towards)
        {
            bool going = copied.SelectMany(m => m.Steps).All(s => s.Action.Traits.Stretches
                || s.Action.Direction is Direction.Forward or Direction.Back || s.Action.Foot == ActingFoot.None);
            if (!going)
            {
                return null;
            }

            // "the same going forward": the feet as before, the other way
            copied = copied.ConvertAll(m =>
                m with
                {
                    Definition = null,
                    Named = null,
                    Steps = m.Steps.Select(s => s.Action.Direction is Direction.Forward or Direction.Back
                ? s with { Action = s.Action with { Direction = towards } } : s).ToValueList()
                });
        }
        else if (clauses.Exists(c => c.Dir is not null && c.DirSide is null) || (clauses.Exists(c => c.Amount is not null)
            && (otherTurn is null || copied.SelectMany(m => m.Steps).Count(s => s.Action.Turn.Sign != 0) != 1)))
        {
            return null;
        }

        bool flip = mirrored;
        List<WrittenMove>? asWritten = null;
        if (!mirrored && leading is Foot lead && sourceFirst is Foot sf)
        {
            flip = lead != sf;
        }
        else if (!mirrored && sourceFirst is Foot source1 && state.Weight.FreeFoot() is Foot free && free != source1)
        {
            flip = true;
            asWritten = NamesFeet(source, from, from + length) ? copied : null;
        }

        if (flip)
        {
            copied = copied.Select(m => m with
            {
                Named = m.Named?.Other(),
                StatedTurn = m.StatedTurn is Turn t ? -t : null,
                Steps = m.Steps.Select(s => s with { Action = s.Action.Mirrored(), Gesture = DanceMirror.MirrorWords(s.Gesture) }).ToValueList(),
            }).ToList();
        }

        if (otherTurn is not null && !TurnBy(copied, otherTurn))
        {
            return null;
        }

        if (asWritten is not null)
        {
            // "walk R, L, R, kick L", "repeat 1-4": the words say the right, and only the left is free
            state.Add(ReadingRules.TwoReadings.At(whole, ("first", string.Join(", ", copied.Select(m => Phrasing.Describe(m)))),
                ("second", string.Join(", ", asWritten.Select(m => Phrasing.Describe(m))))).OnCount(LabelPlaces.FirstCount(places)));
        }

        if (ChangesEnd(clauses[^1]) && EndedWith(copied, clauses[^1]) is List<WrittenMove> changed)
        {
            copied = changed;
        }
        else if ((TellsEnd(clauses[^1]) || ChangesEnd(clauses[^1])) && (copied[^1].Steps[^1].Action is not { } ends || ends.Kind != clauses[^1].Head!.Verb
            || (clauses[^1].Feet.Count > 0 && ends.Foot.ToFoot() != clauses[^1].Feet[0].Foot)))
        {
            // "repeat starting with R, and brush L" where the counts do not end with a brush of the L: other steps than those
            return null;
        }

        if (restated is not null && !TellsAgain(restated, copied))
        {
            return null;
        }

        if (turning is (Clause where, Clause turn))
        {
            if (Turned(copied, where, turn) is not List<WrittenMove> turned)
            {
                return null;
            }

            copied = turned;
        }

        AddBeside(copied, clauses);
        Weight weight = EndsOn(copied, [.. clauses, .. restated ?? []], whole, label);
        copied = copied.Select(m => m with { Words = Phrasing.Describe(m) }).ToList();
        state.Follow(copied, weight);
        Counts end = places.Max(p => p.Place);
        return new LineContent(copied.ToValueList(), clocks.Select(c => new FacingClaim(c.Facing, end, c.Span)).ToValueList(), true);
    }

    /// <summary>How far it turns this time: "repeat with a 1/4 turn right" after a half; null where nothing or more is said.</summary>
    private static Clause? OtherTurn(List<Clause> clauses) => clauses.FindAll(c => c.Amount is not null) is
        [{ TurnTo: null, Detail.Count: 0, Times: 1, Feet.Count: 0, Dir: null, WeightNote: null } turn]
        && clauses.TrueForAll(c => c.Unknown.Count == 0) ? turn : null;

    /// <summary>Turns the one step that turns as far as is said; false where it is said the other way round.</summary>
    private static bool TurnBy(List<WrittenMove> copied, Clause turn)
    {
        for (int move = 0; move < copied.Count; move++)
        {
            WrittenStep? turning = copied[move].Steps.FirstOrDefault(s => s.Action.Turn.Sign != 0);
            if (turning is null)
            {
                continue;
            }

            int sign = turning.Action.Turn.Sign;
            if (turn.TurnSide is Foot side && side == Foot.Right != sign > 0)
            {
                return false;
            }

            Turn made = Turn.FromEighths(sign * turn.Amount!.Value);
            copied[move] = copied[move] with
            {
                StatedTurn = made,
                Steps = copied[move].Steps.Select(s => s.Action.Turn.Sign != 0 ? s with { Action = s.Action with { Turn = made } } : s).ToValueList(),
            };
        }

        return true;
    }

    /// <summary>
    /// Where the weight is when all is repeated. "Repeat, weight on L": what leaves it on both feet ends there now; where a step has it elsewhere, that is asked.
    /// </summary>
    private Weight EndsOn(List<WrittenMove> copied, List<Clause> clauses, TextSpan whole, string label)
    {
        Weight weight = copied.SelectMany(m => m.Steps).Aggregate(state.Weight, (w, s) => s.Action.WeightAfter(w));
        Foot? told = clauses.SelectMany(c => c.Detail.Prepend(c)).Where(c => c.WeightNote is TermKind.WeightOn).Select(c => c.WeightFoot)
            .LastOrDefault(f => f is not null);
        if (told is not Foot foot || weight == foot.ToWeight())
        {
            return weight;
        }

        WrittenMove last = copied[^1];
        if (weight is Weight.Shared or Weight.Unknown && last.Steps[^1] is { Action.Foot: ActingFoot.Both } end)
        {
            StepAction ended = end.Action with { Effect = foot == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight };
            copied[^1] = last with { Steps = [.. last.Steps.Span[..^1], end with { Action = ended }] };
            return foot.ToWeight();
        }

        state.Add(ReadingRules.WordsUnused.At(whole, ("words", state.Text.Substring(whole.Start, whole.Length)), ("counts", label), ("unused", "weight"),
            ("read", string.Join(", ", copied.Select(m => Phrasing.Describe(m))))));
        return weight;
    }

    /// <summary>The moves with a turn on the one step that is told by its foot and its way, or by its count; null where that is none or several.</summary>
    private static List<WrittenMove>? Turned(List<WrittenMove> copied, Clause where, Clause turn)
    {
        bool Is(WrittenStep step) => where.OnCount is int count ? step.Count.Place == Counts.FromWhole(count - 1)
            : step.Action.Foot.ToFoot() == where.Feet[0].Foot && step.Action.Effect == WeightEffect.Takes
                && FigureComparison.Family(step.Action.Direction) == FigureComparison.Family(where.Dir!.Direction);
        List<WrittenStep> found = [.. copied.SelectMany(m => m.Steps).Where(Is)];
        if (found is not [{ Action: { Turn.Sign: 0, Foot: not ActingFoot.None } }] || turn is not { Amount: int amount, TurnSide: Foot side })
        {
            return null;
        }

        Turn made = Turn.FromEighths(side == Foot.Right ? amount : -amount);
        return copied.ConvertAll(m => m.Steps.Any(Is)
            ? m with
            {
                StatedTurn = (m.StatedTurn ?? Turn.None) + made,
                Steps = m.Steps.Select(s => Is(s) ? s with { Action = s.Action with { Turn = made } } : s).ToValueList(),
            }
            : m);
    }

    /// <summary>Whether it says after a repeat how that ends: "repeat starting with R, and brush L".</summary>
    public static bool TellsEnd(Clause clause) => clause is
    {
        IsRepeat: false, Link: Link.Soft or Link.Hard, Amount: null, Dir: null, Times: 1, Detail.Count: 0, Feet: [{ }],
        Head.Verb: ActionKind.Brush or ActionKind.Scuff or ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Kick or ActionKind.Hitch
            or ActionKind.Hook or ActionKind.Flick or ActionKind.Stomp
    };

    /// <summary>Whether a clause behind a repeat may tell again what is repeated: a foot's action in words of its own.</summary>
    /// <param name="clause">The clause.</param>
    public static bool MayRestate(Clause clause) => clause is
    {
        IsRepeat: false, IsAmp: false, Amount: null, HasTurnWord: false, Times: 1, TimesStated: false, Detail.Count: 0, Unknown.Count: 0,
        Feet.Count: < 2, WeightNote: null or TermKind.WeightOn or TermKind.WeightTakes
    }
        && (clause.Head is { Verb: not null } or { Figures: [{ Rows.Count: 1 }, ..] } || (clause.Head is null && clause.Dir is not null));

    /// <summary>Whether clauses tell actions of those that are repeated, in their order and with their feet.</summary>
    private static bool TellsAgain(List<Clause> restated, List<WrittenMove> copied)
    {
        List<StepAction> actions = [.. copied.SelectMany(m => m.Steps).Select(s => s.Action)];
        int at = 0;
        foreach (Clause clause in restated)
        {
            int found = actions.FindIndex(at, a => IsOf(clause, a));
            if (found < 0)
            {
                return false;
            }

            at = found + 1;
        }

        return true;
    }

    private static bool IsOf(Clause clause, StepAction action)
    {
        bool sameMove = clause.Head is not { } head || (head.Verb is ActionKind verb ? verb == action.Kind
            : head.Figures.Any(f => f.Rows[0].Action.Kind == action.Kind));
        bool sameWay = clause.Dir is not { } way || action.Direction is Direction.Unstated
            || FigureComparison.Family(way.Direction) == FigureComparison.Family(action.Direction);
        return sameMove && sameWay && (clause.Feet.Count == 0 || action.Foot.ToFoot() == clause.Feet[0].Foot);
    }

    private static int MannerOf(Meaning? head) => head is { Verb: ActionKind verb } ? Manner(verb)
        : head is { Figures: [{ Rows: [{ Action.Kind: var kind }, ..] rows }, ..] } && rows.All(r => r.Action.Kind == kind) ? Manner(kind) : 0;

    /// <summary>Moves that writers call by each other's names have one number; 0 for those whose names stand for any move.</summary>
    private static int Manner(ActionKind kind) => kind switch
    {
        ActionKind.SplitHeels or ActionKind.SplitToes or ActionKind.FanHeel or ActionKind.FanToe or ActionKind.Swivel or ActionKind.SwivelHeels
            or ActionKind.SwivelToes or ActionKind.Twist => 1,
        ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig => 2,
        ActionKind.Kick or ActionKind.Flick or ActionKind.Hook or ActionKind.Hitch or ActionKind.Brush or ActionKind.Scuff or ActionKind.Sweep => 3,
        ActionKind.Bump or ActionKind.Sway or ActionKind.RollHips => 4,
        ActionKind.Bounce => 5,
        _ => 0,
    };

    /// <summary>Whether the words of the counts that are danced again name feet.</summary>
    private bool NamesFeet(List<WrittenLine> source, Counts from, Counts to) => source.Exists(l => l.Counts.Start < to && l.Counts.End > from
        && TermReader.Read(state.Text, l.Span.Start, l.Span.End, state.Lexicon).Exists(t => t.Kind is TermKind.Foot or TermKind.Side));

    private static Foot? FirstFoot(WrittenLine line)
        => line.Moves.SelectMany(m => m.Steps).Select(s => s.Action.Foot.ToFoot()).FirstOrDefault(f => f is not null);

    /// <summary>
    /// "And to the left", "now L, just as smooth": nothing but the other side, which says to dance there what the line before tells. The words as a repeat,
    /// or null.
    /// </summary>
    public static Clause? Elided(List<Clause> clauses)
    {
        List<Clause> told = clauses.FindAll(c => c.HasContent);
        if (told is not [{ Head: null, IsAmp: false, Amount: null, HasTurnWord: false, Part.Length: 0, BothFeet: false, Detail.Count: 0, Times: 1 } only]
            || only.WeightNote is not null || only.Reference is not null || only.Size != 0 || only.Feet.Exists(f => f.MayBeReference)
            || clauses.Exists(c => c.Unknown.Count > 0)
            || !(only is { IsFeetOnly: true, Feet.Count: 1 } || only is { Dir.Direction: Direction.Side, DirSide: not null, Feet.Count: 0 }))
        {
            return null;
        }

        Clause repeat = only.Copy(mirrored: false);
        repeat.IsRepeat = true;
        repeat.Dir = null;
        repeat.DirText = "";
        return repeat;
    }

    /// <summary>Whether it says how the counts end this time: "same to the left with a scuff", "repeat on L, hitch R".</summary>
    public static bool ChangesEnd(Clause clause) => clause is
    {
        IsRepeat: false, IsAmp: false, Amount: null, HasTurnWord: false, Dir: null, Feet.Count: < 2, Part.Length: 0, Times: 1, Detail.Count: 0, BothFeet: false,
        WeightNote: null, Unknown.Count: 0, Head.Verb: ActionKind.Scuff or ActionKind.Brush or ActionKind.Touch or ActionKind.Tap or ActionKind.Hitch
            or ActionKind.Hook or ActionKind.Flick
    };

    /// <summary>The moves with the last gesture changed to another of the same foot; null where they do not end with one.</summary>
    private List<WrittenMove>? EndedWith(List<WrittenMove> copied, Clause ending)
    {
        WrittenStep last = copied[^1].Steps[^1];
        bool gesture = last.Action is { Effect: WeightEffect.Keeps } && last.Action.Foot.ToFoot() is Foot foot && (ending.Feet.Count == 0
            || ending.Feet[0].Foot == foot);
        if (!gesture || ending.Head!.Verb is not ActionKind kind || last.Action.Kind == kind || copied.Sum(m => m.Steps.Count) < 2)
        {
            return null;
        }

        StepAction usual = state.Lexicon.Verbs.Usual(kind);
        WrittenStep made = last with { Action = usual with { Foot = last.Action.Foot, Turn = last.Action.Turn } };
        return
        [
            .. copied.SkipLast(1),
            copied[^1] with { Definition = null, Named = null, Steps = [.. copied[^1].Steps.SkipLast(1), made] },
        ];
    }

    /// <summary>Whether it says what the hands do while the counts are danced again: "same to the right, clicking again", "repeat on L, clap".</summary>
    public static bool IsBeside(Clause clause) => clause is
    {
        IsRepeat: false, IsAmp: false, Amount: null, Feet.Count: 0, Dir: null, Part.Length: 0, Times: 1, Detail.Count: 0,
        Head: { Verb: ActionKind.Clap or ActionKind.Snap } or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] }
    };

    /// <summary>Puts what the hands do beside the last step, unless the counts that are danced again have it already.</summary>
    private static void AddBeside(List<WrittenMove> copied, List<Clause> clauses)
    {
        foreach (Clause clause in clauses)
        {
            if (!IsBeside(clause) || clause.Head!.Verb is not ActionKind kind
                || copied.Exists(m => m.Steps.Any(s => s.Action.Kind == kind || s.With.Any(w => w.Kind == kind))))
            {
                continue;
            }

            StepAction hands = new(kind, ActingFoot.None, Direction.Unstated, Contact.Air, WeightEffect.Keeps);
            List<WrittenStep> steps = [.. copied[^1].Steps];
            steps[^1] = steps[^1].Action.Kind is ActionKind.Hold ? steps[^1] with { Action = hands } : steps[^1] with { With = [.. steps[^1].With, hands] };
            copied[^1] = copied[^1] with { Steps = steps.ToValueList() };
        }
    }

    private static bool TowardsCorner(List<Clause> clauses) => clauses.Exists(c => c.Diagonal) && clauses.TrueForAll(c => c.Amount is null);

    /// <summary>Forward or back, when the repeat is said to go that way.</summary>
    private static Direction? RepeatedWay(List<Clause> clauses) =>
        clauses.Select(c => c.Dir?.Direction).FirstOrDefault(d => d is Direction.Forward or Direction.Back);
}
