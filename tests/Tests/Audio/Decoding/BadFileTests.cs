using System.Text;
using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>What cannot be heard is refused with a sentence, what is odd is heard all the same, and nothing grows without end.</summary>
public sealed class BadFileTests
{
    private const string NotSound = "This is not a sound file that Scuff knows";

    private static byte[] Wav(long size, int rate = 44_100, int channels = 1, int bits = 16, int? container = null) => WavFile.Of(
    [
        WavFile.Format(1, channels, rate, bits, container), WavFile.Chunk("data", new byte[400], size),
    ]);

    public static TheoryData<string, string> Sentences() => new()
    {
        { "nothing", "The file is empty." },
        { "a letter", NotSound },
        { "words", NotSound },
        { "random bytes", NotSound },
        { "zeros", NotSound },
        { "only RIFF", NotSound },
        { "WAV without chunks", "This WAV file ends inside its head, before any sound." },
        { "WAV without samples", "This WAV file has a head but no sound in it." },
        { "WAV without format", "This WAV file does not say how its samples are written; its head is damaged." },
        { "WAV of no channels", "The head of this WAV file says 0 channels; Scuff hears 1 to 64." },
        { "WAV of 65,535 channels", "The head of this WAV file says 65535 channels; Scuff hears 1 to 64." },
        { "WAV of no rate", "The head of this WAV file says 0 samples a second, which no music has; the file is damaged." },
        { "WAV of 4 thousand million", "The head of this WAV file says 4294967295 samples a second, which no music has; the file is damaged." },
        { "WAV of 500 bits", "This WAV file says that a sample has 500 bits in 63 bytes, which cannot be; its head is damaged." },
        { "AIFF of a negative number of channels", "The head of this AIFF file says -2 channels; Scuff hears 1 to 64." },
        { "AIFF without format", "This AIFF file does not say how its samples are written before they begin; its head is damaged." },
        { "AIFF cut in its head", "The head of this AIFF file is damaged: it does not say how its samples are written." },
        { "AIFF that begins behind its end", "This AIFF file says that its sound begins behind its end; its head is damaged." },
        { "FLAC cut in its head", "This FLAC file ends inside its head, before any sound." },
        { "FLAC without frames", "This FLAC file is damaged: none of its sound could be read." },
        { "FLAC of zeros", "The head of this FLAC file says 0 samples a second, which no music has; the file is damaged." },
        { "Ogg of one page", "This Ogg file is damaged, or there is no sound in it." },
        { "Opus of no channels", "The head of this Ogg Opus file is damaged." },
        { "Vorbis of huge books", "The head of this Ogg Vorbis file is damaged." },
        { "M4A", "This is an M4A file. Scuff reads it with the help of the program ffmpeg, which is not on this machine: install it, or save the track as MP3, FLAC or WAV." },
        { "AAC", "This is an AAC file." },
        { "WAV of compressed samples", "This is a WAV file with compressed samples." },
        { "ten hours", "This track lasts 600 minutes; Scuff hears tracks of up to 60 minutes. Cut out the part you dance to." },
        { "ten hours of FLAC", "This track lasts 600 minutes; Scuff hears tracks of up to 60 minutes." },
    };

