namespace Scuff.Audio.Songs;

/// <summary>
/// Songs by chance for a corpus. The number says which kind of oddity a song has, so that every twelve songs of a style hold each of
/// them once; all else is drawn.
/// </summary>
internal static class SongDrawing
{
    private static readonly (string Name, string Label, int Units)[][] Forms =
    [
        [("intro", "I", 1), ("verse", "A", 2), ("verse", "A", 2), ("chorus", "B", 2), ("interlude", "I", 1), ("verse", "A", 2), ("chorus", "B", 2), ("bridge", "C", 2), ("chorus", "B", 2), ("outro", "O", 1)],
        [("intro", "I", 2), ("verse", "A", 2), ("pre-chorus", "P", 1), ("chorus", "B", 2), ("verse", "A", 2), ("pre-chorus", "P", 1), ("chorus", "B", 2), ("solo", "D", 2), ("chorus", "B", 2), ("outro", "I", 1)],
        [("intro", "I", 1), ("chorus", "B", 2), ("verse", "A", 2), ("chorus", "B", 2), ("verse", "A", 2), ("bridge", "C", 1), ("chorus", "B", 2), ("chorus", "B", 2)],
        [("intro", "I", 1), ("verse", "A", 2), ("verse", "A", 2), ("bridge", "C", 2), ("verse", "A", 2), ("solo", "A", 2), ("bridge", "C", 2), ("verse", "A", 2), ("outro", "O", 1)],
        [("intro", "I", 1), ("verse", "A", 3), ("verse", "A", 3), ("solo", "A", 3), ("chorus", "B", 2), ("verse", "A", 3), ("chorus", "B", 2), ("outro", "O", 1)],
        [("intro", "I", 2), ("verse", "A", 4), ("chorus", "B", 2), ("interlude", "I", 1), ("verse", "A", 4), ("chorus", "B", 2), ("chorus", "B", 2)],
        [("intro", "I", 1), ("verse", "A", 2), ("chorus", "B", 3), ("verse", "A", 2), ("chorus", "B", 3), ("bridge", "C", 2), ("solo", "D", 2), ("chorus", "B", 3), ("outro", "O", 2)],
    ];

    public static SongRecipe Draw(string seed, SongStyle style, int number)
    {
        string name = $"{seed}/{SongStyles.NameOf(style)}/{number}";
        Dice dice = new(name);
        int kind = number % 12;
        (double low, double high) = SongStyles.TemposOf(style);

        // spread over the range in the order of a shuffled dozen, so that few songs still cover it
        int first = new Dice($"{seed}/{SongStyles.NameOf(style)}").Below(12);
        double place = ((((number * 5) + first) % 12) + dice.Unit()) / 12;
        double tempo = Math.Round(low + ((high - low) * place), 2);
        int meter = style == SongStyle.Waltz ? 3 : 4;
        (double swing, SwingLevel level) = SwingOf(style, tempo, dice);
        bool isMachine = kind is 0 or 6 || (style == SongStyle.DancePop && kind % 2 == 0);
        bool isSparse = kind == 7;
        SongRecipe recipe = new()
        {
            Title = $"{SongStyles.NameOf(style)} {number}",
            Seed = name,
            Style = style,
            Tempo = tempo,
            Sections = Form(dice, style, tempo, meter),
            Key = dice.Below(12),
            IsMinor = dice.Chance(style switch
            {
                SongStyle.DancePop or SongStyle.Groove or SongStyle.ChaCha or SongStyle.Samba => 0.55,
                SongStyle.Nightclub or SongStyle.Rumba or SongStyle.PopRock => 0.3,
                _ => 0.1,
            }),
            Swing = swing,
            SwingLevel = level,
            SilenceBefore = Math.Round(kind == 10 ? dice.Between(2, 5) : dice.Between(0.1, 1.6), 3),
            PickupBeats = kind is 1 or 5 or 8 || (kind == 7 && dice.Chance(0.4)) ? 1 + dice.Below(meter - 1) : 0,
            CountInBeats = kind == 4 || dice.Chance(0.08) ? meter * dice.Pick(1, 1, 2) : 0,
            Looseness = isMachine ? 0 : Math.Round(dice.Between(3, isSparse ? 15 : 11), 2),
            Drift = isMachine ? 0 : Math.Round(isSparse ? dice.Between(0.02, 0.04) : kind is 1 or 3 or 9 ? dice.Between(0.01, 0.025) : dice.Between(0, 0.01), 4),
            SlowingBeats = kind is 3 or 5 or 7 ? meter * dice.Pick(2, 3, 4) : 0,
            Slowing = Math.Round(dice.Between(0.2, 0.6), 3),
            FadeBeats = kind is 4 or 11 ? 6 * meter : 0,
            HasFinalChord = kind is not (4 or 11),
            PushedChords = kind is 6 or 9 ? Math.Round(dice.Between(0.3, 0.7), 2) : dice.Chance(0.15) ? 0.15 : 0,
            HasCrashes = !dice.Chance(0.35),
            Band = BandDrawing.Draw(dice.Fork("band"), style),
        };
        return recipe with { Sections = Oddities(dice, recipe, kind) };
    }

