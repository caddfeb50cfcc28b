using System.Collections.Frozen;
using System.Globalization;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Sheets.Languages;

/// <summary>
/// Tells actions and moves in a language. What has to be said is decided by <see cref="Phrasing"/> for all languages;
/// words and their order come from the language's file.
/// </summary>
public sealed class MovePhrasing
{
    private readonly SheetLanguage _language;

    // Names that are a description in English rather than a word of the floor are told action by action.
    private readonly FrozenSet<string> _told;

    internal MovePhrasing(SheetLanguage language)
    {
        _language = language;
        _told = (language.FindOwn("figures-told") ?? "").Split(' ').ToFrozenSet(StringComparer.Ordinal);
    }

    /// <summary>Moves in a row.</summary>
    public string Describe(IEnumerable<WrittenMove> moves) => string.Join(", ", moves.Select(Describe).Where(w => w.Length > 0));

    /// <summary>A move: the figure's name with foot, turn and direction, or its actions; her own words where it could not be read.</summary>
    public string Describe(WrittenMove move)
    {
        if ((move.Definition is null || move.IsUnknown) && (move.Steps.Count == 0 || move.Steps[0].Action.Kind == ActionKind.Unknown))
        {
            return move.Words;
        }

        if (move.Steps is [{ Gesture.Length: > 0 } only] && Phrasing.IsGesture(move.Definition, only.Action))
        {
            string? gesture = _language.Code == "en" ? only.Gesture : GestureOf(only.Gesture);
            if (gesture is not null)
            {
                return gesture;
            }
        }

        if (Phrasing.IsWalk(move))
        {
            string verb = move.Definition!.Id is "walk_one" ? "walk" : "run";
            return string.Join(", ", move.Steps.Select(s => _language.Say(
                s.Action.Direction == Direction.Back ? verb + ".back" : verb + ".forward",
                ("foot", FootWord(s.Action.Foot.ToFoot())))));
        }

        return Phrasing.NameOf(move) is { } name && !_told.Contains(name.Definition.Id) ? Describe(name) : Steps(move);
    }

    /// <summary>Moves of an ending that says of no turn how far it goes: they go to the front, however far that is.</summary>
    public string DescribeToFront(IEnumerable<WrittenMove> moves) => string.Join(", ", moves.Select(m
        => m.Steps.Any(s => GoesToFront(s.Action))
            ? string.Join(", ", m.Steps.Select(s => GoesToFront(s.Action) ? Tell(s.Action, _language.Words("turn.to-front")) : Describe(s)))
            : Describe(m)));

    /// <summary>One action.</summary>
    public string Describe(StepAction action) => Tell(action, action.Turn.Sign == 0 ? "" : TurnWords(action.Turn));

    /// <summary>A turn: <c>1/4 left</c>, <c>¼ Drehung links herum</c>.</summary>
    public string TurnWords(Turn turn)
    {
        Ratio amount = turn.Amount / 8;
        int whole = amount.Floor;
        string side = _language.Words(turn.Sign > 0 ? "turn.right" : "turn.left");
        if (amount == new Ratio(1, 2) && _language.FindOwn("turn.half") is { } half)
        {
            return WordTemplate.Fill(half, ("side", side));
        }

        string key = amount == 1 ? "turn.full" : amount == whole ? "turn.many" : "turn.part";
        return WordTemplate.Fill(
            _language.Words(key),
            ("amount", _language.Words("turn.fractions") == "signs" ? Signed(amount) : Slashed(whole, amount - whole)),
            ("number", whole.ToString(CultureInfo.InvariantCulture)),
            ("side", side));
    }

    private string Tell(StepAction action, string turn)
    {
        if (action.Kind == ActionKind.Unknown)
        {
            return _language.Words("verb.unknown");
        }

        Foot? foot = action.Foot.ToFoot() ?? action.FootInFront;
        string verbKey = VerbKey(action);
        string actKey = action.Kind == ActionKind.Pivot && action.Effect == WeightEffect.Keeps && foot is not null ? "pivot-on"
            : action.FootInFront is not null ? verbKey + "-crossed" : verbKey;
        bool namesPlace = Phrasing.NamesPlace(action);
        string direction = SheetLanguage.KeyOf(action.Direction.ToString());
        string size = action.Size == StepSize.Usual || action.Foot.ToFoot() is null
            ? ""
            : FirstOf(foot, $"size.{SheetLanguage.KeyOf(action.Size.ToString())}.{actKey}", $"size.{SheetLanguage.KeyOf(action.Size.ToString())}");
        string template = namesPlace
            ? FirstOf(foot, $"act.{actKey}.{direction}", $"act.{actKey}", "act")
            : FirstOf(foot, $"act.{actKey}", "act");
        string act = WordTemplate.Fill(
            template,
            ("foot", FootWord(foot)),
            ("other", FootWord(foot?.Other())),
            ("side", SideWord(foot)),
            ("across", SideWord(foot?.Other())),
            ("size", size),
            ("verb", _language.Words("verb." + verbKey)),
            ("place", namesPlace ? Place(foot, direction, actKey) : ""),
            ("turn", turn));
        if (size.Length > 0 && !WordTemplate.Has(template, "size"))
        {
            act = size + " " + act;
        }

        if (turn.Length > 0 && !WordTemplate.Has(template, "turn"))
        {
            act = Turning(act, action.Turn);
        }

        string weight = WeightWords(Phrasing.RemarkOn(action));
        return weight.Length == 0 ? act : _language.Say("weight.said", ("act", act), ("weight", weight));
    }

    /// <summary>A foot as the language abbreviates it; empty for none.</summary>
    internal string FootWord(Foot? foot) => foot is { } named ? _language.Words(named == Foot.Right ? "foot.right" : "foot.left") : "";

