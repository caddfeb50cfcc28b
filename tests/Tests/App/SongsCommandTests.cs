using Scuff.Audio.Decoding;

namespace Tests.App;

public sealed class SongsCommandTests
{
    [Fact]
    public void Every_song_is_named_with_its_dance()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("songs"));

        Assert.Contains("tin-lantern", run.Out, StringComparison.Ordinal);
        Assert.Contains("“Harbour Lights Out” by The Demo Band, 112 beats a minute", run.Out, StringComparison.Ordinal);
    }

    [Fact]
    public void A_song_is_played_into_a_sound_file()
    {
        using ProgramRun run = new();

        Assert.Equal(0, run.Run("songs", "--output", "music", "tin-lantern"));

        Assert.Contains("Wrote " + Path.Combine("music", "harbour-lights-out.wav"), run.Out, StringComparison.Ordinal);
        HeardFile file = AudioFile.Read(Path.Combine(run.Folder, "music", "harbour-lights-out.wav"));
        Assert.InRange(file.Audio.Seconds, 60, 400);
        Assert.Equal("Harbour Lights Out", file.Tags.Title);
        Assert.Equal("The Demo Band", file.Tags.Artist);
    }

    [Fact]
    public void A_dance_without_a_song_is_told_and_nothing_is_written()
    {
        using ProgramRun run = new();

        Assert.Equal(2, run.Run("songs", "--output", "music", "no-such-dance"));

        Assert.Contains("No song of the demo club goes with no-such-dance.", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(run.Folder, "music")));
    }

    [Fact]
    public void A_folder_that_cannot_be_made_is_told()
    {
        using ProgramRun run = new();
        run.Put("music", "a file in the way");

        Assert.Equal(2, run.Run("songs", "--output", "music", "tin-lantern"));

        Assert.Contains("was not written", run.Error, StringComparison.Ordinal);
        Assert.Equal("a file in the way", run.Get("music"));
    }
}
