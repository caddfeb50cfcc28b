using Scuff.Analysis;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Languages;
using Tests.Golden;

namespace Tests.Sheets;

public sealed class SheetBuilderTests
{
    [Theory]
    [InlineData("tin-lantern", SheetSamples.Lantern)]
    [InlineData("two-piers", SheetSamples.Phrased)]
    public void Whole_sheets_look_as_they_were_last_read_and_approved(string name, string text)
    {
        SheetModel sheet = SheetSamples.Build(text);

        foreach (ISheetFormat format in SheetFormats.All.Where(f => f.IsText))
        {
            GoldenFile.Matches(name + format.Extension, SheetSamples.WithoutFonts(SheetSamples.Draw(sheet, format.Name)));
        }
    }

    [Fact]
    public void The_heading_is_told_as_a_teacher_would()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Lantern);

        Assert.Equal("Scuff demo", sheet.Author);
        Assert.Equal(
            [
                "An improver cha cha: 32 counts, 4 walls.",
                "Each wall starts a quarter turn to the left of the last.",
                "Start with the weight on the left foot.",
                "Version\u00a02.",
            ],
            sheet.Facts);
        Assert.Empty(sheet.Particulars);
        Assert.Equal("version 2", sheet.Edition);
    }

    [Fact]
    public void The_edition_stands_on_every_sheet_and_card_in_every_language()
        => Assert.All(
            SheetLanguage.Codes.SelectMany(_ => new[] { true, false }, (code, isCard) => new SheetChoices { Language = code, IsCard = isCard }),
            choices => Assert.EndsWith(
                " 2",
                SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(SheetSamples.Lantern)), choices).Edition,
                StringComparison.Ordinal));

    [Theory]
    [InlineData("by: Ann\nplace: Tarbarrow Quay\nversion: 4\ndate: March 2025", "by Ann, Tarbarrow Quay", "version 4, March 2025")]
    [InlineData("by: Ann of Tarbarrow Quay\nplace: tarbarrow quay\nversion: draft", "by Ann of Tarbarrow Quay", "draft")]
    [InlineData("place: Tarbarrow Quay\ndate: 3.5.2025", "Tarbarrow Quay", "3.5.2025")]
    [InlineData("walls: 4", "", "")]
    public void Who_where_and_which_version_are_told_without_labels(string heading, string byLine, string edition)
    {
        SheetModel sheet = SheetSamples.Build($"Some Dance\n\n{heading}\n\nsection 1\n1-8  hold\n");

        Assert.Equal((byLine, edition), (sheet.ByLine, sheet.Edition));
        Assert.Empty(sheet.Particulars);
        Assert.Equal(edition.Length > 0, sheet.Facts.Any(f => f.StartsWith(edition.Length > 0 ? SheetWordsOf(edition) : "?", StringComparison.Ordinal)));
    }

    [Fact]
    public void Facing_is_that_after_the_line_and_a_turning_line_is_marked()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Lantern);
        SheetSection second = sheet.Parts[0].Sections[1];

        Assert.Equal(["12:00", "9:00", "9:00", "9:00"], second.Lines.Select(l => l.Facing));
        Assert.Equal([false, true, false, false], second.Lines.Select(l => l.Turns));
    }

    // Walls of the track: 12, 9 | tag, 6, 3 | restart after 16 at 12:00 (the quarter is in section 2), 12, 9, 6 | cut after 24 at 3:00 ...
    [Fact]
    public void Breaks_are_told_by_wall_count_facing_and_place_in_the_music()
    {
        SheetTrack track = Assert.Single(SheetSamples.Build(SheetSamples.Lantern).Tracks.ToArray());

        Assert.Equal("“Harbour Lights Out” by The Demo Band", track.Name);
        Assert.Equal("112 bpm, intro 32 counts (about 17.1 seconds).", track.Facts);
        Assert.Equal(
            [
                "Wall 2 (starts at 9:00), after its last count, facing 6:00, about 0:51 min in: tag “Lamps”",
                "Wall 4 (starts at 3:00), after 16 counts, facing 12:00, about 1:19 min in: restart, with count 8 as touch R together",
                "Wall 5 (starts at 12:00), after 8 counts, facing 12:00, about 1:24 min in: bridge “Lamps”, then go on",
                "Wall 7 (starts at 6:00), after 24 counts, facing 3:00, about 2:09 min in: tag “Lamps”, then section 1 counts 1-2, then restart",
            ],
            track.Breaks.Select(b => $"{b.Where}: {b.What}"));
    }

    // 20 seconds of intro, then 48 counts at 120 beats a minute; counted in half time each takes two of them.
    [Theory]
    [InlineData("track: \"Tune\", 120 bpm, intro 20 seconds", "", "about 0:44 min in")]
    [InlineData("track: \"Tune\", 120 bpm, intro 20 seconds", "counted: half time\n", "about 1:08 min in")]
    [InlineData("track: \"Tune\", 120 bpm", "", null)]
    [InlineData("track: \"Tune\", intro 20 seconds", "", null)]
    public void The_place_in_the_music_is_told_where_tempo_and_intro_are_known(string track, string counted, string? time)
    {
        string section = "1-2  step R forward, step L together\n3-8  hold\n";
        SheetModel sheet = SheetSamples.Build(
            $"Some Dance\n\nwalls: 1\n{counted}\nsection 1\n{section}\nsection 2\n{section}\nsection 3\n{section}\nsection 4\n{section}\n{track}\nwall 2: after 16 restart\n");

        SheetBreak only = Assert.Single(Assert.Single(sheet.Tracks.ToArray()).Breaks.ToArray());
        Assert.Equal("Wall 2 (starts at 12:00), after 16 counts, facing 12:00" + (time is null ? "" : ", " + time), only.Where);
    }

    [Fact]
    public void What_arms_and_head_do_is_printed_in_her_words_unless_they_are_usual()
    {
        const string text = "Some Dance\n\nsection 1\n1-2  raise arms and shake them\n3    look left\n4    step R forward and look right\n5-8  hold\n";

        Assert.All(SheetLanguage.Codes, code =>
        {
            SheetModel sheet = SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)), new SheetChoices { Language = code });
            string[] words = [.. sheet.Parts[0].Sections[0].Lines.Select(l => l.Words)];
            Assert.Equal("raise arms and shake them", words[0]);
            Assert.Equal(code == "en" ? "look left" : SheetLanguage.Find(code)!.FindOwn("gesture.look-left"), words[1]);
            Assert.EndsWith(code == "en" ? "look right" : SheetLanguage.Find(code)!.FindOwn("gesture.look-right")!, words[2], StringComparison.Ordinal);
        });
    }

    [Theory]
    [InlineData("March 2025", "fr", "Version 4, mars 2025.")]
    [InlineData("3 march 2025", "es", "Versión 4, 3 de marzo de 2025.")]
    [InlineData("12 October 2025", "de", "Version 4, 12. Oktober 2025.")]
    [InlineData("March 2025", "en", "Version 4, March 2025.")]
    [InlineData("mars 2025", "fr", "Version 4, mars 2025.")]
    [InlineData("spring 2025", "de", "Version 4, spring 2025.")]
    [InlineData("2025-03-01", "de", "Version 4, 2025-03-01.")]
    public void A_date_in_English_is_told_in_the_language_and_any_other_is_hers(string date, string code, string told)
    {
        SheetModel sheet = SheetBuilder.Build(
            DanceAnalysis.Of(DanceReader.Read($"Some Dance\n\nversion: 4\ndate: {date}\n\nsection 1\n1-8  hold\n")),
            new SheetChoices { Language = code });

        Assert.Equal(told, sheet.Facts[^1].Replace('\u00a0', ' '));
    }

    // "back" is the last step of a kick ball back, and the way of a shuffle back.
    [Fact]
    public void The_last_step_of_a_name_stays_at_its_end()
    {
        const string text = "Some Dance\n\nsection 1\n1&2  kick ball back R\n3&4  kick cross back R\n5&6  shuffle back L\n7-8  hold\n";

        Assert.Equal(
            ["kick ball back R", "kick cross back R", "shuffle L back", "hold"],
            SheetSamples.Build(text).Parts[0].Sections[0].Lines.Select(l => l.Words));
    }

    // A spiral turns on the foot that has just stepped, a step and pivot on both.
    [Fact]
    public void A_turn_on_one_foot_says_on_which()
    {
        const string text = "Some Dance\n\nsection 1\n1-2  step R forward, full spiral turn left on R\n3-4  step L forward, pivot 1/2 right\n5-8  hold\n";
        SheetModel german = SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)), new SheetChoices { Language = "de" });

        Assert.Equal(["step R forward, pivot full turn left on R", "step L forward, pivot 1/2 right"], SheetSamples.Build(text).Parts[0].Sections[0].Lines.Take(2).Select(l => l.Words));
        Assert.Equal(
            ["RF Schritt vor, ganze Drehung links herum auf RF", "LF Schritt vor, ½ Drehung rechts herum auf beiden Ballen"],
            german.Parts[0].Sections[0].Lines.Take(2).Select(l => l.Words));
    }

    // A bounce lifts and drops the heels within its count; a rise only lifts them.
    [Fact]
    public void A_bounce_of_the_heels_is_no_rise()
    {
        const string text = "Some Dance\n\nsection 1\n1-2  heel bounce, heel bounce\n3-4  rise, lower heels\n5-6  single heel bounce R, hold\n7-8  hold\n";
        SheetModel german = SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)), new SheetChoices { Language = "de" });

        Assert.Equal(["bounce heels, bounce heels", "bounce heels up, bounce heels down"], SheetSamples.Build(text).Parts[0].Sections[0].Lines.Take(2).Select(l => l.Words));
        Assert.Equal(
            ["Hacken heben und senken, Hacken heben und senken", "Hacken heben, Hacken senken", "RF Hacke heben und senken, halten"],
            german.Parts[0].Sections[0].Lines.Take(3).Select(l => l.Words));
    }

    [Fact]
    public void In_French_a_space_stands_before_colon_and_semicolon()
    {
        SheetModel sheet = SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(SheetSamples.Lantern)), new SheetChoices { Language = "fr" });

        Assert.Contains("Style\u00a0: small steps", SheetSamples.Draw(sheet, "text"), StringComparison.Ordinal);
        Assert.Contains("\u00a0; & est", sheet.Key, StringComparison.Ordinal);
        Assert.Contains("<b>Style\u00a0:</b>", SheetSamples.Draw(sheet, "html"), StringComparison.Ordinal);
        Assert.Contains("style\u00a0:**", SheetSamples.Draw(sheet, "markdown"), StringComparison.Ordinal);
    }

    [Fact]
    public void Styling_and_options_stay_apart_from_the_footwork()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Lantern);
        SheetLine styled = sheet.Parts[0].Sections[0].Lines[3];
        SheetLine eased = sheet.Parts[0].Sections[1].Lines[3];

        Assert.Equal([new SheetNote("style", "small steps; let the hip settle on the closing foot")], styled.Notes);
        SheetOption option = Assert.Single(eased.Options.ToArray());
        Assert.Equal(("easier", "7&8"), (option.Name, option.Counts));
        Assert.DoesNotContain("easier", eased.Words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_phrased_dance_is_told_by_its_parts_and_their_order()
    {
        SheetModel sheet = SheetSamples.Build(SheetSamples.Phrased);

        Assert.Equal("A phrased intermediate dance: part A 16 counts and part B 16 counts.", sheet.Facts[0]);
        Assert.Equal(["Part A, 16 counts", "Part B, 16 counts"], sheet.Parts.Select(p => p.Heading));
        Assert.Equal(["A", "A", "B", "A", "tag “Gangway”", "B"], sheet.Sequence);
    }

    [Fact]
    public void A_dance_that_begins_with_the_left_foot_starts_on_the_right()
    {
        SheetModel sheet = SheetSamples.Build("Left First\n\nsection 1\n1-4  vine left, touch R\n5-8  vine right, touch L\n");

        Assert.Contains("Start with the weight on the right foot.", sheet.Facts);
    }

    [Fact]
    public void A_move_of_her_own_is_shown_count_by_count_and_not_twice()
    {
        SheetModel sheet = SheetSamples.Build("""
            Twist

            move "lantern twist" 1&2: step R to side, step L together, touch R together

            section 1
            1&2  lantern twist R
            3-8  hold
            """);

        SheetSection move = Assert.Single(sheet.Moves.ToArray());
        Assert.Equal("Lantern twist, 2 counts", move.Heading);
        Assert.Equal(["step R to side", "step L together", "touch R together"], move.Lines.Select(l => l.Words));
        Assert.Empty(sheet.Notes);
    }

    private static string SheetWordsOf(string edition) => char.ToUpperInvariant(edition[0]) + edition[1..].Replace(' ', '\u00a0') + ".";

    [Fact]
    public void A_title_alone_has_no_walls_and_no_first_step()
        => Assert.Equal(["A dance: 0 counts."], SheetSamples.Build("Only a Title\n").Facts);

    [Fact]
    public void Words_that_are_missing_leave_no_comma_behind()
        => Assert.Equal("vine right", SheetSamples.Build("Short\n\nsection 1\n1-8 grapevine right\n").Parts[0].Sections[0].Lines[0].Words);

    [Fact]
    public void An_and_in_a_move_of_her_own_is_told_as_in_the_sections()
    {
        const string twist = "Twist\n\nmove \"lantern twist\" 1&2: step R to side, step L together, touch R together\n\nsection 1\n1&2 lantern twist R\n";

        Assert.Equal(["1", "&", "2"], SheetSamples.Build(twist).Moves[0].Lines.Select(l => l.Counts));
    }

    [Theory]
    [InlineData("")]
    [InlineData("only a title")]
    [InlineData("section 1\n1-2 wibble wobble\ntrack:\nwall x: y\nending:\nsequence: Q\ntag\n")]
    public void A_sheet_is_made_of_anything(string text)
    {
        SheetModel sheet = SheetSamples.Build(text);

        Assert.NotEqual("", sheet.Title);
        Assert.All(SheetFormats.All, f => Assert.NotEqual("", SheetSamples.Draw(sheet, f.Name)));
    }
}
