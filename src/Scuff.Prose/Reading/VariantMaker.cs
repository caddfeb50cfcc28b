using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Makes the ways a clause can be danced, cheapest meaning first. Possible feet are preferred to impossible ones.</summary>
internal sealed class VariantMaker(Lexicon lexicon, bool isWaltz = false)
{
    private readonly FigureVariants _figures = new(lexicon, isWaltz);
    private readonly TurnVariants _turns = new(lexicon);

    private Clause? _next;

    /// <summary>The first clause after it that tells more than arms, or null: what the feet do next.</summary>
    public Clause? Onward { get; set; }

    /// <summary>All variants of one clause in a situation.</summary>
    public List<Variant> Make(Clause clause, Clause? previous, Clause? next, Situation situation)
    {
        bool recoverFollows = next?.Head?.Verb is ActionKind.Recover or ActionKind.Shift || next?.WeightNote is TermKind.WeightOn
            || next is { Head: null, Dir.Direction: Direction.Forward or Direction.Back or Direction.InPlace or Direction.Home };
        recoverFollows &= !clause.HeadText.Contains("rec", StringComparison.OrdinalIgnoreCase);
        List<Variant> variants = [];
        _next = next;
        _figures.Next = next;
        _figures.RecoverFollows = recoverFollows;
        if (clause.TurnSide is null && clause.DirSide is Foot turnedTo && clause.Head is not null
            && (clause.Head.Verb is ActionKind.Pivot or ActionKind.Unwind
            || clause.Head.Figures.Any(f => f.TotalTurn.Sign != 0 && f.NamedBy is NamedBy.FirstFoot && VariantParts.IsStepAndPivot(f))))
        {
            clause.TurnSide = turnedTo;
        }

        bool slapsBody = clause.Head?.Verb == ActionKind.Slap && (clause.HasStyle || (clause is { SaysIt: true, Feet.Count: 0 }
                && previous?.Head?.Verb is ActionKind.Hitch or ActionKind.Hook or ActionKind.Flick))
            && !(clause.Feet.Count == 1 && (clause.NamesBoot || clause.HeadText.Contains("boot", StringComparison.OrdinalIgnoreCase)
                || clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase)));
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

                if (clause.Head.Verb is ActionKind.Drag or ActionKind.Slide && definition.Rows.Count > 1
                    && clause.Dir?.Direction is Direction.Together or Direction.In or Direction.Up)
                {
                    // "slide right up to left": the foot that slides goes to the other
                    continue;
                }

                if (OneFootOf(clause, definition) is ActionKind fanned)
                {
                    // "right toes out": one foot fans
                    clause.Inherited = fanned;
                    AddFootMoves(variants, clause, lexicon.Verbs.Usual(fanned) with { Direction = definition.Rows[0].Action.Direction },
                        FootRule.Any, [(clause.Feet[0].Foot, true)], situation, 0);
                    continue;
                }

                if (clause.BothFeet && definition.Rows is [{ Action.Kind: ActionKind.Hop or ActionKind.Leap }])
                {
                    // "small hop back on both"
                    AddBodyMove(variants, clause, ActionKind.Jump, lexicon.Verbs.Usual(ActionKind.Jump), true, situation);
                    continue;
                }

                if (definition.Rows.Count == 1 && clause.Head.Verb is ActionKind.Pivot or ActionKind.Unwind)
                {
                    // the verb knows more of the feet than the bare entry
                    continue;
                }

                _figures.AddFigure(variants, clause, definition, situation);
                foreach (OtherReading other in definition.Others)
                {
                    // "lock step" is danced on 1&2 as well as on 1-3, "polka" with its hop first or last
                    bool last = other.Words.EndsWith("last", StringComparison.Ordinal);
                    if ((other.Words.StartsWith("quick", StringComparison.Ordinal) || other.Words.StartsWith("a plain", StringComparison.Ordinal) || last)
                        && other.Id is string id
                        && lexicon.Catalogue.Find(id) is StepDefinition quick)
                    {
                        _figures.AddFigure(variants, clause, quick, situation, last ? 0.35 : 0.2);
                    }
                }

