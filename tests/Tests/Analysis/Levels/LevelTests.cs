using Scuff.Analysis;
using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Prose;

namespace Tests.Analysis.Levels;

/// <summary>
/// The computed level on both sides of every published limit. Each case names the source of its limit: the trade magazine's guide of
/// 2014/2017 (pdfslide.net), the newsletter of about 2011 (artsentertainment.cc), the class page (palmcoastlinedance.weebly.com), or
/// "design value" where nothing is published.
/// </summary>
public sealed class LevelTests
{
    private const string Guide = "pdfslide.net";
    private const string Newsletter = "artsentertainment.cc";
    private const string ClassPage = "palmcoastlinedance.weebly.com";
    private const string Design = "design value";

    private const string Touches = """
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together
        """;

    // twelve ways to spend two counts on one foot, none like another, and a thirteenth
    private static readonly string[] Blocks =
    [
        "touch R forward, touch R together", "touch R to side, touch R together", "touch R back, touch R together",
        "kick R forward, touch R together", "hitch R, touch R together", "dig R heel forward, touch R together",
        "stomp up R, touch R together", "brush R forward, touch R together", "scuff R, touch R together",
        "flick R back, touch R together", "tap R together, kick R forward", "hitch R, kick R forward",
        "stomp up R, hitch R",
    ];

    /// <summary>Sections, level, and the measure with its source that decides it.</summary>
    public static TheoryData<int, Level, LevelMeasure?, string> Lengths { get; } = new()
    {
        { 4, Level.AbsoluteBeginner, null, "" },
        { 5, Level.Beginner, LevelMeasure.Counts, ClassPage },
        { 6, Level.Beginner, LevelMeasure.Counts, ClassPage },
        { 7, Level.Improver, LevelMeasure.Counts, Newsletter },
        { 8, Level.Improver, LevelMeasure.Counts, ClassPage },
        { 9, Level.Advanced, LevelMeasure.Counts, Newsletter },
    };

    /// <summary>Text of one section of eight counts and more of the dance, its level, and what decides it.</summary>
    public static TheoryData<string, Level, LevelMeasure?, string> Contents { get; } = new()
    {
        // "at most one turn (one 1/4 or one 1/2)", "up to two turns"
        { Section("step R forward, pivot 1/4 left"), Level.AbsoluteBeginner, null, "" },
        { Section("step R forward, pivot 1/2 left"), Level.AbsoluteBeginner, null, "" },
        { Section("step R forward, pivot 1/4 left", "step R forward, pivot 1/4 left"), Level.Beginner, LevelMeasure.Turns, Guide },
        { Section("step R forward, pivot 1/4 left", "step R forward, pivot 1/4 left", "step R forward, pivot 1/4 left"), Level.Improver, LevelMeasure.Turns, Guide },

        // "no syncopation", shuffles from beginner on
        { Section("step R to side, touch L together"), Level.AbsoluteBeginner, null, "" },
        { "1&2  shuffle R forward\n3&4  shuffle L forward\n5-6  step R to side, touch L together\n7-8  step L to side, touch R together\n", Level.Beginner, LevelMeasure.OffBeats, Newsletter },
        { "1a2  step R to side, step L together, step R to side\n3-4  step L to side, touch R together\n5-6  step R to side, touch L together\n7-8  step L to side, touch R together\n", Level.Improver, LevelMeasure.QuarterBeats, Design },

        // tags: none, few, allowed; restarts: from improver on, and not after the first section
        { Touches + "\n\ntag \"Bell\" 2 counts\n1-2  sway R, sway L\n\nwall 2: after 8 tag \"Bell\"\n", Level.Beginner, LevelMeasure.Tags, Guide },
        { Touches + "\n\ntag \"Bell\" 2 counts\n1-2  sway R, sway L\n\nTag \"Bell\" at the end of walls 1 and 2\n", Level.Beginner, LevelMeasure.Tags, ClassPage },
        { Touches + "\n\ntag \"Bell\" 2 counts\n1-2  sway R, sway L\n\nTag \"Bell\" at the end of walls 1, 2 and 3\n", Level.Improver, LevelMeasure.Tags, ClassPage },
        { Touches + "\n\nsection 2\n" + Touches + "\n\nwall 3: after 12 restart\n", Level.Improver, LevelMeasure.Restarts, Newsletter },
        { Touches + "\n\nsection 2\n" + Touches + "\n\nwall 3: after 8 restart\n", Level.Intermediate, LevelMeasure.EarlyRestarts, Newsletter },

        // steps by level: two that are met later, and three
        { "1-4  rocking chair R\n5-6  cross rock R over L, recover\n7-8  step R to side, step L together\n", Level.AbsoluteBeginner, null, "" },
        { "1-4  rocking chair R\n5-8  jazz box R\n\nsection 2\n1-4  charleston R\n5-6  step R to side, touch L together\n7-8  step L to side, touch R together\n", Level.Beginner, LevelMeasure.HigherFigures, ClassPage },
    };

