using Scuff;
using Scuff.Analysis;
using Scuff.Analysis.Compare;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Languages;
using Scuff.Steps;
using Scuff.Timing;
using Tests.Prose;

namespace Tests.Analysis.Compare;

/// <summary>What holds of every comparison, tried on each dance of the demo club with edits made by rule.</summary>
public sealed class ComparisonLawTests
{
    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    public static TheoryData<string> All => [.. SeedTexts.Demo.Concat(SeedTexts.Faulty).Select(d => d.Name)];

    [Theory]
    [MemberData(nameof(All))]
    public void A_dance_does_not_differ_from_itself(string name)
        => Assert.Empty(Versions.Changes(Text(name), Text(name)));

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_tidied_dance_is_the_same_dance(string name)
    {
        string tidy = DanceWriter.Tidy(DanceReader.Read(Text(name)));

        Assert.True(Versions.Compare(Text(name), tidy).IsSame, string.Join('\n', Versions.Sentences(Text(name), tidy)));
        Assert.True(Versions.Compare(tidy, Text(name)).IsSame);
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void The_mirror_image_is_known_as_the_same_dance_on_the_other_foot(string name)
    {
        DanceAnalysis dance = Versions.Read(Text(name));
        DanceAnalysis image = DanceAnalysis.Of(dance.Draft with { Dance = DanceMirror.Mirror(dance.Dance) });

        Assert.Equal([new DanceChange.Mirrored()], DanceComparison.Of(dance, image).Changes);
        Assert.Equal([new DanceChange.Mirrored()], DanceComparison.Of(image, dance).Changes);
    }

    // Every count line in turn is danced as holds: one change, in that section, on those counts, and back again the other way round.
    [Theory]
    [MemberData(nameof(Demo))]
    public void A_line_with_other_steps_is_found_where_it_stands_and_nothing_else_is(string name)
    {
        DanceAnalysis old = Versions.Read(Text(name));
        int edits = 0;
        foreach (Part part in old.Dance.Parts)
        {
            foreach (Section section in part.Sections)
            {
                foreach (WrittenLine line in section.Lines.Where(l => l.Steps.Any(s => s.Action.Kind != ActionKind.Hold)))
                {
                    Section still = section with { Lines = section.Lines.Select(l => ReferenceEquals(l, line) ? Held(l) : l).ToValueList() };
                    DanceAnalysis now = With(old, part with { Sections = part.Sections.Select(s => ReferenceEquals(s, section) ? still : s).ToValueList() });
                    edits++;

                    DanceChange.Steps found = Assert.IsType<DanceChange.Steps>(Assert.Single(Sections(DanceComparison.Of(old, now))));
                    DanceChange.Steps back = Assert.IsType<DanceChange.Steps>(Assert.Single(Sections(DanceComparison.Of(now, old))));

                    Assert.Equal(new DancePlace(part.Name, section.Number), found.Place);
                    Assert.Equal(line.Steps.Select(Danced), found.Before.SelectMany(m => m.Steps).Select(Danced));
                    Assert.All(found.After.SelectMany(m => m.Steps), s => Assert.Equal(ActionKind.Hold, s.Action.Kind));
                    Assert.Equal((found.CountsBefore, found.CountsAfter, found.Before, found.After), (back.CountsAfter, back.CountsBefore, back.After, back.Before));
                    Assert.Equal((found.Landing!.FacingBefore, found.Landing.WeightBefore), (back.Landing!.FacingAfter, back.Landing.WeightAfter));
                }
            }
        }

        Assert.True(edits >= 4, $"only {edits} lines could be edited");

        static WrittenLine Held(WrittenLine line) => line with
        {
            Moves =
            [
                line.Moves[0] with
                {
                    Definition = null,
                    Words = "hold",
                    Steps = line.Steps.Select(s => s with { Action = StepAction.Hold, BodyAngle = default, With = default }).ToValueList(),
                },
            ],
        };

        static (Counts, StepAction) Danced(WrittenStep step) => (step.Count.Place, step.Action);
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_section_that_goes_or_comes_is_told_as_that(string name)
    {
        DanceAnalysis whole = Versions.Read(Text(name));
        if (whole.Dance.IsPhrased)
        {
            return;
        }

        Part part = whole.Dance.Parts[0];
        for (int left = 0; left < part.Sections.Count; left++)
        {
            DanceAnalysis shorter = With(whole, part.Sections.Where((_, i) => i != left));
            DanceChange[] gone = [.. Sections(DanceComparison.Of(whole, shorter))];
            DanceChange[] come = [.. Sections(DanceComparison.Of(shorter, whole))];

            DanceChange.WholeSection missing = Assert.IsType<DanceChange.WholeSection>(Assert.Single(gone));
            DanceChange.WholeSection found = Assert.IsType<DanceChange.WholeSection>(Assert.Single(come));
            Assert.Equal((false, true), (missing.IsNew, found.IsNew));
            Assert.Equal(missing.Moves, found.Moves);
        }
    }

    [Theory]
    [MemberData(nameof(Demo))]
    public void A_section_that_moves_is_told_as_that(string name)
    {
        DanceAnalysis whole = Versions.Read(Text(name));
        if (whole.Dance.IsPhrased)
        {
            return;
        }

        Part part = whole.Dance.Parts[0];
        DanceAnalysis moved = With(whole, part.Sections.Skip(1).Append(part.Sections[0]));

        DanceChange[] changes = [.. Sections(DanceComparison.Of(whole, moved))];
        if (changes is [DanceChange.Mirrored])
        {
            // two halves that mirror each other: on the other foot is the shorter way to say it
            return;
        }

        DanceChange.SectionMoved told = Assert.IsType<DanceChange.SectionMoved>(Assert.Single(changes));
        Assert.Equal((1, part.Sections.Count), (told.Before.Section, told.After.Section));
    }

    [Fact]
    public void No_two_texts_make_a_comparison_throw()
    {
        for (int number = 0; number < 400; number++)
        {
            DanceAnalysis one = Versions.Read(FuzzTexts.Make(number));
            DanceAnalysis other = Versions.Read(FuzzTexts.Make(number + 1));

            Assert.Empty(DanceComparison.Of(one, one).Changes);
            Assert.NotNull(ChangeWords.Of(DanceComparison.Of(one, other), SheetLanguage.English).ToArray());
        }
    }

    // Every pair of club dances is told apart, in sentences without a hole.
    [Fact]
    public void Two_dances_are_told_apart_in_whole_sentences()
    {
        DanceAnalysis[] club = [.. SeedTexts.Demo.Select(d => Versions.Read(d.Text))];
        foreach (DanceAnalysis one in club)
        {
            foreach (DanceAnalysis other in club.Where(o => o != one))
            {
                DanceComparison comparison = DanceComparison.Of(one, other);
                Assert.False(comparison.IsSame);
                Assert.All(ChangeWords.Of(comparison, SheetLanguage.English), s =>
                {
                    Assert.Matches(@"^[\p{Lu}\p{N}“].*\.$", s);
                    Assert.DoesNotContain("{", s, StringComparison.Ordinal);
                    Assert.DoesNotContain("  ", s, StringComparison.Ordinal);
                });
            }
        }
    }

    // Without what follows from an edit elsewhere; no edit here touches brackets, so the dance may leave them behind.
    private static IEnumerable<DanceChange> Sections(DanceComparison comparison) => comparison.Changes.Where(c => c is not (
        DanceChange.Length or DanceChange.WallCount or DanceChange.StartWeight or DanceChange.Break or DanceChange.WrittenFacing { IsLeftBehind: true }
        or DanceChange.BreakFacing { IsLeftBehind: true } or DanceChange.EndFacing { IsLeftBehind: true }));

    private static DanceAnalysis With(DanceAnalysis whole, IEnumerable<Section> sections)
    {
        Section[] numbered = [.. sections.Select((s, i) => s with { Number = i + 1 })];
        return With(whole, whole.Dance.Parts[0] with { Sections = [.. numbered] });
    }

    private static DanceAnalysis With(DanceAnalysis whole, Part changed) => DanceAnalysis.Of(whole.Draft with
    {
        Dance = whole.Dance with { Parts = whole.Dance.Parts.Select(p => p.Name == changed.Name ? changed : p).ToValueList() },
    });

    private static string Text(string name) => SeedTexts.Demo.Concat(SeedTexts.Faulty).First(d => d.Name == name).Text;
}
