using Scuff.Analysis;
using Scuff.Analysis.Cautions;
using Scuff.Prose;
using Scuff.Sheets;

namespace Tests.Analysis.Cautions;

public sealed class CautionTests
{
    private const string Rest = "5-6  step R to side, touch L together\n7-8  step L to side, touch R together\n";

    /// <summary>The first four counts, and the caution they call for with its sentence.</summary>
    public static TheoryData<string, CautionKind?, string> Lines { get; } = new()
    {
        { "1-2  step R to side, touch L together\n3-4  step L to side, touch R together\n", null, "" },
        { "1-4  swivel heels right, swivel heels left, swivel heels right, swivel heels to centre\n", CautionKind.KneeTwist, "Swivels and twists (4, the first in section 1 count 1)" },
        { "1-2  step R forward, hold\n3-4  turn 3/4 left on R\n", CautionKind.OneFootSpin, "Turn on one foot (¾ turn, section 1 count 3)" },
        { "1-2  jump forward, hold\n3-4  step R to side, step L together\n", CautionKind.Jumps, "Jumps and hops (1, the first in section 1 count 1)" },
        { "1-2  lunge R to side, recover\n3-4  lunge R to side, recover\n", CautionKind.Kneel, "Deep bends (2, the first in section 1 count 1)" },
        { "1-4  stomp R, stomp L, stomp R, stomp L\n", CautionKind.Stomps, "Stomps (4, the first in section 1 count 1)" },
    };

    [Theory]
    [MemberData(nameof(Lines))]
    public void What_bodies_should_take_care_of_is_told(string line, CautionKind? kind, string words)
    {
        DanceAnalysis analysis = Of($"section 1\n{line}{Rest}");
        Assert.Equal(kind is { } found ? [found] : [], analysis.Cautions.Select(caution => caution.Kind));

        SheetModel sheet = SheetBuilder.Build(analysis);
        if (kind is null)
        {
            Assert.Empty(sheet.Cautions);
        }
        else
        {
            Assert.Equal(2, sheet.Cautions.Count);
            Assert.StartsWith(words, sheet.Cautions[0], StringComparison.Ordinal);
            Assert.Equal(CautionLabels.English.Deference, sheet.Cautions[1]);
        }
    }

    [Theory]
    [InlineData(3, false)]
    [InlineData(2, true)]
    public void Many_turns_are_more_than_a_full_one_in_eight_counts(int without, bool isTold)
    {
        string section = string.Concat(Enumerable.Range(0, 4).Select(i =>
            $"{(2 * i) + 1}-{(2 * i) + 2}  " + (i < 5 - without ? "step R forward, pivot 1/2 left\n" : "touch R to side, touch R together\n")));
        Assert.Equal(isTold, Of("section 1\n" + section).Cautions.Any(caution => caution.Kind == CautionKind.ManyTurns));
    }

    [Fact]
    public void A_long_way_is_told_with_its_metres_and_side()
    {
        DanceAnalysis analysis = Of("section 1\n1-4  vine left, step R together\n5-8  vine left, step R together\n\nsection 2\n1-4  vine left, step R together\n5-8  vine left, touch R together\n");
        Caution caution = Assert.Single(analysis.Cautions);
        Assert.Equal(CautionKind.SharedFloor, caution.Kind);
        Assert.StartsWith($"The dance travels {caution.Number.ToDouble():0.#} m to the left (section 2 count ", SheetBuilder.Build(analysis).Cautions[0], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(105, false)]
    [InlineData(106, true)]
    public void Quick_feet_are_told_from_three_and_a_half_steps_a_second(int tempo, bool isTold)
    {
        DanceAnalysis analysis = Of($"section 1\n1&2&3&4&5&6& run R, L, R, L, R, L, R, L, R, L, R, L\n7-8  step R back, step L together\n\ntrack: \"Gale\" by The Ferry Queue, {tempo} bpm, intro 16\n");
        Assert.Equal(isTold, analysis.Cautions.Any(caution => caution.Kind == CautionKind.FastFeet));
    }

    [Fact]
    public void Every_kind_has_its_sentence_and_they_stay_few()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(File.ReadAllText(Path.Combine(House.Repository.Root, "demo", "dances", "capstan-stomp.dance"))));
        Assert.Equal([CautionKind.KneeTwist, CautionKind.Jumps, CautionKind.Stomps], analysis.Cautions.Select(caution => caution.Kind));
    }

    [Fact]
    public void A_place_in_a_tag_or_a_part_is_named_by_it()
    {
        SheetModel tag = SheetBuilder.Build(Of($"section 1\n1-2  step R to side, touch L together\n3-4  step L to side, touch R together\n{Rest}\ntag \"Bell\" 2 counts\n1-2  jump forward, hold\n"));
        Assert.StartsWith("Jumps and hops (1, the first in tag “Bell” count 1)", tag.Cautions[0], StringComparison.Ordinal);

        SheetModel part = SheetBuilder.Build(Of($"sequence: A B\n\npart A\n\nsection 1\n1-2  step R to side, touch L together\n3-4  step L to side, touch R together\n{Rest}\npart B\n\nsection 1\n1-2  jump forward, hold\n3-4  step R to side, step L together\n{Rest}"));
        Assert.StartsWith("Jumps and hops (1, the first in part B section 1 count 1)", part.Cautions[0], StringComparison.Ordinal);
    }

    private static DanceAnalysis Of(string body) => DanceAnalysis.Of(DanceReader.Read("Care\n\n" + body));
}
