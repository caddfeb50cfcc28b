using Scuff.Analysis.Calls;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;
using Scuff.Audio.Songs;
using Scuff.Audio.Voices;
using Scuff.Steps;

namespace Tests.Audio.Voices;

public sealed class VoiceTests
{
    private const int Rate = IVoice.Rate;

    [Fact]
    public void A_recording_is_cut_to_its_words_and_its_level_is_evened()
    {
        MonoAudio loud = VoiceTrim.Of(Recording(0.7, 0.4, 0.5))!;
        MonoAudio soft = VoiceTrim.Of(Recording(0.05, 0.4, 0.5, hiss: 0.0005))!;

        foreach (MonoAudio cut in (MonoAudio[])[loud, soft])
        {
            Assert.InRange(cut.Seconds, 0.5, 0.54);
            Assert.InRange(Measured.Onset(cut.Samples, Rate, 0, 0.3, 0.2f), 0, 0.004);
            Assert.InRange(Measured.Rms(cut.Samples.AsSpan(2000, 15000)), 0.09, 0.11);
        }
    }

    [Fact]
    public void A_click_of_the_microphone_before_the_words_is_not_taken_for_them()
    {
        MonoAudio recording = Recording(0.5, 0.6, 0.4);
        recording.Samples[1000] = 0.4f;

        Assert.InRange(VoiceTrim.Of(recording)!.Seconds, 0.4, 0.44);
    }

    [Fact]
    public void Silence_says_nothing()
    {
        Assert.Null(VoiceTrim.Of(new MonoAudio(new float[Rate], Rate)));
        Assert.Null(VoiceTrim.Of(new MonoAudio([], Rate)));
    }

    [Fact]
    public void Packed_clips_come_back_on_time_and_alike()
    {
        MonoAudio recording = Recording(0.5, 0.3, 0.4);
        using MemoryStream file = new();
        VoicePack.Write(file, [("one", recording), ("two", Recording(0.5, 0.2, 0.25))]);
        VoicePack pack = VoicePack.Read(file.ToArray());

        MonoAudio back = pack.SoundOf("one")!;
        MonoAudio sent = VoiceTrim.Of(new MonoAudio(Resampler.Convert(recording.Samples, Rate, back.Rate), back.Rate))!;

        Assert.Equal(["one", "two"], pack.Words);
        Assert.Equal(sent.Samples.Length, back.Samples.Length);
        Assert.Equal(back.Seconds, pack.SecondsOf("one")!.Value, 9);
        Assert.InRange(Measured.Lag(back.Samples, back.Rate, sent.Samples, 0), -0.001, 0.001);
        Assert.Null(pack.SoundOf("three"));
    }

    [Fact]
    public void A_damaged_pack_is_told_as_one()
    {
        using MemoryStream file = new();
        VoicePack.Write(file, [("one", Recording(0.5, 0.3, 0.4))]);
        byte[] bytes = file.ToArray();

        for (int length = 0; length < bytes.Length; length += 7)
        {
            Assert.Throws<AudioException>(() => VoicePack.Read(bytes[..length]));
        }
    }

    [Fact]
    public void Every_call_of_the_catalogue_can_be_said_by_the_voice_that_comes_along()
    {
        Speaker speaker = new(new ShippedVoice());
        string[] calls =
        [
            .. StepCatalogue.Default.Definitions.Where(d => d.Call.Length > 0).Select(d => d.Call).Distinct(),
            .. CallWords.English.All.Select(w => w.Replace("{n}", "12", StringComparison.Ordinal).Replace("{name}", "tag", StringComparison.Ordinal)),
            .. Enumerable.Range(1, 32).Select(n => FormattableString.Invariant($"{n}")),
            "5 6 7 8", "8 more", "new wall", "last one", "hold", "wait",
        ];

        Assert.InRange(calls.Length, 300, 2000);
        foreach (string call in calls)
        {
            foreach (string said in (string[])[call, "right " + call, call + " left", call + " three quarters right"])
            {
                Assert.True(speaker.SecondsToSay(said) > 0.1, said);
                Assert.All(SpokenText.Phrase(said).Split(' '), w => Assert.Contains(w, ShippedVoice.Words));
            }
        }
    }

    [Fact]
    public void Each_shipped_clip_sounds_from_its_beginning_and_is_short()
    {
        ShippedVoice voice = new();
        foreach (string words in ShippedVoice.Words.Where((_, i) => i % 9 == 0))
        {
            float[] samples = voice.Say(words)!.Samples;
            Assert.InRange((double)samples.Length / Rate, 0.1, 2.1);

            // a soft consonant may come before the loud vowel, silence may not
            Assert.InRange(Measured.Onset(samples, Rate, 0, 3, 0.004f), 0, 0.01);
            Assert.InRange(samples.Max(Math.Abs), 0.15f, 1f);
        }
    }

