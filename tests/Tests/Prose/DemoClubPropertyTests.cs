using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Timelines;

namespace Tests.Prose;

/// <summary>What holds of every dance, tried on each dance of the demo club.</summary>
public sealed class DemoClubPropertyTests
{
    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    public static TheoryData<string> All => [.. SeedTexts.Demo.Concat(SeedTexts.Faulty).Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(Demo))]
    public void Turns_add_to_the_facing_and_the_weight_is_never_nowhere(string name)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Text(name)));

        DancedLaws.AssertHeld(analysis.WallTimeline);
        DancedLaws.AssertHeld(analysis.PlainTimeline);
        foreach (TrackTimeline danced in analysis.TrackTimelines)
        {
            DancedLaws.AssertHeld(danced.Timeline);
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void All_walls_lead_back_to_the_starting_spot_when_a_wall_turns(string name)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Text(name)));
        Assert.NotNull(analysis.NetTurn);
        if (analysis.Walls is > 1)
        {
            DancedLaws.AssertComesHome(analysis.PlainTimeline);
        }
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Mirrored_twice_it_is_the_dance_again(string name)
    {
        Dance dance = DanceReader.Read(Text(name)).Dance;

        Assert.Equal(dance, DanceMirror.Mirror(DanceMirror.Mirror(dance)));
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void The_mirrored_dance_is_danced_with_the_other_feet(string name)
    {
        Dance dance = DanceReader.Read(Text(name)).Dance;
        Dance mirrored = DanceMirror.Mirror(dance);
        Timeline here = Unroller.Unroll(dance, PlanBuilder.Plain(dance));
        Timeline there = Unroller.Unroll(mirrored, PlanBuilder.Plain(mirrored));

        Assert.Equal(here.Steps.Select(s => s.WeightAfter.Mirrored()), there.Steps.Select(s => s.WeightAfter));
        Assert.Equal(here.Steps.Select(s => Facing.FromEighths(-s.FacingAfter!.Value.Eighths)), there.Steps.Select(s => s.FacingAfter!.Value));
    }

    [Theory]
    [MemberData(nameof(All))]
    public void Spans_lie_in_the_text_and_within_those_they_belong_to(string name)
    {
        string text = Text(name);

        Assert.Empty(SpanFaults(DanceReader.Read(text), text));
    }

    [Fact]
    public void Spans_of_the_corpus_lie_in_the_text_and_within_those_they_belong_to()
    {
        List<string> faults = [];
        foreach (string text in SeedTexts.Cases.Select(SeedTexts.TextOf))
        {
            faults.AddRange(SpanFaults(DanceReader.Read(text), text));
        }

        Assert.True(faults.Count == 0, $"{faults.Count} faults\n{string.Join('\n', faults.Take(20))}");
    }

    private static string Text(string name) => SeedTexts.Demo.Concat(SeedTexts.Faulty).First(d => d.Name == name).Text;

    private static List<string> SpanFaults(Draft draft, string text)
    {
        List<string> faults = [];
        TextSpan whole = new(0, text.Length);
        foreach (Diagnostic complaint in draft.Report.Complaints)
        {
            Within(faults, text, complaint.Rule.Id, complaint.Span, whole);
        }

        foreach (Section section in draft.Dance.Sections.Concat(draft.Dance.Tags.Select(t => t.Body)))
        {
            Within(faults, text, "section", section.Span, whole);
            int before = section.Span.Start;
            foreach (WrittenLine line in section.Lines)
            {
                Within(faults, text, "line", line.Span, whole);
                Within(faults, text, "label", line.LabelSpan, line.Span);
                if (line.Span.Start < before)
                {
                    faults.Add($"the line {Words(text, line.Span)} comes before what is written above it");
                }

                before = line.Span.Start;
                foreach (WrittenMove move in line.Moves)
                {
                    Within(faults, text, "move", move.Span, line.Span);
                    foreach (WrittenStep step in move.Steps)
                    {
                        Within(faults, text, "step", step.Span, line.Span);
                    }
                }

                foreach (StepOption option in line.Options)
                {
                    Within(faults, text, "option", option.Span, whole);
                }

                foreach (Note note in line.Notes)
                {
                    Within(faults, text, "note", note.Span, whole);
                }
            }
        }

        return faults;
    }

    private static void Within(List<string> faults, string text, string what, TextSpan inner, TextSpan outer)
    {
        if (inner.Start < outer.Start || inner.End > outer.End || inner.Length < 0)
        {
            faults.Add($"{what} {inner.Start}+{inner.Length} {Words(text, inner)} is not within {outer.Start}+{outer.Length} {Words(text, outer)}");
        }
    }

    private static string Words(string text, TextSpan span) => span.Start >= 0 && span.Length >= 0 && span.End <= text.Length && span.Length < 200 ? $"'{text.Substring(span.Start, span.Length)}'" : "";
}
