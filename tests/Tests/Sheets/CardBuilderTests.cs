using Scuff.Analysis;
using Scuff.Prose;
using Scuff.Sheets;

namespace Tests.Sheets;

public sealed class CardBuilderTests
{
    [Fact]
    public void A_card_keeps_figures_facings_and_breaks_and_explains_nothing()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Lantern);
        SheetModel card = Card(SheetSamples.Lantern);

        Assert.True(card.IsCard);
        Assert.Equal(sheet.Title, card.Title);
        Assert.Equal(sheet.Facts, card.Facts);
        Assert.Equal(sheet.Tracks[0].Breaks, card.Tracks[0].Breaks);
        Assert.Equal(sheet.Ending, card.Ending);
        Assert.Equal(sheet.Parts[0].Sections.Select(s => s.Heading), card.Parts[0].Sections.Select(s => s.Heading));
        Assert.Equal(
            sheet.Parts[0].Sections.SelectMany(s => s.Lines).Select(l => (l.Counts, l.Words)),
            card.Parts[0].Sections.SelectMany(s => s.Lines).Select(l => (l.Counts, l.Words)));
        Assert.All(card.Parts[0].Sections, s => Assert.Null(s.Diagram));
        Assert.All(card.Parts[0].Sections.SelectMany(s => s.Lines), l => Assert.True(l.Notes.Count + l.Options.Count == 0));
        Assert.True(card.Notes.Count + card.Moves.Count + card.DiagramKey.Count + card.Cautions.Count == 0);
        Assert.Equal("", card.Key);
    }

    [Fact]
    public void Only_where_a_section_ends_and_where_it_turns_does_a_card_name_the_facing()
    {
        SheetModel card = Card(SheetSamples.Lantern);

        Assert.Equal([null, null, null, "12:00"], card.Parts[0].Sections[0].Lines.Select(l => l.Facing));
        Assert.Equal([null, "9:00", null, "9:00"], card.Parts[0].Sections[1].Lines.Select(l => l.Facing));
    }

    // 66 lines are what a page of A4 takes at six lines to the inch, less two for the printer.
    [Fact]
    public void The_card_of_64_counts_is_one_side_of_plain_text()
    {
        string text = SheetSamples.Draw(Card(House.Repository.Read("demo/dances/lighthouse-keeper.dance")), "text");

        Assert.InRange(text.Split('\n').Length, 30, 66);
    }

    private static SheetModel Card(string text)
        => SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)), new SheetChoices { IsCard = true });
}
