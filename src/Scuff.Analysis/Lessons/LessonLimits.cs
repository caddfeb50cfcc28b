using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>
/// The numbers of a lesson, each with its source; <c>[n]</c> is a source of the trade's facts on teaching. Seconds are counted in quarters
/// of a minute (<see cref="Unit"/>), closer than anybody keeps a class to the clock. Design values are ours: they were tuned until the dances of
/// the demo club lie where common practice has them (a 32-count beginner dance 10 to 20 minutes with two runs, a 64-count intermediate one 20 to
/// 40; trade: teaching, 1, from memory).
/// </summary>
public static class LessonLimits
{
    /// <summary>Seconds of the smallest stretch that is planned. Design value.</summary>
    public const int Unit = 15;

    /// <summary>The shortest lesson that can be asked for, in minutes.</summary>
    public const int LeastMinutes = 1;

    /// <summary>The longest, in minutes: ten hours, more than any workshop day.</summary>
    public const int MostMinutes = 600;

    // ---- cutting into chunks ----

    /// <summary>Counts a chunk has in 4/4. Trade: teaching, 1.5: "4, 8 or 16 counts, cut where figures belong together" [2].</summary>
    public static ValueList<int> ChunksOfFour { get; } = [4, 8, 16];

    /// <summary>Counts a chunk has in 3/4: the same of bars of three. Common practice, no source.</summary>
    public static ValueList<int> ChunksOfThree { get; } = [6, 12];

    /// <summary>Longest chunk looked for, in counts; only what cannot be cut is longer. Trade: teaching, 1.5 [2].</summary>
    public const int LongestChunk = 16;

    /// <summary>What a chunk of another length costs the cutting, against squares of points. Design value: always dearer than a chunk too hard.</summary>
    public const int OddLengthCost = 4000;

    /// <summary>What it costs to cut within a section. Sections are the figures that belong together on the sheet. Design value.</summary>
    public const int WithinSectionCost = 90;

    /// <summary>What it costs to cut within a line of the sheet. Design value.</summary>
    public const int WithinLineCost = 160;

    /// <summary>
    /// How much a class takes in at once, in points of difficulty (<see cref="LessonReasonKind"/>): an easy eight has 16. Design value; that
    /// easy chunks are joined and hard ones split is common practice, no source.
    /// </summary>
    public static int ChunkPoints(Level level) => level switch
    {
        Level.AbsoluteBeginner => 18,
        Level.Beginner => 22,
        Level.Improver => 26,
        Level.Intermediate => 31,
        _ => 36,
    };

    // ---- difficulty, in points ----

    /// <summary>Points of a count. Design value.</summary>
    public const int CountPoints = 2;

    /// <summary>Points of a figure that is new to the class; it is taught alone first as well (trade: teaching, 1.3, common practice).</summary>
    public const int NewFigurePoints = 5;

    /// <summary>Points of an action between two counts. Trade: teaching, 4 (share of &amp; counts); the number is a design value.</summary>
    public const int OffBeatPoints = 1;

    /// <summary>Points on top for an action on a quarter of a count. Design value.</summary>
    public const int QuarterBeatPoints = 2;

    /// <summary>Points of a quarter turn. Trade: teaching, 4 (number and size of turns); the number is a design value.</summary>
    public const int QuarterTurnPoints = 2;

    /// <summary>Points on top for a quarter turn on one foot. Trade: teaching, 4 (turn on one foot); the number is a design value.</summary>
    public const int OneFootPoints = 2;

    /// <summary>Points of a step that crosses or locks. Trade: teaching, 4: beginners "cross steps and weaves may start" [13]; design value.</summary>
    public const int CrossingPoints = 1;

    /// <summary>Points of a weight change that follows another faster than <see cref="BriskSteps"/>. Design value.</summary>
    public const int BriskPoints = 1;

    /// <summary>Points of one that follows faster than <see cref="FastSteps"/>. Design value.</summary>
    public const int FastPoints = 2;

    /// <summary>Points of a landing after a jump, hop, leap or scoot. Design value.</summary>
    public const int LandingPoints = 2;

    /// <summary>Points of words that could not be read: she has to work out what is danced. Design value.</summary>
    public const int UnknownPoints = 4;

