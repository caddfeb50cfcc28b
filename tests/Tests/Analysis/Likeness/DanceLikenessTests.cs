using Scuff.Analysis;
using Scuff.Analysis.Likeness;
using Scuff.Dances;
using Scuff.Prose;
using Tests.House;

namespace Tests.Analysis.Likeness;

public sealed class DanceLikenessTests
{
    private const string Box = """
        Box and Vine

        level: beginner

        section 1
        1-4 vine right, touch L
        5-8 vine left, touch R

        section 2
        1-2 rock R forward, recover
        3&4 shuffle R back
        5-6 rock L back, recover
        7&8 shuffle L forward
        """;

    public static TheoryData<string> DemoDances => [.. Repository.Files.Where(f => f.StartsWith("demo/dances/", StringComparison.Ordinal) && f.EndsWith(".dance", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(DemoDances))]
    public void A_dance_is_wholly_like_itself_and_like_itself_in_the_other_foot(string file)
    {
        DanceAnalysis analysis = Analysed(Repository.Read(file));
        FeetPrint print = FeetPrint.Read(FeetPrint.Of(analysis));
        FeetPrint mirror = FeetPrint.Read(FeetPrint.Of(DanceAnalysis.Of(analysis.Draft with { Dance = DanceMirror.Mirror(analysis.Dance) })));

        DanceLikeness same = DanceLikeness.Between(print, print);
        DanceLikeness other = DanceLikeness.Between(print, mirror);

        Assert.NotEmpty(print.Sections);
        Assert.Equal((100, false), (same.Percent, same.IsMirrored));
        Assert.Equal(100, other.Percent);
        Assert.Equal(print.Sections.Count, same.Shared.Count);
        Assert.All(other.Shared, s => Assert.Equal(100, s.Percent));
    }

    [Theory]
    [MemberData(nameof(DemoDances))]
    public void Likeness_is_the_same_from_both_sides(string file)
    {
        FeetPrint print = Print(Repository.Read(file));
        FeetPrint box = Print(Box);

        Assert.Equal(DanceLikeness.Between(print, box).Percent, DanceLikeness.Between(box, print).Percent);
    }

    [Theory]
    [MemberData(nameof(DemoDances))]
    public void No_two_dances_are_more_alike_than_the_first_look_allows(string file)
    {
        FeetPrint print = Print(Repository.Read(file));

        foreach (string other in Repository.Files.Where(f => f.StartsWith("demo/dances/", StringComparison.Ordinal) && f.EndsWith(".dance", StringComparison.Ordinal)))
        {
            FeetPrint compared = Print(Repository.Read(other));
            Assert.InRange(DanceLikeness.Between(print, compared).Percent, 0, DanceLikeness.AtMost(print, compared));
        }
    }

    [Fact]
    public void Words_and_styling_do_not_count()
    {
        string said = Box.Replace("vine right, touch L", "step R to side, cross L behind R, step R to side, touch L", StringComparison.Ordinal)
            .Replace("rock R forward, recover", "rock forward on right, recover on left", StringComparison.Ordinal);

        Assert.Equal(100, DanceLikeness.Between(Print(Box), Print(said)).Percent);
    }

    [Fact]
    public void A_section_that_two_dances_share_is_found_wherever_it_stands()
    {
        string other = """
            Other Harbour

            section 1
            1-2 step R forward, pivot 1/2 left
            3-4 stomp R, stomp L
            5-8 jazz box R

            section 2
            1-4 vine right, touch L
            5-8 vine left, touch R
            """;

        DanceLikeness likeness = DanceLikeness.Between(Print(Box), Print(other));

        Assert.Equal(new SharedSection("1", "2", 100, IsMirrored: false), Assert.Single(likeness.Shared));
        Assert.InRange(likeness.Percent, 20, 70);
    }

    [Fact]
    public void One_other_step_leaves_a_section_nearly_the_same()
    {
        string other = Box.Replace("vine left, touch R", "vine left, scuff R", StringComparison.Ordinal);

        DanceLikeness likeness = DanceLikeness.Between(Print(Box), Print(other));

        Assert.InRange(likeness.Percent, 80, 99);
        Assert.Equal(2, likeness.Shared.Count);
    }

    [Fact]
    public void What_has_no_steps_is_like_nothing_and_what_is_no_print_is_passed_over()
    {
        FeetPrint none = FeetPrint.Read(FeetPrint.Of(Analysed("Title only\n")));

        Assert.Empty(none.Sections);
        Assert.Equal(0, DanceLikeness.Between(none, Print(Box)).Percent);
        Assert.Equal(0, DanceLikeness.Between(none, none).Percent);
        Assert.Empty(FeetPrint.Read("what is this/1 abc/").Sections);
    }

    private static DanceAnalysis Analysed(string text) => DanceAnalysis.Of(DanceReader.Read(text));

    private static FeetPrint Print(string text) => FeetPrint.Read(FeetPrint.Of(Analysed(text)));
}
