using Scuff.Diagnostics;

namespace Scuff.Steps;

/// <summary>
/// What the reader of the step catalogue complains about. The examples are texts of a data file, not of a dance:
/// a dancer who adds a move meets these rules, a dancer who writes a dance never does.
/// </summary>
public static class CatalogueRules
{
    private const string Head = "step lantern_step\n  name lantern step\n  level beginner\n  named-by first-foot\n  from O\n";

    private const string Row = "  row 1 S step forward flat weight\n";

    private const string Good = Head + Row + "  to S\n";

    /// <summary>A line is indented in a way the format does not know.</summary>
    public static Rule Indentation { get; } = Make(
        "catalogue/indentation",
        "This line is indented by {indent} characters here; an entry stands at the edge, its fields two spaces in, the rows of another reading four spaces in.",
        "The indentation says what a line belongs to; guessing would put a row into the wrong move.",
        Head + "   row 1 S step forward flat weight\n" + Row + "  to S\n",
        Good);

    /// <summary>A line belongs to no entry, or starts an entry of an unknown kind.</summary>
    public static Rule UnknownEntry { get; } = Make(
        "catalogue/unknown-entry",
        "“{words}” does not begin an entry; an entry begins with “step” or “source” and its key.",
        "A line without an entry would be lost.",
        "move lantern_step\n",
        Good);

    /// <summary>A field that the format does not know.</summary>
    public static Rule UnknownField { get; } = Make(
        "catalogue/unknown-field",
        "“{field}” is no field of {entry}.",
        "A misspelt field would silently do nothing.",
        Good + "  nmae lantern step\n",
        Good);

    /// <summary>A field stands twice.</summary>
    public static Rule RepeatedField { get; } = Make(
        "catalogue/repeated-field",
        "“{field}” is given twice in {entry}.",
        "Only one of the two could count, and nobody would know which.",
        Good + "  level improver\n",
        Good);

    /// <summary>A field that every entry needs is not there.</summary>
    public static Rule MissingField { get; } = Make(
        "catalogue/missing-field",
        "{entry} has no “{field}”.",
        "Without it the move can be neither read nor danced.",
        "step lantern_step\n  level beginner\n  named-by first-foot\n" + Row,
        Good);

    /// <summary>A field without its value.</summary>
    public static Rule EmptyField { get; } = Make(
        "catalogue/empty-field",
        "“{field}” has no value in {entry}.",
        "An empty field is a slip: leave it out, or say what it is.",
        Good + "  call\n",
        Good);

    /// <summary>Two entries have the same key.</summary>
    public static Rule RepeatedId { get; } = Make(
        "catalogue/repeated-id",
        "“{id}” is the key of an entry already; each key is used once.",
        "Dances and other entries point at a move by its key.",
        Good + Good,
        Good);

    /// <summary>A key that is not made of small letters, digits and underscores.</summary>
    public static Rule BadId { get; } = Make(
        "catalogue/bad-id",
        "“{id}” is not a key; a key is small letters, digits and underscores.",
        "Keys are typed by people and compared letter by letter.",
        Good.Replace("lantern_step", "Lantern-Step", StringComparison.Ordinal),
        Good);

    /// <summary>A value that is none of those a field allows.</summary>
    public static Rule UnknownValue { get; } = Make(
        "catalogue/unknown-value",
        "“{value}” is no {field}; it is one of: {allowed}.",
        "A value of its own would mean nothing to the program.",
        Good.Replace("level beginner", "level starter", StringComparison.Ordinal),
        Good);

    /// <summary>A whole number (or a fraction of eighths) was expected.</summary>
    public static Rule BadNumber { get; } = Make(
        "catalogue/bad-number",
        "“{value}” is no number for “{field}”.",
        "Turns are counted in eighths, right positive.",
        Good + "  amounts quarter\n",
        Good);

    /// <summary>A row that lacks some of its words.</summary>
    public static Rule ShortRow { get; } = Make(
        "catalogue/short-row",
        "A row is a count, a foot, an action, a direction, a contact and what happens to the weight; this one has {count} words.",
        "Every one of the six is danced, none can be guessed.",
        Head + "  row 1 S step forward\n" + Row + "  to S\n",
        Good);

