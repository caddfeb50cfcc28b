using System.Text;
using NAudio.Wave;
using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>WAV and AIFF: every width, every order of bytes, sizes that were never filled in, and tags.</summary>
public sealed class PlainFileTests
{
    private const int Rate = 44_100;

    [Theory]
    [InlineData(8, 1, false)]
    [InlineData(16, 1, false)]
    [InlineData(16, 2, false)]
    [InlineData(16, 8, true)]
    [InlineData(24, 2, false)]
    [InlineData(24, 6, true)]
    [InlineData(32, 2, true)]
    [InlineData(12, 2, false)]
    [InlineData(20, 2, true)]
    public void Whole_numbers_of_any_width_come_out_as_they_went_in(int bits, int channels, bool extensible)
    {
        int[][] sides = Sides(channels, bits);
        byte[] file = WavFile.Of([WavFile.Format(1, channels, Rate, bits, extensible: extensible), WavFile.Chunk("data", WavFile.Samples(sides, bits))]);

        HeardFile heard = Read(file);

        Assert.Equal(Sounds.Mean(sides, bits), heard.Audio.Samples);
        Assert.Equal((Rate, channels, "WAV"), (heard.Tags.Rate, heard.Tags.Channels, heard.Tags.Format));
        Assert.Null(heard.Warning);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(8)]
    public void Floats_come_out_as_they_went_in_and_what_is_no_number_is_silent(int bytes)
    {
        float[] samples = [0.25f, -0.75f, 1.5f, float.NaN, float.PositiveInfinity, -0.125f];
        byte[] data = [.. samples.SelectMany(s => bytes == 4 ? BitConverter.GetBytes(s) : BitConverter.GetBytes((double)s))];
        byte[] file = WavFile.Of([WavFile.Format(3, 1, Rate, 8 * bytes), WavFile.Chunk("data", data)]);

        Assert.Equal([0.25f, -0.75f, 1.5f, 0, 0, -0.125f], Read(file).Audio.Samples);
    }

    [Fact]
    public void Samples_with_the_high_byte_first_are_read_too()
    {
        int[][] sides = Sides(2, 16);
        byte[] file = WavFile.Of(
            [WavFile.Format(1, 2, Rate, 16, big: true), WavFile.Chunk("data", WavFile.Samples(sides, 16, big: true), big: true)], "RIFX");

        Assert.Equal(Sounds.Mean(sides, 16), Read(file).Audio.Samples);
    }

    [Fact]
    public void More_than_four_gigabytes_are_announced_in_a_chunk_of_their_own()
    {
        int[][] sides = Sides(1, 16);
        byte[] data = WavFile.Samples(sides, 16);
        byte[] wide = WavFile.Chunk("ds64", [.. WavFile.Number(0, 8), .. WavFile.Number(data.Length, 8), .. new byte[12]]);
        byte[] file = WavFile.Of([wide, WavFile.Format(1, 1, Rate, 16), WavFile.Chunk("data", data, 0xFFFFFFFF), WavFile.Chunk("LIST", Info("INAM", "Fog"))], "RF64");

        HeardFile heard = Read(file);

        Assert.Equal(Sounds.Mean(sides, 16), heard.Audio.Samples);
        Assert.Equal("Fog", heard.Tags.Title);
    }

    [Theory]
    [InlineData(0L)]
    [InlineData(0xFFFFFFFFL)]
    public void A_streamed_file_whose_size_was_never_filled_in_is_read_to_its_end(long size)
    {
        int[][] sides = Sides(2, 16);
        byte[] file = WavFile.Of([WavFile.Format(1, 2, Rate, 16), WavFile.Chunk("data", WavFile.Samples(sides, 16), size)]);

        HeardFile heard = Read(file);

        Assert.Equal(Sounds.Mean(sides, 16), heard.Audio.Samples);
        Assert.Null(heard.Warning);
    }

