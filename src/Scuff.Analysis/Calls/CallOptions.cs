namespace Scuff.Analysis.Calls;

/// <summary>How a dance is to be called.</summary>
public sealed record CallOptions
{
    /// <summary>
    /// How much is said in each wall, from the first; the last goes on. As usual every step, then what each section begins with, then only the
    /// warnings. Source: teaching notes, section 1, step 10 (common practice).
    /// </summary>
    public ValueList<CallHelp> HelpByWall { get; init; } = [CallHelp.EveryStep, CallHelp.Headings, CallHelp.Warnings];

    /// <summary>The wall at which the help begins, from 1: who starts in the middle is told as at the start.</summary>
    public int FirstWall { get; init; } = 1;

    /// <summary>Seconds that words take in the voice that will say them; as usual reckoned from their syllables.</summary>
    public Func<string, double> SecondsToSay { get; init; } = SpokenLength.Of;

    /// <summary>Counts there are before the first count of the dance: nothing is said before them.</summary>
    public double Intro { get; init; } = 8;

    /// <summary>Whether the numbers before the first count are said.</summary>
    public bool WithCountIn { get; init; } = true;

    /// <summary>The language.</summary>
    public CallWords Words { get; init; } = CallWords.English;

    /// <summary>How much is said in a wall.</summary>
    /// <param name="wall">The wall, from 1.</param>
    public CallHelp HelpIn(int wall)
        => HelpByWall.Count == 0 ? CallHelp.Silent : HelpByWall[Math.Clamp(wall - FirstWall, 0, HelpByWall.Count - 1)];
}
