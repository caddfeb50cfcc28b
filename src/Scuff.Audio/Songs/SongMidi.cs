using System.Buffers.Binary;

namespace Scuff.Audio.Songs;

/// <summary>
/// A song as a standard MIDI file of type 1 (RP-001, MIDI Manufacturers Association 1996), a tick a millisecond, with the sounds of
/// General MIDI level 1 that come nearest to our band: so that other instruments than ours can play it.
/// </summary>
public static class SongMidi
{
    private const int DrumChannel = 9;

    // Programs by number from 0. Several where the collection has several of a kind; the song's seed picks one.
    private static readonly Dictionary<Voice, int[]> Programs = new()
    {
        [Voice.UprightBass] = [32],
        [Voice.ElectricBass] = [33, 35, 36],
        [Voice.PickedBass] = [34],
        [Voice.SynthBass] = [38, 39, 87],
        [Voice.Tuba] = [58],
        [Voice.SteelGuitar] = [25],
        [Voice.NylonGuitar] = [24],
        [Voice.CleanGuitar] = [27, 26],
        [Voice.DrivenGuitar] = [29, 30],
        [Voice.MutedGuitar] = [28],
        [Voice.Banjo] = [105],
        [Voice.Harp] = [46],
        [Voice.Piano] = [0, 1, 2, 3],
        [Voice.ElectricPiano] = [4, 5],
        [Voice.Vibes] = [11, 12, 13],
        [Voice.Organ] = [16, 17, 18],
        [Voice.Accordion] = [21, 23],
        [Voice.Harmonica] = [22],
        [Voice.Strings] = [48, 49, 44],
        [Voice.SynthPad] = [50, 88, 89, 90],
        [Voice.Choir] = [52, 53, 91],
        [Voice.Brass] = [61, 62, 57],
        [Voice.Fiddle] = [40, 110],
        [Voice.Flute] = [73, 72, 75],
        [Voice.Clarinet] = [71, 68],
        [Voice.MutedTrumpet] = [59, 56],
        [Voice.Saxophone] = [65, 66, 64],
        [Voice.SynthLead] = [80, 81, 82, 98],
        [Voice.Singer] = [85, 54, 53],
    };

    private static readonly Dictionary<DrumVoice, int> Keys = new()
    {
        [DrumVoice.Kick] = 36,
        [DrumVoice.Snare] = 38,
        [DrumVoice.SideStick] = 37,
        [DrumVoice.Clap] = 39,
        [DrumVoice.ClosedHat] = 42,
        [DrumVoice.PedalHat] = 44,
        [DrumVoice.OpenHat] = 46,
        [DrumVoice.Ride] = 51,
        [DrumVoice.Crash] = 49,
        [DrumVoice.HighTom] = 50,
        [DrumVoice.MiddleTom] = 47,
        [DrumVoice.LowTom] = 43,
        [DrumVoice.Shaker] = 70,
        [DrumVoice.Tambourine] = 54,
        [DrumVoice.Cowbell] = 56,
        [DrumVoice.HighConga] = 63,
        [DrumVoice.LowConga] = 64,
        [DrumVoice.MutedConga] = 62,
        [DrumVoice.LongScrape] = 74,
        [DrumVoice.ShortScrape] = 73,
        [DrumVoice.BrushTap] = 38,
        [DrumVoice.BrushSweep] = 40,
        [DrumVoice.Sticks] = 31,
    };

    // Room kit, jazz, brush, electronic, power and the plain one.
    private static readonly int[] Kits = [0, 0, 8, 16, 24, 32];

    private const int BrushKit = 40;

    // From the grand piano to the pads; what follows are effects, drums and noises.
    private const int Instruments = 96;

