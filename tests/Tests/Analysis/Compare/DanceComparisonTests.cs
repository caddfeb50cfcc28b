using Scuff.Analysis.Compare;
using Scuff.Sheets;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Timing;
using Tests.Sheets;

namespace Tests.Analysis.Compare;

/// <summary>Edits that a choreographer makes, each found and told, and nothing else.</summary>
public sealed class DanceComparisonTests
{
    private const string Lantern = SheetSamples.Lantern;

    [Theory]
    [InlineData("Tin Lantern\n", "Brass Lantern\n", "The title is now “Brass Lantern”, it was “Tin Lantern”.")]
    [InlineData("level: improver", "level: intermediate", "Level: intermediate, was improver.")]
    [InlineData("version: 2\n", "version: 3\n", "Version: 3, was 2.")]
    [InlineData("version: 2\n", "", "Version: no longer stated, was 2.")]
    [InlineData("version: 2\n", "version: 2\nplace: Tarbarrow Quay\n", "Place: Tarbarrow Quay, new.")]
    [InlineData("112 bpm", "114 bpm", "On “Harbour Lights Out”: 114 bpm, was 112 bpm.")]
    [InlineData("intro 32", "intro 16", "On “Harbour Lights Out”: intro 16 counts, was 32 counts.")]
    [InlineData("intro 32", "intro 32, 3:05", "On “Harbour Lights Out”: length 3:05, was not stated.")]
    [InlineData("\"Harbour Lights Out\" by The Demo Band", "\"Slow Bell\" by The Slipway Six", "Danced to “Slow Bell” by The Slipway Six in place of “Harbour Lights Out” by The Demo Band.")]
    [InlineData("wall 4: after 16 restart, with count 8: touch R together\n", "", "On “Harbour Lights Out”: wall 4, after 16 counts: no longer restart, with count 8 as touch R together.")]
    [InlineData("wall 4: after 16 restart, with count 8: touch R together\n", "wall 4: after 8 restart, with count 8: touch R together\n", "On “Harbour Lights Out”: wall 4: now after 8 counts, restart, with count 8 as touch R together; before, after 16 counts, restart, with count 8 as touch R together.")]
    [InlineData("restart, with count 8: touch R together", "restart", "On “Harbour Lights Out”: wall 4, after 16 counts: restart, was restart, with count 8 as touch R together.")]
    [InlineData("wall 2: after 32 tag \"Lamps\"", "wall 3: after 32 tag \"Lamps\"", "On “Harbour Lights Out”: wall 3, after its last count: tag “Lamps”, was in wall 2 after its last count.")]
    [InlineData("wall 5: after 8 bridge", "wall 5: after 16 bridge", "On “Harbour Lights Out”: wall 5: tag “Lamps” moved, now after 16 counts, before after 8 counts.")]
    [InlineData("section 1: box with shuffles", "section 1: lamp box", "Section 1 is headed “lamp box”, was “box with shuffles”.")]
    [InlineData("style: small steps; let", "style: tiny steps; let", "Section 1, counts 7-8: style “tiny steps; let the hip settle on the closing foot”, was “small steps; let the hip settle on the closing foot”.")]
    [InlineData("      option 7&8 \"easier\": triple R in place\n", "", "Section 2, counts 7-8: the option “easier” is gone (triple step in place R).")]
    [InlineData("\"easier\": triple R in place", "\"easier\": kick ball change R", "Section 2, counts 7-8: option “easier” is kick ball change R, was triple step in place R.")]
    [InlineData("5-6   cross R over L, step L to side\n", "5&6   mambo forward R\n", "Section 2, counts 5-6: cross R over L, step L to side became mambo R forward; facing unchanged; weight now on the right foot, was on the left foot.")]
    [InlineData("5-6   step L forward, scuff R", "5-6   step L forward, brush R", "Section 4, count 6: scuff R became brush R; facing and weight unchanged.")]
    [InlineData("3-4   step R forward, pivot", "3-4   step R forward on the ball, pivot", "Section 2, count 3: step R forward became step R forward on the ball; facing and weight unchanged.")]
    [InlineData("1-2   rock R back, recover\n", "1&2   mambo back R\n", "Section 2, counts 1-2: rock R back, recover L became mambo R back; facing unchanged; weight now on the right foot, was on the left foot.")]
    [InlineData("tag \"Lamps\" 4 counts\n1-4   sway R, sway L, sway R, sway L", "tag \"Lamps\" 4 counts\n1-4   sway L, sway R, sway R, sway L", "Tag “Lamps”, counts 1-2: sway R to side, sway L to side became sway L to side, sway R to side.")]
    [InlineData("ending: wall 9, after 8 counts: step R forward, pivot 1/2 left, stomp R\n", "", "There is no ending any more; it was: wall 9, after 8 counts, step R forward, pivot 1/2 left, stomp R together.")]
    [InlineData("ending: wall 9, after 8 counts:", "ending: wall 9, after 16 counts:", "The ending is now: wall 9, after 16 counts, step R forward, pivot 1/2 left, stomp R together; it was: wall 9, after 8 counts, step R forward, pivot 1/2 left, stomp R together.")]
    public void One_edit_is_one_sentence(string old, string now, string sentence)
    {
        Assert.Contains(old, Lantern, StringComparison.Ordinal);
        string[] told = Versions.Sentences(Lantern, Lantern.Replace(old, now, StringComparison.Ordinal));

        Assert.Equal([sentence], told);
    }

