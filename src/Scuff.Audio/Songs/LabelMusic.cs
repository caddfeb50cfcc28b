namespace Scuff.Audio.Songs;

/// <summary>What sections of one label share: chords, melody and the patterns of the players.</summary>
internal sealed class LabelMusic
{
    private const int Colours = 5;

    private readonly int[] _late;

    private LabelMusic(int[] degrees, int[] late, int colour, MelodyNote[] melody)
    {
        Degrees = degrees;
        _late = late;
        Colour = colour;
        Melody = melody;
    }

    /// <summary>Degree of the scale for each bar.</summary>
    public IReadOnlyList<int> Degrees { get; }

    /// <summary>Degree of the scale for the second half of each bar; mostly that of the first.</summary>
    public IReadOnlyList<int> LateDegrees => _late;

    /// <summary>Which chords are built on them; see <see cref="Chord.On"/>.</summary>
    public int Colour { get; }

    /// <summary>The melody, in scale steps.</summary>
    public IReadOnlyList<MelodyNote> Melody { get; }

    /// <summary>A second tune below the first, in scale steps; mostly none.</summary>
    public IReadOnlyList<MelodyNote> Under { get; init; } = [];

    public required Pattern Bass { get; init; }

    public required Pattern Chords { get; init; }

    public required Pattern? Broken { get; init; }

    public required DrumBar Light { get; init; }

    public required DrumBar Full { get; init; }

    public required DrumBar HalfTime { get; init; }

    public static LabelMusic Make(Dice dice, SongRecipe recipe, Band band, int bars)
    {
        if (recipe.Manner is Manner manner)
        {
            return Make(dice, recipe, band, manner, bars);
        }

        SongStyle style = recipe.Style;
        int[][] progressions = StyleBook.ProgressionsOf(style, recipe.IsMinor);
        int[] progression = dice.Pick<int[]>(progressions);
        bool isSlow = progression.Length < 8 && dice.Chance(recipe.Tempo > 135 ? 0.35 : 0.1);
        int[] degrees = [.. Enumerable.Range(0, bars).Select(b => progression[(isSlow ? b / 2 : b) % progression.Length])];

        // close on the dominant or at home, so that the next section is wanted
        if (bars >= 8 && dice.Chance(0.5))
        {
            degrees[^1] = dice.Chance(0.6) ? 4 : 0;
        }

        // some bands change chords in the middle of the bar as well
        double share = dice.Chance(0.2) ? dice.Between(0.2, 0.8) : 0;
        int[] late = [.. degrees.Select((d, b) => recipe.Meter == 4 && dice.Chance(share) ? degrees[(b + 1) % bars] : d)];
        int colour = style == SongStyle.EastCoastSwing && !recipe.IsMinor && dice.Chance(0.6) ? 3
            : band.Chords == Voice.DrivenGuitar ? 4
            : dice.Below(Colours - 2);
        (string[] light, string[] full, string[] halfTime) = StyleBook.DrumsOf(recipe.DrumsLike ?? style);
        bool isOff = dice.Chance(band.OffBeats);
        bool isThirds = style == SongStyle.Jig;
        return new(degrees, late, colour, Melodies.Compose(dice.Fork("melody"), recipe, band, degrees, late))
        {
            Bass = new(dice.Pick<string>(StyleBook.BassOf(recipe.BassLike ?? style))),
            Chords = new(isOff ? OffBeat(recipe.Meter, isThirds, 'c') : dice.Pick<string>(StyleBook.ChordsOf(recipe.ChordsLike ?? style))),
            Broken = band.Broken is null ? null : new(dice.Pick<string>(StyleBook.BrokenOf(style))),
            Light = DrumBar.Read(dice.Pick<string>(light), dice),
            Full = DrumBar.Read(dice.Pick<string>(full) + (isOff ? "|OpenHat " + OffBeat(recipe.Meter, isThirds, '8') : ""), dice),
            HalfTime = DrumBar.Read(dice.Pick<string>(halfTime), dice),
        };
    }

    private static LabelMusic Make(Dice dice, SongRecipe recipe, Band band, Manner manner, int bars)
    {
        (int[] progression, double hold) = dice.Pick<(int[], double)>(manner.Progressions);
        int[] degrees = [.. Enumerable.Range(0, bars).Select(b => progression[(int)(b / hold) % progression.Length])];
        int[] late = [.. Enumerable.Range(0, bars).Select(b => recipe.Meter == 4 ? progression[(int)((b + 0.5) / hold) % progression.Length] : degrees[b])];
        if (bars >= 8 && dice.Chance(0.5))
        {
            degrees[^1] = late[^1] = dice.Chance(0.6) ? 4 : 0;
        }

        int colour = band.Chords == Voice.DrivenGuitar ? 4 : dice.Below(Colours - 1);
        return new(degrees, late, colour, PhrasedMelodies.Compose(dice.Fork("melody"), recipe.Meter, manner.Cells, manner.Upbeat, degrees, late))
        {
            Under = manner.Under.Length > 0 ? PhrasedMelodies.Compose(dice.Fork("under"), recipe.Meter, manner.Under, 0, degrees, late) : [],
            Bass = new(dice.Pick<string>(manner.Bass)),
            Chords = new(dice.Pick<string>(manner.Chords)),
            Broken = band.Broken is null ? null : new(dice.Pick<string>(manner.Broken)),
            Light = DrumBar.Read(dice.Pick<string>(manner.Light), dice),
            Full = DrumBar.Read(dice.Pick<string>(manner.Full), dice),
            HalfTime = DrumBar.Read(dice.Pick<string>(manner.HalfTime), dice),
        };
    }

    private static string OffBeat(int meter, bool isThirds, char sign)
        => string.Concat(Enumerable.Repeat(isThirds ? $"..{sign}" : $"..{sign}.", meter));
}
