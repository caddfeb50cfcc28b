using Scuff.Audio;
using Scuff.Audio.Evaluation;
using Scuff.Audio.Signals;
using Scuff.Audio.Songs;
using Scuff.Music;

namespace Tests.Audio;

/// <summary>A few songs of our own that no ear was trained on, played and heard once for all tests.</summary>
public sealed class GuardSongs
{
    /// <summary>What was played and what was heard of it.</summary>
    public sealed record Heard(SongRecipe Recipe, TrackTruth Truth, TrackMap Map, TrackScore Score);

    /// <summary>The songs in the order of <see cref="Names"/>.</summary>
    public IReadOnlyList<Heard> Songs { get; } = [.. Drawn.AsParallel().AsOrdered().Select(d => Hear(SongRecipe.Draw("guard", d.Style, d.Number)))];

    /// <summary>The names of the songs.</summary>
    public static IEnumerable<string> Names => Drawn.Select(d => $"{d.Style} {d.Number}");

    // the number says what is odd about a song: 2, 8 and 10 have a halved bar, 5 has stops and added bars
    private static (SongStyle Style, int Number)[] Drawn =>
        [(SongStyle.TwoStep, 2), (SongStyle.ChaCha, 4), (SongStyle.Waltz, 5), (SongStyle.PopRock, 10)];

    /// <summary>The song of a name.</summary>
    public Heard this[string name] => Songs[Names.ToList().IndexOf(name)];

    private static Heard Hear(SongRecipe recipe)
    {
        Song song = Song.From(recipe);
        StereoSound sound = SongRenderer.Render(song);
        float[] mono = [.. sound.Left.Zip(sound.Right, (l, r) => 0.5f * (l + r))];
        TrackMap map = TrackListener.Listen(new MonoAudio(Resampler.Convert(mono, sound.Rate, Hearing.Rate), Hearing.Rate));
        TrackTruth truth = song.Truth(recipe.Title);
        return new Heard(recipe, truth, map, TrackScore.Of(truth, AnswerOf(map)));
    }

    private static TrackAnswer AnswerOf(TrackMap map)
    {
        double Time(int beat) => beat < map.Beats.Count ? map.Beats[beat].Seconds : map.Seconds;
        return new TrackAnswer
        {
            Beats = [.. map.Beats.Select(b => b.Seconds)],
            Downbeats = [.. map.Beats.Where(b => b.BarPosition == 1).Select(b => b.Seconds)],
            CountOnes = [.. map.Beats.Where(b => b.Count == 1).Select(b => b.Seconds)],
            TempoBpm = map.Tempo.Value,
            SwingRatio = map.Swing.Value,
            Sections = [.. map.Sections.Select(s => new AnswerSection(Time(s.FirstBeat), Time(s.FirstBeat + s.Beats), s.Label))],
            Breaks = [.. map.Breaks.Select(b => new AnswerBreak(b.Start, b.End, b.IsStop ? AnswerBreak.Stop : AnswerBreak.Drop))],
        };
    }
}