    [Theory]
    [InlineData("restart [12:00]", "restart [3:00]", "On “Harbour Lights Out”: wall 4, after 16 counts: [3:00] is written now, was [12:00]; the dance faces 12:00 as before.")]
    [InlineData("restart [12:00]", "restart", "Words only; it is danced as before.")]
    [InlineData("stomp R [6:00]", "stomp R [9:00]", "Ending: [9:00] is written now, was [6:00]; the dance faces 6:00 as before.")]
    public void Brackets_of_a_break_or_an_ending_that_change_alone_are_told(string old, string now, string sentence)
    {
        string bracketed = Bracketed();
        Assert.Contains(old, bracketed, StringComparison.Ordinal);

        Assert.Equal([sentence], Versions.Sentences(bracketed, bracketed.Replace(old, now, StringComparison.Ordinal)));
    }

    [Fact]
    public void Brackets_of_a_break_or_an_ending_that_the_dance_has_turned_away_from_are_told()
    {
        string old = Bracketed();

        // the floor is turned by the same in wall 4 and in wall 9 after the restarts, so that only what is told below is left behind
        string[] told = Versions.Sentences(old, old.Replace("pivot 1/4 left", "pivot 1/4 right", StringComparison.Ordinal));

        Assert.Contains("On “Harbour Lights Out”: wall 7, after 24 counts: [3:00] is still written; the dance faces 9:00 now, was 3:00.", told);
        Assert.DoesNotContain(told, t => t.Contains("wall 4", StringComparison.Ordinal));

        told = Versions.Sentences(old, old.Replace("pivot 1/2 left", "pivot 1/4 left", StringComparison.Ordinal));
        Assert.Contains("Ending: [6:00] is still written; the dance faces 9:00 now, was 6:00.", told);
    }

    [Fact]
    public void A_sheet_does_not_tell_brackets_since_it_prints_what_is_danced()
    {
        string old = Bracketed();
        string now = old.Replace("restart [12:00]", "restart [3:00]", StringComparison.Ordinal).Replace("level: improver", "level: intermediate", StringComparison.Ordinal);

        Assert.Equal(["Level: intermediate, was improver."], ChangeWords.ForSheet(Versions.Compare(old, now), SheetLanguage.English));
    }

    [Fact]
    public void Another_start_of_the_wall_of_an_ending_is_told()
    {
        string old = Lantern.Replace("ending: wall 9,", "ending: last wall (starts at 6:00),", StringComparison.Ordinal);

        Assert.Equal(
            ["The ending is now: last wall (starts at 3:00), after 8 counts, step R forward, pivot 1/2 left, stomp R together; "
                + "it was: last wall (starts at 6:00), after 8 counts, step R forward, pivot 1/2 left, stomp R together."],
            Versions.Sentences(old, old.Replace("starts at 6:00", "starts at 3:00", StringComparison.Ordinal)));
    }

    [Fact]
    public void What_is_special_on_new_music_is_told_with_it()
    {
        const string slow = """

            track: "Slow Bell" by The Slipway Six, 100 bpm, intro 16
            wall 3: after 16 restart, with count 8: touch R together
            ending: wall 6, after 8 counts: stomp R
            """;

        Assert.Equal(
            [
                "New music: “Slow Bell” by The Slipway Six.",
                "On “Slow Bell”: wall 3, after 16 counts: restart, with count 8 as touch R together, new.",
                "On “Slow Bell”: There is an ending now: wall 6, after 8 counts, stomp R together.",
            ],
            Versions.Sentences(Lantern, Lantern + "\n" + slow));
    }

