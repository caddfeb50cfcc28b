using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>What the files in <c>Fixtures</c> were encoded from: <c>SCUFF_FIXTURES=folder</c> puts it there.</summary>
public sealed class FixtureMakerTests
{
    [Theory]
    [InlineData(22_050)]
    [InlineData(44_100)]
    [InlineData(48_000)]
    public void The_sound_behind_the_fixtures_is_written_and_reads_back_as_it_was_made(int rate)
    {
        float[][] bursts = Sounds.Bursts(rate);
        byte[] file = WavFile.Plain(bursts, rate);
        if (Environment.GetEnvironmentVariable("SCUFF_FIXTURES") is { Length: > 0 } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, $"bursts-{rate}.wav"), file);
        }

        float[] read = AudioFile.Read(new MemoryStream(file), rate).Audio.Samples;

        Assert.Equal(bursts[0].Length, read.Length);
        for (int i = 0; i < read.Length; i++)
        {
            Assert.Equal(bursts.Average(channel => channel[i]), read[i], 1.0f / short.MaxValue);
        }
    }
}
