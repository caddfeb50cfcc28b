using Scuff.Audio.Decoding;
using Scuff.Audio.Mixing;
using Scuff.Audio.Songs;
using Scuff.Audio.Stretching;
using Scuff.Audio.Voices;

namespace Tests.Audio.Mixing;

public sealed class CallTrackMixerTests
{
    private const int Rate = IVoice.Rate;

    // the call track holds to the map within this (issue: 10 ms); what is written plainly holds to a sample or two
    private const double MostOff = 0.010;
    private const double MostOffPlain = 0.001;

    private static readonly string[] Words = ["vine right", "coaster", "tag coming", "pivot quarter", "rock, recover", "kick ball change", "shuffle"];
    private static readonly Speaker Speaker = new(new ShippedVoice());

    [Fact]
    public void Clicks_of_a_written_track_are_where_they_were_asked_for()
    {
        ClickTime[] clicks = [.. Enumerable.Range(0, 40).Select(i => new ClickTime(0.2 + (i * 0.4137), i % 8 == 0))];

        float[] heard = Decoded(Mix([], clicks, null), SoundFormat.Wav).Left;

        Assert.All(clicks, c => Assert.InRange(Measured.Onset(heard, Rate, c.Seconds - 0.1, c.Seconds + 0.15, 0.1f) - c.Seconds, -MostOffPlain, MostOffPlain));
        Assert.True(Low(heard, clicks[0]) > High(heard, clicks[0]));
        Assert.True(Low(heard, clicks[1]) < High(heard, clicks[1]));

        static double Low(float[] heard, ClickTime click) => Measured.Amplitude(heard.AsSpan((int)(click.Seconds * Rate), 3000), Rate, WoodClick.LowHertz);
        static double High(float[] heard, ClickTime click) => Measured.Amplitude(heard.AsSpan((int)(click.Seconds * Rate), 3000), Rate, WoodClick.HighHertz);
    }

    [Theory]
    [InlineData(SoundFormat.Wav)]
    [InlineData(SoundFormat.Mp3)]
    [InlineData(SoundFormat.M4a)]
    public void Speech_and_clicks_of_a_written_file_are_where_they_were_asked_for(SoundFormat format)
    {
        CallTime[] calls = Calls(1.3);
        ClickTime[] clicks = [.. Enumerable.Range(0, calls.Length).Select(i => new ClickTime(calls[i].Seconds - 0.35, false))];

        float[] heard = Decoded(Mix(calls, clicks, null), format).Left;

        double most = format == SoundFormat.Wav ? MostOffPlain : MostOff;
        Assert.All(calls, c => Assert.InRange(Measured.Lag(heard, Rate, Speaker.Say(c.Words).Sound.Samples, c.Seconds), -most, most));
        Assert.All(clicks, c => Assert.InRange(Measured.Lag(heard, Rate, WoodClick.Of(Rate, WoodClick.HighHertz), c.Seconds), -most, most));
    }

    [Theory]
    [InlineData(0.6)]
    [InlineData(0.8)]
    [InlineData(1.0)]
    [InlineData(1.1)]
    public void Over_music_at_any_speed_speech_and_the_beats_of_the_music_keep_to_the_map(double speed)
    {
        double[] beats = [.. Enumerable.Range(0, 26).Select(i => 0.3 + (i * 0.41))];
        StereoSound music = MusicStretch.Stretch(Band(beats), TimeMap.AtSpeed(speed));
        CallTime[] calls = [.. Calls(1.9).Take(5)];

        float[] heard = Decoded(Mix(calls, [], music), SoundFormat.Wav).Left;

        Assert.All(calls, c => Assert.InRange(Measured.Lag(heard, Rate, Speaker.Say(c.Words).Sound.Samples, c.Seconds), -MostOff, MostOff));

        // where nobody speaks the drum of the music can be measured
        double[] free = [.. beats.Select(b => b / speed).Where(b => calls.All(c => b < c.Seconds - 0.3 || b > c.Seconds + 1)).Where(b => b < heard.Length / (double)Rate - 0.2)];
        Assert.InRange(free.Length, 4, beats.Length);
        Assert.All(free, b => Assert.InRange(Measured.Lag(heard, Rate, Drum, b), -MostOff, MostOff));
    }

