using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Makes the ways a clause can be danced, cheapest meaning first. Possible feet are preferred to impossible ones.</summary>
internal sealed class VariantMaker(Lexicon lexicon, bool isWaltz = false)
{
    // What a reading costs when the foot it needs is not free: it is taken only when nothing else is possible.
    private const double ImpossibleFoot = 3;

    private bool _recoverFollows;

    private Clause? _next;

    /// <summary>All variants of one clause in a situation.</summary>
    public List<Variant> Make(Clause clause, Clause? previous, Clause? next, Situation situation)
    {
        _recoverFollows = next?.Head?.Verb is ActionKind.Recover or ActionKind.Shift || next?.WeightNote is TermKind.WeightOn || next is { Head: null, Dir.Direction: Direction.Forward or Direction.Back or Direction.InPlace or Direction.Home };
        _recoverFollows &= !clause.HeadText.Contains("rec", StringComparison.OrdinalIgnoreCase);
        List<Variant> variants = [];
        _next = next;
        if (clause.TurnSide is null && clause.DirSide is Foot turnedTo && clause.Head is not null && (clause.Head.Verb is ActionKind.Pivot or ActionKind.Unwind || clause.Head.Figures.Any(f => f.TotalTurn.Sign != 0 && f.NamedBy is NamedBy.FirstFoot && IsStepAndPivot(f))))
        {
            clause.TurnSide = turnedTo;
        }

        bool slapsBody = clause.Head?.Verb == ActionKind.Slap && clause.HasStyle
            && !(clause.Feet.Count == 1 && (clause.HeadText.Contains("boot", StringComparison.OrdinalIgnoreCase) || clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase)));
        if (clause.Head is { Figures.Count: > 0 } figure && !slapsBody)
        {
            foreach (StepDefinition definition in figure.Figures)
            {
                if (IsPlacing(clause, definition))
                {
                    // "pose R next to L" puts the foot there
                    AddVerbless(variants, clause, previous, situation);
                    continue;
                }

                if (clause.Head.Verb is ActionKind.Drag or ActionKind.Slide && definition.Rows.Count > 1 && clause.Dir?.Direction is Direction.Together or Direction.In or Direction.Up)
                {
                    // "slide right up to left": the foot that slides goes to the other
                    continue;
                }

                if (OneFootOf(clause, definition) is ActionKind fanned)
                {
                    // "right toes out": one foot fans
                    AddFootMoves(variants, clause, lexicon.Verbs.Usual(fanned) with { Direction = definition.Rows[0].Action.Direction }, FootRule.Any, [(clause.Feet[0].Foot, true)], situation, 0);
                    continue;
                }

                if (definition.Rows.Count == 1 && clause.Head.Verb is ActionKind.Pivot or ActionKind.Unwind)
                {
                    // the verb knows more of the feet than the bare entry
                    continue;
                }

                AddFigure(variants, clause, definition, situation);
                foreach (OtherReading other in definition.Others)
                {
                    // "lock step" is danced on 1&2 as well as on 1-3
                    if (other.Words.StartsWith("quick", StringComparison.Ordinal) && other.Id is string id && lexicon.Catalogue.Find(id) is StepDefinition quick)
                    {
                        AddFigure(variants, clause, quick, situation, 0.2);
                    }
                }

                bool paddle = definition.Rows is [{ Action.Kind: ActionKind.Press }, { Action.Kind: ActionKind.Pivot }] && situation.Last is { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes, Direction: Direction.Forward or Direction.Unstated } };
                if ((IsStepAndPivot(definition) || paddle) && clause.Head.Verb is null)
                {
                    // "step R forward, half pivot left": the step is written out already
                    int? stated = clause.Amount;
                    clause.Amount ??= definition.Rows.Count == 2 ? definition.TotalTurn.Amount.Floor : 4;
                    AddPivot(variants, clause, situation);
                    clause.Amount = stated;
                }
            }
        }

        if (clause.Head?.Verb is ActionKind verb && !(verb == ActionKind.Slap && !slapsBody && clause.Head.Figures.Count > 0))
        {
            AddVerb(variants, clause, previous, verb, situation);
        }

        if (clause.Head is null)
        {
            AddVerbless(variants, clause, previous, situation);
        }

        AddBeside(variants, clause, situation);
        return variants;
    }

    private static bool IsPlacing(Clause clause, StepDefinition definition)
        => definition.Rows.Count == 1 && definition.Rows[0].Action.Kind == ActionKind.Hold && clause.Feet.Count == 1 && (clause.Dir is not null || clause.Part.Length > 0);

    private static ActionKind? OneFootOf(Clause clause, StepDefinition definition) => definition.Rows.Count == 1 && clause.Feet.Count == 1 && !clause.BothFeet
        ? definition.Rows[0].Action.Kind switch
        {
            ActionKind.SplitToes => ActionKind.FanToe,
            ActionKind.SplitHeels => ActionKind.FanHeel,
            _ => null,
        }
        : null;

    /// <summary>Arms, hips and the like may be made beside a step and take no count of their own.</summary>
    private static void AddBeside(List<Variant> variants, Clause clause, Situation situation)
    {
        Variant? body = variants.Find(v => v.Rows.Count > 0 && !v.Accompanies && v.Rows.TrueForAll(r => r.Action.Kind is ActionKind.Arms or ActionKind.Bump or ActionKind.RollHips or ActionKind.RollBody or ActionKind.Shimmy or ActionKind.PopShoulder or ActionKind.PopKnee or ActionKind.Dip or ActionKind.RollKnee or ActionKind.Snap or ActionKind.Clap or ActionKind.Slap or ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide && r.Action.Effect == WeightEffect.Keeps || (r.Action.Kind is ActionKind.Hitch or ActionKind.Bounce && clause.IsWith)));
        if (body is null)
        {
            return;
        }

        bool drawn = body.Rows[0].Action.Kind is ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide;
        if (drawn)
        {
            if (clause.Link is not Link.Hard)
            {
                // "step R back sweeping L": the sweep rides on the step
                variants.Add(new Variant { Definition = body.Definition, Named = body.Named, Rows = [body.Rows[0]], Cost = body.Cost + 0.25, Accompanies = true });
            }

            return;
        }

        if (body.Rows.Count > 1 && clause.Link is not Link.Hard && clause.TimesStated && body.Rows[0].Action.Kind is ActionKind.Bump or ActionKind.RollHips)
        {
            // "step R to side and bump hips twice": the first bump rides on the step
            variants.Add(new Variant { Definition = body.Definition, Named = null, Rows = [.. body.Rows.Skip(1)], Cost = body.Cost + 0.3, Beside = body.Rows[0] });
        }

        bool arms = body.Rows[0].Action.Kind == ActionKind.Arms;
        double cost = arms ? 0.05 : clause.Link is Link.Hard ? 0.6 : 0.2;
        if (arms)
        {
            body.Cost += 0.2;
            if (situation.Last is null)
            {
                // "tip your hat, R heel forward": the arms go with what follows
                variants.Add(new Variant { Definition = null, Named = null, Rows = [], Cost = 0.15 });
            }
        }

        variants.Add(new Variant { Definition = body.Definition, Named = null, Rows = [body.Rows[0]], Cost = cost, Accompanies = true });
    }

    /// <summary>The signed turn a clause states, in eighths, or null; and whether its direction is missing.</summary>
    private static (Ratio? Eighths, bool DirectionMissing) StatedTurn(Clause clause, Foot? fallback)
    {
        if (clause.Amount is not int amount)
        {
            return (null, false);
        }

        if (clause.TurnSide is Foot side)
        {
            return (side == Foot.Right ? amount : -amount, false);
        }

        if (fallback is Foot other)
        {
            return (other == Foot.Right ? amount : -amount, false);
        }

        return (null, true);
    }

    private static double FootCost(Weight weight, ActingFoot foot, FootRule rule) => rule switch
    {
        FootRule.Free when foot.ToFoot() is Foot f && weight == f.ToWeight() => ImpossibleFoot,
        FootRule.Standing when foot.ToFoot() is Foot f && weight == f.Other().ToWeight() => ImpossibleFoot,
        _ => 0,
    };

    private static Contact ContactOf(string part, Contact usual) => part switch
    {
        "heel" or "heels" => Contact.Heel,
        "toe" or "toes" => Contact.Toe,
        "ball" => Contact.Ball,
        "flat" => Contact.Flat,
        _ => usual,
    };

    /// <summary>The free foot, or a guess from the foot that acted last when the weight is shared; null when unknown.</summary>
    private static Foot? NextFoot(Situation situation)
    {
        if (situation.Weight.FreeFoot() is Foot free)
        {
            return free;
        }

        if (situation.Weight == Weight.Shared)
        {
            return situation.Last?.Action.Foot.ToFoot()?.Other() ?? Foot.Right;
        }

        return null;
    }

    private static Direction DirectionOf(Clause clause, Foot? acting, Direction usual, ActionKind kind)
    {
        bool weightless = kind is ActionKind.Touch or ActionKind.Point or ActionKind.Tap or ActionKind.Kick or ActionKind.Flick or ActionKind.Hook
            or ActionKind.Hitch or ActionKind.Dig or ActionKind.Scuff or ActionKind.Brush or ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide;
        bool across = clause.DirSide is Foot side && acting is Foot foot && side != foot;
        if (clause.Diagonal)
        {
            bool back = clause.Dir?.Direction is Direction.Back or Direction.CrossBehind;
            return (back, across || clause.Dir?.Direction is Direction.CrossFront) switch
            {
                (false, false) => Direction.DiagonalForward,
                (false, true) => Direction.DiagonalForwardAcross,
                (true, false) => Direction.DiagonalBack,
                (true, true) => Direction.DiagonalBackAcross,
            };
        }

        if (clause.Dir is null)
        {
            return usual;
        }

        if (clause.Dir.Direction == Direction.Up && kind == ActionKind.Step)
        {
            return Direction.Forward;
        }

        Direction direction = clause.Dir.Direction;
        if (kind is ActionKind.Sway && (clause.DirSide is not null || clause.Dir.Direction == Direction.Back))
        {
            // "sway back to the left"
            return Direction.Side;
        }

        if (direction == Direction.Side && across && kind is ActionKind.Drag or ActionKind.Slide)
        {
            return Direction.Together;
        }

        if (direction == Direction.Side && across)
        {
            return Direction.Across;
        }

        if (weightless && direction == Direction.CrossFront)
        {
            return Direction.CrossFront;
        }

        return direction;
    }

    private static StepSize SizeOf(Clause clause) => clause.Size switch { < 0 => StepSize.Small, > 0 => StepSize.Large, _ => StepSize.Usual };

    private static WeightEffect EffectOf(Clause clause, ActingFoot foot, WeightEffect usual, out bool stated)
    {
        stated = clause.WeightNote is not null;
        switch (clause.WeightNote)
        {
            case TermKind.WeightNone:
                return WeightEffect.Keeps;
            case TermKind.WeightTakes:
                return WeightEffect.Takes;
            case TermKind.WeightBoth:
                return WeightEffect.Shares;
            case TermKind.WeightOn when clause.WeightFoot is Foot on && foot.ToFoot() is Foot acting:
                return on == acting ? WeightEffect.Takes : WeightEffect.Keeps;
            default:
                return usual;
        }
    }

    /// <summary>Whether a figure is a step and a turn on both feet, whose turn is named by its direction.</summary>
    public static bool IsStepAndPivot(StepDefinition definition) => definition.Rows.Count == 2 && definition.Rows[0].Action.Turn.Sign == 0 && definition.Rows[0].Action.Effect == WeightEffect.Takes
        && definition.Rows[1].Action.Turn.Sign != 0 && definition.Rows[1].Foot == RelativeFoot.Other && definition.Rows[1].Action.Kind is ActionKind.Recover or ActionKind.Pivot || definition.Id == "military_turn";

    private void AddVerb(List<Variant> variants, Clause clause, Clause? previous, ActionKind verb, Situation situation)
    {
        bool upStomp = clause.Head!.VerbKeepsWeight;
        switch (verb)
        {
            case ActionKind.Pivot:
                AddPivot(variants, clause, situation);
                return;
            case ActionKind.Swivel or ActionKind.Twist when clause.Amount is not null:
                AddPivot(variants, clause, situation);
                return;
            case ActionKind.Unwind:
                AddUnwind(variants, clause, situation);
                return;
            case ActionKind.Hold:
                variants.Add(Body(clause, StepAction.Hold, 0, stretches: true));
                return;
            case ActionKind.Slap when clause.Feet.Count == 1 && (clause.HeadText.Contains("boot", StringComparison.OrdinalIgnoreCase) || clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase)):
                // the foot whose boot is slapped is lifted to the hand
                AddFootMoves(variants, clause, new StepAction(ActionKind.Slap, ActingFoot.None, Direction.Unstated, Contact.Air, WeightEffect.Keeps), FootRule.Free, [(clause.Feet[0].Foot, true)], situation, 0);
                return;
            case ActionKind.Clap or ActionKind.Snap or ActionKind.Slap:
                AddAccompaniment(variants, clause, verb);
                return;
        }

        StepAction usual = lexicon.Verbs.Usual(verb);
        FootRule rule = verb == ActionKind.Dip ? FootRule.Standing : ActionTraits.Of(verb).FootRule;
        bool ofBoth = verb is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Swivel or ActionKind.Twist or ActionKind.SplitHeels or ActionKind.SplitToes or ActionKind.Bounce or ActionKind.Click
            || (verb is ActionKind.Jump && clause.Feet.Count == 0);
        bool ofBody = verb is ActionKind.Bump or ActionKind.RollHips or ActionKind.RollBody or ActionKind.Shimmy or ActionKind.PopShoulder or ActionKind.Arms || (verb is ActionKind.Dip && clause.Feet.Count == 0);
        if (ofBoth || ofBody || clause.BothFeet)
        {
            // "both shoulders", "both hands" are no feet
            AddBodyMove(variants, clause, verb, usual, (clause.BothFeet && !ofBody) || ofBoth, situation);
            return;
        }

        if (verb == ActionKind.Jump)
        {
            // "jump back L, R" lands on one foot after the other
            usual = usual with { Effect = WeightEffect.Takes };
        }

        if (upStomp || (verb == ActionKind.Stomp && clause.Dir?.Direction == Direction.Up))
        {
            usual = usual with { Effect = WeightEffect.Keeps };
        }

        string special = clause.Head.Special;
        bool placed = verb == ActionKind.Step && special == "step" && clause.HeadText.Length > 2 && clause.HeadText[..3].ToLowerInvariant() is "put" or "pla" or "bri" or "set" or "pos";
        bool strut = verb == ActionKind.Step && clause.Part is "heel" or "toe" or "ball" && _next?.Head?.Verb == ActionKind.Drop && (_next.Feet.Count == 0 || clause.Feet.Count == 0 || _next.Feet[0].Foot == clause.Feet[0].Foot);
        if (strut)
        {
            // "step R toe forward, drop heel": the weight comes with the drop
            verb = clause.Part == "heel" ? ActionKind.Dig : ActionKind.Touch;
            usual = lexicon.Verbs.Usual(verb);
        }

        if (placed && !strut && clause.Part is "heel" or "heels" or "toe" or "toes" && clause.Dir?.Direction is not (Direction.Together or Direction.Home or Direction.Down or Direction.InPlace))
        {
            // "put the right heel forward" is a touch of the heel
            AddVerbless(variants, clause, previous, situation);
            return;
        }

        if (verb == ActionKind.Recover && clause is { Dir.Direction: Direction.Together or Direction.Home or Direction.CrossFront or Direction.CrossBehind, Feet.Count: 1 })
        {
            // "replace R beside L" puts the foot there
            verb = ActionKind.Step;
            usual = lexicon.Verbs.Usual(ActionKind.Step);
        }

        if (special is "walk" or "run")
        {
            usual = usual with { Direction = Direction.Forward };
        }

        if (verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Press && clause.Part is "heel" or "heels" && clause.Head.Verb is not ActionKind.Press)
        {
            verb = ActionKind.Dig;
            usual = usual with { Kind = ActionKind.Dig, Contact = Contact.Heel, Direction = clause.Dir is null ? Direction.Forward : usual.Direction };
        }

        bool falls = situation.Last is not { Action: { Kind: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig } } on || (clause.Feet.Count == 1 && on.Action.Foot.ToFoot() != clause.Feet[0].Foot);
        if (verb is ActionKind.Drop && falls && clause.Feet.Count == 1 && (clause.Diagonal || clause.Dir?.Direction is Direction.Forward or Direction.Back or Direction.Side))
        {
            // "heel down in front": it is put there, not lowered
            bool heel = clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase);
            verb = heel ? ActionKind.Dig : ActionKind.Touch;
            usual = lexicon.Verbs.Usual(verb);
        }

        if (verb is ActionKind.Drop)
        {
            usual = usual with { Effect = WeightEffect.Takes, Contact = Contact.Flat };
        }

        if (verb is ActionKind.Drop && clause.Part.Length == 0 && clause.Dir is not null)
        {
            usual = usual with { Direction = Direction.InPlace };
        }

        List<(Foot Foot, bool Named)> feet = FeetOf(clause, rule, situation, verb);
        AddFootMoves(variants, clause, usual, rule, feet, situation, 0, special is "walk" or "run" ? lexicon.Catalogue.Find(special + "_one") : null);

        if (verb == ActionKind.Step && situation.Weight == Weight.Shared && clause.Dir is null && clause.Feet is [{ IsCertain: false, IsWord: true } word] && special is not ("walk" or "run"))
        {
            // both feet are free: "step right" may be the right foot, or the left foot to the right
            List<Variant> across = [];
            AddFootMoves(across, clause, usual with { Direction = Direction.Across }, rule, [(word.Foot.Other(), false)], situation, 0.05);
            variants.AddRange(across);
        }

        // "rock R forward" on two counts is a rock and a recover
        if (verb == ActionKind.Rock && feet.Count == 1)
        {
            AddRockRecover(variants, clause, usual, feet[0], situation);
        }
    }

    private void AddRockRecover(List<Variant> variants, Clause clause, StepAction usual, (Foot Foot, bool Named) foot, Situation situation)
    {
        List<Variant> single = [];
        AddFootMoves(single, clause, usual, FootRule.Free, [foot], situation, 0);
        foreach (Variant one in single)
        {
            if (one.Rows.Count != 1)
            {
                continue;
            }

            Foot rocking = one.Rows[0].Action.Foot.ToFoot() ?? foot.Foot;
            StepAction recover = new(ActionKind.Recover, rocking.Other().ToActingFoot(), Direction.InPlace, Contact.Flat, WeightEffect.Takes, one.Rows[0].Action.Turn);
            variants.Add(new Variant
            {
                Definition = lexicon.Catalogue.Find(RockEntry(one.Rows[0].Action.Direction)) ?? one.Definition,
                Named = rocking,
                Rows = [one.Rows[0] with { Action = one.Rows[0].Action with { Turn = Turn.None } }, new VariantRow(recover, Counts.One, false)],
                Cost = one.Cost + 0.3,
                FootNamed = one.FootNamed,
                StatedTurn = one.StatedTurn,
                Direction = one.Direction,
            });
        }
    }

    private static string RockEntry(Direction direction) => direction switch
    {
        Direction.Back => "rock_recover_back",
        Direction.Side => "rock_recover_side",
        Direction.CrossFront => "cross_rock",
        Direction.CrossBehind => "back_cross_rock",
        _ => "rock_recover_forward",
    };

    private static List<(Foot Foot, bool Named)> FeetOf(Clause clause, FootRule rule, Situation situation, ActionKind verb)
    {
        List<(Foot, bool)> feet = [];
        foreach (FootWord word in clause.Feet)
        {
            feet.Add((word.Foot, true));
        }

        if (feet.Count == 0 && clause.DirSide is Foot side && !clause.Diagonal && rule == FootRule.Free)
        {
            // "step to the right": the foot of that side if it is free
            if (situation.Weight.FreeFoot() is null || situation.Weight.FreeFoot() == side)
            {
                feet.Add((side, false));
            }
        }

        if (feet.Count == 0 && verb == ActionKind.Drop && situation.Last is { Action: { Effect: WeightEffect.Keeps } laid } && laid.Foot.ToFoot() is Foot lowered && laid.Kind is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig)
        {
            feet.Add((lowered, true));
        }

        if (feet.Count == 0 && verb == ActionKind.Sway && clause.DirSide is Foot swaySide)
        {
            feet.Add((swaySide, true));
        }

        if (feet.Count == 1 && clause.Feet.Count == 1 && clause.Feet[0].MayBeReference && clause.Reference is null && rule == FootRule.Free && situation.Weight.StandingFoot() == feet[0].Item1)
        {
            // "cross over left" with the weight on the left: the right crosses over it
            feet[0] = (feet[0].Item1.Other(), false);
        }

        return feet;
    }

    private void AddFootMoves(List<Variant> variants, Clause clause, StepAction usual, FootRule rule, List<(Foot Foot, bool Named)> feet, Situation situation, double cost, StepDefinition? definition = null)
    {
        definition ??= lexicon.Verbs.Definition(usual.Kind);
        int times = Math.Max(1, clause.Times);
        if (feet.Count > 1 && times > 1 && clause.TimesStated)
        {
            List<(Foot, bool)> more = [];
            for (int i = 0; i < times; i++)
            {
                more.AddRange(feet);
            }

            feet = more;
            times = 1;
        }
        else if (feet.Count > 1)
        {
            times = 1;
        }

        if (feet.Count == 0)
        {
            Foot? next = rule switch
            {
                FootRule.Standing => situation.Weight.StandingFoot(),
                FootRule.Any when usual.Kind is ActionKind.FanToe or ActionKind.FanHeel or ActionKind.RollKnee or ActionKind.PopKnee => NextFoot(situation),
                _ => NextFoot(situation),
            };
            if (next is null)
            {
                StepAction lost = usual with { Foot = ActingFoot.None, Effect = usual.Effect == WeightEffect.Keeps ? WeightEffect.Keeps : WeightEffect.Unknown, Direction = DirectionOf(clause, null, usual.Direction, usual.Kind) };
                variants.Add(Finish(clause, lexicon.Verbs.Definition(usual.Kind), null, [new VariantRow(WithTurn(clause, lost, out bool noDirection), Counts.Zero, lost.Traits.Stretches)], cost, false, false, noDirection));
                return;
            }

            feet = [(next.Value, false)];
        }

        List<VariantRow> rows = [];
        Weight weight = situation.Weight;
        bool named = true;
        bool missing = false;
        bool weightStated = false;
        double total = cost;
        for (int i = 0; i < Math.Max(feet.Count, times); i++)
        {
            (Foot foot, bool isNamed) = i < feet.Count ? feet[i] : (feet[^1].Foot, false);
            if (i >= feet.Count && rows[^1].Action.Effect == WeightEffect.Takes && rule != FootRule.Standing)
            {
                // "two walks", "step x2": the feet alternate
                foot = rows[^1].Action.Foot.ToFoot()!.Value.Other();
            }

            named &= isNamed;
            StepAction action = usual with { Foot = foot.ToActingFoot() };
            Direction direction = usual.Kind is ActionKind.Recover or ActionKind.Shift ? Direction.InPlace : DirectionOf(clause, foot, usual.Direction, usual.Kind);
            action = action with
            {
                Direction = foot == Foot.Right ? direction : clause.Dir is null ? direction.Mirrored() : direction,
                Contact = ContactOf(clause.Part, usual.Contact),
                Size = SizeOf(clause),
                Effect = EffectOf(clause, foot.ToActingFoot(), usual.Effect, out weightStated),
            };
            if (clause.WeightNote == TermKind.WeightOn && Math.Max(feet.Count, times) > 1)
            {
                action = action with { Effect = usual.Effect };
            }

            if (action is { Kind: ActionKind.Step, Effect: WeightEffect.Keeps } && clause.WeightNote is TermKind.WeightOn)
            {
                // "step L back, weight on R": hardly a step
                total += 0.5;
            }

            if (action is { Kind: ActionKind.Step, Effect: WeightEffect.Keeps } && clause.WeightNote is TermKind.WeightNone)
            {
                // "close without weight"
                action = action with { Kind = ActionKind.Touch, Contact = ContactOf(clause.Part, Contact.Ball) };
            }

            if (i == 0)
            {
                action = WithTurn(clause, action, out missing);
            }

            double footCost = FootCost(weight, action.Foot, rule);
            total += isNamed ? footCost * 0.5 : footCost;
            weight = action.WeightAfter(weight);
            rows.Add(new VariantRow(action, Counts.FromWhole(i), action.Traits.Stretches || clause.Lasts is not null));
        }

        variants.Add(Finish(clause, definition, feet[0].Foot, rows, total, named, weightStated, missing));
        if (rows.Count == 1 && rows[0].Action is { Turn.Sign: not 0, Effect: WeightEffect.Takes, Kind: ActionKind.Step } turned && clause.Dir?.Direction is null or Direction.Forward && turned.Foot.ToFoot() is Foot stepping)
        {
            // "step R turn 1/2 left" on two counts
            VariantRow step = rows[0] with { Action = turned with { Turn = Turn.None, Direction = Direction.Forward } };
            StepAction pivot = new(ActionKind.Pivot, stepping.Other().ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turned.Turn);
            variants.Add(Finish(clause, lexicon.Verbs.Definition(usual.Kind), stepping, [step, new VariantRow(pivot, Counts.One, false)], total + 0.3, named, weightStated, missing));
        }
    }

    private static StepAction WithTurn(Clause clause, StepAction action, out bool directionMissing)
    {
        (Ratio? eighths, directionMissing) = StatedTurn(clause, null);
        return eighths is Ratio turn ? action with { Turn = Turn.FromEighths(turn) } : action;
    }

    private static Variant Finish(Clause clause, StepDefinition? definition, Foot? named, List<VariantRow> rows, double cost, bool footNamed, bool weightStated, bool directionMissing)
    {
        Turn? stated = clause.Amount is null || rows.Count == 0 ? null : rows[0].Action.Turn;
        return new Variant
        {
            Definition = definition,
            Named = named,
            Rows = rows,
            Cost = cost,
            FootNamed = footNamed,
            StatedTurn = stated is { Sign: not 0 } ? stated : null,
            TurnDirectionMissing = directionMissing,
            WeightStated = weightStated,
            Direction = clause.Dir?.Direction ?? Direction.Unstated,
        };
    }

    private static Variant Body(Clause clause, StepAction action, double cost, bool stretches) => new()
    {
        Definition = null,
        Named = null,
        Rows = Enumerable.Range(0, Math.Max(1, clause.Times)).Select(i => new VariantRow(action, Counts.FromWhole(i), stretches)).ToList(),
        Cost = cost,
    };

    private void AddAccompaniment(List<Variant> variants, Clause clause, ActionKind kind)
    {
        StepAction action = new(kind, ActingFoot.None, Direction.Unstated, Contact.Air, WeightEffect.Keeps);
        if (clause.OnEachMove && clause.Feet.Count == 0)
        {
            // "clap on every touch": beside moves that are told already
            variants.Add(new Variant { Definition = null, Named = null, Rows = [], Cost = 0.05 });
        }

        Variant own = Body(clause, action, clause.Link is Link.Hard ? 0.1 : clause.Link is Link.None ? 0.2 : 0.4, stretches: false);
        variants.Add(Named(own, lexicon.Verbs.Definition(kind)));
        variants.Add(new Variant { Definition = lexicon.Verbs.Definition(kind), Named = null, Rows = [new VariantRow(action, Counts.Zero, false)], Cost = clause.Link is Link.Hard ? 0.3 : 0.1, Accompanies = true });
    }

    private static Variant Named(Variant variant, StepDefinition? definition) => new()
    {
        Definition = definition,
        Named = variant.Named,
        Rows = variant.Rows,
        Cost = variant.Cost,
        FootNamed = variant.FootNamed,
    };

    private void AddBodyMove(List<Variant> variants, Clause clause, ActionKind verb, StepAction usual, bool both, Situation situation)
    {
        // hips, heels and the like: right and left are ways to go
        List<Direction> ways = [];
        foreach (FootWord word in clause.Feet)
        {
            ways.Add(word.Foot == Foot.Right ? Direction.Right : Direction.Left);
        }

        if (ways.Count == 0 && clause.TurnSide is Foot turnSide && clause.Amount is null)
        {
            ways.Add(turnSide == Foot.Right ? Direction.Right : Direction.Left);
        }

        if (ways.Count == 0)
        {
            ways.Add(clause.DirSide is Foot side ? (side == Foot.Right ? Direction.Right : Direction.Left) : clause.Dir?.Direction ?? (usual.Direction is Direction.Right ? Direction.Unstated : usual.Direction));
        }

        int times = ways.Count > 1 ? 1 : Math.Max(1, clause.Times);
        List<VariantRow> rows = [];
        bool missing = false;
        WeightEffect effect = clause.WeightNote switch
        {
            TermKind.WeightBoth => WeightEffect.Shares,
            _ => both ? (usual.Effect == WeightEffect.Takes ? WeightEffect.Shares : usual.Effect) : WeightEffect.Keeps,
        };
        if (both && effect == WeightEffect.Keeps && verb is ActionKind.Jump or ActionKind.Stomp or ActionKind.Step)
        {
            effect = WeightEffect.Shares;
        }

        for (int i = 0; i < Math.Max(ways.Count, times); i++)
        {
            Direction way = ways[Math.Min(i, ways.Count - 1)];
            ActingFoot foot = both ? ActingFoot.Both : ActingFoot.None;
            StepAction action = usual with { Foot = foot, Direction = way, Effect = effect };
            bool last = i == Math.Max(ways.Count, times) - 1;
            if (clause.WeightNote == TermKind.WeightOn && clause.WeightFoot is Foot weighted && (both || situation.Weight != weighted.ToWeight()))
            {
                action = action with { Effect = last ? (weighted == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight) : both ? WeightEffect.Shares : WeightEffect.Keeps };
            }

            if (i == 0)
            {
                action = WithTurn(clause, action, out missing);
            }

            rows.Add(new VariantRow(action, Counts.FromWhole(i), action.Traits.Stretches || clause.Lasts is not null));
        }

        variants.Add(new Variant
        {
            Definition = lexicon.Verbs.Definition(verb),
            Named = null,
            Rows = rows,
            Cost = 0,
            FootNamed = true,
            WeightStated = clause.WeightNote is not null,
            TurnDirectionMissing = missing,
            StatedTurn = rows[0].Action.Turn.Sign == 0 ? null : rows[0].Action.Turn,
        });
    }

    private void AddPivot(List<Variant> variants, Clause clause, Situation situation)
    {
        Foot? standing = situation.Weight.StandingFoot();
        Foot? named = clause.Feet.Count > 0 ? clause.Feet[^1].Foot : null;
        bool onStanding = named is Foot on && on == standing && clause.WeightNote is null;
        Foot? side = clause.TurnSide;
        (Ratio? eighths, bool missing) = StatedTurn(clause, null);
        bool amountMissing = clause.Amount is null;
        StepDefinition? definition = lexicon.Catalogue.Find("pivot");
        PlacedRow? stepped = situation.Last;
        while (stepped is { Action.Foot: ActingFoot.None })
        {
            // "step R forward, hold, pivot": the hold changes nothing
            stepped = stepped.Previous;
        }

        bool afterStep = stepped is { Action.Effect: WeightEffect.Takes } && stepped.Action.Kind is not (ActionKind.Pivot or ActionKind.Unwind);

        if (onStanding)
        {
            Turn turn = Turn.FromEighths(eighths ?? 0);
            StepAction spin = new(ActionKind.Pivot, standing!.Value.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Keeps, turn);
            variants.Add(new Variant { Definition = definition, Named = standing, Rows = [new VariantRow(spin, Counts.Zero, false)], Cost = 0.05, FootNamed = true, StatedTurn = turn, TurnDirectionMissing = missing, TurnAmountMissing = amountMissing, WeightStated = true });
        }

        if (standing is Foot from)
        {
            Ratio amount = eighths ?? ((clause.Amount ?? 4) * (side is Foot s ? (s == Foot.Right ? 1 : -1) : from == Foot.Right ? -1 : 1));
            Turn turn = Turn.FromEighths(amount);
            StepAction switchTurn = new(ActionKind.Pivot, from.Other().ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn);
            bool keeps = clause.WeightNote == TermKind.WeightOn && clause.WeightFoot == from;
            if (keeps)
            {
                switchTurn = switchTurn with { Foot = from.ToActingFoot(), Effect = WeightEffect.Keeps };
            }

            bool stated = clause.WeightNote is not null || (named is Foot n && n == from.Other());
            double cost = afterStep ? 0 : keeps || stated ? 0.1 : 0.25;
            if (onStanding)
            {
                cost += 0.5;
            }

            variants.Add(new Variant { Definition = definition, Named = null, Rows = [new VariantRow(switchTurn, Counts.Zero, false)], Cost = cost, FootNamed = true, StatedTurn = turn, TurnDirectionMissing = missing, TurnAmountMissing = amountMissing, WeightStated = stated });
            AddStepPivot(variants, clause, situation, from, turn, missing, amountMissing, afterStep);
            if (!afterStep && !keeps && !stated && !onStanding)
            {
                // after a touch a pivot may stay on the standing foot as well: two readings
                StepAction stay = switchTurn with { Foot = from.ToActingFoot(), Effect = WeightEffect.Keeps };
                variants.Add(new Variant { Definition = definition, Named = null, Rows = [new VariantRow(stay, Counts.Zero, false)], Cost = 0.3, FootNamed = true, StatedTurn = turn, TurnDirectionMissing = missing, TurnAmountMissing = amountMissing, Words = "turning on the standing foot" });
            }
        }
        else
        {
            Turn turn = Turn.FromEighths(eighths ?? 0);
            StepAction lost = new(ActionKind.Pivot, ActingFoot.None, Direction.InPlace, Contact.Ball, clause.WeightFoot is not null ? WeightEffect.Takes : WeightEffect.Unknown, turn);
            if (clause.WeightFoot is Foot w || named is not null && (w = named.Value) == named.Value)
            {
                lost = lost with { Foot = (clause.WeightFoot ?? named)!.Value.ToActingFoot(), Effect = WeightEffect.Takes };
            }

            variants.Add(new Variant { Definition = definition, Named = null, Rows = [new VariantRow(lost, Counts.Zero, false)], Cost = 0.2, StatedTurn = turn, TurnDirectionMissing = missing, TurnAmountMissing = amountMissing });
        }

    }

    /// <summary>"pivot 1/2 left" on two counts: a step of the free foot and the turn.</summary>
    private void AddStepPivot(List<Variant> variants, Clause clause, Situation situation, Foot from, Turn turn, bool missing, bool amountMissing, bool afterStep)
    {
        Foot stepping = from.Other();
        if (clause.TurnSide is null && clause.Amount is not null)
        {
            turn = Turn.FromEighths(stepping == Foot.Right ? -clause.Amount.Value : clause.Amount.Value);
        }

        List<VariantRow> rows = [];
        for (int i = 0; i < Math.Max(1, clause.Times); i++)
        {
            rows.Add(new VariantRow(new StepAction(ActionKind.Step, stepping.ToActingFoot(), Direction.Forward, Contact.Ball, WeightEffect.Takes), Counts.FromWhole(2 * i), false));
            rows.Add(new VariantRow(new StepAction(ActionKind.Pivot, from.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn), Counts.FromWhole((2 * i) + 1), false));
        }

        string entry = turn.Amount == 2 ? "pivot_quarter" : turn.Amount == 6 ? "pivot_three_quarter" : "pivot_half";
        variants.Add(new Variant { Definition = lexicon.Catalogue.Find(entry), Named = stepping, Rows = rows, Cost = afterStep ? 0.4 : 0.1, FootNamed = clause.Feet.Count > 0, StatedTurn = turn, TurnDirectionMissing = missing, TurnAmountMissing = amountMissing });
    }

    private void AddUnwind(List<Variant> variants, Clause clause, Situation situation)
    {
        if (clause.Feet is [{ IsCertain: false } again] && again.Foot == clause.TurnSide)
        {
            // "unwind right 1/2 right": the way round, said twice
            clause.Feet.Clear();
        }

        Foot? crossing = null;
        bool behind = false;
        for (PlacedRow? row = situation.Last; row is not null; row = row.Previous)
        {
            if (row.Action.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Across or Direction.Behind or Direction.LockBehind or Direction.LockFront)
            {
                crossing = row.Action.Foot.ToFoot();
                behind = row.Action.Direction is Direction.CrossBehind or Direction.Behind or Direction.LockBehind;
                break;
            }

            if (row.Action.Foot is ActingFoot.Left or ActingFoot.Right)
            {
                break;
            }
        }

        (Ratio? eighths, bool missing) = StatedTurn(clause, null);
        if (missing && crossing is Foot c)
        {
            // the feet allow only one way round
            bool toRight = behind ? c == Foot.Right : c == Foot.Left;
            eighths = toRight ? clause.Amount!.Value : -clause.Amount!.Value;
        }

        bool amountMissing = clause.Amount is null;
        if (amountMissing)
        {
            bool toRight = clause.TurnSide is Foot side ? side == Foot.Right : crossing is Foot f && (behind ? f == Foot.Right : f == Foot.Left);
            eighths = crossing is null ? 0 : toRight ? 4 : -4;
        }

        Turn turn = Turn.FromEighths(eighths ?? 0);
        bool stated = clause.WeightNote is not null || clause.Feet.Count > 0;
        Foot? end = clause.WeightFoot ?? (clause.Feet.Count > 0 ? clause.Feet[^1].Foot : crossing?.Other());
        StepAction action = clause.WeightNote == TermKind.WeightBoth || end is null
            ? new StepAction(ActionKind.Unwind, ActingFoot.Both, Direction.InPlace, Contact.Ball, WeightEffect.Shares, turn)
            : end is Foot foot
                ? new StepAction(ActionKind.Unwind, foot.ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes, turn)
                : new StepAction(ActionKind.Unwind, ActingFoot.Both, Direction.InPlace, Contact.Ball, WeightEffect.Unknown, turn);
        variants.Add(new Variant
        {
            Definition = lexicon.Catalogue.Find("unwind"),
            Named = null,
            Rows = [new VariantRow(action, Counts.Zero, true)],
            FootNamed = true,
            StatedTurn = turn,
            TurnDirectionMissing = missing && crossing is null,
            TurnAmountMissing = amountMissing,
            WeightStated = stated,
        });
    }

    private void AddVerbless(List<Variant> variants, Clause clause, Clause? previous, Situation situation)
    {
        if (clause.Part == "knee" && !clause.HasLift && clause.Dir?.Direction is not Direction.Up)
        {
            return;
        }

        if (clause.Part == "knee")
        {
            StepAction hitch = lexicon.Verbs.Usual(ActionKind.Hitch);
            AddFootMoves(variants, clause, hitch, FootRule.Free, FeetOf(clause, FootRule.Free, situation, ActionKind.Hitch), situation, 0.1);
            return;
        }

        if (clause.Part is "heels" or "toes" && (clause.PartFirst || clause.BothFeet))
        {
            bool heels = clause.Part == "heels";
            bool split = clause.Dir?.Direction is Direction.Out or Direction.In;
            ActionKind kind = (heels, split) switch
            {
                (true, true) => ActionKind.SplitHeels,
                (true, false) => ActionKind.SwivelHeels,
                (false, true) => ActionKind.SplitToes,
                _ => ActionKind.SwivelToes,
            };
            clause.Inherited = kind;
            AddBodyMove(variants, clause, kind, lexicon.Verbs.Usual(kind), true, situation);
            return;
        }

        if (clause.Part is "heels" or "toes" && clause.Dir?.Direction is Direction.Out or Direction.In)
        {
            ActionKind fan = clause.Part == "heels" ? ActionKind.FanHeel : ActionKind.FanToe;
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(fan), FootRule.Any, FeetOf(clause, FootRule.Any, situation, fan), situation, 0);
            return;
        }

        if (clause.IsWith && clause.BothFeet && clause.Part.Length == 0)
        {
            // "with feet apart" says how, not what
            return;
        }

        if (clause.BothFeet && clause.Part.Length == 0 && clause.Dir is { Direction: Direction.Out or Direction.In } && clause.Feet.Count == 2 && clause.Feet[0].Foot != clause.Feet[1].Foot)
        {
            // "feet apart R, L": one after the other
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Step), FootRule.Free, FeetOf(clause, FootRule.Free, situation, ActionKind.Step), situation, 0);
            return;
        }

        if (clause.BothFeet && clause.Part.Length == 0 && clause.Dir is { Direction: Direction.Out or Direction.In or Direction.Together })
        {
            if (clause.Dir.Direction == Direction.Out && previous is { Feet.Count: > 1, Head.Verb: ActionKind.Jump or ActionKind.Step })
            {
                // "jump back L, R, feet apart": where both feet are then
                variants.Add(new Variant { Definition = null, Named = null, Rows = [], Cost = -0.1 });
            }

            AddBodyMove(variants, clause, ActionKind.Jump, lexicon.Verbs.Usual(ActionKind.Jump), true, situation);
            return;
        }

        ActionKind? inherited = previous?.Head?.Verb ?? previous?.Inherited;
        if (inherited is ActionKind.Jump && clause.Feet.Count == 0 && clause.Dir?.Direction is Direction.In or Direction.Out or Direction.Together or Direction.Home)
        {
            // "jump out, in"
            clause.Inherited = inherited;
            AddBodyMove(variants, clause, ActionKind.Jump, lexicon.Verbs.Usual(ActionKind.Jump), true, situation);
            return;
        }

        if (inherited is ActionKind.FanToe or ActionKind.FanHeel && clause.Feet.Count == 0 && clause.Dir?.Direction is Direction.In or Direction.Out or Direction.Centre or Direction.Home)
        {
            // "R toe fan out, in"
            clause.Inherited = inherited;
            Foot fanned = situation.Last?.Action.Foot.ToFoot() ?? Foot.Right;
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(inherited.Value), FootRule.Any, [(fanned, true)], situation, 0);
            return;
        }

        if (inherited is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Bump or ActionKind.Twist or ActionKind.Sway or ActionKind.Swivel && clause.Part.Length == 0
            && (clause.IsFeetOnly || clause.Dir?.Direction is Direction.Centre or Direction.Home || (inherited is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Swivel && clause.Feet.Count == 0 && clause.Dir?.Direction is Direction.Back or Direction.In or Direction.Together) || (clause.Feet.Count == 0 && clause.DirSide is not null)))
        {
            // "swivel heels right, centre, right, centre"
            clause.Inherited = inherited;
            if (inherited == ActionKind.Sway)
            {
                AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Sway), FootRule.Any, FeetOf(clause, FootRule.Any, situation, ActionKind.Sway), situation, 0);
            }
            else
            {
                AddBodyMove(variants, clause, inherited.Value, lexicon.Verbs.Usual(inherited.Value), inherited != ActionKind.Bump, situation);
            }

            return;
        }

        bool previousGesture = inherited is ActionKind.Touch or ActionKind.Point or ActionKind.Kick or ActionKind.Tap or ActionKind.Dig
            || (inherited is null && previous is { Head: null, Part: "heel" or "toe" });
        List<(Foot, bool)> feet = FeetOf(clause, FootRule.Free, situation, ActionKind.Step);
        if (clause.Part is "heel" or "toe" or "heels" or "toes" && clause.Dir?.Direction is not Direction.Down)
        {
            StepAction usual = lexicon.Verbs.Usual(clause.Part is "heel" or "heels" ? ActionKind.Dig : ActionKind.Touch);
            usual = usual with { Contact = clause.Part is "heel" or "heels" ? Contact.Heel : Contact.Toe };
            AddFootMoves(variants, clause, usual, FootRule.Free, feet, situation, 0);
            return;
        }

        if (clause.Part is "heel" or "toe" or "heels" or "toes" && clause.Dir?.Direction is Direction.Down)
        {
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Drop) with { Effect = WeightEffect.Takes, Contact = Contact.Flat }, FootRule.Free, feet, situation, 0);
            return;
        }

        if (clause.Dir is null && clause.Feet.Count == 0 && clause.Part.Length == 0 && !clause.Diagonal)
        {
            return;
        }

        if (clause is { Amount: 8, HasTurnWord: true, Feet.Count: 2, TurnSide: Foot round } && clause.Dir?.Direction is null or Direction.Forward or Direction.Back
            && lexicon.Catalogue.Find(clause.Dir?.Direction == Direction.Back ? "full_turn_back" : "full_turn_forward") is StepDefinition fullTurn)
        {
            // "full turn left travelling forward R, L": half on each step
            AddFullTurn(variants, clause, fullTurn, round, situation);
            return;
        }

        Direction? direction = clause.Dir?.Direction;
        double bare = clause.HasStyle && clause.Feet.Count == 0 && clause.Part.Length == 0 ? 0.6 : 0;
        bool sameFoot = clause.Feet.Count == 0 || (previous is { Feet.Count: > 0 } && clause.Feet[0].Foot == previous.Feet[^1].Foot);
        StepAction step = lexicon.Verbs.Usual(ActionKind.Step);
        if (clause is { Dir.Direction: Direction.Forward, Feet.Count: 1 } && clause.DirText.Equals("in front", StringComparison.OrdinalIgnoreCase)
            && situation.Last is { Action: { Kind: ActionKind.Step, Direction: Direction.Side } aside } && aside.Foot.ToFoot() == clause.Feet[0].Foot.Other())
        {
            // "R to side, L behind, R to side, L in front": across the other foot
            clause.Dir = clause.Dir with { Direction = Direction.CrossFront };
        }

        if (clause.Part is "ball" && _next?.Head?.Verb == ActionKind.Drop)
        {
            // "ball of R forward, lower R heel": a strut
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Touch), FootRule.Free, feet, situation, 0);
            return;
        }

        if (clause.Part == "ball" && clause.Dir is null)
        {
            step = step with { Direction = Direction.Together };
        }

        if (clause.Dir is { Special: "lock" })
        {
            bool goingBack = situation.Last?.Action.Direction is Direction.Back or Direction.DiagonalBack;
            Clause locked = clause;
            locked.Dir = clause.Dir with { Direction = clause.Dir.Direction == Direction.LockFront || goingBack ? Direction.LockFront : Direction.LockBehind };
        }

        if (previousGesture && sameFoot && clause.Feet.Count == 0 && inherited is ActionKind gesture && direction is Direction.Side or Direction.Forward or Direction.Back or Direction.In or Direction.Out)
        {
            StepAction usual = lexicon.Verbs.Usual(gesture);
            clause.Inherited = gesture;
            AddFootMoves(variants, clause, usual, FootRule.Free, feet, situation, 0);
            return;
        }

        bool unclear = previousGesture && sameFoot && clause.Feet.Count == 0 && inherited is ActionKind.Touch or ActionKind.Tap && direction is Direction.Together or Direction.Home;
        AddFootMoves(variants, clause, step, FootRule.Free, feet, situation, bare);
        if (inherited is ActionKind.Rock && clause.Feet.Count <= 1 && direction is Direction.Forward or Direction.Back or Direction.Side)
        {
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Rock), FootRule.Free, feet, situation, -0.05);
        }

        if (unclear)
        {
            int before = variants.Count;
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Touch), FootRule.Free, feet, situation, 0.05);
            for (int i = before; i < variants.Count; i++)
            {
                variants[i].Words = "a touch";
            }
        }
    }

    private static void AddFullTurn(List<Variant> variants, Clause clause, StepDefinition figure, Foot round, Situation situation)
    {
        List<VariantRow> rows = [];
        Weight weight = situation.Weight;
        double cost = 0;
        for (int i = 0; i < 2; i++)
        {
            StepAction action = figure.Rows[i].For(round) with { Foot = clause.Feet[i].Foot.ToActingFoot() };
            cost += FootCost(weight, action.Foot, FootRule.Free) * 0.5;
            weight = action.WeightAfter(weight);
            rows.Add(new VariantRow(action, figure.Rows[i].At, false));
        }

        variants.Add(new Variant { Definition = figure, Named = round, Rows = rows, Cost = cost, FootNamed = true, StatedTurn = Turn.FromEighths(round == Foot.Right ? 8 : -8) });
    }

    private void AddFigure(List<Variant> variants, Clause clause, StepDefinition original, Situation situation, double cost = 0)
    {
        Direction stated = clause.Dir?.Direction ?? Direction.Unstated;
        if (IsStepAndPivot(original) && clause is { Feet.Count: 0, Amount: null, TurnSide: Foot lead } && !clause.Head!.NamesAmount && situation.Weight.FreeFoot() == lead)
        {
            // "military turn R" with the right free: R steps, and the turn goes away from it
            clause = clause.Copy(mirrored: false);
            clause.Feet.Add(new FootWord(lead, false, false));
            clause.TurnSide = null;
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
            bool stands = word.MayBeReference && clause.Reference is null && clause.Feet.Count == 1 && situation.Weight.StandingFoot() == word.Foot && FirstRule(original) == FootRule.Free;
            sides.Add(stands ? (word.Foot.Other(), false) : (word.Foot, word.IsCertain));
        }

        Foot? travel = clause.DirSide;
        Foot? turnSide = clause.TurnSide;
        List<(Foot? Named, double Cost, bool IsNamed, bool AsFeetList)> choices = [];
        bool mirrorless = original.NamedBy == NamedBy.None && original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both);
        if (mirrorless)
        {
            choices.Add((Foot.Right, 0, true, false));
        }
        else if (sides.Count == 2 && sides[0].Side != sides[1].Side && original.Rows.Count > 2 && original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both))
        {
            // "applejacks R, L": the figure itself goes to both sides
            choices.Add((sides[0].Side, 0, true, false));
            sides.RemoveAt(1);
        }
        else if (clause.Times == 1 && sides.Count == 4 && sides[0].Side == sides[2].Side && sides[1].Side == sides[3].Side && sides[0].Side != sides[1].Side && original.Rows.Count > 2 && original.Rows.All(r => r.Foot is RelativeFoot.None or RelativeFoot.Both))
        {
            // "applejacks L, R, L, R": twice to both sides
            clause.Times = 2;
            choices.Add((sides[0].Side, 0, true, false));
        }
        else if (original.NamedBy is NamedBy.Travel or NamedBy.Turn)
        {
            Foot? way = travel ?? (original.NamedBy == NamedBy.Turn && turnSide is not null ? turnSide : sides.Count == 1 ? sides[0].Side : null);
            if (way is null && sides.Count > 1 && FeetFit(original, sides) is Foot fit)
            {
                way = fit;
            }

            if (way is Foot named)
            {
                choices.Add((named, 0, true, false));
            }
        }
        else if (sides.Count == 4 && sides[0].Side == sides[2].Side && sides[1].Side == sides[3].Side && sides[0].Side != sides[1].Side && FeetFit(original, sides.GetRange(0, 2)) is Foot twice && clause.Times == 1)
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
            choices.Add((free is null || FirstActing(original) == RelativeFoot.Same ? (free ?? way) : way, 0, free is null, false));
        }

        if (choices.Count == 0)
        {
            Foot? next = NextFoot(situation);
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
        if (definition.Rows.Count < 2 || (own, stated) is not ((Direction.Forward or Direction.Side, Direction.Back) or (Direction.Back or Direction.Side, Direction.Forward)))
        {
            return definition;
        }

        string way = stated == Direction.Back ? " back" : " forward";
        if (own == Direction.Side)
        {
            // "chassé forward": the sideways figure has a sister that goes on
            List<string> names = [.. definition.Aliases.Prepend(definition.Name).Select(n => n + way)];
            return lexicon.Catalogue.Definitions.FirstOrDefault(d => d.Rows.Count == definition.Rows.Count && d.Rows[0].Action.Direction == stated && (names.Contains(d.Name) || d.Aliases.Any(names.Contains))) ?? definition;
        }

        string name = definition.Name + way;
        return lexicon.Catalogue.Definitions.FirstOrDefault(d => d.Name == name || d.Aliases.Contains(name)) ?? definition;
    }

    private bool CueMatches(StepDefinition definition, Clause clause, Direction stated)
    {
        foreach (string cue in definition.Cues)
        {
            bool match = cue switch
            {
                "forward" => stated == Direction.Forward,
                "back" => stated == Direction.Back,
                "side" => stated == Direction.Side || clause.DirSide is not null,
                "cross" => stated == Direction.CrossFront,
                "behind" => stated == Direction.CrossBehind,
                "in place" or "in-place" => stated is Direction.InPlace or Direction.Together,
                "diagonal" => clause.Diagonal,
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

    private static FootRule FirstRule(StepDefinition definition) => definition.Rows.Count > 0 ? definition.Rows[0].Action.Traits.FootRule : FootRule.Free;

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
            List<Foot> gestures = definition.Rows.Where(r => r.Action.Effect == WeightEffect.Keeps && r.For(named).Foot.ToFoot() is not null).Select(r => r.For(named).Foot.ToFoot()!.Value).ToList();
            bool tail = sides.Count > 2 && sides[0].Side == named && all.Count > given.Count - 1 && given.Skip(1).SequenceEqual(all.Skip(all.Count - given.Count + 1));
            if (tail || (gestures.Count > 1 && given.SequenceEqual(gestures)) || given.SequenceEqual(all) || given.SequenceEqual(weighted) || given.SequenceEqual(core) || given.Skip(1).SequenceEqual(all) && sides[0].Side == named && sides.Count > 2)
            {
                return named;
            }
        }

        return null;
    }

    private void AddEachFoot(List<Variant> variants, Clause clause, StepDefinition definition, List<(Foot Side, bool Certain)> sides, double cost, Situation situation)
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
                total += FootCost(weight, action.Foot, action.Traits.FootRule) * 0.5;
                weight = action.WeightAfter(weight);
                rows.Add(new VariantRow(action, at + row.At, row.Stretches));
            }

            at += definition.Length;
        }

        variants.Add(new Variant { Definition = definition, Named = sides[0].Side, Rows = rows, Cost = total, FootNamed = true });
    }

    private void AddFigureNamed(List<Variant> variants, Clause clause, StepDefinition original, Foot named, double cost, bool isNamed, Situation situation)
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

        (Ratio? eighths, bool missing) = StatedTurn(clause, impliedSide);
        if (clause.Amount is null && clause.TurnSide is Foot wayRound && original.TotalTurn.Sign != 0)
        {
            Ratio native = original.TotalTurn.Amount;
            eighths = wayRound == Foot.Right ? native : -native;
        }

        StepDefinition definition = original;
        bool leadsInto = clause.TurnFirst && clause.TurnsInto && original.TotalTurn.Sign == 0;
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
            && (definition.Id.StartsWith("pivot", StringComparison.Ordinal) || definition.Id.StartsWith("monterey", StringComparison.Ordinal) || definition.Id.StartsWith("unwind", StringComparison.Ordinal) || definition.Id.StartsWith("paddle", StringComparison.Ordinal) || definition.Id.StartsWith("push", StringComparison.Ordinal));
        List<VariantRow> rows = RowsOf(definition, named, eighths, clause);
        Weight weight = situation.Weight;
        double footCost = 0;
        foreach (VariantRow row in rows)
        {
            footCost += FootCost(weight, row.Action.Foot, row.Action.Traits.FootRule);
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
        bool beside = _next?.Head?.Verb is ActionKind.Clap or ActionKind.Snap or ActionKind.Slap or ActionKind.Arms or ActionKind.Bump or ActionKind.Shimmy;
        if (definition.Rows.Count >= 4 && definition.Rows.Count % 2 == 0 && (clause.HalfOf is not null || (_next is not { Head: null, Feet.Count: 0 } && IsMirrorOfItself(definition))))
        {
            AddHalf(variants, whole, clause, situation);
        }

        bool figureFollows = _next is { Head: { Figures.Count: > 0, Verb: null } after } && after.Figures.All(f => f.Rows.Count > 2);
        bool saysFinish = finish < definition.Rows.Count && clause.HeadText.Contains(definition.Rows[finish].Action.Traits.Word, StringComparison.OrdinalIgnoreCase);
        if (finish < definition.Rows.Count && !beside && !saysFinish)
        {
            variants.Add(Cut(whole, finish, _next is null ? 0.3 : figureFollows ? 0.4 : 0.02));
        }

        // a spiral whose step is written out: "step R forward, full spiral left"
        bool spiral = rows.Count == 2 && rows[1].Action.Kind == ActionKind.Pivot && rows[0].Action.Foot == rows[1].Action.Foot && rows[0].Action.Effect == WeightEffect.Takes;
        if (spiral && situation.Last is { Action.Effect: WeightEffect.Takes } before && (before.Action.Foot == rows[0].Action.Foot || !isNamed))
        {
            Foot standing = before.Action.Foot.ToFoot() ?? named;
            StepAction turning = standing == named ? rows[1].Action : rows[1].Action.Mirrored();
            if (eighths is Ratio way)
            {
                turning = turning with { Turn = Turn.FromEighths(way) };
            }

            variants.Add(new Variant { Definition = definition, Named = standing, Rows = [new VariantRow(turning, Counts.Zero, false)], Cost = cost, FootNamed = true, StatedTurn = turning.Turn, WeightStated = true });
        }

        // a box whose last step is written out: "jazz box R, cross"
        bool lastIsTold = _next is { Head: null, Dir: not null, IsAmp: false }
            || (_next is { Head.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Brush or ActionKind.Scuff or ActionKind.Hitch or ActionKind.Kick or ActionKind.Flick, IsWith: false } last && (last.Feet.Count == 0 || last.Feet[0].Foot.ToActingFoot() == rows[^1].Action.Foot));
        if (finish == definition.Rows.Count && definition.Rows.Count == 4 && lastIsTold && definition.Rows[3].Action.Effect == WeightEffect.Takes)
        {
            variants.Add(Cut(whole, 3, 0.3));
        }

        // a rock whose recover is written out
        if (_recoverFollows && definition.Rows.Count == 2 && definition.Rows[0].Action.Kind == ActionKind.Rock && definition.Rows[1].Action.Kind == ActionKind.Recover)
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
            cost += FootCost(weight, row.Action.Foot, row.Action.Traits.FootRule);
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

    private void AddRepeated(List<Variant> variants, Variant first, StepDefinition definition, int times, Clause clause, Situation situation, Ratio? eighths)
    {
        // each time with the foot that is then free
        List<VariantRow> rows = [];
        Weight weight = situation.Weight;
        Foot named = first.Named ?? Foot.Right;
        Counts at = Counts.Zero;
        double cost = first.Cost;
        for (int i = 0; i < times; i++)
        {
            if (i > 0 && FirstRule(definition) != FootRule.Standing && weight.FreeFoot() is Foot free && definition.NamedBy is NamedBy.FirstFoot or NamedBy.ActingFoot or NamedBy.Travel or NamedBy.Turn)
            {
                bool same = FirstActing(definition) != RelativeFoot.Other;
                named = same ? free : free.Other();
            }

            foreach (VariantRow row in RowsOf(definition, named, eighths, clause))
            {
                weight = row.Action.WeightAfter(weight);
                rows.Add(row with { At = row.At + at });
            }

            at += definition.Length;
        }

        variants.Add(new Variant { Definition = definition, Named = first.Named, Rows = rows, Cost = cost, FootNamed = first.FootNamed, StatedTurn = first.StatedTurn, TurnDirectionMissing = first.TurnDirectionMissing, TurnAmountMissing = first.TurnAmountMissing, Direction = first.Direction });
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

        return definition.Amounts.Count > 0 && definition.Amounts.All(a => a > 0) ? 1 : definition.Amounts.Count > 0 && definition.Amounts.All(a => a < 0) ? -1 : 0;
    }

    private static List<VariantRow> RowsOf(StepDefinition definition, Foot named, Ratio? eighths, Clause clause)
    {
        List<VariantRow> rows = new(definition.Rows.Count);
        Turn native = named == Foot.Right ? definition.TotalTurn : -definition.TotalTurn;
        bool respread = eighths is Ratio stated && stated != native.Eighths;
        foreach (PatternRow row in definition.Rows)
        {
            StepAction action = row.For(named);
            if (clause.Size != 0 && rows.Count == 0)
            {
                action = action with { Size = SizeOf(clause) };
            }

            if (action.Kind == ActionKind.Recover && action.Turn.Sign != 0 && IsStepAndPivot(definition))
            {
                // the catalogue calls it a recover; on the floor it is the pivot
                action = action with { Kind = ActionKind.Pivot };
            }

            rows.Add(new VariantRow(respread ? action with { Turn = Turn.None } : action, row.At, row.Stretches));
        }

        bool turnsAway = (clause.TurnFirst && clause.TurnsInto && rows.Count > 1) || clause.TurnFirst && definition is { NamedBy: NamedBy.Travel or NamedBy.FirstFoot } && rows.Count > 1 && rows[0].Action.Direction == Direction.Side && eighths is Ratio away && away.Sign > 0 != (named == Foot.Right);
        if (respread && turnsAway)
        {
            // "1/4 left chassé right": the turn first, then the way of the figure
            rows[0] = rows[0] with { Action = rows[0].Action with { Turn = Turn.FromEighths(eighths!.Value) } };
        }
        else if (respread && rows.Count > 0)
        {
            Spread(rows, definition, eighths!.Value);
        }

        if (definition is { NamedBy: NamedBy.Turn, Rows.Count: 1 } && clause is { TurnSide: not null, Feet: [{ } stepping] } && rows[0].Action is { Kind: ActionKind.Step, Effect: WeightEffect.Takes })
        {
            // "hinge 1/2 left stepping R to side": the foot is told
            rows[0] = rows[0] with { Action = rows[0].Action with { Foot = stepping.Foot.ToActingFoot() } };
        }

        if (definition.Rows.Count == 1 && clause.Dir is not null && rows[0].Action.Foot.ToFoot() is Foot acting)
        {
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = DirectionOf(clause, acting, rows[0].Action.Direction, rows[0].Action.Kind) } };
        }

        bool crossed = rows.Count == 2 && rows[0].Action.Kind == ActionKind.Rock && clause.Dir?.Direction is Direction.CrossFront or Direction.CrossBehind;
        if (crossed)
        {
            // "back rock behind R"
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = clause.Dir!.Direction } };
        }

        bool strut = rows.Count == 2 && rows[1].Action.Kind == ActionKind.Drop;
        if (strut && clause.Dir is not null && rows[0].Action.Foot.ToFoot() is Foot struts)
        {
            rows[0] = rows[0] with { Action = rows[0].Action with { Direction = DirectionOf(clause, struts, rows[0].Action.Direction, rows[0].Action.Kind) } };
        }

        if (clause.WeightNote is not null && rows.Count > 0)
        {
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
            TermKind.WeightTakes when action.Foot.ToFoot() is not null => action with { Effect = WeightEffect.Takes },
            TermKind.WeightOn when clause.WeightFoot is Foot both && action.Foot == ActingFoot.Both => action with { Effect = both == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight },
            TermKind.WeightOn when clause.WeightFoot is Foot foot && (action.Foot.ToFoot() is null || action.Foot.ToFoot() == foot) => action with { Foot = foot.ToActingFoot(), Effect = WeightEffect.Takes },
            TermKind.WeightOn when clause.WeightFoot is Foot foot && action.Foot.ToFoot() == foot.Other() && action.Effect != WeightEffect.Takes => action,
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
                    rows[i] = rows[i] with { Action = rows[i].Action with { Turn = rows[i].Action.Turn + Turn.FromEighths(eighths * share.Share / total) } };
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
