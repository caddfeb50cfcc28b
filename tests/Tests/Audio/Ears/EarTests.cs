using Scuff.Audio.Ears;
using Scuff.Audio.Signals;

namespace Tests.Audio.Ears;

/// <summary>The ear answers for any length, and the pieces it works in do not show.</summary>
public sealed class EarTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(239)]
    [InlineData(241)]
    [InlineData(511)]
    [InlineData(512)]
    [InlineData(513)]
    [InlineData(1025)]
    public void Every_length_is_answered_with_finite_numbers(int frames)
    {
        Activations heard = Ear.ListenWithAll(Spectrum(frames));
        foreach (float[] head in (float[][])[heard.Beat, heard.One, heard.Eight, heard.Start, heard.Stopped])
        {
            Assert.Equal((frames + 1) / 2, head.Length);
            Assert.All(head, v => Assert.True(float.IsFinite(v)));
        }
    }

    [Fact]
    public void No_sound_is_answered_with_nothing() => Assert.Empty(Ear.ListenWithAll(Spectrum(0)).Beat);

    [Fact]
    public void Silence_far_after_a_sound_changes_no_answer_to_it()
    {
        // ten layers of five taps see at most two times 1023 steps to a side, the layers before them a few frames more
        const int reach = 2060;
        float[] noise = MadeSounds.Noise(60, 0.3, 9).Samples;
        Activations alone = Ear.ListenWithAll(Spectrum(noise));
        Activations followed = Ear.ListenWithAll(Spectrum([.. noise, .. new float[10 * Hearing.Rate]]));
        int sure = alone.Beat.Length - reach;
        Assert.InRange(sure, 400, 3000);
        for (int step = 0; step < sure; step++)
        {
            Assert.Equal(alone.Beat[step], followed.Beat[step], 1e-3f);
            Assert.Equal(alone.Start[step], followed.Start[step], 1e-3f);
        }
    }

    [Fact]
    public void Where_the_pieces_begin_changes_no_answer()
    {
        // the same noise after a silence longer than the ear reaches, and after one that is no multiple of a piece longer
        float[] noise = MadeSounds.Noise(10, 0.3, 9).Samples;
        Activations early = Ear.ListenWithAll(Spectrum([.. new float[4200 * Hearing.Hop], .. noise]));
        Activations late = Ear.ListenWithAll(Spectrum([.. new float[4500 * Hearing.Hop], .. noise]));
        for (int step = 2080; step < 2100 + 490; step++)
        {
            Assert.Equal(early.Beat[step], late.Beat[step + 150], 1e-3f);
            Assert.Equal(early.Eight[step], late.Eight[step + 150], 1e-3f);
        }
    }

    private static Spectrogram Spectrum(int frames)
        => Spectrum(frames == 0 ? [] : MadeSounds.Noise((((frames - 1) * Hearing.Hop) + 10.0) / Hearing.Rate, 0.3, 9).Samples);

    [Theory]
    [InlineData("ear-6", 61)]
    [InlineData("ear-9", 34)]
    public void It_answers_what_the_network_written_in_plain_loops_answers(string name, int frames)
    {
        byte[] weights = Weights(name);
        Spectrogram spectrum = Spectrum(frames);
        Activations heard = Ear.From(weights).Listen(spectrum);
        double[][] expected = new PlainEar(weights).Listen(spectrum);
        float[][] heads = [heard.Beat, heard.One, heard.Eight, heard.Start, heard.Stopped];
        Assert.Equal(expected.Length, heads.Length);
        for (int h = 0; h < heads.Length; h++)
        {
            Assert.Equal(expected[h].Length, heads[h].Length);
            Assert.All(heads[h].Zip(expected[h]), p => Assert.Equal(p.Second, p.First, 1e-3));
        }
    }

    private static byte[] Weights(string name)
    {
        using Stream stream = typeof(Ear).Assembly.GetManifestResourceStream($"data/ear/{name}.bin")!;
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    // A gain of 1, so that silence beside a sound does not change how loud it is heard.
    private static Spectrogram Spectrum(float[] samples) => Spectrogram.Of(new MonoAudio(samples, Hearing.Rate), 1, 1024, Hearing.Hop, 21, 10_000);
}
