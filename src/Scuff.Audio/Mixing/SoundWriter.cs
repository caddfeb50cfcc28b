using System.ComponentModel;
using System.Diagnostics;
using Scuff.Audio.Decoding;
using Scuff.Audio.Songs;

namespace Scuff.Audio.Mixing;

/// <summary>
/// Writes sound: WAV by itself, MP3 and M4A with the help of the program ffmpeg where it is on the machine. The packed files say in their heads how much
/// the coder put before the sound, so that a player plays it on time.
/// </summary>
public static class SoundWriter
{
    // a track takes seconds; a program that stands still is ended
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    /// <summary>The kinds by the endings of their files.</summary>
    public static ValueList<(string Ending, SoundFormat Format)> Endings { get; } = [(".wav", SoundFormat.Wav), (".mp3", SoundFormat.Mp3), (".m4a", SoundFormat.M4a)];

    /// <summary>The kind that the name of a file asks for; null where it asks for none of them.</summary>
    public static SoundFormat? FormatOf(string name)
        => Endings.Where(e => name.EndsWith(e.Ending, StringComparison.OrdinalIgnoreCase)).Select(e => (SoundFormat?)e.Format).FirstOrDefault();

    /// <summary>Writes a sound.</summary>
    /// <param name="sound">The sound.</param>
    /// <param name="format">What kind of file.</param>
    /// <param name="output">Where to; nothing is written to it before all has gone well.</param>
    /// <param name="title">What it is called; empty for nothing.</param>
    /// <param name="artist">Who made it; empty for nothing.</param>
    /// <param name="ffmpeg">The program ffmpeg: a name on the path, or a path.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="AudioException">The program is not on this machine, or could not write this kind.</exception>
    public static void Write(
        StereoSound sound, SoundFormat format, Stream output, string title = "", string artist = "", string ffmpeg = "ffmpeg", CancellationToken cancel = default)
    {
        if (format == SoundFormat.Wav)
        {
            sound.WriteWav(output, title, artist);
            return;
        }

        // the head of a packed file is written last: the program needs a file it can go back in
        DirectoryInfo place = Directory.CreateTempSubdirectory("scuff-sound-");
        try
        {
            string file = Path.Combine(place.FullName, format == SoundFormat.Mp3 ? "sound.mp3" : "sound.m4a");
            Encode(sound, format, file, title, artist, ffmpeg, cancel);
            using FileStream packed = File.OpenRead(file);
            packed.CopyTo(output);
        }
        finally
        {
            place.Delete(recursive: true);
        }
    }

    private static void Encode(StereoSound sound, SoundFormat format, string file, string title, string artist, string ffmpeg, CancellationToken cancel)
    {
        string name = format == SoundFormat.Mp3 ? "MP3" : "M4A";
        ProcessStartInfo start = new(ffmpeg)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            CreateNoWindow = true,
        };
        string[] coder = format == SoundFormat.Mp3 ? ["-c:a", "libmp3lame", "-b:a", "192k", "-id3v2_version", "3"] : ["-c:a", "aac", "-b:a", "192k", "-movflags", "+faststart"];
        foreach (string argument in (string[])["-v", "quiet", "-f", "wav", "-i", "pipe:0", "-map_metadata", "-1", .. coder, "-metadata", "title=" + title,
            "-metadata", "artist=" + artist, "-fflags", "+bitexact", "-y", "file:" + file])
        {
            start.ArgumentList.Add(argument);
        }

        using Process? process = Started(start);
        if (process is null)
        {
            throw new AudioException($"{name} is written with the help of the program ffmpeg, which is not on this machine: install it, or write a WAV file.");
        }

        using CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(Patience);
        using CancellationTokenRegistration ending = limit.Token.Register(() => End(process));
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        try
        {
            using Stream input = process.StandardInput.BaseStream;
            sound.WriteWav(input);
        }
        catch (IOException)
        {
            // it ended before it had read all: its exit code says so
        }

        process.WaitForExit();
        cancel.ThrowIfCancellationRequested();
        if (process.ExitCode != 0 || !File.Exists(file))
        {
            throw new AudioException($"The program ffmpeg on this machine could not write {name}; write a WAV file instead.");
        }
    }

    private static Process? Started(ProcessStartInfo start)
    {
        try
        {
            return Process.Start(start);
        }
        catch (Exception trouble) when (trouble is Win32Exception or InvalidOperationException or IOException)
        {
            return null;
        }
    }

    private static void End(Process process)
    {
        try
        {
            process.Kill();
        }
        catch (Exception trouble) when (trouble is InvalidOperationException or Win32Exception)
        {
            // it has ended by itself
        }
    }
}
