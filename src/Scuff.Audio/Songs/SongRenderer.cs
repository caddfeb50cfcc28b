using Scuff.Audio.Songs.Synthesis;

namespace Scuff.Audio.Songs;

/// <summary>
/// Plays a song: every note synthesised, every part levelled, placed and sent to the room, the whole brought to its loudness.
/// The same song gives the same samples. Some 30 MB of memory a minute.
/// </summary>
public static class SongRenderer
{
    /// <summary>Samples a second.</summary>
    public const int Rate = 44100;

    private const float Ceiling = 0.94f;

    /// <summary>The song as sound.</summary>
    /// <param name="song">The song.</param>
    /// <param name="progress">Is told the part of the work that is done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static StereoSound Render(Song song, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        Band band = song.Recipe.Players;
        Dice dice = new Dice(song.Recipe.Seed).Fork("mix");
        int length = (int)(song.Seconds * Rate) + 1;
        float[] left = new float[length];
        float[] right = new float[length];
        float[] sent = new float[length];
        float[] part = new float[length];
        DrumKit kit = new(dice.Fork("kit"), band.DrumHardness, Rate);
        WaveTables tables = new(Rate);
        SongPart[] chairs = Enum.GetValues<SongPart>();
        foreach (SongPart chair in chairs)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report((double)chair / (chairs.Length + 1));
            SongNote[] notes = [.. song.Notes.Where(n => n.Part == chair)];
            if (notes.Length == 0)
            {
                continue;
            }

            Array.Clear(part);
            if (chair == SongPart.Drums)
            {
                Drums(notes, part, kit, band);
            }
            else
            {
                Notes(notes, part, VoiceOf(band, chair), tables, new Dice(song.Recipe.Seed).Fork(chair.ToString()));
            }

