using System.Text;

namespace Scuff.Audio.Songs;

/// <summary>
/// Manners by chance. Kinds of playing that the styles lack (stride and march, blues, finger picking, bass ahead of the bar, chords between
/// the beats, many-voiced, riffs, endless arpeggios) and some that nobody plays: in all of them chords, tunes and form say where the bar
/// begins, and drums only now and then.
/// </summary>
internal static class MannerDrawing
{
    // whatever falls comes up more often than any one kind
    private static readonly Kind[] Kinds = [.. Enum.GetValues<Kind>(), Kind.Anything];

    private static readonly DrumVoice[] Times = [DrumVoice.ClosedHat, DrumVoice.Ride, DrumVoice.Shaker, DrumVoice.Tambourine, DrumVoice.OpenHat, DrumVoice.PedalHat];

    private static readonly DrumVoice[] Colours =
    [
        DrumVoice.Cowbell, DrumVoice.HighConga, DrumVoice.LowConga, DrumVoice.MutedConga, DrumVoice.HighTom, DrumVoice.MiddleTom, DrumVoice.LowTom,
        DrumVoice.SideStick, DrumVoice.Clap, DrumVoice.Tambourine, DrumVoice.ShortScrape,
    ];

    private static readonly Voice[] Deep = [Voice.UprightBass, Voice.ElectricBass, Voice.PickedBass, Voice.SynthBass, Voice.Tuba];

    private static readonly Voice[] Struck =
    [
        Voice.Piano, Voice.SteelGuitar, Voice.NylonGuitar, Voice.CleanGuitar, Voice.DrivenGuitar, Voice.MutedGuitar, Voice.Banjo, Voice.Harp,
        Voice.ElectricPiano, Voice.Vibes, Voice.Organ, Voice.Accordion, Voice.Strings, Voice.Brass, Voice.SynthPad,
    ];

    private static readonly Voice[] Sung =
    [
        Voice.Singer, Voice.Fiddle, Voice.Flute, Voice.Clarinet, Voice.MutedTrumpet, Voice.Saxophone, Voice.SynthLead, Voice.Harmonica, Voice.Piano,
        Voice.Strings, Voice.Accordion, Voice.Brass, Voice.CleanGuitar, Voice.Organ, Voice.Vibes, Voice.DrivenGuitar, Voice.ElectricPiano,
    ];

    /// <summary>A song in a manner of its own: tempo, form, band and manner.</summary>
    /// <param name="seed">Name of the corpus.</param>
    /// <param name="number">Which of these songs, from 0; kinds of playing take turns.</param>
    public static SongRecipe Draw(string seed, int number)
    {
        Dice dice = new($"{seed}/strange/{number}");

        // a row of kinds against a dozen oddities: in time most kinds meet most
        Kind kind = Kinds[number % Kinds.Length];
        bool isThree = kind is not (Kind.Tresillo or Kind.Reggae or Kind.Blues or Kind.March) && dice.Chance(0.16);
        SongStyle owner = isThree ? SongStyle.Waltz : SongStyle.PopRock;
        int meter = isThree ? 3 : 4;
        (double low, double high) = TemposOf(kind, isThree);
        double tempo = Math.Round(dice.Between(low, high), 2);
        double swing = kind == Kind.Blues ? (dice.Chance(0.75) ? dice.Between(1.5, 2.2) : 1)
            : kind is Kind.Rag or Kind.Tresillo or Kind.Endless ? 1
            : dice.Chance(0.22) ? dice.Between(1.3, 2.1) : 1;
        SongRecipe recipe = SongDrawing.Draw($"{seed}/strange", owner, number) with
        {
            Title = $"strange {number}",
            Tempo = tempo,
            Key = dice.Below(12),
            IsMinor = dice.Chance(0.35),
            Swing = Math.Round(swing, 3),
            SwingLevel = dice.Chance(kind is Kind.Rag or Kind.Blues || tempo > 105 ? 0 : 0.3) ? SwingLevel.Sixteenth : SwingLevel.Eighth,
            HasCrashes = dice.Chance(0.5),
            PushedChords = dice.Chance(0.25) ? Math.Round(dice.Between(0.1, 0.6), 2) : 0,
            Manner = MannerOf(kind, meter, tempo, dice.Fork("manner")),
            Band = BandOf(kind, dice.Fork("band")),
        };
        return recipe with { Sections = SongDrawing.Oddities(dice, recipe with { Sections = Form(kind, dice, meter, tempo) }, dice.Below(12)) };
    }