                bool paddle = definition.Rows is [{ Action.Kind: ActionKind.Press }, { Action.Kind: ActionKind.Pivot }]
                    && situation.Last is
                    {
                        Action:
                        {
                            Kind: ActionKind.Step, Effect: WeightEffect.Takes,
                            Direction: Direction.Forward or Direction.Unstated
                        }
                    };
                if ((VariantParts.IsStepAndPivot(definition) || paddle) && clause.Head.Verb is null)
                {
                    // "step R forward, half pivot left": the step is written out already
                    (int? stated, Foot? way) = (clause.Amount, clause.TurnSide);
                    clause.Amount ??= definition.Rows.Count == 2 ? definition.TotalTurn.Amount.Floor : 4;
                    // "1/8 paddle to the left", "1/8 paddle left onto LEFT": the way round
                    clause.TurnSide ??= clause.DirSide ?? (paddle && stated is not null && clause.Feet is [{ IsCertain: false } side, ..] ? side.Foot : null);
                    _turns.AddPivot(variants, clause, situation);
                    (clause.Amount, clause.TurnSide) = (stated, way);
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

    /// <summary>"Touch R side, together, touch L side, together": the first together was a step, and so is the second.</summary>
    private static bool SteppedBefore(PlacedRow? last) =>
        last is
        {
            Action: { Effect: WeightEffect.Keeps } touched,
            Previous:
            {
                Action: { Kind: ActionKind.Step, Direction: Direction.Together or Direction.Home } closed,
                Previous.Action: { Effect: WeightEffect.Keeps } first
            }
        }
        && first.Kind == touched.Kind && first.Foot == closed.Foot && closed.Foot != touched.Foot;

    /// <summary>"In front" after a side step, or "front" after behind and side: across the other foot.</summary>
    private static bool IsInFront(string words, PlacedRow? last) => words.Equals("in front", StringComparison.OrdinalIgnoreCase)
        || (words.Equals("front", StringComparison.OrdinalIgnoreCase)
            && last?.Previous is { Action: { Kind: ActionKind.Step, Direction: Direction.CrossBehind } });

    private static bool StandsOnParts(Clause clause, Clause? other) => other is { PartLast: true, Feet: [{ } next], WeightNote: null }
        && clause is { PartLast: true, Feet: [{ } foot], WeightNote: null } && other.Part == clause.Part && next.Foot != foot.Foot;

    private static bool IsPlacing(Clause clause, StepDefinition definition)
        => definition.Rows.Count == 1 && definition.Rows[0].Action.Kind == ActionKind.Hold && clause.Feet.Count == 1
            && (clause.Dir is not null || clause.Part.Length > 0);

    private static ActionKind? OneFootOf(Clause clause, StepDefinition definition) => definition.Rows.Count == 1 && clause.Feet.Count == 1
        && !clause.BothFeet
        ? definition.Rows[0].Action.Kind switch
        {
            ActionKind.SplitToes => ActionKind.FanToe,
            ActionKind.SplitHeels => ActionKind.FanHeel,
            _ => null,
        }
        : null;

    /// <summary>Arms, hips and the like may be made beside a step and take no count of their own.</summary>
    private void AddBeside(List<Variant> variants, Clause clause, Situation situation)
    {
        if (clause.SameTime && situation.Last is not null
            && variants.Find(v => v.Rows is [{ Action.Effect: WeightEffect.Keeps }] && !v.Accompanies) is Variant gesture)
        {
            // "rock R back and kick L forward at the same time"
            variants.Clear();
            variants.Add(new Variant { Definition = gesture.Definition, Named = gesture.Named, Rows = gesture.Rows, Cost = gesture.Cost, Accompanies = true });
            return;
        }

        Variant? body = variants.Find(v => v.Rows.Count > 0 && !v.Accompanies
            && v.Rows.TrueForAll(r => r.Action.Kind is ActionKind.Arms or ActionKind.Bump or ActionKind.RollHips or ActionKind.RollBody
            or ActionKind.Shimmy or ActionKind.PopShoulder or ActionKind.PopKnee or ActionKind.Dip or ActionKind.RollKnee or ActionKind.Snap
            or ActionKind.Clap or ActionKind.Slap or ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide
            && r.Action.Effect == WeightEffect.Keeps || (r.Action.Kind is ActionKind.Hitch or ActionKind.Bounce && clause.IsWith)
            || (r.Action.Kind is ActionKind.Bounce && clause is { Head.IsIng: true, TimesStated: false })
            || (r.Action.Kind is ActionKind.Hitch or ActionKind.Hook or ActionKind.Flick && clause.HasLift && clause.Link is not Link.Hard)));
        if (body is null)
        {
            return;
        }

        bool drawn = body.Rows[0].Action.Kind is ActionKind.Sweep or ActionKind.Ronde or ActionKind.Drag or ActionKind.Slide;
        if (drawn)
        {
            if (clause.Link is not Link.Hard || clause.Head is { IsIng: true } || DragsIntoTouch(clause))
            {
                // "step R back sweeping L": the sweep rides on the step
                variants.Add(new Variant
                {
                    Definition = body.Definition,
                    Named = body.Named,
                    Rows = [body.Rows[0]],
                    Cost = body.Cost + 0.25,
                    Accompanies = true
                });
            }

            return;
        }

        if (body.Rows.Count > 1 && clause.Link is not Link.Hard && (clause.TimesStated || clause.Feet.Count == body.Rows.Count)
            && body.Rows[0].Action.Kind is ActionKind.Bump or ActionKind.RollHips)
        {
            // "step R to side and bump hips twice": the first bump rides on the step
            variants.Add(new Variant
            {
                Definition = body.Definition,
                Named = null,
                Rows = [.. body.Rows.Skip(1)],
                Cost = body.Cost + 0.3,
                Beside = body.Rows[0]
            });
        }

        if (clause.IsWith && !clause.TimesStated && body.Rows[0].Action.Kind is ActionKind.Shimmy or ActionKind.RollBody or ActionKind.Dip
            or ActionKind.PopShoulder)
        {
            // "big step R to side with a shimmy": how the step is made, hardly a count of its own
            body.Cost += 0.4;
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

    // "big step R, drag L towards R and touch": the drag leads to the touch
    private bool DragsIntoTouch(Clause clause) => clause.LinkAfter is Link.Soft && clause.Feet.Count == 1
        && _next is { Head.Verb: ActionKind.Touch or ActionKind.Tap, Feet.Count: 0, Amount: null, IsWith: false }
        && _next.Dir?.Direction is null or Direction.Together;

    private void AddVerb(List<Variant> variants, Clause clause, Clause? previous, ActionKind verb, Situation situation)
    {
        bool upStomp = clause.Head!.VerbKeepsWeight;
        if (verb is ActionKind.Hop or ActionKind.Leap && clause.BothFeet)
        {
            // "hop back on both": who leaves the floor with both feet jumps
            verb = ActionKind.Jump;
        }

        switch (verb)
        {
            case ActionKind.Pivot:
                _turns.AddPivot(variants, clause, situation);
                return;
            case ActionKind.Swivel or ActionKind.Twist when clause.Amount is not null:
                _turns.AddPivot(variants, clause, situation);
                return;
            case ActionKind.Unwind:
                _turns.AddUnwind(variants, clause, situation);
                return;
            case ActionKind.Hold when clause is { WeightNote: TermKind.WeightOn, WeightFoot: Foot settled } && situation.Weight == Weight.Shared:
                // "8 hold, weight on left" after swivels of both feet: standing still, the weight goes there
                StepAction still = StepAction.Hold with { Effect = settled == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight };
                variants.Add(Body(clause, still, 0, stretches: true));
                return;
            case ActionKind.Hold:
                variants.Add(Body(clause, StepAction.Hold, 0, stretches: true));
                return;
            case ActionKind.Slap when clause.Feet.Count == 1
                && (clause.NamesBoot || clause.HeadText.Contains("boot", StringComparison.OrdinalIgnoreCase)
                || clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase)):
                // the foot whose boot is slapped is lifted to the hand
                AddFootMoves(variants, clause, new StepAction(ActionKind.Slap, ActingFoot.None, Direction.Unstated, Contact.Air, WeightEffect.Keeps),
                    FootRule.Free, [(clause.Feet[0].Foot, true)], situation, 0);
                return;
            case ActionKind.Clap or ActionKind.Snap or ActionKind.Slap:
                AddAccompaniment(variants, clause, verb);
                return;
        }

        bool swayed = verb is ActionKind.Sway && clause.Link is Link.Soft && clause.Feet.Count == 1
            && situation.Last is { IsWith: false, Action: { Kind: ActionKind.Step, Direction: Direction.Side or Direction.Out } aside }
                && aside.Foot.ToFoot() == clause.Feet[0].Foot;
        if (swayed)
        {
            // "step R to side and sway R": how the step is made
            variants.Add(new Variant { Definition = null, Named = null, Rows = [], Cost = 0.3 });
        }

        if (verb is ActionKind.Sway && clause is { Link: Link.Soft, Feet.Count: > 2, Times: 1 }
            && situation.Last is { IsWith: false, Action: { Kind: ActionKind.Step, Direction: Direction.Side or Direction.Out } begun }
                && begun.Foot.ToFoot() == clause.Feet[0].Foot)
        {
            // "step R to side and sway R, L, R, L" on four counts: the first is how the step is made
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(verb), FootRule.Any, [.. clause.Feet.Skip(1).Select(f => (f.Foot, true))], situation, 0.3);
        }

        StepAction usual = lexicon.Verbs.Usual(verb);
        FootRule rule = verb == ActionKind.Dip ? FootRule.Standing : ActionTraits.Of(verb).FootRule;
        bool ofBoth = verb is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Swivel or ActionKind.Twist or ActionKind.SplitHeels
            or ActionKind.SplitToes or ActionKind.Bounce or ActionKind.Click
            || (verb is ActionKind.Jump && clause.Feet.Count == 0);
        bool ofBody = verb is ActionKind.Bump or ActionKind.RollHips or ActionKind.RollBody or ActionKind.Shimmy or ActionKind.PopShoulder
            or ActionKind.Arms || (verb is ActionKind.Dip && clause.Feet.Count == 0);
        ofBoth |= verb is ActionKind.Jump && situation.Weight == Weight.Shared && clause is { Feet.Count: 1, Reference: not null }
            && clause.Dir?.Direction is Direction.CrossFront or Direction.CrossBehind;
        if (ofBoth || ofBody || clause.BothFeet)
        {
            // "both shoulders", "both hands" are no feet
            AddBodyMove(variants, clause, verb, usual, (clause.BothFeet && !ofBody) || ofBoth, situation);
            return;
        }

        if (verb == ActionKind.Press && _next is { IsAmp: false } lifted && clause.Feet.Count < 2
            && (lifted.Head?.Verb is ActionKind.Recover or ActionKind.Shift
                || (lifted.Head is null or { Verb: ActionKind.Step or ActionKind.Rock } && lifted is { Feet.Count: 1, Part.Length: 0, IsTurnOnly: false }
                    && clause.Feet.Count == 1 && lifted.Feet[0].Foot != clause.Feet[0].Foot)))
        {
            // "press R forward, recover L": the other foot is free, so that part of the weight was put down
            usual = usual with { Effect = WeightEffect.Takes };
        }

        if (verb == ActionKind.Jump)
        {
            // "jump back L, R" lands on one foot after the other
            usual = usual with { Effect = WeightEffect.Takes };
        }

        bool slidesTo = verb == ActionKind.Slide && clause is { Feet.Count: 0, WeightNote: null, Dir: null }
            && _next is { Head.Verb: ActionKind.Step, Feet.Count: 0, IsAmp: false }
            && situation.Last is { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes } };
        if (slidesTo)
        {
            // "step, slide, step, brush": without feet they alternate, so that the slide closes
            usual = usual with { Effect = WeightEffect.Takes, Direction = Direction.Together };
        }

        if (verb is ActionKind.Slide or ActionKind.Drag
            && clause is
            {
                Feet.Count: 1, WeightNote: null,
                Dir.Direction: Direction.Together or Direction.In or Direction.Up or Direction.CrossBehind or Direction.LockBehind
            }
            && _next is { Head: { Verb: ActionKind.Step or ActionKind.Rock }, Feet.Count: 1, IsAmp: false, Part.Length: 0, IsWith: false } onward
            && onward.Feet[0].Foot != clause.Feet[0].Foot && !onward.Feet[0].MayBeReference && situation.Weight == clause.Feet[0].Foot.Other().ToWeight())
        {
            // "slide left next to right, step right forward": the right is free, so that the left has the weight
            usual = usual with { Effect = WeightEffect.Takes };
        }

        if (verb is ActionKind.Slide && clause is { Feet: [{ } slid], WeightNote: null, Diagonal: false }
            && clause.Dir?.Direction is Direction.Side or Direction.Forward or Direction.Back
            && Onward is { Feet: [{ MayBeReference: false } other], IsAmp: false, BothFeet: false } then && other.Foot != slid.Foot
            && (then.Head?.Verb is ActionKind.Drag or ActionKind.Slide or ActionKind.Rock or ActionKind.Touch or ActionKind.Tap or ActionKind.Step
                or ActionKind.Point or ActionKind.Stomp || then.Head is null)
            && situation.Weight == slid.Foot.Other().ToWeight()
            || (verb is ActionKind.Slide && clause is { Feet: [{ } second], WeightNote: null, Dir.Direction: Direction.Forward or Direction.Back }
                && previous is { Head.Verb: ActionKind.Slide, Feet: [{ } first] } && first.Foot != second.Foot
                && previous.Dir?.Direction == clause.Dir.Direction && situation.Weight == first.Foot.ToWeight()))
        {
            // "slide R to right side, L pulled near": the left is free then, so that the right has the weight
            usual = usual with { Effect = WeightEffect.Takes };
        }

        if (verb is ActionKind.Rock && clause is
            {
                Dir: null, Diagonal: false, DirSide: null, FootFirst: false, Times: 1, Amount: null,
                Feet: [{ IsCertain: false, IsWord: true }]
            }
            && (Onward is null || Onward.Head?.Verb is ActionKind.Recover))
        {
            // "rock right, recover", and "rock right" on a line of its own: the side, which is the foot's as well
            usual = usual with { Direction = Direction.Side };
        }

        if (upStomp || (verb == ActionKind.Stomp && clause.Dir?.Direction == Direction.Up))
        {
            usual = usual with { Effect = WeightEffect.Keeps };
        }

        string special = clause.Head.Special;
        bool placed = verb == ActionKind.Step && special == "step" && clause.HeadText.Length > 2
            && clause.HeadText[..3].ToLowerInvariant() is "put" or "pla" or "bri" or "set" or "pos";
        bool strut = verb == ActionKind.Step && clause.Part is "heel" or "toe" or "toes" or "ball" && _next?.Head?.Verb == ActionKind.Drop
            && (_next.Feet.Count == 0 || clause.Feet.Count == 0 || _next.Feet[0].Foot == clause.Feet[0].Foot);
        if (strut)
        {
            // "step R toe forward, drop heel": the weight comes with the drop
            verb = clause.Part == "heel" ? ActionKind.Dig : ActionKind.Touch;
            usual = lexicon.Verbs.Usual(verb);
        }

        if (placed && !strut && clause.Part is "heel" or "heels" or "toe" or "toes"
            && clause.Dir?.Direction is not (Direction.Together or Direction.Home or Direction.Down or Direction.InPlace))
        {
            // "put the right heel forward" is a touch of the heel
            AddVerbless(variants, clause, previous, situation);
            return;
        }

        if (verb == ActionKind.Recover
            && clause is { Dir.Direction: Direction.Together or Direction.Home or Direction.CrossFront or Direction.CrossBehind, Feet.Count: 1 })
        {
            // "replace R beside L" puts the foot there
            verb = ActionKind.Step;
            usual = lexicon.Verbs.Usual(ActionKind.Step);
        }

        if (special is "walk" or "run")
        {
            usual = usual with { Direction = Direction.Forward };
        }

        if (verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Press && clause.Part is "heel" or "heels"
            && clause.Head.Verb is not ActionKind.Press)
        {
            verb = ActionKind.Dig;
            usual = usual with
            {
                Kind = ActionKind.Dig,
                Contact = Contact.Heel,
                Direction = clause.Dir is null ? Direction.Forward
                : usual.Direction
            };
        }

        bool falls = situation.Last is not { Action: { Kind: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig } } on
            || (clause.Feet.Count == 1 && on.Action.Foot.ToFoot() != clause.Feet[0].Foot);
        if (verb is ActionKind.Drop && falls && clause.Feet.Count == 1
            && (clause.Diagonal || clause.Dir?.Direction is Direction.Forward or Direction.Back or Direction.Side))
        {
            // "heel down in front": it is put there, not lowered
            bool heel = clause.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase);
            verb = heel ? ActionKind.Dig : ActionKind.Touch;
            usual = lexicon.Verbs.Usual(verb);
        }