    private static byte[] Make(string what) => what switch
    {
        "nothing" => [],
        "a letter" => [(byte)'x'],
        "words" => Encoding.UTF8.GetBytes(string.Concat(Enumerable.Repeat("step R to side, touch L beside R\n", 400))),
        "random bytes" => Noise(60_000),
        "zeros" => new byte[60_000],
        "only RIFF" => "RIFF"u8.ToArray(),
        "WAV without chunks" => WavFile.Of([]),
        "WAV without samples" => WavFile.Of([WavFile.Format(1, 1, 44_100, 16), WavFile.Chunk("data", [])]),
        "WAV without format" => WavFile.Of([WavFile.Chunk("data", new byte[100])]),
        "WAV of no channels" => Wav(400, channels: 0),
        "WAV of 65,535 channels" => Wav(400, channels: 65_535, container: 0),
        "WAV of no rate" => Wav(400, rate: 0),
        "WAV of 4 thousand million" => Wav(400, rate: -1),
        "WAV of 500 bits" => Wav(400, bits: 500),
        "AIFF of a negative number of channels" => Patch(WavFile.Aiff([new int[100]], 16, 44_100), 20, 0xFF, 0xFE),
        "AIFF without format" => [.. "FORM"u8, 0, 0, 1, 0, .. "AIFFSSND"u8, 0, 0, 0, 20, .. new byte[20]],
        "AIFF cut in its head" => WavFile.Aiff([new int[100]], 16, 44_100)[..30],
        "AIFF that begins behind its end" => Patch(WavFile.Aiff([new int[100]], 16, 44_100), 46, 0x7F, 0xFF, 0xFF, 0xFF),
        "FLAC cut in its head" => Flac()[..30],
        "FLAC without frames" => Flac()[..86],
        "FLAC of zeros" => [.. "fLaC"u8, 0x80, 0, 0, 34, .. new byte[60]],
        "Ogg of one page" => [.. "OggS"u8, .. new byte[60]],
        "Opus of no channels" => Patched("bursts-opus.ogg", "OpusHead"u8, 9, 0),
        "Vorbis of huge books" => Patched("bursts-vorbis.ogg", "BCV"u8, 3, 0xFF, 0xFF, 0xFF, 0xFF, 0xFF),
        "M4A" => [0, 0, 0, 32, .. "ftypM4A "u8, .. new byte[100]],
        "AAC" => [0xFF, 0xF1, 0x50, 0x80, .. new byte[100]],
        "WAV of compressed samples" => WavFile.Of([WavFile.Format(0x11, 1, 44_100, 4), WavFile.Chunk("data", new byte[100])]),
        "ten hours of FLAC" => Flac(36_000L * 44_100),
        _ => throw new ArgumentOutOfRangeException(nameof(what), what, null),
    };