    // Bass and chords in turn are one and the same music whether counted fast or slow. It must not be counted both ways: up to a hundred strokes
    // of the bass a minute it is a two-step, above it a polka, as in our styles.
    private static (double Low, double High) TemposOf(Kind kind, bool isThree) => kind switch
    {
        _ when isThree => (80, 190),
        Kind.Rag => (102, 128),
        Kind.Stride => (144, 204),
        Kind.Ballad => (58, 92),
        Kind.March => (96, 132),
        Kind.Blues => (76, 150),
        Kind.Picking => (84, 132),
        Kind.Reggae => (62, 92),
        Kind.Voices => (58, 126),
        Kind.Endless => (84, 156),
        Kind.Tresillo => (84, 134),
        _ => (70, 140),
    };

    private static Manner MannerOf(Kind kind, int meter, double tempo, Dice dice)
    {
        string[] light = [.. Enumerable.Range(0, 3).Select(_ => DrumsOf(kind, meter, tempo, dice, isLight: true))];
        string[] full = [.. Enumerable.Range(0, 3).Select(_ => DrumsOf(kind, meter, tempo, dice, isLight: false))];
        bool isFast = tempo > 125;
        return new()
        {
            Light = light,
            Full = full,
            HalfTime = [meter == 3 ? "Kick 9...........|Ride 5...5...5..." : "Kick 9.....6.........|Snare ........9.......|ClosedHat 6.4.6.4.6.4.6.4.", meter == 3 ? "Kick 8...........|SideStick ........6..." : "Kick 8...............|SideStick ........8.......|Ride 6...5...6...5..."],
            Bass = [.. Enumerable.Range(0, 4).Select(_ => BassOf(kind, meter, isFast, dice))],
            Chords = [.. Enumerable.Range(0, 4).Select(_ => ChordsOf(kind, meter, isFast, dice))],
            Broken = [.. Enumerable.Range(0, 3).Select(_ => BrokenOf(meter, isFast, dice))],
            Progressions = [.. Enumerable.Range(0, 4).Select(_ => ProgressionOf(kind, dice))],
            Cells = CellsOf(kind, meter, isFast, dice),
            Under = dice.Chance(kind == Kind.Voices ? 1 : 0.3) ? CellsOf(dice.Chance(0.5) ? Kind.Voices : Kind.Anything, meter, isFast: true, dice) : [],
            Upbeat = dice.Chance(0.45) ? dice.Pick(0.5, 0.5, 1, 1, 1, 1.5, 2, meter == 3 ? 1 : 2) : 0,
            Accent = dice.Chance(0.5) ? dice.Between(-0.05, 0.2) : 0,
            HasAnyInstrument = dice.Chance(0.5),
        };
    }

    private static Band BandOf(Kind kind, Dice dice)
    {
        bool isKeys = kind is Kind.Rag or Kind.Stride && dice.Chance(0.7);
        bool isMany = kind == Kind.Voices && dice.Chance(0.6);
        Voice many = dice.Pick(Voice.Organ, Voice.Strings, Voice.Piano, Voice.Brass, Voice.Harp, Voice.Choir);
        return new()
        {
            Bass = isKeys ? Voice.Piano : isMany ? many : dice.Pick<Voice>(Deep),
            Chords = isKeys ? Voice.Piano : kind == Kind.Picking ? dice.Pick(Voice.SteelGuitar, Voice.NylonGuitar, Voice.Banjo) : dice.Pick<Voice>(Struck),
            Broken = kind is Kind.Picking or Kind.Endless || (kind == Kind.Ballad && dice.Chance(0.5)) || dice.Chance(0.35) ? dice.Pick<Voice>(Struck) : null,
            Pad = dice.Pick(Voice.Strings, Voice.SynthPad, Voice.Choir, Voice.Organ, Voice.Brass),
            Lead = isKeys && dice.Chance(0.8) ? Voice.Piano : isMany ? many : dice.Pick<Voice>(Sung),
            Second = isMany ? many : dice.Pick<Voice>(Sung),
            DrumHardness = dice.Unit(),
            DrumLevel = dice.Between(-9, 3),
            KickLevel = dice.Between(-7, 4),
            BassLevel = dice.Between(-6, 4),
            ChordLevel = dice.Between(-6, 3),
            LeadLevel = dice.Between(-5, 4),
            Brightness = dice.Between(0.25, 0.95),
            Room = dice.Between(0, 0.65),
            Loudness = dice.Between(-16, -12),
            Syncopation = dice.Between(0.05, 0.6),
        };
    }

