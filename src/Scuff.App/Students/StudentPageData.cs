using Scuff.Analysis;
using Scuff.Analysis.Calls;
using Scuff.Analysis.Floor;
using Scuff.App.Calling;
using Scuff.App.Explaining;
using Scuff.App.Web;
using Scuff.App.Web.Contract;
using Scuff.Dances;
using Scuff.Sheets;
using Scuff.Timelines;

namespace Scuff.App.Students;

/// <summary>Gathers what a page for students holds.</summary>
internal static class StudentPageData
{
    // A foot that travels half a metre within a count is then at most 16 mm off a straight line, and the page half as heavy as the studio's.
    private const int PerCount = 6;

    private static readonly (CallHelp Help, string Word)[] Helps =
        [(CallHelp.EveryStep, "every-step"), (CallHelp.Headings, "headings"), (CallHelp.Warnings, "warnings")];

    /// <summary>The page of a dance.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="address">Where the page is found; empty for what the text says, if it says anything.</param>
    public static StudentPage Of(DanceAnalysis analysis, string address)
    {
        Dance dance = analysis.Dance;
        SheetModel sheet = SheetBuilder.Build(analysis, SheetChoices.Usual with { HasDiagrams = false });
        SheetLabels labels = sheet.Labels;
        return new StudentPage(
            sheet.Title,
            sheet.ByLine,
            sheet.Edition,
            [.. sheet.Facts],
            [.. sheet.Cautions],
            address.Length > 0 ? address : sheet.PageSign?.Address ?? "",
            dance.BeatsPerBar == 3 ? 6 : 8,
            Reading.PracticeTempo(analysis),
            [.. Sections(dance, sheet)],
            [.. Breaks(sheet)],
            [.. sheet.Tracks.Select(t => t.Facts.Length > 0 ? $"{t.Name}, {t.Facts}" : t.Name)],
            Danced(analysis),
            TakenOptions.IsOffered(dance) ? Danced(analysis.Easier) : null);

        IEnumerable<StudentWords> Breaks(SheetModel sheet) => sheet.Breaks
            .Concat(sheet.Tracks.SelectMany(t => t.Breaks))
            .Concat(sheet.Endings.Select(e => e with { Where = labels.Ending + ": " + e.Where }))
            .Select(b => new StudentWords(labels.LeadOf(b.Where), b.What));
    }

    private static StudentDance Danced(DanceAnalysis analysis)
    {
        Timeline timeline = TimelineChoice.Of(analysis, null)!.Timeline;
        FloorAnswer floor = FloorSampler.Of(analysis, timeline, DancerSize.Default, PerCount);
        CountClock clock = CountClock.Even(Reading.PracticeTempo(analysis));
        return new StudentDance(
            floor with
            {
                Steps = [],
                Left = Short(floor.Left),
                Right = Short(floor.Right),

                // from above nobody sees how high the hips are
                Body = floor.Body with { X = Steps(floor.Body.X), Y = Steps(floor.Body.Y), Hips = [], Facing = Steps(floor.Body.Facing), Turned = Steps(floor.Body.Turned) },
            },
            new StudentSteps([.. floor.Steps.Select(s => s.At)], [.. floor.Steps.Select(s => s.Count)], [.. floor.Steps.Select(s => s.Facing ?? "")]),
            [
                .. Helps.Select(h => new StudentCalls(
                    h.Word,
                    [
                        .. CallWriter.Write(analysis.Dance, timeline, clock, new CallOptions { HelpByWall = [h.Help], WithCountIn = false }).Calls
                            .Select(c => new StudentCall(HelpWords.Of(c.Kind), c.Words, Math.Round(c.At, 3), c.For.Value.ToDouble(), c.Wall)),
                    ])),
            ]);
    }

    private static FloorFoot Short(FloorFoot foot) => foot with { X = Steps(foot.X), Y = Steps(foot.Y), Angle = Steps(foot.Angle), Lift = Steps(foot.Lift) };

    private static int[] Steps(int[] values) => [.. values.Select((v, i) => i == 0 ? v : v - values[i - 1])];

    // The sheet has the sections, tags and lines of the dance in their order.
    private static IEnumerable<StudentSection> Sections(Dance dance, SheetModel sheet)
    {
        for (int p = 0; p < dance.Parts.Count; p++)
        {
            for (int s = 0; s < dance.Parts[p].Sections.Count; s++)
            {
                string part = sheet.Parts[p].Heading;
                yield return Section(dance.Parts[p].Sections[s], sheet.Parts[p].Sections[s], s == 0 && part.Length > 0 ? part + ". " : "", sheet.Labels);
            }
        }

        for (int t = 0; t < dance.Tags.Count; t++)
        {
            yield return Section(dance.Tags[t].Body, sheet.Tags[t], "", sheet.Labels);
        }
    }

    private static StudentSection Section(Section written, SheetSection printed, string part, SheetLabels labels) => new(
        part + printed.Heading,
        [
            .. printed.Lines.Select((line, i) => new StudentLine(
                written.Lines[i].Number,
                line.Counts,
                line.Words,
                line.Facing ?? "",
                [
                    .. line.Notes.Select(n => new StudentWords(labels.LeadOf(n), n.Words)),
                    .. line.Options.Select(o => new StudentWords(labels.LeadOf(o), o.Words)),
                ])),
        ],
        [.. printed.Notes.Select(n => new StudentWords(labels.LeadOf(n), n.Words))]);
}
