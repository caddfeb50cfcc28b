using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Reads the words of one count line into moves on counts.</summary>
internal sealed class LineReader
{
    private readonly ReaderState _state;
    private readonly FigureComparison _comparison;
    private readonly LineSearch _search;
    private readonly RepeatReader _repeats;
    private readonly ReadingQuestions _questions;

    /// <summary>A reader that goes on from a state and moves it on.</summary>
    /// <param name="reading">Text, words, weight and facing so far.</param>
    public LineReader(ReaderState reading)
    {
        _state = reading;
        _comparison = new FigureComparison(reading);
        _search = new LineSearch(reading, _comparison);
        _repeats = new RepeatReader(reading);
        _questions = new ReadingQuestions(reading);
    }

    /// <summary>Reads the words between two offsets over the given places.</summary>
    /// <param name="places">Places by the section's own counting.</param>
    /// <param name="start">First character of the words.</param>
    /// <param name="end">After the last.</param>
    /// <param name="line">One-based line number.</param>
    /// <param name="label">The label as printed, for messages.</param>
    public LineContent Read(IReadOnlyList<LabelPlace> places, int start, int end, int line, string label)
    {
        List<Term> terms = TermReader.Read(_state.Text, start, end, _state.Lexicon);
        List<(Facing Facing, TextSpan Span)> clocks = TakeClocks(terms, out Turn bodyAngle);
        NameInBrackets(terms);
        terms = DealtTerms.DashedFeet(terms) ?? terms;
        terms = DealtTerms.FeetBehindPlaces(terms) ?? terms;
        terms = DealtTerms.RowOfSides(terms) ?? terms;
        terms = DealtTerms.BumpsOfStep(terms) ?? terms;
        terms = DealtTerms.FeetOfFullTurn(terms) ?? terms;
        DealtTerms.TravellingTitle(terms);
        DealtTerms.TurnWithFigure(terms);
        DealtTerms.HipsOfTurn(terms);
        terms = DealtTerms.BehindTitle(terms) ?? terms;
        DealtTerms.WeightOfFoot(terms);
        DealtTerms.SlantedDegrees(terms);
        DealtTerms.WayOfDiagonal(terms);
        DealtTerms.HeelsTurned(terms);
        PassOverCounts(terms, places);
        StepOnce(terms);
        RecoverAcross(terms);
        RockInBrackets(terms);
        terms = HeelsSwitched(terms, places) ?? terms;
        terms = Ellipsis.Filled(BothHeels(terms), _state.LastAction);
        List<Clause> clauses = ClauseBuilder.Build(terms);
        TextSpan whole = TrimSpan(start, end);
        bodyAngle = CornersAreAngles(clocks, clauses, bodyAngle);
        if (!clauses.Exists(c => c.HasContent) && _state.Text.AsSpan(start, end - start).Trim() is { Length: < 90 } onceMore
            && (onceMore.Length < 30 || !clauses.Exists(c => c.Unknown.Count > 0))
            && (onceMore.Contains("again", StringComparison.OrdinalIgnoreCase) || onceMore.Contains("once more", StringComparison.OrdinalIgnoreCase)
                || onceMore.Contains("one more time", StringComparison.OrdinalIgnoreCase)
                || onceMore.Contains("one time more", StringComparison.OrdinalIgnoreCase)
                || onceMore.Contains("a second time", StringComparison.OrdinalIgnoreCase)
                || onceMore.Contains("another time", StringComparison.OrdinalIgnoreCase)))
        {
            Clause repeat = new() { IsRepeat = true, RepeatCounts = CountsAgain(onceMore, places) };
            repeat.Cover(whole);
            clauses = [repeat];
        }

        if (AsCounts(_state.Text[start..end]) is (int firstAgain, int lastAgain) && firstAgain < lastAgain)
        {
            // "as 1-4"
            Clause repeat = new() { IsRepeat = true, RepeatCounts = (firstAgain, lastAgain) };
            repeat.Cover(whole);
            LeadAgain(repeat, terms);
            clauses = [repeat];
        }

        if (AgainTurning(clauses) is (Clause sameAgain, Clause where, Clause turning))
        {
            // "then a second one, only this time turn a quarter to the right as the left steps back"
            int complaints = _state.Complaints.Count;
            LineContent? turned = _repeats.Read([sameAgain], places, whole, line, label, clocks, turning: (where, turning));
            if (turned is not null)
            {
                return turned;
            }

            _state.Complaints.RemoveRange(complaints, _state.Complaints.Count - complaints);
        }

        if (clauses.Count == 1 && clauses[0].IsRepeat
            || (clauses.Count > 0 && clauses[0].IsRepeat && clauses.All(c => c.IsRepeat || c.IsFeetOnly || c.Head is null || RepeatReader.IsBeside(c)
                || (c.Head is { Verb: ActionKind.Brush or ActionKind.Touch or ActionKind.Scuff or ActionKind.Hitch, IsIng: true } && c.Link is Link.Hard
                && clauses.Exists(r => r.Diagonal))
                || (ReferenceEquals(c, clauses[^1]) && (RepeatReader.TellsEnd(c) || RepeatReader.ChangesEnd(c))))))
        {
            LineContent? repeated = _repeats.Read(clauses, places, whole, line, label, clocks);
            if (repeated is not null)
            {
                return repeated;
            }

            if (clauses.Exists(c => c.Amount is not null) && clauses.TrueForAll(c => c.Head is null
                || (ReferenceEquals(c, clauses[^1]) && (RepeatReader.TellsEnd(c) || RepeatReader.ChangesEnd(c)))))
            {
                if (FigureAgain(clauses, places) is not List<Clause> turned)
                {
                    return Unread(places, whole, line, label, clocks);
                }

                clauses = turned;
            }
        }

        if (clauses is [{ IsRepeat: true } again1, _, ..] && clauses.Skip(1).All(RepeatReader.MayRestate))
        {
            // "do exactly the same on the right foot, heel forward first and then lower the toes"
            int complaints = _state.Complaints.Count;
            LineContent? repeated = _repeats.Read([again1], places, whole, line, label, clocks, clauses.GetRange(1, clauses.Count - 1));
            if (repeated is not null)
            {
                return repeated;
            }

            _state.Complaints.RemoveRange(complaints, _state.Complaints.Count - complaints);
        }

        if (clauses is [{ Head.Verb: ActionKind.Clap or ActionKind.Snap or ActionKind.Stomp, TimesStated: false } each] && places.Count > 1
            && terms.Exists(t => t.Kind == TermKind.Filler && t.Text.ToLowerInvariant() is "on each" or "on every" or "each" or "every"))
        {
            // "clap on each count"
            each.Times = Math.Min(8, places.Count);
            each.TimesStated = true;
        }

        if (clauses is [{ Head.Verb: ActionKind.Step, TimesStated: false, Feet.Count: 0, Amount: null } walks] && places.Count > 1
            && places.All(p => p.Place.IsWhole)
            && terms.Find(t => t.Kind == TermKind.Move).Text.ToLowerInvariant() is "walk" or "walks" or "walking" or "march")
        {
            // "1-3 walk forward": one on each count
            walks.Times = places.Count;
            walks.TimesStated = true;
        }

        PartHoldAndClap(clauses, places);
        ResolveTurnsTo(clauses);
        (LineReading? best, LineReading? other, List<Clause> danced, List<(Clause Figure, int From, int To)> figures) =
            _search.Solve(clauses, places);
        if (terms.Exists(t => t.Meaning.IsComposable) && !SaysNameOften(terms))
        {
            // the same words as plain detail: "touch L, R back, touch L" holds no "back touch"
            List<Term> plainTerms = TermReader.Read(_state.Text, start, end, _state.Lexicon, plain: true);
            _ = TakeClocks(plainTerms, out _);
            List<Clause> plain = ClauseBuilder.Build(plainTerms);
            ResolveTurnsTo(plain);
            (LineReading? plainBest, LineReading? plainOther, List<Clause> plainDanced, List<(Clause Figure, int From, int To)> plainFigures) =
                _search.Solve(plain, places);
            // "step-slide-step-brush": in a chain of words each is a move
            bool verbs = Chained(_state.Text.AsSpan(start, end - start)) && plain.TrueForAll(c => c.Head?.Verb is not null);
            double margin = verbs && plainBest is { Fits: true } ? -0.5 : 0.3;
            // a "ball" between two moves is a step: taken apart, "kick ball cross" would be one kick across
            bool ball = best is { Fits: true } && terms.Exists(t => t.Meaning is { IsComposable: true, Figures: [{ Rows.Count: > 2 }, ..] }
                && t.Text.Contains("ball", StringComparison.OrdinalIgnoreCase));
            if (plainBest is not null && !ball && (best is null || Badness(plainBest, plain) < Badness(best, clauses) - margin))
            {
                (best, other, danced, figures, clauses) = (plainBest, plainOther, plainDanced, plainFigures, plain);
            }
        }
        // "side R touch L side L touch R": nothing parts the moves but their places
        bool runsOn = places.Count > 3 && !terms.Exists(t => t.Kind is TermKind.Separator or TermKind.Then or TermKind.Amp or TermKind.Join or TermKind.With)
            && terms.Count >= 6 && terms[0].Kind == TermKind.Dir && best is not { Cost: < 0.3 };
        if (best is not { Fits: true, Cost: < 2 } || runsOn)
        {
            // the same words with every place starting a move
            List<Clause> placed = ClauseBuilder.Build(terms, placesStart: true);
            ResolveTurnsTo(placed);
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                _search.Solve(placed, places);
            if (again is not null && (best is null || Badness(again, placed) < Badness(best, clauses) - 0.05))
            {
                (best, other, danced, figures, clauses) = (again, againOther, againDanced, againFigures, placed);
            }
        }

        if (best is not { Fits: true, Cost: < 2 } && BothJoined(terms) is List<Term> joined)
        {
            // "jump R+L apart": both feet at once
            List<Clause> both = ClauseBuilder.Build(joined);
            ResolveTurnsTo(both);
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                _search.Solve(both, places);
            if (again is not null && (best is null || Badness(again, both) < Badness(best, clauses) - 0.05))
            {
                (best, other, danced, figures, clauses, terms) = (again, againOther, againDanced, againFigures, both, joined);
            }
        }

        if (best is not { Fits: true, Cost: < 0.9 } && WayOfTurn.BeforeFeet(terms) is List<Term> ways)
        {
            // "left 1/4 L forward, left 1/2 R back": the way round, and then the foot
            List<Clause> told = ClauseBuilder.Build(ways);
            ResolveTurnsTo(told);
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                _search.Solve(told, places);
            if (again is { Fits: true, Cost: < 2 } && (best is not { Fits: true } || again.Cost < best.Cost - 0.3))
            {
                (best, other, danced, figures, clauses, terms) = (again, againOther, againDanced, againFigures, told, ways);
            }
        }

        foreach (List<Term>? one in (ReadOnlySpan<List<Term>?>)[best is { Fits: true } ? null : TurnedSteps(terms),
            best is { Fits: true } ? null : HeelsGround(terms)])
        {
            // "RF 1/4 turn left, step side" on one count is one step; "R heel forward, grind heel turning 1/4 R" one grind
            if (one is null || best is { Fits: true })
            {
                continue;
            }

            List<Clause> told = ClauseBuilder.Build(one);
            ResolveTurnsTo(told);
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                _search.Solve(told, places);
            if (again is { Fits: true, Cost: < 2 })
            {
                (best, other, danced, figures, clauses, terms) = (again, againOther, againDanced, againFigures, told, one);
            }
        }

        if ((best is not { Fits: true } || LeavesOut(clauses, danced)) && AndsInFull(terms, places) is List<Term> plainAnds)
        {
            // "29-30 step R to side & bump hips": where no & is counted it is the word
            List<Clause> told = ClauseBuilder.Build(plainAnds);
            ResolveTurnsTo(told);
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                _search.Solve(told, places);
            if (again is { Fits: true, Cost: < 2 } && (best is not { Fits: true } || !LeavesOut(told, againDanced)))
            {
                (best, other, danced, figures, clauses, terms) = (again, againOther, againDanced, againFigures, told, plainAnds);
            }
        }

        IReadOnlyList<LabelPlace>? counted = null;
        if (best is not { Fits: true } && clauses.Exists(c => c.IsAmp) && !AndPlaces.MayBeTitled(terms))
        {
            // "1-2 rock R forward, recover L & step R together": the & is counted, and the label has none
            foreach (List<LabelPlace> withAnds in AndPlaces.Of(clauses, places))
            {
                (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                    _search.Solve(clauses, withAnds);
                if (again is { Fits: true, Cost: < 1.2 } && (counted is null || again.Cost < best!.Cost) && AndPlaces.AreAnds(again, againDanced))
                {
                    (best, other, danced, figures, counted) = (again, againOther, againDanced, againFigures, withAnds);
                }
            }

            places = counted ?? places;
        }

        if (best is not { Fits: true } && terms is [{ Kind: TermKind.Join or TermKind.Amp }, ..] && !AndPlaces.MayBeTitled(terms)
            && AndPlaces.WithLast(places) is List<LabelPlace> andLast)
        {
            // "1-2 and rock R behind, recover, close": the "and" belongs to the counts
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) =
                _search.Solve(clauses, andLast);
            if (again is { Fits: true, Cost: < 1.2 } && AndPlaces.EndsInStep(again))
            {
                (best, other, danced, figures, counted) = (again, againOther, againDanced, againFigures, andLast);
                places = andLast;
            }
        }

        if (best is { Fits: true } && StepsBehindName(clauses, danced, best, places.Count) is List<Clause> bare)
        {
            // "vine right, side, together, side, touch": a place for every count is what is danced, and the name says the same or in short
            (LineReading? steps, LineReading? otherSteps, List<Clause> stepsDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                _search.Solve(bare, places);
            // the name's foot leads them as well: "vine left" does not begin with the right
            bool leads = clauses[0] is { Feet.Count: < 2 } name && (name.Feet.Count > 0 ? name.Feet[0].Foot : name.DirSide) is var lead
                && steps?.Rows is [{ } firstRow, ..] && (lead is null || firstRow.Action.Foot.ToFoot() == lead);
            if (leads && steps is { Fits: true, Cost: < 1.2 } && !IsDancedAs(best, steps))
            {
                (best, other, danced, figures) = (steps, otherSteps, stepsDanced, stepFigures);
            }
        }

        if (TitleAt(terms, best is not { Fits: true, Cost: < 1.2 }) is int colon
            && !clauses.Exists(c => c.Detail.Count > 0 && c.Start < terms[colon].Span.Start))
        {
            // "Jump back: jump back on both feet, clap": what is told first in short, and then step by step
            List<Clause> told = ClauseBuilder.Build(terms.GetRange(colon + 1, terms.Count - colon - 1));
            ResolveTurnsTo(told);

            // "coaster: R, L, R": feet alone are those of the name, not steps that go nowhere
            bool feetOfName = best is { Fits: true } && told.TrueForAll(c => c is { IsFeetOnly: true, WeightNote: null });
            (LineReading? steps, LineReading? otherSteps, List<Clause> stepsDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                feetOfName ? (null, null, [], []) : _search.Solve(told, places);
            if (!feetOfName && steps is not { Fits: true, Cost: < 1.2 } && terms.FindIndex(colon, t => t.Meaning.IsComposable) > 0)
            {
                // "Press: press ball of L forward, recover"
                List<Term> plainSteps = TermReader.Read(_state.Text, terms[colon].Span.End, end, _state.Lexicon, plain: true);
                _ = TakeClocks(plainSteps, out _);
                told = ClauseBuilder.Build(plainSteps);
                ResolveTurnsTo(told);
                (steps, otherSteps, stepsDanced, stepFigures) = _search.Solve(told, places);
            }

            if (steps is { Fits: true, Cost: < 1.2 } && told.TrueForAll(c => c.Unknown.Count == 0) && NameAgrees(terms, colon + 1, terms.Count, steps)
                && IsToldAgain(ClauseBuilder.Build(terms.GetRange(0, colon)), told, steps))
            {
                (best, other, danced, figures, clauses) = (steps, otherSteps, stepsDanced, stepFigures, told);
            }
        }

        if (best is not { Fits: true } && places.Count == 1 && SpreadTitle.StepsFrom(terms) is int firstStep)
        {
            // "1 Monterey 1/2 R: point R to side", and the others on lines of their own
            List<Clause> told = ClauseBuilder.Build(terms.GetRange(firstStep, terms.Count - firstStep));
            ResolveTurnsTo(told);
            (LineReading? step, LineReading? otherStep, List<Clause> stepDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                _search.Solve(told, places);
            if (step is { Fits: true, Cost: < 1.2 } && told.TrueForAll(c => c.Unknown.Count == 0) && SpreadTitle.Begins(terms, step))
            {
                (best, other, danced, figures, clauses) = (step, otherStep, stepDanced, stepFigures, told);
            }
        }

        foreach ((List<Term> named, List<Term> once) in NamedTimes(terms))
        {
            // "Paddle turn left 4 times: step R forward, pivot 1/8 left": the steps of one time, as often as the name says
            List<Clause> name = ClauseBuilder.Build([.. named]);
            List<Clause> body = ClauseBuilder.Build([.. once]);
            ResolveTurnsTo(body);
            if (name.FindAll(c => c.HasContent) is not [{ Times: > 1 and <= 8, Unknown.Count: 0 } title]
                || body.Exists(c => c.Unknown.Count > 0 || c.IsRepeat || c.TimesStated) || body.Count(c => (c.Head ?? c.Dir) is not null && !c.IsAmp) < 2)
            {
                continue;
            }

            foreach (List<Clause> told in LineRepeats.Times(body, title.Times))
            {
                (LineReading? steps, LineReading? otherSteps, List<Clause> stepsDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                    _search.Solve(told, places);
                if (steps is { Fits: true, Cost: < 1.2 } && !TitleAgrees(title, steps) && best is { Fits: true })
                {
                    // "paddle 1/4 left x4: step R forward, pivot 1/8 left"
                    TextSpan against = TextSpan.FromBounds(once[0].Span.Start, once[^1].Span.End);
                    _state.Add(ReadingRules.MoveLeftOut.At(against, ("words", _state.Text.Substring(against.Start, against.Length)), ("counts", label)));
                    break;
                }

                if (steps is { Fits: true, Cost: < 1.2 } && TitleAgrees(title, steps))
                {
                    (best, other, danced, figures, clauses) = best is { Fits: true } && IsDancedAs(best, steps)
                        ? (best, other, danced, figures, clauses) : (steps, otherSteps, stepsDanced, stepFigures, told);
                    break;
                }
            }
        }

        for (int split = 1; best is not { Fits: true } && split <= LongestTitle && split + 2 < terms.Count; split++)
        {
            // "Rumba box forward right side left together right forward hold": a name, and without a mark behind it the steps that it has
            if (!terms.Take(split).Any(t => t is { Kind: TermKind.Move, Meaning: { Verb: null, Figures.Count: > 0 } })
                || terms.Take(split + 1).Any(t => t.Kind is TermKind.Separator or TermKind.Open or TermKind.Times))
            {
                continue;
            }

            List<Clause> told = ClauseBuilder.Build(terms.GetRange(split, terms.Count - split));
            ResolveTurnsTo(told);
            (LineReading? steps, LineReading? otherSteps, List<Clause> stepsDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                _search.Solve(told, places);
            List<Clause> name = ClauseBuilder.Build(terms.GetRange(0, split));
            if (steps is { Fits: true, Cost: < 1.2 } && told.TrueForAll(c => c.Unknown.Count == 0) && told.Count(c => c.HasContent && !c.IsAmp) > 1
                && name.TrueForAll(c => c.Unknown.Count == 0) && _search.Solve(name, places).Best is { Fits: true } whatItIs && IsDancedAs(whatItIs, steps))
            {
                (best, other, danced, figures, clauses) = (steps, otherSteps, stepsDanced, stepFigures, told);
            }
        }

        if (best is not { Fits: true } || clauses.Exists(c => c.Unknown.Count > 0 || c.Detail.Exists(d => d.Unknown.Count > 0)))
        {
            // "Time steps: R behind L, L in place, R to side": the steps without the name they are given
            foreach ((int from, int to) in NamedStretches(terms))
            {
                List<Clause> told = ClauseBuilder.Build(terms.GetRange(from, to - from));
                ResolveTurnsTo(told);
                (LineReading? steps, LineReading? otherSteps, List<Clause> stepsDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                    _search.Solve(told, places);
                bool several = told.Count(c => c.HasContent && !c.IsAmp) > 1 || told is [{ IsFigure: true, Feet.Count: > 1, Times: 1 }]
                    || (told is [{ IsFigure: true } only] && only.Head!.Figures[0].Rows.Count > 1);
                if (steps is { Fits: true, Cost: < 1.2 } && several
                    && told.TrueForAll(c => c.Unknown.Count == 0) && NameAgrees(terms, from, to, steps))
                {
                    (best, other, danced, figures, clauses) = (steps, otherSteps, stepsDanced, stepFigures, told);
                    TextSpan name = TextSpan.FromBounds(whole.Start, from > 0 && terms[from - 1].Kind == TermKind.Separator
                        ? terms[from - 1].Span.Start : whole.End);
                    _state.Add(ReadingRules.WordsLeftOut.At(name, ("words", _state.Text.Substring(name.Start, name.Length)), ("counts", label)));
                    break;
                }
            }
        }

        if ((best is not { Fits: true } || clauses.Exists(c => c.Unknown.Count > 0 || c.Detail.Exists(d => d.Unknown.Count > 0)))
            && Talk.Apart(terms) is (List<Term> spoken, List<TextSpan> said))
        {
            // "... recover onto left foot. Ooh, very elegant!": each step has its count without it
            List<Clause> told = ClauseBuilder.Build(spoken);
            ResolveTurnsTo(told);
            (LineReading? steps, LineReading? otherSteps, List<Clause> stepsDanced, List<(Clause Figure, int From, int To)> stepFigures) =
                _search.Solve(told, places);
            if (steps is { Fits: true, Cost: < 1.2 } && told.TrueForAll(c => c.Unknown.Count == 0 && !c.Detail.Exists(d => d.Unknown.Count > 0))
                && !steps.Rows.Exists(r => r.IsStretched && r.Action.Kind is not ActionKind.Hold))
            {
                (best, other, danced, figures, clauses, terms) = (steps, otherSteps, stepsDanced, stepFigures, told, spoken);
                foreach (TextSpan words in said)
                {
                    _state.Add(ReadingRules.WordsLeftOut.At(words, ("words", _state.Text.Substring(words.Start, words.Length)), ("counts", label)));
                }
            }
        }

        if (best is not { Fits: true } && places.Count > 1 && RepeatReader.Elided(clauses) is Clause elided
            && _repeats.Read([elided], places, whole, line, label, clocks, onlyMirrored: true) is LineContent mirrored)
        {
            return mirrored;
        }

        if (best is null || !clauses.Any(c => c.HasContent))
        {
            return Unread(places, whole, line, label, clocks);
        }

        _questions.Words(clauses, whole, label, best);
        _questions.InnerCounts(terms, label);
        if (!best.Fits)
        {
            _state.Add(ReadingRules.MovesDoNotFit.At(
                whole,
                ("counts", label),
                ("labels", LabelPlaces.Many(places.Count, "place")),
                ("actions", LabelPlaces.Many(best.Actions, "action"))).OnCount(LabelPlaces.FirstCount(places)));
        }
        else if (other is not null)
        {
            _questions.TwoReadings(best, other, danced, whole, places);
        }

        best = best.Fits && figures.Count > 0 ? _search.WithPlaces(best, figures) : best;
        List<WrittenMove> moves = BuildMoves(best, danced, places, line, bodyAngle, whole);
        if (best.Fits)
        {
            _questions.Turns(best, danced, places);
            _questions.RepeatsDanced(best, danced, places, label);
            _questions.Unused(best, danced, label);
            _questions.Unanswered(terms, best, danced, label);
            _questions.CountsElsewhere(best, danced, places, label);
            _questions.WeightElsewhere(best, danced, label);
            _questions.RecoverTwice(best, danced, label);
            _questions.BehindOrBack(best, danced, whole, places);
            _questions.OutThenIn(best, danced, whole, places);
            _questions.SlipAndCounts(best, danced, places, label);
            _questions.DetailPassedOver(best, danced, label, _search);
            _comparison.Compare(figures, best, danced);
        }

        Weight weight = best.Weight;
        if (!best.Fits)
        {
            // what does not fit its counts is not followed any further
            bool wanting = _state.InTag && best.Actions < places.Count;
            moves = PutUnknownEnd(moves, places, line, whole, wanting);
            weight = wanting ? weight : Weight.Unknown;
        }

        _state.Follow(moves, weight);
        ValueList<FacingClaim> claims = PlaceClaims(clocks, best, danced, places);
        return new LineContent(moves.ToValueList(), claims,
            best.Fits)
        { Places = counted, Notes = Styling(terms), LeavesWordsOut = best.Fits && _questions.LeftOut(clauses, danced, figures, best, whole, label) };
    }

    // no figure's name in front of its steps is longer, with its foot and its way
    private const int LongestTitle = 4;

    /// <summary>What names steps and says how often they are danced, and the steps of one time: after a colon, or within brackets.</summary>
    private static IEnumerable<(List<Term> Named, List<Term> Once)> NamedTimes(List<Term> terms)
    {
        bool often = terms.Exists(t => t.Kind is TermKind.Times or TermKind.Number);
        foreach ((int from, int to) in often ? NamedStretches(terms) : [])
        {
            if (terms[from - 1].Kind is not TermKind.Open && terms[from - 1].Text is not ":")
            {
                // a dash may as well part one move from the next
                continue;
            }

            List<Term> named = [.. terms.Take(from - 1), .. terms.Skip(to + (terms[from - 1].Kind is TermKind.Open ? 1 : 0))];
            yield return (named, terms.GetRange(from, to - from));
        }
    }

    /// <summary>Whether a title in front of the steps says nothing against them: the foot that begins, the way round and how far.</summary>
    private static bool TitleAgrees(Clause title, LineReading steps)
    {
        Foot? first = steps.Rows.Find(r => r.Action.Foot.ToFoot() is not null)?.Action.Foot.ToFoot();
        List<PlacedRow> turns = steps.Rows.FindAll(r => r.Action.Turn.Sign != 0);
        Foot? way = title.TurnSide;
        return (title.Feet.Count == 0 || title.Feet[0].Foot == first || (turns.Count > 0 && title.Feet.Count == 1 && IsWay(title.Feet[0].Foot)))
            && (title.Amount is not int amount || turns.TrueForAll(r => r.Action.Turn.Amount == amount)
                || turns.Aggregate(Turn.None, (sum, r) => sum + r.Action.Turn).Amount == amount)
            && (way is null || turns.TrueForAll(r => r.Action.Turn.Sign > 0 == (way == Foot.Right)))
            && (title.DirSide is not Foot aside || way is not null || turns.Count > 0 || steps.Rows.Exists(r => r.Action.Direction == Direction.Side
                && r.Action.Foot.ToFoot() == aside) || !steps.Rows.Exists(r => r.Action.Direction == Direction.Side))
            && (title.Dir is not { Direction: Direction.Forward or Direction.Back } goes || steps.Rows.Exists(r
                => FigureComparison.Family(r.Action.Direction) == goes.Direction));

        bool IsWay(Foot side) => turns.TrueForAll(r => r.Action.Turn.Sign > 0 == (side == Foot.Right));
    }

    /// <summary>Whether two readings are danced alike: the same feet on the same counts, to the same places and with the same turns.</summary>
    private static bool IsDancedAs(LineReading one, LineReading other)
    {
        IEnumerable<PlacedRow> mine = one.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None);
        IEnumerable<PlacedRow> theirs = other.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None);
        return one.DancesLike(other) && mine.Zip(theirs).All(p => p.First.Action.Direction is Direction.Unstated
            || p.Second.Action.Direction is Direction.Unstated
            || FigureComparison.Family(p.First.Action.Direction) == FigureComparison.Family(p.Second.Action.Direction));
    }

    /// <summary>
    /// The colon, or where the line does not come out otherwise the dash, that may end a title in front of the steps, outside brackets; or null.
    /// </summary>
    private static int? TitleAt(List<Term> terms, bool orDash)
    {
        int colon = terms.FindIndex(t => t.Kind == TermKind.Separator && t.Text == ":");
        colon = colon < 0 && orDash ? terms.FindIndex(t => t.Kind is TermKind.Separator && t.Text is "-" or "–" or "—") : colon;
        return colon > 0 && colon < terms.Count - 1 && !terms.Take(colon).Any(t => t.Kind is TermKind.Open or TermKind.Side or TermKind.Foot) ? colon : null;
    }

    /// <summary>Whether a title says nothing that the steps after it do not say again: its verbs, its places, its turns.</summary>
    private static bool IsToldAgain(List<Clause> title, List<Clause> told, LineReading steps)
        => title.Count > 0 && title.TrueForAll(c => c is { IsRepeat: false, IsAmp: false, Detail.Count: 0, Unknown.Count: 0, TimesStated: false }
            && (c.Head?.Verb is not ActionKind verb || told.Exists(t => t.Head?.Verb == verb) || steps.Rows.Exists(r => r.Action.Kind == verb))
            && (c.Head is not { Verb: null } named || told.Exists(t => t.Head is { Verb: null } again && again.Figures.Any(f => named.Figures.Contains(f)))
                || named.Figures.Any(f => f.Rows.All(row => steps.Rows.Exists(r => r.Action.Kind == row.Action.Kind
                    && (FigureComparison.Family(row.Action.Direction) == FigureComparison.Family(r.Action.Direction)
                    || (f.Rows.Count == 1 && c is { Dir: null, DirSide: null })
                    || row.Action.Direction == Direction.Unstated || r.Action.Direction == Direction.Unstated)))))
            && (c.Dir is not Meaning dir || steps.Rows.Exists(r => FigureComparison.Family(r.Action.Direction) == FigureComparison.Family(dir.Direction)))
            && (c.DirSide is not Foot way || !steps.Rows.Exists(r => r.Action.Direction == Direction.Side && r.Action.Foot.ToFoot() == way.Other())
                || steps.Rows.Exists(r => r.Action.Direction == Direction.Side && r.Action.Foot.ToFoot() == way))
            && (c.Amount is not int amount || steps.Rows.Exists(r => r.Action.Turn.Amount == amount)));

    /// <summary>Whether four words or more are strung together by hyphens.</summary>
    private static bool Chained(ReadOnlySpan<char> words)
    {
        int hyphens = 0;
        for (int i = 1; i + 1 < words.Length; i++)
        {
            bool joins = words[i] == '-' && char.IsLetter(words[i - 1]) && char.IsLetter(words[i + 1]);
            hyphens = joins ? hyphens + 1 : char.IsLetter(words[i]) ? hyphens : 0;
            if (hyphens == 3)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>"R + L heels apart", "right and left toes in": the heels or toes of both feet, which go one way together.</summary>
    private static List<Term> BothHeels(List<Term> terms)
    {
        List<Term> joined = terms;
        for (int i = 0; i + 3 < joined.Count; i++)
        {
            bool pair = joined[i].Kind is TermKind.Side or TermKind.Foot && joined[i + 1].Kind is TermKind.Amp or TermKind.Join
                && joined[i + 2].Kind is TermKind.Side or TermKind.Foot && joined[i].Meaning.Side != joined[i + 2].Meaning.Side
                && joined[i + 3] is { Kind: TermKind.Part, Meaning.Part: "heels" or "toes" } or { Kind: TermKind.Move };
            bool named = joined[i + 3] is
            {
                Kind: TermKind.Move, Meaning: { Verb: ActionKind.SplitHeels or ActionKind.SplitToes }
                or { Figures: [{ Rows: [{ Action.Kind: ActionKind.SplitHeels or ActionKind.SplitToes }] }, ..] }
            };
            int way = i + 4;
            while (way < joined.Count && joined[way].Kind is TermKind.Filler or TermKind.Turn)
            {
                way++;
            }

            if (pair && (named || (joined[i + 3].Kind is TermKind.Part && way < joined.Count)) && (named || joined[way] is
                {
                    Kind: TermKind.Dir, Meaning.Direction: Direction.Out or Direction.In or Direction.Together
                or Direction.Centre or Direction.Home
                }))
            {
                joined = ReferenceEquals(joined, terms) ? [.. terms] : joined;
                TextSpan span = TextSpan.FromBounds(joined[i].Span.Start, joined[i + 2].Span.End);
                joined[i] = new Term(new Meaning(TermKind.BothFeet), span, "both");
                joined.RemoveRange(i + 1, 2);
            }
        }

        return joined;
    }

    /// <summary>The terms with each "R+L" taken for both feet; null where there is none.</summary>
    private static List<Term>? BothJoined(List<Term> terms)
    {
        List<Term> joined = [];
        for (int i = 0; i < terms.Count; i++)
        {
            bool pair = i + 2 < terms.Count && terms[i].Kind is TermKind.Side or TermKind.Foot && terms[i + 1] is { Kind: TermKind.Amp, Text: "+" }
                && terms[i + 2].Kind is TermKind.Side or TermKind.Foot && terms[i].Meaning.Side != terms[i + 2].Meaning.Side;
            if (!pair)
            {
                joined.Add(terms[i]);
                continue;
            }

            TextSpan span = TextSpan.FromBounds(terms[i].Span.Start, terms[i + 2].Span.End);
            joined.Add(new Term(new Meaning(TermKind.BothFeet), span, "both"));
            i += 2;
        }

        return joined.Count < terms.Count ? joined : null;
    }

    /// <summary>The terms without the comma between a foot's turn and its step ("RF 1/4 turn left, step side"); null where there is none.</summary>
    private static List<Term>? TurnedSteps(List<Term> terms)
    {
        List<Term> joined = [];
        for (int i = 0; i < terms.Count; i++)
        {
            bool comma = terms[i] is { Kind: TermKind.Separator, Text: "," } && i + 1 < terms.Count
                && terms[i + 1] is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step } or { Verb: null, Figures: [{ Rows.Count: 3 }, ..] } };
            int back = i - 1;
            bool amount = false;
            while (comma && back >= 0 && terms[back].Kind is TermKind.Amount or TermKind.Turn or TermKind.Side or TermKind.Filler)
            {
                amount |= terms[back].Kind == TermKind.Amount;
                back--;
            }

            // the foot stands first in its part of the line
            bool footed = comma && amount && back >= 0 && terms[back].Kind == TermKind.Foot && (back == 0
                || terms[back - 1].Kind is TermKind.Separator or TermKind.Amp);
            if (!footed)
            {
                joined.Add(terms[i]);
            }
        }

        return joined.Count < terms.Count ? joined : null;
    }

    /// <summary>
    /// The terms with a heel that is laid and then ground as one grind ("step R heel forward, grind heel turning 1/4 R"); null where there is none.
    /// </summary>
    private static List<Term>? HeelsGround(List<Term> terms)
    {
        for (int i = 2; i + 1 < terms.Count; i++)
        {
            bool grinds = terms[i] is { Kind: TermKind.Separator or TermKind.Then or TermKind.Amp or TermKind.Join }
                && terms[i + 1] is { Kind: TermKind.Move, Meaning: { } move }
                && (move.Verb == ActionKind.Grind || (move.Figures.Count > 0 && move.Figures[0].Rows[0].Action.Kind == ActionKind.Grind));
            if (!grinds)
            {
                continue;
            }

            int start = i;
            Term? foot = null;
            bool heel = false;
            bool plain = true;
            while (start > 0 && terms[start - 1].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Amp))
            {
                Term term = terms[--start];
                foot = term.Kind is TermKind.Foot or TermKind.Side && foot is null ? term : foot;
                heel |= term.Text.StartsWith("heel", StringComparison.OrdinalIgnoreCase);
                plain &= term is { Kind: TermKind.Foot or TermKind.Side or TermKind.Filler or TermKind.Size or TermKind.Part or TermKind.WeightOn }
                    or { Kind: TermKind.Dir, Meaning.Direction: Direction.Forward } or
                {
                    Kind: TermKind.Move,
                    Meaning.Verb: ActionKind.Step or ActionKind.Dig or ActionKind.Press or ActionKind.Touch
                }
                    || term.Text.StartsWith("heel", StringComparison.OrdinalIgnoreCase);
            }

            if (plain && heel && foot is Term named)
            {
                int after = i + 2 < terms.Count && terms[i + 2].Kind == TermKind.Part ? i + 3 : i + 2;
                int next = after;
                while (next < terms.Count && terms[next].Kind is TermKind.Filler or TermKind.Separator or TermKind.Part)
                {
                    next++;
                }

                // "..., and grind it, turning 1/4 right": the turn is the grind's
                after = next < terms.Count && terms[next].Kind is TermKind.Turn ? next : after;
                return [.. terms[..start], named, terms[i + 1], .. terms[after..]];
            }
        }

        return null;
    }

    /// <summary>"Hold 6" on counts 5-8 says again which count it is: nothing lasts that long there.</summary>
    private static void PassOverCounts(List<Term> terms, IReadOnlyList<LabelPlace> places)
    {
        for (int i = 1; i < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Number, Meaning.Value: int count } && count > places.Count
                && terms[i - 1] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Hold } && places.Any(p => p.Number == count && p.Place.IsWhole))
            {
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Filler) };
            }
        }
    }

    /// <summary>"Step left long step to side" is one step, and how long it is.</summary>
    private static void StepOnce(List<Term> terms)
    {
        for (int i = 2; i < terms.Count; i++)
        {
            bool sized = terms[i].Text.ToLowerInvariant() is "big step" or "long step" or "large step"
                || (terms[i] is { Meaning.Verb: ActionKind.Step } && terms[i].Text.Equals("step", StringComparison.OrdinalIgnoreCase)
                && terms[i - 1].Kind == TermKind.Size);
            if (terms[i].Kind != TermKind.Move || !sized)
            {
                continue;
            }

            int first = i - 1;
            while (first >= 0 && terms[first].Kind is TermKind.Foot or TermKind.Side or TermKind.Dir or TermKind.Filler or TermKind.Size)
            {
                first--;
            }

            if (first >= 0 && first < i - 1 && terms[first] is { Kind: TermKind.Move, Text: "step" or "Step" or "STEP" or "stepping" or "Stepping" })
            {
                terms[first] = terms[first] with { Meaning = new Meaning(TermKind.Filler) };
            }
        }
    }

    /// <summary>"RF back (rock back), recover on LF": what is done stands behind where it is done.</summary>
    private static void RockInBrackets(List<Term> terms)
    {
        int open = terms.Count > 4 ? terms.FindIndex(t => t.Kind == TermKind.Open) : -1;
        int close = open > 1 ? terms.FindIndex(open, t => t.Kind == TermKind.Close) : -1;
        if (close < 0 || close - open > 4 || terms.FindIndex(open, close - open, t => t is
            {
                Kind: TermKind.Move,
                Meaning.Verb: ActionKind.Rock
            }) is not (> 0 and int rock)
            || terms.FindIndex(close, t => t is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Recover }) < 0)
        {
            return;
        }

        int start = open;
        while (start > 0 && terms[start - 1].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Amp or TermKind.Move))
        {
            start--;
        }

        bool placed = terms.FindIndex(start, open - start, t => t.Kind is TermKind.Foot or TermKind.Side) >= 0
            && terms.FindIndex(start, open - start, t => t.Kind == TermKind.Dir) >= 0 && (start == 0 || terms[start - 1].Kind != TermKind.Move);
        if (placed && Enumerable.Range(open + 1, close - open - 1).All(i => i == rock || terms[i].Kind is TermKind.Dir or TermKind.Filler))
        {
            Term move = terms[rock] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Rock } };
            terms.RemoveRange(open, close - open + 1);
            terms.Insert(start, move);
        }
    }

    /// <summary>"Rock L behind R, recover R across L" steps across; no weight is given back to a foot that lands elsewhere.</summary>
    private static void RecoverAcross(List<Term> terms)
    {
        for (int i = 0; i + 3 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Recover } && terms[i + 1] is { Kind: TermKind.Foot or TermKind.Side } foot
                && terms[i + 2].Text.ToLowerInvariant() is "across" or "over" or "in front of" or "crossing" or "crossed over" or "crossing over"
                && terms[i + 3] is { Kind: TermKind.Foot or TermKind.Side } other && other.Meaning.Side != foot.Meaning.Side)
            {
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Step } };
            }
        }
    }

    /// <summary>
    /// "R heel &amp; L heel &amp;" on counts without an &amp;: the switches, whose feet come home between the counts. Null where there are none.
    /// </summary>
    private static List<Term>? HeelsSwitched(List<Term> terms, IReadOnlyList<LabelPlace> places)
    {
        if (terms.Count < 6 || places.Count < 2 || places.Any(p => !p.Place.IsWhole) || !places[^1].AfterDash)
        {
            return null;
        }

        for (int i = 0; i + 5 < terms.Count; i++)
        {
            bool switched = terms[i + 2].Kind == TermKind.Amp && terms[i + 5].Kind == TermKind.Amp && IsHeel(terms[i + 1]) && IsHeel(terms[i + 4])
                && terms[i] is { Kind: TermKind.Foot or TermKind.Side, Meaning.Side: not null }
                && terms[i + 3] is { Kind: TermKind.Foot or TermKind.Side, Meaning.Side: not null } && terms[i].Meaning.Side != terms[i + 3].Meaning.Side;
            if (switched && StepCatalogue.Default.Find("heel_switches") is StepDefinition switches)
            {
                Term figure = terms[i + 1] with { Meaning = new Meaning(TermKind.Move) { Figures = [switches] }, Text = switches.Name };
                return [.. terms[..i], terms[i], figure, .. i + 6 < terms.Count && terms[i + 6].Kind is not TermKind.Separator
                    ? new[] { terms[i + 5] with { Meaning = new Meaning(TermKind.Separator) } } : [], .. terms[(i + 6)..]];
            }
        }

        return null;

        static bool IsHeel(Term term) => term.Text.StartsWith("heel", StringComparison.OrdinalIgnoreCase) && term.Kind is TermKind.Part or TermKind.Move;
    }

    /// <summary>The stretches of terms that may be all the steps of a line: after a colon, or within brackets.</summary>
    private static List<(int From, int To)> NamedStretches(List<Term> terms)
    {
        List<(int, int)> stretches = [];
        int open = terms.FindIndex(t => t.Kind == TermKind.Open);
        int colon = terms.FindIndex(t => t.Kind == TermKind.Separator && t.Text == ":");
        colon = colon < 0 ? terms.FindIndex(t => t.Kind == TermKind.Separator && t.Text is "-" or "–" or "—") : colon;
        if (colon > 0 && (open < 0 || colon < open))
        {
            stretches.Add((colon + 1, terms.Count));
        }

        int close = open < 0 ? -1 : terms.FindIndex(open, t => t.Kind == TermKind.Close);
        if (open > 0 && close > open && close - open - 1 >= terms.Count - (close - open + 1))
        {
            stretches.Add((open + 1, close));
        }

        return stretches;
    }

    /// <summary>Whether the words around the steps say nothing that the steps do not have: another first foot, a turn, how often.</summary>
    private static bool NameAgrees(List<Term> terms, int from, int to, LineReading steps)
    {
        List<Term> around = [.. terms.Take(from), .. terms.Skip(to)];
        bool turns = around.Exists(t => t.Kind is TermKind.Amount or TermKind.Turn);
        bool more = around.Exists(t => t.Kind is TermKind.Times or TermKind.Repeat or TermKind.RepeatMirrored or TermKind.WeightOn
            or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth);
        Foot? named = around.Find(t => t.Kind is TermKind.Side or TermKind.Foot or TermKind.Lead).Meaning?.Side;
        Foot? first = steps.Rows.Find(r => r.Action.Foot.ToFoot() is not null)?.Action.Foot.ToFoot();
        bool goes = around.TrueForAll(t => t is not { Kind: TermKind.Dir, Meaning.Direction: Direction.Forward or Direction.Back }
            || !steps.Rows.Exists(r => FigureComparison.Family(r.Action.Direction) is Direction.Forward or Direction.Back)
            || steps.Rows.Exists(r => FigureComparison.Family(r.Action.Direction) == t.Meaning.Direction));
        goes &= turns || around.TrueForAll(t => t is not { Kind: TermKind.Dir, Meaning: { Direction: Direction.Side, Side: Foot aside } }
            || !steps.Rows.Exists(r => r.Action.Direction == Direction.Side)
            || steps.Rows.Exists(r => r.Action.Direction == Direction.Side && r.Action.Foot.ToFoot() == aside));
        return !more && goes && (!turns || steps.Turns) && (named is null || named == first);
    }

    /// <summary>Styling words among the footwork are kept as notes, and hinted at.</summary>
    private ValueList<Note> Styling(List<Term> terms)
    {
        List<Note> notes = [];
        int depth = 0;
        for (int i = 0; i < terms.Count; i++)
        {
            depth += terms[i].Kind switch { TermKind.Open => 1, TermKind.Close => -1, _ => 0 };
            bool starts = terms[i].Kind == TermKind.Style || (terms[i].Kind == TermKind.Unknown && depth > 0);
            if (!starts)
            {
                continue;
            }

            int last = i;
            for (int next = i + 1; next < terms.Count
                && terms[next].Kind is TermKind.Style or TermKind.Filler or TermKind.Unknown or TermKind.Join; next++)
            {
                if (terms[next].Kind is TermKind.Style or TermKind.Unknown)
                {
                    last = next;
                }
            }

            TextSpan span = TextSpan.FromBounds(terms[i].Span.Start, terms[last].Span.End);
            notes.Add(new Note("style", _state.Text.Substring(span.Start, span.Length), span));
            _state.Add(ReadingRules.StylingMixed.At(span));
            i = last;
        }

        return notes.ToValueList();
    }

    /// <summary>Reads words that stand without counts (an ending, a changed count): one action a count, as many as it takes.</summary>
    public LineContent ReadFree(int start, int end, int line, int first, int atMost)
    {
        List<Term> terms = TermReader.Read(_state.Text, start, end, _state.Lexicon);
        List<(Facing Facing, TextSpan Span)> clocks = TakeClocks(terms, out _);
        List<Clause> clauses = ClauseBuilder.Build(terms);
        ResolveTurnsTo(clauses);
        TextSpan whole = TrimSpan(start, end);
        (LineReading? best, List<Clause> danced, List<LabelPlace> places) = Fitting(clauses, first, atMost);
        if (best is null)
        {
            List<LabelPlace> one = [new LabelPlace(first.ToString(CultureInfo.InvariantCulture), first, Counts.FromWhole(first - 1), false)];
            return Unread(one, whole, line, one[0].Label, clocks);
        }

        _questions.Words(clauses, whole, places[0].Label, best);
        List<WrittenMove> moves = BuildMoves(best, danced, places, line, Turn.None, whole);
        _state.Follow(moves, best.Weight);
        return new LineContent(moves.ToValueList(), PlaceClaims(clocks, best, danced, places), true);
    }

    /// <summary>How many counts the moves of words without counts usually take, or null when they are no moves only or fit no number of counts.</summary>
    public int? UsualCounts(int start, int end, int atMost)
    {
        List<Term> terms = TermReader.Read(_state.Text, start, end, _state.Lexicon);
        if (terms.Exists(t => t.Kind == TermKind.Unknown))
        {
            return null;
        }

        _ = TakeClocks(terms, out _);
        List<Clause> clauses = ClauseBuilder.Build(terms);
        ResolveTurnsTo(clauses);
        (LineReading? best, List<Clause> danced, List<LabelPlace> places) = Fitting(clauses, 1, atMost, inEights: true);
        return best is { Cost: < 1.2 } && !LeavesOut(clauses, danced) ? places.Count : null;
    }

    // dances are written in eights, their halves and quarters, and in threes and sixes: what a length costs that is none of them
    private static double OddLength(int counts) => (counts % 8, counts % 4, counts % 2, counts % 3) switch
    {
        (0, _, _, _) => 0,
        (_, 0, _, _) => 0.1,
        (_, _, _, 0) => 0.3,
        (_, _, 0, _) => 0.2,
        _ => 0.5,
    };

    // the number of whole counts that the moves fit best, from one upwards
    private (LineReading? Best, List<Clause> Danced, List<LabelPlace> Places) Fitting(List<Clause> clauses, int first, int atMost, bool inEights = false)
    {
        LineReading? best = null;
        double least = 0;
        List<Clause> danced = [];
        List<LabelPlace> places = [];
        for (int n = 1; n <= atMost; n++)
        {
            List<LabelPlace> tried = [];
            for (int i = 0; i < n; i++)
            {
                int number = first + i;
                tried.Add(new LabelPlace(number.ToString(CultureInfo.InvariantCulture), number, Counts.FromWhole(number - 1), i > 0));
            }

            (LineReading? reading, _, List<Clause> used, _) = _search.Solve(clauses, tried);
            double price = (reading?.Cost ?? 0) + (inEights ? OddLength(n) : 0);
            if (reading is { Fits: true } && (best is null || price < least - 0.001))
            {
                best = reading;
                least = price;
                danced = used;
                places = tried;
            }
        }

        return (best, danced, places);
    }

    private TextSpan TrimSpan(int start, int end)
    {
        while (start < end && char.IsWhiteSpace(_state.Text[start]))
        {
            start++;
        }

        while (end > start && char.IsWhiteSpace(_state.Text[end - 1]))
        {
            end--;
        }

        return TextSpan.FromBounds(start, end);
    }

    private static List<(Facing Facing, TextSpan Span)> TakeClocks(List<Term> terms, out Turn bodyAngle)
    {
        List<(Facing, TextSpan)> clocks = [];
        bodyAngle = Turn.None;
        for (int i = 0; i < terms.Count; i++)
        {
            if (terms[i].Kind != TermKind.Clock)
            {
                // a wall alone in square brackets: [9]
                if (terms[i].Kind == TermKind.Number && i > 0 && i + 1 < terms.Count && terms[i - 1].Text == "[" && terms[i + 1].Text == "]"
                    && terms[i].Meaning.Value is 12 or 3 or 6 or 9)
                {
                    clocks.Add((Facing.FromClock(terms[i].Meaning.Value, 0)!.Value, terms[i].Span));
                    terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Clock) { Value = terms[i].Meaning.Value % 12 * 2 / 3 } };
                }

                continue;
            }

            bool angle = false;
            for (int back = i - 1; back >= 0 && back >= i - 5 && terms[back].Kind is not (TermKind.Separator or TermKind.Open); back--)
            {
                string word = terms[back].Text;
                angle |= word.StartsWith("angl", StringComparison.OrdinalIgnoreCase) || word.StartsWith("body", StringComparison.OrdinalIgnoreCase)
                    || word.Equals("diagonal", StringComparison.OrdinalIgnoreCase)
                    || word.StartsWith("look", StringComparison.OrdinalIgnoreCase) || word.StartsWith("lean", StringComparison.OrdinalIgnoreCase)
                        || word.Equals("towards", StringComparison.OrdinalIgnoreCase) || word.Equals("toward", StringComparison.OrdinalIgnoreCase);
            }

            if (angle)
            {
                int eighths = terms[i].Meaning.Value;
                bodyAngle = Turn.FromEighths(eighths > 4 ? eighths - 8 : eighths);
                continue;
            }

            clocks.Add((Facing.FromEighths(terms[i].Meaning.Value), terms[i].Span));
        }

        return clocks;
    }

    /// <summary>A corner of the clock printed where the dance faces a wall and no eighth is turned is an angle of the body.</summary>
    private Turn CornersAreAngles(List<(Facing Facing, TextSpan Span)> clocks, List<Clause> clauses, Turn bodyAngle)
    {
        bool eighthTurned = clauses.Concat(clauses.SelectMany(c => c.Detail)).Any(c => c.Amount is int amount && amount % 2 != 0);
        if (eighthTurned || _state.Facing is not Facing facing || !facing.IsWall)
        {
            return bodyAngle;
        }

        for (int i = clocks.Count - 1; i >= 0; i--)
        {
            int before = clocks[i].Span.Start - 1;
            while (before > 0 && _state.Text[before] == ' ')
            {
                before--;
            }

            // alone in brackets it is a claim, and a wrong one
            bool bracketed = before >= 0 && _state.Text[before] is '[' or '(';
            if (!clocks[i].Facing.IsWall && !bracketed)
            {
                bodyAngle = clocks[i].Facing - facing;
                clocks.RemoveAt(i);
            }
        }

        return bodyAngle;
    }

    /// <summary>"[Hinge 1/2 R] 1/4 right stepping L back, ...": a name in square brackets stands before its steps as one with a colon does.</summary>
    private void NameInBrackets(List<Term> terms)
    {
        int close = terms is [{ Kind: TermKind.Open }, ..] && _state.Text[terms[0].Span.Start] is '['
            ? terms.FindIndex(1, t => t.Kind is TermKind.Close or TermKind.Open) : -1;
        List<Term> name = close < 2 ? [] : terms.GetRange(1, close - 1);
        bool named = close > 1 && _state.Text[terms[close].Span.Start] is ']' && terms[close].Kind is TermKind.Close
            && !name.Exists(t => t.Kind is TermKind.Separator or TermKind.Number)
            && (name.Exists(t => t is { Kind: TermKind.Move, Meaning.Figures.Count: > 0 })
                || (name.Exists(t => t.Kind is TermKind.Move) && !name.Exists(t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.Dir)))
            && terms.FindIndex(close, t => t.Kind is TermKind.Move or TermKind.Dir or TermKind.Amount or TermKind.Turn) > 0;
        if (named)
        {
            terms[close] = new Term(new Meaning(TermKind.Separator), terms[close].Span, ":");
            terms.RemoveAt(0);
        }
    }

    private void ResolveTurnsTo(List<Clause> clauses)
    {
        Facing? facing = _state.Facing;
        Foot? lastTurn = null;
        for (int i = 0; i + 1 < clauses.Count && facing is Facing before; i++)
        {
            Clause next = clauses[i + 1];
            if (clauses[i] is { IsTurnOnly: true, TurnTo: int goal, Amount: null, WeightNote: null } aim && next is { Amount: int made, TurnSide: Foot round }
                && clauses.Take(i).All(c => c is { Amount: null, TurnTo: null })
                && before + Turn.FromEighths(round == Foot.Right ? made : -made) == Facing.FromEighths(goal))
            {
                // "squaring up to 12:00 with 1/8 turn right step R to side": where the turn goes, told before how far it is
                next.Cover(aim.Span);
                next.Link = aim.Link;
                next.IsWith = aim.IsWith;
                clauses.RemoveAt(i);
            }
        }

        foreach (Clause clause in clauses)
        {
            if (clause.Amount is not null && clause.TurnSide is null && lastTurn is Foot sameWay && clause.Start >= 0
                && clause.End <= _state.Text.Length)
            {
                // "quarter right ..., quarter again": the same way round
                string words = _state.Text.Substring(clause.Start, clause.End - clause.Start);
                if (words.Contains("again", StringComparison.OrdinalIgnoreCase) || words.Contains("another", StringComparison.OrdinalIgnoreCase))
                {
                    clause.TurnSide = sameWay;
                }
            }

            lastTurn = clause.TurnSide ?? lastTurn;
            if (clause.TurnTo is int to && clause.Amount is null && facing is Facing from)
            {
                Turn way = Facing.FromEighths(to) - from;
                int eighths = way.Eighths.Floor;
                if (clause.TurnSide is Foot side)
                {
                    eighths = side == Foot.Right ? (eighths + 8) % 8 : -((8 - eighths) % 8);
                }

                if (eighths != 0)
                {
                    clause.Amount = Math.Abs(eighths);
                    clause.TurnSide = eighths > 0 ? Foot.Right : Foot.Left;
                }
            }

            if (clause.Amount is int amount && clause.TurnSide is Foot turned)
            {
                facing += Turn.FromEighths(turned == Foot.Right ? amount : -amount);
            }
        }
    }

    private static double Badness(LineReading reading, List<Clause> clauses) => reading.Cost + clauses.Sum(c => c.Unknown.Count);

    /// <summary>"Do 1-2 once more", "dance counts 1 to 4 again": the counts that are told, where they are others than those of the line.</summary>
    private static (int From, int To)? CountsAgain(ReadOnlySpan<char> words, IReadOnlyList<LabelPlace> places)
    {
        (int, int)? told = null;
        for (int i = 0; i < words.Length; i++)
        {
            int first = NumberAt(words, ref i);
            int at = i;
            while (first > 0 && at < words.Length && words[at] is ' ' or '-' or '–' or 't' or 'T' or 'o' or 'O' or '&')
            {
                at++;
            }

            int end = at;
            int last = first > 0 && at > i ? NumberAt(words, ref end) : 0;
            if (last > first && (end >= words.Length || words[end] is not ('/' or ':')))
            {
                told = told is null && !(places.Count > 0 && first == places[0].Number && last == places[^1].Number) ? (first, last) : null;
                i = end;
            }
        }

        return told;
    }

    // the number that begins here, or 0
    private static int NumberAt(ReadOnlySpan<char> words, ref int at)
    {
        int number = 0;
        while (at < words.Length && char.IsAsciiDigit(words[at]) && number < 100)
        {
            number = (number * 10) + (words[at] - '0');
            at++;
        }

        return number;
    }

    /// <summary>"As 1-4", "same as counts 1-8": the counts that are danced again; null for other words.</summary>
    private static (int From, int To)? AsCounts(string words)
    {
        // "as 1-4 (6 o'clock, facing the back wall)": what stands in brackets tells where it ends
        int bracket = words.IndexOfAny(['(', '[']);
        string inside = bracket > 0 ? words[bracket..].ToLowerInvariant() : "";
        bracket = inside.Contains("o'clock", StringComparison.Ordinal) || inside.Contains(':', StringComparison.Ordinal)
            || inside.Contains(" wall", StringComparison.Ordinal) ? bracket : 0;
        string[] told = (bracket > 0 ? words[..bracket] : words).ToLowerInvariant().Split([' ', '.', ',', '(', ')'], StringSplitOptions.RemoveEmptyEntries);
        string[] rest = [.. told.Where(w => w is not ("same" or "as" or "like" or "=" or "steps" or "step" or "count" or "counts" or "in" or "the"
            or "identical" or "repetition" or "of"))];
        int range = Array.FindIndex(rest, w => char.IsAsciiDigit(w[0]));
        if (range == 0 && rest.Length > 1 && rest.Skip(1).All(w => w is "but" or "with" or "left" or "right" or "foot" or "leg" or "lf" or "rf" or "r" or "l"
            or "beginning" or "begin" or "starting" or "start" or "on" or "from" or "to" or "side" or "other" or "opposite" or "mirrored" or "mirror" or "now"
            or "leading" or "inverted" or "inversed" or "reversed" or "and" or "at" or "again" or "this" or "time"))
        {
            // "as 1-2 but with left": with which foot it begins
            rest = rest[..1];
        }

        string[] ends = rest is [var only] ? only.Split(['-', '–']) : [];
        if (rest is [['0' or '1' or '2' or '3' or '4' or '5' or '6' or '7' or '8' or '9', ..] quick] && quick.Contains('&', StringComparison.Ordinal)
            && quick.All(c => char.IsAsciiDigit(c) || c is '&' or '-' or '–'))
        {
            // "as 1&2&": from the first number to the last
            string[] numbers = quick.Split(['&', '-', '–'], StringSplitOptions.RemoveEmptyEntries);
            ends = [numbers[0], numbers[^1]];
        }

        return told.Length > 0 && (told[0] is "as" or "same" or "like" or "=" or "identical" or "repetition" or "the"
            || (rest.Length == 1 && range == 0)) && ends.Length == 2
            && int.TryParse(ends[0], NumberStyles.None, CultureInfo.InvariantCulture, out int from)
            && int.TryParse(ends[1], NumberStyles.None, CultureInfo.InvariantCulture, out int to) ? (from, to) : null;
    }

    /// <summary>
    /// "The same with 1/4 turn right" after a line that is one figure: that figure with the turn; null where the line before is none, for then nobody can tell
    /// which of its steps turns.
    /// </summary>
    private List<Clause>? FigureAgain(List<Clause> clauses, IReadOnlyList<LabelPlace> places)
    {
        Clause? turning = clauses.Find(c => c.Amount is not null);
        Clause? told = clauses[^1].Head is null ? null : clauses[^1];
        Counts from = Counts.FromWhole(places[0].Place.Value.Floor);
        Counts length = LabelPlaces.EndOf(places.Max(p => p.Place)) - from;
        if (turning is null || !clauses.TrueForAll(c => (c.Head is null || c == told) && c.Unknown.Count == 0) || _state.SectionLines is not [.., var before]
            || before.Moves is not [{ Definition: { } figure } move, ..] || before.Moves.Count > 2 || before.Counts.End != from
            || before.Counts.End - before.Counts.Start != length
            || (before.Moves.Count == 2 && before.Moves[1].Steps is not [{ With.Count: 0, Action.Effect: WeightEffect.Keeps }])
            || clauses[0].RepeatCounts is (int first, int last) && (Counts.FromWhole(first - 1) != before.Counts.Start || Counts.FromWhole(last) != from)
            || figure.Rows.Count < 3 || move.Steps[0].Action.Foot.ToFoot() is not Foot foot)
        {
            return null;
        }

        Clause again = new()
        {
            Head = new Meaning(TermKind.Move) { Figures = [figure] },
            HeadText = figure.Name,
            Amount = turning.Amount,
            TurnSide = turning.TurnSide,
            HasTurnWord = true,
            OnStep = turning.OnStep,
        };
        Foot? led = clauses.Where(c => c != told && c.Feet.Count > 0).Select(c => (Foot?)c.Feet[0].Foot).FirstOrDefault()
            ?? clauses.Where(c => c != told && c.Amount is null).Select(c => c.DirSide).FirstOrDefault(s => s is not null);

        // where nothing is said it begins with the foot that is free
        bool mirrored = clauses.Exists(c => c.IsMirrored) || (led ?? _state.Weight.FreeFoot() ?? foot) != foot;
        again.Feet.Add(new FootWord(mirrored ? foot.Other() : foot, true, false));
        clauses.ForEach(c => again.Cover(c.Span));
        if (told is null && before.Moves.Count == 2 && before.Moves[1].Steps[0].Action is { } ends && ends.Foot.ToFoot() is Foot gesture)
        {
            // "vine R, touch L" and "same to L with 1/4 turn L": the touch as well
            told = new Clause { Head = new Meaning(TermKind.Move) { Verb = ends.Kind }, HeadText = ends.Traits.Word, Link = Link.Hard };
            told.Feet.Add(new FootWord(mirrored ? gesture.Other() : gesture, true, false));
            told.Cover(new TextSpan(again.Span.End, 0));
        }

        return told is null ? [again] : [again, told];
    }

    /// <summary>
    /// The same once more with a turn that one of its steps makes ("repeat, turning 1/4 right as you step back on the left", "... on count 6"): what repeats,
    /// what tells the step, and what tells the turn; null for other words.
    /// </summary>
    private static (Clause Repeat, Clause Where, Clause Turning)? AgainTurning(List<Clause> clauses)
    {
        List<Clause> told = clauses.FindAll(c => c.HasContent);
        if (told is not [{ IsRepeat: true, Head: null, Amount: null, Dir: null } repeat, _, ..] || told.Count > 3
            || clauses.Exists(c => c.Unknown.Count > 0 || c.Detail.Count > 0 || c.TimesStated)
            || told.Find(c => c is { Amount: not null, TurnSide: not null, IsRepeat: false }) is not Clause turning)
        {
            return null;
        }

        if (turning.OnCount is not null && told.Count == 2 && turning is { Head: null, Dir: null })
        {
            return (repeat, turning, turning);
        }

        Clause where = told.Count == 2 ? turning : told.Find(c => !ReferenceEquals(c, repeat) && !ReferenceEquals(c, turning))!;
        bool alone = ReferenceEquals(where, turning) || turning is { Head: null, Dir: null, Feet.Count: 0 };
        return alone && where is { Dir: not null, Feet.Count: 1, IsRepeat: false, Head: null or { Verb: ActionKind.Step } } && (ReferenceEquals(where, turning)
            || where.Amount is null) ? (repeat, where, turning) : null;
    }

    /// <summary>"As 1-4 but with left", "like 1-2 on the other side": the foot that begins, or that it is the other one.</summary>
    private static void LeadAgain(Clause repeat, List<Term> terms)
    {
        foreach (Term term in terms)
        {
            if (term.Kind is TermKind.Foot or TermKind.Side or TermKind.Lead or TermKind.Dir && term.Meaning.Side is Foot foot && repeat.Feet.Count == 0)
            {
                repeat.Feet.Add(new FootWord(foot, true, false));
            }

            repeat.IsMirrored |= term.Kind is TermKind.RepeatMirrored;
        }
    }

    /// <summary>"7-8 hold and clap": where the line has a count for each of its moves, the clap has its own.</summary>
    private static void PartHoldAndClap(List<Clause> clauses, IReadOnlyList<LabelPlace> places)
    {
        if (clauses is not [.., { Head.Verb: ActionKind.Hold }, { Head.Verb: ActionKind.Clap or ActionKind.Snap }]
            && clauses is not [.., { Head.Verb: ActionKind.Hold }, { IsAmp: true }, { Head.Verb: ActionKind.Clap or ActionKind.Snap }])
        {
            return;
        }

        bool single = clauses.TrueForAll(c => c.IsAmp || c is { IsFigure: false, Times: 1, IsRepeat: false, Detail.Count: 0, Feet.Count: < 2, Lasts: null }
            || c.Head?.Verb is ActionKind.Clap or ActionKind.Snap or ActionKind.Hold);
        if (single && clauses.Count(c => !c.IsAmp) == places.Count && places.All(p => p.Place.IsWhole))
        {
            clauses[^1].Link = Link.Hard;
            clauses.RemoveAll(c => c.IsAmp && ReferenceEquals(c, clauses[^2]));
        }
    }

    // "kick ball change twice": how often the name is danced, and not its last word
    private static bool SaysNameOften(List<Term> terms)
        => terms.Zip(terms.Skip(1)).Any(p => p.First.Meaning is { IsComposable: true, Figures: [{ Rows.Count: > 2 }, ..] } && p.Second.Kind is TermKind.Times);

    // The places told one by one behind a name of several steps, one for each count, of which some are passed over where the name is danced; else null.
    private static List<Clause>? StepsBehindName(List<Clause> clauses, List<Clause> danced, LineReading best, int places)
    {
        bool told = clauses is [{ IsFigure: true, Detail.Count: 0, Amount: null, HasTurnWord: false, Times: 1, WeightNote: null, BothFeet: false } name, ..]
            && name.Head!.Figures[0].Rows.Count > 2 && places > 2 && clauses.Count == places + 1;
        return told && clauses.Skip(1).All(c => c is { IsRepeat: false, IsAmp: false, Detail.Count: 0, Unknown.Count: 0, Times: 1, IsWith: false }
                && (c.Dir ?? c.Head) is not null && (c.Head is null || !c.IsFigure || c.Head.Figures[0].Rows.Count == 1))
            && clauses.Skip(1).Count(c => !best.Rows.Exists(r => ReferenceEquals(danced[r.Clause], c))) > 1
            ? clauses.GetRange(1, places)
            : null;
    }

    /// <summary>Whether a place or a foot was taken for a remark ("jazz box 1/4 right &amp; cross").</summary>
    private static bool LeavesOut(List<Clause> clauses, List<Clause> danced)
        => !ReferenceEquals(clauses, danced) && clauses.Exists(c => c.HasContent && !c.IsAmp && !danced.Contains(c));

    /// <summary>The words with every lone &amp; as "and", when all counts of the line are whole; null when there is none.</summary>
    private static List<Term>? AndsInFull(List<Term> terms, IReadOnlyList<LabelPlace> places)
    {
        bool isLone = places.All(p => p.Place.IsWhole) && terms.Exists(t => t is { Kind: TermKind.Amp, Text: "&" or "+" });
        return isLone
            ? [.. terms.Select((t, i) => t is { Kind: TermKind.Amp, Text: "&" or "+" } && !(i + 1 < terms.Count && terms[i + 1].Kind == TermKind.Number)
                ? t with { Meaning = new Meaning(TermKind.Join) }
                : t)]
            : null;
    }

    private List<WrittenMove> BuildMoves(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places, int line, Turn bodyAngle,
        TextSpan whole)
    {
        List<WrittenMove> moves = [];
        Counts lineEnd = places.Count > 0 ? LabelPlaces.EndOf(places.Max(p => p.Place)) : Counts.One;
        List<PlacedRow> rows = best.Rows.Where(r => !r.IsWith).ToList();
        int at = 0;
        while (at < rows.Count)
        {
            int first = at;
            List<WrittenStep> steps = [];
            while (at < rows.Count && rows[at].MoveIndex == rows[first].MoveIndex)
            {
                PlacedRow row = rows[at];
                Counts end = at + 1 < rows.Count ? rows[at + 1].Place : lineEnd;
                if (end < row.Place)
                {
                    end = LabelPlaces.EndOf(row.Place);
                }

                List<PlacedRow> with = [.. best.Rows.Where(w => w.IsWith && ReferenceEquals(Owner(w), row))];
                PlacedRow? gesture = with.Prepend(row).FirstOrDefault(r => Phrasing.IsGesture(r.Variant?.Definition, r.Action));
                steps.Add(new WrittenStep(new WrittenCount(row.Label, row.Place), end - row.Place, row.Action, danced[row.Clause].Span, line)
                {
                    BodyAngle = bodyAngle,
                    Gesture = gesture is null ? "" : HerWords(danced[gesture.Clause].Span),
                    FootIsNamed = row.FootNamed,
                    WeightIsStated = row.WeightStated,
                    With = with.Select(w => w.Action).ToValueList(),
                });
                at++;
            }

            Variant? variant = rows[first].Variant;
            Turn? stated = variant?.StatedTurn;
            Turn sum = Turn.None;
            foreach (WrittenStep step in steps)
            {
                sum += step.Action.Turn;
            }

            Turn native = variant is null ? Turn.None : variant.Rows.Aggregate(Turn.None, (t, r) => t + r.Action.Turn);
            if (sum != native)
            {
                stated = sum;
            }

            WrittenMove move = new()
            {
                Definition = variant?.Definition,
                Named = variant?.Named,
                StatedTurn = stated is { Sign: 0 } ? null : stated,
                Direction = variant?.Direction ?? Direction.Unstated,
                Steps = steps.ToValueList(),
                Span = danced[rows[first].Clause].Span,
                Words = "",
            };
            moves.Add(move with { Words = Phrasing.Describe(move) });
        }

        return moves;
    }

    private string HerWords(TextSpan span)
        => string.Join(' ', _state.Text.Substring(span.Start, span.Length).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static PlacedRow? Owner(PlacedRow with)
    {
        PlacedRow? row = with.Previous;
        while (row is { IsWith: true })
        {
            row = row.Previous;
        }

        return row;
    }

    private static List<WrittenMove> PutUnknownEnd(List<WrittenMove> moves, IReadOnlyList<LabelPlace> places, int line, TextSpan whole,
        bool keepsWeight)
    {
        LabelPlace last = places.Count > 0 ? places[^1] : new LabelPlace("1", 1, Counts.Zero, false);
        WrittenStep lost = new(new WrittenCount(last.Label, last.Place), LabelPlaces.EndOf(last.Place) - last.Place, keepsWeight
            ? StepAction.Unknown with { Effect = WeightEffect.Keeps } : StepAction.Unknown, whole, line);
        moves.Add(new WrittenMove { Steps = [lost], Span = whole, Words = "" });
        return moves;
    }

    private static ValueList<FacingClaim> PlaceClaims(List<(Facing Facing, TextSpan Span)> clocks, LineReading best, List<Clause> danced,
        IReadOnlyList<LabelPlace> places)
    {
        List<FacingClaim> claims = [];
        Counts last = places.Count > 0 ? places.Max(p => p.Place) : Counts.Zero;
        foreach ((Facing facing, TextSpan span) in clocks)
        {
            Counts at = last;
            bool found = false;
            for (int i = 0; i < best.Rows.Count; i++)
            {
                if (ToldAt(best.Rows, i, danced) < span.Start)
                {
                    at = best.Rows[i].Place;
                    found = true;
                }
            }

            // a claim after the last move speaks of the end of the line
            bool isLast = best.Rows.Count > 0 && found && ToldAt(best.Rows, best.Rows.Count - 1, danced) < span.Start;
            claims.Add(new FacingClaim(facing, isLast || !found ? last : at, span));
        }

        return claims.ToValueList();
    }

    /// <summary>
    /// Where in the text an action is told. A figure whose detail says the same ("rolling turn: 1/4 L stepping L forward (3:00), ...") keeps its name, and each
    /// of its steps stands where its detail does.
    /// </summary>
    private static int ToldAt(List<PlacedRow> rows, int at, List<Clause> danced)
    {
        Clause clause = danced[rows[at].Clause];
        if (clause.Detail.Count < 2)
        {
            return clause.Start;
        }

        int first = at;
        while (first > 0 && rows[first - 1].Clause == rows[at].Clause)
        {
            first--;
        }

        int last = at;
        while (last + 1 < rows.Count && rows[last + 1].Clause == rows[at].Clause)
        {
            last++;
        }

        return last - first + 1 == clause.Detail.Count ? clause.Detail[at - first].Start : clause.Start;
    }

    private LineContent Unread(IReadOnlyList<LabelPlace> places, TextSpan whole, int line, string label, List<(Facing Facing, TextSpan Span)> clocks)
    {
        string words = _state.Text.Substring(whole.Start, whole.Length);
        _state.Add(ReadingRules.UnknownWords.At(whole, ("words", words), ("counts", label)).OnCount(LabelPlaces.FirstCount(places)));
        LabelPlace first = places.Count > 0 ? places[0] : new LabelPlace("1", 1, Counts.Zero, false);
        Counts end = places.Count > 0 ? LabelPlaces.EndOf(places.Max(p => p.Place)) : Counts.One;
        WrittenStep lost = new(new WrittenCount(first.Label, first.Place), Counts.Max(Counts.Zero, end - first.Place), StepAction.Unknown, whole,
            line);
        _state.Weight = Weight.Unknown;
        _state.Facing = null;
        Counts last = places.Count > 0 ? places.Max(p => p.Place) : Counts.Zero;
        return new LineContent([new WrittenMove { Steps = [lost], Span = whole, Words = words }],
            clocks.Select(c => new FacingClaim(c.Facing, last, c.Span)).ToValueList(), false);
    }
}