    // The forms: strains as in marches and rags, thirty-two bars, choruses of twelve, songs in verses, loops, and rows of anything.
    private static ValueList<SectionRecipe> Form(Kind kind, Dice dice, int meter, double tempo)
    {
        bool isFast = tempo * 4 / meter > 138;
        (string Label, int Bars)[] form = (kind is Kind.Blues ? dice.Pick(1, 1, 4) : dice.Below(6)) switch
        {
            0 => [("I", 4), ("A", 16), ("A", 16), ("B", 16), ("B", 16), ("A", 16), ("C", 16), ("C", 16), ("D", 16)],
            1 => [("I", 4), ("A", 12), ("A", 12), ("B", 12), ("A", 12), ("C", 12), ("A", 12), ("O", 4)],
            2 => [("I", 4), ("A", 8), ("A", 8), ("B", 8), ("A", 8), ("C", 8), ("C", 8), ("B", 8), ("A", 8), ("O", 4)],
            3 => [("I", 8), ("A", 8), ("B", 8), ("C", 8), ("A", 8), ("B", 8), ("C", 8), ("D", 16), ("C", 8), ("C", 8)],
            4 => [("A", 4), ("A", 4), ("B", 8), ("A", 4), ("C", 4), ("B", 8), ("D", 4), ("B", 8), ("A", 4), ("C", 4)],
            _ => Anything(),
        };
        List<SectionRecipe> sections = [];
        Dictionary<string, (DrumPart Drums, bool HasPad, bool HasLead, bool HasChords, bool HasBass)> decided = [];
        bool hasDrums = kind switch
        {
            Kind.Voices or Kind.Rag => dice.Chance(0.3),
            Kind.Ballad => dice.Chance(0.65),
            Kind.Picking or Kind.Stride => dice.Chance(0.5),
            _ => dice.Chance(0.88),
        };
        foreach ((string label, int bars) in form)
        {
            if (!decided.TryGetValue(label, out (DrumPart Drums, bool HasPad, bool HasLead, bool HasChords, bool HasBass) what) || dice.Chance(0.2))
            {
                what = (
                    hasDrums ? dice.Pick(DrumPart.Light, DrumPart.Full, DrumPart.Full, DrumPart.Full, DrumPart.HalfTime, DrumPart.None) : DrumPart.None,
                    dice.Chance(0.35),
                    label == "I" ? dice.Chance(0.5) : dice.Chance(0.9),
                    dice.Chance(kind == Kind.Voices ? 0.3 : 0.9),
                    dice.Chance(0.92));
                decided[label] = what;
            }

            // somebody always plays
            bool isEmpty = what.Drums == DrumPart.None && !what.HasLead && !what.HasChords;
            string name = label switch { "I" => "intro", "A" => "verse", "B" => "chorus", "C" => "bridge", "O" => "outro", _ => "solo" };
            sections.Add(new(name, label, bars * (isFast && bars < 8 ? 2 : 1))
            {
                Drums = what.Drums,
                HasPad = what.HasPad,
                HasLead = what.HasLead,
                HasChords = what.HasChords || isEmpty,
                HasBass = what.HasBass,
            });
        }

        while (SecondsOf(sections) > 200 && sections.Count > 4)
        {
            sections.RemoveAt(1 + dice.Below(sections.Count - 2));
        }

        while (SecondsOf(sections) < 85)
        {
            sections.Insert(sections.Count - 1, sections[1 + dice.Below(sections.Count - 2)]);
        }

        return [.. sections];

        (string, int)[] Anything()
        {
            List<(string, int)> row = [];
            int kinds = 2 + dice.Below(4);
            int[] bars = [.. Enumerable.Range(0, kinds).Select(_ => dice.Pick(4, 8, 8, 8, 8, 16, 12, 6, 10, 7))];
            int last = -1;
            for (int i = 0; i < 12; i++)
            {
                int label = dice.Chance(0.3) && last >= 0 ? last : dice.Below(kinds);
                row.Add((((char)('A' + label)).ToString(), bars[label]));
                last = label;
            }

            return [.. row];
        }

        double SecondsOf(List<SectionRecipe> all) => all.Sum(s => s.Bars) * meter * 60 / tempo;
    }