    /// <summary>The song as the bytes of a MIDI file.</summary>
    public static byte[] Write(Song song)
    {
        ArgumentNullException.ThrowIfNull(song);
        Dice dice = new Dice(song.Recipe.Seed).Fork("midi");
        Band band = song.Recipe.Players;
        List<byte[]> tracks = [TempoTrack()];
        foreach (SongPart part in Enum.GetValues<SongPart>())
        {
            int channel = part == SongPart.Drums ? DrumChannel : (int)part;
            (int program, double level) = part switch
            {
                SongPart.Drums => (song.Notes.Any(n => n.Part == SongPart.Drums && n.Pitch == (int)DrumVoice.BrushTap) ? BrushKit : dice.Pick<int>(Kits), band.DrumLevel),
                SongPart.Bass => (ProgramOf(band.Bass, dice), band.BassLevel),
                SongPart.Chords => (ProgramOf(band.Chords, dice), band.ChordLevel),
                SongPart.Broken => (ProgramOf(band.Broken ?? band.Chords, dice), band.ChordLevel),
                SongPart.Pad => (ProgramOf(band.Pad, dice), band.ChordLevel - 2),
                SongPart.Lead => (ProgramOf(band.Lead, dice), band.LeadLevel),
                _ => (ProgramOf(band.Second, dice), band.LeadLevel),
            };
            if (song.Recipe.Manner is { HasAnyInstrument: true } && part != SongPart.Drums && dice.Chance(0.6))
            {
                program = part == SongPart.Bass && dice.Chance(0.6) ? 32 + dice.Below(8) : dice.Below(Instruments);
            }

            tracks.Add(Track([.. song.Notes.Where(n => n.Part == part)], channel, program, level, song.Fade));
        }

        using MemoryStream file = new();
        file.Write("MThd"u8);
        Write32(file, 6);
        Write16(file, 1);
        Write16(file, tracks.Count);
        Write16(file, 1000);
        foreach (byte[] track in tracks)
        {
            file.Write("MTrk"u8);
            Write32(file, track.Length);
            file.Write(track);
        }

        return file.ToArray();
    }

    private static int ProgramOf(Voice voice, Dice dice) => dice.Pick<int>(Programs[voice]);

    // A quarter note of a second: with 1000 ticks to it, a tick is a millisecond.
    private static byte[] TempoTrack() => [0, 0xFF, 0x51, 3, 0x0F, 0x42, 0x40, 0, 0xFF, 0x2F, 0];

    private static byte[] Track(SongNote[] notes, int channel, int program, double decibels, (double From, double To)? fade)
    {
        List<(int Tick, int Order, byte[] Bytes)> events =
        [
            (0, 0, [(byte)(0xC0 | channel), (byte)program]),
            (0, 1, [(byte)(0xB0 | channel), 7, VolumeOf(decibels)]),
        ];
        if (fade is { } f)
        {
            for (int k = 0; k <= 40; k++)
            {
                double share = k / 40.0;
                int tick = (int)Math.Round(1000 * (f.From + ((f.To - f.From) * share)));
                events.Add((tick, 1, [(byte)(0xB0 | channel), 11, (byte)Math.Round(127 * (1 - share))]));
            }
        }

        foreach (SongNote note in notes)
        {
            int key = note.Part == SongPart.Drums ? Keys[(DrumVoice)note.Pitch] : Math.Clamp(note.Pitch, 0, 127);
            int start = (int)Math.Round(note.Start * 1000);
            int end = Math.Max(start + 10, (int)Math.Round((note.Start + note.Length) * 1000));
            events.Add((start, 3, [(byte)(0x90 | channel), (byte)key, (byte)Math.Clamp(Math.Round(note.Force * 127), 1, 127)]));
            events.Add((end, 2, [(byte)(0x80 | channel), (byte)key, 64]));
        }

        using MemoryStream track = new();
        int now = 0;
        foreach ((int tick, _, byte[] bytes) in events.OrderBy(e => e.Tick).ThenBy(e => e.Order))
        {
            WriteLength(track, tick - now);
            track.Write(bytes);
            now = tick;
        }

        track.Write([0, 0xFF, 0x2F, 0]);
        return track.ToArray();
    }

    // Controller 7 goes with the square of its value; 100 is the usual place.
    private static byte VolumeOf(double decibels) => (byte)Math.Clamp(Math.Round(100 * Math.Pow(10, decibels / 40)), 1, 127);

    private static void WriteLength(MemoryStream to, int value)
    {
        Span<byte> bytes = stackalloc byte[5];
        int at = 5;
        bytes[--at] = (byte)(value & 0x7F);
        while ((value >>= 7) > 0)
        {
            bytes[--at] = (byte)((value & 0x7F) | 0x80);
        }

        to.Write(bytes[at..]);
    }

    private static void Write32(MemoryStream to, int value)
    {
        Span<byte> bytes = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(bytes, value);
        to.Write(bytes);
    }

    private static void Write16(MemoryStream to, int value)
    {
        Span<byte> bytes = stackalloc byte[2];
        BinaryPrimitives.WriteInt16BigEndian(bytes, (short)value);
        to.Write(bytes);
    }
}
