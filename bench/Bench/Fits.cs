using System.Diagnostics;
using System.Globalization;
using Scuff.Analysis.Fit;
using Scuff.Audio;
using Scuff.Audio.Decoding;
using Scuff.Audio.Evaluation;
using Scuff.Audio.Songs;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Music.Labels;
using Scuff.Prose;
using Scuff.Timelines;

namespace Bench;

/// <summary>How well and how fast dances are fitted to tracks: planted breaks found, one fit, a library of maps.</summary>
internal static class Fits
{
    private static readonly string[] Names =
        ["customs-house", "gull-on-the-rail", "lighthouse-keeper", "slack-water-waltz", "tin-lantern", "boathouse-switch", "net-loft"];

    /// <summary>Prints how many planted breaks are found.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="dances">The folder of the demo dances.</param>
    /// <param name="seed">Which songs.</param>
    /// <param name="songs">How many.</param>
    /// <param name="isHeard">Whether the songs are played and heard, or their true maps taken.</param>
    public static void Planted(TextWriter output, string dances, string seed, int songs, bool isHeard)
    {
        int number = 0;
        int near = 0;
        int exact = 0;
        int breaks = 0;
        int found = 0;
        for (int i = 0; i < songs; i++)
        {
            DanceFitter fitter = new(Read(dances, Names[i % Names.Length]) with { Tracks = [], Interruptions = [] });
            Dance dance = fitter.Dance;
            PlantedSong song = PlantedSongs.Make(
                string.Create(CultureInfo.InvariantCulture, $"{seed} {i}"), dance.Length.Value.Floor, dance.BeatsPerBar == 3 ? 3 : 4, i % 4, fitter.RestartPlaces);
            FitPlan? plan = fitter.Fit(isHeard ? Heard(song.Recipe) : True(song.Recipe)).Kindest;

            // a break is where the next wall begins; heard maps may have the whole dance a beat or two early
            int[] planted = [.. song.Breaks.Select(b => b.Count + b.Extra)];
            int[] got = [.. plan?.Breaks.Select(b => b.Begins + b.Length - plan.Begins) ?? []];
            bool isClean = plan?.Breaks.All(b => b.IsAtEnd || b.Restarts) == true;
            bool isNumber = plan is not null && got.Length == planted.Length;
            number += isNumber ? 1 : 0;
            near += isNumber && planted.Zip(got).All(p => Math.Abs(p.First - p.Second) <= dance.Length.Value.Floor) ? 1 : 0;
            exact += isNumber && isClean && planted.SequenceEqual(got) ? 1 : 0;
            breaks += planted.Length;
            found += planted.Count(p => got.Any(g => Math.Abs(g - p) <= dance.Length.Value.Floor));
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{(isHeard ? "heard" : "true")} maps, {songs} songs: right number {Share(number, songs)}, and place within a wall {Share(near, songs)}, and to the count {Share(exact, songs)}; of {breaks} breaks found {Share(found, breaks)}"));
    }

    /// <summary>Prints how long a fit and a match take.</summary>
    /// <param name="output">Where to.</param>
    /// <param name="dances">The folder of the demo dances.</param>
    public static void Speed(TextWriter output, string dances)
    {
        Dance dance = Read(dances, "lighthouse-keeper") with { Tracks = [] };
        Plan plan = PlanBuilder.Plain(dance);
        double reference = Best(200, () => Unroller.Unroll(dance, plan));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"reference: the dance unrolled, {reference:0.000} ms"));
        foreach (string form in (string[])["intro 32, A 64, B 64, A 64, C 64, B 64, A 64, B 64, B 48", "intro 32, A 64, B 68, A 64, B 48, C 64, A 64, B 66, B 64"])
        {
            TrackMap map = TrackMapText.Read($"title: Quay Road\ntempo 120, first beat 0.5, 4/4\n{form}\n").Map!;
            DanceFitter fitter = new(dance);
            int breaks = fitter.Fit(map).Kindest!.Interruptions;
            double ms = Best(60, () => fitter.Fit(map));
            double first = Best(20, () => new DanceFitter(dance).Fit(map));
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"fit of 64 counts to {map.Seconds:0} s with {breaks} breaks: {ms:0.0} ms, {ms / reference:0} times the reference; with the dance prepared anew {first:0.0} ms"));
        }

        TrackMap[] maps = Library(10_000);
        GC.Collect();
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"10,000 maps in memory: {GC.GetTotalMemory(true) / 1e6:0} MB"));
        TrackMatcher matcher = new(Read(dances, "customs-house"));
        foreach (int many in (int[])[2_500, 5_000, 10_000])
        {
            TrackMap[] some = maps[..many];
            double ms = Best(3, () => matcher.Rank(some, 20, 2));
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"match of a dance against {many} maps: {ms:0} ms on two cores, {ms / many / reference:0.00} times the reference a map; peak {Process.GetCurrentProcess().PeakWorkingSet64 / 1e6:0} MB"));
        }
    }

    private static string Share(int part, int all) => string.Create(CultureInfo.InvariantCulture, $"{part} ({(all == 0 ? 1 : (double)part / all):P1})");

    private static double Best(int times, Action work)
    {
        work();
        double best = double.MaxValue;
        for (int i = 0; i < times; i++)
        {
            long start = Stopwatch.GetTimestamp();
            work();
            best = Math.Min(best, Stopwatch.GetElapsedTime(start).TotalMilliseconds);
        }

        return best;
    }

    private static Dance Read(string dances, string name) => DanceReader.Read(File.ReadAllText(Path.Combine(dances, name + ".dance"))).Dance;

    private static TrackMap True(SongRecipe recipe)
    {
        Song song = Song.From(recipe);
        return TruthMap.Of(song.Truth("x"), recipe.Title, "", song.Seconds);
    }

    private static TrackMap Heard(SongRecipe recipe)
    {
        using MemoryStream file = new();
        SongRenderer.Render(Song.From(recipe)).WriteWav(file);
        file.Position = 0;
        return TrackListener.Listen(AudioFile.Read(file).Audio) with { Title = recipe.Title };
    }

    // Tracks of three to four and a half minutes as a club has them: tempi from 70 to 200, every sixth a waltz, one in three with an odd bar or two.
    private static TrackMap[] Library(int many)
    {
        Random dice = new(17);
        TrackMap[] maps = new TrackMap[many];
        for (int i = 0; i < many; i++)
        {
            bool isWaltz = i % 6 == 5;
            int eight = isWaltz ? 6 : 8;
            double beat = 60.0 / dice.Next(70, 201);
            List<TrackSection> sections = [];
            List<TrackBeat> beats = [];
            double length = dice.Next(180, 271);
            while (beats.Count * beat < length)
            {
                int counts = eight * (dice.Next(3) == 0 ? 2 : 4) * (dice.Next(3) == 0 ? 2 : 1);
                counts += dice.Next(18) == 0 ? eight / 2 : 0;
                sections.Add(new TrackSection(beats.Count, counts, ((char)('A' + dice.Next(4))).ToString(), "", 0.6 + (0.4 * dice.NextDouble())));
                for (int k = 0; k < counts; k++)
                {
                    beats.Add(new TrackBeat(0.4 + (beats.Count * beat), (k % (isWaltz ? 3 : 4)) + 1, (k % eight) + 1));
                }
            }

            maps[i] = new TrackMap
            {
                Title = string.Create(CultureInfo.InvariantCulture, $"Track {i}"),
                Seconds = beats[^1].Seconds + 2,
                Beats = [.. beats],
                Tempo = new Estimate<double>(60 / beat, 0.9),
                Meter = new Estimate<Meter>(isWaltz ? Meter.Three : Meter.Four, 0.9),
                Swing = new Estimate<double>(dice.Next(2) == 0 ? 1 : 2, 0.9),
                Sections = [.. sections],
                FirstCount = new Estimate<int>(sections[1].FirstBeat, 0.8),
            };
        }

        return maps;
    }
}