    private static string DrumsOf(Kind kind, int meter, double tempo, Dice dice, bool isLight)
    {
        int steps = 4 * meter;
        List<string> lines = [];
        string[] kicks = meter == 3
            ? ["8...........", "8...6...6...", "8.........6.", "....7...7...", "8.......7...", "8.....7....."]
            : kind switch
            {
                Kind.Reggae => ["....9.......9...", "....9.......9...", "9...9...9...9...", "....8.......9.8.", "9.......9......."],
                Kind.Ballad => ["9.......8.......", "9.........8.....", "8......7........", "8...............", "9.....7.8.......", "8.......8.8.....", "7...........6..."],
                Kind.March => ["9.......8.......", "9...8...9...8...", "9...............", "9.......9...9..."],
                Kind.Stride => ["9.......8.......", "9.......9.......", "8...8...8...8..."],
                _ =>
                [
                    "9.......9.......", "9.......8.......", "9...9...9...9...", "9...............", "9.....8.9.......", "9.........8.....", "9.......9.8.....",
                    "9..8..8.....8...", "..8...8...8...8.", "....8.......8...", "......8.9.......", "............8...",
                ],
            };
        string[] snares = meter == 3
            ? ["....7...7...", "........8...", "....8.......", "7...5...5...", "......7....."]
            : kind switch
            {
                Kind.Reggae => ["....8.......8...", "....8..5....8...", "....8.......8..5"],
                Kind.Ballad => ["....8.......8...", "....9.......9...", "....7.......7..4", "............7...", "....7..........."],
                Kind.March => ["8.5.8.558.5.8.55", "..7...7...7...7.", "8.888.888.888888", "....8.......8.66"],
                Kind.Stride => ["....8.......8...", "..6...6...6...6.", "4.4.7.4.4.4.7.4."],
                _ =>
                [
                    "....9.......9...", "....9.......9...", "....9.......9...", "....9.......9..4", "....9..5....9...", "............9...", "8...8...8...8...",
                    tempo < 110 ? "....8.......8.5." : "....9.......9...",
                    "..7...7...7...7.", "8.......8.......", "7..7..7.7..7..7.",
                ],
            };
        string[] times = meter == 3
            ? ["6...5...5...", "6.4.5.4.5.4.", "....6...6...", "6...5.5.5...", "645464546454"]
            : ["6.4.6.4.6.4.6.4.", "5.5.5.5.5.5.5.5.", "6...6...6...6...", "..6...6...6...6.", tempo < 118 ? "6454645464546454" : "6...5.5.6...5.5.", "6...5.5.6...5.5.", "4.7.4.7.4.7.4.7.", "6..5..6.6..5..6."];
        double share = kind == Kind.Anything ? 0.8 : 0.92;
        if (dice.Chance(share))
        {
            lines.Add("Kick " + dice.Pick<string>(kicks));
        }

        if (!isLight || dice.Chance(0.4))
        {
            string voice = (dice.Chance(0.75) ? DrumVoice.Snare : dice.Pick(DrumVoice.SideStick, DrumVoice.Clap, DrumVoice.BrushTap, DrumVoice.LowTom)).ToString();
            if (dice.Chance(share))
            {
                lines.Add($"{voice} {dice.Pick<string>(snares)}");
            }
        }

        if (dice.Chance(kind == Kind.March ? 0.4 : 0.85))
        {
            lines.Add($"{dice.Pick<DrumVoice>(Times)} {dice.Pick<string>(times)}");
        }

        int more = isLight ? 0 : kind == Kind.Anything ? dice.Pick(0, 1, 2) : dice.Pick(0, 0, 0, 1);
        for (int i = 0; i < more; i++)
        {
            lines.Add($"{dice.Pick<DrumVoice>(Colours)} {Scattered(dice, steps * dice.Pick(1, 1, 2), dice.Between(0.08, 0.3))}");
        }

        // and once in a while what no drummer would play
        if (kind == Kind.Anything && dice.Chance(0.25))
        {
            lines.Clear();
            lines.Add("Kick " + Scattered(dice, steps * dice.Pick(1, 2), 0.18));
            lines.Add($"{dice.Pick<DrumVoice>(Colours)} " + Scattered(dice, steps, 0.25));
            lines.Add("ClosedHat " + dice.Pick<string>(times));
        }

        return lines.Count > 0 ? string.Join('|', lines) : "Shaker " + dice.Pick<string>(times);
    }

