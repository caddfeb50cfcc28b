using Scuff.Diagnostics;

namespace Scuff.Prose.Reading;

/// <summary>What the reader itself complains about.</summary>
public static class ReadingRules
{
    private const string Good = "Small Pier\n\ncounts: 8\nwalls: 1\n\nsection 1\n1-2   step R to side, touch L together\n"
        + "3-4   step L to side, touch R together\n5-6   step R forward, touch L together\n7-8   step L back, touch R together\n";

    private static string PivotDance(string pivot)
        => "Small Pier\n\ncounts: 8\n\nsection 1\n"
            + "1-2   step R to side, touch L together\n3-4   step L to side, touch R together\n"
            + "5-6   step R forward, " + pivot + "\n7-8   step R to side, step L together\n";

    private static string RockDance(string rock)
        => "Small Pier\n\ncounts: 8\nwalls: 1\n\nsection 1\n1-2   step R to side, touch L together\n3-4   step L to side, touch R together\n"
            + "5-6   " + rock + ", recover L\n7-8   step R back, step L together\n";

    /// <summary>Words that are not understood.</summary>
    public static Rule UnknownWords { get; } = new("reading/unknown-words", Severity.Question,
        "I do not know the words '{words}'. What is danced on {counts}?",
        "The words are kept as they are and their counts are held, but weight and facing cannot be followed past them.",
        Good.Replace("step R forward, touch L together", "glimber R, touch L together", StringComparison.Ordinal), Good, "ours");

    /// <summary>Words that were taken for a remark on a move.</summary>
    public static Rule WordsLeftOut { get; } = new("reading/words-left-out", Severity.Hint,
        "On {counts}, '{words}' is taken for a remark: nothing is danced for it.",
        "The counts come out even without it. If it is a move of its own, it needs a count of its own.",
        Good.Replace("5-6   step R forward, touch L together", "5-6   step R forward, touch L together, feet apart", StringComparison.Ordinal), Good,
            "ours");

    /// <summary>A move, a turn or a count that the reading leaves out.</summary>
    public static Rule MoveLeftOut { get; } = new("reading/move-left-out", Severity.Question,
        "On {counts}, '{words}' is left out, so that the counts come out even. Where is it danced?",
        "It sounds like a move, a turn or a quick count of its own. A floor that dances it and a floor that does not end in different places.",
        Good.Replace("5-6   step R forward, touch L together\n7-8   step L back, touch R together",
            "5-8   walk R, walk L, walk R and then &8 walk L", StringComparison.Ordinal),
        Good.Replace("5-6   step R forward, touch L together\n7-8   step L back, touch R together",
            "5-7&8 walk R, walk L, walk R, step L together, touch R together", StringComparison.Ordinal), "ours");

    /// <summary>A foot or a direction in the words of a move that the move does not have.</summary>
    public static Rule WordsUnused { get; } = new("reading/words-unused", Severity.Question,
        "On {counts}, '{words}' names a {unused} that plays no part in what is read: {read}. What is meant?",
        "What the writer named the floor will try to dance, and it will not be what the counts are checked for.",
        Good.Replace("1-2   step R to side, touch L together\n3-4   step L to side, touch R together", "1-4   vine R forward, step L together",
            StringComparison.Ordinal),
        Good.Replace("1-2   step R to side, touch L together\n3-4   step L to side, touch R together", "1-4   vine R, step L together",
            StringComparison.Ordinal), "ours");

    /// <summary>Words that have two readings.</summary>
    public static Rule TwoReadings { get; } = new("reading/two-readings", Severity.Question,
        "This can be read in two ways: {first}, or {second}. The first is taken.",
        "A dancer would have to guess, and half the floor would guess the other way.",
        Good.Replace("1-2   step R to side, touch L together\n3-4   step L to side, touch R together",
            "1-2   step R to side, touch L together\n3-4   touch L to side, together", StringComparison.Ordinal), Good, "ours");

    /// <summary>A slip of the fingers was mended.</summary>
    public static Rule Spelling { get; } = new("reading/spelling", Severity.Hint,
        "'{word}' is read as '{meant}'.",
        "A word with a slip in it stops a machine translator and a learner alike.",
        Good.Replace("touch R together\n5", "tuoch R together\n5", StringComparison.Ordinal), Good, "ours");

    /// <summary>More or fewer actions than counts.</summary>
    public static Rule MovesDoNotFit { get; } = new("count/moves-do-not-fit", Severity.Error,
        "The counts {counts} hold {labels}, but the words make {actions}.",
        "Every count needs an action (or a hold), and every action a count; else the floor stops together but not in time.",
        Good.Replace("5-6   step R forward, touch L together", "5&6   shuffle R forward, L", StringComparison.Ordinal), Good, "trade rule R08");

