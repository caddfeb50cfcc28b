using Scuff;
using Scuff.Audio.Evaluation;
using Scuff.Audio.Songs;

namespace Tests.Audio.Songs;

/// <summary>What is played is heard: at its moment, at its loudness, without cuts.</summary>
public sealed class SongRendererTests
{
    private static readonly SongRecipe Short = new()
    {
        Title = "Short",
        Seed = "short",
        Style = SongStyle.PopRock,
        Tempo = 110,
        CountInBeats = 4,
        Looseness = 0,
        Band = new() { Room = 0 },
        Sections = [new("verse", "A", 4) { HasPad = true }, new("chorus", "B", 4)],
    };

    [Fact]
    public void The_same_song_sounds_the_same_twice()
    {
        StereoSound first = SongRenderer.Render(Song.From(Short));
        StereoSound second = SongRenderer.Render(Song.From(Short));
        Assert.Equal(first.Left, second.Left);
        Assert.Equal(first.Right, second.Right);
    }

    [Fact]
    public void Count_in_clicks_sound_within_a_millisecond_of_their_beats()
    {
        Song song = Song.From(Short);
        StereoSound sound = SongRenderer.Render(song);
        ValueList<double> beats = song.Truth("x").Beats;
        for (int i = 0; i < 4; i++)
        {
            int beat = (int)Math.Round(beats[i] * SongRenderer.Rate);

            // the truth is rounded to a tenth of a millisecond, four samples
            Assert.True(Loudest(sound, beat - 4410, beat - 10) < 0.002, "quiet before the click");
            Assert.True(Loudest(sound, beat, beat + 44) > 0.05, "loud within a millisecond");
        }
    }

    [Fact]
    public void Every_hit_of_kick_and_snare_begins_within_a_millisecond_of_its_note()
    {
        SongRecipe drums = Short with
        {
            Style = SongStyle.DancePop,
            Sections = [.. Short.Sections.Select(s => s with { HasBass = false, HasChords = false, HasLead = false, HasPad = false })],
            HasFinalChord = false,
            HasCrashes = false,
        };
        Song song = Song.From(drums);
        StereoSound sound = SongRenderer.Render(song);
        SongNote[] notes = [.. song.Notes];
        int checkedHits = 0;
        for (int i = 1; i < notes.Length; i++)
        {
            bool isClear = notes[i].Pitch is (int)DrumVoice.Kick or (int)DrumVoice.Snare or (int)DrumVoice.Clap
                && notes[i].Force > 0.5
                && notes[i].Start - notes.Take(i).Where(n => n.Start < notes[i].Start).Max(n => n.Start) > 0.1;
            if (isClear)
            {
                int at = (int)Math.Round(notes[i].Start * SongRenderer.Rate);
                Assert.True(Steepest(sound, at, at + 44) > 2 * Steepest(sound, at - 88, at - 1), $"hit {i} at {notes[i].Start}");
                checkedHits++;
            }
        }

        Assert.True(checkedHits > 20);
    }

    [Theory]
    [InlineData(SongStyle.ChaCha)]
    [InlineData(SongStyle.Waltz)]
    [InlineData(SongStyle.Jig)]
    [InlineData(SongStyle.DancePop)]
    public void A_song_is_as_loud_as_asked_and_never_at_the_limit(SongStyle style)
    {
        StereoSound sound = SongRenderer.Render(Song.From(Short with { Style = style, CountInBeats = 0, HasFinalChord = false, Band = new() { Loudness = -14 } }));
        float[] all = [.. sound.Left, .. sound.Right];
        Assert.All(all, x => Assert.True(float.IsFinite(x)));
        Assert.InRange(all.Max(Math.Abs), 0.3, 0.96);
        Assert.InRange(10 * Math.Log10(all.Average(x => (double)x * x)), -17.5, -12);
        Assert.InRange(all.Average(x => (double)x), -0.003, 0.003);
    }

