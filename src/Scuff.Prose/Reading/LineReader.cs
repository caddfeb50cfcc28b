using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Reads the words of one count line into moves on counts.</summary>
internal sealed class LineReader(ReaderState state)
{
    // Two readings nearer to each other than this are both meant as likely; a teacher would ask.
    private const double CloseCall = 0.13;

    /// <summary>Reads the words between two offsets over the given places.</summary>
    /// <param name="places">Places by the section's own counting.</param>
    /// <param name="start">First character of the words.</param>
    /// <param name="end">After the last.</param>
    /// <param name="line">One-based line number.</param>
    /// <param name="label">The label as printed, for messages.</param>
    public LineContent Read(IReadOnlyList<LabelPlace> places, int start, int end, int line, string label)
    {
        List<Term> terms = TermReader.Read(state.Text, start, end, state.Lexicon);
        List<(Facing Facing, TextSpan Span)> clocks = TakeClocks(terms, out Turn bodyAngle);
        List<Clause> clauses = ClauseBuilder.Build(terms);
        TextSpan whole = TrimSpan(start, end);
        bodyAngle = CornersAreAngles(clocks, clauses, bodyAngle);
        if (!clauses.Exists(c => c.HasContent) && state.Text.AsSpan(start, end - start).Trim() is { Length: < 30 } onceMore
            && (onceMore.Contains("again", StringComparison.OrdinalIgnoreCase) || onceMore.Contains("once more", StringComparison.OrdinalIgnoreCase)))
        {
            Clause repeat = new() { IsRepeat = true };
            repeat.Cover(whole);
            clauses = [repeat];
        }

        if (clauses.Count == 1 && clauses[0].IsRepeat || (clauses.Count > 0 && clauses[0].IsRepeat && clauses.All(c => c.IsRepeat || c.IsFeetOnly || c.Head is null)))
        {
            LineContent? repeated = ReadRepeat(clauses, places, whole, line, label, clocks);
            if (repeated is not null)
            {
                return repeated;
            }
        }

        ResolveTurnsTo(clauses);
        (LineReading? best, LineReading? other, List<Clause> danced, List<(Clause Figure, int From, int To)> figures) = Solve(clauses, places);
        if (terms.Exists(t => t.Meaning.IsComposable))
        {
            // the same words as plain detail: "touch L, R back, touch L" holds no "back touch"
            List<Term> plainTerms = TermReader.Read(state.Text, start, end, state.Lexicon, plain: true);
            _ = TakeClocks(plainTerms, out _);
            List<Clause> plain = ClauseBuilder.Build(plainTerms);
            ResolveTurnsTo(plain);
            (LineReading? plainBest, LineReading? plainOther, List<Clause> plainDanced, List<(Clause Figure, int From, int To)> plainFigures) = Solve(plain, places);
            if (plainBest is not null && (best is null || Badness(plainBest, plain) < Badness(best, clauses) - 0.3))
            {
                (best, other, danced, figures, clauses) = (plainBest, plainOther, plainDanced, plainFigures, plain);
            }
        }
        if (best is not { Fits: true, Cost: < 2 })
        {
            // the same words with every place starting a move
            List<Clause> placed = ClauseBuilder.Build(terms, placesStart: true);
            ResolveTurnsTo(placed);
            (LineReading? again, LineReading? againOther, List<Clause> againDanced, List<(Clause Figure, int From, int To)> againFigures) = Solve(placed, places);
            if (again is not null && (best is null || Badness(again, placed) < Badness(best, clauses) - 0.05))
            {
                (best, other, danced, figures, clauses) = (again, againOther, againDanced, againFigures, placed);
            }
        }

        if (best is null || !clauses.Any(c => c.HasContent))
        {
            return Unread(places, whole, line, label, clocks);
        }

        ReportWords(clauses, whole, label, best);
        ReportInnerCounts(terms, label);
        if (!best.Fits)
        {
            state.Add(ReadingRules.MovesDoNotFit.At(
                whole,
                ("counts", label),
                ("labels", Many(places.Count, "place")),
                ("actions", Many(best.Actions, "action"))).OnCount(FirstCount(places)));
        }
        else if (other is not null)
        {
            ReportTwoReadings(best, other, danced, whole, places);
        }

        List<WrittenMove> moves = BuildMoves(best, danced, places, line, bodyAngle, whole);
        if (best.Fits)
        {
            ReportTurns(best, danced, places);
            ReportUnused(best, danced, label);
            CompareFigures(figures, best, danced);
        }

        Weight weight = best.Weight;
        if (!best.Fits)
        {
            // what does not fit its counts is not followed any further
            bool wanting = state.InTag && best.Actions < places.Count;
            moves = PutUnknownEnd(moves, places, line, whole, wanting);
            weight = wanting ? weight : Weight.Unknown;
        }

        Follow(moves, weight);
        ValueList<FacingClaim> claims = PlaceClaims(clocks, best, danced, places);
        return new LineContent(moves.ToValueList(), claims, best.Fits) { Notes = Styling(terms), LeavesWordsOut = best.Fits && ReportLeftOut(clauses, danced, figures, best, whole, label) };
    }

