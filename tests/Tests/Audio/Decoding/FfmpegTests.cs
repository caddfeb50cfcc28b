using System.ComponentModel;
using System.Diagnostics;
using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>Our decoders against ffmpeg (https://ffmpeg.org), sample by sample; and what only ffmpeg reads.</summary>
public sealed class FfmpegTests
{
    public static TheoryData<string, string[]> Files() => new()
    {
        { "bursts-lame.mp3", [] },
        { "bursts-lame-vbr.mp3", [] },
        { "bursts-lavc.mp3", [] },
        { "bursts-no-tag.mp3", [] },
        { "bursts-low-rate.mp3", [] },
        { "bursts-vorbis.ogg", [] },

        // ffmpeg's own decoder differs from the reference by more than ours does
        { "bursts-opus.ogg", ["-c:a", "libopus"] },
        { "bursts-opus-six.ogg", ["-c:a", "libopus"] },
    };

    [Theory]
    [MemberData(nameof(Files))]
    public void What_was_packed_with_loss_differs_by_less_than_60_decibels(string name, string[] decoder)
    {
        string path = Sounds.Fixture(name);
        HeardFile heard = AudioFile.Read(path);
        float[] ours = AudioFile.Read(path, heard.Tags.Rate).Audio.Samples;

        float[] theirs = Decode(path, heard.Tags.Channels, decoder);

        Assert.Equal(theirs.Length, ours.Length);
        Assert.InRange(Sounds.Difference(ours, theirs, 0), -300, -60);
    }

    [Theory]
    [InlineData("flac", "-c:a", "flac")]
    [InlineData("flac", "-c:a", "flac", "-sample_fmt", "s32", "-compression_level", "12")]
    [InlineData("flac", "-c:a", "flac", "-compression_level", "0", "-ac", "1")]
    [InlineData("ogg", "-c:a", "flac")]
    [InlineData("wav", "-c:a", "pcm_u8")]
    [InlineData("wav", "-c:a", "pcm_s24le")]
    [InlineData("wav", "-c:a", "pcm_f64le")]
    [InlineData("wav", "-c:a", "pcm_alaw")]
    [InlineData("wav", "-c:a", "pcm_mulaw")]
    [InlineData("wav", "-c:a", "pcm_s16le", "-rf64", "always")]
    [InlineData("aiff", "-c:a", "pcm_s16be")]
    [InlineData("aiff", "-c:a", "pcm_s16le")]
    [InlineData("aiff", "-c:a", "pcm_f32be")]
    public void What_was_packed_without_loss_is_the_same_to_the_bit(string ending, params string[] encoder)
    {
        using Folder folder = new();
        string made = Encode(folder, ending, encoder);
        HeardFile heard = AudioFile.Read(made, "", 44_100);

        float[] theirs = Decode(made, heard.Tags.Channels);

        Assert.Equal(theirs, heard.Audio.Samples);
        Assert.Equal(ending == "aiff" ? null : "The Tin Lanterns", ending == "aiff" ? null : heard.Tags.Artist);
        Assert.Equal("Harbour Light", heard.Tags.Title);
    }

    [Fact]
    public void An_m4a_file_is_heard_through_ffmpeg_also_from_a_stream()
    {
        using Folder folder = new();
        string made = Encode(folder, "m4a", "-c:a", "aac");

        HeardFile heard = AudioFile.Read(made, 44_100);
        using FileStream stream = File.OpenRead(made);
        HeardFile streamed = AudioFile.Read(stream, 44_100);

        Assert.Equal(("M4A by ffmpeg", 2, 44_100), (heard.Tags.Format, heard.Tags.Channels, heard.Tags.Rate));
        Assert.Equal(("Harbour Light", "The Tin Lanterns"), (heard.Tags.Title, heard.Tags.Artist));
        Assert.Equal(0, Sounds.Lag(heard.Audio.Samples, Sounds.Mean(Sounds.Bursts(44_100)), 50));
        Assert.Equal(heard.Audio.Samples, streamed.Audio.Samples);
    }

    [Fact]
    public void Without_ffmpeg_an_m4a_file_is_refused_with_what_to_do()
    {
        using Folder folder = new();
        string made = Encode(folder, "m4a", "-c:a", "aac");

        AudioException refused = Assert.Throws<AudioException>(() => AudioFile.Read(made, "no-such-program-here"));

        Assert.StartsWith("This is an M4A file. Scuff reads it with the help of the program ffmpeg, which is not on this machine", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Ffmpeg_is_shown_no_list_of_other_files()
    {
        SkipWithoutFfmpeg();
        using Folder folder = new();
        string sound = folder.File("secret.wav");
        File.WriteAllBytes(sound, WavFile.Plain(Sounds.Bursts(44_100), 44_100));
        foreach (string list in (string[])[$"ffconcat version 1.0\nfile '{sound}'\n", $"#EXTM3U\n#EXT-X-VERSION:3\n#EXTINF:1,\n{sound}\n#EXT-X-ENDLIST\n"])
        {
            string path = folder.File("list.m3u8");
            File.WriteAllText(path, list);

            AudioException refused = Assert.Throws<AudioException>(() => AudioFile.Read(path));

            Assert.StartsWith("This is not a sound file that Scuff knows", refused.Message, StringComparison.Ordinal);
        }
    }

    private static string Encode(Folder folder, string ending, params string[] encoder)
    {
        string source = folder.File("source.wav");
        File.WriteAllBytes(source, WavFile.Plain(Sounds.Bursts(44_100), 44_100));
        string made = folder.File("made." + ending);
        Run(["-i", source, "-metadata", "title=Harbour Light", "-metadata", "artist=The Tin Lanterns", .. encoder, made]);
        return made;
    }

    private static float[] Decode(string path, int channels, params string[] decoder)
    {
        byte[] bytes = Run([.. decoder, "-i", path, "-map", "0:a:0", "-f", "f32le", "-c:a", "pcm_f32le", "pipe:1"]);
        int count = bytes.Length / (4 * channels);
        float[] mean = new float[count];
        for (int i = 0; i < count; i++)
        {
            double sum = 0;
            for (int c = 0; c < channels; c++)
            {
                sum += BitConverter.ToSingle(bytes, 4 * ((i * channels) + c));
            }

            mean[i] = (float)(sum / channels);
        }

        return mean;
    }

    private static byte[] Run(string[] arguments)
    {
        ProcessStartInfo start = new("ffmpeg") { RedirectStandardOutput = true, UseShellExecute = false, RedirectStandardError = true };
        foreach (string argument in (string[])["-nostdin", "-v", "error", "-y", .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        SkipWithoutFfmpeg();
        using Process process = Process.Start(start)!;
        List<string> said = [];
        process.ErrorDataReceived += (_, line) => said.Add(line.Data ?? "");
        process.BeginErrorReadLine();
        using MemoryStream all = new();
        process.StandardOutput.BaseStream.CopyTo(all);
        process.WaitForExit();
        Assert.SkipWhen(said.Any(s => s.Contains("Unknown decoder", StringComparison.Ordinal) || s.Contains("Unknown encoder", StringComparison.Ordinal)), "This ffmpeg lacks the codec.");
        Assert.True(process.ExitCode == 0, string.Join('\n', said));
        return all.ToArray();
    }

    private static void SkipWithoutFfmpeg() => Assert.SkipUnless(HasFfmpeg.Value, "ffmpeg is not on this machine.");

    // asked once: starting it takes longer than a test
    private static readonly Lazy<bool> HasFfmpeg = new(() =>
    {
        try
        {
            using Process? process = Process.Start(new ProcessStartInfo("ffmpeg", "-version") { RedirectStandardOutput = true, UseShellExecute = false });
            process!.StandardOutput.ReadToEnd();
            return true;
        }
        catch (Win32Exception)
        {
            return false;
        }
    });

    private sealed class Folder : IDisposable
    {
        private readonly string _path = Directory.CreateTempSubdirectory("scuff-sound").FullName;

        public string File(string name) => Path.Combine(_path, name);

        public void Dispose() => Directory.Delete(_path, true);
    }
}
