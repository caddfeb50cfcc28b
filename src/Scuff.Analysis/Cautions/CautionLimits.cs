using Scuff.Timing;

namespace Scuff.Analysis.Cautions;

/// <summary>From when on a caution is printed. None of this is medical advice; a caution says only what to look out for.</summary>
public static class CautionLimits
{
    /// <summary>
    /// So many twists in a repetition. Trouble comes from a foot that sticks while the body turns: http://milehighballroomdance.com/jan13.html,
    /// https://linedance-togo.de/2019/10/01/10-tipps-vom-profi-fuer-den-einsteiger/. The number is a design value.
    /// </summary>
    public const int Twists = 4;

    /// <summary>
    /// So many stomps in a repetition. Flat, with a soft knee, and not on concrete (trade: body and floor, 6; common practice).
    /// The number is a design value.
    /// </summary>
    public const int Stomps = 4;

    /// <summary>So many deep bends in a repetition. Design value.</summary>
    public const int Bends = 2;

    /// <summary>
    /// So many landings in a repetition: for older dancers no hops at all (trade: body and floor, 3; common practice); what the floor is made
    /// of matters for jumps: https://doi.org/10.1055/a-1766-0056.
    /// </summary>
    public const int Landings = 1;

    /// <summary>
    /// More turn on one foot than this, in eighths. Spins with tired legs or lost balance are the risk for ankles:
    /// http://www.danceweb.co.uk/NeWs/?id=171. The number is a design value.
    /// </summary>
    public static Ratio OneFoot { get; } = 4;

    /// <summary>More turn in eight counts than this, in eighths: one full turn (trade: body and floor, 3; common practice).</summary>
    public static Ratio InEight { get; } = 8;

    /// <summary>
    /// More weight changes a second over six counts than this (trade: body and floor, 3; design value). Walking at 130 steps a minute,
    /// 2.2 a second, counts as vigorous already (from memory, Tudor-Locke).
    /// </summary>
    public static Ratio StepsInSecond { get; } = new(7, 2);
}
