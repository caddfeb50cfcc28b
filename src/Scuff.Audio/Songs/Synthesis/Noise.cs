namespace Scuff.Audio.Songs.Synthesis;

/// <summary>White noise from -1 to 1, fast and the same on every machine.</summary>
internal struct Noise(uint seed)
{
    private uint _state = unchecked((seed * 2654435761) + 12345);

    public float Next()
    {
        // the linear congruence of Numerical Recipes; its upper bits are random enough for the ear
        _state = unchecked((_state * 1664525) + 1013904223);
        return unchecked((int)_state) * (1f / 2147483648f);
    }
}