    /// <summary>A made line instead of the third count of a plain section, its level, and what decides it.</summary>
    public static TheoryData<string, string, Level, LevelMeasure?, string> Bodies { get; } = new()
    {
        // a quarter a beat for beginners, half a beat for improvers, taken over a step and its pivot
        { "3-4", "R step forward +2, L step forward +2", Level.Beginner, LevelMeasure.Turns, Guide },
        { "3-4", "R step forward +3, L step forward +2", Level.Improver, LevelMeasure.TurnInTwo, Design },
        { "3-4", "R step forward +4, L step forward +4", Level.Improver, LevelMeasure.TurnInTwo, Design },
        { "3&4", "R step forward +4, L step forward +4, R step forward +1", Level.Advanced, LevelMeasure.TurnInTwo, Design },
        { "3-4", "R step forward +5, L step forward", Level.Advanced, LevelMeasure.TurnInOne, Design },

        // one figure: a half for beginners (pivots), a full turn for improvers (rolling vine)
        { "3-6", "(R step side +2, L step side +4, R step side +2, L touch together)", Level.Improver, LevelMeasure.TurnSize, Newsletter },
        { "3-6", "(R step side +2, L step side +4, R step side +3, L touch together)", Level.Intermediate, LevelMeasure.TurnSize, Guide },

        // on one foot: a half below intermediate, a full turn below advanced
        { "3-4", "L turn +4", Level.Beginner, LevelMeasure.TurnOnOneFoot, Design },
        { "3-4", "L turn +6", Level.Intermediate, LevelMeasure.TurnOnOneFoot, Design },
        { "3-5", "L turn +9", Level.Advanced, LevelMeasure.TurnOnOneFoot, Design },

        // "more variety, kicks and jumps" at intermediate
        { "3-6", "B jump out, B jump in, B jump out, B jump in", Level.Improver, LevelMeasure.Jumps, Newsletter },
        { "3-7", "B jump out, B jump in, B jump out, B jump in, B jump out", Level.Intermediate, LevelMeasure.Jumps, Newsletter },
    };

    [Theory]
    [MemberData(nameof(Lengths))]
    public void Longer_dances_are_harder(int sections, Level level, LevelMeasure? measure, string source)
        => Check(Text("", string.Concat(Enumerable.Range(1, sections).Select(i => $"section {i}\n{Touches}\n\n"))), level, measure, source);

    [Theory]
    [InlineData(12, Level.AbsoluteBeginner)]
    [InlineData(13, Level.Beginner)]
    public void Absolute_beginners_learn_twenty_four_new_counts_and_the_rest_is_repeated(int blocks, Level level)
    {
        string[] sixteen = [.. Blocks.Take(blocks), .. Enumerable.Repeat(Blocks[0], 16 - blocks)];
        string sections = string.Concat(Enumerable.Range(0, 4).Select(i =>
            $"section {i + 1}\n" + string.Concat(Enumerable.Range(0, 4).Select(j => $"{(2 * j) + 1}-{(2 * j) + 2}  {sixteen[(4 * i) + j]}\n")) + "\n"));
        Check(Text("", sections), level, level == Level.Beginner ? LevelMeasure.NewCounts : null, Newsletter);
    }

    [Theory]
    [MemberData(nameof(Contents))]
    public void What_is_in_it_decides(string section, Level level, LevelMeasure? measure, string source)
        => Check(Text("", "section 1\n" + section), level, measure, source);

    [Theory]
    [MemberData(nameof(Bodies))]
    public void What_bodies_do_decides(string label, string line, Level level, LevelMeasure? measure, string source)
        => Check(DanceAnalysis.Of(new DanceBuilder().Section("1-2: R step side, L step together", $"{label}: {line}").Draft()).Level, level, measure, source);

    [Theory]
    [InlineData(130, Level.AbsoluteBeginner)]
    [InlineData(131, Level.Beginner)]
    [InlineData(140, Level.Beginner)]
    [InlineData(141, Level.Improver)]
    public void Fast_music_is_not_for_beginners(int tempo, Level level)
        => Check(Text("", $"section 1\n{Touches}\n\ntrack: \"Gale\" by The Ferry Queue, {tempo} bpm, intro 32\n"), level, level > Level.AbsoluteBeginner ? LevelMeasure.Tempo : null, Guide);

    [Fact]
    public void Music_that_is_counted_in_half_time_is_half_as_fast()
        => Check(Text("counted: half time\n", $"section 1\n{Touches}\n\ntrack: \"Gale\" by The Ferry Queue, 236 bpm, intro 32\n"), Level.AbsoluteBeginner, null, "");

    [Theory]
    [InlineData(105, Level.Beginner)]
    [InlineData(106, Level.Advanced)]
    public void More_than_three_and_a_half_steps_a_second_are_advanced(int tempo, Level level)
        => Check(
            Text("", $"section 1\n1&2&3&4&5&6& run R, L, R, L, R, L, R, L, R, L, R, L\n7-8  step R to side, touch L together\n\ntrack: \"Gale\" by The Ferry Queue, {tempo} bpm, intro 32\n"),
            level,
            level == Level.Advanced ? LevelMeasure.StepRate : LevelMeasure.OffBeats,
            level == Level.Advanced ? Design : Guide);

