using System.Globalization;
using Scuff.Timing;

namespace Scuff.Stance;

/// <summary>
/// Where the dance faces, on the trade's clock: the wall faced at the start is 12:00, 3:00 is to the dancer's right there,
/// an eighth of a turn is 1:30. Default: 12:00.
/// </summary>
public readonly struct Facing : IEquatable<Facing>
{
    private Facing(Ratio eighths) => Eighths = eighths.Modulo(8);

    /// <summary>12:00; also the default value.</summary>
    public static Facing Front => default;

    /// <summary>Eighths clockwise from 12:00, in [0, 8).</summary>
    public Ratio Eighths { get; }

    /// <summary>Whether this is one of the four walls 12:00, 3:00, 6:00, 9:00.</summary>
    public bool IsWall => Eighths.IsWhole && Eighths.Numerator % 2 == 0;

    /// <summary>Makes the facing so many eighths clockwise from 12:00; any amount is reduced to the clock.</summary>
    public static Facing FromEighths(Ratio eighths) => new(eighths);

    /// <summary>Reads a clock time of the trade (hours and minutes), for example 4:30; null when it is not on the clock.</summary>
    public static Facing? FromClock(int hours, int minutes) => hours is < 1 or > 12 || minutes is < 0 or > 59
        ? null
        : new Facing(new Ratio(((hours % 12) * 60) + minutes, 90));

    public static Facing operator +(Facing facing, Turn turn) => new(facing.Eighths + turn.Eighths);

    public static Facing operator -(Facing facing, Turn turn) => new(facing.Eighths - turn.Eighths);

    /// <summary>The shortest turn from <paramref name="from"/> to <paramref name="to"/>; a half turn counts as right.</summary>
    public static Turn operator -(Facing to, Facing from)
    {
        Ratio way = (to.Eighths - from.Eighths).Modulo(8);
        return Turn.FromEighths(way > 4 ? way - 8 : way);
    }

    public static bool operator ==(Facing a, Facing b) => a.Equals(b);

    public static bool operator !=(Facing a, Facing b) => !a.Equals(b);

    public bool Equals(Facing other) => Eighths == other.Eighths;

    public override bool Equals(object? obj) => obj is Facing other && Equals(other);

    public override int GetHashCode() => Eighths.GetHashCode();

    /// <summary>The clock word: <c>12:00</c>, <c>4:30</c>.</summary>
    public override string ToString()
    {
        Ratio minutes = Eighths * 90;
        int whole = minutes.Floor;
        int hours = whole / 60;
        return string.Create(CultureInfo.InvariantCulture, $"{(hours == 0 ? 12 : hours)}:{whole % 60:00}");
    }
}