            Place place = PlaceOf(band, chair, dice.Fork("place " + chair));
            Mix(part, place, left, right, sent);
        }

        if (band.Room > 0.02)
        {
            double seconds = 0.5 + (1.6 * band.Room);
            new Hall(seconds, 0, Rate).Add(sent, left, (float)(0.2 + (0.7 * band.Room)));
            new Hall(seconds, 23, Rate).Add(sent, right, (float)(0.2 + (0.7 * band.Room)));
        }

        Master(left, right, band, song.Fade);
        return new(left, right, Rate);
    }

    private static Voice VoiceOf(Band band, SongPart chair) => chair switch
    {
        SongPart.Bass => band.Bass,
        SongPart.Chords => band.Chords,
        SongPart.Broken => band.Broken ?? band.Chords,
        SongPart.Pad => band.Pad,
        SongPart.Lead => band.Lead,
        _ => band.Second,
    };

    private static void Drums(SongNote[] notes, float[] part, DrumKit kit, Band band)
    {
        float kickGain = Gain(band.KickLevel);
        for (int n = 0; n < notes.Length; n++)
        {
            SongNote note = notes[n];
            DrumVoice voice = (DrumVoice)note.Pitch;
            float[] stroke = kit.Stroke(voice, note.Force, n);
            float level = (float)Math.Pow(note.Force, 1.6) * LevelOf(voice) * (voice == DrumVoice.Kick ? kickGain : 1);
            int start = (int)Math.Round(note.Start * Rate);
            int count = Math.Min(stroke.Length, part.Length - start);
            for (int i = 0; i < count; i++)
            {
                part[start + i] += level * stroke[i];
            }
        }
    }

    private static float LevelOf(DrumVoice voice) => voice switch
    {
        DrumVoice.Kick => 1.15f,
        DrumVoice.Snare => 0.95f,
        DrumVoice.Clap => 0.9f,
        DrumVoice.ClosedHat or DrumVoice.PedalHat => 0.8f,
        DrumVoice.OpenHat => 0.7f,
        DrumVoice.Ride or DrumVoice.Crash => 0.75f,
        DrumVoice.Shaker or DrumVoice.Tambourine => 0.65f,
        DrumVoice.Cowbell => 0.5f,
        _ => 0.8f,
    };

    private static void Notes(SongNote[] notes, float[] part, Voice voice, WaveTables tables, Dice dice)
    {
        StringSound? plucked = VoiceSounds.StringOf(voice);
        for (int n = 0; n < notes.Length; n++)
        {
            SongNote note = notes[n];
            double frequency = 440 * Math.Pow(2, (note.Pitch - 69) / 12.0);
            float level = (float)(0.3 * Math.Pow(note.Force, 1.3));
            int start = (int)Math.Round(note.Start * Rate);
            int held = (int)Math.Round(note.Length * Rate);
            uint seed = (uint)dice.Below(int.MaxValue);
            if (plucked is not null)
            {
                PluckedString.Pluck(part, start, held, frequency, level, plucked, note.Force, seed, Rate);
                continue;
            }

            int vowel = voice == Voice.Singer ? (int)(seed % 5) : 0;
            ToneSound sound = VoiceSounds.ToneOf(voice, vowel);
            float[] bright = tables.Of($"{voice} {vowel} bright", note.Pitch, frequency, sound.Bright);
            float[] dark = tables.Of($"{voice} {vowel} dark", note.Pitch, frequency, sound.Dark);
            Tone.Play(part, start, held, frequency, level, sound, bright, dark, note.Force, seed, Rate);
        }

        double drive = VoiceSounds.DriveOf(voice);
        if (drive > 0)
        {
            for (int i = 0; i < part.Length; i++)
            {
                // x / (1 + |x|) bends like a valve and costs no exponential
                float x = (float)drive * part[i];
                part[i] = x / (1 + Math.Abs(x));
            }
        }
    }

    private static Place PlaceOf(Band band, SongPart chair, Dice dice)
    {
        double side = dice.Between(0.1, 0.6) * dice.Pick(-1, 1);
        double send = dice.Between(0.5, 1.2) * band.Room;
        double dull = 2500 + (13000 * band.Brightness * dice.Between(0.7, 1));
        return chair switch
        {
            SongPart.Drums => new(-17 + band.DrumLevel, side * 0.1, send * 0.35, 20, 16000),
            SongPart.Bass => new(-19.5 + band.BassLevel, 0, 0, 30, dull),
            SongPart.Chords => new(-23 + band.ChordLevel, side, send * 0.7, 110, dull),
            SongPart.Broken => new(-26 + band.ChordLevel, -side, send, 150, dull),
            SongPart.Pad => new(-28 + band.ChordLevel, -side * 0.5, send * 1.2, 170, dull * 0.7),
            SongPart.Lead => new(-20.5 + band.LeadLevel, side * 0.2, send, 120, dull),
            _ => new(-21.5 + band.LeadLevel, side * 0.4, send, 120, dull),
        };
    }

    private static void Mix(float[] part, Place place, float[] left, float[] right, float[] sent)
    {
        OnePole low = new(place.From, Rate);
        OnePole high = new(place.UpTo, Rate);
        for (int i = 0; i < part.Length; i++)
        {
            part[i] = high.Low(low.High(part[i]));
        }

        float gain = Gain(place.Level) / Math.Max(1e-5f, Loudness(part));
        double angle = Math.PI / 4 * (1 + place.Side);
        float toLeft = gain * (float)(Math.Cos(angle) * Math.Sqrt(2));
        float toRight = gain * (float)(Math.Sin(angle) * Math.Sqrt(2));
        float toRoom = gain * (float)place.Send;
        for (int i = 0; i < part.Length; i++)
        {
            left[i] += toLeft * part[i];
            right[i] += toRight * part[i];
            sent[i] += toRoom * part[i];
        }
    }

    // Root mean square of the blocks (a tenth of a second) in which the part is heard: those within 26 decibels of the loudest.
    private static float Loudness(float[] sound)
    {
        const int block = Rate / 10;
        double[] powers = new double[(sound.Length + block - 1) / block];
        for (int i = 0; i < sound.Length; i++)
        {
            powers[i / block] += sound[i] * sound[i];
        }

        double loudest = powers.Max();
        double[] heard = [.. powers.Where(p => p > 0.0025 * loudest)];
        return heard.Length == 0 ? 0 : (float)Math.Sqrt(heard.Average() / block);
    }

    private static void Master(float[] left, float[] right, Band band, (double From, double To)? fade)
    {
        float loudness = Math.Max(1e-5f, (Loudness(left) + Loudness(right)) / 2);
        float gain = Gain(band.Loudness) / loudness;
        int fadeFrom = fade is var (from, _) ? (int)(from * Rate) : int.MaxValue;
        int fadeTo = fade is var (_, to) ? (int)(to * Rate) : int.MaxValue;
        for (int i = 0; i < left.Length; i++)
        {
            float g = gain;
            if (i > fadeFrom)
            {
                float rest = i >= fadeTo ? 0 : 1 - ((float)(i - fadeFrom) / (fadeTo - fadeFrom));
                g *= rest * rest;
            }

            // what would be far above the ceiling is bent first, as tape does, so that the limiter need not pump
            left[i] = Bent(g * left[i]);
            right[i] = Bent(g * right[i]);
        }

        Limiter.Apply(left, right, Ceiling, Rate);

        // the last moment goes to nothing
        int tail = Math.Min(left.Length, Rate / 5);
        for (int i = 0; i < tail; i++)
        {
            left[left.Length - 1 - i] *= (float)i / tail;
            right[left.Length - 1 - i] *= (float)i / tail;
        }

        static float Bent(float x)
        {
            float size = Math.Abs(x);
            if (size <= 0.7f)
            {
                return x;
            }

            float over = (size - 0.7f) / 0.6f;
            return Math.Sign(x) * (0.7f + (0.6f * over / (1 + over)));
        }
    }

    private static float Gain(double decibels) => (float)Math.Pow(10, decibels / 20);

    // Level in decibels, side from -1 (left) to 1, share sent to the room, and what is kept of the spectrum in hertz.
    private sealed record Place(double Level, double Side, double Send, double From, double UpTo);
}