    /// <summary>A row's action is no primitive.</summary>
    public static Rule UnknownAction { get; } = Make(
        "catalogue/unknown-action",
        "“{word}” is no primitive action.",
        "Only the primitives are known to the program; a new move is made of them.",
        Good.Replace("S step", "S shuffle", StringComparison.Ordinal),
        Good);

    /// <summary>A row's direction is unknown.</summary>
    public static Rule UnknownDirection { get; } = Make(
        "catalogue/unknown-direction",
        "“{word}” is no direction of a row.",
        "The foot would not know where to go.",
        Good.Replace("forward", "onward", StringComparison.Ordinal),
        Good);

    /// <summary>A row's contact is unknown.</summary>
    public static Rule UnknownContact { get; } = Make(
        "catalogue/unknown-contact",
        "“{word}” is no part of the foot; it is flat, ball, heel, toe or none.",
        "The drawing of the feet and the calls depend on it.",
        Good.Replace("flat", "sole", StringComparison.Ordinal),
        Good);

    /// <summary>A row's foot is unknown.</summary>
    public static Rule UnknownFoot { get; } = Make(
        "catalogue/unknown-foot",
        "“{word}” is no foot of a row; it is S (the named one), O (the other), B (both) or - (none).",
        "Rows are written for the right-named move and mirrored for the left.",
        Good.Replace("row 1 S", "row 1 R", StringComparison.Ordinal),
        Good);

    /// <summary>A row does not say what happens to the weight.</summary>
    public static Rule UnknownWeight { get; } = Make(
        "catalogue/unknown-weight",
        "“{word}” does not say where the weight is afterwards; it is weight, free or both.",
        "Which foot is free next depends on it.",
        Good.Replace("flat weight", "flat yes", StringComparison.Ordinal),
        Good);

    /// <summary>A word at the end of a row means nothing.</summary>
    public static Rule UnknownRowWord { get; } = Make(
        "catalogue/unknown-row-word",
        "“{word}” at the end of a row means nothing; it may be turn with its eighths, finish, stretch, small or large.",
        "A word that is skipped would be a promise not kept.",
        Good.Replace("flat weight", "flat weight twice", StringComparison.Ordinal),
        Good);

    /// <summary>A count label that is none.</summary>
    public static Rule BadLabel { get; } = Make(
        "catalogue/bad-label",
        "“{label}” is no count; a count is a number, e, & or a.",
        "The row would have no place in time.",
        Good.Replace("row 1", "row one", StringComparison.Ordinal),
        Good);

    /// <summary>Counts that do not go forward.</summary>
    public static Rule LabelOrder { get; } = Make(
        "catalogue/count-order",
        "Count {label} does not come after the row before it.",
        "Rows are danced in the order in which they stand; two may share a count only when one of them uses no foot.",
        Head + Row + "  row 1 O step together flat weight\n  to O\n",
        Head + Row + "  row 2 O step together flat weight\n  to O\n");

    /// <summary>Weight without a foot that could carry it.</summary>
    public static Rule WeightWithoutFoot { get; } = Make(
        "catalogue/weight-without-foot",
        "This row puts the weight on a foot, but names none.",
        "After it nobody would know which foot is free.",
        Head + "  row 1 - step forward flat weight\n",
        Good);

    /// <summary>A foot moves that stands.</summary>
    public static Rule FootNotFree { get; } = Make(
        "catalogue/foot-not-free",
        "On count {label} the {foot} foot is to {action}, but it carries the weight.",
        "The move could not be danced as it is written in the data.",
        Head + Row + "  row 2 S step forward flat weight\n  to S\n",
        Head + Row + "  row 2 O step forward flat weight\n  to O\n");

    /// <summary>The rows end with the weight elsewhere than the entry says.</summary>
    public static Rule WeightDiffers { get; } = Make(
        "catalogue/weight-differs",
        "{entry} says that it ends with the weight on {said}, but its rows end with it on {found}.",
        "Whatever comes next would start on the wrong foot.",
        Head + Row + "  to O\n",
        Good);

