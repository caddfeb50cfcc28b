using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;

namespace Tests.Prose;

/// <summary>Layouts in which people hand sheets on: tables, counts behind the words, facts in one line, talk between the steps (common practice, no source).</summary>
public sealed class PastedLayoutTests
{
    private const string Eight = "1-4 vine R, touch L\n5-8 vine L, touch R\n";

    [Fact]
    public void A_table_with_columns_for_feet_and_facing_is_read_by_its_columns()
    {
        Draft draft = DanceReader.Read("Tar Barrel\n\nCount\tFeet\tWhat we do\tFacing\n1-2\tR L\tstep right to side, touch left beside\t12:00\n"
            + "3-4\tL R\tstep left forward, pivot 1/2 right\t6:00\n5-8\tL R L R\twalk forward\t6:00\n");

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Section section = Assert.Single(draft.Dance.Sections);
        Assert.Equal(8, section.Steps.Count());
        Assert.Contains(section.Lines.SelectMany(l => l.Claims), c => c.Facing.ToString() == "6:00");
    }

    [Fact]
    public void A_column_of_feet_that_says_otherwise_is_asked_about()
        => Assert.Contains(
            DanceReader.Read("Tar Barrel\n\nCount | Steps | Feet\n1-2 | Step right to side, close left to right | L, R\n").Report.Complaints,
            c => c.Severity >= Severity.Question);

    [Fact]
    public void A_column_of_words_to_call_is_not_danced()
    {
        Draft draft = DanceReader.Read("Tar Barrel\n\nSTEPS    ACTUAL FOOTWORK                     CALLS\n"
            + "1 - 2    Rock back on right. Recover onto left.    Back. Rock.\n3 - 4    Step right to side. Touch left beside right.    Side. Touch.\n");

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Equal(4, draft.Dance.Sections.SelectMany(s => s.Steps).Count());
    }

    [Fact]
    public void Counts_behind_the_words_may_be_followed_by_a_clock()
    {
        Draft draft = DanceReader.Read("Tar Barrel\n\nWALKS AND PIVOT\nWalk forward right, left         1-2\nStep right forward, pivot 1/2 left     3-4   (6:00)\n"
            + "Right to side, left beside, right to side, touch left     5 6 7 8\n");

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Section section = Assert.Single(draft.Dance.Sections);
        Assert.Equal(8, section.Length.Value.Floor);
        Assert.Contains(section.Lines.SelectMany(l => l.Claims), c => c.Facing.ToString() == "6:00");
    }

    [Fact]
    public void Each_eight_in_a_line_of_its_own_is_a_section()
        => Assert.Equal(2, DanceReader.Read("Tar Barrel\n\n1-8  Walk forward R, L, R, kick L. Walk back L, R, L, touch R\n"
            + "9-16 Vine right, touch L, vine left, touch R\n").Dance.Sections.Count());

    [Theory]
    [InlineData("24 counts, 4 walls, beginner. Choreographer: Hedda Pool. Intro 12 counts.", "intro", "12")]
    [InlineData("32 count intro - no tags or restarts!!", "intro", "32")]
    [InlineData("Len Scarrow / 32c 2w Beg / intro 16", "intro", "16")]
    [InlineData("Info: intro 16 counts, 1 restart", "intro", "16")]
    [InlineData("Level\tImprover", "level", "Improver")]
    [InlineData("Level - Improver", "level", "Improver")]
    [InlineData("Note: the dance begins after 32 beats", "intro", "32")]
    public void Facts_are_found_in_one_line_of_the_heading(string line, string key, string value)
        => Assert.Contains(DanceReader.Read($"Tar Barrel\n{line}\n\n{Eight}").Dance.Header, h => h.Key == key && h.Value.Contains(value, StringComparison.Ordinal));

    [Theory]
    [InlineData("One easy restart: wall 3, after 8 counts, facing 12 o'clock")]
    [InlineData("On wall 3 dance the first 8 counts and then begin again")]
    [InlineData("Note: Restart on wall 3 after 8 counts.")]
    [InlineData("There is one restart. On wall 3, dance the first 8 counts then start again.")]
    [InlineData("1 restart in wall 3 after 8c")]
    public void A_break_in_the_heading_is_never_taken_for_facts(string line)
    {
        Dance dance = DanceReader.Read($"Tar Barrel\n{line}\n\n{Eight}\n{Eight}").Dance;

        Interruption told = Assert.Single(dance.Interruptions);
        Assert.Equal(3, Assert.Single(told.Walls));
        Assert.Equal(8, told.AfterCounts?.Value.Floor);
        Assert.Null(dance.ClaimedWalls);
    }

    [Fact]
    public void A_break_that_is_told_twice_is_kept_once()
    {
        Dance dance = DanceReader.Read($"Tar Barrel\nRestart: 1 (wall 3)\n\n{Eight}*Restart here on wall 3*\n\n{Eight}\nRESTART: on wall 3 dance 8 counts and restart.\n").Dance;

        Interruption told = Assert.Single(dance.Interruptions);
        Assert.Equal(8, told.AfterCounts?.Value.Floor);
    }

