using Scuff.Audio.Evaluation;
using Scuff.Audio.Songs;
using Scuff.Music;
using Scuff.Music.Labels;

namespace Tests.Analysis.Fit;

/// <summary>Maps to fit to.</summary>
internal static class Maps
{
    /// <summary>A map written by hand: sections of so many counts at 120 beats a minute.</summary>
    public static TrackMap Of(string form, string title = "Quay Road", int beatsInBar = 4)
    {
        MapReading reading = TrackMapText.Read($"title: {title}\ntempo 120, first beat 0.5, {beatsInBar}/4\n{form}\n");
        Assert.NotNull(reading.Map);
        return reading.Map;
    }

    /// <summary>What is true of a song of our own.</summary>
    public static TrackMap Of(SongRecipe recipe, string artist = "")
    {
        Song song = Song.From(recipe);
        return TruthMap.Of(song.Truth("x"), recipe.Title, artist, song.Seconds);
    }
}
