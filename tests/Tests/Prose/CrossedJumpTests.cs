using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;

namespace Tests.Prose;

/// <summary>
/// Which foot lands in front when both jump to a cross: as her words say, as the unwind after it allows, or left open. Common practice, no source: the
/// legs come apart by turning away from the foot in front.
/// </summary>
public sealed class CrossedJumpTests
{
    [Theory]
    [InlineData("jump out, jump crossing R over L", Foot.Right)]
    [InlineData("jump out, jump cross L over R", Foot.Left)]
    [InlineData("jump apart, jump cross left in front of right", Foot.Left)]
    [InlineData("jump feet apart, jump feet crossed with left in front", Foot.Left)]
    [InlineData("jump out, jump crossing right over left", Foot.Right)]
    [InlineData("jump out, jump cross L behind R", Foot.Right)]
    [InlineData("jump out, jump cross R behind L", Foot.Left)]
    public void The_foot_in_front_is_the_one_she_names(string words, Foot front)
    {
        Draft draft = Read("1-2 " + words);

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Equal(front, Jump(draft.Dance).FootInFront);
    }

    [Theory]
    [InlineData("jump out, jump cross, unwind 1/2 left, hold", Foot.Right, -4)]
    [InlineData("jump out, jump cross, unwind 1/2 right, hold", Foot.Left, 4)]
    [InlineData("jump out, jump cross L over R, unwind 1/2, hold", Foot.Left, 4)]
    [InlineData("jump out, jump cross R over L, unwind 1/2, hold", Foot.Right, -4)]
    [InlineData("jump out cross unwind 1/2 right", Foot.Left, 4)]
    [InlineData("L jump out cross unwind", Foot.Left, 4)]
    public void Turn_and_cross_tell_each_other(string words, Foot front, int eighths)
    {
        Draft draft = Read("1-4 " + words);

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Equal(front, Jump(draft.Dance).FootInFront);
        Assert.Equal(eighths, draft.Dance.Sections.SelectMany(s => s.Steps).Sum(s => s.Action.Turn.Eighths.Floor));
    }

    [Fact]
    public void What_nobody_says_stays_open()
    {
        Draft draft = Read("1-2 jump out, jump cross");

        Assert.Null(Jump(draft.Dance).FootInFront);
        Assert.Equal(Direction.Across, Jump(draft.Dance).Direction);
    }

    [Fact]
    public void A_half_turn_without_a_way_is_asked_about_when_the_cross_is_open()
        => Assert.Contains(Read("1-4 jump out, jump cross, unwind 1/2, hold").Report.Complaints, c => c.Severity >= Severity.Warning);

    [Theory]
    [InlineData("jump crossing R over L")]
    [InlineData("jump crossing L over R")]
    [InlineData("jump cross")]
    public void The_canonical_words_are_read_back_as_the_same_jump(string words)
        => Assert.Equal(words, Phrasing.Describe(Jump(Read("1-2 jump out, " + words).Dance)));

    private static Draft Read(string line) => DanceReader.Read($"Net Loft\n\nstart: weight on both\n\nsection 1\n{line}\n");

    private static StepAction Jump(Dance dance) => dance.Sections.SelectMany(s => s.Steps).Single(s => s.Count.Label == "2").Action;
}
