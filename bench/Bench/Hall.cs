using System.Diagnostics;
using System.Globalization;
using System.Net.Http.Json;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;

namespace Bench;

/// <summary>
/// A hall full of screens: how soon each knows of a change, and what that costs the page meanwhile. The program runs as a process of its own;
/// all the screens are in this one.
/// </summary>
internal static partial class Hall
{
    private const int Changes = 200;
    private const int Reads = 200;

    // four playheads a second are more than a page ever tells while it plays
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(250);

    /// <summary>Prints the figures.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="program">The built program, <c>Scuff.App.dll</c>.</param>
    /// <param name="screens">How many screens.</param>
    public static async Task Run(TextWriter output, string program, int screens)
    {
        string home = Directory.CreateTempSubdirectory("scuff-hall-").FullName;
        using Process studio = Start(program, home);
        try
        {
            using HttpClient her = new() { BaseAddress = new Uri(await AddressOf(studio).ConfigureAwait(false)) };
            await Read(her, 50).ConfigureAwait(false);
            double[] alone = await Read(her, Reads).ConfigureAwait(false);
            double[] one = (await Watch(her, 1, withReads: false).ConfigureAwait(false)).Told;
            (double[] told, double[] read) = await Watch(her, screens, withReads: true).ConfigureAwait(false);
            double[] after = await Read(her, Reads).ConfigureAwait(false);

            await output.WriteLineAsync("what                                              p50      p95      most  ms").ConfigureAwait(false);
            Row(output, "a text of 128 counts is read, nobody in the hall", alone);
            Row(output, Say($"  with {screens} screens and four changes a second"), read);
            Row(output, "  nobody in the hall again", after);
            Row(output, "a change reaches the one screen there is", one);
            Row(output, Say($"a change reaches each of {screens} screens"), told);

            // of the two rounds without screens the quieter: what else the machine did is not to be praised as our own
            double[] quiet = At(alone, 0.95) < At(after, 0.95) ? alone : after;
            Ratio(output, "reading with screens to without", read, quiet);
            Ratio(output, Say($"{screens} screens to one"), told, one);
        }
        finally
        {
            studio.Kill();
            await studio.WaitForExitAsync().ConfigureAwait(false);
            Directory.Delete(home, recursive: true);
        }
    }

    private static Process Start(string program, string home)
    {
        ProcessStartInfo start = new("dotnet", [program, "open", "--no-browser", "--port", "0", "--hall", "127.0.0.1:7650"])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.Environment["SCUFF_HOME"] = home;
        return Process.Start(start)!;
    }

    private static async Task<string> AddressOf(Process studio)
    {
        while (await studio.StandardOutput.ReadLineAsync().ConfigureAwait(false) is { } line)
        {
            if (Address().Match(line) is { Success: true } found)
            {
                return found.Value;
            }
        }

        throw new InvalidOperationException("The program did not start.");
    }

    private static async Task<(double[] Told, double[] Read)> Watch(HttpClient her, int screens, bool withReads)
    {
        JsonElement opened = await Ask(her, "/api/hall/open", new { guests = "floor" }).ConfigureAwait(false);
        Uri address = new(opened.GetProperty("addresses")[0].GetProperty("address").GetString()!);
        string code = opened.GetProperty("code").GetString()!;
        long[] sent = new long[Changes + 1];
        Uri root = new(address.GetLeftPart(UriPartial.Authority));
        HttpClient[] devices = [.. Enumerable.Range(0, screens).Select(_ => new HttpClient { BaseAddress = root })];
        using CancellationTokenSource done = new();
        List<Task<double[]>> heard = [];
        foreach (HttpClient device in devices)
        {
            await Ask(device, "/api/hall/pair", new { code }).ConfigureAwait(false);
            Stream stream = await device.GetStreamAsync(new Uri("/api/hall/follow", UriKind.Relative)).ConfigureAwait(false);
            heard.Add(Task.Run(() => Hear(stream, sent)));
        }

        Task<List<double>> reading = Task.Run(() => ReadUntil(her, withReads ? done.Token : new CancellationToken(canceled: true)));
        for (int i = 1; i <= Changes; i++)
        {
            Volatile.Write(ref sent[i], Stopwatch.GetTimestamp());
            await Ask(her, "/api/hall/playhead", new
            {
                hand = "bench",
                takes = true,
                playhead = new
                {
                    at = 0.0,
                    count = (double)i,
                    playing = true,
                    pace = 2.0,
                    speed = 1.0,
                    countIn = 0.0,
                    waits = 0.0,
                    loopFrom = (double?)null,
                    loopTo = (double?)null,
                    view = "above",
                },
            }).ConfigureAwait(false);
            await Task.Delay(Pause).ConfigureAwait(false);
        }

        double[] told = [.. (await Task.WhenAll(heard).ConfigureAwait(false)).SelectMany(t => t)];
        await done.CancelAsync().ConfigureAwait(false);
        double[] read = [.. await reading.ConfigureAwait(false)];
        await Ask(her, "/api/hall/shut", new { }).ConfigureAwait(false);
        Array.ForEach(devices, d => d.Dispose());
        return (told, read);
    }

