using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>Holds the name of a figure against the detail that is written with it.</summary>
internal sealed class FigureComparison(ReaderState state)
{
    /// <summary>Holds the name of a figure against its detail.</summary>
    public void Compare(List<(Clause Figure, int From, int To)> figures, LineReading best, List<Clause> danced)
    {
        foreach ((Clause figure, int from, int to) in figures)
        {
            if (figure.Head is not { Figures.Count: > 0 } head)
            {
                continue;
            }

            List<StepAction> detail = DetailOf(best, from, to);
            Foot? stated = figure.Feet.Count > 0 ? figure.Feet[0].Foot : figure.DirSide;
            if (figure.Feet is [{ IsCertain: false } side] && head.Figures.All(f => f.Rows.Count > 2 && f.Rows.All(r => r.Action.Turn.Sign != 0))
                && detail.TrueForAll(a => a.Turn.Sign == 0 || a.Turn.Sign > 0 == (side.Foot == Foot.Right)) && detail.Exists(a => a.Turn.Sign != 0))
            {
                // "walk around left: 1/4 left R forward, ...": the way round, not the foot
                stated = null;
            }

            (bool anyLike, bool anyMirrored) = Likeness(figure, head, stated, detail);
            bool turnLost = detail.Count > 1 && head.Figures.All(f => f.TotalTurn.Sign != 0) && detail.TrueForAll(a => a.Turn.Sign == 0);
            bool otherwise = TurnsOtherwise(figure, detail) || GoesOtherwise(figure, detail) || BeginsOtherwise(figure, head.Figures, detail);
            if ((anyLike && !turnLost && !otherwise) || detail.Count == 0 || (!otherwise && head.Figures.All(f => f.Rows.Count < 2))
                || (!anyMirrored && !otherwise && IsOtherReading(head.Figures, detail)))
            {
                continue;
            }

            string name = state.Text.Substring(figure.Span.Start,
                Math.Min(figure.Span.Length, Math.Max(0, state.Text.IndexOf('(', figure.Span.Start) is int open and > 0 ? open - figure.Span.Start
                : figure.Span.Length))).Trim();
            TextSpan span = figure.Span;
            if (otherwise)
            {
                // "jazz box 1/4 right: ... step L back turning 1/4 left", "shuffle back: step R forward, ..."
                state.Add(ReadingRules.FigureDetailDiffers.At(span, ("name", name)));
            }
            else if (turnLost)
            {
                // "monterey R: point R, close R, point L, close L": where is the turn
                state.Add(ReadingRules.FigureDetailDiffers.At(span, ("name", name)));
            }
            else if (anyMirrored || FirstFootDiffers(head.Figures, stated, detail))
            {
                state.Add(ReadingRules.FigureFootDiffers.At(span, ("name", name)));
            }
            else if (!SameFeet(head.Figures, detail) && !IsOtherReading(head.Figures, detail))
            {
                state.Add(ReadingRules.FigureDetailDiffers.At(span, ("name", name)));
            }
        }
    }

    /// <summary>Whether the name says how far it turns and the detail turns otherwise; a figure danced again and again turns as often.</summary>
    private static bool TurnsOtherwise(Clause figure, List<StepAction> detail)
    {
        if (figure is not { Amount: int amount and > 0, TurnSide: Foot side } || !detail.Exists(a => a.Turn.Sign != 0))
        {
            return false;
        }

        Turn sum = detail.Aggregate(Turn.None, (t, a) => t + a.Turn);
        Turn said = Turn.FromEighths(side == Foot.Right ? amount : -amount);
        return sum != said && !Enumerable.Range(2, 7).Any(n => sum == Turn.FromEighths((side == Foot.Right ? amount : -amount) * n));
    }

    /// <summary>Whether the name goes forward or back, and the detail only the other way or aside.</summary>
    private static bool GoesOtherwise(Clause figure, List<StepAction> detail)
        => figure.Dir is { Direction: Direction.Forward or Direction.Back } way && !figure.Diagonal && detail.TrueForAll(a => a.Turn.Sign == 0)
            && detail.TrueForAll(a => a.Direction != Direction.Unstated && Family(a.Direction) != way.Direction)
            && detail.Exists(a => Family(a.Direction) is Direction.Forward or Direction.Back or Direction.Side);

