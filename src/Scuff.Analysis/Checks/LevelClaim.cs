using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Diagnostics;

namespace Scuff.Analysis.Checks;

/// <summary>The heading's level against the published definitions.</summary>
public sealed class LevelClaim : ICheck
{
    private const int MostReasons = 3;

    // what is too fast, or too much on one foot, for the level has a complaint of its own at its place
    private static readonly LevelMeasure[] ToldElsewhere =
    [
        LevelMeasure.TurnInOne, LevelMeasure.TurnInTwo, LevelMeasure.TurnInEight, LevelMeasure.TurnOnOneFoot, LevelMeasure.StepRate,
    ];

    /// <summary>The rule.</summary>
    public static Rule TheRule { get; } = new(
        "level/claim-differs",
        Severity.Hint,
        "The heading says {claimed}, but by the published limits this is {level}: {reasons}. To bring it one level down, {remedy}.",
        "People choose dances by the level. One that is called easier than it is empties the floor, and beginners think the fault is theirs.",
        """
        Modest

        level: beginner

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 3: after 4 restart
        """,
        """
        Modest

        level: improver

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        section 2
        1-2  step R forward, touch L together
        3-4  step L back, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        wall 3: after 12 restart
        """,
        "trade rule R29");

    /// <inheritdoc/>
    public Rule Rule => TheRule;

    /// <inheritdoc/>
    public IEnumerable<Diagnostic> Check(CheckContext context)
    {
        if (context.Dance.ClaimedLevel is not { } claimed
            || context.Dance.Header.FirstOrDefault(field => field.Key == "level") is not { } heading
            || !context.Level.IsComplete)
        {
            yield break;
        }

        LevelReason[] reasons = [.. context.Level.Reasons.Where(reason => reason.Level > claimed && !ToldElsewhere.Contains(reason.Measure))];
        if (reasons.Length == 0)
        {
            yield break;
        }

        Level level = reasons[0].Level;
        LevelReason[] deciding = [.. reasons.Where(reason => reason.Level == level).Take(MostReasons)];
        string value = LevelPhrases.Name(level);
        yield return TheRule
            .At(
                heading.Span,
                ("claimed", heading.Value),
                ("level", value),
                ("reasons", string.Join("; ", deciding.Select(Reason))),
                ("remedy", LevelPhrases.Join([.. deciding.Select(reason => reason.Remedy)])))
            .WithFixes(new Fix("write level: " + value, new DanceEdit.SetHeader("level", value), IsSafe: false));
    }

    private static string Reason(LevelReason reason) => reason.Words + (reason.Place is { } place ? $" ({place.Words})" : "");
}