    /// <summary>A quick count said inside the words ("and then &amp;3") that the label does not have.</summary>
    private void ReportInnerCounts(List<Term> terms, string label)
    {
        for (int i = 1; i + 1 < terms.Count; i++)
        {
            if (terms[i].Kind == TermKind.Amp && terms[i + 1].Kind == TermKind.Number && terms[i + 1].Span.Start == terms[i].Span.End)
            {
                TextSpan span = TextSpan.FromBounds(terms[i].Span.Start, terms[i + 1].Span.End);
                state.Add(ReadingRules.MoveLeftOut.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label)));
            }
        }
    }

    /// <summary>Tells which words were taken for remarks, so that a move lost among them is seen.</summary>
    private bool ReportLeftOut(List<Clause> clauses, List<Clause> danced, List<(Clause Figure, int From, int To)> figures, LineReading best, TextSpan whole, string label)
    {
        List<Clause> left = [];
        if (figures.Count == 0 && danced.Count < clauses.Count)
        {
            // a clause may have been copied with a note on it: its place in the text tells which it is
            left.AddRange(clauses.Where(c => c.HasContent && !c.IsAmp && !danced.Exists(d => d.Start == c.Start && d.End == c.End)));
        }

        for (int i = 0; i < danced.Count; i++)
        {
            if (danced[i].HasContent && !danced[i].IsAmp && !danced[i].IsTurnOnly && !best.Rows.Exists(r => r.Clause == i))
            {
                left.Add(danced[i]);
            }
        }

        foreach (Clause clause in left)
        {
            TextSpan span = clause.Start >= whole.Start && clause.End <= whole.End ? clause.Span : whole;
            bool saidBefore = best.SaidTwice || (clause.Head?.Verb is ActionKind.Drop && best.Rows.Exists(r => r.Action.Kind is ActionKind.Drop));
            Rule rule = !saidBefore && IsMoveOfItsOwn(clause) ? ReadingRules.MoveLeftOut : ReadingRules.WordsLeftOut;
            state.Add(rule.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label)));
        }

        return left.Count > 0;
    }

    private static bool NamesHeelOrToe(string words) => words.Contains("heel", StringComparison.OrdinalIgnoreCase) || words.Contains("toe", StringComparison.OrdinalIgnoreCase);

    // A remark on weight, hips or knees may be passed over with a hint; a turn or a foot that acts may not.
    private static bool IsMoveOfItsOwn(Clause clause) => !clause.SaysEach && !clause.SaysFinish
        && (clause.Amount is not null || (clause.HasTurnWord && clause.TurnSide is not null)
            || clause.Head is { Verb: ActionKind.Step, Special: not "walk" } && clause.Feet.Count == 1
            || clause.Head is { Verb: ActionKind.Rock or ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Kick or ActionKind.Hook or ActionKind.Flick or ActionKind.Stomp or ActionKind.Jump or ActionKind.Hop or ActionKind.Leap or ActionKind.Pivot or ActionKind.Unwind }
            || clause.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Touch or ActionKind.Dig or ActionKind.Point or ActionKind.Kick or ActionKind.Hook or ActionKind.Stomp or ActionKind.Step }] }, ..] }
            || (clause is { Link: not Link.None, Head.Verb: ActionKind.Drop } && NamesHeelOrToe(clause.HeadText)));

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
            for (int next = i + 1; next < terms.Count && terms[next].Kind is TermKind.Style or TermKind.Filler or TermKind.Unknown or TermKind.Join; next++)
            {
                if (terms[next].Kind is TermKind.Style or TermKind.Unknown)
                {
                    last = next;
                }
            }

            TextSpan span = TextSpan.FromBounds(terms[i].Span.Start, terms[last].Span.End);
            notes.Add(new Note("style", state.Text.Substring(span.Start, span.Length), span));
            state.Add(ReadingRules.StylingMixed.At(span));
            i = last;
        }

        return notes.ToValueList();
    }

    /// <summary>Reads words that stand without counts (an ending, a changed count): one action a count, as many as it takes.</summary>
    public LineContent ReadFree(int start, int end, int line, int first, int atMost)
    {
        List<Term> terms = TermReader.Read(state.Text, start, end, state.Lexicon);
        List<(Facing Facing, TextSpan Span)> clocks = TakeClocks(terms, out _);
        List<Clause> clauses = ClauseBuilder.Build(terms);
        ResolveTurnsTo(clauses);
        TextSpan whole = TrimSpan(start, end);
        LineReading? best = null;
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

            (LineReading? reading, _, List<Clause> used, _) = Solve(clauses, tried);
            if (reading is { Fits: true } && (best is null || reading.Cost < best.Cost - 0.001))
            {
                best = reading;
                danced = used;
                places = tried;
            }
        }

        if (best is null)
        {
            List<LabelPlace> one = [new LabelPlace(first.ToString(CultureInfo.InvariantCulture), first, Counts.FromWhole(first - 1), false)];
            return Unread(one, whole, line, one[0].Label, clocks);
        }

        ReportWords(clauses, whole, places[0].Label, best);
        List<WrittenMove> moves = BuildMoves(best, danced, places, line, Turn.None, whole);
        Follow(moves, best.Weight);
        return new LineContent(moves.ToValueList(), PlaceClaims(clocks, best, danced, places), true);
    }

    private static string Many(int number, string what) => string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");

    private static string? FirstCount(IReadOnlyList<LabelPlace> places) => places.Count > 0 ? places[0].Label : null;

    private static Counts EndOf(Counts place) => Counts.FromWhole(place.Value.Floor + 1);

    private TextSpan TrimSpan(int start, int end)
    {
        while (start < end && char.IsWhiteSpace(state.Text[start]))
        {
            start++;
        }

        while (end > start && char.IsWhiteSpace(state.Text[end - 1]))
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
                if (terms[i].Kind == TermKind.Number && i > 0 && i + 1 < terms.Count && terms[i - 1].Text == "[" && terms[i + 1].Text == "]" && terms[i].Meaning.Value is 12 or 3 or 6 or 9)
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
                angle |= word.StartsWith("angl", StringComparison.OrdinalIgnoreCase) || word.StartsWith("body", StringComparison.OrdinalIgnoreCase) || word.Equals("diagonal", StringComparison.OrdinalIgnoreCase)
                    || word.StartsWith("look", StringComparison.OrdinalIgnoreCase) || word.StartsWith("lean", StringComparison.OrdinalIgnoreCase) || word.Equals("towards", StringComparison.OrdinalIgnoreCase) || word.Equals("toward", StringComparison.OrdinalIgnoreCase);
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
        if (eighthTurned || state.Facing is not Facing facing || !facing.IsWall)
        {
            return bodyAngle;
        }

        for (int i = clocks.Count - 1; i >= 0; i--)
        {
            int before = clocks[i].Span.Start - 1;
            while (before > 0 && state.Text[before] == ' ')
            {
                before--;
            }

            // alone in brackets it is a claim, and a wrong one
            bool bracketed = before >= 0 && state.Text[before] is '[' or '(';
            if (!clocks[i].Facing.IsWall && !bracketed)
            {
                bodyAngle = clocks[i].Facing - facing;
                clocks.RemoveAt(i);
            }
        }

        return bodyAngle;
    }

    private void ResolveTurnsTo(List<Clause> clauses)
    {
        Facing? facing = state.Facing;
        Foot? lastTurn = null;
        foreach (Clause clause in clauses)
        {
            if (clause.Amount is not null && clause.TurnSide is null && lastTurn is Foot sameWay && clause.Start >= 0 && clause.End <= state.Text.Length)
            {
                // "quarter right ..., quarter again": the same way round
                string words = state.Text.Substring(clause.Start, clause.End - clause.Start);
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

    private (LineReading? Best, LineReading? Other, List<Clause> Clauses, List<(Clause Figure, int From, int To)> Figures) Solve(List<Clause> clauses, IReadOnlyList<LabelPlace> places)
    {
        LineSolver solver = new(state.Lexicon);
        List<(Clause, int, int)> figures = [];
        if (clauses.Any(c => c.Detail.Count > 0))
        {
            List<Clause> detailed = [];
            foreach (Clause clause in clauses)
            {
                if (clause.Detail.Count == 0)
                {
                    detailed.Add(clause);
                    continue;
                }

                int? named = clause.Amount ?? (clause.Head is { NamesAmount: true, Figures: [{ Rows.Count: 2 } figure, ..] } ? figure.TotalTurn.Amount.Floor : null);
                if (named is > 0 && clause.Detail.FindAll(d => d.HasTurnWord || d.Amount is not null) is [{ IsTurnOnly: true, Amount: null, TurnTo: null } bare])
                {
                    // "pivot half left (R forward, turn)": the name says how far
                    bare.Amount = named;
                    bare.TurnSide ??= clause.TurnSide;
                }

                foreach (Clause turned in clause.Detail.Where(d => d is { Amount: not null, TurnSide: null, TurnTo: null }))
                {
                    // "jazz box 1/4 R: ... step R to side (turning 1/4)": the name says which way
                    turned.TurnSide = clause.TurnSide;
                }

                figures.Add((clause, detailed.Count, detailed.Count + clause.Detail.Count));
                detailed.AddRange(clause.Detail);
                if (clause.Amount is not null && !clause.Detail.Any(d => d.Amount is not null))
                {
                    // the turn stands with the name only: the figure says where it goes
                    figures.Clear();
                    break;
                }
            }

            if (figures.Count > 0)
            {
                (LineReading? best, LineReading? other) = Best(solver.Solve(detailed, places, state.Weight));
                List<Clause> once = detailed;
                bool saysTimes = once[^1] is { IsTurnOnly: true, TimesStated: true };
                foreach (List<Clause> repeated in LineRepeats.Of(once))
                {
                    (LineReading? again, LineReading? third) = Best(solver.Solve(repeated, places, state.Weight));
                    bool first = saysTimes && ReferenceEquals(detailed, once);
                    if (again is { Fits: true } && (first || best is not { Fits: true } || again.Cost < best.Cost))
                    {
                        (best, other, detailed) = (again, third, repeated);
                        figures = figures.ConvertAll(f => f.Item3 >= once.Count ? (f.Item1, f.Item2, repeated.Count) : f);
                    }
                }

                if (best is { Fits: true } && Best(solver.Solve(clauses, places, state.Weight)).Best is { Fits: true } named && named.Rows.TrueForAll(r => r.Variant is null or { TurnAmountMissing: false, TurnDirectionMissing: false }) && named.DancesLike(best) && SamePlaces(named, best))
                {
                    // the detail says just what the name says: the name stays
                    return (named, null, clauses, []);
                }

                if (figures.Exists(f => f.Item1.DetailAfterDash) && InsteadOfDetail(solver, clauses, places) is (LineReading listed, var listedOther, List<Clause> list)
                    && (best is not { Fits: true } || listed.Cost + 0.3 < best.Cost || !figures.TrueForAll(f => IsDetailOf(f, best))))
                {
                    return (listed, listedOther, list, []);
                }

                bool impossible = best is { Cost: > 2.5 };
                if (best is { Fits: true } && !(impossible && Best(solver.Solve(clauses, places, state.Weight)).Best is { Fits: true, Cost: < 1 }))
                {
                    return (best, other, detailed, figures);
                }

                if (best is { Fits: true })
                {
                    return (best, other, detailed, figures);
                }
            }

            figures.Clear();
        }

        (LineReading? plain, LineReading? second) = Best(solver.Solve(clauses, places, state.Weight));
        foreach (List<Clause> repeated in LineRepeats.Of(clauses))
        {
            (LineReading? again, LineReading? third) = Best(solver.Solve(repeated, places, state.Weight));
            if (again is not null && (plain is null || again.Cost < plain.Cost))
            {
                (plain, second, clauses) = (again, third, repeated);
            }
        }

        if (plain is not { Fits: true } && clauses.Exists(c => c.DetailAfterDash) && InsteadOfDetail(solver, clauses, places) is (LineReading parted, var partedOther, List<Clause> parts))
        {
            return (parted, partedOther, parts, figures);
        }

        if (plain is not { Fits: true } && clauses.Count is > 1 and < 17 && WithoutRemarks(solver, clauses, places) is (LineReading clear, var clearOther, List<Clause> kept))
        {
            return (clear, clearOther, kept, figures);
        }

        if (plain is not { Fits: true } && clauses.Count is > 1 and < 13)
        {
            // the same thing said twice: "R back, L together, R forward, which is a coaster step"
            for (int cut = 1; cut < clauses.Count; cut++)
            {
                (LineReading? first, LineReading? firstOther) = Best(solver.Solve(clauses.GetRange(0, cut), places, state.Weight));
                if (first is not { Fits: true, Cost: < 2 })
                {
                    continue;
                }

                (LineReading? rest, LineReading? restOther) = Best(solver.Solve(clauses.GetRange(cut, clauses.Count - cut), places, state.Weight));
                // "make a quarter turn left and shuffle to the right, R side, L close, R side"
                bool turnFirst = cut == 2 && clauses[0].IsTurnOnly && clauses[1].IsFigure && rest is { Turns: false } && first.Turns && clauses.GetRange(cut, clauses.Count - cut).TrueForAll(c => !c.IsFigure);
                if (turnFirst && rest is { Fits: true, Cost: < 2 } && first.SameFeet(rest))
                {
                    return (first with { SaidTwice = true }, firstOther, clauses.GetRange(0, cut), figures);
                }

                bool nameFirst = cut == 1 && clauses[0].IsFigure;
                bool nameLast = cut == clauses.Count - 1 && clauses[^1].IsFigure;
                bool mayTurn = (nameFirst ? clauses[0] : clauses[^1]).Head is { Figures: var named } && named.Any(f => f.Amounts.Count > 0 || f.TurnedForms.Count > 0);
                bool detailTurns = !mayTurn && rest is not null && (nameLast ? first.Turns && !rest.Turns : nameFirst && rest.Turns && !first.Turns);
                if (rest is { Fits: true, Cost: < 2 } && first.SameFeet(rest) && !detailTurns && (nameFirst || nameLast || clauses.GetRange(cut, clauses.Count - cut).TrueForAll(c => c.IsFeetOnly || c.HasStyle || c.Times > 1)))
                {
                    bool detailLast = cut < clauses.Count - cut;
                    return detailLast && !first.Turns || rest.Turns && !first.Turns
                        ? (rest with { SaidTwice = true }, restOther, clauses.GetRange(cut, clauses.Count - cut), figures)
                        : (first with { SaidTwice = true }, firstOther, clauses.GetRange(0, cut), figures);
                }
            }
        }

        return (plain, second, clauses, figures);
    }

    /// <summary>"Heel strut R - L back - R out": the dash parts moves, and what follows the figure is no detail of it.</summary>
    private (LineReading Best, LineReading? Other, List<Clause> Clauses)? InsteadOfDetail(LineSolver solver, List<Clause> clauses, IReadOnlyList<LabelPlace> places)
    {
        List<Clause> list = [];
        foreach (Clause clause in clauses)
        {
            if (!clause.DetailAfterDash)
            {
                list.Add(clause);
                continue;
            }

            Clause figure = clause.Copy(mirrored: false);
            figure.Detail = [];
            list.Add(figure);
            list.AddRange(clause.Detail);
        }

        (LineReading? best, LineReading? other) = Best(solver.Solve(list, places, state.Weight));
        return best is { Fits: true, Cost: < 1.2 } ? (best, other, list) : null;
    }

    /// <summary>
    /// When there are more moves than counts: the reading without one or two remarks ("and put your weight on it", "feet apart").
    /// A remark on the weight must agree with where the weight is then.
    /// </summary>
    private (LineReading Best, LineReading? Other, List<Clause> Clauses)? WithoutRemarks(LineSolver solver, List<Clause> clauses, IReadOnlyList<LabelPlace> places)
    {
        List<int> weak = Enumerable.Range(0, clauses.Count).Where(i => clauses[i].IsWeak).ToList();
        (LineReading Best, LineReading? Other, List<Clause> Clauses)? found = null;
        int tries = 0;
        for (int size = 1; size <= 3 && found is null; size++)
        {
            foreach (List<int> dropped in Choose(weak, size))
            {
                if (++tries > 24)
                {
                    return found;
                }

                List<Clause> kept = [];
                bool agrees = true;
                for (int i = 0; i < clauses.Count; i++)
                {
                    if (!dropped.Contains(i))
                    {
                        kept.Add(clauses[i]);
                        continue;
                    }

                    Clause remark = clauses[i];
                    if (remark.Head?.Verb is ActionKind.Shift or ActionKind.Recover && remark.Feet.Count > 0 && kept.Count > 0)
                    {
                        // the weight is then on that foot: the move before must bring it there, not to the other
                        agrees &= kept[^1] is not { Head.Verb: ActionKind.Rock, Feet.Count: 1 } || kept[^1].Feet[0].Foot == remark.Feet[^1].Foot;
                        Clause owner = kept[^1].Copy(mirrored: false);
                        owner.WeightNote ??= TermKind.WeightOn;
                        owner.WeightFoot ??= remark.Feet[^1].Foot;
                        kept[^1] = owner;
                    }

                    if (remark.Head?.Verb is ActionKind.Shift or ActionKind.Recover && remark.Feet.Count == 0 && kept.Count > 0)
                    {
                        Clause owner = kept[^1].Copy(mirrored: false);
                        owner.WeightNote ??= TermKind.WeightTakes;
                        kept[^1] = owner;
                    }

                    agrees &= remark.Unknown.Count == 0;
                }

                (LineReading? best, LineReading? other) = Best(solver.Solve(kept, places, state.Weight));
                if (agrees && best is { Fits: true, Cost: < 1.5 } && (found is null || best.Cost + 0.5 < found.Value.Best.Cost - 0.001))
                {
                    found = (best with { Cost = best.Cost + 0.5 }, other, kept);
                }
            }
        }

        return found;
    }

    private static IEnumerable<List<int>> Choose(List<int> items, int size, int from = 0)
    {
        if (size == 0)
        {
            yield return [];
            yield break;
        }

        for (int i = from; i < items.Count; i++)
        {
            foreach (List<int> rest in Choose(items, size - 1, i + 1))
            {
                yield return [items[i], .. rest];
            }
        }
    }

    private static (LineReading? Best, LineReading? Other) Best(List<LineReading> readings)
    {
        if (readings.Count == 0)
        {
            return (null, null);
        }

        LineReading best = readings[0];
        foreach (LineReading other in readings.Skip(1))
        {
            if (other.Cost > best.Cost + CloseCall || !other.Fits)
            {
                break;
            }

            if (!other.DancesLike(best))
            {
                return (best, other);
            }
        }

        return (best, null);
    }

    private static bool SamePlaces(LineReading name, LineReading detail)
    {
        List<StepAction> a = [.. name.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).Select(r => r.Action)];
        List<StepAction> b = [.. detail.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).Select(r => r.Action)];
        return a.Zip(b).All(p => p.Second.Direction == Direction.Unstated || Family(p.First.Direction) == Family(p.Second.Direction));
    }

    private static double Badness(LineReading reading, List<Clause> clauses) => reading.Cost + clauses.Sum(c => c.Unknown.Count);

    private void ReportWords(List<Clause> clauses, TextSpan whole, string label, LineReading best)
    {
        bool style = false;
        foreach (Clause clause in clauses.Concat(clauses.SelectMany(c => c.Detail)))
        {
            foreach (Term corrected in clause.Corrected)
            {
                TextSpan slip = corrected.SlipWord.Length > 0 ? corrected.SlipSpan : corrected.Span;
                string meant = corrected.SlipWord.Length > 0 ? corrected.SlipWord : corrected.Text;
                string had = state.Text.Substring(slip.Start, slip.Length);
                if (!string.Equals(had, meant, StringComparison.OrdinalIgnoreCase) && corrected.SlipWord.Length > 0)
                {
                    state.Add(ReadingRules.Spelling.At(slip, ("word", had), ("meant", meant))
                        .WithFixes(new Fix($"write '{meant}'", new TextRemedy([new TextEdit(slip, meant)]), true)));
                }
            }

            if (clause.Unknown.Count > 0)
            {
                TextSpan span = TextSpan.FromBounds(clause.Unknown[0].Span.Start, clause.Unknown[^1].Span.End);
                state.Add(ReadingRules.UnknownWords.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label)));
            }

            style |= clause.HasStyle && clause.Detail.Count == 0 && clause.WeightNote is null;
        }
    }

    private void ReportTwoReadings(LineReading best, LineReading other, List<Clause> danced, TextSpan whole, IReadOnlyList<LabelPlace> places)
    {
        string first = Phrasing.Describe(best.Rows);
        string second = Phrasing.Describe(other.Rows);
        if (string.Equals(first, second, StringComparison.Ordinal))
        {
            return;
        }

        state.Add(ReadingRules.TwoReadings.At(whole, ("first", first), ("second", second))
            .OnCount(FirstCount(places))
            .WithFixes(
                new Fix("write " + first, new TextRemedy([new TextEdit(whole, first)]), false),
                new Fix("write " + second, new TextRemedy([new TextEdit(whole, second)]), false)));
    }

    private void ReportTurns(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places)
    {
        int last = -1;
        foreach (PlacedRow row in best.Rows)
        {
            if (row.MoveIndex == last || row.Variant is null)
            {
                continue;
            }

            last = row.MoveIndex;
            TextSpan span = danced[row.Clause].Span;
            if (row.Variant.TurnDirectionMissing)
            {
                ReportDirection(danced[row.Clause], row.Label);
            }
            else if (row.Variant.Definition is { Conflict: not null, Others.Count: > 0, Rows.Count: > 1 } used && danced[row.Clause].IsFigure && danced[row.Clause].Detail.Count == 0 && row.Variant.Rows.Count >= used.Rows.Count && !row.Variant.TurnAmountMissing)
            {
                ReportOtherUse(used, danced[row.Clause], row.Label);
            }
            else if (row.Variant.TurnAmountMissing)
            {
                Turn taken = Turn.None;
                foreach (VariantRow made in row.Variant.Rows)
                {
                    taken += made.Action.Turn;
                }

                state.Add(ReadingRules.TurnAmountMissing.At(span, ("taken", taken.ToString())).OnCount(row.Label));
            }
        }

        // a turn that was attached to a step
        for (int i = 0; i < danced.Count; i++)
        {
            Clause clause = danced[i];
            bool isAttached = clause.IsTurnOnly && !best.Rows.Any(r => r.Clause == i);
            if (isAttached && clause.TurnSide is null && clause.Amount is not null)
            {
                ReportDirection(clause, FirstCount(places));
            }
            else if (isAttached && clause is { Amount: null, TurnTo: null } && SaysTurn(clause) && !TurnsPart(danced, i))
            {
                // "touch L together, turning right"
                state.Add(ReadingRules.TurnAmountMissing.At(clause.Span, ("taken", "no turn")).OnCount(FirstCount(places)));
            }
        }
    }

    /// <summary>A foot or a direction that a move's own words name, and that nothing of the move has.</summary>
    private void ReportUnused(LineReading best, List<Clause> danced, string label)
    {
        for (int i = 0; i < danced.Count; i++)
        {
            Clause clause = danced[i];
            List<PlacedRow> rows = best.Rows.FindAll(r => r.Clause == i);
            if (rows.Count == 0 || clause.IsAmp)
            {
                continue;
            }

            bool foot = clause.Feet.Exists(f => !UsesFoot(rows, clause, f));
            bool way = clause.Dir is Meaning dir && clause.IsFigure && !UsesWay(rows, clause, dir.Direction);
            if (foot || way)
            {
                string words = state.Text.Substring(clause.Span.Start, clause.Span.Length);
                state.Add(ReadingRules.WordsUnused.At(clause.Span, ("words", words), ("counts", label), ("unused", foot ? "foot" : "direction"), ("read", Phrasing.Describe(rows))));
            }
        }
    }

    private static bool UsesFoot(List<PlacedRow> rows, Clause clause, FootWord word)
    {
        if (word.MayBeReference || clause.Reference == word.Foot || clause.WeightFoot == word.Foot || clause.TurnSide == word.Foot)
        {
            return true;
        }

        Direction way = word.Foot == Foot.Right ? Direction.Right : Direction.Left;
        return rows.Exists(r => r.Action.Foot.ToFoot() == word.Foot || r.Action.Foot == ActingFoot.Both || r.Action.Direction == way
            || r.Variant?.Definition?.NamedBy is NamedBy.Travel or NamedBy.Turn || (r.Action.Foot == ActingFoot.None && !word.IsCertain));
    }

    private static bool UsesWay(List<PlacedRow> rows, Clause clause, Direction way)
    {
        Direction family = Family(way);
        bool told = way is Direction.Forward or Direction.Back or Direction.CrossFront or Direction.CrossBehind or Direction.LockBehind or Direction.LockFront || (way == Direction.Side && clause.DirSide is null);
        Direction across = way == Direction.Forward ? Direction.CrossFront : way == Direction.Back ? Direction.CrossBehind : family;
        return !told || rows.Exists(r => Family(r.Action.Direction) == family || Family(r.Action.Direction) == across || r.Action.Turn.Sign != 0 || r.Action.Direction == Direction.Unstated || r.Action.Foot is ActingFoot.Both or ActingFoot.None);
    }

    // make, circle and swing are among the words of turning too, and often mean nothing
    private bool SaysTurn(Clause clause)
    {
        ReadOnlySpan<char> words = state.Text.AsSpan(clause.Span.Start, clause.Span.Length);
        return clause.TurnSide is not null
            || words.Contains("turn", StringComparison.OrdinalIgnoreCase)
            || words.Contains("spin", StringComparison.OrdinalIgnoreCase)
            || words.Contains("rotat", StringComparison.OrdinalIgnoreCase);
    }

    // "turn right knee in", "both heels turn to right": not the body
    private static bool TurnsPart(List<Clause> danced, int at)
        => (at > 0 && danced[at].Link == Link.None && IsPart(danced[at - 1])) || (at + 1 < danced.Count && danced[at].LinkAfter == Link.None && IsPart(danced[at + 1]));

    private static bool IsPart(Clause clause) => clause.Part.Length > 0
        || clause.Head?.Verb is ActionKind.PopKnee or ActionKind.RollKnee or ActionKind.Hitch or ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.FanToe or ActionKind.FanHeel
        || clause.Head?.Figures is [{ Rows: [{ Action.Kind: ActionKind.PopKnee or ActionKind.RollKnee or ActionKind.SplitToes or ActionKind.SplitHeels or ActionKind.FanToe or ActionKind.FanHeel }, ..] }, ..];

    /// <summary>Sources differ on the name: the other use is offered.</summary>
    private void ReportOtherUse(StepDefinition used, Clause clause, string count)
    {
        if (!state.ToldUses.Add(used.Id))
        {
            return;
        }

        OtherReading other = used.Others[0];
        Diagnostic hint = ReadingRules.NameHasOtherReading.At(clause.Span, ("name", used.Name), ("other", other.Words)).OnCount(count);
        if (other.Id is string id && state.Lexicon.Catalogue.Find(id) is { Conflict: null, Others.Count: 0 } meant)
        {
            hint = hint.WithFixes(new Fix("write '" + meant.Name + "'", new TextRemedy([new TextEdit(clause.Span, meant.Name)]), false));
        }

        state.Add(hint);
    }

    private void ReportDirection(Clause clause, string? count)
    {
        TextSpan at = clause.Span;
        state.Add(ReadingRules.TurnDirectionMissing.At(at).OnCount(count).WithFixes(
            new Fix("turn right", new TextRemedy([new TextEdit(new TextSpan(at.End, 0), " right")]), false),
            new Fix("turn left", new TextRemedy([new TextEdit(new TextSpan(at.End, 0), " left")]), false)));
    }

    /// <summary>Holds the name of a figure against its detail.</summary>
    private void CompareFigures(List<(Clause Figure, int From, int To)> figures, LineReading best, List<Clause> danced)
    {
        foreach ((Clause figure, int from, int to) in figures)
        {
            if (figure.Head is not { Figures.Count: > 0 } head)
            {
                continue;
            }

            List<StepAction> detail = DetailOf(best, from, to);
            Foot? stated = figure.Feet.Count > 0 ? figure.Feet[0].Foot : figure.DirSide;
            (bool anyLike, bool anyMirrored) = Likeness(figure, head, stated, detail);
            if (anyLike || detail.Count == 0 || head.Figures.All(f => f.Rows.Count < 2))
            {
                continue;
            }

            string name = state.Text.Substring(figure.Span.Start, Math.Min(figure.Span.Length, Math.Max(0, state.Text.IndexOf('(', figure.Span.Start) is int open and > 0 ? open - figure.Span.Start : figure.Span.Length))).Trim();
            TextSpan span = figure.Span;
            if (anyMirrored || FirstFootDiffers(head.Figures, stated, detail))
            {
                state.Add(ReadingRules.FigureFootDiffers.At(span, ("name", name)));
            }
            else if (!SameFeet(head.Figures, detail))
            {
                state.Add(ReadingRules.FigureDetailDiffers.At(span, ("name", name)));
            }
        }
    }

    private static List<StepAction> DetailOf(LineReading reading, int from, int to)
        => reading.Rows.Where(r => r.Clause >= from && r.Clause < to && !r.IsWith && r.Action.Kind != ActionKind.Hold).Select(r => r.Action).ToList();

    private bool IsDetailOf((Clause Figure, int From, int To) told, LineReading reading)
        => told.Figure.Head is not { Figures.Count: > 0 } head || Likeness(told.Figure, head, told.Figure.Feet.Count > 0 ? told.Figure.Feet[0].Foot : told.Figure.DirSide, DetailOf(reading, told.From, told.To)).Any;

    /// <summary>Whether the detail is that of the figure on its foot, or of the figure on the other foot.</summary>
    private (bool Any, bool Mirrored) Likeness(Clause figure, Meaning head, Foot? stated, List<StepAction> detail)
    {
        bool anyLike = false;
        bool anyMirrored = false;
        foreach (StepDefinition definition in head.Figures)
        {
            foreach (StepDefinition form in Forms(definition))
            {
                foreach (Foot named in (ReadOnlySpan<Foot>)[Foot.Right, Foot.Left])
                {
                    if (!Like(form, named, detail))
                    {
                        continue;
                    }

                    bool side = stated is null || (figure.Feet.Count == 0 && form.NamedBy != NamedBy.Travel) || form.NamedBy == NamedBy.None || named == stated || figure.Feet.Count > 1;
                    anyLike |= side;
                    anyMirrored |= !side;
                }
            }
        }

        return (anyLike, anyMirrored);
    }

    private static bool FirstFootDiffers(ValueList<StepDefinition> figures, Foot? stated, List<StepAction> detail)
    {
        if (stated is null || detail.Count == 0)
        {
            return false;
        }

        foreach (StepDefinition figure in figures)
        {
            PatternRow? first = figure.Rows.FirstOrDefault(r => r.Foot is RelativeFoot.Same or RelativeFoot.Other);
            if (first is not null && figure.NamedBy is NamedBy.FirstFoot or NamedBy.ActingFoot && detail[0].Foot.ToFoot() is Foot foot && first.For(stated.Value).Foot.ToFoot() != foot)
            {
                return true;
            }
        }

        return false;
    }

    private IEnumerable<StepDefinition> Forms(StepDefinition definition)
    {
        yield return definition;
        foreach (TurnedForm turned in definition.TurnedForms)
        {
            if (state.Lexicon.Catalogue.Find(turned.Id) is StepDefinition form)
            {
                yield return form;
            }
        }
    }

    /// <summary>Same feet and places, except that the last action may be a variant of its own.</summary>
    private static bool Like(StepDefinition definition, Foot named, List<StepAction> detail)
    {
        List<StepAction> rows = definition.Rows.Where(r => r.Action.Kind != ActionKind.Hold).Select(r => r.For(named)).ToList();
        if (rows.Count > 1 && detail.Count > rows.Count)
        {
            // the figure several times, or followed by other moves
            detail = detail.GetRange(0, rows.Count);
        }

        int core = definition.Rows.Count(r => !r.IsFinish && r.Action.Kind != ActionKind.Hold);
        if (detail.Count != rows.Count && detail.Count != core)
        {
            // half of a figure under its name: "rumba box, first half"
            bool half = detail.Count >= 2 && detail.Count <= (rows.Count / 2) + 1 && rows.Count >= 4;
            if (!half)
            {
                return false;
            }

            bool second = detail.Count > 0 && detail[0].Foot != rows[0].Foot;
            rows = second ? rows.Skip(rows.Count - detail.Count).ToList() : rows.Take(detail.Count).ToList();
        }

        for (int i = 0; i < detail.Count; i++)
        {
            bool last = i == detail.Count - 1 && detail.Count > 2;
            if (detail[i].Foot != rows[i].Foot)
            {
                return false;
            }

            if (!last && !SamePlace(detail[i], rows[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool SamePlace(StepAction a, StepAction b)
    {
        Direction first = Family(a.Direction);
        Direction second = Family(b.Direction);
        bool home = a.Direction == Direction.Home || b.Direction == Direction.Home;
        return home || first == second || first == Direction.Unstated || second == Direction.Unstated || a.Turn.Sign != 0 || b.Turn.Sign != 0;
    }

    private static Direction Family(Direction direction) => direction switch
    {
        Direction.DiagonalForward => Direction.Forward,
        Direction.DiagonalForwardAcross => Direction.Forward,
        Direction.DiagonalBack or Direction.DiagonalBackAcross => Direction.Back,
        Direction.LockBehind or Direction.Behind => Direction.CrossBehind,
        Direction.LockFront or Direction.Across => Direction.CrossFront,
        Direction.Home or Direction.In or Direction.Together => Direction.InPlace,
        Direction.Out => Direction.Unstated,
        _ => direction,
    };

    private static bool SameFeet(ValueList<StepDefinition> figures, List<StepAction> detail)
    {
        // a figure whose feet and places all agree but for one is a variant; more is another figure
        foreach (StepDefinition figure in figures)
        {
            foreach (Foot named in (ReadOnlySpan<Foot>)[Foot.Right, Foot.Left])
            {
                List<StepAction> rows = figure.Rows.Where(r => r.Action.Kind != ActionKind.Hold).Select(r => r.For(named)).ToList();
                if (rows.Count < detail.Count || detail.Count < rows.Count - 1)
                {
                    continue;
                }

                int wrong = 0;
                for (int i = 0; i < detail.Count; i++)
                {
                    wrong += detail[i].Foot != rows[i].Foot ? 2 : SamePlace(detail[i], rows[i]) ? 0 : 1;
                }

                if (wrong <= 1)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private List<WrittenMove> BuildMoves(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places, int line, Turn bodyAngle, TextSpan whole)
    {
        List<WrittenMove> moves = [];
        Counts lineEnd = places.Count > 0 ? EndOf(places.Max(p => p.Place)) : Counts.One;
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
                    end = EndOf(row.Place);
                }

                steps.Add(new WrittenStep(new WrittenCount(row.Label, row.Place), end - row.Place, row.Action, danced[row.Clause].Span, line)
                {
                    BodyAngle = bodyAngle,
                    FootIsNamed = row.FootNamed,
                    WeightIsStated = row.WeightStated,
                    With = best.Rows.Where(w => w.IsWith && ReferenceEquals(Owner(w), row)).Select(w => w.Action).ToValueList(),
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

    private static PlacedRow? Owner(PlacedRow with)
    {
        PlacedRow? row = with.Previous;
        while (row is { IsWith: true })
        {
            row = row.Previous;
        }

        return row;
    }

    private static List<WrittenMove> PutUnknownEnd(List<WrittenMove> moves, IReadOnlyList<LabelPlace> places, int line, TextSpan whole, bool keepsWeight)
    {
        LabelPlace last = places.Count > 0 ? places[^1] : new LabelPlace("1", 1, Counts.Zero, false);
        WrittenStep lost = new(new WrittenCount(last.Label, last.Place), EndOf(last.Place) - last.Place, keepsWeight ? StepAction.Unknown with { Effect = WeightEffect.Keeps } : StepAction.Unknown, whole, line);
        moves.Add(new WrittenMove { Steps = [lost], Span = whole, Words = "" });
        return moves;
    }

    private void Follow(List<WrittenMove> moves, Weight weight)
    {
        state.Weight = weight;
        foreach (WrittenMove move in moves)
        {
            foreach (WrittenStep step in move.Steps)
            {
                state.Facing = step.Action.Kind == ActionKind.Unknown ? null : state.Facing + step.Action.Turn;
            }
        }
    }

    private static ValueList<FacingClaim> PlaceClaims(List<(Facing Facing, TextSpan Span)> clocks, LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places)
    {
        List<FacingClaim> claims = [];
        Counts last = places.Count > 0 ? places.Max(p => p.Place) : Counts.Zero;
        foreach ((Facing facing, TextSpan span) in clocks)
        {
            Counts at = last;
            bool found = false;
            foreach (PlacedRow row in best.Rows)
            {
                if (danced[row.Clause].Start < span.Start)
                {
                    at = row.Place;
                    found = true;
                }
            }

            // a claim after the last move speaks of the end of the line
            bool isLast = best.Rows.Count > 0 && found && ReferenceEquals(best.Rows[^1], best.Rows.Last(r => danced[r.Clause].Start < span.Start));
            claims.Add(new FacingClaim(facing, isLast || !found ? last : at, span));
        }

        return claims.ToValueList();
    }

    private LineContent Unread(IReadOnlyList<LabelPlace> places, TextSpan whole, int line, string label, List<(Facing Facing, TextSpan Span)> clocks)
    {
        string words = state.Text.Substring(whole.Start, whole.Length);
        state.Add(ReadingRules.UnknownWords.At(whole, ("words", words), ("counts", label)).OnCount(FirstCount(places)));
        LabelPlace first = places.Count > 0 ? places[0] : new LabelPlace("1", 1, Counts.Zero, false);
        Counts end = places.Count > 0 ? EndOf(places.Max(p => p.Place)) : Counts.One;
        WrittenStep lost = new(new WrittenCount(first.Label, first.Place), Counts.Max(Counts.Zero, end - first.Place), StepAction.Unknown, whole, line);
        state.Weight = Weight.Unknown;
        state.Facing = null;
        Counts last = places.Count > 0 ? places.Max(p => p.Place) : Counts.Zero;
        return new LineContent([new WrittenMove { Steps = [lost], Span = whole, Words = words }], clocks.Select(c => new FacingClaim(c.Facing, last, c.Span)).ToValueList(), false);
    }

    /// <summary>Forward or back, when the repeat is said to go that way.</summary>
    private static Direction? RepeatedWay(List<Clause> clauses) => clauses.Select(c => c.Dir?.Direction).FirstOrDefault(d => d is Direction.Forward or Direction.Back);

    /// <summary>"Repeat 1-4 on the other foot": the moves of those counts again, mirrored when said or when only that is possible.</summary>
    private LineContent? ReadRepeat(List<Clause> clauses, IReadOnlyList<LabelPlace> places, TextSpan whole, int line, string label, List<(Facing Facing, TextSpan Span)> clocks)
    {
        if (places.Count == 0)
        {
            return null;
        }

        Clause repeat = clauses.First(c => c.IsRepeat);
        bool mirrored = clauses.Any(c => c.IsMirrored);
        Foot? leading = clauses.SelectMany(c => c.Feet).Select(f => (Foot?)f.Foot).FirstOrDefault() ?? clauses.Select(c => c.DirSide ?? c.TurnSide).FirstOrDefault(s => s is not null);
        Counts length = EndOf(places.Max(p => p.Place)) - Counts.FromWhole(places[0].Place.Value.Floor);
        Counts from;
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
                state.Add(ReadingRules.MovesDoNotFit.At(whole, ("counts", label), ("labels", Many(length.Value.Floor, "count")), ("actions", Many((to - from).Value.Floor, "count"))).OnCount(FirstCount(places)));
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

            string taken = string.Create(CultureInfo.InvariantCulture, $"{from.Value.Floor + 1}-{(from + length).Value.Floor}");
            if (places[0].Place.Value.Floor != length.Value.Floor || from != Counts.Zero)
            {
                state.Add(ReadingRules.RepeatWithoutCounts.At(whole, ("taken", taken)).OnCount(FirstCount(places)));
            }
            else
            {
                state.Add(ReadingRules.RepeatWithoutCounts.At(whole, ("taken", taken)).OnCount(FirstCount(places)) with { Severity = Severity.Hint });
            }
        }

        List<WrittenMove> copied = [];
        Foot? sourceFirst = null;
        Counts shift = Counts.FromWhole(places[0].Place.Value.Floor) - from;
        foreach (WrittenLine written in source)
        {
            foreach (WrittenMove move in written.Moves)
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

        if (copied.Count == 0)
        {
            return null;
        }

        if (RepeatedWay(clauses) is Direction towards)
        {
            bool going = copied.SelectMany(m => m.Steps).All(s => s.Action.Traits.Stretches || s.Action.Direction is Direction.Forward or Direction.Back || s.Action.Foot == ActingFoot.None);
            if (!going)
            {
                return null;
            }

            // "the same going forward": the feet as before, the other way
            copied = copied.ConvertAll(m => m with { Definition = null, Named = null, Steps = m.Steps.Select(s => s.Action.Direction is Direction.Forward or Direction.Back ? s with { Action = s.Action with { Direction = towards } } : s).ToValueList() });
        }
        else if (clauses.Exists(c => c.Dir is not null && c.DirSide is null) || clauses.Exists(c => c.Amount is not null))
        {
            return null;
        }

        bool flip = mirrored;
        if (!mirrored && leading is Foot lead && sourceFirst is Foot sf)
        {
            flip = lead != sf;
        }
        else if (!mirrored && sourceFirst is Foot source1 && state.Weight.FreeFoot() is Foot free && free != source1)
        {
            flip = true;
        }

        if (flip)
        {
            copied = copied.Select(m => m with
            {
                Named = m.Named?.Other(),
                StatedTurn = m.StatedTurn is Turn t ? -t : null,
                Steps = m.Steps.Select(s => s with { Action = s.Action.Mirrored() }).ToValueList(),
            }).ToList();
        }

        copied = copied.Select(m => m with { Words = Phrasing.Describe(m) }).ToList();
        Weight weight = state.Weight;
        foreach (WrittenStep step in copied.SelectMany(m => m.Steps))
        {
            weight = step.Action.WeightAfter(weight);
        }

        Follow(copied, weight);
        Counts end = places.Max(p => p.Place);
        return new LineContent(copied.ToValueList(), clocks.Select(c => new FacingClaim(c.Facing, end, c.Span)).ToValueList(), true);
    }
}
