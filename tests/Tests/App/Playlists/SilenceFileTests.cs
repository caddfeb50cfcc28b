using NAudio.Wave;
using Scuff.App.Playlists;

namespace Tests.App.Playlists;

public sealed class SilenceFileTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(40)]
    [InlineData(SilenceFile.LongestOfUsualRate)]
    [InlineData(SilenceFile.LongestOfUsualRate + 1)]
    [InlineData(900)]
    public async Task Another_reader_hears_exactly_so_many_seconds_of_nothing(int seconds)
    {
        using MemoryStream file = new();
        await SilenceFile.WriteAsync(file, seconds, TestContext.Current.CancellationToken);
        file.Position = 0;

        using WaveFileReader reader = new(file);

        Assert.Equal(TimeSpan.FromSeconds(seconds), reader.TotalTime);
        Assert.Equal((8, 1), (reader.WaveFormat.BitsPerSample, reader.WaveFormat.Channels));
        Assert.Equal(seconds > SilenceFile.LongestOfUsualRate ? SilenceFile.LongRate : SilenceFile.UsualRate, reader.WaveFormat.SampleRate);
        byte[] samples = new byte[(int)reader.Length];
        reader.ReadExactly(samples);
        Assert.All(samples.Chunk(10_007), chunk => Assert.False(chunk.AsSpan().ContainsAnyExcept((byte)128)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(86_401)]
    public async Task No_silence_or_more_than_a_day_of_it_is_refused(int seconds)
        => await Assert.ThrowsAsync<ArgumentOutOfRangeException>(() => SilenceFile.WriteAsync(Stream.Null, seconds, TestContext.Current.CancellationToken));
}
