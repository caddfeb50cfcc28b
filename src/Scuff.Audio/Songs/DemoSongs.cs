namespace Scuff.Audio.Songs;

/// <summary>
/// The tracks that the demo club dances to. Each agrees with its dance: tempo, intro, length, and a section wherever a wall of the
/// dance begins, so that tags, bridges and restarts stand where the music asks for them.
/// </summary>
public static class DemoSongs
{
    /// <summary>All tracks there are.</summary>
    public static ValueList<DemoSong> All { get; } =
    [
        HarbourLightsOut(), NothingToDeclare(), BeakAndFeather(), TrimTheWick(), BetweenTwoTides(),
        SilverAllTheWayOut(), HempAndTar(), BrassOnTheBandstand(), PinkInThePot(), LowWaterLullaby(),
        StampAndSeal(),
    ];

    // Cha cha. Lamps go out (a bar stops) where the tag is danced; half a chorus, a bar put in, and at last a bar and a half too many.
    private static DemoSong HarbourLightsOut() => new("tin-lantern", "The Demo Band", new()
    {
        Title = "Harbour Lights Out",
        Seed = "harbour lights out",
        Style = SongStyle.ChaCha,
        Tempo = 112,
        Key = 9,
        IsMinor = true,
        Looseness = 5,
        Drift = 0.004,
        SlowingBeats = 0,
        Band = new()
        {
            Bass = Voice.UprightBass,
            Chords = Voice.Piano,
            Pad = Voice.Strings,
            Lead = Voice.Singer,
            Second = Voice.Flute,
            Room = 0.35,
            Syncopation = 0.4,
        },
        Sections =
        [
            Intro(8),
            Verse(8),
            Verse(8) with { ExtraBars = 1, StopBeats = 4 },
            Chorus(8),
            new("interlude", "C", 4) { Drums = DrumPart.Light },
            new("pre-chorus", "D", 2) { ExtraBars = 1, StopBeats = 4, HasLead = false },
            new("solo", "E", 6),
            Chorus(8),
            new("verse", "F", 6) { ExtraBars = 1, ShortBar = 2, Drums = DrumPart.Light },
            new("outro", "O", 2) { ShortBar = 2 },
        ],
    });

    // Cha cha. The fifth time round the verse is cut to half.
    private static DemoSong NothingToDeclare() => new("customs-house", "Captain Oyster", new()
    {
        Title = "Nothing to Declare",
        Seed = "nothing to declare",
        Style = SongStyle.ChaCha,
        Tempo = 116,
        Key = 2,
        Looseness = 6,
        Drift = 0.005,
        SilenceBefore = 0.4,
        Band = new()
        {
            Bass = Voice.ElectricBass,
            Chords = Voice.NylonGuitar,
            Pad = Voice.Organ,
            Lead = Voice.Singer,
            Second = Voice.MutedTrumpet,
            Room = 0.25,
        },
        Sections =
        [
            Intro(8), Verse(8), Verse(8), Chorus(8), Verse(8),
            new("interlude", "D", 4) { Drums = DrumPart.Light },
            Chorus(8), Verse(8), Chorus(8), new("solo", "A", 8), Chorus(8), Chorus(8) with { Transpose = 2 },
            new("outro", "O", 2) { Transpose = 2 },
        ],
    });

    // Cha cha for the same dance, in even phrases: no restart.
    private static DemoSong StampAndSeal() => new("customs-house", "Tidewrack Parade", new()
    {
        Title = "Stamp and Seal",
        Seed = "stamp and seal",
        Style = SongStyle.ChaCha,
        Tempo = 114,
        Key = 5,
        IsMinor = true,
        Looseness = 5,
        Drift = 0.004,
        SilenceBefore = 0.3,
        Band = new()
        {
            Bass = Voice.UprightBass,
            Chords = Voice.Piano,
            Pad = Voice.Strings,
            Lead = Voice.Singer,
            Second = Voice.Flute,
            Room = 0.3,
        },
        Sections =
        [
            Intro(8), Verse(8), Verse(8), Chorus(8), Verse(8), Chorus(8), Chorus(8), new("solo", "E", 8), Verse(8), Chorus(8), Chorus(8),
        ],
    });

