using System.Collections.Frozen;
using System.Text;
using Scuff.Dances;
using Scuff.Prose.Reading;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>Writes actions and moves in canonical English words, in the order action, foot, place, turn.</summary>
public static class Phrasing
{
    /// <summary>One action: "step R forward", "touch L together", "hold".</summary>
    public static string Describe(StepAction action)
    {
        if (action.Kind == ActionKind.Unknown)
        {
            return "not known";
        }

        StringBuilder words = new();
        string? foot = action.Foot switch { ActingFoot.Left => "L", ActingFoot.Right => "R", _ => null };
        string? other = action.Foot switch { ActingFoot.Left => "R", ActingFoot.Right => "L", _ => null };
        if (action.Size != StepSize.Usual && action.Foot is ActingFoot.Left or ActingFoot.Right)
        {
            words.Append(action.Size == StepSize.Small ? "small " : "big ");
        }

        words.Append(VerbOf(action));
        if (foot is not null && NamesFoot(action))
        {
            words.Append(' ').Append(foot);
        }

        if (PartWord(action) is string part)
        {
            words.Append(' ').Append(part);
        }

        if (action.FootInFront is Foot front)
        {
            words.Append(front == Foot.Right ? " crossing R over L" : " crossing L over R");
        }
        else if (action is { Kind: ActionKind.Jump, Foot: ActingFoot.Both or ActingFoot.None, Direction: Direction.Across })
        {
            words.Append(" cross");
        }
        else if (NamesPlace(action) && PlaceOf(action, other) is string place)
        {
            words.Append(' ').Append(place);
        }

        if (action.Turn.Sign != 0)
        {
            words.Append(action.Kind is ActionKind.Pivot or ActionKind.Unwind or ActionKind.Turn ? " " : " turning ").Append(TurnWords(action.Turn));
        }

        if (action.Kind is ActionKind.Pivot && action.Effect == WeightEffect.Keeps && foot is not null)
        {
            words.Append(" on ").Append(foot);
        }

        if (WeightWords(action) is string weight)
        {
            words.Append(" (").Append(weight).Append(')');
        }

        return words.ToString();
    }

    private static string? WeightWords(StepAction action) => RemarkOn(action) switch
    {
        WeightRemark.OnLeft => "weight on L",
        WeightRemark.OnRight => "weight on R",
        WeightRemark.NotTaken => "no weight",
        WeightRemark.Taken => "with weight",
        WeightRemark.OnBoth => "weight on both",
        _ => null,
    };

    /// <summary>What has to be said of the weight because the verb does not say it.</summary>
    public static WeightRemark RemarkOn(StepAction action)
    {
        switch (action.Effect)
        {
            case WeightEffect.ToLeft:
                return WeightRemark.OnLeft;
            case WeightEffect.ToRight:
                return WeightRemark.OnRight;
        }

        bool usuallyTakes = action.Kind is ActionKind.Step or ActionKind.Rock or ActionKind.Recover or ActionKind.Lunge or ActionKind.Leap
            or ActionKind.Drop or ActionKind.Shift or ActionKind.Sway or ActionKind.Grind;
        bool usuallyKeeps = action.Kind is ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Dig or ActionKind.Kick
            or ActionKind.Hitch or ActionKind.Hook or ActionKind.Flick or ActionKind.Scuff or ActionKind.Brush or ActionKind.Drag or ActionKind.Slide
            or ActionKind.Press or ActionKind.Sweep or ActionKind.Ronde;
        return action.Effect switch
        {
            WeightEffect.Keeps when usuallyTakes => WeightRemark.NotTaken,
            WeightEffect.Takes when usuallyKeeps => WeightRemark.Taken,
            WeightEffect.Takes when action.Kind is ActionKind.Unwind or ActionKind.Turn && action.Foot is ActingFoot.Left => WeightRemark.OnLeft,
            WeightEffect.Takes when action.Kind is ActionKind.Unwind or ActionKind.Turn && action.Foot is ActingFoot.Right => WeightRemark.OnRight,
            WeightEffect.Shares when action.Foot is ActingFoot.Left or ActingFoot.Right => WeightRemark.OnBoth,
            _ => WeightRemark.None,
        };
    }

