using System.Text;
using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>ID3 tags of every version and encoding before the sound, and what is wrong with some of them.</summary>
public sealed class Id3TagTests
{
    private const string Title = "Käpt'n Fiön ♪";

    public static TheoryData<int, int, bool, bool> Ways()
    {
        TheoryData<int, int, bool, bool> ways = [];
        foreach (int version in (int[])[2, 3, 4])
        {
            foreach (int encoding in (int[])[1, 2, 3])
            {
                ways.Add(version, encoding, false, false);
                ways.Add(version, encoding, true, false);
                ways.Add(version, encoding, false, true);
                ways.Add(version, encoding, true, true);
            }
        }

        return ways;
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Title_and_artist_are_read_in_every_version_and_encoding(int version, int encoding, bool unsync, bool picture)
    {
        byte[] body =
        [
            .. picture ? Frame(version, version == 2 ? "PIC" : "APIC", [.. Enumerable.Range(0, 3_000).Select(i => (byte)(i % 7 == 0 ? 0xFF : i % 7 == 1 ? 0 : i % 251))]) : [],
            .. Frame(version, version == 2 ? "TT2" : "TIT2", Text(encoding, Title)), .. Frame(version, version == 2 ? "TP1" : "TPE1", Text(encoding, "Öl")),
            .. new byte[20],
        ];

        AudioTags tags = Read(Tag(version, body, unsync)).Tags;

        Assert.Equal((Title, "Öl"), (tags.Title, tags.Artist));
    }

    [Fact]
    public void Old_text_is_latin_and_new_text_in_its_place_is_seen_through()
    {
        Assert.Equal("Öl", Read(Tag(3, Frame(3, "TIT2", [0, .. Encoding.Latin1.GetBytes("Öl")]))).Tags.Title);
        Assert.Equal("Öl", Read(Tag(3, Frame(3, "TIT2", [0, .. "Öl"u8]))).Tags.Title);
    }

    [Fact]
    public void A_tag_of_version_one_is_read_from_the_very_end()
    {
        byte[] file = [.. Sound(), .. Encoding.Latin1.GetBytes("TAG" + "Fog on the quay".PadRight(30, '\0') + "The Lanterns".PadRight(30) + new string('\0', 65))];

        AudioTags tags = Read([], file).Tags;

        Assert.Equal(("Fog on the quay", "The Lanterns"), (tags.Title, tags.Artist));
    }

    [Fact]
    public void Two_tags_may_follow_each_other_and_stand_before_flac()
    {
        byte[] flac = FlacFile.Of([Sounds.Numbers(500, 16, 1)], 16, 44_100, new FlacShape(), "TITLE=inside");
        byte[] before = [.. Tag(4, []), .. Tag(3, Frame(3, "TPE1", Text(3, "Öl")))];

        AudioTags tags = Read(before, flac).Tags;

        Assert.Equal(("inside", "Öl", "FLAC"), (tags.Title, tags.Artist, tags.Format));
    }

    [Fact]
    public void A_tag_that_claims_more_than_the_file_has_does_not_hide_the_sound()
    {
        byte[] tag = [.. "ID3"u8, 4, 0, 0, 0x7F, 0x7F, 0x7F, 0x7F];

        Assert.Equal(Read([]).Audio.Samples, Read(tag).Audio.Samples);
    }

    [Fact]
    public void A_frame_that_claims_more_than_its_tag_is_left_out()
    {
        byte[] body = [.. Frame(3, "TIT2", Text(3, "kept")), .. "TPE1"u8, 0x7F, 0xFF, 0xFF, 0xFF, 0, 0, 3, 65, 66];

        AudioTags tags = Read(Tag(3, body)).Tags;

        Assert.Equal(("kept", null), (tags.Title, tags.Artist));
    }

    [Fact]
    public void Control_characters_never_reach_a_title()
        => Assert.Equal("a b", Read(Tag(4, Frame(4, "TIT2", [3, .. "a\u001bb\0second"u8]))).Tags.Title);

    private static byte[] Tag(int version, byte[] body, bool unsync = false)
    {
        // version 4 marks each frame instead; the flag of the tag alone changes nothing there
        byte[] written = unsync && version < 4 ? Unsync(body) : body;
        return [.. "ID3"u8, (byte)version, 0, (byte)(unsync ? 0x80 : 0), .. SyncSafe(written.Length), .. written];
    }

    private static byte[] Frame(int version, string id, byte[] content) => version switch
    {
        2 => [.. Encoding.ASCII.GetBytes(id), .. WavFile.Number(content.Length, 3, true), .. content],
        3 => [.. Encoding.ASCII.GetBytes(id), .. WavFile.Number(content.Length, 4, true), 0, 0, .. content],
        _ => [.. Encoding.ASCII.GetBytes(id), .. SyncSafe(content.Length), 0, 0, .. content],
    };

    private static byte[] Text(int encoding, string text) => encoding switch
    {
        1 => [1, 0xFF, 0xFE, .. Encoding.Unicode.GetBytes(text)],
        2 => [2, .. Encoding.BigEndianUnicode.GetBytes(text)],
        _ => [3, .. Encoding.UTF8.GetBytes(text)],
    };

    private static byte[] SyncSafe(int size) => [(byte)((size >> 21) & 127), (byte)((size >> 14) & 127), (byte)((size >> 7) & 127), (byte)(size & 127)];

    private static byte[] Unsync(byte[] body) => [.. body.SelectMany((b, i) => b == 0xFF ? (byte[])[b, 0] : [b])];

    private static byte[] Sound() => File.ReadAllBytes(Sounds.Fixture("bursts-no-tag.mp3"));

    private static HeardFile Read(byte[] before, byte[]? sound = null)
    {
        using MemoryStream stream = new([.. before, .. sound ?? Sound()]);
        return AudioFile.Read(stream, "");
    }
}
