using System.Runtime.CompilerServices;
using System.Runtime.ExceptionServices;
using Scuff.Audio.Signals;
using Scuff.Audio.Songs;

namespace Scuff.Audio.Decoding;

/// <summary>
/// The door to sound files: any of them to one channel at one rate. What kind a file is, is found in its bytes; its name says nothing. Of
/// the sound only the samples given out are kept, so the memory follows the length of the track and not the size of the file.
/// </summary>
public static class AudioFile
{
    /// <summary>The rate that the analysis works at, samples a second.</summary>
    public const int AnalysisRate = 22_050;

    /// <summary>The longest track that is read, in minutes; longer ones are refused with a sentence.</summary>
    public const int LongestMinutes = (int)(SoundLimits.LongestSeconds / 60);

    /// <summary>Said of bytes that are no sound of any known kind.</summary>
    internal const string NotSound = "This is not a sound file that Scuff knows: it reads WAV, AIFF, MP3, Ogg Vorbis, Opus and FLAC, and most others "
        + "with the help of the program ffmpeg.";

    private const int Block = 8_192;

    // A sample above this is no music, but a float that a damaged file made; full scale is 1.
    private const float Loudest = 16;

    // a copy for ffmpeg, which wants to jump about in the file
    private const long LargestCopy = 1L << 31;

    /// <summary>Reads a sound file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="rate">Samples a second wanted, 1,000 to 768,000; the file's own rate gives its own samples, unchanged.</param>
    /// <param name="progress">Is told the part of the file read so far, 0 to 1.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <returns>The sound, what the file says about itself, and a warning when only part of it could be read.</returns>
    /// <exception cref="AudioException">The file cannot be read, is no sound, is damaged from the start, or is too long.</exception>
    public static HeardFile Read(string path, int rate = AnalysisRate, IProgress<double>? progress = null, CancellationToken cancel = default)
        => Read(path, "ffmpeg", rate, progress, cancel);

    /// <summary>Reads a sound file, with a say in which program reads the kinds that Scuff does not.</summary>
    /// <param name="path">The file.</param>
    /// <param name="ffmpeg">The program ffmpeg: a name on the path, or a path; of no length when none may be asked.</param>
    /// <param name="rate">Samples a second wanted, 1,000 to 768,000.</param>
    /// <param name="progress">Is told the part of the file read so far, 0 to 1.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <returns>The sound, what the file says about itself, and a warning when only part of it could be read.</returns>
    /// <exception cref="AudioException">The file cannot be read, is no sound, is damaged from the start, or is too long.</exception>
    public static HeardFile Read(
        string path, string ffmpeg, int rate = AnalysisRate, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        using FileStream file = Open(path);
        return Read(file, path, rate, progress, ffmpeg, cancel);
    }

    /// <summary>
    /// Reads a sound file with both its channels, for hearing and not for analysis. A file of one channel, or of more than two, gives the mean twice.
    /// </summary>
    /// <param name="path">The file.</param>
    /// <param name="ffmpeg">The program ffmpeg: a name on the path, or a path; of no length when none may be asked.</param>
    /// <param name="rate">Samples a second wanted, 1,000 to 768,000.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <returns>Both channels, what the file says about itself, and a warning when only part of it could be read.</returns>
    /// <exception cref="AudioException">The file cannot be read, is no sound, is damaged from the start, or is too long.</exception>
    public static HeardSides ReadSides(string path, string ffmpeg = "ffmpeg", int rate = SongRenderer.Rate, CancellationToken cancel = default)
    {
        // each channel is decoded by itself, side by side: no decoder has to hold two
        HeardFile? left = null;
        HeardFile? right = null;
        ExceptionDispatchInfo? trouble = null;
        Parallel.Invoke(() => left = Try(SoundSide.Left), () => right = Try(SoundSide.Right));
        trouble?.Throw();
        int most = Math.Min(left!.Audio.Samples.Length, right!.Audio.Samples.Length);
        return new HeardSides(
            new StereoSound(Cut(left.Audio.Samples), Cut(right.Audio.Samples), rate), left.Tags, left.Warning ?? right.Warning);

        float[] Cut(float[] samples) => samples.Length == most ? samples : samples[..most];

        HeardFile? Try(SoundSide side)
        {
            try
            {
                using FileStream file = Open(path);
                return Read(file, path, rate, null, ffmpeg, cancel, side);
            }
            catch (Exception e) when (e is AudioException or OperationCanceledException)
            {
                trouble = ExceptionDispatchInfo.Capture(e);
                return null;
            }
        }
    }

