using Scuff.Timing;

namespace Scuff.Analysis.Levels;

/// <summary>
/// The limits of the levels, each with its source. It is the content of a dance that is graded, not the dancer. Where the sources
/// differ the most generous one is taken, so that a dance is called harder only when nobody would call it easier.
/// </summary>
public static class LevelLimits
{
    /// <summary>All limits.</summary>
    public static IReadOnlyList<LevelLimit> All { get; } =
    [
        // absolute beginner: 16, "more if mirrored" (guide), 24 (newsletter), 20 or 32 with repeats (class page); beginner: 48 (guide and
        // newsletter); improver: 64 (class page; newsletter 48); intermediate: 64 (newsletter); advanced: up to the whole song (newsletter)
        new(LevelMeasure.Counts, 32, 48, 64, 64, LevelSources.ClassPage + "; " + LevelSources.Newsletter),

        // 24 (newsletter), the most that any source allows without repeats
        new(LevelMeasure.NewCounts, 24, null, null, null, LevelSources.Newsletter),

        // "at most one turn" and "up to two turns" (guide)
        new(LevelMeasure.Turns, 1, 2, null, null, LevelSources.Guide),

        // one quarter or one half (guide); pivots and half-turn shuffles for beginners, rolling vines for improvers (newsletter)
        new(LevelMeasure.TurnSize, 4, 4, 8, null, LevelSources.Guide + "; " + LevelSources.Newsletter),

        // "improvers half a beat; more needs advanced" (trade: body and floor, 3; design value)
        new(LevelMeasure.TurnInOne, 4, 4, 4, 4, LevelSources.Design),

        // the same over two counts, so that a step and a pivot make one turn; beginners a quarter a beat
        new(LevelMeasure.TurnInTwo, 4, 4, 8, 8, LevelSources.Design),

        // no more than one full turn in eight counts below intermediate (trade: body and floor, 3; common practice)
        new(LevelMeasure.TurnInEight, 8, 8, 8, null, LevelSources.Design),

        // turns on one foot are one of the things a grading looks at (trade: teaching, 4; common practice)
        new(LevelMeasure.TurnOnOneFoot, 2, 4, 4, 8, LevelSources.Design),

        // "no syncopation" (guide), "one step per count" (newsletter); shuffles and coasters from beginner on (class page)
        new(LevelMeasure.OffBeats, 0, null, null, null, LevelSources.Guide + "; " + LevelSources.Newsletter),

        // the class page's beginners dance on the half beat only; nothing is published about quarters
        new(LevelMeasure.QuarterBeats, 0, 0, null, null, LevelSources.Design),

        // none for absolute beginners (guide), "few tags" for beginners (class page), allowed for improvers (newsletter)
        new(LevelMeasure.Tags, 0, 2, null, null, LevelSources.Guide + "; " + LevelSources.ClassPage),

        // none for absolute beginners (guide); "tags and restarts allowed" from improver on (newsletter)
        new(LevelMeasure.Restarts, 0, 0, null, null, LevelSources.Guide + "; " + LevelSources.Newsletter),

        // improvers: "no restart after the first section" (newsletter)
        new(LevelMeasure.EarlyRestarts, 0, 0, 0, null, LevelSources.Newsletter),

        // "easy phrased" for improvers (class page), "several parts" for advanced (newsletter)
        new(LevelMeasure.Parts, 1, 1, 2, 2, LevelSources.ClassPage + "; " + LevelSources.Newsletter),

        // "moderate pace", "slow to moderate tempo" (guide); in numbers: class music lies at 90 to 130, above 140 beginners lose the
        // shuffle (trade: music, 1; common practice)
        new(LevelMeasure.Tempo, 130, 140, null, null, LevelSources.Guide),

        // below advanced no more than 3.5 weight changes a second for more than four beats (trade: body and floor, 3; design value)
        new(LevelMeasure.StepRate, new Ratio(7, 2), new Ratio(7, 2), new Ratio(7, 2), new Ratio(7, 2), LevelSources.Design),

        // "more variety, kicks and jumps" at intermediate (newsletter); a pair or two is met by improvers (our catalogue)
        new(LevelMeasure.Jumps, 0, 0, 4, null, LevelSources.Newsletter),

        // the lists of steps by level (class page), as the catalogue has them; two newcomers a dance can be taught
        new(LevelMeasure.HigherFigures, 2, 2, 2, 2, LevelSources.ClassPage),
    ];

    /// <summary>The limits of one measure.</summary>
    public static LevelLimit Of(LevelMeasure measure) => All[(int)measure];
}
