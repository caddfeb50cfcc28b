using System.Text.Json;
using Scuff.Audio.Evaluation;

namespace Scuff.Audio.Songs;

/// <summary>A song as a score: every note of every player, and where the beats are.</summary>
public sealed class Song
{
    private readonly SongGrid _grid;

    private Song(SongRecipe recipe, SongGrid grid, ValueList<SongNote> notes)
    {
        Recipe = recipe;
        _grid = grid;
        Notes = notes;
    }

    /// <summary>What it was made from.</summary>
    public SongRecipe Recipe { get; }

    /// <summary>All notes, in order of their start.</summary>
    public ValueList<SongNote> Notes { get; }

    /// <summary>Length of the sound in seconds: until the last chord has died away, or the fade has ended.</summary>
    public double Seconds => _grid.TimeOfBeat(_grid.Beats.Count) + (Recipe.HasFinalChord ? 2.5 : 0.4);

    /// <summary>Seconds at which the fade begins and ends; null without a fade.</summary>
    internal (double From, double To)? Fade => Recipe.FadeBeats > 0
        ? (_grid.TimeOfBeat(Math.Max(0, _grid.Beats.Count - Recipe.FadeBeats)), _grid.TimeOfBeat(_grid.Beats.Count))
        : null;

    /// <summary>Makes the song of a recipe.</summary>
    /// <exception cref="ArgumentException">A number of the recipe is out of its range; the message names it.</exception>
    public static Song From(SongRecipe recipe)
    {
        if (Fault(recipe) is string rule)
        {
            throw new ArgumentException(rule, nameof(recipe));
        }

        SongGrid grid = new(recipe);
        return new(recipe, grid, new SongWriter(recipe, grid).Write());
    }

    /// <summary>What is true of the song, exactly.</summary>
    /// <param name="id">Name of the song in its corpus.</param>
    /// <param name="group">Part of the corpus.</param>
    public TrackTruth Truth(string id, string group = "generated")
    {
        ValueList<double> beats = [.. Enumerable.Range(0, _grid.Beats.Count).Select(TimeOf)];
        return new()
        {
            Id = id,
            Group = group,
            Style = SongStyles.NameOf(Recipe.Style),
            Meter = Recipe.Meter,
            Beats = beats,
            BarPosition = [.. _grid.Beats.Select(b => b.Position)],
            BeatsInBar = [.. _grid.Beats.Select(b => b.BeatsInBar)],
            Downbeats = [.. beats.Where((_, i) => _grid.Beats[i].Position == 1)],
            Counts = [.. _grid.Beats.Select(b => b.Count)],
            CountCycle = Recipe.CountCycle,
            TempoBpm = Tempo(),
            TempoNominal = Recipe.Tempo,
            Sections =
            [
                .. Recipe.Sections.Select((s, i) => new TruthSection(
                    TimeOf(_grid.Firsts[i]), TimeOf(EndOf(i)), s.Label, s.Name, _grid.Lengths[i], s.Bars + s.ExtraBars + (s.ShortBar > 0 ? 1 : 0))),
            ],
            Breaks = [.. Recipe.Sections.SelectMany(BreaksOf)],
            SwingRatio = Recipe.Style == SongStyle.Jig ? 2 : Recipe.Swing,
            SwingLevel = Recipe.SwingLevel == SwingLevel.Eighth ? "eighth" : "sixteenth",
            Features = Features(),
            Instruments = "own band",

            // three notes to a beat have no long and short half
            Checks = new(Swing: Recipe.Style != SongStyle.Jig),
        };
    }