        if (verb is ActionKind.Grind && clause.Dir?.Direction is Direction.In or Direction.Out)
        {
            // "grind the toes from in to out": how the foot turns, not where it is put
            clause.Dir = null;
            usual = usual with { Direction = Direction.Forward };
        }

        if (verb is ActionKind.Flick && clause.Dir?.Direction is Direction.CrossFront)
        {
            // "flick R across the left shin" is a hook
            verb = ActionKind.Hook;
            usual = lexicon.Verbs.Usual(verb);
        }

        if (verb is ActionKind.Drop)
        {
            // "lift R heel, lower R heel": the heel comes down again, and the weight stays where it was
            bool again = situation.Last is { IsWith: false, Action: { Kind: ActionKind.Bounce, Effect: WeightEffect.Keeps, Foot: not ActingFoot.Both } };
            usual = usual with { Effect = again ? WeightEffect.Keeps : WeightEffect.Takes, Contact = Contact.Flat };
        }

        if (verb is ActionKind.Drop && clause.Part.Length == 0 && clause.Dir is not null)
        {
            usual = usual with { Direction = Direction.InPlace };
        }

        List<(Foot Foot, bool Named)> feet = FeetOf(clause, rule, situation, verb);
        AddFootMoves(variants, clause, usual, rule, feet, situation, 0, special is "walk" or "run" ? lexicon.Catalogue.Find(special + "_one") : null);