    /// <summary>Whether the place has to be said: a verb such as "scuff" says its usual place itself.</summary>
    public static bool NamesPlace(StepAction action) => action.Direction switch
    {
        Direction.Unstated => false,
        Direction.Forward => action.Kind is not (ActionKind.Scuff or ActionKind.Brush or ActionKind.Hitch),
        Direction.Back => action.Kind != ActionKind.Flick,
        Direction.InPlace => action.Kind is ActionKind.Step or ActionKind.Touch or ActionKind.Hop,
        Direction.Up => action.Kind is not (ActionKind.Hitch or ActionKind.Clap or ActionKind.Snap or ActionKind.PopShoulder),
        Direction.Down => action.Kind is not (ActionKind.Dip or ActionKind.RollBody),
        Direction.Across => action.Kind != ActionKind.Hook,
        _ => true,
    };

    /// <summary>How a move is called by its figure's name, or null when its actions have to be told one by one.</summary>
    public static FigureName? NameOf(WrittenMove move)
    {
        // a spiral turns on the foot that stepped, so it is no step and pivot
        bool stepAndPivot = move.Steps is [{ Action: var step }, { Action: { Kind: ActionKind.Pivot } turned }] && turned.Foot != step.Foot;
        if (move.Definition is not { } definition || move.IsUnknown || move.Steps.Count == 1 || definition.Rows.Count == 1 || stepAndPivot
            || !SaysAll(move))
        {
            return null;
        }

        string name = definition.Name;
        bool sameTurn = move.StatedTurn is Turn whole && whole.Amount == definition.TotalTurn.Amount;
        bool namesTurn = sameTurn && (name.Contains("quarter", StringComparison.Ordinal) || name.Contains("half", StringComparison.Ordinal)
            || name.Contains("full", StringComparison.Ordinal));
        if (move.StatedTurn is not null && name.StartsWith("turning ", StringComparison.Ordinal))
        {
            name = name["turning ".Length..];
        }

        bool names = name.Contains(" right", StringComparison.Ordinal);
        Foot? named = definition.NamedBy == NamedBy.None || names ? null : move.Named;
        bool way = definition.NamedBy is NamedBy.Travel or NamedBy.Turn;

        // "shuffle R forward"; the standing foot is named last
        Direction place = (named is not null && definition.NamedBy == NamedBy.StandingFoot) || !IsDancedEitherWay(definition) ? Direction.Unstated
            : name.EndsWith(" forward", StringComparison.Ordinal) ? Direction.Forward
            : name.EndsWith(" back", StringComparison.Ordinal) ? Direction.Back
            : Direction.Unstated;
        if (place != Direction.Unstated)
        {
            name = name[..name.LastIndexOf(' ')];
        }

        Turn native = move.Named == Foot.Left ? -definition.TotalTurn : definition.TotalTurn;
        Turn turn = move.StatedTurn is Turn stated && !(namesTurn && stated == native) ? stated : Turn.None;
        return new FigureName(definition, name, way ? null : named, way ? named : null, place, turn, namesTurn);
    }

    /// <summary>Whether a move is plain walks or runs, which are told foot by foot: "walk R, walk L".</summary>
    public static bool IsWalk(WrittenMove move) => move.Definition?.Id is "walk_one" or "run_one"
        && !move.IsUnknown
        && move.Steps.All(s => s.Action
            is
        {
            Kind: ActionKind.Step, Effect: WeightEffect.Takes, Turn.Sign: 0, Direction: Direction.Forward or Direction.Back,
            Size: StepSize.Usual
        } && s.With.Count == 0);