    private static async Task<double[]> Hear(Stream stream, long[] sent)
    {
        using StreamReader lines = new(stream);
        double[] waited = new double[Changes];
        while (await lines.ReadLineAsync().ConfigureAwait(false) is { } line)
        {
            if (!line.StartsWith("data: {", StringComparison.Ordinal))
            {
                continue;
            }

            long at = Stopwatch.GetTimestamp();
            JsonElement playhead = JsonDocument.Parse(line[6..]).RootElement.GetProperty("playhead");
            if (playhead.ValueKind == JsonValueKind.Object)
            {
                int change = (int)playhead.GetProperty("count").GetDouble();
                waited[change - 1] = Stopwatch.GetElapsedTime(Volatile.Read(ref sent[change]), at).TotalMilliseconds;
                if (change == Changes)
                {
                    break;
                }
            }
        }

        return waited;
    }

    private static async Task<double[]> Read(HttpClient her, int times)
    {
        double[] took = new double[times];
        for (int i = 0; i < times; i++)
        {
            took[i] = await ReadOnce(her, i).ConfigureAwait(false);
            await Task.Delay(20).ConfigureAwait(false);
        }

        return took;
    }

    private static async Task<List<double>> ReadUntil(HttpClient her, CancellationToken done)
    {
        List<double> took = [];
        while (!done.IsCancellationRequested)
        {
            took.Add(await ReadOnce(her, took.Count + 10_000).ConfigureAwait(false));
            await Task.Delay(20, CancellationToken.None).ConfigureAwait(false);
        }

        return took;
    }

    // another text each time, as when she types
    private static async Task<double> ReadOnce(HttpClient her, int number)
    {
        string text = Text128 + string.Create(CultureInfo.InvariantCulture, $"\nnote: {number}\n");
        long began = Stopwatch.GetTimestamp();
        await Ask(her, "/api/read", new { text, dance = (string?)null }).ConfigureAwait(false);
        return Stopwatch.GetElapsedTime(began).TotalMilliseconds;
    }

    private static string Text128 { get; } = Texts.Dance(7, 16);

    private static async Task<JsonElement> Ask(HttpClient client, string path, object body)
    {
        using StringContent content = new(JsonSerializer.Serialize(body), Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await client.PostAsync(new Uri(path, UriKind.Relative), content).ConfigureAwait(false);
        answer.EnsureSuccessStatusCode();
        return await answer.Content.ReadFromJsonAsync<JsonElement>().ConfigureAwait(false);
    }

    private static void Row(TextWriter output, string what, double[] values)
        => output.WriteLine(Say($"{what,-46} {At(values, 0.5),8:F2} {At(values, 0.95),8:F2} {values.Max(),9:F2}"));

    private static void Ratio(TextWriter output, string what, double[] values, double[] reference)
        => output.WriteLine(Say($"{what}: p50 {At(values, 0.5) / At(reference, 0.5):F2}, p95 {At(values, 0.95) / At(reference, 0.95):F2}"));

    private static double At(double[] values, double part)
    {
        double[] sorted = [.. values.Order()];
        return sorted[Math.Min(sorted.Length - 1, (int)(part * sorted.Length))];
    }

    private static string Say(FormattableString words) => FormattableString.Invariant(words);

    [GeneratedRegex(@"http://127\.0\.0\.1:\d+")]
    private static partial Regex Address();
}