    [Fact]
    public void Music_gives_way_to_speech_and_comes_back_without_a_step()
    {
        float[] tone = [.. Enumerable.Range(0, 8 * Rate).Select(i => (float)(0.2 * Math.Sin(2 * Math.PI * 3000 * i / Rate)))];
        CallTime call = new(4, "and", 6);

        float[] heard = Mix([call], [], new StereoSound(tone, tone, Rate)).Sound.Left;

        double before = Level(3.6);
        Assert.InRange(Level(1), before * 0.99, before * 1.01);
        Assert.InRange(Level(4.02) / before, 0.2, 0.35);
        Assert.InRange(Level(5.5) / before, 0.98, 1.02);

        // no two neighbouring hundredths of a second differ by more than 3 decibels
        double[] levels = [.. Enumerable.Range(330, 250).Select(i => Level(i / 100.0))];
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.InRange(pair.Second / pair.First, 0.7, 1.4));

        double Level(double seconds) => Measured.Amplitude(heard.AsSpan((int)(seconds * Rate), 1000), Rate, 3000);
    }

    [Fact]
    public void Loud_music_clicks_and_speech_at_once_stay_below_full_scale()
    {
        Random random = new(2);
        float[] loud = [.. Enumerable.Range(0, 6 * Rate).Select(_ => (float)((2 * random.NextDouble()) - 1))];
        CallTime[] calls = [new(1, "shuffle", 2), new(2, "stomp", 3), new(3, "kick ball change", 5)];

        CallTrack made = Mix(calls, [.. calls.Select(c => new ClickTime(c.Seconds, true))], new StereoSound(loud, loud, Rate));

        Assert.InRange(made.Sound.Left.Max(Math.Abs), 0.3f, 0.9f);
    }

    [Fact]
    public void Words_with_little_time_are_hurried_with_their_pitch_kept_and_end_in_time()
    {
        double whole = Speaker.SecondsToSay("left jazz box quarter");
        double room = whole / 1.25;
        CallTime[] calls = [new(1, "left jazz box quarter", 1 + room)];

        CallTrack made = Mix(calls, [], null);

        Assert.Empty(made.Overlong);
        float[] heard = made.Sound.Left;
        Assert.InRange(Measured.Rms(heard.AsSpan((int)((1 + room) * Rate) + 300, Rate / 4)), 0, 0.0005);
        Assert.InRange(Measured.Onset(heard, Rate, 0.5, 1.5, 0.02f), 1 - MostOffPlain, Measured.Onset(Speaker.Say(calls[0].Words).Sound.Samples, Rate, 0, 0.5, 0.02f) + 1 + MostOff);
        Assert.InRange(Pitch(heard.AsSpan(Rate, (int)(room * Rate))) / Pitch(Speaker.Say(calls[0].Words).Sound.Samples), 0.93, 1.07);
    }

    [Fact]
    public void Words_that_do_not_fit_even_hurried_are_told_and_never_run_into_the_next()
    {
        CallTime[] calls = [new(1, "cross and heel and cross and heel", 1.5), new(1.6, "vine right", 3)];

        CallTrack made = Mix(calls, [], null);

        Assert.Equal([calls[0]], made.Overlong);
        float[] heard = made.Sound.Left;
        Assert.InRange(Measured.Rms(heard.AsSpan((int)(1.583 * Rate), 600)), 0, 0.002);
        Assert.InRange(Measured.Lag(heard, Rate, Speaker.Say("vine right").Sound.Samples, 1.6), -MostOffPlain, MostOffPlain);
    }

    [Fact]
    public void A_number_of_a_quick_count_in_ends_with_its_count_and_is_no_complaint()
    {
        // 200 counts a minute; "seven" is the longest of the four
        CallTime[] calls = [.. ((string[])["5", "6", "7", "8"]).Select((n, i) => new CallTime(1 + (0.3 * i), n, 1 + (0.3 * (i + 1))))];

        CallTrack made = Mix(calls, [], null);

        Assert.Empty(made.Overlong);
        Assert.InRange(Measured.Rms(made.Sound.Left.AsSpan((int)(1.884 * Rate), 500)), 0, 0.004);
        Assert.InRange(Measured.Rms(made.Sound.Left.AsSpan((int)(2.21 * Rate), 2000)), 0, 0.001);
    }

    [Fact]
    public void What_nobody_can_say_is_told_once()
    {
        CallTrack made = Mix([new(1, "hullabaloo right", 3), new(4, "hullabaloo", 5)], [], null);

        Assert.Equal(["hullabaloo"], made.Unspoken);
        Assert.InRange(Measured.Rms(made.Sound.Left.AsSpan((int)(1.05 * Rate), 4000)), 0.01, 1);
    }

    [Fact]
    public void An_empty_plan_is_silence_of_its_length()
    {
        Assert.Empty(CallTrackMixer.Mix(new CallTrackPlan(), Speaker).Sound.Left);
        Assert.Equal(2, CallTrackMixer.Mix(new CallTrackPlan { Seconds = 2 }, Speaker).Sound.Seconds, 3);
    }

    [Fact]
    public void A_plan_that_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentException>(() => Mix([new(-1, "vine", 2)], [], null));
        Assert.Throws<ArgumentException>(() => Mix([new(2, "vine", 3), new(1, "vine", 2)], [], null));
        Assert.Throws<ArgumentException>(() => Mix([], [new(double.NaN, true)], null));
        Assert.Throws<ArgumentException>(() => Mix([], [], new StereoSound(new float[100], new float[100], 8000)));
    }

    [Fact]
    public void Without_ffmpeg_packed_files_are_refused_with_what_to_do_and_nothing_is_written()
    {
        using MemoryStream file = new();

        AudioException refused = Assert.Throws<AudioException>(
            () => SoundWriter.Write(new StereoSound(new float[100], new float[100], Rate), SoundFormat.Mp3, file, ffmpeg: "no-such-program-here"));

        Assert.Equal("MP3 is written with the help of the program ffmpeg, which is not on this machine: install it, or write a WAV file.", refused.Message);
        Assert.Equal(0, file.Length);
    }

    private static CallTrack Mix(CallTime[] calls, ClickTime[] clicks, StereoSound? music)
        => CallTrackMixer.Mix(new CallTrackPlan { Calls = [.. calls], Clicks = [.. clicks], Music = music }, Speaker);

    private static CallTime[] Calls(double apart) => [.. Words.Select((w, i) => new CallTime(1 + (i * apart), w, 1 + (i * apart) + 1.3))];

    private static StereoSound Decoded(CallTrack made, SoundFormat format)
    {
        string path = Path.Combine(Directory.CreateTempSubdirectory("scuff-mix-").FullName, "track");
        try
        {
            using (FileStream file = File.Create(path))
            {
                SoundWriter.Write(made.Sound, format, file, "Harbour Light", "The Tin Lanterns");
            }

            HeardSides read = AudioFile.ReadSides(path);
            Assert.Equal(format == SoundFormat.Wav ? "Harbour Light" : read.Tags.Title, read.Tags.Title);
            Assert.Equal(made.Sound.Seconds, read.Sound.Seconds, 1);
            return read.Sound;
        }
        catch (AudioException trouble) when (trouble.Message.Contains("ffmpeg", StringComparison.Ordinal))
        {
            Assert.Skip("ffmpeg, or its coder, is not on this machine.");
            throw;
        }
        finally
        {
            Directory.Delete(Path.GetDirectoryName(path)!, recursive: true);
        }
    }

    private static readonly float[] Drum = [.. Enumerable.Range(0, 2500).Select(i => (float)(Math.Exp(-i / 500.0) * Math.Sin(2 * Math.PI * 190 * i / Rate)))];

    // A drum on every beat over a chord.
    private static StereoSound Band(double[] beats)
    {
        float[] samples = new float[12 * Rate];
        for (int i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)(0.06 * (Math.Sin(2 * Math.PI * 261.6 * i / Rate) + Math.Sin(2 * Math.PI * 392 * i / Rate)));
        }

        foreach (double beat in beats)
        {
            int at = (int)Math.Round(beat * Rate);
            for (int i = 0; i < Drum.Length; i++)
            {
                samples[at + i] += 0.6f * Drum[i];
            }
        }

        return new StereoSound(samples, samples, Rate);
    }

    // The pitch of a voice: the lag from 1/400 to 1/100 of a second at which it is most like itself.
    private static double Pitch(ReadOnlySpan<float> voice)
    {
        int best = 0;
        double most = 0;
        for (int lag = Rate / 400; lag < Rate / 100; lag++)
        {
            double alike = 0;
            for (int i = 0; i + lag < voice.Length; i++)
            {
                alike += voice[i] * voice[i + lag];
            }

            alike /= voice.Length - lag;
            (best, most) = alike > most ? (lag, alike) : (best, most);
        }

        return (double)Rate / best;
    }
}