    /// <summary>Weight changes a second above which feet are brisk: warned of below advanced (trade: body and floor, 3; design value).</summary>
    public static Ratio BriskSteps { get; } = new(7, 2);

    /// <summary>Weight changes a second above which feet are fast: warned of always (trade: body and floor, 3; design value).</summary>
    public static Ratio FastSteps { get; } = 5;

    // ---- how often ----

    /// <summary>
    /// Least times a chunk is walked: "repeat until most have it" (trade: teaching, 1.5 [1]); once shown, once with it. Design value.
    /// </summary>
    public const int LeastRepeats = 2;

    /// <summary>Most times a chunk is wanted, before time that is left over adds more. Design value.</summary>
    public const int MostRepeats = 8;

    /// <summary>Points that ask for another repetition on top of <see cref="LeastRepeats"/>, for a class of a level. Design value.</summary>
    public static int PointsPerRepeat(Level level) => level switch
    {
        Level.AbsoluteBeginner => 9,
        Level.Beginner => 12,
        Level.Improver => 14,
        Level.Intermediate => 18,
        _ => 22,
    };

    /// <summary>Time that is left over repeats a thing at most so many times as often as wanted. Design value: then it tires.</summary>
    public const int MostStretch = 2;

    /// <summary>Times a new figure is danced alone on each foot: "teach any new figure alone first, both feet" (trade: teaching, 1.3).</summary>
    public const int FigureRepeats = 3;

    /// <summary>Figures that a class keeps at once: "people keep three or four new ideas a class at most" (trade: teaching, 6 [21]).</summary>
    public const int MostNewFigures = 4;

    // ---- how long things take, in seconds ----

    /// <summary>Saying title, song, counts, walls, level and what is new. Trade: teaching, 1.1 (common practice); design value.</summary>
    public const int Name = 30;

    /// <summary>What is added where there is something to take care of. Design value.</summary>
    public const int SayCautions = 15;

    /// <summary>Hearing the music: 20 to 30 seconds (trade: teaching, 1.2, common practice).</summary>
    public const int Listen = 30;

    /// <summary>Showing and naming one move at the first walk-through. Design value.</summary>
    public const int ShowMove = 4;

    /// <summary>Getting the class back to the place where a repetition begins. Design value.</summary>
    public const int Gather = 4;

    /// <summary>Showing a new figure alone, and saying its name. Design value.</summary>
    public const int ShowFigure = 15;

    /// <summary>Turning the class to another wall and settling it, before the music (trade: teaching, 1.7 [3]); design value.</summary>
    public const int TurnClass = 15;

    /// <summary>Agreeing the cue word of a tag or restart (trade: teaching, 1.8); design value.</summary>
    public const int AgreeWord = 15;

    /// <summary>Starting the music and the count-in. Design value.</summary>
    public const int StartMusic = 15;

    /// <summary>Saying what to practise, and handing out the sheet after the teaching, not before it (trade: teaching, 1.11 [1]); design value.</summary>
    public const int Practise = 30;

    /// <summary>Length of a track that states none. Design value: the tracks of the demo club are 2:36 to 4:02 long.</summary>
    public const int Track = 180;

    /// <summary>Warm-up as wanted: 5 to 10 minutes (trade: body and floor, 5, common practice; exercise classes 6 to 10 [14]).</summary>
    public const int WarmUp = 300;

    /// <summary>The longest warm-up (trade: body and floor, 5).</summary>
    public const int LongestWarmUp = 600;

    /// <summary>The shortest that is worth its name: one easy dance. Design value.</summary>
    public const int ShortestWarmUp = 180;

    /// <summary>Cool-down: one slow dance and the stretches (trade: body and floor, 5, common practice: 5 minutes [11]).</summary>
    public const int CoolDown = 300;

    /// <summary>The shortest: one slow dance. Design value.</summary>
    public const int ShortestCoolDown = 180;

    /// <summary>Time left over below this goes into the questions at the end; above it, it is a step of its own. Design value.</summary>
    public const int SmallRest = 120;

    /// <summary>Teaching longer than this wants a drink between. Trade: teaching, 6 (blocks of 30 to 45 minutes [20]).</summary>
    public const int LongestBlock = 45 * 60;

