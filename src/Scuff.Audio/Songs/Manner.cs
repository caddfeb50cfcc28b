namespace Scuff.Audio.Songs;

/// <summary>
/// How a band plays that keeps to none of our styles: its rhythms, chords and tunes, made up for one song. Only songs for training have one,
/// so that an ear meets music whose habits it cannot know beforehand. Lines are written as in <see cref="StyleBook"/>.
/// </summary>
internal sealed record Manner
{
    /// <summary>Rhythms of the drums, for playing held back.</summary>
    public required string[] Light { get; init; }

    /// <summary>Rhythms of the drums, with all there is.</summary>
    public required string[] Full { get; init; }

    /// <summary>Rhythms of the drums, as if the beats were half as many.</summary>
    public required string[] HalfTime { get; init; }

    /// <summary>Lines of the bass.</summary>
    public required string[] Bass { get; init; }

    /// <summary>Rhythms of the chords.</summary>
    public required string[] Chords { get; init; }

    /// <summary>Broken chords.</summary>
    public required string[] Broken { get; init; }

    /// <summary>Chords by degree of the scale, from 0, and for how many bars each stays: a half, one, two or four.</summary>
    public required (int[] Degrees, double Bars)[] Progressions { get; init; }

    /// <summary>Rhythms that tunes are made of: in each bar the lengths of the notes in beats, a rest below zero.</summary>
    public required double[][] Cells { get; init; }

    /// <summary>Rhythms of the second tune below the first; empty for none.</summary>
    public double[][] Under { get; init; } = [];

    /// <summary>How many beats before its bar a phrase begins: the music's own pickups.</summary>
    public double Upbeat { get; init; }

    /// <summary>How much louder the one of a bar is struck; below zero softer.</summary>
    public double Accent { get; init; }

    /// <summary>Whether the players hold any instrument of General MIDI.</summary>
    public bool HasAnyInstrument { get; init; }
}