    [Fact]
    public void What_arms_and_head_do_is_compared_by_her_words()
    {
        const string old = "Arms\n\nsection 1\n1-4  raise arms\n5-8  look up\n";

        Assert.Equal(
            ["Section 1, counts 5-8: look up became look down; facing and weight unchanged."],
            Versions.Sentences(old, old.Replace("up", "down", StringComparison.Ordinal)));
        Assert.True(Versions.Compare(old, old.Replace("raise arms", "Raise  arms", StringComparison.Ordinal)).IsSame);
    }

    [Theory]
    [InlineData("1-2   step R to side, step L together", "1-2   R foot to the side, close L")]
    [InlineData("1-4   rocking chair L", "1-4   rock L forward, recover R, rock L back, recover R")]
    [InlineData("1-2   rock R back, recover", "1     rock R back\n2     recover")]
    [InlineData("[9:00]\n5-6   cross", "\n5-6   cross")]
    public void A_rewording_that_dances_the_same_is_words_only(string old, string now)
    {
        Assert.Contains(old, Lantern, StringComparison.Ordinal);
        DanceComparison comparison = Versions.Compare(Lantern, Lantern.Replace(old, now, StringComparison.Ordinal));

        Assert.True(comparison.IsSame);
        DanceChange.WordsOnly words = Assert.IsType<DanceChange.WordsOnly>(Assert.Single(comparison.Changes.ToArray()));
        Assert.Single(words.Places.ToArray());
    }

    // The brackets say 9:00 and 9:00 is danced; one of the two changes, and the other does not.
    [Theory]
    [InlineData("[9:00]\n5-6   cross", "[3:00]\n5-6   cross", "Section 2, count 4: [3:00] is written now, was [9:00]; the dance faces 9:00 as before.")]
    [InlineData(
        "pivot 1/4 left            [9:00]\n5-6   cross",
        "pivot 1/2 left            [9:00]\n5-6   cross",
        "Section 2, count 4: pivot 1/4 left became pivot 1/2 left; now facing 6:00, was 9:00; weight unchanged.",
        "Section 2, count 4: [9:00] is still written; the dance faces 6:00 now, was 9:00.")]
    [InlineData(
        "pivot 1/4 left            [9:00]\n5-6   cross",
        "pivot 1/2 left            [6:00]\n5-6   cross",
        "Section 2, count 4: pivot 1/4 left became pivot 1/2 left; now facing 6:00, was 9:00; weight unchanged.",
        "Section 4, count 8: [9:00] is still written; the dance faces 6:00 now, was 9:00.")]
    public void Brackets_that_do_not_change_with_the_dance_are_told(string old, string now, params string[] sentences)
    {
        Assert.Contains(old, Lantern, StringComparison.Ordinal);
        DanceComparison comparison = Versions.Compare(Lantern, Lantern.Replace(old, now, StringComparison.Ordinal));

        Assert.False(comparison.IsSame);
        Assert.Equal(sentences, ChangeWords.Of(comparison, SheetLanguage.English).Where(s => !s.StartsWith("It is danced to", StringComparison.Ordinal)));
    }

    // A turn that grows moves every facing after it; only the first of the brackets it leaves behind is told.
    [Fact]
    public void Brackets_that_are_left_behind_alike_are_told_once()
    {
        const string old = "Some Dance\n\nsection 1\n1-4  step R forward, pivot 1/4 left, hold, hold [9:00]\n5-8  hold [9:00]\nsection 2\n1-8  hold [9:00]\n";
        DanceChange[] changes = Versions.Changes(old, old.Replace("1/4", "1/2", StringComparison.Ordinal));

        DanceChange.WrittenFacing only = Assert.Single(changes.OfType<DanceChange.WrittenFacing>());
        Assert.Equal(((Facing)Facing.FromClock(9, 0)!, (Facing)Facing.FromClock(6, 0)!), (only.After, only.DancedAfter));
    }

    [Theory]
    [InlineData("wall 2: after 32 tag \"Lamps\"", "Tag \"Lamps\" at the end of wall 2")]
    [InlineData("by: Scuff demo", "By:   Scuff demo")]
    public void Another_wording_outside_the_sections_is_words_only(string old, string now)
    {
        Assert.Contains(old, Lantern, StringComparison.Ordinal);
        DanceComparison comparison = Versions.Compare(Lantern, Lantern.Replace(old, now, StringComparison.Ordinal));

        Assert.Equal([new DanceChange.WordsOnly(default, Elsewhere: true)], comparison.Changes);
    }

    [Fact]
    public void Spaces_and_empty_lines_are_no_change()
        => Assert.Empty(Versions.Changes(Lantern, Lantern.Replace("\n", "\n\n", StringComparison.Ordinal).Replace("   ", "  ", StringComparison.Ordinal)));