    [Fact]
    public void A_tag_under_its_sentence_may_have_a_title_and_end_with_the_restart()
    {
        Dance dance = DanceReader.Read($"Tar Barrel\n\n{Eight}\n{Eight}\nTAG: on wall 2 after 8 counts\nJazz box\n1-4 Cross R over L, step L back, step R to side, step L together\n"
            + "Then restart the dance\n").Dance;

        Interruption told = Assert.Single(dance.Interruptions);
        Assert.True(told.Restarts);
        Assert.Contains(told.Acts, a => a is InterruptionAct.PlayTag);
        Assert.Equal(4, Assert.Single(dance.Tags).Body.Length.Value.Floor);
    }

    [Theory]
    [InlineData("Please do not alter this step sheet in any way.")]
    [InlineData("For my mum, who always caught the last ferry.")]
    [InlineData("Written for our Tuesday class. Keep smiling, if you go wrong just wave!")]
    [InlineData("Thanks to Nora for finding the music x")]
    [InlineData(">> we danced this bit four times last week and it was fine")]
    public void Talk_is_kept_and_told_without_a_question(string line)
    {
        Draft draft = DanceReader.Read($"Tar Barrel\n\n{Eight}{line}\n");

        Assert.DoesNotContain(draft.Report.Complaints, c => c.Severity >= Severity.Warning);
        Assert.Contains(draft.Dance.Notes, n => n.Words == line);
    }

    [Theory]
    [InlineData("Please turn 1/4 right on wall 3")]
    [InlineData("Leave the last four counts out the third time")]
    [InlineData("You step on the right foot twice here")]
    [InlineData("From wall 4 on skip section 2")]
    public void Talk_that_may_change_the_dance_is_asked_about(string line)
        => Assert.Contains(DanceReader.Read($"Tar Barrel\n\n{Eight}{line}\n").Report.Complaints, c => c.Severity >= Severity.Question);

    [Fact]
    public void The_clock_at_which_the_dance_begins_again_is_held_against_the_turns()
    {
        Dance dance = DanceReader.Read($"Tar Barrel\n\n{Eight}Begin again (you are now facing 9:00)\n").Dance;

        Assert.Contains(dance.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Claims), c => c.Facing == Facing.FromEighths(6));
    }

    [Theory]
    [InlineData("Hello, Sailor!")]
    [InlineData("Dear John")]
    [InlineData("the long way round the old harbour wall")]
    public void A_title_that_sounds_like_a_greeting_stays_the_title(string title)
        => Assert.Equal(title, DanceReader.Read($"{title}\nby Ann Oar\n\n{Eight}").Dance.Title);

    [Fact]
    public void A_break_in_a_comment_is_no_break()
        => Assert.Empty(DanceReader.Read($"Tar Barrel\n\n{Eight}\n{Eight}\n# wall 3: after 8 restart\n## wall 4: after 8 restart\n").Dance.Interruptions);

    [Fact]
    public void A_name_over_the_title_gives_way_to_the_line_that_names_the_dance()
        => Assert.Equal("Harbour Lantern", DanceReader.Read($"THE TIDELINE\nDance of the month: Harbour Lantern\n\n{Eight}").Dance.Title);

    // Found by damaging sheets: nothing stood between the counts and the break, and reading ended in an error of the program.
    [Theory]
    [InlineData("7&    *Restart wall 5*")]
    [InlineData("8    ## RESTART WALL 3")]
    public void Counts_that_hold_nothing_but_a_break_are_asked_about(string line)
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read($"Tar Barrel\n\n1-4 vine R, touch L\n5-6 walk L, R\n{line}\n"));

        Assert.Single(analysis.Dance.Interruptions);
        Assert.Contains(analysis.Report.Complaints, c => c.Rule.Id == "count/missing");
        Assert.Contains(analysis.Report.Complaints, c => c.Rule.Id.StartsWith("interruption/", StringComparison.Ordinal));
    }

    [Fact]
    public void A_turn_after_a_held_step_forward_goes_onto_the_other_foot()
    {
        Dance dance = DanceReader.Read("Tar Barrel\n\n1-2 step R forward, hold\n3-4 1/2 turn L, hold\n").Dance;

        Assert.Equal(Weight.Left, dance.Sections.SelectMany(s => s.Steps).Aggregate(dance.Start, (weight, step) => step.Action.WeightAfter(weight)));
    }

    [Fact]
    public void Styling_is_kept_to_its_last_word()
        => Assert.Contains("like a gull on a windy pier", DanceWriter.Tidy(DanceReader.Read(
            "Tar Barrel\n\n1-2 rock R forward like a gull on a windy pier, recover L\n")), StringComparison.Ordinal);
}