        if (verb == ActionKind.Step && situation.Weight == Weight.Shared && clause.Dir is null
            && clause.Feet is [{ IsCertain: false, IsWord: true } word] && special is not ("walk" or "run"))
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
            StepAction recover = new(ActionKind.Recover, rocking.Other().ToActingFoot(), Direction.InPlace, Contact.Flat, WeightEffect.Takes,
                one.Rows[0].Action.Turn);
            variants.Add(new Variant
            {
                Definition = lexicon.Catalogue.Find(RockEntry(one.Rows[0].Action.Direction)) ?? one.Definition,
                Named = rocking,
                Rows = [one.Rows[0] with { Action = one.Rows[0].Action with { Turn = Turn.None } }, new VariantRow(recover, Counts.One, false)],
                // "rock back L, recover": the recover is told already
                Cost = one.Cost + 0.3 + (_next is { Head.Verb: ActionKind.Recover, Dir: null, Amount: null } ? 1 : 0),
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

        if (feet.Count == 0 && verb == ActionKind.Drop && situation.Last is { Action: { Effect: WeightEffect.Keeps } laid }
            && laid.Foot.ToFoot() is Foot lowered && laid.Kind is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig)
        {
            feet.Add((lowered, true));
        }

        if (feet.Count == 0 && verb == ActionKind.Sway && clause.DirSide is Foot swaySide)
        {
            feet.Add((swaySide, true));
        }

        if (feet.Count == 1 && clause.Feet.Count == 1 && clause.Feet[0].MayBeReference && clause.Reference is null && rule == FootRule.Free
            && situation.Weight.StandingFoot() == feet[0].Item1)
        {
            // "cross over left" with the weight on the left: the right crosses over it
            feet[0] = (feet[0].Item1.Other(), false);
        }

        return feet;
    }

    private void AddFootMoves(List<Variant> variants, Clause clause, StepAction usual, FootRule rule, List<(Foot Foot, bool Named)> feet,
        Situation situation, double cost, StepDefinition? definition = null)
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
                FootRule.Any when usual.Kind is ActionKind.FanToe or ActionKind.FanHeel or ActionKind.RollKnee or ActionKind.PopKnee =>
                    VariantParts.NextFoot(situation),
                _ => VariantParts.NextFoot(situation),
            };
            if (next is null)
            {
                StepAction lost = usual with
                {
                    Foot = ActingFoot.None,
                    Effect = usual.Effect == WeightEffect.Keeps ? WeightEffect.Keeps
                    : WeightEffect.Unknown,
                    Direction = VariantParts.DirectionOf(clause, null, usual.Direction, usual.Kind)
                };
                variants.Add(Finish(clause, lexicon.Verbs.Definition(usual.Kind), null,
                    [new VariantRow(WithTurn(clause, lost, out bool noDirection), Counts.Zero, lost.Traits.Stretches)], cost, false, false,
                    noDirection));
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
            bool sameStomp = usual.Kind is ActionKind.Stomp && feet.Count == 1 && feet[0].Named && times > 1;
            if (i >= feet.Count && rows[^1].Action.Effect == WeightEffect.Takes && rule != FootRule.Standing && !sameStomp)
            {
                // "two walks", "step x2": the feet alternate
                foot = rows[^1].Action.Foot.ToFoot()!.Value.Other();
            }

            // "kick R forward twice": the second one by the foot that is named, too
            named &= i < feet.Count ? isNamed : feet[^1].Named;
            StepAction action = usual with { Foot = foot.ToActingFoot() };
            Direction direction = usual.Kind is ActionKind.Recover or ActionKind.Shift ? Direction.InPlace
                : VariantParts.DirectionOf(clause, foot, usual.Direction, usual.Kind);
            action = action with
            {
                Direction = foot == Foot.Right ? direction : clause.Dir is null ? direction.Mirrored() : direction,
                Contact = VariantParts.ContactOf(clause.Part, usual.Contact),
                Size = VariantParts.SizeOf(clause),
                Effect = VariantParts.EffectOf(clause, foot.ToActingFoot(), usual.Effect, out weightStated),
            };
            if (clause.WeightNote == TermKind.WeightOn && Math.Max(feet.Count, times) > 1 && !(sameStomp && clause.WeightFoot == foot.Other()))
            {
                action = action with { Effect = usual.Effect };
            }

            if (sameStomp && i < times - 1)
            {
                // "stomp R twice": the same foot, so that only the last can take the weight
                action = action with { Effect = WeightEffect.Keeps };
            }

            if (action is { Kind: ActionKind.Step, Effect: WeightEffect.Keeps } && clause.WeightNote is TermKind.WeightOn)
            {
                // "step L back, weight on R": hardly a step
                total += 0.5;
            }

            if (action is { Kind: ActionKind.Step, Effect: WeightEffect.Keeps } && clause.WeightNote is TermKind.WeightNone)
            {
                // "close without weight"
                action = action with { Kind = ActionKind.Touch, Contact = VariantParts.ContactOf(clause.Part, Contact.Ball) };
            }

            if (i == 0)
            {
                action = WithTurn(clause, action, out missing);
            }

            double footCost = VariantParts.FootCost(weight, action.Foot, rule);
            total += isNamed ? footCost * 0.5 : footCost;
            weight = action.WeightAfter(weight);
            rows.Add(new VariantRow(action, Counts.FromWhole(i), action.Traits.Stretches || clause.MayLast || clause.Lasts is not null));
        }

