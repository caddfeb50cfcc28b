namespace Scuff.Audio.Decoding;

/// <summary>How plain samples lie in bytes.</summary>
internal enum PcmKind
{
    /// <summary>Whole numbers, 128 is silence (WAVE, 8 bits).</summary>
    Unsigned8,

    /// <summary>Whole numbers of 8 to 32 bits, two's complement.</summary>
    Signed,

    /// <summary>IEEE 754, 32 or 64 bits.</summary>
    Float,

    /// <summary>ITU-T G.711 A-law.</summary>
    ALaw,

    /// <summary>ITU-T G.711 mu-law.</summary>
    MuLaw,
}