    /// <summary>Reads a sound file from a stream, from where it stands to its end. The stream is left open.</summary>
    /// <param name="stream">The bytes; need not be able to seek, though an ID3v1 tag is read only where it can.</param>
    /// <param name="rate">Samples a second wanted, 1,000 to 768,000.</param>
    /// <param name="progress">Is told the part of the file read so far, 0 to 1; nothing where the length is unknown.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <returns>The sound, what the file says about itself, and a warning when only part of it could be read.</returns>
    /// <exception cref="AudioException">The file cannot be read, is no sound, is damaged from the start, or is too long.</exception>
    public static HeardFile Read(Stream stream, int rate = AnalysisRate, IProgress<double>? progress = null, CancellationToken cancel = default)
        => Read(stream, null, rate, progress, "ffmpeg", cancel);

    /// <summary>Reads a sound file from a stream, with a say in which program reads the kinds that Scuff does not.</summary>
    /// <param name="stream">The bytes.</param>
    /// <param name="ffmpeg">The program ffmpeg: a name on the path, or a path; of no length when none may be asked.</param>
    /// <param name="rate">Samples a second wanted, 1,000 to 768,000.</param>
    /// <param name="progress">Is told the part of the file read so far, 0 to 1; nothing where the length is unknown.</param>
    /// <param name="cancel">Ends the reading early.</param>
    /// <returns>The sound, what the file says about itself, and a warning when only part of it could be read.</returns>
    /// <exception cref="AudioException">The file cannot be read, is no sound, is damaged from the start, or is too long.</exception>
    public static HeardFile Read(
        Stream stream, string ffmpeg, int rate = AnalysisRate, IProgress<double>? progress = null, CancellationToken cancel = default)
        => Read(stream, null, rate, progress, ffmpeg, cancel);

    /// <summary>
    /// Looks what kind of sound a file is and that its sound begins, without reading it all. What follows may still be damaged: that shows when it is heard.
    /// </summary>
    /// <param name="stream">The bytes, from where they stand; the stream is left open.</param>
    /// <param name="cancel">Ends the look early.</param>
    /// <exception cref="AudioException">It is no sound of a known kind, damaged from the start, or too long.</exception>
    public static SoundLook Look(Stream stream, CancellationToken cancel = default)
    {
        try
        {
            ByteSource bytes = new(stream, cancel);
            TagCollector tags = new();
            using SoundSource source = SoundKind.Open(bytes, tags, cancel);
            SoundLimits.CheckHead(source.Format, source.Rate, Math.Min(source.Channels, SoundLimits.MostChannels));
            if (source.Frames is long announced)
            {
                SoundLimits.CheckLength((double)announced / source.Rate);
            }

            if (source.Read(new float[Block]) == 0)
            {
                throw new AudioException(Soundless(source));
            }

            tags.Offer(source.Tags);
            return new SoundLook(source.Format, IsDecodedHere: true, tags.Title, tags.Artist);
        }
        catch (ForeignSoundException foreign)
        {
            return foreign.Name.Length == 0 ? throw new AudioException(NotSound, foreign) : new SoundLook(foreign.Name, IsDecodedHere: false, null, null);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new AudioException("The file could not be read to its end.", trouble);
        }
        catch (Exception trouble) when (trouble is not (AudioException or OperationCanceledException))
        {
            throw new AudioException("This sound file is damaged in a way that Scuff cannot read past.", trouble);
        }
    }