    // Only styles of four straight or swung beats mix, and only those that everybody would tap at the written beat: a two-step's
    // drums at a pop song's tempo are a two-step at half its tempo.
    private static readonly SongStyle[] Mixing =
    [
        SongStyle.EastCoastSwing, SongStyle.ChaCha, SongStyle.PopRock, SongStyle.DancePop,
        SongStyle.Nightclub, SongStyle.Polka, SongStyle.Groove, SongStyle.Rumba, SongStyle.Samba,
    ];

    private static readonly SongStyle[] Owners =
        [SongStyle.PopRock, SongStyle.DancePop, SongStyle.ChaCha, SongStyle.Groove, SongStyle.Rumba, SongStyle.EastCoastSwing];

    public static SongRecipe DrawCrossed(string seed, int number)
    {
        Dice dice = new($"{seed}/crossed/{number}");
        SongRecipe recipe = Draw($"{seed}/crossed", dice.Pick<SongStyle>(Owners), number);
        return recipe with
        {
            Title = $"crossed {number}",
            DrumsLike = dice.Pick<SongStyle>(Mixing),
            BassLike = dice.Pick<SongStyle>(Mixing),
            ChordsLike = dice.Pick<SongStyle>(Mixing),
            Band = BandDrawing.Draw(dice.Fork("band"), dice.Pick<SongStyle>(Mixing)),
            PushedChords = dice.Chance(0.4) ? Math.Round(dice.Between(0.1, 0.7), 2) : 0,
        };
    }

    private static (double Swing, SwingLevel Level) SwingOf(SongStyle style, double tempo, Dice dice)
    {
        double swing = style switch
        {
            SongStyle.EastCoastSwing => tempo < 165 ? dice.Between(1.45, 2.2) : dice.Between(1.3, 1.8),
            SongStyle.TwoStep or SongStyle.Waltz => dice.Chance(0.5) ? dice.Between(1.45, 2.1) : 1,
            SongStyle.Groove => dice.Chance(0.35) ? 1 : dice.Between(1.2, 2),
            SongStyle.PopRock or SongStyle.Nightclub => dice.Chance(0.3) ? dice.Between(1.5, 2.1) : 1,
            SongStyle.Polka or SongStyle.ChaCha or SongStyle.Rumba => dice.Chance(0.12) ? dice.Between(1.4, 2) : 1,
            _ => 1,
        };
        return (Math.Round(swing, 3), style == SongStyle.Groove ? SwingLevel.Sixteenth : SwingLevel.Eighth);
    }

    private static ValueList<SectionRecipe> Form(Dice dice, SongStyle style, double tempo, int meter)
    {
        (string Name, string Label, int Units)[] form = Forms[dice.Below(Forms.Length)];
        int unit = meter == 3 ? (tempo < 120 ? 4 : 8) : tempo > 138 && dice.Chance(0.7) ? 8 : 4;
        List<SectionRecipe> sections = [.. form.Select(f => new SectionRecipe(f.Name, f.Label, f.Units * unit))];

        // from about 95 to 200 seconds
        while (SecondsOf(sections) > 200 && sections.Count > 5)
        {
            sections.RemoveAt(2 + dice.Below(sections.Count - 3));
        }

        while (SecondsOf(sections) < 95)
        {
            sections.Insert(sections.Count - 1, sections[1 + dice.Below(sections.Count - 2)]);
        }

        // what a label has is decided once, so that equal labels sound alike
        Dictionary<string, SectionRecipe> decided = [];
        for (int i = 0; i < sections.Count; i++)
        {
            SectionRecipe section = sections[i];
            if (!decided.TryGetValue(section.Label, out SectionRecipe? like))
            {
                bool isIntro = section.Name is "intro" or "outro" or "interlude";
                like = section with
                {
                    Drums = section.Name switch
                    {
                        "verse" or "pre-chorus" => dice.Pick(DrumPart.Light, DrumPart.Light, DrumPart.Full),
                        "bridge" => dice.Pick(DrumPart.HalfTime, DrumPart.Light, DrumPart.Full),
                        "intro" => dice.Pick(DrumPart.Light, DrumPart.Full, DrumPart.Full),
                        _ => DrumPart.Full,
                    },
                    HasPad = style is not (SongStyle.Polka or SongStyle.TwoStep) && dice.Chance(section.Name == "chorus" ? 0.7 : 0.4),
                    HasLead = !isIntro || dice.Chance(0.55),
                    HasChords = dice.Chance(0.95),
                };
                decided.Add(section.Label, like);
            }

            sections[i] = section with { Drums = like.Drums, HasPad = like.HasPad, HasLead = like.HasLead, HasChords = like.HasChords };
        }

        return [.. sections];

        double SecondsOf(List<SectionRecipe> all) => all.Sum(s => s.Bars) * meter * 60 / tempo;
    }