    [Fact]
    public void Words_that_are_not_in_one_piece_are_put_together_and_what_nobody_can_say_is_told()
    {
        Speaker speaker = new(new ShippedVoice());

        Spoken said = speaker.Say("vine right, hullabaloo, quarter left");

        Assert.Equal(["hullabaloo"], said.Unspoken);
        Assert.Equal(speaker.SecondsToSay("vine right, quarter left"), said.Sound.Seconds, 2);
        Assert.True(said.Sound.Seconds > new ShippedVoice().SecondsOf("vine right") + new ShippedVoice().SecondsOf("quarter left"));
        Assert.Empty(speaker.Say("").Sound.Samples);
    }

    [Fact]
    public void How_long_words_take_is_known_before_they_are_said()
    {
        foreach (string words in (string[])["vine right", "rock, recover", "pivot three quarters right", "5"])
        {
            double before = new Speaker(new ShippedVoice()).SecondsToSay(words);

            Assert.Equal(new Speaker(new ShippedVoice()).Say(words).Sound.Seconds, before, 2);
        }
    }

    [Fact]
    public void Her_own_recordings_come_first_and_what_is_missing_there_the_next_voice_says()
    {
        using Folder folder = new();
        folder.Put("Vine-Right.wav", Recording(0.5, 0.3, 0.4));
        folder.Put("rock, recover.wav", Recording(0.5, 0.1, 0.77));
        Speaker speaker = new(RecordedVoice.OfFolder(folder.Path), new ShippedVoice());

        Assert.InRange(speaker.Say("vine right").Sound.Seconds, 0.4, 0.44);
        Assert.InRange(speaker.SecondsToSay("rock, recover"), 0.77, 0.81);
        Assert.Equal(new ShippedVoice().SecondsOf("coaster")!.Value, speaker.Say("coaster").Sound.Seconds, 3);
    }

    [Fact]
    public void Recordings_that_cannot_be_used_are_told_and_the_next_voice_says_their_words()
    {
        using Folder folder = new();
        folder.Put("coaster.wav", new MonoAudio(new float[Rate], Rate));
        File.WriteAllText(System.IO.Path.Combine(folder.Path, "vine.mp3"), "this is no sound");
        RecordedVoice hers = RecordedVoice.OfFolder(folder.Path);
        Speaker speaker = new(hers, new ShippedVoice());

        Assert.Empty(speaker.Say("vine").Unspoken);
        Assert.Empty(speaker.Say("coaster").Unspoken);

        Assert.Equal(2, hers.Troubles.Count());
        Assert.StartsWith("coaster.wav: nothing is to be heard", hers.Troubles.First(), StringComparison.Ordinal);
        Assert.StartsWith("vine.mp3: This is not a sound file", hers.Troubles.Last(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_folder_that_is_none_or_holds_no_sound_gets_a_sentence()
    {
        using Folder folder = new();

        Assert.Equal("There is no such folder of recordings.", Assert.Throws<AudioException>(() => RecordedVoice.OfFolder(folder.Path + "x")).Message);
        Assert.StartsWith("There is no sound file in this folder.", Assert.Throws<AudioException>(() => RecordedVoice.OfFolder(folder.Path)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_voice_of_the_machine_is_a_program_that_writes_a_sound_file()
    {
        SystemVoice? voice = SystemVoice.TryFind();
        Assert.SkipWhen(voice is null, "There is no program that speaks on this machine.");

        MonoAudio said = voice.Say("vine right")!;

        Assert.Equal(Rate, said.Rate);
        Assert.InRange(said.Seconds, 0.2, 2.5);
        Assert.InRange(Measured.Onset(said.Samples, Rate, 0, 1, 0.004f), 0, 0.01);
        Assert.Equal(said.Seconds, voice.SecondsOf("vine right"));
    }

    [Fact]
    public void Without_a_program_there_is_no_voice_of_the_machine_and_one_that_fails_says_nothing()
    {
        Assert.Null(SystemVoice.TryFind(_ => null));
        Assert.Null(SystemVoice.TryFind(_ => "/no/such/program")!.Say("vine right"));
        Assert.Empty(new Speaker(SystemVoice.TryFind(_ => "/no/such/program")!, new ShippedVoice()).Say("vine right").Unspoken);
    }

    // Silence, then a voiced sound of known length, then silence.
    private static MonoAudio Recording(double strength, double silence, double seconds, double hiss = 0)
    {
        Random random = new(5);
        int from = (int)(silence * Rate);
        int until = from + (int)(seconds * Rate);
        float[] samples = new float[until + Rate];
        for (int i = 0; i < samples.Length; i++)
        {
            double voiced = i >= from && i < until ? strength * (Math.Sin(2 * Math.PI * 180 * i / Rate) + (0.4 * Math.Sin(2 * Math.PI * 1260 * i / Rate))) / 1.4 : 0;
            samples[i] = (float)(voiced + (hiss * ((2 * random.NextDouble()) - 1)));
        }

        return new MonoAudio(samples, Rate);
    }

    private sealed class Folder : IDisposable
    {
        public string Path { get; } = Directory.CreateTempSubdirectory("scuff-voice-").FullName;

        public void Put(string name, MonoAudio sound)
        {
            using FileStream file = File.Create(System.IO.Path.Combine(Path, name));
            new StereoSound(sound.Samples, sound.Samples, sound.Rate).WriteWav(file);
        }

        public void Dispose() => Directory.Delete(Path, recursive: true);
    }
}
