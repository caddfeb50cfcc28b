using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Asks where the reading of a line leaves something open: words, turns, feet and moves that it does not have.</summary>
internal sealed class ReadingQuestions(ReaderState state)
{
    // what was asked about as unused, so that no word is asked about twice
    private readonly List<TextSpan> _unused = [];

    /// <summary>Slips that were mended and words that are not known.</summary>
    public void Words(List<Clause> clauses, TextSpan whole, string label, LineReading best)
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

    /// <summary>A quick count said inside the words ("and then &amp;3") that the label does not have.</summary>
    public void InnerCounts(List<Term> terms, string label)
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

    /// <summary>"Repeat on R, clap": what is to be danced again is no step, and is asked about where it was taken for one.</summary>
    public void RepeatsDanced(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places, string label)
    {
        for (int i = 0; i < danced.Count; i++)
        {
            bool isTurn = danced[i] is { IsTurnOnly: true, TimesStated: true, Times: > 1 };
            bool isAgain = danced[i] is { IsRepeat: true, Head: null, Dir: null, Amount: null, HasTurnWord: false, Feet.Count: 0 }
                && best.Actions < places.Count;
            int rows = best.Rows.Count(r => r.Clause == i);
            if ((isTurn && rows > 0 && rows < danced[i].Times) || (isAgain && rows == 0 && danced[i].End > danced[i].Start))
            {
                // "turn 1/4 left x2", "turn 1/4 left, and once more": danced once only
                TextSpan twice = danced[i].Span;
                state.Add(ReadingRules.MoveLeftOut.At(twice, ("words", state.Text.Substring(twice.Start, twice.Length)), ("counts", label)));
            }

            if (danced[i] is { IsRepeat: true, Head: null, Dir: null, Amount: null, HasTurnWord: false, Diagonal: false, Part.Length: 0 }
                && best.Rows.Exists(r => r.Clause == i))
            {
                TextSpan span = danced[i].Span;
                state.Add(ReadingRules.UnknownWords.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label)));
            }
        }
    }

    /// <summary>A second way to read the line that dances otherwise.</summary>
    public void TwoReadings(LineReading best, LineReading other, List<Clause> danced, TextSpan whole, IReadOnlyList<LabelPlace> places)
    {
        string first = Phrasing.Describe(best.Rows);
        string second = Phrasing.Describe(other.Rows);
        if (string.Equals(first, second, StringComparison.Ordinal))
        {
            return;
        }

        state.Add(ReadingRules.TwoReadings.At(whole, ("first", first), ("second", second))
            .OnCount(LabelPlaces.FirstCount(places))
            .WithFixes(
                new Fix("write " + first, new TextRemedy([new TextEdit(whole, first)]), false),
                new Fix("write " + second, new TextRemedy([new TextEdit(whole, second)]), false)));
    }

    /// <summary>Turns without a direction or an amount, and names that are used for more than one thing.</summary>
    public void Turns(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places)
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
            else if (danced[row.Clause] is { IsFigure: true, HasTurnWord: true, Amount: null, TurnTo: null, SaysEach: false, SaysCircle: false } turning
                && row.Variant.Rows.Count > 2 && row.Variant.Rows.TrueForAll(r => r.Action.Turn.Sign == 0) && SaysTurn(turning)
                && !TurnsPart(danced, row.Clause)
                && best.Rows.FindAll(r => r.Clause == row.Clause).TrueForAll(r => r.Action.Turn.Sign == 0))
            {
                // "triple step turning"
                state.Add(ReadingRules.TurnAmountMissing.At(span, ("taken", "no turn")).OnCount(row.Label));
            }
            else if (row.Variant.Definition is { Conflict: not null, Others.Count: > 0, Rows.Count: > 1 } used && danced[row.Clause].IsFigure
                && danced[row.Clause].Detail.Count == 0 && row.Variant.Rows.Count >= used.Rows.Count && !row.Variant.TurnAmountMissing)
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
            else if (row.Action is { Kind: ActionKind.Rock, Direction: Direction.Forward } && danced[row.Clause] is
            {
                Head.Verb: ActionKind.Rock, Dir: null, Diagonal: false, DirSide: null, Part.Length: 0, Reference: null, Amount: null, HasTurnWord: false,
                Detail.Count: 0, Feet: [{ }]
            } rock
                && row.Clause + 1 < danced.Count && danced[row.Clause + 1].Head?.Verb is ActionKind.Recover)
            {
                // "rock R, recover L": "R" is whose foot it is, or the side it goes to; alone, "rock step R" is a name that goes forward
                state.Add(ReadingRules.RockDirectionMissing.At(span, ("taken", "forward")).OnCount(row.Label).WithFixes(
                    new Fix("rock forward", new TextRemedy([new TextEdit(new TextSpan(rock.Span.End, 0), " forward")]), false),
                    new Fix("rock to the side", new TextRemedy([new TextEdit(new TextSpan(rock.Span.End, 0), " to side")]), false)));
            }
        }

        // a turn that was attached to a step
        for (int i = 0; i < danced.Count; i++)
        {
            Clause clause = danced[i];
            bool isAttached = clause.IsTurnOnly && !best.Rows.Any(r => r.Clause == i);
            if (isAttached && clause.TurnSide is null && clause.Amount is not null)
            {
                ReportDirection(clause, LabelPlaces.FirstCount(places));
            }
            else if (isAttached && clause is { Amount: null, TurnTo: null } && SaysTurn(clause) && !TurnsPart(danced, i))
            {
                // "touch L together, turning right"
                state.Add(ReadingRules.TurnAmountMissing.At(clause.Span, ("taken", "no turn")).OnCount(LabelPlaces.FirstCount(places)));
            }
        }
    }

    /// <summary>A foot or a direction that a move's own words name, and that nothing of the move has.</summary>
    public void Unused(LineReading best, List<Clause> danced, string label)
    {
        for (int i = 0; i < danced.Count; i++)
        {
            Clause clause = danced[i];
            List<PlacedRow> rows = best.Rows.FindAll(r => r.Clause == i);
            if (rows.Count == 0 || clause.IsAmp)
            {
                continue;
            }

            if (clause is { IsRepeat: true, Head: null, Dir: null or { Direction: Direction.Side } }
                && !state.Text.AsSpan(clause.Start, clause.End - clause.Start).StartsWith("now", StringComparison.OrdinalIgnoreCase))
            {
                // "same to the left, hold": the words say to do it again, and one step is danced
                _unused.Add(clause.Span);
                state.Add(ReadingRules.WordsUnused.At(clause.Span, ("words", state.Text.Substring(clause.Span.Start, clause.Span.Length)), ("counts", label),
                    ("unused", "repeat"), ("read", Phrasing.Describe(rows))));
                continue;
            }

            bool foot = clause.Feet.Exists(f => !UsesFoot(rows, clause, f));
            bool way = clause.Dir is Meaning dir && clause.IsFigure && !UsesWay(rows, clause, dir.Direction);
            List<PlacedRow> stepped = rows.FindAll(r => !r.IsWith && r.Action.Foot.ToFoot() is not null);
            if (clause.Feet.Count > 1 && clause.Times == 1 && stepped.Count == clause.Feet.Count && !clause.Feet.Exists(f => f.MayBeReference))
            {
                // "full turn: L, R" danced R, L
                foot |= stepped.Where((r, n) => r.Action.Foot.ToFoot() != clause.Feet[n].Foot).Any();
            }

            if (foot || way)
            {
                _unused.Add(clause.Span);
                string words = state.Text.Substring(clause.Span.Start, clause.Span.Length);
                state.Add(ReadingRules.WordsUnused.At(clause.Span, ("words", words), ("counts", label), ("unused", foot ? "foot" : "direction"),
                    ("read", Phrasing.Describe(rows))));
            }
        }
    }

    /// <summary>Words that name something of a move, and nothing that is danced has it.</summary>
    public void Unanswered(List<Term> terms, LineReading best, List<Clause> danced, string label)
    {
        foreach ((Term term, string named) in new WordAccount(terms, best, danced).Unanswered())
        {
            if (_unused.Exists(span => span.Start <= term.Span.Start && span.End >= term.Span.End))
            {
                // asked about already
                continue;
            }

            state.Add(ReadingRules.WordsUnused.At(term.Span, ("words", term.Text), ("counts", label), ("unused", named),
                ("read", Phrasing.Describe(best.Rows))));
        }
    }

    /// <summary>A recover that comes after the recover of a rock, which nobody told twice: "ball rock back R, recover" with the R free.</summary>
    public void RecoverTwice(LineReading best, List<Clause> danced, string label)
    {
        for (int i = 2; i < best.Rows.Count; i++)
        {
            PlacedRow own = best.Rows[i - 1];
            if (best.Rows[i] is { IsWith: false, Action.Kind: ActionKind.Recover } again
                && danced[again.Clause] is { Head.Verb: ActionKind.Recover, Feet.Count: 0 }
                && own is { IsWith: false, Action.Kind: ActionKind.Recover } && own.Clause != again.Clause && own.Clause == best.Rows[i - 2].Clause
                && best.Rows[i - 2].Action.Kind == ActionKind.Rock)
            {
                TextSpan span = danced[again.Clause].Span;
                state.Add(ReadingRules.WordsUnused.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label),
                    ("unused", "second recover"), ("read", Phrasing.Describe(best.Rows))));
            }
        }
    }

    /// <summary>A count that stands in brackets after a move, and on which the move is not danced.</summary>
    public void CountsElsewhere(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places, string label)
    {
        for (int i = 0; i < danced.Count; i++)
        {
            List<PlacedRow> rows = best.Rows.FindAll(r => r.Clause == i && !r.IsWith);
            if (danced[i].Lasts is > 2 and int lasting && rows is [{ Action.Kind: not ActionKind.Hold } only] && places.Count > 0)
            {
                // "shimmy and move to the side over four counts", and only three are left for it
                PlacedRow? after = best.Rows.Find(r => !r.IsWith && r.Place > only.Place);
                Counts end = after?.Place ?? LabelPlaces.EndOf(places.Max(p => p.Place));
                if (end - only.Place != Counts.FromWhole(lasting))
                {
                    TextSpan span = danced[i].Span;
                    state.Add(ReadingRules.WordsUnused.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label),
                        ("unused", "length"), ("read", Phrasing.Describe(rows))));
                }
            }

            if (danced[i].SaidCount is int said && rows.Count > 0 && places.Any(p => p.Number == said)
                && !rows.Exists(r => r.Label == said.ToString(System.Globalization.CultureInfo.InvariantCulture)))
            {
                TextSpan span = danced[i].Span;
                state.Add(ReadingRules.WordsUnused.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label), ("unused", "count"),
                    ("read", Phrasing.Describe(rows))));
            }
        }
    }

    /// <summary>A note on the weight that the reading does not follow: the weight is said to end on a foot, and it ends on the other.</summary>
    public void WeightElsewhere(LineReading best, List<Clause> danced, string label)
    {
        if (!danced.Exists(c => c.WeightNote is TermKind.WeightOn or TermKind.WeightNone) && !best.Rows.Exists(r => r.Action.Kind == ActionKind.Shift))
        {
            return;
        }

        for (int i = 1; i < danced.Count; i++)
        {
            // "swivet left, centre, weight on left": a note beside a remark speaks of where the moves before have brought the weight
            if (danced[i] is { WeightNote: TermKind.WeightOn, WeightFoot: Foot noted } && !best.Rows.Exists(r => r.Clause == i))
            {
                Weight there = best.Rows.Where(r => !r.IsWith && r.Clause < i).Aggregate(state.Weight, (w, r) => r.Action.WeightAfter(w));
                if (there != noted.ToWeight() && there != Weight.Unknown)
                {
                    TextSpan span = danced[i].Span;
                    state.Add(ReadingRules.WordsUnused.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label),
                        ("unused", "weight"), ("read", Phrasing.Describe(best.Rows.FindAll(r => r.Clause < i)))));
                }
            }
        }

        Weight weight = state.Weight;
        for (int at = 0; at < best.Rows.Count; at++)
        {
            PlacedRow row = best.Rows[at];
            if (row is { IsWith: false, Action: { Kind: ActionKind.Shift, Turn.Sign: 0 } } && at > 0
                && danced[row.Clause].HeadText.StartsWith("tak", StringComparison.OrdinalIgnoreCase) && row.Action.Foot.ToFoot() is Foot kept
                && weight == kept.ToWeight())
            {
                // "... and on the last count take the weight on the left", which has it already
                TextSpan taken = danced[row.Clause].Span;
                state.Add(ReadingRules.WordsUnused.At(taken, ("words", state.Text.Substring(taken.Start, taken.Length)), ("counts", label),
                    ("unused", "change of weight"), ("read", Phrasing.Describe(best.Rows.FindAll(r => r.Clause <= row.Clause)))));
            }

            weight = row.IsWith ? weight : row.Action.WeightAfter(weight);
            Clause clause = danced[row.Clause];
            bool lastOfClause = !best.Rows.Skip(at + 1).Any(r => r.Clause == row.Clause);
            if (lastOfClause && ((clause is { WeightNote: TermKind.WeightOn, WeightFoot: Foot on } && weight == on.Other().ToWeight())
                || (clause.WeightNote == TermKind.WeightNone && !row.IsWith && row.Action.Effect == WeightEffect.Takes && clause.Times == 1)))
            {
                string words = state.Text.Substring(clause.Span.Start, clause.Span.Length);
                state.Add(ReadingRules.WordsUnused.At(clause.Span, ("words", words), ("counts", label), ("unused", "weight"),
                    ("read", Phrasing.Describe(best.Rows.FindAll(r => r.Clause == row.Clause)))));
            }
        }
    }

    /// <summary>
    /// "RF behind, LF behind": steps that go behind the other foot, or back, as Dutch, French and Italian writers say it; one foot after the other
    /// crosses behind hardly ever.
    /// </summary>
    public void BehindOrBack(LineReading best, List<Clause> danced, TextSpan whole, IReadOnlyList<LabelPlace> places)
    {
        List<PlacedRow> rows = best.Rows.FindAll(r => !r.IsWith);
        bool follow = false;
        for (int i = 1; i < rows.Count; i++)
        {
            follow |= IsBareBehind(rows[i], danced) && IsBareBehind(rows[i - 1], danced) && rows[i].Action.Foot != rows[i - 1].Action.Foot;
        }

        if (follow)
        {
            string first = Phrasing.Describe(best.Rows);
            string second = string.Join(", ", rows.Select(r => Phrasing.Describe(IsBareBehind(r, danced)
                ? r.Action with { Direction = Direction.Back } : r.Action)));
            state.Add(ReadingRules.TwoReadings.At(whole, ("first", first), ("second", second))
                .OnCount(LabelPlaces.FirstCount(places))
                .WithFixes(
                    new Fix("write " + first, new TextRemedy([new TextEdit(whole, first)]), false),
                    new Fix("write " + second, new TextRemedy([new TextEdit(whole, second)]), false)));
        }
    }

    /// <summary>
    /// "Again out, in" under toes or heels that fan: no foot and no move is named, and one foot that steps out while the other steps in is hardly ever meant.
    /// </summary>
    public void OutThenIn(LineReading best, List<Clause> danced, TextSpan whole, IReadOnlyList<LabelPlace> places)
    {
        List<PlacedRow> rows = best.Rows.FindAll(r => !r.IsWith);
        if (!Enumerable.Range(1, Math.Max(0, rows.Count - 1)).Any(i => IsBare(rows[i - 1], Direction.Out, danced) && IsBare(rows[i], Direction.In, danced)
            && (i < 2 || rows[i - 2].Action.Direction != Direction.Out)))
        {
            // "out, out, in, in" is steps
            return;
        }

        string first = Phrasing.Describe(best.Rows);
        string second = string.Join(", ", rows.Select(r => Phrasing.Describe(IsBare(r, Direction.Out, danced) || IsBare(r, Direction.In, danced)
            ? r.Action with { Kind = ActionKind.SplitHeels, Foot = ActingFoot.Both, Effect = WeightEffect.Shares } : r.Action)));
        state.Add(ReadingRules.TwoReadings.At(whole, ("first", first), ("second", second))
            .OnCount(LabelPlaces.FirstCount(places))
            .WithFixes(
                new Fix("write " + first, new TextRemedy([new TextEdit(whole, first)]), false),
                new Fix("write " + second, new TextRemedy([new TextEdit(whole, second)]), false)));
    }

    private static bool IsBare(PlacedRow row, Direction way, List<Clause> danced)
        => row is { Action: { Kind: ActionKind.Step, Turn.Sign: 0 } action, Clause: >= 0 } && action.Direction == way && row.Clause < danced.Count
            && danced[row.Clause] is { Head: null, DirSide: null, Feet.Count: 0, Amount: null };

    private static bool IsBareBehind(PlacedRow row, List<Clause> danced)
        => row is { Action: { Kind: ActionKind.Step, Direction: Direction.CrossBehind, Turn.Sign: 0 }, Clause: >= 0 } && row.Clause < danced.Count
            && danced[row.Clause] is { Head: null or { Verb: ActionKind.Step }, Reference: null, DirSide: null, Feet.Count: 1, Amount: null } told
            && told.DirText.ToLowerInvariant() is "behind" or "beh" or "bhd" or "bh";

    /// <summary>A slip of the fingers in a name whose counts are not those of the line either: two doubts are one too many.</summary>
    public void SlipAndCounts(LineReading best, List<Clause> danced, IReadOnlyList<LabelPlace> places, string label)
    {
        for (int i = 0; i < danced.Count; i++)
        {
            if (danced[i] is { IsFigure: true, Corrected.Count: > 0, Feet.Count: 0, Dir: null, Detail.Count: 0 }
                && best.Rows.Exists(r => r.Clause == i && !places.Any(p => p.Place == r.Place)))
            {
                TextSpan span = danced[i].Span;
                state.Add(ReadingRules.WordsUnused.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label), ("unused", "rhythm"),
                    ("read", Phrasing.Describe(best.Rows.FindAll(r => r.Clause == i)))));
            }
        }
    }

    /// <summary>A detail that is not danced, because the name it stands with fills the counts, and says something else.</summary>
    public void DetailPassedOver(LineReading best, List<Clause> danced, string label, LineSearch search)
    {
        for (int i = 0; i < danced.Count; i++)
        {
            Clause clause = danced[i];
            bool tellsMoves = clause.Detail.Count(d => d is { HasContent: true, IsAmp: false, IsFeetOnly: false }) > 1;
            if (tellsMoves && best.Rows.Exists(r => r.Clause == i) && !search.AgreesWithDetail(best, i, clause))
            {
                TextSpan span = TextSpan.FromBounds(clause.Detail.Min(d => d.Start < 0 ? int.MaxValue : d.Start), clause.Detail.Max(d => d.End));
                state.Add(ReadingRules.MoveLeftOut.At(span, ("words", state.Text.Substring(span.Start, span.Length)), ("counts", label)));
            }
        }
    }

    /// <summary>Tells which words were taken for remarks, so that a move lost among them is seen.</summary>
    public bool LeftOut(List<Clause> clauses, List<Clause> danced, List<(Clause Figure, int From, int To)> figures, LineReading best, TextSpan whole,
        string label)
    {
        List<Clause> left = [];
        if (figures.Count == 0 && danced.Count < clauses.Count)
        {
            // a clause may have been copied with a note on it: its place in the text tells which it is
            left.AddRange(clauses.Where(c => c.HasContent && !c.IsAmp && !danced.Exists(d => d.Start == c.Start && d.End == c.End)));
        }

        for (int i = 0; i < danced.Count; i++)
        {
            if (danced[i].HasContent && !danced[i].IsAmp && !danced[i].IsTurnOnly && !danced[i].IsSpiral && !best.Rows.Exists(r => r.Clause == i))
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

    // A remark on weight, hips or knees may be passed over with a hint; a turn or a foot that acts may not.
    private static bool IsMoveOfItsOwn(Clause clause) => !clause.SaysEach && !clause.SaysFinish
        && (clause.Amount is not null || (clause.HasTurnWord && clause.TurnSide is not null)
            || clause is { IsFeetOnly: true, Link: Link.Amp or Link.Soft, IsWith: false, WeightNote: null, HasStyle: false }
            || clause.Head is { Verb: ActionKind.Step, Special: not "walk" } && clause.Feet.Count == 1
            || clause.Head is
            {
                Verb: ActionKind.Rock or ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Kick or ActionKind.Hook
                or ActionKind.Flick or ActionKind.Stomp or ActionKind.Jump or ActionKind.Hop or ActionKind.Leap or ActionKind.Pivot
                or ActionKind.Unwind
            }
            || clause.Head is
            {
                Verb: null,
                Figures: [
                {
                    Rows: [
                    {
                        Action.Kind: ActionKind.Touch or ActionKind.Dig or ActionKind.Point or ActionKind.Kick or ActionKind.Hook
                or ActionKind.Stomp or ActionKind.Step
                    }]
                }, ..]
            }
            || (clause is { Link: not Link.None, Head.Verb: ActionKind.Drop } && NamesHeelOrToe(clause.HeadText)));

    private static bool NamesHeelOrToe(string words) => words.Contains("heel", StringComparison.OrdinalIgnoreCase)
        || words.Contains("toe", StringComparison.OrdinalIgnoreCase);

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
        => (at > 0 && danced[at].Link == Link.None && IsPart(danced[at - 1]))
            || (at + 1 < danced.Count && danced[at].LinkAfter == Link.None && IsPart(danced[at + 1]));

    private static bool IsPart(Clause clause) => clause.Part.Length > 0
        || clause.Head?.Verb is ActionKind.PopKnee or ActionKind.RollKnee or ActionKind.Hitch or ActionKind.SwivelHeels or ActionKind.SwivelToes
            or ActionKind.FanToe or ActionKind.FanHeel
        || clause.Head?.Figures is [
        {
            Rows: [
            {
                Action.Kind: ActionKind.PopKnee or ActionKind.RollKnee or ActionKind.SplitToes
            or ActionKind.SplitHeels or ActionKind.FanToe or ActionKind.FanHeel
            }, ..]
        }, ..];

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
        Direction family = FigureComparison.Family(way);
        bool told = way is Direction.Forward or Direction.Back or Direction.CrossFront or Direction.CrossBehind or Direction.LockBehind
            or Direction.LockFront || (way == Direction.Side && clause.DirSide is null);
        Direction across = way == Direction.Forward ? Direction.CrossFront : way == Direction.Back ? Direction.CrossBehind : family;
        return !told || rows.Exists(r => FigureComparison.Family(r.Action.Direction) == family
            || FigureComparison.Family(r.Action.Direction) == across || r.Action.Turn.Sign != 0 || r.Action.Direction == Direction.Unstated
            || r.Action.Foot is ActingFoot.Both
            || (r.Action.Foot is ActingFoot.None && r.Action.Kind is not (ActionKind.Hold or ActionKind.Clap or ActionKind.Snap)));
    }
}
