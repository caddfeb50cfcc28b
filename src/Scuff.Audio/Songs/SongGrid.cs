namespace Scuff.Audio.Songs;

/// <summary>Where the beats of a song are: in bars, in counts and in seconds.</summary>
internal sealed class SongGrid
{
    private readonly SongRecipe _recipe;
    private readonly double[] _times;

    public SongGrid(SongRecipe recipe)
    {
        _recipe = recipe;
        Beats = Lay(recipe, out int[] firsts, out int[] lengths);
        Firsts = firsts;
        Lengths = lengths;
        _times = Clock(recipe, Beats);
    }

    /// <summary>The beats in order.</summary>
    public IReadOnlyList<GridBeat> Beats { get; }

    /// <summary>For each section the index of its first beat.</summary>
    public IReadOnlyList<int> Firsts { get; }

    /// <summary>For each section its length in beats.</summary>
    public IReadOnlyList<int> Lengths { get; }

    /// <summary>Seconds at which a beat begins; the one after the last is the end of the last.</summary>
    public double TimeOfBeat(int index) => _times[index];

    /// <summary>Seconds at a position in beats as written: halves (or their halves) stand where the swing puts them.</summary>
    public double TimeOf(double position)
    {
        int beat = Math.Clamp((int)Math.Floor(position), 0, _times.Length - 2);
        double within = position - beat;
        double length = _times[beat + 1] - _times[beat];
        return _times[beat] + (length * (within is > 0 and < 1 ? Swung(within) : within));
    }

    private static GridBeat[] Lay(SongRecipe recipe, out int[] firsts, out int[] lengths)
    {
        List<GridBeat> beats = [];
        int meter = recipe.Meter;
        int cycle = recipe.CountCycle;

        // clicks first, then the pickup, both counted so that the first section begins on 1
        int before = recipe.CountInBeats + recipe.PickupBeats;
        for (int k = before; k > 0; k--)
        {
            beats.Add(new(meter - ((k - 1) % meter), meter, -1, cycle - ((k - 1) % cycle)));
        }

        firsts = new int[recipe.Sections.Count];
        lengths = new int[recipe.Sections.Count];
        for (int s = 0; s < firsts.Length; s++)
        {
            SectionRecipe section = recipe.Sections[s];
            firsts[s] = beats.Count;
            int bars = section.Bars + section.ExtraBars;
            for (int b = 0; b < (bars * meter) + section.ShortBar; b++)
            {
                beats.Add(new((b % meter) + 1, b >= bars * meter ? section.ShortBar : meter, s, (b % cycle) + 1));
            }

            lengths[s] = beats.Count - firsts[s];
        }

        if (recipe.HasFinalChord)
        {
            beats.Add(new(1, meter, firsts.Length, 1));
        }

        return [.. beats];
    }

    private static double[] Clock(SongRecipe recipe, IReadOnlyList<GridBeat> beats)
    {
        // two slow waves, as a band without a click breathes
        Dice dice = new Dice(recipe.Seed).Fork("clock");
        double longWave = dice.Between(90, 220);
        double shortWave = dice.Between(35, 85);
        double longPhase = dice.Unit();
        double shortPhase = dice.Unit();
        double[] times = new double[beats.Count + 1];
        times[0] = recipe.SilenceBefore;
        int slowFrom = beats.Count - (recipe.HasFinalChord ? 1 : 0) - recipe.SlowingBeats;
        for (int i = 0; i < beats.Count; i++)
        {
            double wave = (0.6 * Math.Sin(2 * Math.PI * ((i / longWave) + longPhase))) + (0.4 * Math.Sin(2 * Math.PI * ((i / shortWave) + shortPhase)));
            double length = 60 / recipe.Tempo / (1 + (recipe.Drift * wave));
            if (recipe.SlowingBeats > 0 && i >= slowFrom)
            {
                length *= 1 + (recipe.Slowing * Math.Pow(Math.Min(1, (i - slowFrom + 1.0) / recipe.SlowingBeats), 1.5));
            }

            int section = beats[i].Section;
            if (section >= 0 && section < recipe.Sections.Count)
            {
                length /= recipe.Sections[section].TempoFactor;
                bool isLast = i + 1 == beats.Count || beats[i + 1].Section != section;
                length *= isLast ? recipe.Sections[section].Hold : 1;
            }

            times[i + 1] = times[i] + length;
        }

        return times;
    }

    private double Swung(double within)
    {
        if (_recipe.Swing == 1)
        {
            return within;
        }

        if (_recipe.SwingLevel == SwingLevel.Eighth)
        {
            return Bent(within);
        }

        double half = within >= 0.5 ? 0.5 : 0;
        return half + (Bent((within - half) * 2) / 2);
    }

    // the middle moves to r/(1+r): two thirds for triplets
    private double Bent(double x)
    {
        double middle = _recipe.Swing / (1 + _recipe.Swing);
        return x < 0.5 ? x * 2 * middle : middle + ((x - 0.5) * 2 * (1 - middle));
    }
}
