using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>FLAC: each part of RFC 9639 that an encoder may use, and what happens to damage.</summary>
public sealed class FlacTests
{
    private const int Rate = 44_100;

    public static TheoryData<int, int, int> Kinds()
    {
        TheoryData<int, int, int> kinds = [];
        foreach (int kind in (int[])[1, 8, 9, 10, 11, 12, 32, 33, 35, 43, 63])
        {
            foreach (int bits in (int[])[8, 12, 16, 20, 24, 32])
            {
                kinds.Add(kind, bits, kind % 4 == 0 ? 0 : 7 + (kind % 4));
            }
        }

        return kinds;
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Every_kind_of_subframe_comes_out_as_it_went_in(int kind, int bits, int stereo)
    {
        int[][] sides = [Sounds.Numbers(1_000, bits, 1), Sounds.Numbers(1_000, bits, 2)];
        byte[] file = FlacFile.Of(sides, bits, Rate, new FlacShape(kind, stereo, Method: bits > 16 ? 1 : 0));

        HeardFile heard = Read(file);

        Assert.Equal(Sounds.Mean(sides, bits), heard.Audio.Samples);
        Assert.Equal(("FLAC", 2, Rate), (heard.Tags.Format, heard.Tags.Channels, heard.Tags.Rate));
        Assert.Null(heard.Warning);
    }

    public static TheoryData<string> Shapes() => [.. ShapesByName.Keys];

    private static readonly Dictionary<string, FlacShape> ShapesByName = new(StringComparer.Ordinal)
    {
        ["length unknown"] = new(KnowsLength: false),
        ["blocks numbered by their first sample"] = new(Variable: true),
        ["plain numbers left over"] = new(Escape: true),
        ["plain numbers left over, long parameters"] = new(Escape: true, Method: 1),
        ["one partition"] = new(Partitions: 0),
        ["sixteen partitions"] = new(Partitions: 4),
        ["blocks of 16"] = new(Block: 16, Partitions: 0),
        ["one block for all"] = new(Block: 4_096),
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    public void Every_way_to_write_it_comes_out_as_it_went_in(string shape)
    {
        int[][] sides = [Sounds.Numbers(3_001, 16, 3), Sounds.Numbers(3_001, 16, 4)];

        HeardFile heard = Read(FlacFile.Of(sides, 16, Rate, ShapesByName[shape]));

        Assert.Equal(Sounds.Mean(sides, 16), heard.Audio.Samples);
    }

    [Fact]
    public void Low_bits_that_are_never_used_are_put_back()
    {
        int[][] sides = [[.. Sounds.Numbers(500, 16, 5).Select(v => v & ~7)]];

        Assert.Equal(Sounds.Mean(sides, 16), Read(FlacFile.Of(sides, 16, Rate, new FlacShape(Wasted: 3))).Audio.Samples);
    }

    [Fact]
    public void A_constant_is_one_number()
    {
        int[][] sides = [[.. Enumerable.Repeat(-1234, 500)]];

        Assert.Equal(Sounds.Mean(sides, 16), Read(FlacFile.Of(sides, 16, Rate, new FlacShape(Kind: 0))).Audio.Samples);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(8)]
    public void Any_number_of_channels_is_averaged(int channels)
    {
        int[][] sides = [.. Enumerable.Range(0, channels).Select(c => Sounds.Numbers(700, 16, c))];

        Assert.Equal(Sounds.Mean(sides, 16), Read(FlacFile.Of(sides, 16, Rate, new FlacShape())).Audio.Samples);
    }

    [Fact]
    public void Its_comments_name_title_and_artist_in_any_case()
    {
        byte[] file = FlacFile.Of([Sounds.Numbers(200, 16, 1)], 16, Rate, new FlacShape(), "title=Käsekrainer", "Artist=Öl", "ALBUM=Set=2", "TITLE=second");

        AudioTags tags = Read(file).Tags;

        Assert.Equal(("Käsekrainer", "Öl", "Set=2"), (tags.Title, tags.Artist, tags.Album));
    }

    [Fact]
    public void A_damaged_frame_is_silence_and_the_rest_keeps_its_place()
    {
        int[][] sides = [Sounds.Numbers(1_920, 16, 6)];
        byte[] file = FlacFile.Of(sides, 16, Rate, new FlacShape(Kind: 1));

        // blocks of 192 verbatim samples: a byte in the middle of the fifth
        file[file.Length - (5 * 400)] ^= 0x55;
        HeardFile heard = Read(file);

        float[] expected = Sounds.Mean(sides, 16);
        Assert.Equal(expected.Length, heard.Audio.Samples.Length);
        int[] wrong = [.. Enumerable.Range(0, expected.Length).Where(i => expected[i] != heard.Audio.Samples[i])];
        Assert.InRange(wrong.Length, 180, 192);
        Assert.All(wrong, i => Assert.Equal(0, heard.Audio.Samples[i]));
        Assert.NotNull(heard.Warning);
    }

    [Fact]
    public void A_file_cut_short_gives_what_is_there_and_says_so()
    {
        int[][] sides = [Sounds.Numbers(44_100, 16, 7)];
        byte[] file = FlacFile.Of(sides, 16, Rate, new FlacShape(Kind: 1, Block: 4_410));

        HeardFile heard = Read(file[..(file.Length / 2)]);

        Assert.Equal(Sounds.Mean(sides, 16)[..17_640], heard.Audio.Samples);
        Assert.Equal("The file ends early: 0.4 of 1.0 seconds could be read.", heard.Warning);
    }

    private static HeardFile Read(byte[] file)
    {
        using MemoryStream stream = new(file);
        return AudioFile.Read(stream, "", Rate);
    }
}