    /// <summary>A turn without direction.</summary>
    public static Rule TurnDirectionMissing { get; } = new("turn/direction-missing", Severity.Error,
        "This turn does not say whether it goes right or left.",
        "Half the floor will turn the other way.",
        Good.Replace("walls: 1\n", "", StringComparison.Ordinal).Replace("5-6   step R forward, touch L together",
            "5-6   step R forward turning 1/4, touch L together", StringComparison.Ordinal), Good, "trade rule R13");

    /// <summary>A turn without amount.</summary>
    public static Rule TurnAmountMissing { get; } = new("turn/amount-missing", Severity.Question,
        "This turn does not say how far it goes; {taken} is taken.",
        "A quarter and a half end on different walls.",
        PivotDance("pivot left"), PivotDance("pivot 1/2 left"), "trade rule R13");

    /// <summary>A rock that does not say where it goes.</summary>
    public static Rule RockDirectionMissing { get; } = new("figure/rock-direction-missing", Severity.Question,
        "This rock does not say where it goes; {taken} is taken.",
        "'Rock R' is to the right side for some and forward with the right foot for others.",
        RockDance("rock R"), RockDance("rock R forward"), "ours");

    /// <summary>Foot in the name and foot in the detail differ.</summary>
    public static Rule FigureFootDiffers { get; } = new("figure/foot-differs", Severity.Error,
        "The name says {name}, but its detail starts with the other foot; the detail is taken.",
        "Those who know the figure go by its name and will start on the wrong foot.",
        Good.Replace("5-6   step R forward, touch L together", "5&6   left coaster step (R back, L together, R forward)", StringComparison.Ordinal),
        Good.Replace("5-6   step R forward, touch L together", "5&6   right coaster step (R back, L together, R forward)", StringComparison.Ordinal),
            "trade rule R16");

    /// <summary>The detail is not the figure of that name.</summary>
    public static Rule FigureDetailDiffers { get; } = new("figure/detail-differs", Severity.Warning,
        "The detail is not what is usually called {name}; the detail is taken.",
        "A reader who knows the name dances the usual form.",
        Good.Replace("5-6   step R forward, touch L together", "5&6   right coaster step (R forward, L back, R back)", StringComparison.Ordinal),
        Good.Replace("5-6   step R forward, touch L together", "5&6   right coaster step (R back, L together, R forward)", StringComparison.Ordinal),
            "trade rule R17");

    /// <summary>Repeat without the counts.</summary>
    public static Rule RepeatWithoutCounts { get; } = new("reading/repeat-without-counts", Severity.Question,
        "'Repeat' does not say which counts; {taken} is taken.",
        "The reader must know what to do again and with which foot.",
        Good.Replace("5-6   step R forward, touch L together\n7-8   step L back, touch R together", "5-8   repeat", StringComparison.Ordinal),
        Good.Replace("5-6   step R forward, touch L together\n7-8   step L back, touch R together", "5-8   repeat 1-4", StringComparison.Ordinal),
            "trade rule R35");

    /// <summary>Styling in the footwork line.</summary>
    public static Rule StylingMixed { get; } = new("sheet/styling-mixed", Severity.Hint,
        "Styling stands in the footwork line; on the sheet it reads better on a line of its own.",
        "Footwork that is kept apart is found at a glance on the floor.",
        Good.Replace("5-6   step R forward, touch L together", "5-6   step R forward, touch L together with attitude", StringComparison.Ordinal),
            Good, "trade rule R39");

    /// <summary>An abbreviation in a note.</summary>
    public static Rule AbbreviationUnexplained { get; } = new("sheet/abbreviation-unexplained", Severity.Hint,
        "The note says '{word}', which the key of the sheet does not explain; write {meaning}.",
        "Notes are printed as they are written. A stranger, or a machine translator, does not know what the letters stand for.",
        Good.Replace("touch R together\n5", "touch R together\n      style: small steps, RF low\n5", StringComparison.Ordinal),
        Good.Replace("touch R together\n5", "touch R together\n      style: small steps, right foot low\n5", StringComparison.Ordinal),
            "trade rule R36");

    /// <summary>A heading key that is not known.</summary>
    public static Rule UnknownHeader { get; } = new("reading/unknown-heading", Severity.Hint,
        "The heading '{key}' means nothing to Scuff; it is kept and printed.",
        "Perhaps a slip: the headings that are checked are counts, walls, level, restarts and tags.",
        Good.Replace("walls: 1", "walls: 1\nmood: sunny", StringComparison.Ordinal), Good, "ours");

    /// <summary>A heading value that cannot be read.</summary>
    public static Rule HeaderValue { get; } = new("reading/heading-value", Severity.Question,
        "The heading '{key}' should be {wanted}; '{value}' is not.",
        "What cannot be read cannot be checked.",
        Good.Replace("walls: 1", "walls: many", StringComparison.Ordinal), Good, "ours");

