using System.Globalization;

namespace Scuff.Audio.Songs;

/// <summary>
/// Makes songs for a dance of a length that fit it wall by wall but for some places: a bar or two too many, half a bar, or a verse that is cut. What
/// should be done there is known, and so a fit can be measured.
/// </summary>
public static class PlantedSongs
{
    // The music goes on for so long at least.
    private const int FewestCounts = 320;

    private static readonly SongStyle[] Fours = [SongStyle.ChaCha, SongStyle.PopRock, SongStyle.DancePop, SongStyle.EastCoastSwing, SongStyle.Groove];

    /// <summary>Makes one. The same words make the same song.</summary>
    /// <param name="seed">Words that decide everything.</param>
    /// <param name="length">Counts of the dance: whole eights, or sixes in a waltz.</param>
    /// <param name="meter">3 for a waltz, else 4.</param>
    /// <param name="breaks">How many places break the pattern.</param>
    /// <param name="cuts">After how many counts the dance may begin again; the music is cut only there.</param>
    /// <exception cref="ArgumentOutOfRangeException">No dance has that length.</exception>
    public static PlantedSong Make(string seed, int length, int meter, int breaks, IReadOnlyList<int> cuts)
    {
        ArgumentNullException.ThrowIfNull(cuts);
        int eight = meter == 3 ? 6 : 8;
        if (length < 2 * eight || length % eight != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(length));
        }

        Dice dice = new(seed);
        int walls = Math.Max((FewestCounts / length) + 1, 3 + (4 * breaks));
        Dictionary<int, (int After, int Extra)> odd = [];
        while (odd.Count < breaks)
        {
            // with room before the first, between two, and enough after the last that it pays to mend it
            int wall = 2 + dice.Below(walls - 4);
            if (!odd.Keys.Any(w => Math.Abs(w - wall) < 3))
            {
                odd.Add(wall, Kind(dice, length, eight, meter, cuts));
            }
        }

        (ValueList<SectionRecipe> sections, ValueList<PlantedBreak> planted, int intro) = Lay(dice, length, meter, walls, odd);
        SongStyle style = meter == 3 ? SongStyle.Waltz : Fours[dice.Below(Fours.Length)];
        return new PlantedSong(
            new SongRecipe
            {
                Title = string.Create(CultureInfo.InvariantCulture, $"Planted {seed}"),
                Seed = seed,
                Style = style,
                Tempo = Math.Round(dice.Between(meter == 3 ? 90 : 100, 128)),
                Key = dice.Below(12),
                Looseness = dice.Between(0, 6),
                Drift = dice.Chance(0.5) ? dice.Between(0, 0.01) : 0,
                Sections = sections,
            },
            planted,
            intro);
    }

    private static (int After, int Extra) Kind(Dice dice, int length, int eight, int meter, IReadOnlyList<int> cuts)
    {
        // half a bar hardly exists in a waltz
        int kind = dice.Below(meter == 3 ? 3 : 4);
        return kind switch
        {
            0 => (length, meter),
            1 => (length, eight),
            2 when cuts.Count > 0 => (cuts[dice.Below(cuts.Count)], 0),
            _ => (length, meter == 3 ? meter : 2),
        };
    }

    private static (ValueList<SectionRecipe> Sections, ValueList<PlantedBreak> Breaks, int Intro) Lay(
        Dice dice, int length, int meter, int walls, Dictionary<int, (int After, int Extra)> odd)
    {
        int eight = meter == 3 ? 6 : 8;
        int intro = eight * (dice.Chance(0.5) ? 2 : 4);
        List<SectionRecipe> sections = [new("intro", "I", intro / meter) { HasLead = false }];
        List<PlantedBreak> breaks = [];
        int count = 0;
        int open = 0;
        int index = 0;
        for (int wall = 1; wall <= walls; wall++)
        {
            (int after, int extra) = odd.GetValueOrDefault(wall, (length, 0));
            open += after;
            count += after;
            if (odd.ContainsKey(wall))
            {
                breaks.Add(new PlantedBreak(wall, after, extra, count));
                count += extra;
            }

            // a long dance often goes over two sections, a short one twice or thrice through one
            bool closes = odd.ContainsKey(wall) || wall == walls || open >= 8 * eight || dice.Chance(0.55);
            if (closes)
            {
                (string name, string label) = index++ % 2 == 0 ? ("verse", "A") : ("chorus", "B");
                sections.Add(new SectionRecipe(name, label, open / meter)
                {
                    ExtraBars = extra / meter,
                    ShortBar = extra % meter,
                    StopBeats = extra > 0 && dice.Chance(0.3) ? Math.Min(extra, meter) : 0,
                    Drums = dice.Chance(0.15) ? DrumPart.Light : DrumPart.Full,
                });
                open = 0;
            }
        }

        return (sections.ToValueList(), breaks.ToValueList(), intro);
    }
}