    /// <summary>A move: the figure's name with foot, turn and direction, or its actions.</summary>
    public static string Describe(WrittenMove move)
    {
        if (move.Definition is null || move.IsUnknown)
        {
            return move.Steps.Count > 0 && move.Steps[0].Action.Kind != ActionKind.Unknown
                ? string.Join(", ", ToldSteps(move).Select(DescribeWith))
                : move.Words;
        }

        if (IsWalk(move))
        {
            string verb = move.Definition.Id is "walk_one" ? "walk" : "run";
            return string.Join(", ", move.Steps.Select(s =>
                verb + (s.Action.Foot == ActingFoot.Right ? " R" : " L") + (s.Action.Direction == Direction.Back ? " back" : "")));
        }

        if (move.Steps is [{ Gesture.Length: > 0 } only] && IsGesture(move.Definition, only.Action))
        {
            return only.Gesture;
        }

        if (NameOf(move) is not { } name)
        {
            return string.Join(", ", ToldSteps(move).Select(DescribeWith)) + ContactWords(move);
        }

        StringBuilder words = new(name.Words);
        if (name.Foot is Foot foot)
        {
            words.Append(foot == Foot.Right ? " R" : " L");
        }

        if (name.Place != Direction.Unstated)
        {
            words.Append(name.Place == Direction.Forward ? " forward" : " back");
        }

        if (name.Way is Foot way)
        {
            words.Append(way == Foot.Right ? " right" : " left");
        }

        if (name.Turn.Sign != 0)
        {
            words.Append(" turning ").Append(name.SaysAmount ? name.Turn.Sign > 0 ? "right" : "left" : TurnWords(name.Turn));
        }

        return words.ToString();
    }

    /// <summary>
    /// The actions of a move as they are to be told: who turns on the foot that has the weight already is told on which, or it would read as the
    /// turn of a step and pivot, which is on both feet.
    /// </summary>
    public static IEnumerable<WrittenStep> ToldSteps(WrittenMove move)
        => move.Definition?.Id is "pivot_on_foot" or "spiral"
            && move.Steps is [{ Action: { Kind: ActionKind.Pivot, Effect: WeightEffect.Takes } turn } only]
                ? [only with { Action = turn with { Effect = WeightEffect.Keeps } }]
                : move.Steps;

    /// <summary>A turn: "1/4 left", "1 1/4 right".</summary>
    public static string TurnWords(Turn turn)
    {
        Ratio amount = turn.Amount / 8;
        int whole = amount.Floor;
        Ratio part = amount - whole;
        string size = part.Sign == 0 ? whole == 1 ? "full turn" : whole + " turns" : whole == 0 ? part.ToString() : whole + " " + part;
        return size + (turn.Sign > 0 ? " right" : " left");
    }

    /// <summary>The rows of a reading in words.</summary>
    internal static string Describe(IEnumerable<PlacedRow> rows) => string.Join(", ", rows.Where(r => !r.IsWith).Select(r => Describe(r.Action)));

    /// <summary>
    /// Whether the last word of a name is where the figure goes ("shuffle back", as there is a shuffle forward), and not its last step: in
    /// "kick ball back" the foot stands between the kick and the ball, so the name is not taken apart.
    /// </summary>
    private static bool IsDancedEitherWay(StepDefinition definition)
    {
        string name = definition.Name;
        string stem = name.EndsWith(" forward", StringComparison.Ordinal) ? name[..^" forward".Length]
            : name.EndsWith(" back", StringComparison.Ordinal) ? name[..^" back".Length]
            : "";
        return stem.Length > 0 && Stems.Value.Contains(stem);
    }

    // names that stand in the catalogue without a direction, or with both
    private static readonly Lazy<FrozenSet<string>> Stems = new(() =>
    {
        string[] names = [.. StepCatalogue.Default.Definitions.Select(d => d.Name)];
        return names
            .Concat(names.Where(n => n.EndsWith(" forward", StringComparison.Ordinal)).Select(n => n[..^" forward".Length]))
            .ToFrozenSet(StringComparer.Ordinal);
    });

    /// <summary>Whether an action of arms, head or hands says so little that her own words are kept: which arm, look where, what pose.</summary>
    /// <param name="definition">The move it belongs to, or null.</param>
    /// <param name="action">The action.</param>
    public static bool IsGesture(StepDefinition? definition, StepAction action)
        => action.Kind == ActionKind.Arms || definition is { Rows.Count: 1, Id: "pose" or "slap_body" };

    private static string ContactWords(WrittenMove move) => move.SaidContact switch
    {
        Contact.Ball => " on the ball",
        Contact.Heel => " on the heel",
        Contact.Toe => " on the toe",
        _ => "",
    };

    private static string DescribeWith(WrittenStep step)
        => Describe(step.Action, step.Gesture) + string.Concat(step.With.Select(w => " and " + Describe(w, step.Gesture)));

    private static string Describe(StepAction action, string gesture)
        => action.Kind == ActionKind.Arms && gesture.Length > 0 ? gesture : Describe(action);