    [Theory]
    [MemberData(nameof(Sentences))]
    public void What_cannot_be_heard_is_refused_with_a_sentence(string what, string sentence)
    {
        using Stream stream = what == "ten hours" ? new EndlessWav(36_000) : new MemoryStream(Make(what));

        AudioException refused = Assert.Throws<AudioException>(() => AudioFile.Read(stream, ""));

        Assert.StartsWith(sentence, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Hours_that_no_head_announces_are_refused_when_they_have_come()
    {
        using EndlessWav endless = new(null);

        AudioException refused = Assert.Throws<AudioException>(() => AudioFile.Read(endless, "", 1_000));

        Assert.StartsWith("This track lasts more than 60 minutes;", refused.Message, StringComparison.Ordinal);
        Assert.InRange(endless.Given, 3_600L * EndlessWav.Rate, 3_700L * EndlessWav.Rate);
    }

    [Theory]
    [InlineData(8_000, 1)]
    [InlineData(192_000, 2)]
    [InlineData(44_100, 8)]
    [InlineData(11_025, 1)]
    public void Odd_rates_and_many_channels_are_heard(int rate, int channels)
    {
        int[][] sides = [.. Enumerable.Range(0, channels).Select(_ => Enumerable.Range(0, rate).Select(i => (int)(9_000 * Math.Sin(2 * Math.PI * 440 * i / rate))).ToArray())];

        HeardFile heard = Read(WavFile.Of([WavFile.Format(1, channels, rate, 16), WavFile.Chunk("data", WavFile.Samples(sides, 16))]));

        Assert.Equal(22_050, heard.Audio.Samples.Length);
        float[] tone = [.. Enumerable.Range(0, 22_050).Select(i => (float)(9_000 / 32_768.0 * Math.Sin(2 * Math.PI * 440 * i / 22_050)))];
        Assert.InRange(Sounds.Difference(heard.Audio.Samples.AsSpan()[1_000..^1_000], tone.AsSpan()[1_000..^1_000], 0), -300, -60);
    }

    [Fact]
    public void Silence_is_heard_as_silence()
    {
        HeardFile heard = Read(Wav(400));

        Assert.Equal(100, heard.Audio.Samples.Length);
        Assert.All(heard.Audio.Samples, v => Assert.Equal(0, v));
    }

    [Fact]
    public void A_size_beyond_the_file_is_heard_as_far_as_it_goes()
    {
        HeardFile heard = Read(Wav(0x7FFFFFF0 / 100));

        Assert.Equal(100, heard.Audio.Samples.Length);
        Assert.Equal("The file ends early: 0.0 seconds could be read.", heard.Warning);
    }

    [Fact]
    public void The_name_of_a_file_says_nothing()
    {
        string path = Path.Combine(Path.GetTempPath(), "scuff-" + Environment.ProcessId + ".mp3");
        try
        {
            File.WriteAllBytes(path, Wav(400));
            Assert.Equal("WAV", AudioFile.Read(path, "").Tags.Format);
        }
        finally
        {
            File.Delete(path);
        }

        Assert.Equal("There is no such file.", Assert.Throws<AudioException>(() => AudioFile.Read(path)).Message);
        Assert.Equal("This is a folder, not a sound file.", Assert.Throws<AudioException>(() => AudioFile.Read(Path.GetTempPath())).Message);
    }

    [Fact]
    public void A_stream_that_cannot_seek_gives_the_same()
    {
        byte[] file = File.ReadAllBytes(Sounds.Fixture("bursts-lavc.mp3"));
        using OneWay stream = new(file);

        HeardFile heard = AudioFile.Read(stream, "");

        Assert.Equal(Read(file).Audio.Samples, heard.Audio.Samples);
    }

    [Fact]
    public void Progress_rises_to_one_and_a_cancelled_reading_ends()
    {
        List<double> told = [];
        byte[] file = WavFile.Of([WavFile.Format(1, 1, 44_100, 16), WavFile.Chunk("data", new byte[1_000_000])]);
        using MemoryStream stream = new(file);
        AudioFile.Read(stream, "", progress: new Listener(told));

        Assert.Equal(told.Order(), told);
        Assert.Equal(1, told[^1]);
        Assert.InRange(told.Count, 10, 102);

        using MemoryStream again = new(file);
        Assert.ThrowsAny<OperationCanceledException>(() => AudioFile.Read(again, "", cancel: new CancellationToken(true)));
    }

    private static HeardFile Read(byte[] file)
    {
        using MemoryStream stream = new(file);
        return AudioFile.Read(stream, "");
    }

    private static byte[] Noise(int count)
    {
        byte[] noise = new byte[count];
        new Random(11).NextBytes(noise);
        return noise;
    }

    private static byte[] Flac(long announced = 1_000)
    {
        byte[] file = FlacFile.Of([Sounds.Numbers(1_000, 16, 1)], 16, 44_100, new FlacShape());

        // the last 36 of 64 bits of facts are the number of samples
        byte[] facts = WavFile.Number(announced, 5, true);
        file[21] = (byte)((file[21] & 0xF0) | facts[0]);
        facts.AsSpan(1).CopyTo(file.AsSpan(22));
        return file;
    }

    private static byte[] Patch(byte[] file, int at, params byte[] bytes)
    {
        bytes.CopyTo(file, at);
        return file;
    }

    private static byte[] Patched(string fixture, ReadOnlySpan<byte> after, int offset, params byte[] bytes)
    {
        byte[] file = File.ReadAllBytes(Sounds.Fixture(fixture));
        bytes.CopyTo(file, file.AsSpan().IndexOf(after) + offset);
        OggPages.Mend(file);
        return file;
    }

    private sealed class Listener(List<double> told) : IProgress<double>
    {
        public void Report(double value) => told.Add(value);
    }

    private sealed class OneWay(byte[] bytes) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;

        public override long Length => throw new NotSupportedException();
    }

    // A WAV of 4,000 samples a second that is made while it is read: of so many seconds, or streamed without an end.
    private sealed class EndlessWav(int? seconds) : Stream
    {
        public const int Rate = 4_000;

        private readonly byte[] _head = WavFile.Of([WavFile.Format(1, 1, Rate, 8), WavFile.Chunk("data", [], seconds is int s ? (long)s * Rate : 0xFFFFFFFF)]);
        private long _at;

        public long Given => _at - _head.Length;

        public override bool CanRead => true;

        public override bool CanSeek => false;

        public override bool CanWrite => false;

        public override long Length => throw new NotSupportedException();

        public override long Position
        {
            get => throw new NotSupportedException();
            set => throw new NotSupportedException();
        }

        public override int Read(byte[] buffer, int offset, int count)
        {
            for (int i = 0; i < count; i++, _at++)
            {
                buffer[offset + i] = _at < _head.Length ? _head[_at] : (byte)(128 + (_at % 5));
            }

            return count;
        }

        public override void Flush()
        {
        }

        public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

        public override void SetLength(long value) => throw new NotSupportedException();

        public override void Write(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    }
}