    // Country in eighths. Twice four bars stand where eight are due.
    private static DemoSong BeakAndFeather() => new("gull-on-the-rail", "The Ferry Queue", new()
    {
        Title = "Beak and Feather",
        Seed = "beak and feather",
        Style = SongStyle.PopRock,
        Tempo = 110,
        Key = 7,
        Looseness = 6,
        Drift = 0.006,
        SilenceBefore = 1.3,
        Band = new()
        {
            Bass = Voice.PickedBass,
            Chords = Voice.SteelGuitar,
            Broken = Voice.Banjo,
            Pad = Voice.Organ,
            Lead = Voice.Singer,
            Second = Voice.Fiddle,
            Room = 0.2,
        },
        Sections =
        [
            Intro(4), Verse(8), Chorus(8),
            new("interlude", "C", 4) { StopBeats = 2 },
            Verse(8), Chorus(8),
            new("bridge", "D", 4) { Drums = DrumPart.HalfTime, HasPad = true },
            new("solo", "A", 8), Chorus(8), Verse(8), Chorus(8), Chorus(8),
            new("outro", "O", 2),
        ],
    });

    // A lilting song in phrases of seven bars, with a bar more wherever the wick is trimmed.
    private static DemoSong TrimTheWick() => new("lantern-twist", "The Low Lamps", new()
    {
        Title = "Trim the Wick",
        Seed = "trim the wick",
        Style = SongStyle.Groove,
        Tempo = 106,
        Key = 4,
        IsMinor = true,
        Swing = 1.3,
        SwingLevel = SwingLevel.Sixteenth,
        Looseness = 5,
        SilenceBefore = 0.4,
        Band = new()
        {
            Bass = Voice.ElectricBass,
            Chords = Voice.ElectricPiano,
            Broken = Voice.MutedGuitar,
            Pad = Voice.Strings,
            Lead = Voice.Singer,
            Second = Voice.Saxophone,
            Room = 0.3,
        },
        Sections =
        [
            Intro(4),
            Verse(7) with { ExtraBars = 1, StopBeats = 4 },
            Verse(7) with { ExtraBars = 1, StopBeats = 4 },
            new("interlude", "C", 4) { ExtraBars = 2 },
            Verse(7) with { ExtraBars = 1, StopBeats = 4 },
            Chorus(7), Chorus(7), new("solo", "A", 7), Chorus(7), Verse(7), Chorus(7),
            new("outro", "O", 6),
        ],
    });

    // Waltz. After every other time round a bar is held over, where the slack is danced.
    private static DemoSong BetweenTwoTides() => new("slack-water-waltz", "The Low Lamps", new()
    {
        Title = "Between Two Tides",
        Seed = "between two tides",
        Style = SongStyle.Waltz,
        Tempo = 96,
        Key = 5,
        Looseness = 8,
        Drift = 0.008,
        SilenceBefore = 0.4,
        Band = new()
        {
            Bass = Voice.UprightBass,
            Chords = Voice.SteelGuitar,
            Pad = Voice.Strings,
            Lead = Voice.Singer,
            Second = Voice.Fiddle,
            DrumHardness = 0.2,
            DrumLevel = -2,
            Room = 0.4,
            Syncopation = 0.15,
        },
        Sections =
        [
            Intro(8),
            Verse(16),
            Chorus(16) with { ExtraBars = 1, StopBeats = 3 },
            Verse(16),
            Chorus(16) with { ExtraBars = 1, StopBeats = 3 },
            new("solo", "A", 16),
            Chorus(16) with { ExtraBars = 1, StopBeats = 3 },
            new("outro", "O", 12) { Drums = DrumPart.Light },
        ],
    });

    // Nightclub ballad, slow, with a slowing end.
    private static DemoSong SilverAllTheWayOut() => new("moon-over-the-mole", "The Low Lamps", new()
    {
        Title = "Silver All the Way Out",
        Seed = "silver all the way out",
        Style = SongStyle.Nightclub,
        Tempo = 62,
        Key = 10,
        Looseness = 8,
        Drift = 0.004,
        SilenceBefore = 1,
        SlowingBeats = 4,
        Slowing = 0.5,
        Band = new()
        {
            Bass = Voice.ElectricBass,
            Chords = Voice.ElectricPiano,
            Broken = Voice.NylonGuitar,
            Pad = Voice.Strings,
            Lead = Voice.Singer,
            Second = Voice.Saxophone,
            DrumHardness = 0.25,
            DrumLevel = -2,
            Room = 0.55,
        },
        Sections =
        [
            Intro(4) with { Drums = DrumPart.None, HasPad = true },
            Verse(8) with { HasPad = true },
            Chorus(8) with { HasPad = true },
            Verse(8) with { HasPad = true },
            Chorus(8) with { HasPad = true },
            new("bridge", "D", 8) { Drums = DrumPart.HalfTime, HasPad = true },
            Chorus(8) with { HasPad = true },
            Chorus(8) with { HasPad = true, Transpose = 2 },
            new("outro", "O", 1) { Drums = DrumPart.Light, HasPad = true, Transpose = 2 },
        ],
    });

