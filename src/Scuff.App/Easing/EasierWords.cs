using Scuff.Analysis.Easier;
using Scuff.Analysis.Levels;
using Scuff.Dances;

namespace Scuff.App.Easing;

/// <summary>What is said about easier ways, in English.</summary>
internal static class EasierWords
{
    /// <summary>The words for whom something is asked, as typed.</summary>
    public static IReadOnlyList<string> Aims { get; } = ["level", "knees", "turns", "speed"];

    /// <summary>The aim of a word, or null.</summary>
    public static EasierAim? Find(string word) => Aims.ToList().IndexOf(word.Trim().ToLowerInvariant()) is >= 0 and var at ? (EasierAim)at : null;

    /// <summary>What is looked for: <c>above beginner</c>.</summary>
    public static string Sought(EasierQuestion question) => question.Aim switch
    {
        EasierAim.Knees => "hard on knees",
        EasierAim.Turns => "with a turn",
        EasierAim.Speed => "with steps between the counts",
        _ => "above " + LevelPhrases.Name(question.Level),
    };

    /// <summary>What is said where nothing is found.</summary>
    public static string None(EasierAim aim) => aim switch
    {
        EasierAim.Turns => "Nothing with less turn ends on the same foot and wall.",
        _ => "Nothing easier was found that ends on the same foot and wall.",
    };

    /// <summary>What a move asks: <c>advanced</c>.</summary>
    public static string Of(MoveDemand demand) => LevelPhrases.Name(demand.Level);

    /// <summary>The reasons in one row.</summary>
    public static string Of(EasierWay way) => string.Join("; ", way.Reasons.Select(reason => reason.Words));

    /// <summary>How many moves: <c>1 move</c>.</summary>
    public static string Moves(int number) => number == 1 ? "1 move" : number.ToString(System.Globalization.CultureInfo.InvariantCulture) + " moves";

    /// <summary>The levels as typed.</summary>
    public static string Levels { get; } = string.Join(", ", Enum.GetValues<Level>().Where(level => level < Level.Advanced).Select(LevelPhrases.Name));
}
