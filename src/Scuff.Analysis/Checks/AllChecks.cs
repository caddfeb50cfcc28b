namespace Scuff.Analysis.Checks;

/// <summary>
/// Every check there is, ordered by rule id. The list is written out because finding the checks by reflection cost about
/// 12 ms at a cold start and this costs 2 (measured on two cores with .NET 10); a test finds them by <see cref="ICheck"/> and
/// fails when one is missing here or out of order.
/// </summary>
public static class AllChecks
{
    /// <summary>The checks, ordered by rule id.</summary>
    public static IReadOnlyList<ICheck> Ordered { get; } =
    [
        new KneeLoad(),
        new CallNowhere(),
        new CallTooLong(),
        new AndTwice(),
        new DoubledCounts(),
        new MissingCounts(),
        new OutOfOrderCounts(),
        new SectionLengths(),
        new TotalCounts(),
        new EndingFacing(),
        new FacingClaims(),
        new WallCount(),
        new ImpossibleCross(),
        new FarFeet(),
        new QuickFeet(),
        new FloorDrift(),
        new FloorTravel(),
        new InterruptionBeyondWall(),
        new InterruptionCutsFigure(),
        new InterruptionFacing(),
        new InterruptionFoot(),
        new InterruptionIncomplete(),
        new InterruptionOddPlace(),
        new RestartCount(),
        new TagCount(),
        new InterruptionUnknownTag(),
        new LevelClaim(),
        new OptionDiffers(),
        new SequenceFoot(),
        new SequenceLength(),
        new SequenceUnknownPart(),
        new VersionMissing(),
        new TagFoot(),
        new TagLength(),
        new IntroSeconds(),
        new IntroMeasured(),
        new IntroMissing(),
        new LeftOver(),
        new LengthMeasured(),
        new TempoDiffers(),
        new TempoMeasured(),
        new TempoUnusual(),
        new WallsOffMusic(),
        new TurnAwayFromName(),
        new DizzyTurns(),
        new OneFootTurn(),
        new PivotDirection(),
        new TurnTooFast(),
        new UnwindDirection(),
        new CloseUnclear(),
        new DanceRepeats(),
        new EndWeightUnstated(),
        new FootNotFree(),
        new FootNotStanding(),
        new FootUnnamedOnBoth(),
        new GestureFootNotFree(),
        new SectionHandOver(),
        new StompUnclear(),
        new SwitchNeedsStep(),
    ];
}
