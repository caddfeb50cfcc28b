using Scuff.Repertoire.Storage;

namespace Tests.Repertoire.Storage;

public sealed class NamingTests
{
    private static readonly string[] Titles = ["Tin Lantern", "Tin", "Tîn Tide!", "Søndag", "🎵", "Tin Lantern 2"];

    [Theory]
    [InlineData("tin lantern", "Tin Lantern")]
    [InlineData("TIN-LANTERN", "Tin Lantern")]
    [InlineData("tin", "Tin")]
    [InlineData("tin t", "Tîn Tide!")]
    [InlineData("son", "Søndag")]
    [InlineData("🎵", "🎵")]
    [InlineData("tin l", "Tin Lantern, Tin Lantern 2")]
    [InlineData("lantern", "")]
    [InlineData(" ", "")]
    [InlineData("", "")]
    public void A_thing_is_found_by_its_title_or_the_beginning_of_it(string typed, string found)
        => Assert.Equal(found, string.Join(", ", Naming.Find(Titles, t => t, typed)));
}
