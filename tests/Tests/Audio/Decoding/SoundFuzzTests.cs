using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Scuff.Audio.Decoding;

namespace Tests.Audio.Decoding;

/// <summary>
/// No bytes make reading a sound throw anything but its own exception, hang, or give samples that are no numbers. Each file follows from a
/// number, so a failure names what to try again. <c>SCUFF_FUZZ=50000</c> tries so many, <c>SCUFF_FUZZ_FIRST=1234</c> begins with that number.
/// </summary>
public sealed class SoundFuzzTests(ITestOutputHelper output)
{
    // About ten seconds on two cores.
    private const int Usual = 300;

    // Beyond what 60 minutes at the analysis rate take, twice, and the buffers.
    private const long MostBytes = 1_500_000_000;

    private static readonly byte[][] Seeds = MakeSeeds();

    [Fact]
    public void No_bytes_make_reading_break()
    {
        int count = Asked("SCUFF_FUZZ", Usual);
        int first = Asked("SCUFF_FUZZ_FIRST", 0);
        ConcurrentDictionary<string, int> failures = [];
        ConcurrentDictionary<string, int> sentences = [];
        ConcurrentQueue<(long Milliseconds, long Bytes, int Number)> costs = [];
        Parallel.For(first, first + count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, number =>
        {
            byte[] file = Make(number);
            long before = Stopwatch.GetTimestamp();
            long allocated = GC.GetAllocatedBytesForCurrentThread();
            string? fault = Fault(file, sentences);
            allocated = GC.GetAllocatedBytesForCurrentThread() - allocated;
            costs.Enqueue(((long)Stopwatch.GetElapsedTime(before).TotalMilliseconds, allocated, number));
            fault ??= allocated > MostBytes ? "takes more memory than any track needs" : null;
            if (fault is not null)
            {
                failures.TryAdd(fault, number);
            }
        });

        output.WriteLine($"{count} files, {failures.Count} kinds of failure");
        foreach ((long milliseconds, long bytes, int number) in costs.OrderByDescending(c => c.Milliseconds).Take(5).Concat(costs.OrderByDescending(c => c.Bytes).Take(5)))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"file {number}: {milliseconds} ms, {bytes / 1e6:F0} MB"));
        }

        foreach ((string sentence, int times) in sentences.OrderByDescending(s => s.Value))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{times} times: {sentence}"));
        }

        Assert.True(failures.IsEmpty, string.Join('\n', failures.Select(f => $"file {f.Value}: {f.Key}")));
    }

    [Fact]
    public void What_is_tried_is_mostly_still_a_sound_and_sometimes_not()
    {
        ConcurrentDictionary<string, int> sentences = [];
        for (int number = 0; number < 60; number++)
        {
            Fault(Make(number), sentences);
        }

        Assert.InRange(sentences.GetValueOrDefault("heard") + sentences.GetValueOrDefault("heard with a warning"), 15, 55);
    }

    private static int Asked(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int asked) ? asked : usual;

    private static string? Fault(byte[] file, ConcurrentDictionary<string, int> sentences)
    {
        try
        {
            using MemoryStream stream = new(file);
            HeardFile heard = AudioFile.Read(stream, "");
            sentences.AddOrUpdate(heard.Warning is null ? "heard" : "heard with a warning", 1, (_, n) => n + 1);
            return heard.Audio.Samples.Length == 0 ? "no samples and no sentence" : heard.Audio.Samples.All(float.IsFinite) ? null : "samples that are no numbers";
        }
        catch (AudioException refused)
        {
            sentences.AddOrUpdate(refused.Message, 1, (_, n) => n + 1);

            // the sentence of last resort hides a fault of ours
            return refused.Message.Contains("in a way that", StringComparison.Ordinal) ? "unforeseen: " + refused.InnerException : null;
        }
        catch (Exception trouble)
        {
            return trouble.ToString();
        }
    }

    private static byte[] Make(int number)
    {
        Random random = new(number);
        byte[] seed = Seeds[random.Next(Seeds.Length)];
        List<byte> file = [.. seed];
        for (int change = random.Next(1, 7); change > 0 && file.Count > 8; change--)
        {
            // heads are where the sizes are
            int at = random.Next(random.Next(3) == 0 ? file.Count : Math.Min(file.Count, 160));
            switch (random.Next(9))
            {
                case 0:
                    file[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    file[at] = (byte)random.Next(256);
                    break;
                case 2:
                    file[at] = ((byte[])[0, 0xFF, 0x7F, 0x80, 1])[random.Next(5)];
                    break;
                case 3:
                    byte fill = (byte)(random.Next(2) * 255);
                    for (int i = at; i < Math.Min(file.Count, at + 4); i++)
                    {
                        file[i] = fill;
                    }

                    break;
                case 4:
                    file.RemoveRange(at, Math.Min(file.Count - at, random.Next(1, 50)));
                    break;
                case 5:
                    file.InsertRange(at, Enumerable.Range(0, random.Next(1, 50)).Select(_ => (byte)random.Next(256)));
                    break;
                case 6:
                    file = file[..Math.Max(8, random.Next(file.Count))];
                    break;
                case 7:
                    int from = random.Next(file.Count);
                    file.InsertRange(at, file.GetRange(from, Math.Min(file.Count - from, random.Next(1, 400))));
                    break;
                default:
                    byte[] other = Seeds[random.Next(Seeds.Length)];
                    file.AddRange(other.AsSpan(random.Next(other.Length)));
                    break;
            }
        }

        byte[] made = [.. file];
        if (random.Next(4) != 0)
        {
            // with a wrong CRC a page would never reach a decoder
            OggPages.Mend(made);
        }

        return made;
    }

    private static byte[][] MakeSeeds()
    {
        int[][] stereo = [Sounds.Numbers(600, 16, 1), Sounds.Numbers(600, 16, 2)];
        return
        [
            WavFile.Plain([[.. new float[500]], [.. new float[500]]], 44_100),
            WavFile.Of([WavFile.Format(1, 2, 48_000, 24, extensible: true), WavFile.Chunk("data", WavFile.Samples(stereo, 16, 3)), WavFile.Chunk("LIST", [.. "INFO"u8, .. WavFile.Chunk("INAM", "Fog"u8.ToArray())])]),
            WavFile.Of([WavFile.Format(3, 1, 8_000, 32), WavFile.Chunk("data", [.. Enumerable.Range(0, 500).SelectMany(i => BitConverter.GetBytes((float)Math.Sin(i)))])]),
            WavFile.Aiff(stereo, 16, 44_100, null, WavFile.Chunk("NAME", "Fog"u8.ToArray(), big: true)),
            WavFile.Aiff(stereo, 16, 44_100, "sowt"),
            FlacFile.Of(stereo, 16, 44_100, new FlacShape(10, 10), "TITLE=Fog"),
            FlacFile.Of(stereo, 16, 44_100, new FlacShape(35, 8, KnowsLength: false, Variable: true)),
            FlacFile.Of([stereo[0]], 16, 44_100, new FlacShape(1, Escape: true)),
            [.. "ID3"u8, 3, 0, 0, 0, 0, 0, 30, .. "TIT2"u8, 0, 0, 0, 4, 0, 0, 3, .. "Fog"u8, .. new byte[16], .. File.ReadAllBytes(Sounds.Fixture("bursts-lame.mp3"))[200..6_000]],
            File.ReadAllBytes(Sounds.Fixture("bursts-lame.mp3")),
            File.ReadAllBytes(Sounds.Fixture("bursts-lame-vbr.mp3")),
            File.ReadAllBytes(Sounds.Fixture("bursts-low-rate.mp3")),
            File.ReadAllBytes(Sounds.Fixture("bursts-vorbis.ogg")),
            File.ReadAllBytes(Sounds.Fixture("bursts-vorbis.ogg")),
            File.ReadAllBytes(Sounds.Fixture("bursts-opus.ogg")),
            File.ReadAllBytes(Sounds.Fixture("bursts-opus-six.ogg")),
        ];
    }
}