    // The first rule that the recipe breaks; null if none.
    private static string? Fault(SongRecipe recipe)
    {
        (bool Holds, string Rule)[] rules =
        [
            (recipe.Sections.Count > 0, "A song has a section."),
            (recipe.Tempo is >= 40 and <= 300, "The tempo lies from 40 to 300 beats a minute."),
            (recipe.Swing is >= 1 and <= 2.2, "The swing ratio lies from 1 to 2.2."),
            (recipe.Drift is >= 0 and <= 0.1, "The drift lies from 0 to a tenth."),
            (recipe.Looseness is >= 0 and <= 30, "The looseness lies from 0 to 30 milliseconds."),
            (recipe.SilenceBefore is >= 0 and <= 30, "The silence before lies from 0 to 30 seconds."),
            (recipe.PickupBeats >= 0 && recipe.PickupBeats < recipe.Meter, "A pickup is shorter than a bar."),
            (recipe.CountInBeats is >= 0 and <= 16, "A count-in has up to 16 beats."),
            (recipe.SlowingBeats >= 0 && recipe.FadeBeats >= 0, "A slowing end and a fade have no negative length."),
            (recipe.Sections.All(s => s.Bars is > 0 and <= 256), "A section has from 1 to 256 bars."),
            (recipe.Sections.All(s => s.ExtraBars is >= 0 and <= 8), "A section has up to 8 extra bars."),
            (recipe.Sections.All(s => s.ShortBar >= 0 && s.ShortBar < recipe.Meter), "A short bar is shorter than a bar."),
            (recipe.Sections.All(s => s.StopBeats >= 0 && s.StopBeats < s.Bars * recipe.Meter), "A stop is shorter than its section."),
            (recipe.Sections.All(s => s.TempoFactor is >= 0.5 and <= 2), "The tempo of a section lies from half to twice that of the song."),
            (recipe.Sections.All(s => s.Hold is >= 1 and <= 8), "A beat is held from 1 to 8 beats."),
        ];
        return Array.Find(rules, r => !r.Holds).Rule;
    }

    private double TimeOf(int beat) => Math.Round(_grid.TimeOfBeat(beat), 4);

    private int EndOf(int section) => _grid.Firsts[section] + _grid.Lengths[section];

    private IEnumerable<TruthBreak> BreaksOf(SectionRecipe section, int index)
    {
        if (section.StopBeats > 0)
        {
            yield return new(TimeOf(EndOf(index) - section.StopBeats), TimeOf(EndOf(index)), AnswerBreak.Stop, section.StopBeats);
        }

        // an intro without drums is no drop: nothing has been dropped yet
        if (index > 0 && section.Drums == DrumPart.None && Recipe.Sections.Any(s => s.Drums is not (DrumPart.None or DrumPart.Hand)))
        {
            yield return new(TimeOf(_grid.Firsts[index]), TimeOf(EndOf(index)), AnswerBreak.Drop, _grid.Lengths[index]);
        }
    }

    private double Tempo()
    {
        int body = _grid.Beats.Count - 1 - Recipe.SlowingBeats;
        double[] intervals = [.. Enumerable.Range(0, Math.Max(1, body)).Select(i => _grid.TimeOfBeat(i + 1) - _grid.TimeOfBeat(i))];
        bool isUneven = Recipe.Sections.Any(s => s.TempoFactor != 1 || s.Hold != 1);
        return Math.Round(60 / (isUneven ? intervals.Order().ElementAt(intervals.Length / 2) : intervals.Average()), 3);
    }

    private Dictionary<string, JsonElement> Features()
    {
        ValueList<SectionRecipe> sections = Recipe.Sections;
        (string Name, object Value)[] all =
        [
            ("looseness_ms", Recipe.Looseness),
            ("drift", Recipe.Drift),
            ("silence_before", Recipe.SilenceBefore),
            ("pickup", Recipe.PickupBeats),
            ("count_in", Recipe.CountInBeats),
            ("slowing_beats", Recipe.SlowingBeats),
            ("fade_beats", Recipe.FadeBeats),
            ("pushed_chords", Recipe.PushedChords),
            ("stop_breaks", sections.Count(s => s.StopBeats > 0)),
            ("extra_bars", sections.Sum(s => s.ExtraBars)),
            ("short_bars", sections.Count(s => s.ShortBar > 0)),
            ("drumless", sections.All(s => s.Drums is DrumPart.None or DrumPart.Hand)),
            ("free_intro", sections[0].Drums == DrumPart.None),
            ("half_time", sections.Any(s => s.Drums == DrumPart.HalfTime)),
            ("key_change", sections.Any(s => s.Transpose != sections[0].Transpose)),
            ("tempo_step", sections.Any(s => s.TempoFactor != 1)),
            ("held_beats", sections.Count(s => s.Hold != 1)),
        ];
        return all.ToDictionary(f => f.Name, f => JsonSerializer.SerializeToElement(f.Value));
    }
}