    // Strokes anywhere, more of them on beats than between.
    private static string Scattered(Dice dice, int steps, double density)
    {
        StringBuilder line = new();
        for (int i = 0; i < steps; i++)
        {
            double share = density * (i % 4 == 0 ? 1.5 : i % 2 == 0 ? 1.2 : 0.5);
            line.Append(dice.Chance(share) ? (char)('4' + dice.Below(5)) : '.');
        }

        return line.ToString();
    }

    private static string BassOf(Kind kind, int meter, bool isFast, Dice dice)
    {
        if (meter == 3)
        {
            return dice.Pick("r---........", "r-----------", "r---f---f---", "r---t---f---", "r-..r-..r-..", "r---........f---........", "r-------f---", "r.r.r.r.r.r.", "....r---f---", "r-----r-f---");
        }

        string[] lines = kind switch
        {
            Kind.Rag => ["r-..f-..r-..f-..", "r-..o-..f-..o-..", "r-..r-..f-..a-..", "r-..t-..f-..t-..", "r---f---r---a---"],
            Kind.Stride => ["r---....f---....", "r--.....F--.....", "r---....f---a---", "r---....r---....", "r---....t---...."],
            Kind.March => ["r---....f---....", "r--.f--.r--.f--.", "r-......f-......", "r---r---f---f---"],
            Kind.Blues => ["r-r-t-t-s-s-f-f-", "r---t---f---s---", "r-r-r-r-f-f-f-f-", "r-..r-..f-..r-..", "r---f---o---f---", "r-----r-f---a---"],
            Kind.Picking => ["r---f---r---f---", "r---o---f---o---", "r-------f-------", "r---F---r---F---"],
            Kind.Ahead => ["......f-....o---", "r-----f-....o---", "..r-..f-....r---", "....r---....f-r-", "......r-......r-", "r-----......f-r-", "..r---f-..r---f-"],
            Kind.Ballad => ["r---------------", "r-------f-------", "r-----r-f-------", "r-------r-----f-", "r-----r---------", "r-----f-o-------", "r---f---o---f---"],
            Kind.Reggae => ["r---....r-r-f---", "..r-r---..r-f---", "r-----r-........", "........r---f-o-", "....r-r-f-..r-..", "r-r-....f-f-...."],
            Kind.Tresillo => ["r-----r-----r---", "r-----r-f---....", "r-----f-r-----f-", "r--.r-f-r--.r-f-", "......r-r---f---"],
            Kind.Voices => ["r---t---f---a---", "r-------f-------", "r---f---o---f---", "r-t-f-t-r-t-f-a-", "r---------------"],
            Kind.Endless => ["r-r-r-r-r-r-r-r-", "r---------------", "r-o-r-o-r-o-r-o-", "rr.rr.rrrr.rr.rr", "r-----r---r-----"],
            Kind.Riff => ["r-r-..t-f-..r-..", "r-..r-o-..s-f-..", "r-r-r---..f-t-..", "r---..r-..r-f-t-", "o-f-r-..r-f-o-..", "..r-r-..f-r-..t-"],
            _ => [Riffed()],
        };
        return dice.Chance(0.12) ? Riffed() : dice.Pick<string>(lines);

        string Riffed()
        {
            char[] line = new char[16];
            Array.Fill(line, '.');
            for (int i = 0; i < 16; i += isFast || dice.Chance(0.6) ? 2 : 1)
            {
                double share = i == 0 ? 0.8 : i % 8 == 0 ? 0.5 : i % 4 == 0 ? 0.45 : 0.3;
                if (dice.Chance(share))
                {
                    line[i] = i == 0 ? 'r' : dice.Pick('r', 'r', 'f', 'o', 't', 'a', 's');
                }
            }

            if (Array.TrueForAll(line, c => c == '.'))
            {
                line[0] = 'r';
            }

            // what is struck is held to the next, or is not
            bool isHeld = dice.Chance(0.6);
            for (int i = 1; isHeld && i < 16; i++)
            {
                line[i] = line[i] == '.' && line[i - 1] != '.' ? '-' : line[i];
            }

            return new(line);
        }
    }

