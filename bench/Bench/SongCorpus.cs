using System.Diagnostics;
using System.Globalization;
using System.Text.Json;
using Scuff.Audio.Songs;

namespace Bench;

/// <summary>Writes songs of our own band as a corpus: <c>manifest.json</c>, <c>audio/ID.wav</c> and <c>truth/ID.json</c>.</summary>
internal static class SongCorpus
{
    private static readonly JsonSerializerOptions Written = new() { WriteIndented = true };

    /// <summary>
    /// Options: <c>--seed WORD</c>, <c>--count N</c> songs of each style (12), <c>--style NAME</c>, <c>--jobs N</c> at once (2),
    /// <c>--crossed N</c> songs whose players follow different styles (0), <c>--strange N</c> songs that keep to none (0), <c>--demo</c> for the tracks of the demo club instead,
    /// <c>--truth-only</c>, <c>--midi</c> for <c>midi/ID.mid</c> as well. False if they make no sense.
    /// </summary>
    public static bool Write(TextWriter output, string folder, string[] options)
    {
        string seed = "songs-1";
        int count = 12;
        int jobs = 2;
        SongStyle? only = null;
        bool hasSound = true;
        bool hasMidi = false;
        int crossed = 0;
        int strange = 0;
        bool isDemo = false;
        for (int i = 0; i < options.Length; i++)
        {
            string? value = i + 1 < options.Length ? options[i + 1] : null;
            switch (options[i])
            {
                case "--truth-only":
                    hasSound = false;
                    continue;
                case "--midi":
                    hasMidi = true;
                    continue;
                case "--demo":
                    isDemo = true;
                    continue;
                case "--seed" when value is not null:
                    seed = value;
                    break;
                case "--count" when int.TryParse(value, CultureInfo.InvariantCulture, out count) && count > 0:
                case "--jobs" when int.TryParse(value, CultureInfo.InvariantCulture, out jobs) && jobs > 0:
                case "--strange" when int.TryParse(value, CultureInfo.InvariantCulture, out strange) && strange >= 0:
                case "--crossed" when int.TryParse(value, CultureInfo.InvariantCulture, out crossed) && crossed >= 0:
                    break;
                case "--style" when value is not null && SongStyles.Named(value) is { } style:
                    only = style;
                    break;
                default:
                    output.WriteLine($"songs FOLDER [--seed WORD] [--count N] [--style NAME] [--crossed N] [--strange N] [--jobs N] [--truth-only] [--midi] [--demo]: what is {options[i]}?");
                    return false;
            }

            i++;
        }

        Directory.CreateDirectory(Path.Combine(folder, "audio"));
        Directory.CreateDirectory(Path.Combine(folder, "truth"));
        Directory.CreateDirectory(Path.Combine(folder, "midi"));
        SongRecipe[] recipes = isDemo
            ? [.. DemoSongs.All.Select(s => s.Recipe)]
            :
            [
                .. Enum.GetValues<SongStyle>()
                    .Where(s => only is null || s == only)
                    .SelectMany(s => Enumerable.Range(0, count).Select(n => SongRecipe.Draw(seed, s, n))),
                .. Enumerable.Range(0, crossed).Select(n => SongRecipe.DrawCrossed(seed, n)),
                .. Enumerable.Range(0, strange).Select(n => SongRecipe.DrawStrange(seed, n)),
            ];
        Stopwatch watch = Stopwatch.StartNew();
        double seconds = 0;
        Lock gate = new();
        Parallel.ForEach(recipes, new() { MaxDegreeOfParallelism = jobs }, recipe =>
        {
            Song song = Song.From(recipe);
            string id = IdOf(recipe);
            if (hasSound)
            {
                using FileStream file = File.Create(Path.Combine(folder, "audio", id + ".wav"));
                SongRenderer.Render(song).WriteWav(file);
            }

            if (hasMidi)
            {
                File.WriteAllBytes(Path.Combine(folder, "midi", id + ".mid"), SongMidi.Write(song));
            }

            File.WriteAllText(Path.Combine(folder, "truth", id + ".json"), song.Truth(id).Write() + "\n");
            lock (gate)
            {
                seconds += song.Seconds;
            }
        });
        object manifest = new
        {
            seed,
            songs = recipes.Select(r => new { id = IdOf(r), group = "generated", style = SongStyles.NameOf(r.Style), audio = $"audio/{IdOf(r)}.wav" }),
        };
        File.WriteAllText(Path.Combine(folder, "manifest.json"), JsonSerializer.Serialize(manifest, Written) + "\n");
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{recipes.Length} songs, {seconds / 60:F0} minutes, in {watch.Elapsed.TotalSeconds:F0} s: {seconds / watch.Elapsed.TotalSeconds:F0} times as fast as they sound"));
        return true;
    }

    private static string IdOf(SongRecipe recipe) => "own-" + recipe.Title.ToLowerInvariant().Replace(' ', '-');
}
