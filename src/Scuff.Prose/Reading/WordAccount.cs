using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// Goes through the words of a line once more when it has been read, and finds those that name something of a move (a foot, a place, a turn,
/// the move itself) which nothing that is danced has. A reader that passes such a word over in silence reads wrong.
/// </summary>
internal sealed class WordAccount(List<Term> terms, LineReading best, List<Clause> danced)
{
    /// <summary>The words that nothing answers to, with what they name ("foot", "direction", "turn", "move").</summary>
    public List<(Term Term, string Named)> Unanswered()
    {
        List<(Term, string)> found = [];
        for (int at = 0; at < terms.Count; at++)
        {
            if (Named(terms[at]) is not string named)
            {
                continue;
            }

            (List<Clause> owners, List<PlacedRow> rows) = Around(terms[at]);
            bool ofDetail = owners.Exists(c => c.Detail.Exists(d => Covers(d, terms[at])));
            if (IsStyling(at) || (ofDetail && (GestureOf(terms[at].Meaning.Verb) is not ActionKind gesture
                || rows.Exists(r => GestureOf(r.Action.Kind) == gesture))))
            {
                // a remark, or the detail of a name; but a vine whose detail ends in a scuff is not danced with its customary touch
                continue;
            }

            if (rows.Count == 0)
            {
                bool looks = IsFront(terms[at]) && FigureComparison.Family(terms[at].Meaning.Direction) is not Direction.CrossFront;
                if (named == "foot" || looks || IsReplaced(at)
                    || (at > 0 && terms[at - 1].Text.StartsWith("clos", StringComparison.OrdinalIgnoreCase)))
                {
                    // "with the weight still on your left", "facing the front", "scuff instead of touch", "close behind"
                    continue;
                }

                // outside of all that is danced: a name that its detail stands for, which something of the line must bear out
                rows = best.Rows;
            }

            if (!IsAnswered(terms[at], at, owners, rows))
            {
                found.Add((terms[at], named));
            }
        }

        return found;
    }

    // what a foot does in the air or on the floor, where one word may stand for its kin: a brush is as good as a scuff
    private static ActionKind? GestureOf(ActionKind? kind) => kind switch
    {
        ActionKind.Scuff or ActionKind.Brush => ActionKind.Scuff,
        ActionKind.Kick or ActionKind.Flick => ActionKind.Kick,
        ActionKind.Hitch or ActionKind.Hook => ActionKind.Hitch,
        ActionKind.Stomp => ActionKind.Stomp,
        _ => null,
    };

    private static string? Named(Term term) => term.Kind switch
    {
        TermKind.Foot or TermKind.Side or TermKind.Lead => "foot",
        TermKind.Dir => "direction",
        TermKind.Amount => "turn",
        TermKind.Move => "move",
        TermKind.Times => "number of times",
        _ => null,
    };

    /// <summary>The moves a word stands among: that whose words it is one of, and where that is not danced by itself, those beside it.</summary>
    private (List<Clause> Owners, List<PlacedRow> Rows) Around(Term term)
    {
        List<Clause> owners = [];
        List<PlacedRow> rows = [];
        for (int i = 0; i < danced.Count; i++)
        {
            Clause clause = danced[i];
            if (clause.IsAmp || !Covers(clause, term))
            {
                continue;
            }

            owners.Add(clause);
            List<PlacedRow> own = best.Rows.FindAll(r => r.Clause == i);
            if (clause.SaysCircle)
            {
                own = best.Rows;
            }
            else if (own.Count == 0 || clause.IsTurnOnly)
            {
                own = [.. own, .. best.Rows.FindAll(r => Math.Abs(r.Clause - i) <= 2)];
            }

            rows.AddRange(own);
        }

        return (owners, rows);
    }

    private bool IsReplaced(int at)
    {
        int before = at - 1;
        while (before >= 0 && terms[before].Kind is TermKind.Filler && !terms[before].Text.StartsWith("instead", StringComparison.OrdinalIgnoreCase))
        {
            before--;
        }

        return before >= 0 && terms[before].Text.StartsWith("instead", StringComparison.OrdinalIgnoreCase);
    }

    private static bool Covers(Clause clause, Term term) => clause.Start <= term.Span.Start && clause.End >= term.Span.End;

