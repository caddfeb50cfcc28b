using NLayer;
using Scuff.Audio.Decoding;
using Scuff.Audio.Signals;

namespace Tests.Audio.Decoding;

/// <summary>MP3, Vorbis and Opus: what was encoded comes back, at the sample where a browser plays it.</summary>
public sealed class PackedFileTests
{
    // Samples by which an MP3 decoder is late when nobody tells it: the encoder's 576 and its own 529.
    private const int Untold = 1_105;

    [Theory]
    [InlineData("bursts-lame.mp3", 44_100, 0, 66_150, "MP3", 2)]
    [InlineData("bursts-lame-vbr.mp3", 44_100, 0, 66_150, "MP3", 2)]
    [InlineData("bursts-lavc.mp3", 44_100, 0, 66_150, "MP3", 2)]
    [InlineData("bursts-no-tag.mp3", 44_100, Untold, 67_968, "MP3", 2)]
    [InlineData("bursts-low-rate.mp3", 22_050, Untold, 34_560, "MP3", 1)]
    [InlineData("bursts-vorbis.ogg", 44_100, 0, 66_150, "Ogg Vorbis", 2)]
    [InlineData("bursts-opus.ogg", 48_000, 0, 72_000, "Ogg Opus", 2)]
    public void Every_burst_is_where_it_was(string name, int rate, int late, int length, string format, int channels)
    {
        float[] made = Sounds.Mean(Sounds.Bursts(rate));

        HeardFile heard = AudioFile.Read(Sounds.Fixture(name), "", rate);

        Assert.Equal(late, Sounds.Lag(heard.Audio.Samples, made, Untold + 100));
        Assert.Equal(length, heard.Audio.Samples.Length);

        // how near a codec of few bits comes
        Assert.InRange(Sounds.Difference(heard.Audio.Samples, made, late), -60, -12);
        Assert.Equal((format, rate, channels, (double)length / rate), (heard.Tags.Format, heard.Tags.Rate, heard.Tags.Channels, heard.Tags.Seconds));
        Assert.Null(heard.Warning);
    }

    [Fact]
    public void Six_channels_of_opus_are_averaged()
    {
        float[][] sides = Sounds.Bursts(48_000);
        float[] expected = [.. sides[0].Zip(sides[1], (l, r) => ((2.5f * l) + (2.2f * r)) / 6)];

        HeardFile heard = AudioFile.Read(Sounds.Fixture("bursts-opus-six.ogg"), "", 48_000);

        Assert.Equal(6, heard.Tags.Channels);
        Assert.Equal(0, Sounds.Lag(heard.Audio.Samples, expected, 20));
        Assert.InRange(Sounds.Difference(heard.Audio.Samples, expected, 0), -60, -12);
    }

    [Theory]
    [InlineData("bursts-lame.mp3", "Low Tide")]
    [InlineData("bursts-lame-vbr.mp3", null)]
    [InlineData("bursts-lavc.mp3", null)]
    [InlineData("bursts-vorbis.ogg", null)]
    [InlineData("bursts-opus.ogg", null)]
    public void Title_and_artist_are_read_from_its_tags(string name, string? album)
    {
        AudioTags tags = AudioFile.Read(Sounds.Fixture(name), "").Tags;

        Assert.Equal(("Harbour Light", "The Tin Lanterns", album), (tags.Title, tags.Artist, tags.Album));
    }

    [Theory]
    [InlineData("bursts-lame.mp3")]
    [InlineData("bursts-lavc.mp3")]
    [InlineData("bursts-no-tag.mp3")]
    [InlineData("bursts-low-rate.mp3")]
    public void Another_decoder_hears_the_same_mp3(string name)
    {
        // a second opinion: NLayer, which cuts other lengths off the front
        using MpegFile other = new(Sounds.Fixture(name));
        float[] sides = new float[200_000];
        int count = other.ReadSamples(sides, 0, sides.Length) / other.Channels;
        float[] expected = [.. Enumerable.Range(0, count).Select(i => other.Channels == 1 ? sides[i] : (sides[2 * i] + sides[(2 * i) + 1]) / 2)];

        float[] heard = AudioFile.Read(Sounds.Fixture(name), "", other.SampleRate).Audio.Samples;

        int lag = Sounds.Lag(heard, expected, Untold + 1);
        Assert.InRange(Sounds.Difference(heard, expected, lag), -300, -60);
    }