    [Theory]
    [InlineData(8, Level.Improver)]
    [InlineData(9, Level.Intermediate)]
    public void One_full_turn_in_eight_counts_is_enough_below_intermediate(int eighths, Level level)
    {
        int rest = eighths - 4;
        ComputedLevel computed = DanceAnalysis.Of(new DanceBuilder().Section(
            "1-2: R step forward +2, L step together",
            "3-4: R step forward +2, L step together",
            $"5-6: R step forward +{rest / 2}, L step together",
            $"7-8: R step forward +{rest - (rest / 2)}, L step together").Draft()).Level;
        Check(computed, level, level == Level.Intermediate ? LevelMeasure.TurnInEight : LevelMeasure.Turns, level == Level.Intermediate ? Design : Guide);
    }

    [Theory]
    [InlineData("A B", 2, Level.Improver)]
    [InlineData("A B C", 3, Level.Advanced)]
    public void Easy_phrased_dances_have_two_parts(string sequence, int parts, Level level)
        => Check(
            Text($"sequence: {sequence}\n", string.Concat("ABC".Take(parts).Select(name => $"part {name} 8 counts\n\nsection 1\n{Touches}\n\n"))),
            level,
            LevelMeasure.Parts,
            parts == 2 ? ClassPage : Newsletter);

    [Fact]
    public void The_reasons_say_what_where_and_what_would_bring_it_one_level_down()
    {
        ComputedLevel level = Text("", $"section 1\n{Touches}\n\n"
            + string.Concat(Enumerable.Range(2, 6).Select(i => $"section {i}\n{Touches}\n\n"))
            + "wall 3: after 12 restart\n");

        Assert.Equal(Level.Improver, level.Level);
        Assert.Equal(["56 counts; beginner allows 48", "a restart once; beginner allows none"], level.Deciding.Select(reason => reason.Words));
        Assert.Equal("shorten it to 48 counts and drop the restart", level.OneLevelDown);
    }

    [Fact]
    public void A_reason_that_has_a_place_names_it()
    {
        ComputedLevel level = Text("", $"section 1\n{Touches}\n\nsection 2\n1-2  step R forward, pivot 3/4 left\n3-4  step R to side, touch L together\n5-6  step L to side, step R together\n7-8  step L to side, touch R together\n");
        LevelReason reason = level.Deciding.First();
        Assert.Equal(("section 2 count 2", "3/4 of a turn on one count; intermediate allows 1/2 of a turn"), (reason.Place?.Words, reason.Words));
    }

    [Fact]
    public void Words_that_cannot_be_read_leave_the_level_open()
    {
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read("Murk\n\nlevel: absolute beginner\n\nsection 1\n1-2  glimber R, step L together\n3&4  shuffle R forward\n5-8  rocking chair L\n"));
        Assert.False(analysis.Level.IsComplete);
        Assert.DoesNotContain(analysis.Report.Complaints, complaint => complaint.Rule.Id == "level/claim-differs");
    }

    [Fact]
    public void Every_measure_has_its_limit_which_grows_with_the_level_and_its_source()
    {
        Assert.Equal(Enum.GetValues<LevelMeasure>(), LevelLimits.All.Select(limit => limit.Measure));
        foreach (LevelLimit limit in LevelLimits.All)
        {
            Assert.NotEmpty(limit.Source);
            for (Level level = Level.AbsoluteBeginner; level < Level.Intermediate; level++)
            {
                Assert.True(limit.Of(level + 1) is not { } more || (limit.Of(level) is { } less && less <= more), $"{limit.Measure} falls after {level}.");
            }
        }
    }

    private static string Section(params string[] lines) => string.Concat(Enumerable.Range(0, 4).Select(i =>
        $"{(2 * i) + 1}-{(2 * i) + 2}  {(i < lines.Length ? lines[i] : "touch R to side, touch R together")}\n"));

    private static ComputedLevel Text(string heading, string body) => DanceAnalysis.Of(DanceReader.Read($"Boundary\n\n{heading}\n{body}")).Level;

    private static void Check(ComputedLevel computed, Level level, LevelMeasure? measure, string source)
    {
        Assert.True(computed.Level == level, $"{computed.Level}: {string.Join("; ", computed.Reasons.Select(reason => $"{reason.Level} {reason.Words}"))}");
        if (measure is { } decides)
        {
            LevelReason reason = Assert.Single(computed.Deciding, reason => reason.Measure == decides);
            Assert.Contains(source, reason.Source, StringComparison.Ordinal);
        }
        else
        {
            Assert.Empty(computed.Reasons);
            Assert.Equal("", computed.OneLevelDown);
        }
    }
}