    [Fact]
    public void A_stop_is_quiet_and_a_fade_ends_in_silence()
    {
        SongRecipe recipe = Short with { Sections = [new("verse", "A", 4) { StopBeats = 4 }, new("chorus", "B", 8)], FadeBeats = 24, HasFinalChord = false };
        Song song = Song.From(recipe);
        StereoSound sound = SongRenderer.Render(song);
        TruthBreak stop = song.Truth("x").Breaks!.Value[0];
        double within = Loudness(sound, stop.End - 0.6, stop.End - 0.05);
        Assert.True(within < 0.2 * Loudness(sound, stop.Start - 4, stop.Start), $"{within}");
        Assert.True(Loudness(sound, sound.Seconds - 0.9, sound.Seconds) < 0.05 * Loudness(sound, stop.End, stop.End + 4));
        Assert.Equal(0, sound.Left[^1]);
    }

    [Fact]
    public void Every_voice_is_heard()
    {
        foreach (Voice voice in Enum.GetValues<Voice>())
        {
            StereoSound sound = SongRenderer.Render(Song.From(Solo(voice, bars: 1)));
            Assert.True(Loudness(sound, 0.3, 2.4) > 0.01, voice.ToString());
        }
    }

    // a string that is plucked does step; what is blown, bowed or sung does not
    [Theory]
    [InlineData(Voice.Singer)]
    [InlineData(Voice.Fiddle)]
    [InlineData(Voice.Accordion)]
    [InlineData(Voice.Organ)]
    [InlineData(Voice.Strings)]
    [InlineData(Voice.SynthBass)]
    [InlineData(Voice.Piano)]
    public void A_tone_begins_and_ends_without_a_cut(Voice voice)
    {
        StereoSound sound = SongRenderer.Render(Song.From(Solo(voice)));

        // where a sound is cut, one step from sample to sample stands out from the two beside it
        double worst = 0;
        for (int i = 2; i < sound.Left.Length - 1; i++)
        {
            double here = Math.Abs(sound.Left[i] - sound.Left[i - 1]);
            double beside = Math.Max(Math.Abs(sound.Left[i - 1] - sound.Left[i - 2]), Math.Abs(sound.Left[i + 1] - sound.Left[i]));
            worst = Math.Max(worst, here - beside);
        }

        Assert.True(worst < 0.06, $"{worst}");
    }

    [Fact]
    public void A_sound_is_written_as_a_wav_file_of_sixteen_bits()
    {
        using MemoryStream file = new();
        new StereoSound([0, 1, -1, 0.5f], [0, -1, 1, 2], 44100).WriteWav(file);
        byte[] bytes = file.ToArray();
        Assert.Equal(44 + 16, bytes.Length);
        Assert.Equal("RIFF"u8, bytes.AsSpan(0, 4));
        Assert.Equal(36 + 16, BitConverter.ToInt32(bytes, 4));
        Assert.Equal(44100, BitConverter.ToInt32(bytes, 24));
        Assert.Equal([0, 0, 32767, -32767, -32767, 32767, 16384, 32767], Enumerable.Range(0, 8).Select(i => (int)BitConverter.ToInt16(bytes, 44 + (2 * i))));
    }

    private static SongRecipe Solo(Voice voice, int bars = 2) => Short with
    {
        CountInBeats = 0,
        Band = new() { Lead = voice, Bass = voice, Chords = voice, Pad = voice, Room = 0 },
        HasFinalChord = false,
        Sections = [new("verse", "A", bars) { Drums = DrumPart.None, HasPad = true }],
    };

    // the largest step from sample to sample: what is low and dies away hardly counts
    private static float Steepest(StereoSound sound, int from, int to)
    {
        float most = 0;
        for (int i = from; i < to; i++)
        {
            most = Math.Max(most, Math.Abs(sound.Left[i] - sound.Left[i - 1]));
        }

        return most;
    }

    private static float Loudest(StereoSound sound, int from, int to)
    {
        float most = 0;
        for (int i = Math.Max(0, from); i < to; i++)
        {
            most = Math.Max(most, Math.Max(Math.Abs(sound.Left[i]), Math.Abs(sound.Right[i])));
        }

        return most;
    }

    private static double Loudness(StereoSound sound, double from, double to)
        => Math.Sqrt(sound.Left[(int)(from * SongRenderer.Rate)..(int)(to * SongRenderer.Rate)].Average(x => (double)x * x));
}