    [Fact]
    public void At_another_rate_the_bursts_stay_at_their_second()
    {
        float[] made = Resampler.Convert(Sounds.Mean(Sounds.Bursts(44_100)), 44_100, 22_050);

        foreach (string name in (string[])["bursts-lame.mp3", "bursts-lavc.mp3", "bursts-vorbis.ogg", "bursts-opus.ogg"])
        {
            float[] heard = AudioFile.Read(Sounds.Fixture(name), "").Audio.Samples;

            Assert.Equal(0, Sounds.Lag(heard, made, 30));
            Assert.Equal(made.Length, heard.Length);
        }
    }

    [Fact]
    public void Streams_chained_one_behind_the_other_sound_one_after_the_other()
    {
        foreach ((string name, int rate, int length) in ((string, int, int)[])[("bursts-vorbis.ogg", 44_100, 66_150), ("bursts-opus.ogg", 48_000, 72_000)])
        {
            byte[] one = File.ReadAllBytes(Sounds.Fixture(name));
            byte[] other = [.. one];
            OggPages.ChangeSerial(other, 77);
            float[] alone = Heard(one, rate).Audio.Samples;

            float[] both = Heard([.. one, .. other], rate).Audio.Samples;

            Assert.Equal(2 * length, both.Length);
            Assert.Equal(alone, both[..length]);
            Assert.Equal(alone, both[length..]);
        }
    }

    [Theory]
    [InlineData("bursts-lame.mp3")]
    [InlineData("bursts-vorbis.ogg")]
    [InlineData("bursts-opus.ogg")]
    public void A_file_cut_short_gives_what_is_there_and_says_so(string name)
    {
        byte[] whole = File.ReadAllBytes(Sounds.Fixture(name));

        HeardFile heard = Heard(whole[..(whole.Length * 3 / 4)], 22_050);

        Assert.InRange(heard.Audio.Seconds, 0.6, 1.4);
        Assert.StartsWith("The file ends early:", heard.Warning, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("bursts-vorbis.ogg", 44_100)]
    [InlineData("bursts-opus.ogg", 48_000)]
    public void A_last_page_that_ends_before_it_begins_ends_the_reading(string name, int rate)
    {
        // once made a decoder run in a circle
        byte[] file = File.ReadAllBytes(Sounds.Fixture(name));
        BitConverter.GetBytes(3_000L).CopyTo(file, file.AsSpan().LastIndexOf("OggS"u8) + 6);
        OggPages.Mend(file);

        Assert.InRange(Heard(file, rate).Audio.Samples.Length, 1, 72_000);
    }

    [Fact]
    public void Before_an_mp3_there_may_be_something_else()
    {
        byte[] file = File.ReadAllBytes(Sounds.Fixture("bursts-lame-vbr.mp3"));
        byte[] junk = new byte[5_000];
        new Random(5).NextBytes(junk);

        HeardFile heard = Heard([.. junk, .. file], 44_100);

        Assert.Equal(Heard(file, 44_100).Audio.Samples, heard.Audio.Samples);
    }

    [Fact]
    public void In_the_middle_of_an_mp3_there_may_be_something_else()
    {
        byte[] file = File.ReadAllBytes(Sounds.Fixture("bursts-no-tag.mp3"));
        byte[] junk = new byte[3_000];

        HeardFile heard = Heard([.. file[..6_000], .. junk, .. file[6_000..]], 44_100);

        Assert.InRange(heard.Audio.Samples.Length, 67_968 - (3 * 1152), 67_968);
        Assert.NotNull(heard.Warning);
    }

    private static HeardFile Heard(byte[] file, int rate)
    {
        using MemoryStream stream = new(file);
        return AudioFile.Read(stream, "", rate);
    }
}