    /// <summary>Whether a word belongs to a remark on arms, looks or the body: "left arm", "angling body left", "looking front", "lift L slightly".</summary>
    private bool IsStyling(int at)
    {
        int before = at - 1;
        while (before >= 0 && terms[before].Kind is TermKind.Filler && !terms[before].Text.StartsWith("leav", StringComparison.OrdinalIgnoreCase))
        {
            before--;
        }

        bool stays = at + 1 < terms.Count && terms[at + 1].Text.Contains("free", StringComparison.OrdinalIgnoreCase);
        int open = terms.FindLastIndex(at, t => t.Kind is TermKind.Open or TermKind.Close);
        int close = terms.FindIndex(at, t => t.Kind is TermKind.Close);
        bool tellsFree = open >= 0 && close > at && terms[open].Kind is TermKind.Open
            && terms.GetRange(open, close - open).Exists(t => t.Text.EndsWith("free", StringComparison.OrdinalIgnoreCase));
        return stays || tellsFree || (at + 1 < terms.Count && (terms[at + 1].Kind is TermKind.Style || ClauseBuilder.IsSidedArm(terms[at + 1])))
            || (before >= 0 && (terms[before].Kind is TermKind.Style or TermKind.Filler || terms[before] is
            {
                Kind: TermKind.Part, Meaning.Part: "body"
            or "shoulder"
            }));
    }

    private bool IsAnswered(Term term, int at, List<Clause> owners, List<PlacedRow> rows) => term.Kind switch
    {
        TermKind.Foot or TermKind.Side or TermKind.Lead => HasFoot(term.Meaning.Side!.Value, owners, rows),
        TermKind.Dir => HasWay(term, owners, rows),
        TermKind.Amount when owners.Exists(c => c.Head?.Verb is ActionKind.Sweep or ActionKind.Ronde or ActionKind.RollKnee) => true,
        TermKind.Amount => HasTurn(term.Meaning.Value, owners, rows),
        TermKind.Move => HasMove(term, owners, rows),
        TermKind.Times => IsDoneSoOften(term),
        _ => true,
    };

    // "1&2 kick ball change twice": a name of several steps is danced more than once where the words say so
    private bool IsDoneSoOften(Term term)
    {
        int owner = danced.FindLastIndex(c => c.Start < term.Span.Start);
        return owner < 0 || danced[owner] is not { IsFigure: true, TimesStated: true, Times: > 1, Detail.Count: 0 } often
            || often.Head!.Figures[0].Rows.Count < 2 || best.Rows.Count(r => r.Clause == owner) > often.Head.Figures[0].Rows.Count;
    }

    private static bool HasFoot(Foot foot, List<Clause> owners, List<PlacedRow> rows)
    {
        Direction way = foot == Foot.Right ? Direction.Right : Direction.Left;
        int sign = foot == Foot.Right ? 1 : -1;
        return owners.Exists(c => c.Reference == foot || c.WeightFoot == foot || (c.DirSide == foot && c.Diagonal)
                || c.Feet.Exists(f => f.Foot == foot && f.MayBeReference))
            || rows.Exists(r => r.Action.Foot.ToFoot() == foot || (r.Action.Direction == way && r.Action.Kind != ActionKind.Bounce)
            || r.Action.Turn.Sign == sign
                || (r.Action.Foot == ActingFoot.Both && r.Action.Kind != ActionKind.Bounce) || r.Action.Foot == ActingFoot.None
                || (r.Action.Foot.ToFoot() == foot.Other() && r.Action.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together
                    or Direction.LockBehind or Direction.LockFront or Direction.Across or Direction.Behind));
    }

    private static bool HasWay(Term term, List<Clause> owners, List<PlacedRow> rows)
    {
        Direction way = FigureComparison.Family(term.Meaning.Direction);
        bool told = way is Direction.Forward or Direction.Back or Direction.CrossFront or Direction.CrossBehind or Direction.Side;
        bool closesBehind = way is Direction.CrossBehind && owners.Exists(c => c is { Dir.Direction: Direction.Together, Reference: not null, Size: < 0 });
        closesBehind |= way is Direction.CrossBehind && owners.Exists(c => c is
        {
            Dir.Direction: Direction.Back, Reference: null, Head: null
            or { Verb: ActionKind.Step }
        });
        return !told || closesBehind || term.Text.Equals("over", StringComparison.OrdinalIgnoreCase)
            || rows.Exists(r => r.Action.Turn.Sign != 0 || r.Action.Foot is ActingFoot.Both
                || (r.Action.Foot is ActingFoot.None && r.Action.Kind is not (ActionKind.Hold or ActionKind.Clap or ActionKind.Snap))
                || (term.Meaning.Side is Foot foot && r.Action.Foot.ToFoot() == foot) || Suits(r.Action, way, term));
    }

