using System.ComponentModel;
using System.Diagnostics;
using System.Globalization;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Asks the program ffmpeg for the sound of a file: it writes a WAV of its own channels and rate into a pipe, which is read like any other.
/// The channels are averaged here, since ffmpeg's own mixing to one is louder.
/// </summary>
internal sealed class FfmpegSource : SoundSource
{
    // Kinds of file it may open: none that names other files or addresses.
    private const string Allowed = "mov,mp4,m4a,3gp,3g2,mj2,aac,loas,asf,matroska,webm,caf,w64,wav,aiff,ogg,mp3,mpegts,mpeg,ac3,eac3,dts,wv,ape,tta,mpc,mpc8,amr,"
        + "amrnb,amrwb,au,flv,avi,flac,rm,voc,dsf";

    // A track takes seconds; a program that stands still is ended.
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(5);

    private readonly Process _process;
    private readonly CancellationTokenSource _limit;
    private readonly CancellationTokenRegistration _ending;
    private readonly SoundSource _inner;
    private readonly string _format;
    private readonly string? _copy;

    private FfmpegSource(Process process, CancellationTokenSource limit, CancellationTokenRegistration ending, SoundSource inner, string format, string? copy)
    {
        _process = process;
        _limit = limit;
        _ending = ending;
        _inner = inner;
        _format = format;
        _copy = copy;
    }

    public override string Format => _format;

    public override int Rate => _inner.Rate;

    public override int Channels => _inner.Channels;

    public override SoundSide Side
    {
        get => _inner.Side;
        set => _inner.Side = value;
    }

    /// <summary>Starts the program on a file.</summary>
    /// <param name="program">The program: a name on the path, or a path.</param>
    /// <param name="file">The file; its name is not looked at.</param>
    /// <param name="name">The kind of file by name; null where it is unknown.</param>
    /// <param name="copy">A temporary copy to remove afterwards; null for none.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <returns>Null when the program is not on this machine.</returns>
    /// <exception cref="AudioException">The program finds no sound in the file.</exception>
    public static FfmpegSource? TryOpen(string program, string file, string? name, string? copy, CancellationToken cancel)
    {
        ProcessStartInfo start = new(program)
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            CreateNoWindow = true,
        };
        string longest = ((int)SoundLimits.LongestSeconds + 60).ToString(CultureInfo.InvariantCulture);
        foreach (string argument in (string[])["-nostdin", "-v", "quiet", "-protocol_whitelist", "file", "-format_whitelist", Allowed, "-t", longest,
            "-i", "file:" + file, "-map", "0:a:0", "-c:a", "pcm_f32le", "-f", "wav", "pipe:1"])
        {
            start.ArgumentList.Add(argument);
        }

        Process? process;
        try
        {
            process = Process.Start(start);
        }
        catch (Exception trouble) when (trouble is Win32Exception or InvalidOperationException or IOException)
        {
            return null;
        }

        if (process is null)
        {
            return null;
        }

        // what it has to say is known already; a full pipe would stop it
        process.ErrorDataReceived += (_, _) => { };
        process.BeginErrorReadLine();
        process.StandardInput.Close();
        CancellationTokenSource limit = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        limit.CancelAfter(Patience);
        CancellationTokenRegistration ending = limit.Token.Register(() => End(process));
        try
        {
            ByteSource bytes = new(process.StandardOutput.BaseStream, cancel);
            if (bytes.Peek(12).Length < 12)
            {
                throw new AudioException(name is null ? AudioFile.NotSound : $"This {name} file is damaged, or there is no sound in it.");
            }

            SoundSource inner = WavReader.Open(bytes);
            return new FfmpegSource(process, limit, ending, inner, name is null ? "other, by ffmpeg" : name + " by ffmpeg", copy);
        }
        catch
        {
            ending.Dispose();
            End(process);
            process.Dispose();
            limit.Dispose();
            throw;
        }
    }

    public override int Read(Span<float> mono)
    {
        int count = _inner.Read(mono);
        if (count == 0)
        {
            Tags.Offer(_inner.Tags);
            CutShort = _limit.IsCancellationRequested;
        }

        return count;
    }

    protected override void Release()
    {
        _ending.Dispose();
        End(_process);
        _process.Dispose();
        _limit.Dispose();
        _inner.Dispose();
        if (_copy is not null)
        {
            File.Delete(_copy);
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
