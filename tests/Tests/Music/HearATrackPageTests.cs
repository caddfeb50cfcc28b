using Scuff.Music.Corrections;
using Scuff.Music.Labels;
using Tests.House;

namespace Tests.Music;

/// <summary>The examples of docs/how-to/hear-a-track.md are read as they stand.</summary>
public sealed class HearATrackPageTests
{
    [Fact]
    public void The_map_on_the_page_is_a_map()
    {
        MapReading reading = TrackMapText.Read(Example("track"));

        Assert.Empty(reading.Troubles);
        Assert.Equal((4, 132), (reading.Map!.Sections.Count, reading.Map.Beats.Count));
    }

    [Fact]
    public void The_corrections_on_the_page_are_corrections_and_every_kind_is_among_them()
    {
        CorrectionsReading reading = CorrectionsText.Read(Example("json"));

        Assert.Empty(reading.Troubles);
        Assert.DoesNotContain(reading.Corrections!.All, c => c is Correction.Unknown);
        Assert.Equal(
            typeof(Correction).GetNestedTypes().Where(t => t != typeof(Correction.Unknown)).Select(t => t.Name).Order(),
            reading.Corrections.All.Select(c => c.GetType().Name).Order());
    }

    private static string Example(string language) => Repository.Read("docs/how-to/hear-a-track.md")
        .ReplaceLineEndings("\n")
        .Split($"```{language}\n")[1]
        .Split("\n```")[0];
}
