namespace Tests.Audio.Decoding;

/// <summary>Writes what the files in <c>Fixtures</c> were encoded from: <c>SCUFF_FIXTURES=folder</c> puts it there.</summary>
public sealed class FixtureMakerTests
{
    [Fact]
    public void The_sound_behind_the_fixtures_can_be_written()
    {
        string? folder = Environment.GetEnvironmentVariable("SCUFF_FIXTURES");
        Assert.SkipWhen(string.IsNullOrEmpty(folder), "SCUFF_FIXTURES names no folder.");
        foreach (int rate in (int[])[22_050, 44_100, 48_000])
        {
            File.WriteAllBytes(Path.Combine(folder, $"bursts-{rate}.wav"), WavFile.Plain(Sounds.Bursts(rate), rate));
        }
    }
}