    /// <summary>Whether a place that is danced can be what a word for a place means.</summary>
    private static bool Suits(StepAction action, Direction way, Term term)
    {
        Direction danced = FigureComparison.Family(action.Direction);
        bool sided = action.Direction is Direction.Side or Direction.Left or Direction.Right;
        return danced == way || danced == Direction.Unstated
            || action.Kind is ActionKind.Recover or ActionKind.Shift or ActionKind.Sway or ActionKind.Hold or ActionKind.Pivot or ActionKind.Unwind
            || way switch
            {
                // "back beside", "bring back next to"; "cross" may be in front or behind; a diagonal lies forward or back
                Direction.Forward => danced is Direction.CrossFront or Direction.Up || term.Meaning.Special == "diag"
                    || (IsFront(term) && action.Kind is ActionKind.Hitch or ActionKind.Sweep),
                Direction.Back => danced is Direction.CrossBehind or Direction.InPlace
                    || (danced is Direction.CrossFront && action.Effect == WeightEffect.Keeps),
                Direction.CrossFront => (danced is Direction.CrossBehind && !IsFront(term)) || term.Meaning.Special == "lock",
                Direction.CrossBehind => danced is Direction.CrossFront && term.Meaning.Special == "lock",
                Direction.Side => sided || danced is Direction.InPlace || action.Kind is ActionKind.Drag or ActionKind.Slide,
                _ => false,
            };
    }

    private static bool IsFront(Term term) => term.Text.Contains("front", StringComparison.OrdinalIgnoreCase);

    private static bool HasTurn(int eighths, List<Clause> owners, List<PlacedRow> rows)
    {
        Turn right = Turn.None;
        Turn left = Turn.None;
        foreach (PlacedRow row in rows.Distinct())
        {
            right += row.Action.Turn.Sign > 0 ? row.Action.Turn : Turn.None;
            left += row.Action.Turn.Sign < 0 ? row.Action.Turn : Turn.None;
        }

        // without a direction no turn is taken, and that is asked about
        bool unsure = owners.Exists(c => c.TurnSide is null && c.TurnTo is null) || rows.Exists(r => r.Variant is { TurnDirectionMissing: true });
        // "half a turn over two steps": a part of it on each
        unsure |= owners.Exists(c => c.OverSteps > 1);
        unsure |= rows.Exists(r => r.Action.Kind is ActionKind.RollHips or ActionKind.RollKnee or ActionKind.RollBody);
        return unsure || Math.Max(right.Amount.Floor, left.Amount.Floor) >= eighths || owners.Exists(c => c.Part.Length > 0);
    }

    private static bool HasMove(Term term, List<Clause> owners, List<PlacedRow> rows)
    {
        ActionKind? verb = term.Meaning.Verb;
        bool acts = verb is ActionKind.Kick or ActionKind.Hook or ActionKind.Flick or ActionKind.Hitch or ActionKind.Stomp or ActionKind.Hop
            or ActionKind.Jump or ActionKind.Scuff or ActionKind.Brush or ActionKind.Touch or ActionKind.Tap or ActionKind.Point
            or ActionKind.Dig or ActionKind.Rock or ActionKind.Press or ActionKind.Lunge;
        return !acts || owners.Exists(c => c.HeadText == term.Text || (c.Held is not null && c.Held == verb) || (c.IsSpiral && verb is ActionKind.Hook))
            || rows.Exists(r => r.Action.Kind == verb || (verb is ActionKind.Dig && r.Action.Kind is ActionKind.Grind)
                // "RF back (rock back), recover on LF"
                || (verb is ActionKind.Rock && r.Action.Kind is ActionKind.Recover));
    }
}
