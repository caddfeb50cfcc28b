using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Dances;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Sheets.Formats.Pdf;
using Scuff.Sheets.Languages;
using Tests.Analysis.Lessons;
using Tests.Golden;
using Tests.Prose;

namespace Tests.Sheets;

public sealed class LessonSheetTests
{
    [Fact]
    public void Whole_plans_look_as_they_were_last_read_and_approved()
    {
        SheetModel sheet = Build(LessonSamples.Club("tin-lantern"), new LessonOptions { Minutes = 30, Class = Level.Beginner, ForKnees = true, ForBeginners = true });

        foreach (ISheetFormat format in SheetFormats.All.Where(f => f.IsText))
        {
            GoldenFile.Matches("tin-lantern-lesson" + format.Extension, SheetSamples.WithoutFonts(SheetSamples.Draw(sheet, format.Name)));
        }
    }

    [Fact]
    public void A_plan_that_is_too_short_says_what_is_left()
    {
        SheetModel sheet = Build(LessonSamples.Club("lighthouse-keeper"), new LessonOptions { Minutes = 12 });

        GoldenFile.Matches("lighthouse-keeper-lesson-short.txt", SheetSamples.Draw(sheet, "text"));
    }

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void A_plan_of_a_demo_dance_goes_on_two_pages(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        foreach (Paper paper in Enum.GetValues<Paper>())
        {
            foreach (int? minutes in (int?[])[null, 10, 30])
            {
                SheetModel sheet = Build(analysis, new LessonOptions { Minutes = minutes, ForKnees = true, ForBeginners = true }) with { Paper = paper };

                Assert.InRange(SheetLayout.Of(sheet).Pages.Count, 1, 2);
            }
        }
    }

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void Every_step_has_its_box_its_minute_and_its_sentence(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        LessonPlan plan = analysis.Lesson(new LessonOptions { Minutes = 40 });
        SheetLine[] lines = [.. LessonSheet.Of(analysis, plan, true, SheetChoices.Usual).Parts.SelectMany(p => p.Sections).SelectMany(s => s.Lines)];

        Assert.Equal(plan.Steps.Select(s => LessonWords.Mark(s.Start)), lines.Select(l => l.Counts));
        Assert.All(lines, l => Assert.True(l.HasBox && l.Words.Length > 0 && l.Facing is not null));
        Assert.Equal(lines.Length, Drawn(analysis, plan).Split("[ ]").Length - 1);
    }

    [Fact]
    public void Every_kind_of_everything_has_words()
    {
        // all that can be said is said somewhere: a missing entry would throw
        foreach (DanceAnalysis analysis in LessonSamples.AllOfClub.Concat([LessonSamples.Read(""), LessonSamples.Read("Odd\n\nsection 1\n1-8 frobnicate\n")]))
        {
            foreach (Level level in Enum.GetValues<Level>())
            {
                foreach (LessonOrder order in Enum.GetValues<LessonOrder>())
                {
                    foreach (int? minutes in (int?[])[null, 1, 7, 120])
                    {
                        LessonOptions options = new() { Class = level, Order = order, Minutes = minutes, ForKnees = true, ForBeginners = true, PracticeTempo = level == Level.Beginner ? 60 : level == Level.Improver ? 300 : null };
                        Assert.DoesNotContain('{', Drawn(analysis, analysis.Lesson(options)));
                    }
                }
            }
        }

        foreach (string family in (string[])["why", "offer", "note"])
        {
            Type kind = family switch
            {
                "why" => typeof(LessonReasonKind),
                "offer" => typeof(LessonOfferKind),
                _ => typeof(LessonNoteKind),
            };
            Assert.All(Enum.GetNames(kind).Where(n => n != nameof(LessonOfferKind.Own)), n
                => Assert.NotEmpty(SheetLanguage.English.Words($"lesson.{family}.{SheetLanguage.KeyOf(n)}")));
        }
    }

    [Fact]
    public void The_cue_word_is_the_one_that_the_caller_says()
    {
        string text = SeedTexts.Demo.Single(d => d.Name == "tin-lantern").Text;
        string hers = text.Replace("tag \"Lamps\" 4 counts\n", "tag \"Lamps\" 4 counts\n      call: lamps\n", StringComparison.Ordinal);

        Assert.Equal(["“tag”", "“restart”", "“tag”", "“tag”"], Cues(text));
        Assert.Equal(["“lamps”", "“restart”", "“lamps”", "“lamps”"], Cues(hers));
    }

    [Fact]
    public void A_plan_defers_to_local_rules_and_says_when_to_stop()
    {
        SheetModel sheet = Build(LessonSamples.Club("first-tide"), LessonOptions.Usual);

        Assert.Contains(sheet.Cautions, c => c.Contains("chest pain", StringComparison.Ordinal));
        Assert.Equal(SheetLanguage.English.Cautions.Deference, sheet.Cautions[sheet.Cautions.Count - 1]);
    }

    [Fact]
    public void Other_languages_tell_the_plan_in_English_until_they_have_words_for_it()
    {
        DanceAnalysis analysis = LessonSamples.Club("tin-lantern");
        LessonPlan plan = analysis.Lesson();

        Assert.Equal(
            LessonSheet.Of(analysis, plan, false, new SheetChoices { Language = "de" }).Title,
            LessonSheet.Of(analysis, plan, false, SheetChoices.Usual).Title);
        Assert.DoesNotContain(SheetLanguage.Find("de")!.Gaps, g => g.StartsWith("lesson.", StringComparison.Ordinal));
    }

    private static SheetModel Build(DanceAnalysis analysis, LessonOptions options)
        => LessonSheet.Of(analysis, analysis.Lesson(options), options.Minutes is not null, SheetChoices.Usual);

    private static IEnumerable<string> Cues(string text)
    {
        DanceAnalysis analysis = LessonSamples.Read(text);
        LessonPlan plan = analysis.Lesson();
        LessonWords words = new(plan, analysis.Dance, SheetLanguage.English);
        return plan.Steps.Where(s => s.Kind == LessonStepKind.Break)
            .Select(s => words.Details(s).Single(d => d.Kind == "cue word").Words.Split(' ')[2].TrimEnd(','));
    }

    private static string Drawn(DanceAnalysis analysis, LessonPlan plan) => SheetSamples.Draw(LessonSheet.Of(analysis, plan, true, SheetChoices.Usual), "text");
}
