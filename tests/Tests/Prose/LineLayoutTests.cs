using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;

namespace Tests.Prose;

/// <summary>
/// How the counts of pasted sheets lie beside their words: wrapped lines, headings in front, counts behind, a count a line. What is wanted is written out
/// by hand: count, foot, and an eighth of the clock where the body has turned.
/// </summary>
public sealed class LineLayoutTests
{
    [Theory]
    [InlineData("1-4 step R to side, close L beside R,\n    step R to side, touch L beside R\n5-8 vine L, touch R", "1R 2L 3R 4L 5L 6R 7L 8R")]
    [InlineData("1-4 step R to side, close L beside R\nstep R to side, touch L beside R", "1R 2L 3R 4L")]
    [InlineData("1-4 rock R forward, recover L and\nwalk R, L", "1R 2L 3R 4L")]
    [InlineData("JAZZ BOX 1-4 cross R over L, step L back, step R to side, step L together", "1R 2L 3R 4L")]
    [InlineData("S2: WALKS, PIVOT 1-2 walk R, L 3-4 step R forward, pivot 1/2 left", "1R 2L 3R 4L@4")]
    [InlineData("5 LF rock side & RF recover 6 LF cross over RF 7 RF step side", "5L 5&R 6L 7R")]
    [InlineData("(1) rock R back (2) recover L (&) step R to side (3) cross L over R", "1R 2L 2&R 3L")]
    [InlineData("1 RF cross over LF, 2 LF step back, 3 ¼ turn right RF step side, 4 LF together", "1R 2L 3R@2 4L@2")]
    [InlineData("walk R, L (1-2) shuffle R (3&4)", "1R 2L 3R 3&L 4R")]
    [InlineData("walk forward R, L    1-2", "1R 2L")]
    [InlineData("123&4 walk R, L, R, step L together, step R forward", "1R 2L 3R 3&L 4R")]
    [InlineData("1 step R forward\n2 pivot 1/2 left\n3 touch R toe forward\n4 drop heel", "1R 2L@4 3R@4 4R@4")]
    [InlineData("1 R side 2 L behind & R side 3 L cross 4 R side", "1R 2L 2&R 3L 4R")]
    [InlineData("1-4 slow walk R (1-2), slow walk L (3-4)", "1R 3L")]
    [InlineData("1-4 quick quick slow: R forward, L forward, R forward", "1R 2L 3R")]
    public void The_counts_are_found_where_they_stand(string lines, string wanted)
    {
        bool leftFirst = wanted.StartsWith("5L", StringComparison.Ordinal);
        Draft draft = DanceReader.Read($"Net Loft\n\nstart: weight on {(leftFirst ? "R" : "L")}\n\nsection 1\n{lines}\n");

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Equal(wanted, Told(draft.Dance));
    }

    [Theory]
    [InlineData("1-4 vine R, touch L\nThis part is everybody's favourite")]
    [InlineData("1-4 vine R, touch L\narms: hold the brim on 4")]
    [InlineData("1-4 vine R, touch L\n\nstep L to side, touch R")]
    [InlineData("1-4 vine R, touch L\nRepeat 1-4 with L")]
    public void What_does_not_go_on_with_the_moves_stays_a_line_of_its_own(string lines)
    {
        Draft draft = DanceReader.Read($"Net Loft\n\nsection 1\n{lines}\n");

        Assert.Equal("1R 2L 3R 4L", Told(draft.Dance));
    }

    [Theory]
    [InlineData("4 count tag after walls 1 and 3: sway R, L, R, L")]
    [InlineData("4-count tag at the end of every wall: sway R, L, R, L")]
    public void The_length_of_a_tag_is_no_count_of_a_line(string sentence)
    {
        Draft draft = DanceReader.Read($"Net Loft\n\nsection 1\n1-4 vine R, touch L\n5-8 vine L, touch R\n\n{sentence}\n");

        Assert.Equal(8, draft.Dance.Length.Value.Floor);
        Assert.NotEmpty(draft.Dance.Interruptions);
    }

    [Fact]
    public void A_bar_that_ends_on_the_next_one_goes_on_in_the_next_section()
    {
        const string Text = "Harbour Cha\n\ncounts: 16\nwalls: 1\nrhythm: cha cha\n\nsection 1\n1     step R to side\n2-3   rock L back, recover\n4&5   chasse L\n"
            + "6-7   rock R back, recover\n8&1   chasse R\n\nsection 2\n2-3   rock L forward, recover\n4&5   left coaster step\n6-7   walk R, L\n8&    walk R, L\n";

        Draft draft = DanceReader.Read(Text);

        Assert.Equal(["1R 2L 3R 4L 4&R 5L 6R 7L 8R 8&L", "1R 2L 3R 4L 4&R 5L 6R 7L 8R 8&L"], draft.Dance.Sections.Select(Feet));
        Assert.True(DanceAnalysis.Of(draft).Report.IsClean);
        Assert.Equal(Danced.Of(draft.Dance), Danced.Of(DanceReader.Read(DanceWriter.Tidy(draft)).Dance));
        Assert.Equal(
            ["1L 2R 3L 4R 4&L 5R 6L 7R 8L 8&R", "1L 2R 3L 4R 4&L 5R 6L 7R 8L 8&R"],
            DanceReader.Read(MirrorWriter.Write(draft).Text).Dance.Sections.Select(Feet));
    }

    [Fact]
    public void Counts_that_begin_again_within_a_section_go_on()
    {
        Draft draft = DanceReader.Read("Harbour Cha\n\nsection 1\n1 step R to side\n2-3 rock L back, recover\n4&1 chasse L\n2-3 rock R back, recover\n4 touch R together\n");

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Equal("1R 2L 3R 4L 4&R 5L 6R 7L 8R", Feet(draft.Dance.Sections.Single()));
    }

    [Fact]
    public void A_clock_time_with_a_dot_is_mirrored()
    {
        Draft draft = DanceReader.Read("Net Loft\n\nsection 1\n1-2 step R forward, pivot 1/4 L 9.00\n");

        Assert.Contains("3.00", MirrorWriter.Write(draft).Text, StringComparison.Ordinal);
    }

    private static string Feet(Section section) => string.Join(' ', section.Steps.OrderBy(s => s.Count.Place)
        .Select(s => $"{s.Count.Label}{(s.Action.Foot == ActingFoot.Left ? 'L' : 'R')}"));

    [Fact]
    public void A_heading_in_front_of_its_counts_is_not_lost()
    {
        Draft draft = DanceReader.Read("Net Loft\n\nsection 1\n1-4 vine R, touch L\nSIDE, TOUCHES 5-8 step L to side, touch R, step R to side, touch L\n");

        Assert.Contains("SIDE, TOUCHES", DanceWriter.Tidy(draft), StringComparison.Ordinal);
        Assert.Equal("1R 2L 3R 4L 5L 6R 7R 8L", Told(draft.Dance));
    }

    private static string Told(Dance dance)
    {
        List<string> told = [];
        Turn turned = Turn.None;
        foreach (WrittenStep step in dance.Sections.SelectMany(s => s.Steps).OrderBy(s => s.Count.Place).Where(s => s.Action.Foot is ActingFoot.Left or ActingFoot.Right))
        {
            turned += step.Action.Turn;
            int eighths = ((turned.Eighths.Floor % 8) + 8) % 8;
            told.Add($"{step.Count.Label}{(step.Action.Foot == ActingFoot.Left ? 'L' : 'R')}{(eighths == 0 ? "" : "@" + eighths)}");
        }

        return string.Join(' ', told);
    }
}
