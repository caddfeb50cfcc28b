namespace Scuff.Analysis.Calls;

/// <summary>
/// How far ahead of the beat a caller begins. Source: teaching notes, section 2, derived there from group fitness training (a cue in the last four
/// beats before a change when it is new, in the last two when it only reminds) and common practice: one word on the beat before, two or three words two
/// beats before, four to six words four beats before; two short words a beat at most at 120 beats a minute.
/// </summary>
public static class CallLead
{
    /// <summary>Most words a beat, at 120 beats a minute and slower.</summary>
    public const double WordsPerBeat = 2;

    /// <summary>Most words a second above that pace.</summary>
    public const double WordsPerSecond = 4;

    /// <summary>A heading that is new.</summary>
    public const double NewHeading = 4;

    /// <summary>A heading that is known, a wall that begins, a warning said for the second time.</summary>
    public const double Reminder = 2;

    /// <summary>The first warning of a tag, a restart, the last wall.</summary>
    public const double Warning = 8;

    /// <summary>Counts before what it warns of by which a first warning has been said: the reminder and the moves come after it; design value.</summary>
    public const double WarningSaid = 3;

    /// <summary>Seconds between the last sound of the words and the move; design value.</summary>
    public const double Breath = 0.03;

    /// <summary>Seconds between two calls; design value.</summary>
    public const double Pause = 0.05;

    /// <summary>Beats ahead for so many words.</summary>
    public static double ForWords(int words) => words <= 1 ? 1 : words <= 3 ? 2 : words <= SpokenLength.MostWords ? 4 : 8;

    /// <summary>How many words have room in a stretch.</summary>
    /// <param name="beats">Its beats.</param>
    /// <param name="seconds">The same in seconds.</param>
    public static double WordsIn(double beats, double seconds) => Math.Min(WordsPerBeat * beats, WordsPerSecond * seconds);
}
