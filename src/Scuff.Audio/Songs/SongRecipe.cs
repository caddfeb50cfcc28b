namespace Scuff.Audio.Songs;

/// <summary>
/// A song to be made, with everything odd about it said outright. The same recipe makes the same song on any machine; what it
/// leaves open (chords, melodies, patterns) follows from <see cref="Seed"/>.
/// </summary>
public sealed record SongRecipe
{
    /// <summary>Name of the song.</summary>
    public required string Title { get; init; }

    /// <summary>Words that decide what the recipe leaves open.</summary>
    public required string Seed { get; init; }

    /// <summary>The style.</summary>
    public required SongStyle Style { get; init; }

    /// <summary>Whose rhythms the drummer plays; null for those of the style.</summary>
    public SongStyle? DrumsLike { get; init; }

    /// <summary>Whose lines the bass plays; null for those of the style.</summary>
    public SongStyle? BassLike { get; init; }

    /// <summary>In whose rhythm the chords are struck; null for that of the style.</summary>
    public SongStyle? ChordsLike { get; init; }

    /// <summary>Rhythms, chords and tunes made up for this song; null for those of the style.</summary>
    internal Manner? Manner { get; init; }

    /// <summary>Beats a minute, at the notated beat.</summary>
    public required double Tempo { get; init; }

    /// <summary>The form.</summary>
    public required ValueList<SectionRecipe> Sections { get; init; }

    /// <summary>The band; null for one that suits style and seed.</summary>
    public Band? Band { get; init; }

    /// <summary>Key, in semitones above C.</summary>
    public int Key { get; init; }

    /// <summary>Whether the key is minor.</summary>
    public bool IsMinor { get; init; }

    /// <summary>Long half to short half, from 1 (straight) to 2.2.</summary>
    public double Swing { get; init; } = 1;

    /// <summary>What swings.</summary>
    public SwingLevel SwingLevel { get; init; }

    /// <summary>Seconds of silence before the first beat.</summary>
    public double SilenceBefore { get; init; } = 0.3;

    /// <summary>Beats of a shortened bar before the first section, with a melody or a fill; 0 for none.</summary>
    public int PickupBeats { get; init; }

    /// <summary>Beats counted in by sticks before the first section; 0 for none.</summary>
    public int CountInBeats { get; init; }

    /// <summary>Standard deviation of the players' looseness, in milliseconds.</summary>
    public double Looseness { get; init; } = 5;

    /// <summary>How far the tempo wanders, as a share of it: 0.04 is much.</summary>
    public double Drift { get; init; }

    /// <summary>Over how many beats the end slows down; 0 for not at all.</summary>
    public int SlowingBeats { get; init; }

    /// <summary>How much longer the last beat of a slowing end is: 0.5 for half as long again.</summary>
    public double Slowing { get; init; } = 0.4;

    /// <summary>Over how many beats the end fades out; 0 for not at all.</summary>
    public int FadeBeats { get; init; }

    /// <summary>Whether a last chord stands on the beat after the last section.</summary>
    public bool HasFinalChord { get; init; } = true;

    /// <summary>How often a chord enters half a beat before its bar, from 0 to 1.</summary>
    public double PushedChords { get; init; }

    /// <summary>Whether cymbals mark where sections begin.</summary>
    public bool HasCrashes { get; init; } = true;

    /// <summary>Beats of a usual bar: 3 in a waltz, else 4.</summary>
    public int Meter => Style == SongStyle.Waltz ? 3 : 4;

    /// <summary>How far a dancer counts: 6 in a waltz, else 8.</summary>
    public int CountCycle => 2 * Meter;

    /// <summary>The band that plays it.</summary>
    public Band Players => Band ?? BandDrawing.Draw(new Dice(Seed).Fork("band"), Style);

    /// <summary>A song for a corpus, varied on purpose; see <see cref="SongDrawing"/>.</summary>
    /// <param name="seed">Name of the corpus.</param>
    /// <param name="style">The style.</param>
    /// <param name="number">Which of the songs of that style, from 0; says what is odd about it.</param>
    public static SongRecipe Draw(string seed, SongStyle style, int number) => SongDrawing.Draw(seed, style, number);

    /// <summary>A song for a corpus in which each player follows another style, so that no habit of a style can be leant on.</summary>
    /// <param name="seed">Name of the corpus.</param>
    /// <param name="number">Which of these songs, from 0; says what is odd about it.</param>
    public static SongRecipe DrawCrossed(string seed, int number) => SongDrawing.DrawCrossed(seed, number);

    /// <summary>A song for a corpus that keeps to none of the styles; see <see cref="MannerDrawing"/>.</summary>
    /// <param name="seed">Name of the corpus.</param>
    /// <param name="number">Which of these songs, from 0; kinds of playing take turns.</param>
    public static SongRecipe DrawStrange(string seed, int number) => MannerDrawing.Draw(seed, number);
}