    /// <summary>A line that is neither heading, count line nor sentence.</summary>
    public static Rule UnknownLine { get; } = new("reading/unknown-line", Severity.Question,
        "I do not know what this line is: '{words}'. It is kept as it is.",
        "A count line starts with its counts, a heading with a word and a colon.",
        Good + "Skip the touches the second time\n", Good, "ours");

    /// <summary>A line of talk, which is kept and changes nothing.</summary>
    public static Rule KeptAsRemark { get; } = new("reading/kept-as-remark", Severity.Hint,
        "'{words}' is kept as a remark; nothing of it is danced.",
        "Sheets thank and greet people, and tell who may copy them. If it should change the dance, write it with its counts or its wall.",
        Good + "Please do not change this step sheet in any way\n", Good, "ours");

    /// <summary>Moves of a dance that prints no counts at all.</summary>
    public static Rule UsualCounts { get; } = new("reading/usual-counts", Severity.Question,
        "No counts are printed: the usual ones are taken, {counts}.",
        "A dancer has to know how long each move lasts. Where nothing is printed, each figure takes the counts it usually has and each step one.",
        "Small Pier\n\ncounts: 4\nwalls: 1\n\nsection 1\nrocking chair right\n",
        "Small Pier\n\ncounts: 4\nwalls: 1\n\nsection 1\n1-4   rocking chair right\n", "ours");

    /// <summary>Words of a sentence on the pattern that say nothing of wall, place or what is done.</summary>
    public static Rule SentenceWordsPassedOver { get; } = new("reading/sentence-words-passed-over", Severity.Hint,
        "'{words}' changes nothing of what this sentence says about the pattern.",
        "Wall, place and what is done there are all told without it. If it is meant to change the dance, say it with a wall and a count.",
        Good + "\nwall 3: after 4 restart, dearies, with count 4: touch R together\n", Good + "\nwall 3: after 4 restart, with count 4: touch R together\n",
            "ours");

    /// <summary>A tag and a restart without the count they come after.</summary>
    public static Rule PlaceMissing { get; } = new("reading/place-missing", Severity.Question,
        "After which count of the wall is that? '{words}'",
        "A tag may stand after the whole wall, a restart may not. Where both are told, the place between them and the wall's end has to be.",
        Good + "\nwall 2: tag, restart\n\ntag\n1-4 sway R, L, R, L\n", Good + "\nwall 2: after 4 tag, restart\n\ntag\n1-4 sway R, L, R, L\n", "ours");

    /// <summary>A sentence on tags, restarts or endings that is not understood.</summary>
    public static Rule UnknownSentence { get; } = new("reading/unknown-sentence", Severity.Question,
        "I do not understand this sentence about the pattern: '{words}'. It is kept as it is.",
        "What happens where the music breaks the pattern must be said with wall and count.",
        Good + "\nwall 3: whistle twice\n", Good, "ours");

    /// <summary>Words of a sentence on tags, restarts or endings that play no part in what is read.</summary>
    public static Rule SentenceWordsUnread { get; } = new("reading/sentence-words-unread", Severity.Question,
        "In this sentence about the pattern '{words}' plays no part in what is read. What does it change?",
        "A word passed over may be the wall, the count or the exception that the floor will dance.",
        Good + "\nwall 3: after 4 restart except the men\n", Good + "\nwall 3: after 4 restart\n", "ours");

    /// <summary>A name that is used twice.</summary>
    public static Rule NameTwice { get; } = new("reading/name-twice", Severity.Error,
        "'{name}' is the name of two {things}.",
        "Nobody can tell which of them is meant.",
        Good + "\ntag \"Bell\" 2 counts\n1-2 sway R, sway L\n\ntag \"Bell\" 2 counts\n1-2 sway R, sway L\n",
        Good + "\ntag \"Bell\" 2 counts\n1-2 sway R, sway L\n\ntag \"Buoy\" 2 counts\n1-2 sway R, sway L\n", "ours");

    /// <summary>No steps at all.</summary>
    public static Rule NoSteps { get; } = new("reading/no-steps", Severity.Question,
        "There is no count line in this text.",
        "A dance is written as counts and moves, for example: 1-2 step R to side, touch L together.",
        "Empty Quay\n\nby: Scuff demo\n", Good, "ours");

    /// <summary>A figure name that the trade reads in two ways.</summary>
    public static Rule NameHasOtherReading { get; } = new("figure/name-has-two-uses", Severity.Hint,
        "'{name}' is also used for something else: {other}. The usual reading is taken.",
        "Sources of the trade differ on this name; the detail in brackets would settle it.",
        Good.Replace("5-6   step R forward, touch L together\n7-8   step L back, touch R together", "5-8   charleston R", StringComparison.Ordinal),
            Good, "ours");
}
