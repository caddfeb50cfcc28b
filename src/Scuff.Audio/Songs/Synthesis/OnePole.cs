namespace Scuff.Audio.Songs.Synthesis;

/// <summary>The simplest filter: 6 decibels an octave.</summary>
internal struct OnePole
{
    private readonly float _share;
    private float _state;

    public OnePole(double cutoff, int rate) => _share = (float)(1 - Math.Exp(-2 * Math.PI * cutoff / rate));

    /// <summary>What lies below the cutoff.</summary>
    public float Low(float x) => _state += _share * (x - _state);

    /// <summary>What lies above the cutoff.</summary>
    public float High(float x) => x - Low(x);
}
