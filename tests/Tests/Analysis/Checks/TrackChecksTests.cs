using Scuff;
using Scuff.Analysis;
using Scuff.Diagnostics;
using Scuff.Prose;

namespace Tests.Analysis.Checks;

/// <summary>What a sheet says about its music, its level and itself.</summary>
public sealed class TrackChecksTests
{
    // 16 counts at 100 last 9.6 seconds, half a beat is 0.3; a whole second may be rounded
    [Theory]
    [InlineData("intro 16 counts 9.6 seconds", 0)]
    [InlineData("intro 16 counts 9.9 seconds", 0)]
    [InlineData("intro 16 counts 9.2 seconds", 1)]
    [InlineData("intro 16 counts 10 seconds", 0)]
    [InlineData("intro 16 counts 11 seconds", 1)]
    [InlineData("intro 16 counts (0:10)", 0)]
    [InlineData("intro 16 counts (0:20)", 1)]
    public void Counts_and_seconds_of_an_intro_agree_within_half_a_beat(string intro, int complaints)
        => Assert.Equal(complaints, Of("track/intro-differs", $"track: \"Gale\" by The Ferry Queue, 100 bpm, {intro}").Length);

    [Theory]
    [InlineData("intro 16 counts (0:20)", "intro 16 counts (0:10)")]
    [InlineData("intro 16 counts 20 seconds", "intro 16 counts 9.6 seconds")]
    public void The_seconds_are_mended_as_they_were_written(string intro, string mended)
    {
        string text = Dance($"track: \"Gale\" by The Ferry Queue, 100 bpm, {intro}, 3:00");
        Scuff.Dances.Draft draft = DanceReader.Read(text);
        Diagnostic complaint = Assert.Single(DanceAnalysis.Of(draft).Report.Complaints, c => c.Rule.Id == "track/intro-differs");
        Assert.Contains($"100 bpm, {mended}, 3:00", EditWriter.Apply(text, EditWriter.ToTextEdits(draft, complaint.Fixes[0].Remedy)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("100 bpm, intro 16", 0)]
    [InlineData("intro 16 counts 10 seconds", 0)]
    [InlineData("100 bpm", 1)]
    [InlineData("intro 16", 1)]
    [InlineData("100 bpm, intro 10 seconds", 1)]
    public void A_track_says_when_to_come_in(string facts, int complaints)
        => Assert.Equal(complaints, Of("track/intro-missing", $"track: \"Gale\" by The Ferry Queue, {facts}").Length);

    [Fact]
    public void An_intro_in_the_heading_serves_every_track()
        => Assert.Empty(Of("track/intro-missing", "track: \"Gale\" by The Ferry Queue, 100 bpm", "intro: 16 counts"));

    [Theory]
    [InlineData(108, 0)]
    [InlineData(54, 0)]
    [InlineData(216, 0)]
    [InlineData(109, 0)]
    [InlineData(112, 1)]
    public void Half_and_double_of_a_tempo_are_the_same_music(int heading, int complaints)
        => Assert.Equal(complaints, Of("track/tempo-differs", "track: \"Gale\" by The Ferry Queue, 108 bpm, intro 16", $"bpm: {heading}").Length);

    [Theory]
    [InlineData("Gale", 1)]
    [InlineData("Breeze", 0)]
    public void One_song_has_one_tempo(string title, int complaints)
        => Assert.Equal(complaints, Of("track/tempo-differs", $"track: \"Gale\" by The Ferry Queue, 108 bpm, intro 16\ntrack: \"{title}\" by The Ferry Queue, 120 bpm, intro 16").Length);

    // the ranges of the trade's lists (competition councils, teachers, ballroom): music facts, 1
    [Theory]
    [InlineData("cha cha", 96, null)]
    [InlineData("cha cha", 132, null)]
    [InlineData("cha cha", 95, Severity.Hint)]
    [InlineData("cha cha", 56, Severity.Warning)]
    [InlineData("cha cha", 224, Severity.Warning)]
    [InlineData("waltz", 110, null)]
    [InlineData("waltz", 111, Severity.Hint)]
    [InlineData("west coast swing", 150, Severity.Hint)]
    [InlineData("swing", 150, null)]
    [InlineData("two-step", 92, null)]
    [InlineData("two-step", 184, null)]
    [InlineData("pop", 184, null)]
    public void A_tempo_outside_of_the_rhythms_range_is_told(string rhythm, int tempo, Severity? severity)
    {
        string text = Dance($"track: \"Gale\" by The Ferry Queue, {tempo} bpm, intro 12", $"rhythm: {rhythm}");
        Assert.Equal(severity is { } told ? [told] : [], RuleBook.Complaints(text).Where(c => c.Rule.Id == "track/tempo-unusual").Select(c => c.Severity));
    }

    [Theory]
    [InlineData("level: beginner", 1)]
    [InlineData("level: improver", 1)]
    [InlineData("level: intermediate", 0)]
    [InlineData("level: advanced", 0)]
    [InlineData("level: for our Tuesday class", 0)]
    public void A_level_that_is_called_too_easy_is_told(string level, int complaints)
        => Assert.Equal(complaints, Of("level/claim-differs", "wall 3: after 4 restart", level).Length);

    [Theory]
    [InlineData("version: 2", "version: 3", null)]
    [InlineData("", "version: 3", Severity.Warning)]
    [InlineData("date: May 2025", "", Severity.Warning)]
    [InlineData("", "", Severity.Warning)]
    public void Two_sheets_of_one_title_need_their_versions(string mine, string other, Severity? severity)
    {
        Namesake namesake = new("other.dance", other.Length > 0 ? Namesake.EditionOf(DanceReader.Read(Dance("", other)).Dance) : "");
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(Dance("", mine)), [namesake]);
        Assert.Equal(severity is { } told ? [told] : [], analysis.Report.Complaints.Where(c => c.Rule.Id == "sheet/version-missing").Select(c => c.Severity));
    }

    [Fact]
    public void A_draft_needs_no_version_yet()
    {
        Assert.Empty(Of("sheet/version-missing", "", "by: The demo club"));
        Assert.Single(Of("sheet/version-missing", "track: \"Gale\" by The Ferry Queue, 100 bpm, intro 16", "by: The demo club"));
    }

    [Theory]
    [InlineData("style: LF low, fwd.", "style: left foot low, forward.")]
    [InlineData("style: bk. of the hall", "style: back of the hall")]
    public void Abbreviations_in_notes_are_written_out(string note, string mended)
    {
        string text = Dance("").Replace("\n3-4", $"\n      {note}\n3-4", StringComparison.Ordinal);
        Scuff.Dances.Draft draft = DanceReader.Read(text);
        ValueList<TextEdit> edits = [.. DanceAnalysis.Of(draft).Report.Complaints
            .Where(c => c.Rule.Id == "sheet/abbreviation-unexplained")
            .SelectMany(c => EditWriter.ToTextEdits(draft, c.Fixes[0].Remedy))];
        Assert.Contains(mended + "\n3-4", EditWriter.Apply(text, edits), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("style: left foot low, go to the wall")]
    [InlineData("style: keep R and L close")]
    [InlineData("style: to get her along, diagonal as before")]
    public void Whole_words_and_what_the_key_explains_are_no_abbreviations(string note)
        => Assert.DoesNotContain(
            RuleBook.Complaints(Dance("").Replace("\n3-4", $"\n      {note}\n3-4", StringComparison.Ordinal)),
            complaint => complaint.Rule.Id == "sheet/abbreviation-unexplained");

    [Theory]
    [InlineData("999999.999 bpm, intro 999999")]
    [InlineData("0.001 bpm, intro 16 counts 999999 seconds")]
    [InlineData("20 bpm, intro 999 counts 1 seconds, 999:59")]
    [InlineData("400 bpm, intro 1, 0:01")]
    public void Impossible_figures_break_nothing(string facts)
        => Assert.NotNull(RuleBook.Complaints(Dance($"track: \"Gale\" by The Ferry Queue, {facts}", "level: advanced\nrhythm: polka\nbpm: 99999999")));

    private static string Dance(string tail, string heading = "") => $"""
        Music

        {heading}

        section 1
        1-2  step R to side, touch L together
        3-4  step L to side, touch R together
        5-6  step R to side, touch L together
        7-8  step L to side, touch R together

        {tail}
        """.ReplaceLineEndings("\n");

    private static Diagnostic[] Of(string id, string tail, string heading = "")
        => [.. RuleBook.Complaints(Dance(tail, heading)).Where(complaint => complaint.Rule.Id == id)];
}
