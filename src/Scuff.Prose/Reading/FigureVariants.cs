using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>The ways to dance a figure that a clause names.</summary>
internal sealed class FigureVariants(Lexicon lexicon, bool isWaltz)
{
    /// <summary>The clause after it, or null.</summary>
    public Clause? Next { get; set; }

    /// <summary>Whether the recover of a rock is written out after it.</summary>
    public bool RecoverFollows { get; set; }

    /// <summary>A figure of the catalogue, on the feet, the way and the turn that the clause gives it.</summary>
    public void AddFigure(List<Variant> variants, Clause clause, StepDefinition original, Situation situation, double cost = 0)
    {
        Direction stated = clause.Dir?.Direction ?? Direction.Unstated;
        if (VariantParts.IsStepAndPivot(original) && clause is { Feet.Count: 0, Amount: null, TurnSide: Foot lead } && !clause.Head!.NamesAmount
            && situation.Weight.FreeFoot() == lead)
        {
            // "military turn R" with the right free: R steps, and the turn goes away from it
            clause = clause.Copy(mirrored: false);
            clause.Feet.Add(new FootWord(lead, false, false));
            clause.TurnSide = null;
        }

        if (WayByCross(clause, stated) is Foot onward)
        {
            if (!CrossesFirst(original, stated))
            {
                return;
            }

            // "weave R over L": named by the way it goes, and told by the foot that crosses
            clause = clause.Copy(mirrored: false);
            clause.Feet.Clear();
            clause.DirSide = onward;
        }

        original = WayOf(original, stated);
        if (clause.Head!.Figures.Count > 1)
        {
            bool cued = CueMatches(original, clause, stated);
            bool anyCued = clause.Head.Figures.Any(f => CueMatches(f, clause, stated));
            if (anyCued ? !cued : !(original.IsDefaultOfName || original.Cues.Count == 0))
            {
                cost += anyCued ? 0.8 : 0.5;
            }
        }

        // right and left
        List<(Foot Side, bool Certain)> sides = [];
        foreach (FootWord word in clause.Feet)
        {
            bool stands = word.MayBeReference && clause.Reference is null && clause.Feet.Count == 1 && situation.Weight.StandingFoot() == word.Foot
                && FirstRule(original) == FootRule.Free;
            sides.Add(stands ? (word.Foot.Other(), false) : (word.Foot, word.IsCertain));
        }

        if (LandsCrossed(original))
        {
            if (sides is [(Foot back, bool sure)] && stated is Direction.CrossBehind or Direction.Behind)
            {
                // "jump cross L behind R": the figure is named by the foot in front
                sides[0] = (back.Other(), sure);
            }
            else if (sides.Count == 0 && Next is { Head.Verb: ActionKind.Unwind, TurnSide: Foot round })
            {
                // "jump cross, unwind 1/2 left": only with the right in front do the legs come apart that way
                sides.Add((round.Other(), true));
            }
        }
        else if (sides.Count == 0 && clause.TurnSide is Foot round && original.Rows.Any(r => r.Action.FootInFront is not null))
        {
            // "jump out, cross, unwind 1/2 right" as one figure: the turn tells it too
            sides.Add((round.Other(), true));
        }

        Foot? travel = clause.DirSide;
        Foot? turnSide = clause.TurnSide;
        List<(Foot? Named, double Cost, bool IsNamed, bool AsFeetList)> choices = [];
        bool mirrorless = original.NamedBy == NamedBy.None && original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both);
        if (mirrorless)
        {
            choices.Add((Foot.Right, 0, true, false));
        }
        else if (sides.Count == 2 && sides[0].Side != sides[1].Side && original.Rows.Count > 2
            && original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both))
        {
            // "applejacks R, L": the figure itself goes to both sides
            choices.Add((sides[0].Side, 0, true, false));
            sides.RemoveAt(1);
        }
        else if (clause.Times == 1 && sides.Count == 4 && sides[0].Side == sides[2].Side && sides[1].Side == sides[3].Side
            && sides[0].Side != sides[1].Side && original.Rows.Count > 2 && original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both))
        {
            // "applejacks L, R, L, R": twice to both sides
            clause.Times = 2;
            choices.Add((sides[0].Side, 0, true, false));
        }
        else if (original.NamedBy is NamedBy.Travel or NamedBy.Turn)
        {
            if (original is { NamedBy: NamedBy.Turn, Rows.Count: 1 } && turnSide is null && clause is { FootFirst: false, Dir.Direction: Direction.Side }
                && (clause.Amount is not null || clause.Head.NamesAmount)
                && travel is Foot aside && sides is [(Foot about, false)] && about != aside)
            {
                // "half hinge left to R side": the way round, and where the foot goes that the turn leaves free
                clause = clause.Copy(mirrored: false);
                clause.TurnSide = about;
                turnSide = about;
                clause.Feet[0] = new FootWord(aside, false, false);
                travel = null;
            }

            Foot? way = travel ?? (original.NamedBy == NamedBy.Turn && turnSide is not null ? turnSide : sides.Count == 1 ? sides[0].Side : null);
            if (way is null && sides.Count > 1 && FeetFit(original, sides) is Foot fit)
            {
                way = fit;
            }

            bool bothWays = way is null && original.NamedBy == NamedBy.Travel && sides.Count > 1 && sides[0].Side != sides[1].Side
                && !clause.HeadText.Contains(" touch", StringComparison.OrdinalIgnoreCase)
                && (Next is null || (Next.Link is Link.Hard && Next.Feet.Count > 0));
            if (bothWays)
            {
                // "vine R and L": both are told, so that one of them alone is never what is meant
                AddEachFoot(variants, clause, original, sides, cost, situation);
                return;
            }

            if (way is Foot named)
            {
                choices.Add((named, 0, true, false));
            }
        }
        else if (sides.Count == 4 && sides[0].Side == sides[2].Side && sides[1].Side == sides[3].Side && sides[0].Side != sides[1].Side
            && FeetFit(original, sides.GetRange(0, 2)) is Foot twice && clause.Times == 1)
        {
            // "heel switches R, L, R, L": the figure twice
            clause.Times = 2;
            choices.Add((twice, 0, true, false));
        }
        else if (sides.Count >= 1)
        {
            if (sides.Count > 1 && FeetFit(original, sides) is Foot fit)
            {
                choices.Add((fit, 0, true, false));
            }
            else if (sides.Count == 1 || sides.All(s => s.Side == sides[0].Side))
            {
                choices.Add((sides[0].Side, 0, true, false));
            }
            else
            {
                // "shuffle forward R, L" is two shuffles
                AddEachFoot(variants, clause, original, sides, cost, situation);
                return;
            }
        }
        else if (travel is Foot way)
        {
            // "shuffle to the right": the foot of that side, if it is free
            Foot? free = situation.Weight.FreeFoot();
            if (original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both))
            {
                // "swivet to the left": no foot has to be free
                free = null;
            }

            if (free != way && !clause.Diagonal && VariantParts.BeginsAside(original))
            {
                // "chasse to the left" with the left standing: the way is said, so that somebody has to ask
                free = null;
            }

            choices.Add((free is null || FirstActing(original) == RelativeFoot.Same ? (free ?? way) : way, 0, free is null, false));
        }

        if (choices.Count == 0)
        {
            Foot? next = VariantParts.NextFoot(situation);
            Foot named = next ?? Foot.Right;
            bool first = FirstActing(original) != RelativeFoot.Other;
            bool standing = FirstRule(original) == FootRule.Standing;
            Foot sideOfFirst = standing ? named.Other() : named;
            choices.Add((first ? sideOfFirst : sideOfFirst.Other(), next is null ? 0.05 : 0, false, false));

            // a turn's side alone may tell: "pivot 1/2 left" is a step of the right
            if (original.NamedBy == NamedBy.FirstFoot && turnSide is Foot toSide && next is null && original.TotalTurn.Sign != 0)
            {
                bool away = original.TotalTurn.Sign < 0;
                choices[0] = (away ? toSide.Other() : toSide, 0, true, false);
            }
        }

        foreach ((Foot? named, double extra, bool isNamed, _) in choices)
        {
            AddFigureNamed(variants, clause, original, named!.Value, cost + extra, isNamed, situation);
        }

        // several ways, each with the figure: "vine R, L"
        if (original.NamedBy is NamedBy.Travel && sides.Count > 1 && FeetFit(original, sides) is null)
        {
            AddEachFoot(variants, clause, original, sides, cost, situation);
        }

    }

    /// <summary>"Waltz half turn R back": the entry of the same name that goes the stated way, when the bare name goes the other.</summary>
    private StepDefinition WayOf(StepDefinition definition, Direction stated)
    {
        Direction own = definition.Rows[0].Action.Direction;
        if (definition.Rows.Count < 2 || (own, stated) is not ((Direction.Forward or Direction.Side, Direction.Back)
            or (Direction.Back or Direction.Side, Direction.Forward)))
        {
            return definition;
        }

        string way = stated == Direction.Back ? " back" : " forward";
        if (own == Direction.Side)
        {
            // "chassé forward": the sideways figure has a sister that goes on
            List<string> names = [.. definition.Aliases.Prepend(definition.Name).Select(n => n + way)];
            return lexicon.Catalogue.Definitions.FirstOrDefault(d => d.Rows.Count == definition.Rows.Count && d.Rows[0].Action.Direction == stated
                && (names.Contains(d.Name) || d.Aliases.Any(names.Contains))) ?? definition;
        }

        string name = definition.Name + way;
        return lexicon.Catalogue.Definitions.FirstOrDefault(d => d.Name == name || d.Aliases.Contains(name)) ?? definition;
    }

    /// <summary>Whether a figure that is named by the way it goes begins with the other foot, crossing there.</summary>
    internal static bool CrossesFirst(StepDefinition definition, Direction where) => definition is { NamedBy: NamedBy.Travel, Rows.Count: > 2 }
        && definition.Rows[0].Foot is RelativeFoot.Other && definition.Rows[0].Action.Direction == where;

    /// <summary>
    /// The way that a figure goes whose clause tells how it begins, with a foot that crosses the other ("weave R over L"); null for any other:
    /// a weave behind R goes right.
    /// </summary>
    private static Foot? WayByCross(Clause clause, Direction stated)
    {
        if (stated is not (Direction.CrossFront or Direction.CrossBehind) || clause is not { Feet: [{ Foot: Foot crossing }], DirFirst: false, Times: 1 }
            || !clause.Head!.Figures.Any(f => CrossesFirst(f, stated)))
        {
            return null;
        }

        Foot onward = crossing.Other();
        return (clause.DirSide ?? onward) == onward && clause.Reference == onward ? onward : null;
    }

    /// <summary>"1/4 right chassé right": both the turn and the figure behind it say their side.</summary>
    private static bool SaysOwnSide(Clause clause)
        => clause is { TurnFirst: true, FootFirst: false, TurnSide: not null } && (clause.Feet.Count > 0 || clause.DirSide is not null);

    /// <summary>Whether it is one jump onto both feet, crossed.</summary>
    private static bool LandsCrossed(StepDefinition definition)
        => definition.NamedBy == NamedBy.ActingFoot && definition.Rows is [{ Action.FootInFront: not null }];

    private bool CueMatches(StepDefinition definition, Clause clause, Direction stated)
    {
        foreach (string cue in definition.Cues)
        {
            bool match = cue switch
            {
                "forward" => stated == Direction.Forward,
                "back" => stated == Direction.Back,
                "side" => stated == Direction.Side || clause is { DirSide: not null, Diagonal: false },
                "cross" or "cross-front" or "across" => stated == Direction.CrossFront,
                "behind" or "cross-behind" => stated == Direction.CrossBehind,
                "in place" or "in-place" => stated is Direction.InPlace or Direction.Together,
                "diagonal" or "diag" or "diag-forward" => clause.Diagonal,
                "waltz" => isWaltz || clause.SaysWaltz,
                _ => false,
            };
            match |= cue.Length > 3 && stated == Direction.Unstated && clause.HeadText.Contains(cue, StringComparison.OrdinalIgnoreCase);
            if (match)
            {
                return true;
            }
        }

        return false;
    }

    private static RelativeFoot FirstActing(StepDefinition definition)
    {
        foreach (PatternRow row in definition.Rows)
        {
            if (row.Foot is RelativeFoot.Same or RelativeFoot.Other)
            {
                return row.Foot;
            }
        }

        return RelativeFoot.Same;
    }

    // who bends the knees stands where she stood
    private static FootRule FirstRule(StepDefinition definition)
        => definition is { NamedBy: NamedBy.StandingFoot, Rows: [{ Foot: RelativeFoot.Same, Action.Kind: ActionKind.Dip }, ..] }
        ? FootRule.Standing : definition.Rows.Count > 0 ? definition.Rows[0].Action.Traits.FootRule
        : FootRule.Free;

    /// <summary>The named foot under which the listed feet are the feet of the rows; null when they are not.</summary>
    private static Foot? FeetFit(StepDefinition definition, List<(Foot Side, bool Certain)> sides)
    {
        foreach (Foot named in (ReadOnlySpan<Foot>)[Foot.Right, Foot.Left])
        {
            List<Foot> all = [];
            List<Foot> weighted = [];
            List<Foot> core = [];
            foreach (PatternRow row in definition.Rows)
            {
                if (row.For(named).Foot.ToFoot() is Foot foot)
                {
                    all.Add(foot);
                    if (row.Action.Effect == WeightEffect.Takes)
                    {
                        weighted.Add(foot);
                    }

                    if (!row.IsFinish)
                    {
                        core.Add(foot);
                    }
                }
            }

            List<Foot> given = sides.Select(s => s.Side).ToList();
            List<Foot> gestures = definition.Rows.Where(r => r.Action.Effect == WeightEffect.Keeps
                && r.For(named).Foot.ToFoot() is not null).Select(r => r.For(named).Foot.ToFoot()!.Value).ToList();
            bool tail = sides.Count > 2 && sides[0].Side == named && all.Count > given.Count - 1
                && given.Skip(1).SequenceEqual(all.Skip(all.Count - given.Count + 1));
            if (tail || (gestures.Count > 1 && given.SequenceEqual(gestures)) || given.SequenceEqual(all) || given.SequenceEqual(weighted)
                || given.SequenceEqual(core) || given.Skip(1).SequenceEqual(all) && sides[0].Side == named && sides.Count > 2)
            {
                return named;
            }
        }

        return null;
    }

    private void AddEachFoot(List<Variant> variants, Clause clause, StepDefinition definition, List<(Foot Side, bool Certain)> sides, double cost,
        Situation situation)
    {
        List<VariantRow> rows = [];
        Counts at = Counts.Zero;
        Weight weight = situation.Weight;
        double total = cost + 0.1;
        foreach ((Foot side, _) in Enumerable.Repeat(sides, clause.TimesStated ? Math.Max(1, clause.Times) : 1).SelectMany(s => s))
        {
            foreach (PatternRow row in definition.Rows)
            {
                StepAction action = row.For(side);
                total += VariantParts.FootCost(weight, action.Foot, action.Traits.FootRule) * 0.5;
                weight = action.WeightAfter(weight);
                rows.Add(new VariantRow(action, at + row.At, row.Stretches));
            }

            at += definition.Length;
        }

        variants.Add(new Variant { Definition = definition, Named = sides[0].Side, Rows = rows, Cost = total, FootNamed = true });
    }

    private void AddFigureNamed(List<Variant> variants, Clause clause, StepDefinition original, Foot named, double cost, bool isNamed,
        Situation situation)
    {
        // the stated turn
        Foot? impliedSide = null;
        if (clause.Amount is not null && clause.TurnSide is null)
        {
            int sign = original.TotalTurn.Sign != 0 ? original.TotalTurn.Sign
                : TurnedSign(original, clause.Amount.Value);
            bool towards = sign > 0;
            if (sign != 0 && (original.TotalTurn.Sign != 0 || original.NamedBy is NamedBy.Travel))
            {
                impliedSide = towards ? named : named.Other();
            }
        }

        (Ratio? eighths, bool missing) = VariantParts.StatedTurn(clause, impliedSide);
        if (clause.Amount is null && clause.TurnSide is Foot wayRound && original.TotalTurn.Sign != 0)
        {
            Ratio native = original.TotalTurn.Amount;
            eighths = wayRound == Foot.Right ? native : -native;
        }

        StepDefinition definition = original;
        bool sideways = original.Rows.All(r => r.Action.Direction is Direction.Side or Direction.Together);
        bool away = clause.TurnSide is Foot round && sideways && (round != named || SaysOwnSide(clause));
        bool leadsInto = clause.TurnFirst && (clause.TurnsInto || away) && original.TotalTurn.Sign == 0;
        if (eighths is Ratio turn && turn.Sign != 0 && !leadsInto)
        {
            Ratio relative = named == Foot.Right ? turn : -turn;
            foreach (TurnedForm form in original.TurnedForms)
            {
                bool match = form.Eighths is null || (relative.IsWhole && relative.Numerator == form.Eighths);
                if (match && lexicon.Catalogue.Find(form.Id) is StepDefinition turned && turned.Rows.Count > 0)
                {
                    definition = turned;
                    break;
                }
            }
        }

        bool amountMissing = clause.Amount is null && definition.TotalTurn.Sign != 0 && definition.Amounts.Count >= 2 && !clause.Head!.NamesAmount
            && (definition.Id.StartsWith("pivot", StringComparison.Ordinal) || definition.Id.StartsWith("monterey", StringComparison.Ordinal)
                || definition.Id.StartsWith("unwind", StringComparison.Ordinal) || definition.Id.StartsWith("paddle", StringComparison.Ordinal)
                || definition.Id.StartsWith("push", StringComparison.Ordinal));
        amountMissing |= clause.Amount is null && original.TotalTurn.Sign != 0 && !clause.Head!.NamesAmount
            && clause.HeadText.EndsWith("turning", StringComparison.OrdinalIgnoreCase);
        List<VariantRow> rows = RowsOf(definition, named, eighths, clause, situation.Weight);
        if (!isNamed && LandsCrossed(definition))
        {
            // nobody said which foot is in front
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = Direction.Across } };
        }

        if (definition.Id == "ball_change" && clause.Dir is null && situation.Last is { IsWith: false, Action: { Kind: ActionKind.Kick } kicked }
            && kicked.Foot == rows[0].Action.Foot)
        {
            // "kick right, ball change": beside, as in a kick ball change
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = Direction.Together } };
        }

        Weight weight = situation.Weight;
        double footCost = 0;
        foreach (VariantRow row in rows)
        {
            footCost += VariantParts.FootCost(weight, row.Action.Foot, row.Action.Traits.FootRule);
            weight = row.Action.WeightAfter(weight);
        }

        if (footCost > 0 && !isNamed)
        {
            footCost += 0.5;
        }

        int times = Math.Max(1, clause.Times);
        Variant whole = new()
        {
            Definition = definition,
            Named = named,
            Rows = rows,
            Cost = cost + footCost,
            FootNamed = isNamed,
            StatedTurn = eighths is Ratio e && clause.Amount is not null ? Turn.FromEighths(e) : null,
            TurnDirectionMissing = missing,
            TurnAmountMissing = amountMissing,
            WeightStated = clause.WeightNote is not null,
            Direction = clause.Dir?.Direction ?? Direction.Unstated,
        };
        if (times > 1)
        {
            AddRepeated(variants, whole, definition, times, clause, situation, eighths);
            return;
        }

        variants.Add(whole);

        // the customary last row gives way to an explicit move
        int finish = definition.Rows.Count;
        while (finish > 1 && definition.Rows[finish - 1].IsFinish)
        {
            finish--;
        }

        // a clap beside it leaves the customary last row in place
        bool beside = Next?.Head?.Verb is ActionKind.Clap or ActionKind.Snap or ActionKind.Slap or ActionKind.Arms or ActionKind.Bump
            or ActionKind.Shimmy;
        // "rumba box forward" on four counts, and the way back on a line of its own
        bool halfByWay = definition.Id.StartsWith("rumba_box_", StringComparison.Ordinal) && (clause.Dir?.Direction is Direction.Forward or Direction.Back
            || clause.HeadText.Split(' ')[^1].ToLowerInvariant() is "forward" or "fwd" or "back" or "backward" or "bk");
        if (definition.Rows.Count >= 4 && definition.Rows.Count % 2 == 0
            && (clause.HalfOf is not null || halfByWay || (Next is not { Head: null, Feet.Count: 0 } && IsMirrorOfItself(definition))))
        {
            AddHalf(variants, whole, clause, situation);
        }

        if (clause is { HalfOf: null, TimesStated: false }
            && definition is { Rows: [{ Action.Effect: WeightEffect.Keeps }, { Action.Turn.Sign: not 0 }, { Action.Effect: WeightEffect.Keeps }, _] }
            && definition.Id.StartsWith("monterey", StringComparison.Ordinal)
            && Next is null or { Head.Verb: ActionKind.Point or ActionKind.Touch or ActionKind.Tap })
        {
            // "1-2 monterey 1/2 right" and the other foot on a line of its own: the turn is in the first half
            variants.Add(Cut(whole, 2, Next is null ? 0.5 : 0.3));
        }

        bool figureFollows = Next is { Head: { Figures.Count: > 0, Verb: null } after } && after.Figures.All(f => f.Rows.Count > 2);
        bool saysFinish = finish < definition.Rows.Count
            && clause.HeadText.Contains(definition.Rows[finish].Action.Traits.Word, StringComparison.OrdinalIgnoreCase);
        if (clause.WithoutFinish && finish < definition.Rows.Count)
        {
            whole.Cost += 0.5;
        }

        if (finish < definition.Rows.Count && (clause.WithoutFinish || !beside) && !saysFinish)
        {
            variants.Add(Cut(whole, finish, clause.WithoutFinish ? -0.5 : Next is null ? 0.6 : figureFollows ? 0.4 : 0.02));
        }

        // a spiral whose step is written out: "step R forward, full spiral left"
        bool spiral = rows.Count == 2 && rows[1].Action.Kind == ActionKind.Pivot && rows[0].Action.Foot == rows[1].Action.Foot
            && rows[0].Action.Effect == WeightEffect.Takes;
        if (spiral && situation.Last is { Action.Effect: WeightEffect.Takes } before && (before.Action.Foot == rows[0].Action.Foot || !isNamed))
        {
            Foot standing = before.Action.Foot.ToFoot() ?? named;
            StepAction turning = standing == named ? rows[1].Action : rows[1].Action.Mirrored();
            if (eighths is Ratio way)
            {
                turning = turning with { Turn = Turn.FromEighths(way) };
            }

            variants.Add(new Variant
            {
                Definition = definition,
                Named = standing,
                Rows = [new VariantRow(turning, Counts.Zero, false)],
                Cost = cost,
                FootNamed = true,
                StatedTurn = turning.Turn,
                WeightStated = true
            });
        }

        if (spiral && clause.IsSpiral)
        {
            // "full spiral L on R, L forward": step and turn on one count
            variants.Add(new Variant
            {
                Definition = definition,
                Named = named,
                Rows = [rows[0] with { Action = rows[0].Action with { Turn = rows[0].Action.Turn + rows[1].Action.Turn } }],
                Cost = whole.Cost + 0.35,
                FootNamed = isNamed,
                StatedTurn = whole.StatedTurn,
                WeightStated = whole.WeightStated,
                Direction = whole.Direction,
            });
        }

        // a box whose last step is written out: "jazz box R, cross"
        bool lastIsTold = Next is { Head: null, Dir: not null, IsAmp: false }
            || (Next is
            {
                Head.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Brush or ActionKind.Scuff
                or ActionKind.Hitch or ActionKind.Kick or ActionKind.Flick, IsWith: false
            } last
                && (last.Feet.Count == 0 || last.Feet[0].Foot.ToActingFoot() == rows[^1].Action.Foot));
        if (finish == definition.Rows.Count && definition.Rows.Count == 4 && lastIsTold && definition.Rows[3].Action.Effect == WeightEffect.Takes)
        {
            variants.Add(Cut(whole, 3, 0.3));
        }

        // a rock whose recover is written out
        if (RecoverFollows && definition.Rows.Count == 2 && definition.Rows[0].Action.Kind == ActionKind.Rock
            && definition.Rows[1].Action.Kind == ActionKind.Recover)
        {
            variants.Add(Cut(whole, 1, 0.05));
        }
    }

    /// <summary>Whether the second half of the figure is the first on the other foot ("vaudeville", "heel switches").</summary>
    private static bool IsMirrorOfItself(StepDefinition definition)
    {
        int half = definition.Rows.Count / 2;
        for (int i = 0; i < half; i++)
        {
            if (definition.Rows[i].For(Foot.Right) != definition.Rows[i + half].For(Foot.Left))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>One half of a figure: where it is said, or where the figure is the same thing on both feet and the counts hold only one.</summary>
    private static void AddHalf(List<Variant> variants, Variant whole, Clause clause, Situation situation)
    {
        int half = whole.Rows.Count / 2;
        bool second = clause.HalfOf == 2;
        List<VariantRow> rows = whole.Rows.GetRange(second ? half : 0, half);
        Counts shift = rows[0].At - whole.Rows[0].At;
        double cost = clause.HalfOf is null ? 0.3 : 0;
        Weight weight = situation.Weight;
        foreach (VariantRow row in rows)
        {
            cost += VariantParts.FootCost(weight, row.Action.Foot, row.Action.Traits.FootRule);
            weight = row.Action.WeightAfter(weight);
        }

        variants.Add(new Variant
        {
            Definition = whole.Definition,
            Named = whole.Named,
            Rows = [.. rows.Select(r => r with { At = r.At - shift })],
            Cost = cost,
            FootNamed = whole.FootNamed,
            StatedTurn = whole.StatedTurn,
            TurnDirectionMissing = whole.TurnDirectionMissing,
            WeightStated = whole.WeightStated,
            Direction = whole.Direction,
        });
    }

    private static Variant Cut(Variant whole, int rows, double cost) => new()
    {
        Definition = whole.Definition,
        Named = whole.Named,
        Rows = whole.Rows.Take(rows).ToList(),
        Cost = whole.Cost + cost,
        FootNamed = whole.FootNamed,
        StatedTurn = whole.StatedTurn,
        TurnDirectionMissing = whole.TurnDirectionMissing,
        TurnAmountMissing = whole.TurnAmountMissing,
        WeightStated = whole.WeightStated,
        Direction = whole.Direction,
    };

    private void AddRepeated(List<Variant> variants, Variant first, StepDefinition definition, int times, Clause clause, Situation situation,
        Ratio? eighths)
    {
        // each time with the foot that is then free
        List<VariantRow> rows = [];
        Weight weight = situation.Weight;
        Foot named = first.Named ?? Foot.Right;
        Counts at = Counts.Zero;
        double cost = first.Cost;
        for (int i = 0; i < times; i++)
        {
            if (i > 0 && FirstRule(definition) != FootRule.Standing && weight.FreeFoot() is Foot free
                && definition.NamedBy is NamedBy.FirstFoot or NamedBy.ActingFoot or NamedBy.Travel or NamedBy.Turn)
            {
                bool same = FirstActing(definition) != RelativeFoot.Other;
                named = same ? free : free.Other();
            }

            foreach (VariantRow row in RowsOf(definition, named, eighths, clause, situation.Weight))
            {
                weight = row.Action.WeightAfter(weight);
                rows.Add(row with { At = row.At + at });
            }

            at += definition.Length;
        }

        variants.Add(new Variant
        {
            Definition = definition,
            Named = first.Named,
            Rows = rows,
            Cost = cost,
            FootNamed = first.FootNamed,
            StatedTurn = first.StatedTurn,
            TurnDirectionMissing = first.TurnDirectionMissing,
            TurnAmountMissing = first.TurnAmountMissing,
            Direction = first.Direction
        });
    }

    private int TurnedSign(StepDefinition definition, int amount)
    {
        foreach (TurnedForm form in definition.TurnedForms)
        {
            if (form.Eighths is null || Math.Abs(form.Eighths.Value) == amount)
            {
                StepDefinition? turned = lexicon.Catalogue.Find(form.Id);
                return form.Eighths is int eighths ? Math.Sign(eighths) : turned?.TotalTurn.Sign ?? 0;
            }
        }

        return definition.Amounts.Count > 0 && definition.Amounts.All(a => a > 0) ? 1
            : definition.Amounts.Count > 0 && definition.Amounts.All(a => a < 0) ? -1 : 0;
    }

    private static bool GoesThere(VariantRow row, Direction way) => FigureComparison.Family(row.Action.Direction) == FigureComparison.Family(way);

    private static List<VariantRow> RowsOf(StepDefinition definition, Foot named, Ratio? eighths, Clause clause, Weight before)
    {
        List<VariantRow> rows = new(definition.Rows.Count);
        Turn native = named == Foot.Right ? definition.TotalTurn : -definition.TotalTurn;
        bool respread = eighths is Ratio stated && stated != native.Eighths;
        foreach (PatternRow row in definition.Rows)
        {
            StepAction action = row.For(named);
            if (clause.Size != 0 && rows.Count == 0)
            {
                action = action with { Size = VariantParts.SizeOf(clause) };
            }

            if (action.Kind == ActionKind.Recover && action.Turn.Sign != 0 && VariantParts.IsStepAndPivot(definition))
            {
                // the catalogue calls it a recover; on the floor it is the pivot
                action = action with { Kind = ActionKind.Pivot };
            }

            rows.Add(new VariantRow(respread ? action with { Turn = Turn.None } : action, row.At, row.Stretches));
        }

        bool turnsAway = (clause.TurnFirst && clause.TurnsInto && rows.Count > 1)
            || clause.TurnFirst && definition is { NamedBy: NamedBy.Travel or NamedBy.FirstFoot } && rows.Count > 1
            && rows[0].Action.Direction == Direction.Side && eighths is Ratio away && (away.Sign > 0 != (named == Foot.Right) || SaysOwnSide(clause));
        if (respread && turnsAway)
        {
            // "1/4 left chassé right", "1/4 right chassé right": the turn first, then the way of the figure
            rows[0] = rows[0] with { Action = rows[0].Action with { Turn = Turn.FromEighths(eighths!.Value) } };
        }
        else if (clause.OnWay is Direction turning && eighths is Ratio told && rows.Count(r => GoesThere(r, turning)) == 1)
        {
            // "jazz box turning 1/4 left on the back step"
            rows = rows.ConvertAll(r => r with { Action = r.Action with { Turn = GoesThere(r, turning) ? Turn.FromEighths(told) : Turn.None } });
        }
        else if (respread && rows.Count > 0)
        {
            Spread(rows, definition, eighths!.Value);
        }

        if (definition is { NamedBy: NamedBy.Turn, Rows.Count: 1 } && clause is { TurnSide: not null, Feet: [{ } stepping] }
            && rows[0].Action is { Kind: ActionKind.Step, Effect: WeightEffect.Takes })
        {
            // "hinge 1/2 left stepping R to side": the foot is told
            rows[0] = rows[0] with { Action = rows[0].Action with { Foot = stepping.Foot.ToActingFoot() } };
        }

        if (definition.Rows.Count == 1 && (clause.Dir is not null || clause.Diagonal) && rows[0].Action.Foot.ToFoot() is Foot acting)
        {
            // "long step to R diagonal" too
            rows[0] = rows[0] with
            {
                Action =
                rows[0].Action with { Direction = VariantParts.DirectionOf(clause, acting, rows[0].Action.Direction, rows[0].Action.Kind) }
            };
        }

        if (definition.Rows.Count == 1 && clause.Dir is { } landed && rows[0].Action is { Foot: ActingFoot.Both, Direction: Direction.Unstated })
        {
            // "jump with both feet forward"
            Direction where = clause.DirSide is Foot aside ? (aside == Foot.Right ? Direction.Right : Direction.Left) : landed.Direction;
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = where } };
        }

        bool crossed = rows.Count == 2 && rows[0].Action.Kind == ActionKind.Rock
            && clause.Dir?.Direction is Direction.CrossFront or Direction.CrossBehind;
        if (crossed)
        {
            // "back rock behind R"
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = clause.Dir!.Direction } };
        }

        bool strut = rows.Count == 2 && rows[1].Action.Kind == ActionKind.Drop;
        if (strut && clause.Dir is not null && rows[0].Action.Foot.ToFoot() is Foot struts)
        {
            rows[0] = rows[0] with
            {
                Action =
                rows[0].Action with { Direction = VariantParts.DirectionOf(clause, struts, rows[0].Action.Direction, rows[0].Action.Kind) }
            };
        }

        if (rows[0].Action.Kind is ActionKind.Lunge && clause is { Dir: null, Diagonal: false }
            && Array.Exists(clause.HeadText.Split(' ', '-'), w => w.StartsWith("f", StringComparison.OrdinalIgnoreCase)))
        {
            // "lunge forward R", "L lunge fwd": the name says where, in full or in short
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = Direction.Forward } };
        }

        if (clause.FirstWay is Direction way && rows.Count > 1)
        {
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = way } };
        }

        bool stays = clause is { WeightNote: TermKind.WeightOn, WeightFoot: Foot standing } && before == standing.ToWeight()
            && rows.TrueForAll(r => r.Action is { Foot: ActingFoot.None, Effect: WeightEffect.Keeps });
        if (clause.WeightNote is not null && rows.Count > 0 && !stays)
        {
            // "bump hips twice (weight stays left)" where the left has it already: the hips move, and no foot
            ApplyWeightNote(rows, clause);
        }

        return rows;
    }

    private static void ApplyWeightNote(List<VariantRow> rows, Clause clause)
    {
        VariantRow last = rows[^1];
        StepAction action = last.Action;
        if (action.Kind == ActionKind.Arms)
        {
            // "arms relaxed, weight still on L": the arms carry none
            return;
        }

        StepAction? changed = clause.WeightNote switch
        {
            TermKind.WeightBoth => action with { Effect = WeightEffect.Shares },
            TermKind.WeightNone => action with { Effect = WeightEffect.Keeps },
            TermKind.WeightTakes when action is { Kind: ActionKind.Bump, Direction: Direction.Right or Direction.Left } =>
                action with { Effect = action.Direction is Direction.Left ? WeightEffect.ToLeft : WeightEffect.ToRight },
            TermKind.WeightTakes when action.Foot.ToFoot() is not null => action with { Effect = WeightEffect.Takes },
            TermKind.WeightOn when clause.WeightFoot is Foot both && action.Foot == ActingFoot.Both =>
                action with { Effect = both == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight },
            TermKind.WeightOn when clause.WeightFoot is Foot foot && (action.Foot.ToFoot() is null || action.Foot.ToFoot() == foot) =>
                action with { Foot = foot.ToActingFoot(), Effect = WeightEffect.Takes },
            TermKind.WeightOn when clause.WeightFoot is Foot foot && action.Foot.ToFoot() == foot.Other() && action.Effect != WeightEffect.Takes =>
                action,
            _ => null,
        };
        if (changed is not null)
        {
            rows[^1] = last with { Action = changed };
        }
    }

    private static void Spread(List<VariantRow> rows, StepDefinition definition, Ratio eighths)
    {
        int total = 0;
        foreach (TurnShare share in definition.Spread)
        {
            total += share.Share;
        }

        if (total == 0)
        {
            rows[0] = rows[0] with { Action = rows[0].Action with { Turn = Turn.FromEighths(eighths) } };
            return;
        }

        bool placed = false;
        foreach (TurnShare share in definition.Spread)
        {
            for (int i = 0; i < definition.Rows.Count; i++)
            {
                if (string.Equals(definition.Rows[i].Label, share.Label, StringComparison.Ordinal))
                {
                    rows[i] = rows[i] with
                    {
                        Action =
                        rows[i].Action with { Turn = rows[i].Action.Turn + Turn.FromEighths(eighths * share.Share / total) }
                    };
                    placed = true;
                    break;
                }
            }
        }

        if (!placed)
        {
            rows[0] = rows[0] with { Action = rows[0].Action with { Turn = Turn.FromEighths(eighths) } };
        }
    }
}