    // ---- tempo ----

    /// <summary>Counts a minute taken where the dance states none: class music mostly lies at 90 to 130 (trade: music, 1, common practice); design value.</summary>
    public const int AssumedTempo = 110;

    /// <summary>Counting aloud goes at so many percent of the full tempo. "Count aloud at a slow pace" (trade: teaching, 1.9); design value.</summary>
    public const int AloudPercent = 65;

    /// <summary>And never faster than this, in counts a minute: a calm walk. Design value.</summary>
    public const int FastestAloud = 84;

    /// <summary>
    /// And never slower: below 60 to 70 percent balance steps become harder (trade: music, 6, from memory), so a slow dance keeps its pace.
    /// </summary>
    public const int SlowestAloud = 50;

    /// <summary>Speeds the practice player has, in percent (trade: music, 6, suggested presets).</summary>
    public static ValueList<int> Presets { get; } = [60, 70, 75, 80, 85, 90, 95, 100, 105];

    /// <summary>Slower than this is warned of (trade: music, 6).</summary>
    public const int SlowestPercent = 75;

    /// <summary>The rungs below full tempo of an easy dance: slow music at 75 to 90 percent (trade: teaching, 1.9).</summary>
    public static ValueList<int> EasyLadder { get; } = [85];

    /// <summary>The rungs of a harder or faster one: "teachers commonly practise at 70, 80, 90, then full" (trade: music, 6); 70 would be warned of.</summary>
    public static ValueList<int> HardLadder { get; } = [80, 90];

    /// <summary>From so many points in an eight on, on average, the ladder has more rungs. Design value.</summary>
    public const int HardPoints = 24;

    /// <summary>From so many counts a minute on, it has, too: class music mostly lies below (trade: music, 1, common practice).</summary>
    public const int FastTempo = 130;

    /// <summary>Walls danced on each rung: the front one and the dreaded second [3]. Design value.</summary>
    public const int RungWalls = 2;

    /// <summary>Walls danced in the first run, every step called; then it is mended what went wrong. Design value.</summary>
    public const int FirstRunWalls = 4;

    // ---- chaining ----

    /// <summary>
    /// From so many counts on, what is joined begins at the last chain point before, and goes back to the very start only at every such point.
    /// "After each new section dance everything from the start" (trade: teaching, 1.6); the number is a design value.
    /// </summary>
    public const int ChainCounts = 32;

    /// <summary>
    /// The ending is the hard part when its last quarter has so many tenths of the points a count that the rest has: then chaining goes backward
    /// (trade: teaching, 1.6: "backward chaining is used for hard endings", from memory). The number is a design value.
    /// </summary>
    public const int HardEndingTenths = 15;

    /// <summary>
    /// And an eight of it must be so many tenths of what the class takes in at once (<see cref="ChunkPoints"/>): an easy dance with a less easy ending is
    /// learned forward. Design value.
    /// </summary>
    public const int HardEndingLoadTenths = 12;

    /// <summary>Backward chaining needs so many chunks to be worth it. Design value.</summary>
    public const int LeastChunksBackward = 3;

    /// <summary>Counts danced before and after a tag or restart when it is walked on its wall. Common practice, no source.</summary>
    public const int AroundBreak = 8;

    // ---- what goes first when time is short ----

    /// <summary>
    /// How long a step is kept when time is short: everything else is repeated down to one part in so many of what is wanted before the step goes.
    /// Zero: never left out. Values below one are for what comes only with time left over. Common practice, no source; order by what teachers give up first.
    /// </summary>
    public static Ratio Importance(LessonStepKind kind) => kind switch
    {
        LessonStepKind.Listen => 2,
        LessonStepKind.Join => new Ratio(3, 2),
        LessonStepKind.Rung => 2,
        LessonStepKind.Headings => 3,
        LessonStepKind.Warnings => new Ratio(9, 10),
        LessonStepKind.Silent => new Ratio(8, 10),
        LessonStepKind.WarmUp => 3,
        LessonStepKind.CoolDown => new Ratio(5, 2),
        LessonStepKind.Practise => 4,
        _ => 0,
    };
}