    private static bool GoesToFront(StepAction action) => action.Kind is ActionKind.Pivot or ActionKind.Turn or ActionKind.Unwind;

    private string Steps(WrittenMove move)
    {
        string words = string.Join(", ", Phrasing.ToldSteps(move).Select(Describe));
        return move.SaidContact switch
        {
            Contact.Ball => words + " " + _language.Words("drawing.on-ball"),
            Contact.Heel => words + " " + _language.Words("drawing.on-heel"),
            Contact.Toe => words + " " + _language.Words("drawing.on-toe"),
            _ => words,
        };
    }

    private string Describe(WrittenStep step)
    {
        string words = Describe(step.Action, step.Gesture);
        foreach (StepAction with in step.With)
        {
            words = _language.Say("with", ("act", words), ("with", Describe(with, step.Gesture)));
        }

        return words;
    }

    // what arms and head do has no word but hers, as a note of hers has not, unless it is a usual one
    private string Describe(StepAction action, string gesture)
        => action.Kind == ActionKind.Arms && gesture.Length > 0 ? GestureOf(gesture) ?? gesture : Describe(action);

    private string? GestureOf(string words) => _language.FindOwn("gesture." + words.ToLowerInvariant().Replace(' ', '-'));

    private string Describe(FigureName name)
    {
        string template = _language.FindOwn("figure." + name.Definition.Id) ?? _language.Words("figure");

        // a move of her own is called what she calls it
        bool isTitled = _language.Words("figure-case") == "title" && StepCatalogue.Default.Find(name.Definition.Id) is not null;
        string words = WordTemplate.Fill(
            template,
            ("name", isTitled ? Title(name.Words) : name.Words),
            ("foot", FootWord(name.Foot)),
            ("place", name.Place == Direction.Unstated ? "" : _language.Words(name.Place == Direction.Forward ? "place.forward" : "place.back")),
            ("way", name.Way is { } way ? _language.Words(way == Foot.Right ? "way.right" : "way.left") : ""));
        if (name.Turn.Sign == 0)
        {
            return words;
        }

        return name.SaysAmount
            ? _language.Say("turning-side", ("act", words), ("side", _language.Words(name.Turn.Sign > 0 ? "turn.right" : "turn.left")))
            : Turning(words, name.Turn);
    }

    private string Turning(string act, Turn turn) => turn.Amount == 8 && _language.FindOwn("turning.full") is { } full
        ? WordTemplate.Fill(full, ("act", act), ("side", _language.Words(turn.Sign > 0 ? "turn.right" : "turn.left")))
        : _language.Say("turning", ("act", act), ("turn", TurnWords(turn)));

    private string Place(Foot? foot, string direction, string actKey) => WordTemplate.Fill(
        FirstOf(foot, $"place.{direction}.{actKey}", $"place.{direction}"),
        ("foot", FootWord(foot)),
        ("other", FootWord(foot?.Other())),
        ("side", SideWord(foot)),
        ("across", SideWord(foot?.Other())));

    private string SideWord(Foot? foot) => foot is { } named ? _language.Words(named == Foot.Right ? "side.right" : "side.left") : "";

    // Where no single foot acts, an entry "alone" comes before others, and one that needs a foot does not do.
    private string FirstOf(Foot? foot, params ReadOnlySpan<string> keys)
    {
        if (foot is null)
        {
            foreach (string key in keys)
            {
                if (_language.FindOwn(key + ".alone") is { } alone)
                {
                    return alone;
                }
            }
        }

        foreach (string key in keys)
        {
            if (_language.FindOwn(key) is { } words && (foot is not null || !NeedsFoot(words)))
            {
                return words;
            }
        }

        return _language.Words(keys[^1]);
    }

    private static bool NeedsFoot(string words)
        => WordTemplate.Has(words, "other") || WordTemplate.Has(words, "side") || WordTemplate.Has(words, "across");

    private string WeightWords(WeightRemark remark) => remark switch
    {
        WeightRemark.None => "",
        WeightRemark.OnLeft => _language.Say("weight.on", ("foot", FootWord(Foot.Left))),
        WeightRemark.OnRight => _language.Say("weight.on", ("foot", FootWord(Foot.Right))),
        WeightRemark.NotTaken => _language.Words("weight.not-taken"),
        WeightRemark.Taken => _language.Words("weight.taken"),
        WeightRemark.OnBoth => _language.Words("weight.on-both"),
        _ => throw new ArgumentOutOfRangeException(nameof(remark)),
    };

    private static string VerbKey(StepAction action) => action is { Kind: ActionKind.Stomp, Effect: WeightEffect.Keeps }
        ? "stomp-up"
        : SheetLanguage.KeyOf(action.Kind.ToString());

    private static string Signed(Ratio amount)
    {
        int whole = amount.Floor;
        char? sign = (amount - whole) switch
        {
            { Numerator: 1, Denominator: 8 } => '⅛',
            { Numerator: 3, Denominator: 8 } => '⅜',
            { Numerator: 5, Denominator: 8 } => '⅝',
            { Numerator: 7, Denominator: 8 } => '⅞',
            _ => null,
        };
        return sign is { } eighth
            ? (whole == 0 ? "" : whole.ToString(CultureInfo.InvariantCulture)) + eighth
            : SheetWords.Amount(amount);
    }

    private static string Slashed(int whole, Ratio rest)
        => whole == 0 ? rest.ToString() : whole.ToString(CultureInfo.InvariantCulture) + " " + rest;

    private static string Title(string name)
        => string.Join(' ', name.Split(' ').Select(w => w.Length == 0 || w is "of" ? w : char.ToUpperInvariant(w[0]) + w[1..]));
}