    /// <summary>A turn share names a count without a row.</summary>
    public static Rule SpreadLabel { get; } = Make(
        "catalogue/spread-label",
        "The turn of {entry} is to go on count {label}, but no row stands there.",
        "A part of the turn would be lost and the dance would face the wrong wall.",
        Good + "  spread 2\n",
        Good + "  spread 1\n");

    /// <summary>Another rhythm has more or fewer counts than the entry has rows.</summary>
    public static Rule RhythmLength { get; } = Make(
        "catalogue/rhythm-length",
        "The rhythm “{rhythm}” has {counts} counts, but {entry} has {rows} rows.",
        "A rhythm re-counts the rows, one count for each.",
        Good + "  rhythm 1 2\n",
        Good + "  rhythm &\n");

    /// <summary>An entry points at another that is not there.</summary>
    public static Rule UnknownId { get; } = Make(
        "catalogue/unknown-id",
        "{entry} points at “{id}”, which is no entry.",
        "The reading would lead nowhere.",
        Good + "  with-turn 2 lamp_step\n",
        Good + "  with-turn 2 lantern_step\n");

    /// <summary>An entry names a source that is not listed.</summary>
    public static Rule UnknownSource { get; } = Make(
        "catalogue/unknown-source",
        "{entry} names the source “{key}”, which is not listed.",
        "A source that cannot be looked up is none.",
        Good + "  source harbour\n",
        Good + "  source harbour\n\nsource harbour\n  title Harbour club notes\n");

    /// <summary>Two entries are meant by one name.</summary>
    public static Rule TwoDefaults { get; } = Make(
        "catalogue/two-defaults",
        "“{name}” alone means both {first} and {second}; only one of them can be the default.",
        "The same words would be read in two ways.",
        Good + "  cue default forward\n\n" + Good.Replace("lantern_step", "lantern_two", StringComparison.Ordinal) + "  cue default back\n",
        Good + "  cue default forward\n\n" + Good.Replace("lantern_step", "lantern_two", StringComparison.Ordinal) + "  cue back\n");

    /// <summary>A shared name, and none of the entries is the one meant without a cue.</summary>
    public static Rule NoDefault { get; } = Make(
        "catalogue/no-default",
        "“{name}” means {first} or {second}, but neither is the default.",
        "The name alone could not be read.",
        Good + "  cue forward\n\n" + Good.Replace("lantern_step", "lantern_two", StringComparison.Ordinal) + "  cue back\n",
        Good + "  cue forward\n\n" + Good.Replace("lantern_step", "lantern_two", StringComparison.Ordinal) + "  cue default back\n");

    /// <summary>A shared name, and nothing that would pick this entry.</summary>
    public static Rule NoCue { get; } = Make(
        "catalogue/no-cue",
        "{entry} shares the name “{name}” with another entry and has no cue that would pick it.",
        "It could never be read from that name.",
        Good + "  cue default forward\n\n" + Good.Replace("lantern_step", "lantern_two", StringComparison.Ordinal),
        Good + "  cue default forward\n\n" + Good.Replace("lantern_step", "lantern_two", StringComparison.Ordinal) + "  cue back\n");

    /// <summary>All rules, in order of their ids.</summary>
    public static IReadOnlyList<Rule> All { get; } =
    [
        BadId, BadLabel, BadNumber, LabelOrder, EmptyField, FootNotFree, Indentation, MissingField, NoCue, NoDefault, RepeatedField, RepeatedId,
        RhythmLength, ShortRow, SpreadLabel, TwoDefaults, UnknownAction, UnknownContact, UnknownDirection, UnknownEntry,
        UnknownField, UnknownFoot, UnknownId, UnknownRowWord, UnknownSource, UnknownValue, UnknownWeight, WeightDiffers,
        WeightWithoutFoot,
    ];

    private static Rule Make(string id, string message, string reason, string breaks, string keeps)
        => new(id, Severity.Error, message, reason, breaks, keeps, "ours");
}