    [Fact]
    public void Another_turn_changes_the_facing_there_and_the_walls_and_nothing_further_down()
    {
        string now = Lantern.Replace("pivot 1/4 left            [9:00]", "pivot 1/2 left", StringComparison.Ordinal);

        DanceChange[] changes = Versions.Changes(Lantern, now);

        // the brackets of the last line are left behind
        Assert.Equal(3, changes.Length);
        Assert.Equal(new DanceChange.WallCount(4, 2), changes[0]);
        DanceChange.WrittenFacing left = Assert.IsType<DanceChange.WrittenFacing>(changes[2]);
        Assert.Equal((true, Facing.FromEighths(6), Facing.FromEighths(4)), (left.IsLeftBehind, left.After, left.DancedAfter));
        DanceChange.Steps steps = Assert.IsType<DanceChange.Steps>(changes[1]);
        Assert.Equal(new Landing(Facing.FromEighths(6), Facing.FromEighths(4), false, Weight.Left, Weight.Left), steps.Landing);
    }

    [Fact]
    public void A_change_under_another_turn_says_that_it_turns_as_before()
    {
        string now = Lantern
            .Replace("pivot 1/4 left            [9:00]", "pivot 1/2 left", StringComparison.Ordinal)
            .Replace("5-6   step L forward, scuff R", "5-6   step L forward, brush R", StringComparison.Ordinal);

        Assert.Contains(
            "Section 4, count 6: scuff R became brush R; turns as before, which now faces 6:00, was 9:00; weight unchanged.".Replace(", was 9:00", "", StringComparison.Ordinal),
            Versions.Sentences(Lantern, now));
    }

    [Fact]
    public void The_restart_that_moved_is_told_by_wall_and_counts()
    {
        string old = Lantern.Replace("restart, with count 8: touch R together", "restart", StringComparison.Ordinal);
        string now = old.Replace("wall 4: after 16 restart", "wall 4: after 24 restart", StringComparison.Ordinal);

        DanceChange.Break moved = Assert.IsType<DanceChange.Break>(Assert.Single(Versions.Changes(old, now)));
        Assert.True(moved.IsMoved);
        Assert.Equal((Counts.FromWhole(16), Counts.FromWhole(24)), (moved.Before!.AfterCounts, moved.After!.AfterCounts));
        Assert.Equal(["On “Harbour Lights Out”: wall 4: restart moved, now after 24 counts, before after 16 counts."], Versions.Sentences(old, now));
    }

    [Fact]
    public void Counts_put_into_a_section_leave_the_rest_of_it_alone()
    {
        const string old = "Pier\n\nsection 1\n1-4  vine right, touch L\n5-8  vine left, touch R\n";
        const string now = "Pier\n\nsection 1\n1-4  vine right, touch L\n5-8  sway L, sway R, sway L, sway R\n9-12  vine left, touch R\n";

        DanceChange[] changes = Versions.Changes(old, now);
        DanceChange.Steps put = Assert.Single(changes.OfType<DanceChange.Steps>());

        Assert.Equal(new DanceChange.Length(Counts.FromWhole(8), Counts.FromWhole(12)), changes[0]);
        Assert.Equal((Counts.FromWhole(4), Counts.FromWhole(8)), (put.CountsAfter.Start, put.CountsAfter.End));
        Assert.Equal(Counts.Zero, put.CountsBefore.Length);
        Assert.Empty(put.Before);
        Assert.Equal(4, put.After.Count);

        DanceChange.Steps left = Assert.Single(Versions.Changes(now, old).OfType<DanceChange.Steps>());
        Assert.Equal((put.CountsAfter, put.CountsBefore), (left.CountsBefore, left.CountsAfter));
        Assert.Empty(left.After);
    }

    [Fact]
    public void The_same_steps_in_another_timing_are_told_as_that()
    {
        const string old = "Pier\n\nsection 1\n1-4  step R forward, step L forward, step R forward, hold\n5-8  rocking chair L\n";
        string now = old.Replace("1-4  step R forward, step L forward, step R forward, hold", "1&2  step R forward, step L forward, step R forward\n3-4  hold, hold", StringComparison.Ordinal);

        Assert.NotEmpty(Versions.Changes(old, now).OfType<DanceChange.Steps>());

        const string slow = "Pier\n\nsection 1\n1-2  step R forward, step L together\n3-4  hold, touch R together\n5-8  hold\n";
        const string quick = "Pier\n\nsection 1\n1&  step R forward, step L together\n2-4  hold, hold, touch R together\n5-8  hold\n";
        Assert.NotEmpty(Versions.Changes(slow, quick));
    }