    /// <summary>The sections of a recipe with what is odd about a song of that number, from 0 to 11.</summary>
    public static ValueList<SectionRecipe> Oddities(Dice dice, SongRecipe recipe, int kind)
    {
        SectionRecipe[] sections = [.. recipe.Sections];
        int meter = recipe.Meter;
        int last = sections.Length - 1;

        bool isQuiet = recipe.Style is SongStyle.Nightclub or SongStyle.Waltz or SongStyle.Rumba or SongStyle.Jig;
        if (kind == 7 || (kind == 3 && isQuiet))
        {
            // without a drummer
            DrumPart hand = dice.Pick(DrumPart.None, DrumPart.Hand);
            for (int i = 0; i <= last; i++)
            {
                sections[i] = sections[i] with { Drums = i == 0 ? DrumPart.None : hand, HasPad = dice.Chance(0.5), HasChords = true };
            }
        }

        if (kind == 3 || (kind == 9 && dice.Chance(0.5)))
        {
            // no drums in the intro, and often no bass
            sections[0] = sections[0] with { Drums = DrumPart.None, HasBass = dice.Chance(0.35), HasLead = true };
        }

        if (kind is 0 or 4 or 10 || dice.Chance(0.15))
        {
            int at = Free();
            sections[at] = sections[at] with { Drums = DrumPart.None, HasBass = dice.Chance(0.5), HasPad = true };
        }

        int stops = kind switch
        {
            1 or 5 or 8 => 2,
            2 or 4 or 6 or 11 => 1,
            _ => dice.Chance(0.2) ? 1 : 0,
        };
        for (int i = 0; i < stops; i++)
        {
            int at = Free();
            sections[at] = sections[at] with { StopBeats = meter == 3 ? dice.Pick(3, 3, 6) : dice.Pick(2, 4, 4, 8) };
        }

        if (kind is 2 or 5 or 8 or 11)
        {
            int at = Free();
            sections[at] = sections[at] with { ExtraBars = dice.Pick(1, 1, 2) };
        }

        if (meter == 4 && kind is 2 or 8 or 10 || (meter == 4 && kind == 5 && dice.Chance(0.5)))
        {
            int at = Free();
            sections[at] = sections[at] with { ShortBar = 2 };
        }

        if (kind == 2 || dice.Chance(0.12))
        {
            int at = Array.FindIndex(sections, s => s.Name == "bridge");
            if (at > 0)
            {
                sections[at] = sections[at] with { Drums = DrumPart.HalfTime };
            }
        }

        if (kind == 8)
        {
            int at = Array.FindIndex(sections, s => s.Name is "bridge" or "solo");
            at = at > 0 ? at : sections.Length / 2;
            sections[at] = sections[at] with { TempoFactor = Math.Round(1 + (dice.Pick(-1, 1) * dice.Between(0.05, 0.09)), 3) };
            int held = Math.Max(1, last - 2);
            sections[held] = sections[held] with { Hold = Math.Round(dice.Between(1.7, 2.4), 2) };
        }

        if (kind is 4 or 9 || dice.Chance(0.1))
        {
            int from = Math.Max(1, last - dice.Pick(1, 2));
            int up = dice.Pick(1, 2);
            for (int i = from; i <= last; i++)
            {
                sections[i] = sections[i] with { Transpose = up };
            }
        }

        return [.. sections];

        // a section in the middle of the song that has nothing odd yet
        int Free()
        {
            for (int tries = 0; tries < 20; tries++)
            {
                int at = 1 + dice.Below(Math.Max(1, last - 1));
                if (sections[at] is { StopBeats: 0, ExtraBars: 0, ShortBar: 0 } and not { Drums: DrumPart.None })
                {
                    return at;
                }
            }

            return 1 + dice.Below(Math.Max(1, last - 1));
        }
    }
}
