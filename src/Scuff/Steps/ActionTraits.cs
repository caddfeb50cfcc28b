namespace Scuff.Steps;

/// <summary>What a primitive action is, once, for every reader of it.</summary>
/// <param name="Kind">The action.</param>
/// <param name="Word">Its word in the data files (<c>swivel-heels</c>).</param>
/// <param name="FootRule">Which foot may make it.</param>
/// <param name="MovesFoot">Whether the acting foot is somewhere else on the floor afterwards.</param>
/// <param name="Stretches">Whether it may last several counts.</param>
public sealed record ActionTraits(ActionKind Kind, string Word, FootRule FootRule, bool MovesFoot, bool Stretches)
{
    private static readonly ActionTraits[] Table =
    [
        new(ActionKind.Unknown, "unknown", FootRule.Any, false, true),
        new(ActionKind.Step, "step", FootRule.Free, true, false),
        new(ActionKind.Rock, "rock", FootRule.Free, true, false),
        new(ActionKind.Recover, "recover", FootRule.Free, false, false),
        new(ActionKind.Touch, "touch", FootRule.Free, true, false),
        new(ActionKind.Tap, "tap", FootRule.Free, true, false),
        new(ActionKind.Point, "point", FootRule.Free, true, false),
        new(ActionKind.Dig, "dig", FootRule.Free, true, false),
        new(ActionKind.Kick, "kick", FootRule.Free, true, false),
        new(ActionKind.Flick, "flick", FootRule.Free, true, false),
        new(ActionKind.Hook, "hook", FootRule.Free, true, false),
        new(ActionKind.Hitch, "hitch", FootRule.Free, true, false),
        new(ActionKind.Scuff, "scuff", FootRule.Free, true, false),
        new(ActionKind.Brush, "brush", FootRule.Free, true, false),
        new(ActionKind.Stomp, "stomp", FootRule.Free, true, false),
        new(ActionKind.Drop, "drop", FootRule.Free, false, false),
        new(ActionKind.Drag, "drag", FootRule.Free, true, true),
        new(ActionKind.Slide, "slide", FootRule.Free, true, true),
        new(ActionKind.Press, "press", FootRule.Free, true, false),
        new(ActionKind.Lunge, "lunge", FootRule.Free, true, false),
        new(ActionKind.Hop, "hop", FootRule.Standing, true, false),
        new(ActionKind.Scoot, "scoot", FootRule.Standing, true, false),
        new(ActionKind.Leap, "leap", FootRule.Free, true, false),
        new(ActionKind.Jump, "jump", FootRule.Any, true, false),
        new(ActionKind.Pivot, "pivot", FootRule.Any, false, false),
        new(ActionKind.Unwind, "unwind", FootRule.Any, false, true),
        new(ActionKind.Sweep, "sweep", FootRule.Free, true, true),
        new(ActionKind.Ronde, "ronde", FootRule.Free, true, true),
        new(ActionKind.Grind, "grind", FootRule.Free, true, false),
        new(ActionKind.FanToe, "fan-toe", FootRule.Any, false, false),
        new(ActionKind.FanHeel, "fan-heel", FootRule.Any, false, false),
        new(ActionKind.SplitHeels, "split-heels", FootRule.Both, false, false),
        new(ActionKind.SplitToes, "split-toes", FootRule.Both, false, false),
        new(ActionKind.Swivel, "swivel", FootRule.Any, false, false),
        new(ActionKind.SwivelHeels, "swivel-heels", FootRule.Both, false, false),
        new(ActionKind.SwivelToes, "swivel-toes", FootRule.Both, false, false),
        new(ActionKind.SwivelHeel, "swivel-heel", FootRule.Any, false, false),
        new(ActionKind.SwivelToe, "swivel-toe", FootRule.Any, false, false),
        new(ActionKind.Swivet, "swivet", FootRule.Both, false, false),
        new(ActionKind.Applejack, "applejack", FootRule.Both, false, false),
        new(ActionKind.Twist, "twist", FootRule.Both, false, false),
        new(ActionKind.Bounce, "bounce", FootRule.Any, false, true),
        new(ActionKind.Bump, "bump", FootRule.Any, false, false),
        new(ActionKind.Sway, "sway", FootRule.Any, false, false),
        new(ActionKind.RollHips, "roll-hips", FootRule.Any, false, true),
        new(ActionKind.RollBody, "roll-body", FootRule.Any, false, true),
        new(ActionKind.RollKnee, "roll-knee", FootRule.Any, false, true),
        new(ActionKind.PopKnee, "pop-knee", FootRule.Any, false, false),
        new(ActionKind.PopShoulder, "pop-shoulder", FootRule.Any, false, false),
        new(ActionKind.Shimmy, "shimmy", FootRule.Any, false, true),
        new(ActionKind.Clap, "clap", FootRule.Any, false, false),
        new(ActionKind.Snap, "snap", FootRule.Any, false, false),
        new(ActionKind.Slap, "slap", FootRule.Any, false, false),
        new(ActionKind.Dip, "dip", FootRule.Any, false, false),
        new(ActionKind.Click, "click", FootRule.Any, false, false),
        new(ActionKind.Hold, "hold", FootRule.Any, false, true),
        new(ActionKind.Turn, "turn", FootRule.Any, false, true),
        new(ActionKind.Shift, "shift", FootRule.Any, false, false),
        new(ActionKind.Arms, "arms", FootRule.Any, false, false),
    ];

    private static readonly Dictionary<string, ActionTraits> ByWord = Table.ToDictionary(t => t.Word, StringComparer.Ordinal);

    /// <summary>All primitives, in order of their kind.</summary>
    public static IReadOnlyList<ActionTraits> All => Table;

    /// <summary>The traits of one primitive.</summary>
    public static ActionTraits Of(ActionKind kind) => Table[(int)kind];

    /// <summary>The primitive of a data word, or null when there is none.</summary>
    public static ActionTraits? FromWord(string word) => ByWord.GetValueOrDefault(word);
}
