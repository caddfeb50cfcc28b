using System.Runtime.InteropServices;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;

namespace Tests.Audio.Decoding;

public sealed class SampleIntakeTests
{
    private static readonly float[] Tone = MadeSounds.Tone(1, 440, 0.5).Samples;

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(7)]
    [InlineData(4096)]
    [InlineData(100_000)]
    public void It_does_not_matter_where_the_pieces_are_cut(int size)
    {
        SampleIntake intake = new(Hearing.Rate, Hearing.Rate);
        byte[] bytes = MemoryMarshal.AsBytes(Tone.AsSpan()).ToArray();
        foreach (byte[] piece in bytes.Chunk(size))
        {
            intake.Add(piece);
        }

        Assert.Equal(Tone, intake.Finish().Samples);
    }

    [Fact]
    public void Another_rate_is_brought_to_that_of_the_ear()
    {
        MonoAudio wide = new(Resampler.Convert(Tone, Hearing.Rate, 48_000), 48_000);
        SampleIntake intake = new(48_000, Hearing.Rate);
        intake.Add(MemoryMarshal.AsBytes(wide.Samples.AsSpan()));

        MonoAudio audio = intake.Finish();

        Assert.Equal(Hearing.Rate, audio.Rate);
        Assert.InRange(audio.Seconds, 0.999, 1.001);
        Assert.All(Enumerable.Range(1000, 20_000), i => Assert.InRange(audio.Samples[i] - Tone[i], -0.002f, 0.002f));
    }

    [Fact]
    public void What_no_music_has_is_tamed()
    {
        SampleIntake intake = new(Hearing.Rate, Hearing.Rate);
        float[] wild = [float.NaN, float.PositiveInfinity, -1e30f, 0.25f];
        intake.Add(MemoryMarshal.AsBytes(wild.AsSpan()));

        Assert.Equal([0, 16, -16, 0.25f], intake.Finish().Samples);
    }

    [Fact]
    public void Nothing_and_half_a_sample_are_refused_in_a_sentence()
    {
        SampleIntake half = new(Hearing.Rate, Hearing.Rate);
        half.Add([0, 0]);

        Assert.Equal("The sound did not arrive whole. Try again.", Assert.Throws<AudioException>(half.Finish).Message);
        Assert.Equal("There was no sound in this track.", Assert.Throws<AudioException>(new SampleIntake(8_000, Hearing.Rate).Finish).Message);
    }
}
