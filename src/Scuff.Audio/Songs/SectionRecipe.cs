namespace Scuff.Audio.Songs;

/// <summary>A section to be played.</summary>
/// <param name="Name">What musicians call it: intro, verse, pre-chorus, chorus, bridge, solo, interlude, outro.</param>
/// <param name="Label">Sections with equal labels play the same music.</param>
/// <param name="Bars">Length in whole bars, before what is added at its end.</param>
public sealed record SectionRecipe(string Name, string Label, int Bars)
{
    /// <summary>How the drummer plays.</summary>
    public DrumPart Drums { get; init; } = DrumPart.Full;

    /// <summary>Whether the bass plays.</summary>
    public bool HasBass { get; init; } = true;

    /// <summary>Whether chords are played in rhythm.</summary>
    public bool HasChords { get; init; } = true;

    /// <summary>Whether long chords lie under it.</summary>
    public bool HasPad { get; init; }

    /// <summary>Whether there is a melody.</summary>
    public bool HasLead { get; init; } = true;

    /// <summary>Bars added at the end: the music goes on where it should have begun anew.</summary>
    public int ExtraBars { get; init; }

    /// <summary>Beats of a shortened bar added at the end, from 1 to one less than a bar; 0 for none.</summary>
    public int ShortBar { get; init; }

    /// <summary>How many beats before its end everything stops, with a hit; 0 for no stop.</summary>
    public int StopBeats { get; init; }

    /// <summary>Semitones up from the key of the song.</summary>
    public int Transpose { get; init; }

    /// <summary>Tempo of the section in tempos of the song.</summary>
    public double TempoFactor { get; init; } = 1;

    /// <summary>How long its last beat is held, in beats; 1 for not at all.</summary>
    public double Hold { get; init; } = 1;
}
