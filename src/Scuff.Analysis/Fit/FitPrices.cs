using Scuff.Dances;

namespace Scuff.Analysis.Fit;

/// <summary>
/// What a plan pays for, in points; the plan with the fewest is the kindest. All of them can be changed by who asks. The sizes are ours (common
/// practice, no source); what is paid for is the trade's: dancers feel at once when the music begins anew and they do not, every interruption has to
/// be taught, and each new kind of it once more.
/// </summary>
public sealed record FitPrices
{
    /// <summary>Something of the music begins (fully: a section) inside a wall, where no section of the dance does.</summary>
    public int PhraseInside { get; init; } = 200;

    /// <summary>A wall begins where nothing of the music does; less where a small phrase does.</summary>
    public int WallOffPhrase { get; init; } = 600;

    /// <summary>An interruption.</summary>
    public int Interruption { get; init; } = 340;

    /// <summary>A kind of interruption that was not there before.</summary>
    public int NewKind { get; init; } = 120;

    /// <summary>The place is not between two sections of the dance.</summary>
    public int OffSection { get; init; } = 150;

    /// <summary>The place is not even between two bars.</summary>
    public int OffBar { get; init; } = 200;

    /// <summary>A figure is left in its middle.</summary>
    public int CutFigure { get; init; } = 80;

    /// <summary>A bridge: the dancers go on from where they left, which is harder to remember than a tag at the end of a wall.</summary>
    public int InsideWall { get; init; } = 80;

    /// <summary>The last step before a restart is danced differently.</summary>
    public int ChangedStep { get; init; } = 60;

    /// <summary>The tag is no whole number of bars; half of it for half a bar.</summary>
    public int OddTag { get; init; } = 100;

    /// <summary>Each count of a tag.</summary>
    public int TagCount { get; init; } = 18;

    /// <summary>A tag that has to be made first.</summary>
    public int MadeTag { get; init; } = 40;

    /// <summary>A tag that dances the last counts once more.</summary>
    public int Quote { get; init; } = 30;

    /// <summary>A tag that quotes the first counts of the dance.</summary>
    public int QuoteStart { get; init; } = 50;

    /// <summary>Everybody stands through a stop of the band.</summary>
    public int Hold { get; init; } = 20;

    /// <summary>The dance begins elsewhere than where it most likely would.</summary>
    public int StartElsewhere { get; init; } = 500;

    /// <summary>Each eight between that place and the start.</summary>
    public int WaitedEight { get; init; } = 150;

    /// <summary>The music ends inside a section of the dance.</summary>
    public int EndInside { get; init; } = 20;

    /// <summary>In a phrased dance: a part is danced to music to which another is.</summary>
    public int OtherMusic { get; init; } = 600;

    /// <summary>What interruptions cost at the level of the dance, in hundredths: beginners pay more.</summary>
    public int LevelPercent { get; init; } = 100;

    /// <summary>The usual prices for a dance of a level.</summary>
    public static FitPrices For(Level level) => new()
    {
        LevelPercent = level switch
        {
            Level.AbsoluteBeginner => 160,
            Level.Beginner => 130,
            Level.Improver => 110,
            _ => 100,
        },
    };

    /// <summary>A price of an interruption at the level.</summary>
    internal int AtLevel(int price) => price * LevelPercent / 100;
}