    private static FileStream Open(string path)
    {
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0, FileOptions.SequentialScan);
        }
        catch (Exception trouble) when (trouble is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new AudioException("There is no such file.", trouble);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            throw new AudioException(Directory.Exists(path) ? "This is a folder, not a sound file." : "The file could not be opened.", trouble);
        }
    }

    private static HeardFile Read(
        Stream stream, string? path, int rate, IProgress<double>? progress, string ffmpeg, CancellationToken cancel, SoundSide side = SoundSide.Both)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rate, 1_000);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rate, SoundLimits.FastestRate);
        long origin = stream.CanSeek ? stream.Position : 0;
        try
        {
            ByteSource bytes = new(stream, cancel);
            try
            {
                TagCollector tags = new();
                using SoundSource source = SoundKind.Open(bytes, tags, cancel);
                source.Side = side;
                return Pump(source, tags, bytes, rate, progress, cancel);
            }
            catch (ForeignSoundException foreign)
            {
                using SoundSource source = AskFfmpeg(foreign, stream, origin, path, ffmpeg, cancel);
                source.Side = side;
                return Pump(source, new TagCollector(), null, rate, progress, cancel);
            }
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            throw new AudioException("The file could not be read to its end.", trouble);
        }
        catch (Exception trouble) when (trouble is not (AudioException or OperationCanceledException))
        {
            // a damage that no decoder foresaw: the reader of the sentence need not see its traces, whoever mends it finds them inside
            throw new AudioException("This sound file is damaged in a way that Scuff cannot read past.", trouble);
        }
    }

    private static HeardFile Pump(SoundSource source, TagCollector tags, ByteSource? bytes, int rate, IProgress<double>? progress, CancellationToken cancel)
    {
        SoundLimits.CheckHead(source.Format, source.Rate, Math.Min(source.Channels, SoundLimits.MostChannels));
        if (source.Frames is long announced)
        {
            SoundLimits.CheckLength((double)announced / source.Rate);
        }

        Resampler resampler = new(source.Rate, rate);
        SampleStore store = new();
        float[] block = new float[Block];
        long frames = 0;
        long mostFrames = (long)(SoundLimits.LongestSeconds * source.Rate);
        int told = -1;
        int count;
        while ((count = source.Read(block)) > 0)
        {
            cancel.ThrowIfCancellationRequested();
            Tame(block.AsSpan(0, count));
            store.Add(resampler.Push(block.AsSpan(0, count)));
            frames += count;
            if (frames > mostFrames)
            {
                throw TooLong();
            }

            if (bytes?.Length is long length and > 0 && (int)(100 * bytes.Position / length) is int percent && percent != told)
            {
                told = percent;
                progress?.Report(percent / 100.0);
            }
        }

        store.Add(resampler.Finish());
        if (frames == 0)
        {
            throw new AudioException(Soundless(source));
        }

        progress?.Report(1);
        tags.Offer(source.Tags);
        double seconds = (double)frames / source.Rate;
        return new HeardFile(
            new MonoAudio(store.ToArray(), rate),
            new AudioTags(tags.Title, tags.Artist, tags.Album, source.Format, source.Rate, source.Channels, seconds),
            Warn(source, seconds));
    }

    internal static AudioException TooLong() => new(FormattableString.Invariant(
        $"This track lasts more than {LongestMinutes} minutes; Scuff hears tracks of up to {LongestMinutes} minutes. Cut out the part you dance to."));

    private static string Soundless(SoundSource source) => source.CutShort || source.Damaged
        ? $"This {source.Format} file is damaged: none of its sound could be read."
        : $"This {source.Format} file has a head but no sound in it.";

    private static string? Warn(SoundSource source, double seconds)
    {
        if (source.CutShort)
        {
            string whole = source.Frames is long frames && (double)frames / source.Rate > seconds + 0.05
                ? FormattableString.Invariant($" of {(double)frames / source.Rate:F1}")
                : "";
            return FormattableString.Invariant($"The file ends early: {seconds:F1}{whole} seconds could be read.");
        }

        return source.Damaged ? "Parts of the file are damaged; they were left out or are silent, and what follows them may sound early." : null;
    }

    private static FfmpegSource AskFfmpeg(ForeignSoundException foreign, Stream stream, long origin, string? path, string ffmpeg, CancellationToken cancel)
    {
        AudioException alone = new(foreign.Name.Length == 0
            ? NotSound
            : $"This is {foreign.Kind}. Scuff reads it with the help of the program ffmpeg, which is not on this machine: install it, or "
                + "save the track as MP3, FLAC or WAV.");
        if (ffmpeg.Length == 0)
        {
            throw alone;
        }

        string? copy = path is null ? Path.GetTempFileName() : null;
        try
        {
            if (copy is not null)
            {
                Copy(stream, origin, copy, cancel);
            }

            return FfmpegSource.TryOpen(ffmpeg, Path.GetFullPath(copy ?? path!), foreign.Name.Length == 0 ? null : foreign.Name, copy, cancel) ?? throw alone;
        }
        catch
        {
            if (copy is not null)
            {
                File.Delete(copy);
            }

            throw;
        }
    }

    private static void Copy(Stream stream, long origin, string to, CancellationToken cancel)
    {
        if (!stream.CanSeek)
        {
            throw new AudioException("A sound of this kind can only be read from a file.");
        }

        stream.Position = origin;
        using FileStream file = File.Create(to);
        byte[] some = new byte[1 << 16];
        int got;
        while ((got = stream.Read(some)) > 0)
        {
            cancel.ThrowIfCancellationRequested();
            file.Write(some, 0, got);
            if (file.Length > LargestCopy)
            {
                throw new AudioException("This file is too large to be read with the help of ffmpeg.");
            }
        }
    }

    // Samples that no music has would drown all others.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    internal static void Tame(Span<float> samples)
    {
        for (int i = 0; i < samples.Length; i++)
        {
            // written so that a value that is no number fails the test too
            if (!(Math.Abs(samples[i]) <= Loudest))
            {
                samples[i] = float.IsNaN(samples[i]) ? 0 : Math.Clamp(samples[i], -Loudest, Loudest);
            }
        }
    }
}
