namespace Scuff.Timing;

/// <summary>
/// A length or a place in the dancer's counts, exact. One count is the dancer's beat; it may be half or double
/// the beat of the music. Places are counted from zero: the count a teacher calls "1" stands at zero.
/// </summary>
public readonly struct Counts : IEquatable<Counts>, IComparable<Counts>
{
    private readonly Ratio _value;

    private Counts(Ratio value) => _value = value;

    /// <summary>No time at all; also the default value.</summary>
    public static Counts Zero => default;

    /// <summary>One count.</summary>
    public static Counts One => new(1);

    /// <summary>Half a count: the written place of an <c>&amp;</c>.</summary>
    public static Counts Half => new(new Ratio(1, 2));

    /// <summary>The exact number of counts.</summary>
    public Ratio Value => _value;

    /// <summary>Whether the place falls on a whole count.</summary>
    public bool IsWhole => _value.IsWhole;

    /// <summary>Makes a value of whole counts.</summary>
    public static Counts FromWhole(int counts) => new(counts);

    /// <summary>Makes a value from an exact fraction of counts.</summary>
    public static Counts FromRatio(Ratio counts) => new(counts);

    public static Counts operator +(Counts a, Counts b) => new(a._value + b._value);

    public static Counts operator -(Counts a, Counts b) => new(a._value - b._value);

    public static bool operator ==(Counts a, Counts b) => a._value == b._value;

    public static bool operator !=(Counts a, Counts b) => a._value != b._value;

    public static bool operator <(Counts a, Counts b) => a._value < b._value;

    public static bool operator >(Counts a, Counts b) => a._value > b._value;

    public static bool operator <=(Counts a, Counts b) => a._value <= b._value;

    public static bool operator >=(Counts a, Counts b) => a._value >= b._value;

    /// <summary>The earlier of two places.</summary>
    public static Counts Min(Counts a, Counts b) => a <= b ? a : b;

    /// <summary>The later of two places.</summary>
    public static Counts Max(Counts a, Counts b) => a >= b ? a : b;

    public int CompareTo(Counts other) => _value.CompareTo(other._value);

    public bool Equals(Counts other) => _value == other._value;

    public override bool Equals(object? obj) => obj is Counts other && Equals(other);

    public override int GetHashCode() => _value.GetHashCode();

    /// <summary>Written <c>7/2</c>, or <c>3</c> when whole.</summary>
    public override string ToString() => _value.ToString();
}