    private static string ChordsOf(Kind kind, int meter, bool isFast, Dice dice)
    {
        if (meter == 3)
        {
            return dice.Pick("....x---x---", "....c...c...", "x-----------", "x---x---x---", "X-------x---", "....x-x-x-..", "......c...c.", "x-x-x-x-x-x-", "x-----x-----");
        }

        string[] lines = kind switch
        {
            Kind.Rag => ["..c...c...c...c.", "..x-..x-..x-..x-", "..c...c...c...cc", "..c.c...c.c...c."],
            Kind.Stride => ["....c.......c...", "....x---....x---", "....c.c.....c.c.", "....x-..c...x-.."],
            Kind.March => ["..c...c...c...c.", "....c.......c...", "..x...x...x..xx.", "c...c.c.c...c.c."],
            Kind.Blues => ["x-----x-........", "....c.......c...", "x-x-x-x-x-x-x-x-", "c...c...c...c...", "X---------------", "..........c...c."],
            Kind.Picking => ["X---------------", "x-----x-----x---", "..x-..x-..x-..x-", "x---c---x---c---"],
            Kind.Ballad => ["X---------------", "X-------x-------", "X---x---x---x---", "X-----x-x-------", "x-x-x-x-x-x-x-x-", "..x-..x-..x-..x-", "....x-......x---"],
            Kind.Reggae => ["..c...c...c...c.", "..c...c...c...c.", "..cc..c...cc..c.", "....c.......c..."],
            Kind.Tresillo => ["x-----x-----x---", "X-----x-....x-x-", "c..c..c.c..c..c.", "x---..x-x---x---"],
            Kind.Voices => ["X---------------", "x-------x-------", "x---x---x---x---"],
            Kind.Riff => ["X---..x-..x-....", "X-------..X-X---", "..x-x---..x-x---", "x.xxx.x.x.xxx.x.", "X---X---..X-..X-"],
            _ => ["x-x-x-x-x-x-x-x-", "X---------------", "x---x---x---x---", "..c...c...c...c.", "....c.......c...", "X-----X-----X---", "......x-......x-", "x-------x-------", "..x---x---x-x---"],
        };
        return dice.Chance(0.15)
            ? Scattered(dice, 16 * dice.Pick(1, 2), isFast ? 0.25 : 0.35).Aggregate("", (line, c) => line + (c == '.' ? (line.Length > 0 && line[^1] is 'x' or '-' ? '-' : '.') : c < '6' ? 'x' : 'c'))
            : dice.Pick<string>(lines);
    }

    // Waves of tones up and down in eighths or sixteenths; some go round in threes against the bar.
    private static string BrokenOf(int meter, bool isFast, Dice dice)
    {
        int step = isFast || dice.Chance(0.5) ? 2 : 1;
        string wave = dice.Pick("1234", "1323", "1353", "12345432", "123", "321", "5321", "135", "1315", "12", "43215", "1.34", "1.2.3");
        int steps = 4 * meter * dice.Pick(1, 1, 2);
        StringBuilder line = new();
        for (int i = 0; line.Length < steps; i++)
        {
            line.Append(wave[i % wave.Length]);
            line.Append(step == 2 ? "-" : "");
        }

        return line.ToString(0, steps);
    }

    private static (int[] Degrees, double Bars) ProgressionOf(Kind kind, Dice dice)
    {
        if (kind == Kind.Blues && dice.Chance(0.8))
        {
            return (dice.Pick<int[]>([0, 0, 0, 0, 3, 3, 0, 0, 4, 3, 0, 4], [0, 3, 0, 0, 3, 3, 0, 0, 4, 4, 0, 0], [0, 0, 0, 0, 3, 3, 0, 0, 1, 4, 0, 4]), 1);
        }

        // from each degree where music goes from there, as textbooks of harmony have it
        int[][] onward = [[3, 4, 5, 1, 2], [4, 4, 6, 3], [5, 3, 1], [4, 0, 1, 4], [0, 0, 0, 5, 3], [3, 1, 4, 2], [0, 0, 2]];
        int length = dice.Pick(2, 4, 4, 4, 8, 8, 8, 16);
        int[] degrees = new int[length];
        degrees[0] = dice.Chance(0.75) ? 0 : dice.Pick(3, 5, 1, 4);
        for (int i = 1; i < length; i++)
        {
            degrees[i] = dice.Pick<int>(onward[degrees[i - 1]]);
        }

        return (degrees, kind is Kind.Voices ? dice.Pick(0.5, 0.5, 1.0, 1.0) : dice.Pick(0.5, 1.0, 1.0, 1.0, 1.0, 2.0, 2.0, 4.0));
    }