    /// <summary>Whether the figure's name says all that is danced.</summary>
    private static bool SaysAll(WrittenMove move)
    {
        StepDefinition definition = move.Definition!;
        if (move.Named is null && definition.NamedBy != NamedBy.None)
        {
            return false;
        }

        Foot named = move.Named ?? Foot.Right;
        int core = definition.Rows.Count;
        while (core > 1 && definition.Rows[core - 1].IsFinish)
        {
            core--;
        }

        if (move.Steps.Count != definition.Rows.Count && move.Steps.Count != core)
        {
            return false;
        }

        for (int i = 0; i < move.Steps.Count; i++)
        {
            StepAction row = definition.Rows[i].For(named);
            StepAction danced = move.Steps[i].Action;
            bool pivots = row.Kind == ActionKind.Recover && danced.Kind == ActionKind.Pivot;
            if ((row.Kind != danced.Kind && !pivots) || row.Foot != danced.Foot || row.Effect != danced.Effect || row.Direction != danced.Direction
                || danced.Size != StepSize.Usual || (move.StatedTurn is null && row.Turn != danced.Turn) || move.Steps[i].With.Count > 0)
            {
                return false;
            }
        }

        return true;
    }

    private static bool NamesFoot(StepAction action) =>
        action.Kind is not (ActionKind.Pivot or ActionKind.Unwind or ActionKind.Turn or ActionKind.Hold);

    private static string VerbOf(StepAction action) => action.Kind switch
    {
        ActionKind.Step when action.Direction == Direction.CrossFront => "cross",
        ActionKind.Step when action.Direction is Direction.LockBehind or Direction.LockFront => "lock",
        ActionKind.Stomp when action.Effect == WeightEffect.Keeps => "stomp up",
        ActionKind.Dig => "touch",
        ActionKind.Drop => "drop",
        ActionKind.SwivelHeels or ActionKind.SwivelHeel => "swivel heels",
        ActionKind.SwivelToes or ActionKind.SwivelToe => "swivel toes",
        ActionKind.FanToe => "fan toe",
        ActionKind.FanHeel => "fan heel",
        ActionKind.SplitHeels => "split heels",
        ActionKind.SplitToes => "split toes",
        ActionKind.RollHips => "roll hips",
        ActionKind.RollBody => "body roll",
        ActionKind.RollKnee => "roll knee",
        ActionKind.PopKnee => "pop knee",
        ActionKind.PopShoulder => "pop shoulder",
        ActionKind.Bounce => "bounce heels",
        ActionKind.Bump => "bump hips",
        ActionKind.Grind => "grind heel",
        ActionKind.Click => "click heels",
        ActionKind.Shift => "shift weight",
        ActionKind.Applejack => "applejack",
        _ => action.Traits.Word,
    };

    private static string? PartWord(StepAction action) => action.Kind switch
    {
        ActionKind.Dig => "heel",
        ActionKind.Touch when action.Contact == Contact.Toe => null,
        _ => null,
    };

    private static string? PlaceOf(StepAction action, string? other) => action.Direction switch
    {
        Direction.Forward => "forward",
        Direction.Back => "back",
        Direction.Side => "to side",
        Direction.DiagonalForward => "diagonally forward",
        Direction.DiagonalBack => "diagonally back",
        Direction.DiagonalForwardAcross => "diagonally forward across",
        Direction.DiagonalBackAcross => "diagonally back across",
        Direction.CrossFront when action.Kind == ActionKind.Step => other is null ? null : "over " + other,
        Direction.CrossFront => other is null ? "across" : "across " + other,
        Direction.CrossBehind => other is null ? "behind" : "behind " + other,
        Direction.LockFront => other is null ? "in front" : "in front of " + other,
        Direction.LockBehind => other is null ? "behind" : "behind " + other,
        Direction.Together => "together",
        Direction.Home => "home",
        Direction.InPlace => "in place",
        Direction.Out => "out",
        Direction.In => "in",
        Direction.Up => "up",
        Direction.Down => "down",
        Direction.Across => "across",
        Direction.Behind => "behind",
        Direction.Left => "left",
        Direction.Right => "right",
        Direction.Centre => "centre",
        Direction.Clockwise => "clockwise",
        Direction.Anticlockwise => "anticlockwise",
        _ => null,
    };
}
