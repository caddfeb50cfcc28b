using System.Globalization;

namespace Scuff.Timing;

/// <summary>
/// Where the written labels stand. <c>e</c>, <c>&amp;</c> and <c>a</c> are written at a quarter, a half and three quarters
/// into the count; a swing feel moves them only when they are performed.
/// </summary>
public static class CountGrid
{
    /// <summary>The exact written offset of a subdivision letter within its count, or null when it is none.</summary>
    public static Counts? OffsetOf(char letter) => letter switch
    {
        'e' => Counts.FromRatio(new Ratio(1, 4)),
        '&' => Counts.Half,
        'a' => Counts.FromRatio(new Ratio(3, 4)),
        _ => null,
    };

    /// <summary>
    /// The label of a place counted from zero: <c>3</c>, <c>3&amp;</c>, <c>0&amp;</c> for the &amp; before count 1.
    /// A place off the grid is written as a fraction after the count, for example <c>3+1/3</c>.
    /// </summary>
    public static string LabelOf(Counts place)
    {
        int floor = place.Value.Floor;
        Ratio rest = place.Value - floor;
        string count = (floor + 1).ToString(CultureInfo.InvariantCulture);
        return rest.Sign == 0
            ? count
            : count + LetterOf(rest);
    }

    /// <summary>
    /// Where a written place is performed when a beat is swung with the long part <paramref name="swing"/> times the short:
    /// <c>&amp;</c> moves from 1/2 to s/(1+s); the quarters are carried along in proportion. 1 leaves everything in place,
    /// 2 gives the triplet feel in which &amp; falls on 2/3 of the beat.
    /// Source: the definition of the swung eighth as the first and third of a triplet (common music theory).
    /// </summary>
    /// <param name="place">Written place in counts.</param>
    /// <param name="swing">Long-to-short ratio, greater than zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The ratio is not above zero.</exception>
    public static Counts Performed(Counts place, Ratio swing)
    {
        if (swing.Sign <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(swing), "A swing ratio is above zero.");
        }

        int floor = place.Value.Floor;
        Ratio rest = place.Value - floor;
        Ratio half = new(1, 2);
        Ratio middle = swing / (swing + 1);
        Ratio moved = rest <= half
            ? rest * 2 * middle
            : middle + ((rest - half) * 2 * (Ratio.One - middle));
        return Counts.FromRatio(moved + floor);
    }

    private static string LetterOf(Ratio rest) => rest switch
    {
        { Numerator: 1, Denominator: 4 } => "e",
        { Numerator: 1, Denominator: 2 } => "&",
        { Numerator: 3, Denominator: 4 } => "a",
        _ => "+" + rest.ToString(),
    };
}
