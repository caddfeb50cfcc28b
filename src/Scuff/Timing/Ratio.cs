using System.Globalization;

namespace Scuff.Timing;

/// <summary>
/// An exact fraction: reduced, 32-bit parts, 64-bit intermediates, overflow checked.
/// The default value is zero. Ordered by value; equal when the values are equal.
/// </summary>
public readonly struct Ratio : IEquatable<Ratio>, IComparable<Ratio>
{
    private readonly int _numerator;

    // Stored less one, so that the all-zero default is the legal fraction 0/1.
    private readonly int _denominatorLessOne;

    /// <summary>Makes <paramref name="numerator"/> / <paramref name="denominator"/>, reduced.</summary>
    /// <exception cref="DivideByZeroException">The denominator is zero.</exception>
    /// <exception cref="OverflowException">A reduced part does not fit 32 bits.</exception>
    public Ratio(long numerator, long denominator)
    {
        if (denominator == 0)
        {
            throw new DivideByZeroException("A fraction needs a denominator other than zero.");
        }

        if (denominator < 0)
        {
            numerator = checked(-numerator);
            denominator = checked(-denominator);
        }

        long common = GreatestCommonDivisor(Math.Abs(numerator), denominator);
        _numerator = checked((int)(numerator / common));
        _denominatorLessOne = checked((int)(denominator / common)) - 1;
    }

    /// <summary>The number one.</summary>
    public static Ratio One => 1;

    /// <summary>Upper part of the reduced fraction; carries the sign.</summary>
    public int Numerator => _numerator;

    /// <summary>Lower part of the reduced fraction; at least 1.</summary>
    public int Denominator => _denominatorLessOne + 1;

    /// <summary>Whether the value is a whole number.</summary>
    public bool IsWhole => _denominatorLessOne == 0;

    /// <summary>-1, 0 or 1.</summary>
    public int Sign => Math.Sign(_numerator);

    /// <summary>Largest whole number not above the value.</summary>
    public int Floor => _numerator >= 0 || IsWhole
        ? _numerator / Denominator
        : (_numerator / Denominator) - 1;

    /// <summary>The nearest double, for the loudspeaker and the screen only.</summary>
    public double ToDouble() => (double)_numerator / Denominator;

    public static implicit operator Ratio(int whole) => new(whole, 1);

    public static Ratio operator +(Ratio a, Ratio b) => a._denominatorLessOne == b._denominatorLessOne && a.IsWhole
        ? new Ratio((long)a._numerator + b._numerator, 1)
        : new Ratio(((long)a._numerator * b.Denominator) + ((long)b._numerator * a.Denominator), (long)a.Denominator * b.Denominator);

    public static Ratio operator -(Ratio a, Ratio b) => a + (-b);

    public static Ratio operator -(Ratio a) => new(-(long)a._numerator, a.Denominator);

    public static Ratio operator *(Ratio a, Ratio b) => new((long)a._numerator * b._numerator, (long)a.Denominator * b.Denominator);

    public static Ratio operator /(Ratio a, Ratio b) => new((long)a._numerator * b.Denominator, (long)a.Denominator * b._numerator);

    public static bool operator ==(Ratio a, Ratio b) => a.Equals(b);

    public static bool operator !=(Ratio a, Ratio b) => !a.Equals(b);

    public static bool operator <(Ratio a, Ratio b) => a.CompareTo(b) < 0;

    public static bool operator >(Ratio a, Ratio b) => a.CompareTo(b) > 0;

    public static bool operator <=(Ratio a, Ratio b) => a.CompareTo(b) <= 0;

    public static bool operator >=(Ratio a, Ratio b) => a.CompareTo(b) >= 0;

    public int CompareTo(Ratio other) => ((long)_numerator * other.Denominator).CompareTo((long)other._numerator * Denominator);

    public bool Equals(Ratio other) => _numerator == other._numerator && _denominatorLessOne == other._denominatorLessOne;

    public override bool Equals(object? obj) => obj is Ratio other && Equals(other);

    public override int GetHashCode() => HashCode.Combine(_numerator, _denominatorLessOne);

    /// <summary>Written <c>7/2</c>, or <c>3</c> when whole.</summary>
    public override string ToString() => IsWhole
        ? _numerator.ToString(CultureInfo.InvariantCulture)
        : string.Create(CultureInfo.InvariantCulture, $"{_numerator}/{Denominator}");

    /// <summary>The remainder in [0, <paramref name="modulus"/>), as a clock face needs it.</summary>
    public Ratio Modulo(int modulus)
    {
        int turns = (this / modulus).Floor;
        return this - (turns * modulus);
    }

    private static long GreatestCommonDivisor(long a, long b)
    {
        while (a != 0)
        {
            (a, b) = (b % a, a);
        }

        return b;
    }
}
