using System.Collections;
using System.Runtime.CompilerServices;

namespace Scuff;

/// <summary>An immutable list that compares by its items, so that records holding it compare by value. Empty by default.</summary>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
public readonly struct ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>
{
    private readonly T[]? _items;

    internal ValueList(T[] items) => _items = items;

    /// <summary>How many items there are.</summary>
    public int Count => _items?.Length ?? 0;

    /// <summary>The items as a span, without copying.</summary>
    public ReadOnlySpan<T> Span => _items;

    /// <summary>The item at a zero-based index.</summary>
    /// <exception cref="IndexOutOfRangeException">The index is outside the list.</exception>
    public T this[int index] => (_items ?? [])[index];

    public static bool operator ==(ValueList<T> a, ValueList<T> b) => a.Equals(b);

    public static bool operator !=(ValueList<T> a, ValueList<T> b) => !a.Equals(b);

    public bool Equals(ValueList<T> other)
    {
        if (ReferenceEquals(_items, other._items))
        {
            return true;
        }

        if (Count != other.Count)
        {
            return false;
        }

        for (int i = 0; i < Count; i++)
        {
            if (!EqualityComparer<T>.Default.Equals(_items![i], other._items![i]))
            {
                return false;
            }
        }

        return true;
    }

    public override bool Equals(object? obj) => obj is ValueList<T> other && Equals(other);

    public override int GetHashCode()
    {
        HashCode hash = default;
        foreach (T item in Span)
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    public IEnumerator<T> GetEnumerator() => ((IEnumerable<T>)(_items ?? [])).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}

/// <summary>Makes value lists.</summary>
public static class ValueList
{
    /// <summary>Makes a list of the given items, copied.</summary>
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => items.IsEmpty ? default : new ValueList<T>(items.ToArray());

    /// <summary>Makes a list of the items, copied.</summary>
    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items)
    {
        T[] copy = [.. items];
        return copy.Length == 0 ? default : new ValueList<T>(copy);
    }
}
