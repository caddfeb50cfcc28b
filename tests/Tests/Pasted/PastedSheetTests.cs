using Scuff.Dances;
using Scuff.Prose;
using Tests.Prose;

namespace Tests.Pasted;

/// <summary>
/// Whole sheets in the layouts of many hands, written by a person who knew nothing of the reader; half of them are only ever counted. Fails when fewer are
/// understood than were, or when more are understood wrongly without a question.
/// </summary>
public sealed class PastedSheetTests(ITestOutputHelper output)
{
    [Theory]
    [InlineData("seen", 166, 0)]
    [InlineData("unseen", 74, 13)]
    public void A_sheet_is_understood_as_it_stands(string folder, int leastRight, int mostWrong)
    {
        List<(PastedSheet Sheet, List<string> Wrong, List<string> Asked)> all = [];
        foreach (PastedSheet sheet in PastedSheet.Load(folder))
        {
            (List<string> wrong, List<string> asked) = sheet.Run();
            all.Add((sheet, wrong, asked));
        }

        int right = all.Count(s => s.Wrong.Count == 0 && s.Asked.Count == 0);
        int silent = all.Count(s => s.Wrong.Count > 0 && s.Asked.Count == 0);
        string told = $"{folder}: {all.Count} sheets, {right} right, {all.Count - right - silent} asked about, {silent} wrong in silence";
        output.WriteLine(told);
        if (folder != "unseen")
        {
            // what the unseen are judged by is not shown to whoever makes the reader better
            told += string.Concat(all.Where(s => s.Wrong.Count + s.Asked.Count > 0).Select(s => $"\n{s.Sheet.File}\n  " + string.Join("\n  ", s.Wrong.Concat(s.Asked))));
        }

        Assert.True(all.Count >= 22, told);
        Assert.True(right >= leastRight, told);
        Assert.True(silent <= mostWrong, told);
    }

    [Theory]
    [InlineData("seen")]
    [InlineData("unseen")]
    public void Tidied_it_is_the_same_dance_and_twice_the_same_text(string folder)
    {
        foreach (PastedSheet sheet in PastedSheet.Load(folder))
        {
            Draft draft = DanceReader.Read(sheet.Text);
            string tidy = DanceWriter.Tidy(draft);
            Draft again = DanceReader.Read(tidy);

            Assert.True(Danced.Of(draft.Dance).SequenceEqual(Danced.Of(again.Dance)), $"{sheet.File} is danced otherwise once it is tidied");
            Assert.True(tidy == DanceWriter.Tidy(again), $"{sheet.File} is not settled");
        }
    }
}