    private static double[][] CellsOf(Kind kind, int meter, bool isFast, Dice dice)
    {
        double[][] all = (meter, kind) switch
        {
            (3, _) => [[3], [2, 1], [1, 2], [1, 1, 1], [1.5, 0.5, 1], [0.5, 0.5, 0.5, 0.5, 0.5, 0.5], [1, 0.5, 0.5, 1], [2, 0.5, 0.5], [-1, 1, 1], [1.5, 1.5], [1, 1, 0.5, 0.5]],
            (_, Kind.Rag) =>
            [
                [0.25, 0.5, 0.25, 0.5, 0.5, 0.25, 0.5, 0.25, 1], [0.5, 0.25, 0.5, 0.25, 0.5, 0.25, 0.5, 0.25, 1], [0.25, 0.5, 0.5, 0.5, 0.25, 0.5, 0.5, 1],
                [0.25, 0.25, 0.25, 0.5, 0.25, 0.5, 0.5, 0.5, 1], [0.5, 0.5, 0.25, 0.5, 0.25, 1, 1], [0.25, 0.5, 0.25, 1, 0.25, 0.5, 0.25, 1], [0.25, 0.5, 0.75, 0.5, 1, 1],
            ],
            (_, Kind.March) => [[1.5, 0.5, 1.5, 0.5], [2, 1, 1], [0.75, 0.25, 0.75, 0.25, 1, 1], [1, 1, 1, 1], [3, 1], [1, 0.5, 0.5, 1, 1], [2, 2], [1, 0.75, 0.25, 2]],
            (_, Kind.Voices) => [[1, 1, 1, 1], [0.5, 0.5, 0.5, 0.5, 1, 1], [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5], [2, 1, 1], [-0.5, 0.5, 0.5, 0.5, 1, 1], [1.5, 0.5, 1, 1], [2, 2], [-1, 1, 1, 1], [3, 0.5, 0.5], [1, 2, 1]],
            (_, Kind.Tresillo) => [[1.5, 1.5, 1], [1.5, 0.5, 2], [0.5, 1, 0.5, 1, 1], [-0.5, 0.5, 0.5, 0.5, 1, 1], [1.5, 1.5, 0.5, 0.5], [0.5, 0.5, 0.5, 1, 0.5, 1], [4]],
            (_, Kind.Endless) => [[4], [2, 2], [3, 1], [1.5, 1.5, 1], [-4], [1, 1, 2], [0.5, 0.5, 0.5, 0.5, 2], [3, 0.5, 0.5]],
            _ =>
            [
                [4], [2, 2], [3, 1], [2, 1, 1], [1, 1, 2], [1, 1, 1, 1], [1.5, 0.5, 2], [1.5, 0.5, 1.5, 0.5], [0.5, 0.5, 0.5, 0.5, 1, 1], [1, 0.5, 0.5, 1, 1], [0.5, 1, 0.5, 2],
                [0.5, 1, 1, 1, 0.5], [-0.5, 0.5, 1, 2], [-1, 1, 1, 1], [-1.5, 0.5, 1, 1], [0.5, 0.5, 1, 2], [1, -1, 1, -1], [-0.5, 1, 1, 1.5], [3, 0.5, 0.5], [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
                [1.5, 2.5], [-2, 1, 1], [-3, 0.5, 0.5],
            ],
        };
        int few = 3 + dice.Below(4);
        double[][] chosen = [.. Enumerable.Range(0, few).Select(_ => dice.Pick<double[]>(all))];

        // fast notes of a fast song become what can be played
        return isFast ? [.. chosen.Select(c => c.Any(d => Math.Abs(d) < 0.5) ? [.. Enumerable.Repeat(1.0, meter)] : c)] : chosen;
    }

    // Rag: stride in sixteenths. Stride: the same at twice the tempo, counted so. Ahead: bass before the bar. Voices: each
    // player a tune. Endless: arpeggios over held tunes. Riff: everybody in one rhythm. Anything: whatever falls.
    private enum Kind
    {
        Rag,
        Anything,
        March,
        Stride,
        Blues,
        Picking,
        Ahead,
        Reggae,
        Voices,
        Riff,
        Endless,
        Tresillo,
        Ballad,
    }
}