    /// <summary>Whether every use of the name begins forward and the detail back, or the other way: "shuffle back: step R forward, ...".</summary>
    private static bool BeginsOtherwise(Clause figure, ValueList<StepDefinition> figures, List<StepAction> detail)
        => figure.Dir is null
            && figure.HeadText.Split(' ', '-').Any(w => w.ToLowerInvariant() is "back" or "backward" or "backwards" or "bk" or "forward" or "fwd")
            && detail.Count > 1 && detail[0].Turn.Sign == 0 && Family(detail[0].Direction) is Direction.Forward or Direction.Back
            && figures.All(f => f.Rows[0].Action.Turn.Sign == 0 && Family(f.Rows[0].Action.Direction) is Direction.Forward or Direction.Back
                && Family(f.Rows[0].Action.Direction) != Family(detail[0].Direction)
                && f.Others.Count == 0);

    private static List<StepAction> DetailOf(LineReading reading, int from, int to)
        => reading.Rows.Where(r => r.Clause >= from && r.Clause < to && !r.IsWith && r.Action.Kind is not (ActionKind.Hold or ActionKind.Clap
            or ActionKind.Snap)).Select(r => r.Action).ToList();

    public bool IsDetailOf((Clause Figure, int From, int To) told, LineReading reading)
        => told.Figure.Head is not { Figures.Count: > 0 } head
            || Likeness(told.Figure, head, told.Figure.Feet.Count > 0 ? told.Figure.Feet[0].Foot
            : told.Figure.DirSide, DetailOf(reading, told.From, told.To)).Any;

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

                    bool side = stated is null || (figure.Feet.Count == 0 && form.NamedBy != NamedBy.Travel && !VariantParts.BeginsAside(form))
                        || form.NamedBy == NamedBy.None
                        || named == stated || figure.Feet.Count > 1;
                    anyLike |= side;
                    anyMirrored |= !side;
                }
            }
        }

        return (anyLike, anyMirrored);
    }

    /// <summary>Whether the detail is one of the other things that the name is known to be used for: which of them is meant is then no question.</summary>
    private bool IsOtherReading(ValueList<StepDefinition> figures, List<StepAction> detail)
    {
        foreach (OtherReading other in figures.SelectMany(f => f.Others))
        {
            List<PatternRow> rows = other.Id is string id && state.Lexicon.Catalogue.Find(id) is StepDefinition form ? [.. form.Rows] : [.. other.Rows];
            foreach (Foot named in (ReadOnlySpan<Foot>)[Foot.Right, Foot.Left])
            {
                List<StepAction> actions = rows.FindAll(r => r.Action.Kind != ActionKind.Hold).ConvertAll(r => r.For(named));
                int finish = rows.Count > 0 && rows[^1].IsFinish && detail.Count == actions.Count - 1 ? 1 : 0;
                int once = actions.Count - finish;
                if (detail.Count > 2 && detail.Count * 2 == actions.Count && Enumerable.Range(0, 2).Any(half => Enumerable.Range(0, detail.Count).All(i =>
                    detail[i].Foot == actions[(half * detail.Count) + i].Foot && SamePlace(detail[i], actions[(half * detail.Count) + i]))))
                {
                    // half of it: "the box: side R, close L, forward R, hold"
                    return true;
                }

                // once, or again and again; one place of many may differ
                if (once > 0 && detail.Count % once == 0 && Enumerable.Range(0, detail.Count).All(i => detail[i].Foot == actions[i % once].Foot)
                    && Enumerable.Range(0, detail.Count).Count(i => !SamePlace(detail[i], actions[i % once])) <= (once > 2 ? 1 : 0))
                {
                    return true;
                }
            }
        }

        return false;
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
            if (first is not null && figure.NamedBy is NamedBy.FirstFoot or NamedBy.ActingFoot && detail[0].Foot.ToFoot() is Foot foot
                && first.For(stated.Value).Foot.ToFoot() != foot && !(first.Foot is RelativeFoot.Other && foot == stated))
            {
                // but "polka R: R forward, L together, R forward, hop on R" is named by its first step

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
        if (detail.Count == definition.Rows.Count && detail.Count > rows.Count)
        {
            // "rumba box: R side, L together, R forward, touch L, ...": a touch where the name holds
            detail = [.. detail.Where((action, i) => definition.Rows[i].Action.Kind != ActionKind.Hold || action.Effect != WeightEffect.Keeps)];
        }

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

    public static Direction Family(Direction direction) => direction switch
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
}
