using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Calls;

/// <summary>What can be called for a move, from the fullest words to the barest: the shorter have to do where the music leaves no room.</summary>
/// <param name="words">The language.</param>
internal sealed class CallWording(CallWords words)
{
    /// <summary>The words, fullest first, each once; none for words that could not be read.</summary>
    /// <param name="move">The move.</param>
    /// <param name="saysFoot">Whether dancers need the foot: at the head of a section, or where either is free.</param>
    public List<string> Of(WrittenMove move, bool saysFoot)
    {
        List<string> found = [];
        if (move.IsUnknown || move.Steps.Count == 0)
        {
            return found;
        }

        if (move.Definition is { Rows.Count: > 1, Call.Length: > 0 } figure)
        {
            AddFigure(found, figure, move, saysFoot);
        }
        else if (move.Steps.Count == 1 || move.Definition is { Rows.Count: 1 })
        {
            AddAction(found, move.Steps[0].Action, move, saysFoot);
        }
        else
        {
            found.Add(string.Join(", ", move.Steps.Select(s => Bare(s.Action))));
        }

        return [.. found.Where(w => w.Length > 0).Select(InOneBreath).Distinct(StringComparer.Ordinal)];
    }

    // "cross and heel and cross and heel" begins well enough with "cross and heel"
    private static string InOneBreath(string call)
    {
        if (SpokenLength.WordsIn(call) <= SpokenLength.MostWords)
        {
            return call;
        }

        string[] words = call.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        int half = words.Length / 2;
        return string.Join(' ', words[..(words[half] == "and" ? half : Math.Min(half, SpokenLength.MostWords))]).TrimEnd(',');
    }

    /// <summary>One action in as few words as dancers need: "side", "touch", "quarter left".</summary>
    public string Bare(StepAction action)
    {
        string turn = action.Turn.Sign == 0 ? "" : Amount(action.Turn);
        return action.Kind switch
        {
            ActionKind.Step or ActionKind.Rock when turn.Length > 0 => turn,
            ActionKind.Step when Place(action.Direction) is { Length: > 0 } place => place,
            ActionKind.Pivot or ActionKind.Unwind or ActionKind.Turn when turn.Length > 0 => Verb(action.Kind) + " " + turn,
            _ => Verb(action.Kind),
        };
    }

    private void AddFigure(List<string> found, StepDefinition figure, WrittenMove move, bool saysFoot)
    {
        string call = figure.Call;
        string side = move.Named is { } named && figure.NamedBy != NamedBy.None ? words[named == Foot.Right ? "right" : "left"] : "";
        bool isTravel = figure.NamedBy is NamedBy.Travel;
        bool says = Says(call, words["left"]) || Says(call, words["right"]);
        Turn turn = move.StatedTurn ?? Turn.None;
        string amount = turn.Sign == 0 || Says(call, Amount(turn)) ? "" : Amount(turn);
        string way = turn.Sign == 0 ? "" : words[turn.Sign > 0 ? "right" : "left"];

        if (side.Length > 0 && !says && (isTravel || (saysFoot && turn.Sign == 0)))
        {
            // "vine right", "right coaster": travel is said behind, the foot in front
            string full = isTravel ? call + " " + side : side + " " + call;
            Add(found, full, amount);
            found.Add(full);
        }

        Add(found, call, amount.Length == 0 ? "" : amount + " " + way);
        Add(found, call, amount);
        if (amount.Length == 0 || !isTravel)
        {
            found.Add(call);
        }

        int comma = call.IndexOf(',', StringComparison.Ordinal);
        if (comma > 0)
        {
            found.Add(call[..comma]);
        }

        if (amount.Length > 0)
        {
            found.Add(amount);
        }
    }

    private void AddAction(List<string> found, StepAction action, WrittenMove move, bool saysFoot)
    {
        string bare = move.Definition is { Call.Length: > 0, Id: not ("step" or "walk_one" or "run_one") } single && action.Kind != ActionKind.Step
            && action.Turn.Sign == 0 ? single.Call : Bare(action);
        string side = action.Foot switch { ActingFoot.Left => words["left"], ActingFoot.Right => words["right"], _ => "" };
        string place = action.Kind is ActionKind.Touch or ActionKind.Point or ActionKind.Kick or ActionKind.Rock or ActionKind.Dig or ActionKind.Stomp
            && action.Direction is not (Direction.Together or Direction.InPlace or Direction.Forward) ? Place(action.Direction) : "";
        string way = action.Turn.Sign == 0 ? "" : words[action.Turn.Sign > 0 ? "right" : "left"];
        string placed = place.Length > 0 && !Says(bare, place) ? bare + " " + place : bare;
        if (saysFoot && side.Length > 0 && way.Length == 0)
        {
            found.Add(side + " " + placed);
        }

        Add(found, placed, way);
        found.Add(placed);
        found.Add(bare);
    }

    private static void Add(List<string> found, string first, string second)
    {
        if (second.Length > 0 && !Says(first, second))
        {
            found.Add(first + " " + second);
        }
    }

    private static bool Says(string call, string word) => (" " + call + " ").Contains(" " + word + " ", StringComparison.OrdinalIgnoreCase);

    private string Verb(ActionKind kind) => kind == ActionKind.Unknown ? "" : words.Of(kind);

    private string Place(Direction direction) => direction switch
    {
        Direction.Forward => words["forward"],
        Direction.Back => words["back"],
        Direction.Side => words["side"],
        Direction.DiagonalForward => words["diagonal"],
        Direction.DiagonalBack => words["diagonal-back"],
        Direction.DiagonalForwardAcross or Direction.Across or Direction.DiagonalBackAcross => words["across"],
        Direction.CrossFront => words["cross"],
        Direction.CrossBehind or Direction.Behind => words["behind"],
        Direction.LockFront or Direction.LockBehind => words["lock"],
        Direction.Together or Direction.Home => words["together"],
        Direction.InPlace => words["in-place"],
        Direction.Out => words["out"],
        Direction.In or Direction.Centre => words["in"],
        Direction.Up => words["up"],
        Direction.Down => words["down"],
        Direction.Left => words["left"],
        Direction.Right => words["right"],
        _ => "",
    };

    // "quarter", "half", "full turn", "1 1/2 turn"
    private string Amount(Turn turn)
    {
        Ratio eighths = turn.Amount;
        return eighths.IsWhole
            ? eighths.Numerator switch
            {
                1 => words["eighth"],
                2 => words["quarter"],
                3 => words["three-eighths"],
                4 => words["half"],
                5 => words["five-eighths"],
                6 => words["three-quarters"],
                7 => words["seven-eighths"],
                8 => words["full"],
                10 => words["full"] + " " + words["quarter"],
                12 => words["full"] + " " + words["half"],
                var more => words.With("more", Math.Max(1, more / 8)),
            }
            : words.Of(ActionKind.Turn);
    }
}
