namespace Scuff.Analysis.Planning;

/// <summary>
/// What a good programme is, in whole points. The order of importance is common practice (trade: teaching, 6 and 7: requests, known dances, easy and hard and
/// fast and slow in turn); the numbers are ours, and she can change each.
/// </summary>
public sealed record ProgrammeRules
{
    /// <summary>The usual rules of an evening.</summary>
    public static ProgrammeRules Usual { get; } = new();

    /// <summary>Seconds between two dances: the name is announced and lines are formed.</summary>
    public int SecondsBetween { get; init; } = 40;

    /// <summary>How many other dances lie at least between two that are nearly the same, within a stretch.</summary>
    public int LikeApart { get; init; } = 5;

    /// <summary>From what likeness on two dances count as nearly the same, in percent.</summary>
    public int LikeFrom { get; init; } = 60;

    /// <summary>How many dances in a row a group may have to sit out before it costs points.</summary>
    public int MostSatOut { get; init; } = 2;

    /// <summary>A dance of which less of the floor than this knows it, in percent, is not put on unless she names it or somebody asked for it.</summary>
    public int LeastFloor { get; init; } = 15;

    /// <summary>What four minutes bring that all can dance.</summary>
    public int FullFloor { get; init; } = 60;

    /// <summary>What a requested dance brings.</summary>
    public int Request { get; init; } = 80;

    /// <summary>What each further person who asks for it brings, up to five.</summary>
    public int FurtherRequest { get; init; } = 10;

    /// <summary>What a dance brings that is all but forgotten and worth keeping.</summary>
    public int Due { get; init; } = 40;

    /// <summary>What four minutes bring of a dance that was not danced for <see cref="FreshDays"/> or more.</summary>
    public int Fresh { get; init; } = 15;

    /// <summary>After how many days a dance is as fresh as it gets.</summary>
    public int FreshDays { get; init; } = 56;

    /// <summary>What four minutes cost for each MET they are off the wished effort.</summary>
    public int EffortOff { get; init; } = 6;

    /// <summary>What two hard dances in a row cost.</summary>
    public int HardAfterHard { get; init; } = 20;

    /// <summary>What two easy dances in a row cost.</summary>
    public int EasyAfterEasy { get; init; } = 6;

    /// <summary>What two fast dances in a row cost.</summary>
    public int FastAfterFast { get; init; } = 16;

    /// <summary>What two slow dances in a row cost.</summary>
    public int SlowAfterSlow { get; init; } = 8;

    /// <summary>What it costs each time a group sits out one dance more than it should.</summary>
    public int SatOut { get; init; } = 30;

    /// <summary>What an opening dance costs for every ten percent of the floor that cannot dance it.</summary>
    public int OpeningFloor { get; init; } = 8;

    /// <summary>What a closing dance costs for every ten percent of the floor that cannot dance it.</summary>
    public int ClosingFloor { get; init; } = 8;

    /// <summary>What a minute costs that a stretch leaves unused.</summary>
    public int EmptyMinute { get; init; } = 10;

    /// <summary>What two dances at once to one song cost, besides what the fuller floor brings: half the floor is lent to each, and both are called.</summary>
    public int SplitFloor { get; init; } = 10;

    /// <summary>What a dance brings that stays where it was in the programme she has seen.</summary>
    public int Stays { get; init; } = 4;

    /// <summary>Below so many counts a minute a dance is slow.</summary>
    public int SlowBelow { get; init; } = 100;

    /// <summary>Above so many counts a minute a dance is fast.</summary>
    public int FastAbove { get; init; } = 130;
}
