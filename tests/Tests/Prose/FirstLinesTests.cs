using Scuff.Dances;
using Scuff.Prose;

namespace Tests.Prose;

/// <summary>How texts begin that people paste: with or without a title, facts in a line, counts at once.</summary>
public sealed class FirstLinesTests
{
    [Theory]
    [InlineData("1-2 step R side, touch L together\n3-4 step L side, touch R\n")]
    [InlineData("S1: 1-2 walk R, L; 3-4 step R side, touch L\n")]
    [InlineData("[1-4] WALKS AND TOUCH\n1-2 walk R, L\n3-4 step R side, touch L\n")]
    public void A_text_may_begin_with_its_first_counts(string text)
    {
        Dance dance = DanceReader.Read(text).Dance;

        Assert.Equal("", dance.Title);
        Assert.Equal(4, dance.Sections.SelectMany(s => s.Steps).Count());
    }

    [Fact]
    public void Facts_in_a_line_are_claims_and_no_counts()
    {
        Dance dance = DanceReader.Read("Nine Gulls\n32 count, 4 wall, improver\n\nSection 1 (1-8) Vines\n1-4 vine R, touch L\n5-8 vine L, touch R\n").Dance;

        Assert.Equal("Nine Gulls", dance.Title);
        Assert.Equal(32, dance.ClaimedCounts?.Value);
        Assert.Equal(4, dance.ClaimedWalls?.Value);
        Assert.Equal(Level.Improver, dance.ClaimedLevel);
        Assert.Equal(8, dance.Length.Value.Floor);
    }

    [Fact]
    public void A_sentence_about_a_tag_stays_where_it_is_when_the_text_is_tidied()
    {
        const string Sentence = "Tag at the end of wall 5: sway R, sway L";
        Draft draft = DanceReader.Read($"Salt Stair\n\nsection 1\n1-4 vine R, touch L\n5-8 vine L, touch R\n\n{Sentence}\n");

        Assert.Single(draft.Dance.Interruptions);
        Assert.Contains(Sentence, DanceWriter.Tidy(draft), StringComparison.Ordinal);
    }
}
