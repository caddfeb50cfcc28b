using Scuff.Audio.Decoding;
using Scuff.Audio.Songs;

namespace Tests.Audio.Decoding;

/// <summary>Both channels of a file, against the sound that was put into it.</summary>
public sealed class SidesTests
{
    [Theory]
    [InlineData("bursts-lame.mp3")]
    [InlineData("bursts-lame-vbr.mp3")]
    [InlineData("bursts-lavc.mp3")]
    [InlineData("bursts-vorbis.ogg")]
    [InlineData("bursts-opus.ogg")]
    public void Each_side_of_a_packed_file_is_what_was_put_there_and_on_time(string name)
    {
        int rate = AudioFile.Read(Sounds.Fixture(name)).Tags.Rate;
        float[][] sent = Sounds.Bursts(rate);

        StereoSound read = AudioFile.ReadSides(Sounds.Fixture(name), "", rate).Sound;

        Assert.Equal(0, Sounds.Lag(read.Left, sent[0], 40));
        Assert.Equal(0, Sounds.Lag(read.Right, sent[1], 40));
        Assert.InRange(Sounds.Difference(read.Left, sent[0], 0), -300, -20);
        Assert.InRange(Sounds.Difference(read.Right, sent[1], 0), -300, -20);
    }

    [Theory]
    [InlineData("bursts-lame.mp3")]
    [InlineData("bursts-lame-vbr.mp3")]
    [InlineData("bursts-lavc.mp3")]
    [InlineData("bursts-no-tag.mp3")]
    [InlineData("bursts-low-rate.mp3")]
    [InlineData("bursts-vorbis.ogg")]
    [InlineData("bursts-opus.ogg")]
    [InlineData("bursts-opus-six.ogg")]
    public void The_mean_of_both_sides_is_what_the_analysis_hears(string name)
    {
        HeardFile heard = AudioFile.Read(Sounds.Fixture(name));
        float[] mean = AudioFile.Read(Sounds.Fixture(name), heard.Tags.Rate).Audio.Samples;

        StereoSound read = AudioFile.ReadSides(Sounds.Fixture(name), "", heard.Tags.Rate).Sound;

        Assert.Equal(mean.Length, read.Left.Length);

        // a frame that changes its blocks on one side only is taken line by line for the mean, and exactly for a side
        Assert.InRange(Sounds.Difference(Sounds.Mean([read.Left, read.Right]), mean, 0), -300, -55);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(8)]
    [InlineData(9)]
    [InlineData(10)]
    public void Each_side_of_a_file_without_loss_is_exact(int stereo)
    {
        int[][] sent = [Sounds.Numbers(9_000, 16, 1), Sounds.Numbers(9_000, 16, 2)];
        using TemporaryFile flac = new(FlacFile.Of(sent, 16, 44_100, new FlacShape(Stereo: stereo)));

        StereoSound read = AudioFile.ReadSides(flac.Path, "", 44_100).Sound;

        Assert.Equal(sent[0].Select(v => v / 32768f), read.Left);
        Assert.Equal(sent[1].Select(v => v / 32768f), read.Right);
    }

    [Fact]
    public void A_plain_file_of_two_channels_of_one_and_of_none_is_read()
    {
        float[][] sent = Sounds.Bursts(44_100);
        using TemporaryFile two = new(WavFile.Plain(sent, 44_100));
        using TemporaryFile one = new(WavFile.Plain([sent[0]], 44_100));

        HeardSides both = AudioFile.ReadSides(two.Path);
        StereoSound single = AudioFile.ReadSides(one.Path).Sound;

        Assert.InRange(Sounds.Difference(both.Sound.Left, sent[0], 0), -300, -70);
        Assert.InRange(Sounds.Difference(both.Sound.Right, sent[1], 0), -300, -70);
        Assert.Equal(("WAV", 2), (both.Tags.Format, both.Tags.Channels));
        Assert.Equal(single.Left, single.Right);
        Assert.Equal("There is no such file.", Assert.Throws<AudioException>(() => AudioFile.ReadSides(two.Path + "x")).Message);
    }

    private sealed class TemporaryFile : IDisposable
    {
        private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scuff-sides-");

        public TemporaryFile(byte[] bytes)
        {
            Path = System.IO.Path.Combine(_folder.FullName, "sound");
            File.WriteAllBytes(Path, bytes);
        }

        public string Path { get; }

        public void Dispose() => _folder.Delete(recursive: true);
    }
}
