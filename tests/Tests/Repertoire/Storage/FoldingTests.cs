using Scuff.Repertoire.Storage;

namespace Tests.Repertoire.Storage;

public sealed class FoldingTests
{
    [Theory]
    [InlineData("Harbour", "harbour")]
    [InlineData("ÀÉÎÕÜ", "aeiou")]
    [InlineData("Łódź", "lodz")]
    [InlineData("Ærø", "aero")]
    [InlineData("Œuvre", "oeuvre")]
    [InlineData("Þór", "thor")]
    [InlineData("STRASSE Straße", "strasse strasse")]
    [InlineData("Việt Nam", "viet nam")]
    [InlineData("e\u0301te\u0301", "ete")]
    [InlineData("Ωδή ΣΟΦΟΣ σοφός", "ωδη σοφοσ σοφοσ")]
    [InlineData("Ёлка", "ёлка")]
    [InlineData("日本 🎵 ½", "日本 🎵 ½")]
    [InlineData("", "")]
    public void Case_and_accents_go(string text, string folded) => Assert.Equal(folded, Folding.Fold(text));

    [Fact]
    public void A_line_has_single_blanks() => Assert.Equal("tin lantern", Folding.FoldLine("\t Tin \n  Lantern "));

    [Fact]
    public void Folding_twice_changes_nothing()
        => Assert.All(Enumerable.Range(0, 0xD800).Select(c => Folding.Fold(((char)c).ToString())), f => Assert.Equal(f, Folding.Fold(f)));
}