    // Country two-step walk, evenly phrased: a song for beginners.
    private static DemoSong HempAndTar() => new("rope-walk", "The Net Menders of Tarbarrow", new()
    {
        Title = "Hemp and Tar",
        Seed = "hemp and tar",
        Style = SongStyle.PopRock,
        Tempo = 118,
        Key = 0,
        Looseness = 6,
        Drift = 0.005,
        SilenceBefore = 1.5,
        Band = new()
        {
            Bass = Voice.UprightBass,
            Chords = Voice.SteelGuitar,
            Pad = Voice.Accordion,
            Lead = Voice.Singer,
            Second = Voice.Harmonica,
            DrumHardness = 0.4,
            Room = 0.2,
            Syncopation = 0.2,
        },
        Sections =
        [
            Intro(8), Verse(8), Verse(8), Chorus(8), new("solo", "A", 8), Verse(8), Chorus(8),
            new("bridge", "D", 8) { Drums = DrumPart.Light }, Verse(8), Chorus(8),
            new("outro", "O", 8),
        ],
    });

    // East coast swing with a brass band, evenly phrased.
    private static DemoSong BrassOnTheBandstand() => new("quayside-swing", "The Market Brass of Tarbarrow", new()
    {
        Title = "Brass on the Bandstand",
        Seed = "brass on the bandstand",
        Style = SongStyle.EastCoastSwing,
        Tempo = 148,
        Key = 10,
        Swing = 1.8,
        Looseness = 6,
        Drift = 0.004,
        SilenceBefore = 0.8,
        Band = new()
        {
            Bass = Voice.UprightBass,
            Chords = Voice.CleanGuitar,
            Pad = Voice.Brass,
            Lead = Voice.MutedTrumpet,
            Second = Voice.Clarinet,
            DrumHardness = 0.4,
            Room = 0.3,
            Syncopation = 0.5,
        },
        Sections =
        [
            Intro(8), Verse(8), Verse(8), Chorus(8), Verse(8), new("solo", "A", 8), Chorus(8),
            new("solo", "A", 8), Verse(8) with { Drums = DrumPart.None, HasPad = true }, Chorus(8), Chorus(8),
            new("outro", "O", 4) { StopBeats = 2 },
        ],
    });

    // Samba.
    private static DemoSong PinkInThePot() => new("shrimp-boat-samba", "Tidewrack Parade", new()
    {
        Title = "Pink in the Pot",
        Seed = "pink in the pot",
        Style = SongStyle.Samba,
        Tempo = 104,
        Key = 2,
        IsMinor = true,
        Looseness = 4,
        SilenceBefore = 1,
        Band = new()
        {
            Bass = Voice.ElectricBass,
            Chords = Voice.NylonGuitar,
            Pad = Voice.Brass,
            Lead = Voice.Flute,
            Second = Voice.Vibes,
            DrumHardness = 0.55,
            Room = 0.25,
            Syncopation = 0.5,
        },
        Sections =
        [
            Intro(8), Verse(8), Chorus(8), Verse(8), Chorus(8), new("bridge", "D", 8) { Drums = DrumPart.HalfTime, HasPad = true },
            new("solo", "A", 8), Chorus(8), Verse(8), Chorus(8), new("outro", "O", 1),
        ],
    });

    // Slow pop for the very first lesson: the beat is never in doubt.
    private static DemoSong LowWaterLullaby() => new("first-tide", "The Slipway Six", new()
    {
        Title = "Low Water Lullaby",
        Seed = "low water lullaby",
        Style = SongStyle.PopRock,
        Tempo = 100,
        Key = 5,
        Looseness = 3,
        SilenceBefore = 0.3,
        Band = new()
        {
            Bass = Voice.ElectricBass,
            Chords = Voice.Piano,
            Pad = Voice.Strings,
            Lead = Voice.Singer,
            Second = Voice.CleanGuitar,
            DrumHardness = 0.5,
            Room = 0.3,
            Syncopation = 0.1,
        },
        Sections =
        [
            Intro(4), Verse(4), Verse(4), Chorus(4), Chorus(4), new("interlude", "I", 4), Verse(4), Verse(4), Chorus(4), Chorus(4),
            new("bridge", "C", 4) { Drums = DrumPart.Light, HasPad = true }, new("bridge", "C", 4) { Drums = DrumPart.Light, HasPad = true },
            new("solo", "A", 4), Verse(4), Chorus(4), Chorus(4), Chorus(4), Chorus(4),
            new("outro", "O", 1),
        ],
    });

    private static SectionRecipe Intro(int bars) => new("intro", "I", bars) { Drums = DrumPart.Light };

    private static SectionRecipe Verse(int bars) => new("verse", "A", bars) { Drums = DrumPart.Light };

    private static SectionRecipe Chorus(int bars) => new("chorus", "B", bars) { HasPad = true };
}