    [Fact]
    public void The_same_counts_in_other_sections_are_told_as_that_and_not_as_other_steps()
    {
        const string old = "Pier\n\nsection 1\n1-4  vine right, touch L\n5-8  vine left, touch R\n\nsection 2\n1-4  rocking chair R\n5-8  jazz box R\n";
        const string now = "Pier\n\nsection 1\n1-4  vine right, touch L\n5-8  vine left, touch R\n9-12  rocking chair R\n13-16  jazz box R\n";

        Assert.Equal([new DanceChange.SectionsDivided("", 2, 1)], Versions.Changes(old, now));
        Assert.Equal([new DanceChange.SectionsDivided("", 1, 2)], Versions.Changes(now, old));
    }

    [Fact]
    public void A_renamed_tag_is_renamed_and_its_places_are_the_same()
        => Assert.Equal(
            ["Tag “Lamps” is now called tag “Wicks”."],
            Versions.Sentences(Lantern, Lantern.Replace("\"Lamps\"", "\"Wicks\"", StringComparison.Ordinal)));

    [Fact]
    public void Another_order_of_the_parts_is_told()
        => Assert.Equal(
            ["The order of the parts is A B A A tag “Gangway” B, was A A B A tag “Gangway” B."],
            Versions.Sentences(SheetSamples.Phrased, SheetSamples.Phrased.Replace("sequence: A A B A", "sequence: A B A A", StringComparison.Ordinal)));

    [Fact]
    public void A_change_in_a_part_names_it()
        => Assert.Equal(
            ["Part B section 1, count 8: touch L together became stomp up L together; facing and weight unchanged."],
            Versions.Sentences(SheetSamples.Phrased, SheetSamples.Phrased.Replace("7-8   step R to side, touch L together\n\nsection 2\n1-4   vine left", "7-8   step R to side, stomp up L together\n\nsection 2\n1-4   vine left", StringComparison.Ordinal)));

    [Fact]
    public void A_change_is_equal_to_the_same_change_elsewhere_in_another_text()
    {
        string old = Lantern.Replace("5-6   step L forward, scuff R", "5-6   step L forward, brush R", StringComparison.Ordinal);
        string lower = "\n\n" + Lantern.Replace("by: Scuff demo\n", "by:  Scuff demo\n\n", StringComparison.Ordinal);

        Assert.Equal(Versions.Changes(Lantern, old), Versions.Changes(lower, old.Replace("1-4   rocking chair L", "1-4   Rocking chair L", StringComparison.Ordinal)).Where(c => c is not DanceChange.WordsOnly));
        Assert.NotEmpty(Versions.Changes(Lantern, old));
    }

    [Fact]
    public void Changes_stand_in_the_order_of_the_dance()
    {
        string now = Lantern
            .Replace("level: improver", "level: intermediate", StringComparison.Ordinal)
            .Replace("1-2   step R to side, step L together\n3&4   shuffle R", "1-2   step R to side, stomp L together\n3&4   shuffle R", StringComparison.Ordinal)
            .Replace("5-6   step L forward, scuff R", "5-6   step L forward, brush R", StringComparison.Ordinal)
            .Replace("1-4   sway R, sway L, sway R, sway L", "1-4   sway L, sway R, sway R, sway L", StringComparison.Ordinal)
            .Replace("112 bpm", "110 bpm", StringComparison.Ordinal)
            .Replace("wall 5: after 8", "wall 5: after 16", StringComparison.Ordinal)
            .Replace("ending: wall 9, after 8", "ending: wall 9, after 16", StringComparison.Ordinal);

        Assert.Equal(
            [
                typeof(DanceChange.HeadingField), typeof(DanceChange.Steps), typeof(DanceChange.Steps), typeof(DanceChange.Steps),
                typeof(DanceChange.Finish), typeof(DanceChange.TrackTempo), typeof(DanceChange.Break),
            ],
            Versions.Changes(Lantern, now).Select(c => c.GetType()));
    }

    private static string Bracketed() => Lantern
        .Replace("wall 4: after 16 restart,", "wall 4: after 16 restart [12:00],", StringComparison.Ordinal)
        .Replace("wall 7: after 24 tag", "wall 7: after 24 [3:00] tag", StringComparison.Ordinal)
        .Replace("pivot 1/2 left, stomp R", "pivot 1/2 left, stomp R [6:00]", StringComparison.Ordinal);
}