        variants.Add(Finish(clause, definition, feet[0].Foot, rows, total, named, weightStated, missing));
        if (rows.Count == 1 && rows[0].Action is { Turn.Sign: not 0, Effect: WeightEffect.Takes, Kind: ActionKind.Step } turned
            && clause.Dir?.Direction is null or Direction.Forward && turned.Foot.ToFoot() is Foot stepping)
        {
            // "step R turn 1/2 left" on two counts
            VariantRow step = rows[0] with { Action = turned with { Turn = Turn.None, Direction = Direction.Forward } };
            StepAction pivot = new(ActionKind.Pivot, stepping.Other().ToActingFoot(), Direction.InPlace, Contact.Ball, WeightEffect.Takes,
                turned.Turn);
            variants.Add(Finish(clause, lexicon.Verbs.Definition(usual.Kind), stepping, [step, new VariantRow(pivot, Counts.One, false)],
                total + 0.3, named, weightStated, missing));
        }
    }

    private static StepAction WithTurn(Clause clause, StepAction action, out bool directionMissing)
    {
        (Ratio? eighths, directionMissing) = VariantParts.StatedTurn(clause, null);
        return eighths is Ratio turn ? action with { Turn = Turn.FromEighths(turn) } : action;
    }

    private static Variant Finish(Clause clause, StepDefinition? definition, Foot? named, List<VariantRow> rows, double cost, bool footNamed,
        bool weightStated, bool directionMissing)
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

        // "stomp R stomp L clap hold": a list without commas, each on a count of its own
        bool listed = clause.Link is Link.Hard || (clause is { Link: Link.None, IsWith: false } && _next is { Head.Verb: ActionKind.Hold, Link: Link.None });
        Variant own = Body(clause, action, listed ? 0.1 : clause.Link is Link.None ? 0.2 : 0.4, stretches: false);
        variants.Add(Named(own, lexicon.Verbs.Definition(kind)));
        variants.Add(new Variant
        {
            Definition = lexicon.Verbs.Definition(kind),
            Named = null,
            Rows = [new VariantRow(action, Counts.Zero, false)],
            Cost = listed ? 0.3 : 0.1,
            Accompanies = true
        });
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
        if (verb is ActionKind.Jump && clause is { Feet.Count: 1, Dir.Direction: Direction.CrossFront or Direction.CrossBehind })
        {
            // "jump both feet crossed with right over left": the right foot lands in front
            bool rightInFront = (clause.Feet[0].Foot == Foot.Right) == (clause.Dir.Direction == Direction.CrossFront);
            ways.Add(rightInFront ? Direction.CrossFront : Direction.CrossBehind);
        }

        foreach (FootWord word in ways.Count > 0 ? [] : clause.Feet)
        {
            ways.Add(word.Foot == Foot.Right ? Direction.Right : Direction.Left);
        }

        if (ways.Count == 0 && clause.TurnSide is Foot turnSide && clause.Amount is null)
        {
            ways.Add(turnSide == Foot.Right ? Direction.Right : Direction.Left);
        }

        if (ways.Count == 0)
        {
            ways.Add(clause.DirSide is Foot side ? (side == Foot.Right ? Direction.Right : Direction.Left)
                : clause.Dir?.Direction ?? (usual.Direction is Direction.Right ? Direction.Unstated : usual.Direction));
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
                // "bounce both heels twice, weight stays on L": what has the weight already keeps it throughout
                bool keeps = verb is ActionKind.Bounce && clause.WeightStays && situation.Weight == weighted.ToWeight();
                action = action with
                {
                    Effect = last || keeps ? (weighted == Foot.Left ? WeightEffect.ToLeft : WeightEffect.ToRight) : both
                    ? WeightEffect.Shares : WeightEffect.Keeps
                };
            }

            if (clause.WeightNote == TermKind.WeightTakes && verb is ActionKind.Bump or ActionKind.RollHips && way is Direction.Right or Direction.Left)
            {
                // "bump R, L, R (weight changes with every bump)"
                action = action with { Effect = way is Direction.Left ? WeightEffect.ToLeft : WeightEffect.ToRight };
            }

            if (i == 0)
            {
                action = WithTurn(clause, action, out missing);
            }

            rows.Add(new VariantRow(action, Counts.FromWhole(i), action.Traits.Stretches || clause.MayLast || clause.Lasts is not null));
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

    private void AddVerbless(List<Variant> variants, Clause clause, Clause? previous, Situation situation)
    {
        if (clause is { Part: "knee", Dir.Direction: Direction.Up } && clause.DirText.StartsWith("straight", StringComparison.OrdinalIgnoreCase))
        {
            // "straighten both knees"
            clause.Part = "";
            clause.BothFeet = false;
        }

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

        if (clause is { HasLift: true, Part.Length: 0, Feet: [{ MayBeReference: false }], BothFeet: false, WeightNote: null }
            && clause.Dir?.Direction is null or Direction.Up or Direction.Forward or Direction.Back or Direction.CrossFront or Direction.CrossBehind
            or Direction.Side)
        {
            // "lift R behind L", "lifting L in front": a foot that is lifted steps nowhere
            ActionKind lift = clause.Dir?.Direction switch
            {
                Direction.CrossFront or Direction.CrossBehind => ActionKind.Hook,
                Direction.Back => ActionKind.Flick,
                _ => ActionKind.Hitch,
            };
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(lift), FootRule.Free, FeetOf(clause, FootRule.Free, situation, lift), situation, 0);
            return;
        }

        if (clause is { HasLift: true, Part: "heel" or "heels", Dir: null or { Direction: Direction.Up } })
        {
            // "lift R heel", "raise both heels": a heel that leaves the floor is not put forward, nor does it swivel
            StepAction bounce = lexicon.Verbs.Usual(ActionKind.Bounce);
            if (clause.Feet.Count == 0)
            {
                AddBodyMove(variants, clause, ActionKind.Bounce, bounce, true, situation);
            }
            else
            {
                AddFootMoves(variants, clause, bounce with { Effect = WeightEffect.Keeps }, FootRule.Any,
                    FeetOf(clause, FootRule.Any, situation, ActionKind.Bounce), situation, 0);
            }

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
            clause.Inherited = fan;
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(fan), FootRule.Any, FeetOf(clause, FootRule.Any, situation, fan), situation, 0);
            return;
        }

        if (clause.IsWith && clause.BothFeet && clause.Part.Length == 0)
        {
            // "with feet apart" says how, not what
            return;
        }

        if (clause.BothFeet && clause.Part.Length == 0 && clause.Dir is { Direction: Direction.Out or Direction.In } && clause.Feet.Count == 2
            && clause.Feet[0].Foot != clause.Feet[1].Foot)
        {
            // "feet apart R, L": one after the other
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Step), FootRule.Free,
                FeetOf(clause, FootRule.Free, situation, ActionKind.Step), situation, 0);
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

        bool rises = (previous?.Head?.Verb is ActionKind.Dip
            || previous?.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Dip }] }, ..] })
            && clause is { Feet.Count: 0, Part.Length: 0, Dir.Direction: Direction.Up };

        // "sit back on L, hold, stand up": nobody steps up
        rises |= clause is { Feet.Count: 0, Part.Length: 0, Dir.Direction: Direction.Up, BothFeet: false, Amount: null, HasLift: false, IsWith: false }
            && previous?.Head?.Verb is ActionKind.Step or ActionKind.Hold or ActionKind.Lunge && clause.Link is Link.Hard;
        if (rises && lexicon.Catalogue.Find("rise") is { Rows: [{ } rise] } risen)
        {
            // "dip down, up", "bend knees, straighten": nobody steps anywhere
            variants.Add(Named(new Variant
            {
                Definition = risen,
                Named = null,
                Rows = [new VariantRow(rise.For(Foot.Right), Counts.Zero, false)],
                Cost = 0,
                FootNamed = true
            }, risen));
            return;
        }

        ActionKind? inherited = previous?.Head?.Verb ?? previous?.Inherited
            ?? (previous?.Head is
            {
                Verb: null, Figures: [
                {
                    Rows: [
                    {
                        Action.Kind: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig
                or ActionKind.Kick or ActionKind.Brush or ActionKind.PopKnee or ActionKind.RollKnee
                    } only]
                }, ..]
            } ? only.Action.Kind : previous?.Head is
            {
                Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.FanToe or ActionKind.FanHeel } firstFan, ..] } fans, ..]
            } && fans.Rows.All(r => r.Action.Kind == firstFan.Action.Kind) ? firstFan.Action.Kind : null);

        // "R toe side, in, side, in": a toe that is told without a verb is touched, and so are the places it goes on to; "toe R side, in, toe L side, in" switches
        inherited ??= previous is { Head: null, Part: "toe", Feet.Count: 1, Dir.Direction: Direction.Side or Direction.Forward or Direction.Back }
            && _next is { Head: null, Feet.Count: 0, Part.Length: 0, Dir: not null } ? ActionKind.Touch : null;
        ActionKind? partedBefore = previous?.Inherited is ActionKind.FanToe or ActionKind.FanHeel ? null
            : inherited is ActionKind.SplitHeels or ActionKind.SplitToes ? inherited
            : previous?.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.SplitHeels or ActionKind.SplitToes } parted] }, ..] }
                ? parted.Action.Kind : null;
        if (partedBefore is ActionKind splits && clause.Feet.Count == 0
            && clause.Dir?.Direction is Direction.In or Direction.Out or Direction.Together or Direction.Home or Direction.Centre)
        {
            // "split heels apart, together"
            clause.Inherited = splits;
            clause.Dir = clause.Dir with { Direction = clause.Dir.Direction == Direction.Out ? Direction.Out : Direction.In };
            AddBodyMove(variants, clause, splits, lexicon.Verbs.Usual(splits), true, situation);
            return;
        }

        if (inherited is ActionKind.Jump && previous is { Feet.Count: > 1 } && clause is
            {
                IsWith: true, Feet.Count: 0, Dir.Direction: Direction.Together
            or Direction.Out
            })
        {
            // "jump back R, L with feet together": where both feet are then
            variants.Add(new Variant { Definition = null, Named = null, Rows = [], Cost = 0 });
            return;
        }

        if (inherited is ActionKind.Jump && clause.Feet.Count == 0
            && clause.Dir?.Direction is Direction.In or Direction.Out or Direction.Together or Direction.Home)
        {
            // "jump out, in"
            clause.Inherited = inherited;
            AddBodyMove(variants, clause, ActionKind.Jump, lexicon.Verbs.Usual(ActionKind.Jump), true, situation);
            return;
        }

        if (inherited is ActionKind.PopKnee or ActionKind.RollKnee && clause.Feet.Count == 0 && clause.Part.Length == 0
            && clause.Dir?.Direction is Direction.In or Direction.Out or Direction.Centre or Direction.Home)
        {
            // "R knee in, out, in, out"
            clause.Inherited = inherited;
            Foot bent = situation.Last?.Action.Foot.ToFoot() ?? Foot.Right;
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(inherited.Value), FootRule.Any, [(bent, true)], situation, 0);
            return;
        }

        if (inherited is ActionKind.FanToe or ActionKind.FanHeel && clause.Feet.Count == 0 && clause.Part.Length == 0 && !clause.Diagonal
            && (clause.Dir?.Direction is Direction.In or Direction.Out or Direction.Centre or Direction.Home or Direction.Back
                || clause is { Dir.Direction: Direction.Side, DirSide: not null }))
        {
            if (clause.Dir is { Direction: Direction.Back } back)
            {
                // "right toes out and back again"
                clause.Dir = back with { Direction = Direction.In };
            }

            // "R toe fan out, in", "fan R toe out to R, back to centre, out to R, back to centre"
            clause.Inherited = inherited;
            Foot fanned = situation.Last?.Action.Foot.ToFoot() ?? Foot.Right;
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(inherited.Value), FootRule.Any, [(fanned, true)], situation, 0);
            return;
        }

        if (inherited is ActionKind.Bump && clause is { Feet.Count: 0, Part.Length: 0, DirSide: null, Diagonal: false }
            && clause.Dir?.Direction is Direction.Up or Direction.Down or Direction.Forward or Direction.Back)
        {
            // "bump R hip up, down, up": the hips go on, the feet stay
            clause.Inherited = inherited;
            AddBodyMove(variants, clause, ActionKind.Bump, lexicon.Verbs.Usual(ActionKind.Bump), false, situation);
            return;
        }

        if (inherited is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Bump or ActionKind.RollHips or ActionKind.Twist
            or ActionKind.Sway or ActionKind.Swivel && clause.Part.Length == 0
            && (clause.IsFeetOnly || clause.Dir?.Direction is Direction.Centre or Direction.Home
                || (inherited is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Swivel && clause.Feet.Count == 0
                && clause.Dir?.Direction is Direction.Back or Direction.In or Direction.Together)
                || (clause.Feet.Count == 0 && clause.DirSide is not null)))
        {
            // "swivel heels right, centre, right, centre"
            clause.Inherited = inherited;
            if (inherited == ActionKind.Sway)
            {
                AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Sway), FootRule.Any,
                    FeetOf(clause, FootRule.Any, situation, ActionKind.Sway), situation, 0);
            }
            else
            {
                AddBodyMove(variants, clause, inherited.Value, lexicon.Verbs.Usual(inherited.Value),
                    inherited is not (ActionKind.Bump or ActionKind.RollHips), situation);
            }

            return;
        }

        if (inherited is ActionKind.Stomp && clause.IsFeetOnly)
        {
            // "stomp L, then R"
            clause.Inherited = inherited;
            StepAction stomp = lexicon.Verbs.Usual(ActionKind.Stomp);
            AddFootMoves(variants, clause, stomp, FootRule.Free, FeetOf(clause, FootRule.Free, situation, ActionKind.Stomp), situation, 0);
            return;
        }

        bool goesOn = previous is { Dir: not null } or { Inherited: not null } or { Part.Length: > 0 } or { Diagonal: true };
        goesOn |= previous is { Head.Verb: null, Feet.Count: 1 } && inherited is not null;
        bool previousGesture = goesOn && clause.WeightNote is not TermKind.WeightTakes
            && inherited is ActionKind.Touch or ActionKind.Point or ActionKind.Kick or ActionKind.Tap or ActionKind.Dig or ActionKind.Brush
            || (inherited is null && previous is { Head: null, Part: "heel" or "toe" });
        List<(Foot, bool)> feet = FeetOf(clause, FootRule.Free, situation, ActionKind.Step);
        if (clause.Part is "heel" or "toe" or "heels" or "toes" && clause.Dir?.Direction is not Direction.Down)
        {
            StepAction usual = lexicon.Verbs.Usual(clause.Part is "heel" or "heels" ? ActionKind.Dig : ActionKind.Touch);
            usual = usual with { Contact = clause.Part is "heel" or "heels" ? Contact.Heel : Contact.Toe };
            if (StandsOnParts(clause, previous) || StandsOnParts(clause, Onward))
            {
                // "left out to side on heel, right out to side on heel": she stands on the one when the other acts
                usual = lexicon.Verbs.Usual(ActionKind.Step) with { Contact = usual.Contact };
            }

            AddFootMoves(variants, clause, usual, FootRule.Free, feet, situation, 0);

            return;
        }

        if (clause.Part is "heel" or "toe" or "heels" or "toes" && clause.Dir?.Direction is Direction.Down)
        {
            AddFootMoves(variants, clause, lexicon.Verbs.Usual(ActionKind.Drop) with { Effect = WeightEffect.Takes, Contact = Contact.Flat },
                FootRule.Free, feet, situation, 0);
            return;
        }

        if (clause.Dir is null && clause.Feet.Count == 0 && clause.Part.Length == 0 && !clause.Diagonal)
        {
            return;
        }

        if (clause is { Amount: 8, HasTurnWord: true, Feet.Count: 2, TurnSide: Foot round }
            && clause.Dir?.Direction is null or Direction.Forward or Direction.Back
            && lexicon.Catalogue.Find(clause.Dir?.Direction == Direction.Back ? "full_turn_back" : "full_turn_forward") is StepDefinition fullTurn)
        {
            // "full turn left travelling forward R, L": half on each step
            TurnVariants.AddFullTurn(variants, clause, fullTurn, round, situation);
            return;
        }

        Direction? direction = clause.Dir?.Direction;
        double bare = clause.HasStyle && clause.Feet.Count == 0 && clause.Part.Length == 0 ? 0.6 : 0;
        bool sameFoot = clause.Feet.Count == 0 || (previous is { Feet.Count: > 0 } && clause.Feet[0].Foot == previous.Feet[^1].Foot);
        StepAction step = lexicon.Verbs.Usual(ActionKind.Step);
        if (clause is { Dir.Direction: Direction.Forward, Feet.Count: < 2 } && IsInFront(clause.DirText, situation.Last)
            && situation.Last is { Action: { Kind: ActionKind.Step, Direction: Direction.Side } aside }
                && (clause.Feet.Count == 0 || aside.Foot.ToFoot() == clause.Feet[0].Foot.Other()))
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
            locked.Dir = clause.Dir with
            {
                Direction = clause.Dir.Direction == Direction.LockFront || goingBack ? Direction.LockFront
                : Direction.LockBehind
            };
        }

        if (previousGesture && sameFoot && clause.Feet.Count == 0 && inherited is ActionKind gesture
            && direction is Direction.Side or Direction.Forward or Direction.Back or Direction.In or Direction.Out)
        {
            StepAction usual = lexicon.Verbs.Usual(gesture);
            clause.Inherited = gesture;
            AddFootMoves(variants, clause, usual, FootRule.Free, feet, situation, 0);
            return;
        }

        bool unclear = previousGesture && sameFoot && clause.Feet.Count == 0 && inherited is ActionKind.Touch or ActionKind.Tap
            && direction is Direction.Together or Direction.Home && !SteppedBefore(situation.Last);
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
}
