using System.Buffers;

namespace Scuff.Audio.Ears;

/// <summary>Room for numbers that is given back after use: several ears in a row would otherwise leave a hundred megabytes behind.</summary>
/// <param name="length">How many numbers; all are zero.</param>
internal readonly ref struct Scratch(int length)
{
    private readonly float[] _room = Cleared(length);

    /// <summary>The numbers.</summary>
    public Span<float> Floats => _room.AsSpan(0, length);

    /// <summary>Gives the room back.</summary>
    public void Dispose() => ArrayPool<float>.Shared.Return(_room);

    private static float[] Cleared(int length)
    {
        float[] room = ArrayPool<float>.Shared.Rent(length);
        room.AsSpan(0, length).Clear();
        return room;
    }
}
