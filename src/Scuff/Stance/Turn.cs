using Scuff.Timing;

namespace Scuff.Stance;

/// <summary>
/// A turn of the body, exact, right (clockwise seen from above) positive. One and a quarter stays one and a quarter;
/// only a <see cref="Facing"/> is reduced to the clock. Default: no turn.
/// </summary>
public readonly struct Turn : IEquatable<Turn>, IComparable<Turn>
{
    private Turn(Ratio eighths) => Eighths = eighths;

    /// <summary>No turn; also the default value.</summary>
    public static Turn None => default;

    /// <summary>The turn in eighths of a full turn, right positive.</summary>
    public Ratio Eighths { get; }

    /// <summary>-1 to the left, 0 none, 1 to the right.</summary>
    public int Sign => Eighths.Sign;

    /// <summary>The same amount without its direction, in eighths.</summary>
    public Ratio Amount => Eighths.Sign < 0 ? -Eighths : Eighths;

    /// <summary>Makes a turn of so many eighths, right positive.</summary>
    public static Turn FromEighths(Ratio eighths) => new(eighths);

    public static Turn operator +(Turn a, Turn b) => new(a.Eighths + b.Eighths);

    public static Turn operator -(Turn a, Turn b) => new(a.Eighths - b.Eighths);

    public static Turn operator -(Turn a) => new(-a.Eighths);

    public static bool operator ==(Turn a, Turn b) => a.Equals(b);

    public static bool operator !=(Turn a, Turn b) => !a.Equals(b);

    public static bool operator <(Turn a, Turn b) => a.CompareTo(b) < 0;

    public static bool operator >(Turn a, Turn b) => a.CompareTo(b) > 0;

    public static bool operator <=(Turn a, Turn b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Turn a, Turn b) => a.CompareTo(b) >= 0;

    public int CompareTo(Turn other) => Eighths.CompareTo(other.Eighths);

    public bool Equals(Turn other) => Eighths == other.Eighths;

    public override bool Equals(object? obj) => obj is Turn other && Equals(other);

    public override int GetHashCode() => Eighths.GetHashCode();

    /// <summary>Written as a fraction of a full turn with its direction, <c>1/4 right</c>, for display in tools.</summary>
    public override string ToString() => Sign == 0
        ? "no turn"
        : (Amount / 8).ToString() + (Sign > 0 ? " right" : " left");
}