    [Fact]
    public void Odd_chunks_are_padded_and_tags_may_stand_before_and_after_the_sound()
    {
        int[][] sides = Sides(1, 8, 101);
        byte[] file = WavFile.Of(
        [
            WavFile.Chunk("junk", new byte[7]), WavFile.Format(1, 1, Rate, 8), WavFile.Chunk("LIST", Info("IART", "The Tin Lanterns")),
            WavFile.Chunk("data", WavFile.Samples(sides, 8)), WavFile.Chunk("LIST", Info("INAM", "Grève")),
        ]);

        HeardFile heard = Read(file);

        Assert.Equal(101, heard.Audio.Samples.Length);
        Assert.Equal(("Grève", "The Tin Lanterns"), (heard.Tags.Title, heard.Tags.Artist));
    }

    // ITU-T G.711: the ends of both scales, and silence.
    [Theory]
    [InlineData(6, 0xAA, 4032 / 4096.0)]
    [InlineData(6, 0x2A, -4032 / 4096.0)]
    [InlineData(6, 0xD5, 1 / 4096.0)]
    [InlineData(7, 0x80, 8031 / 8192.0)]
    [InlineData(7, 0x00, -8031 / 8192.0)]
    [InlineData(7, 0xFF, 0.0)]
    public void Telephone_codes_are_read(int tag, int code, double expected)
        => Assert.Equal((float)expected, Read(WavFile.Of([WavFile.Format(tag, 1, 8_000, 8), WavFile.Chunk("data", [(byte)code])]), 8_000).Audio.Samples[0], 6);

    [Theory]
    [InlineData(8, null)]
    [InlineData(16, null)]
    [InlineData(24, null)]
    [InlineData(32, "NONE")]
    [InlineData(16, "sowt")]
    public void Aiff_comes_out_as_it_went_in_with_its_name_and_author(int bits, string? code)
    {
        int[][] sides = Sides(2, bits);
        byte[] name = WavFile.Chunk("NAME", Encoding.ASCII.GetBytes("Harbour Light"), big: true);
        byte[] author = WavFile.Chunk("AUTH", Encoding.ASCII.GetBytes("The Tin Lanterns"), big: true);

        HeardFile heard = Read(WavFile.Aiff(sides, bits, Rate, code, name, author));

        Assert.Equal(Sounds.Mean(sides, bits), heard.Audio.Samples);
        Assert.Equal(("Harbour Light", "The Tin Lanterns", "AIFF", Rate), (heard.Tags.Title, heard.Tags.Artist, heard.Tags.Format, heard.Tags.Rate));
    }

    [Fact]
    public void Another_reader_hears_the_same_in_wav_and_aiff()
    {
        // a second opinion: NAudio.Core
        int[][] sides = Sides(2, 24);
        byte[] wav = WavFile.Of([WavFile.Format(1, 2, Rate, 24), WavFile.Chunk("data", WavFile.Samples(sides, 24))]);
        byte[] aiff = WavFile.Aiff(sides, 24, Rate);

        using WaveFileReader wavReader = new(new MemoryStream(wav));
        using AiffFileReader aiffReader = new(new MemoryStream(aiff));
        float[] fromWav = Second(wavReader.ToSampleProvider());
        float[] fromAiff = Second(aiffReader.ToSampleProvider());

        Assert.Equal(Sounds.Mean(sides, 24).Length, fromWav.Length);
        Assert.Equal(-300, Sounds.Difference(Read(wav).Audio.Samples, fromWav, 0));
        Assert.Equal(-300, Sounds.Difference(Read(aiff).Audio.Samples, fromAiff, 0));
    }

    private static float[] Second(ISampleProvider provider)
    {
        float[] all = new float[20_000];
        int count = provider.Read(all);
        return [.. Enumerable.Range(0, count / 2).Select(i => (all[2 * i] + all[(2 * i) + 1]) / 2)];
    }

    private static byte[] Info(string id, string text) => [.. "INFO"u8, .. WavFile.Chunk(id, [.. Encoding.UTF8.GetBytes(text), 0])];

    private static int[][] Sides(int channels, int bits, int count = 1_000) => [.. Enumerable.Range(1, channels).Select(c => Sounds.Numbers(count, bits, c))];

    private static HeardFile Read(byte[] file, int rate = Rate)
    {
        using MemoryStream stream = new(file);
        return AudioFile.Read(stream, "", rate);
    }
}
