using Scuff;
using Scuff.Analysis;
using Scuff.Analysis.Lessons;
using Scuff.Dances;
using Scuff.Timing;
using Tests.Prose;

namespace Tests.Analysis.Lessons;

/// <summary>Chunks: nothing is lost, no figure is cut, easy ones are joined and hard ones split.</summary>
public sealed class LessonChunkTests
{
    private const int Generated = 150;
    private const int Cuttings = 60;

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void Chunks_of_a_demo_dance_have_4_8_or_16_counts_or_bars_of_three(string name)
    {
        DanceAnalysis analysis = LessonSamples.Club(name);
        ValueList<int> lengths = analysis.Dance.BeatsPerBar == 3 ? LessonLimits.ChunksOfThree : LessonLimits.ChunksOfFour;
        foreach (Level level in Enum.GetValues<Level>())
        {
            Assert.All(analysis.Lesson(new LessonOptions { Class = level }).Chunks, c => Assert.Contains(c.Span.Length.Value.Floor, lengths));
        }
    }

    [Theory]
    [MemberData(nameof(LessonSamples.Demo), MemberType = typeof(LessonSamples))]
    public void No_figure_of_a_demo_dance_is_cut(string name)
    {
        foreach (Level level in Enum.GetValues<Level>())
        {
            Judge(LessonSamples.Club(name), level);
        }
    }

    [Fact]
    public void No_figure_of_a_generated_dance_is_cut()
    {
        foreach (Dance dance in GeneratedDances.Some(Generated))
        {
            DanceAnalysis analysis = DanceAnalysis.Of(new Draft("", dance, Scuff.Diagnostics.Report.Empty));
            Judge(analysis, Level.Beginner);
            Judge(analysis, Level.Advanced);
        }
    }

    [Fact]
    public void Easy_eights_are_joined_for_those_who_can_and_hard_ones_split_for_those_who_cannot()
    {
        DanceAnalysis easy = LessonSamples.Club("net-loft");
        DanceAnalysis hard = LessonSamples.Club("shrimp-boat-samba");

        Assert.True(easy.Lesson(new LessonOptions { Class = Level.Advanced }).Chunks.Count < easy.Lesson(new LessonOptions { Class = Level.AbsoluteBeginner }).Chunks.Count);
        Assert.True(hard.Lesson(new LessonOptions { Class = Level.Advanced }).Chunks.Count < hard.Lesson(new LessonOptions { Class = Level.AbsoluteBeginner }).Chunks.Count);
    }

    [Fact]
    public void No_other_cutting_is_cheaper()
    {
        ValueList<int> lengths = LessonLimits.ChunksOfFour;
        for (int seed = 0; seed < Cuttings; seed++)
        {
            Random random = new(seed);
            int target = random.Next(10, 40);
            (Part part, ValueList<LessonMove> moves) = Made(random);

            int[] found = [.. ChunkCutter.Cut(part, Counts.Zero, moves, lengths, target).Select(s => s.End.Value.Floor)];

            long best = long.MaxValue;
            for (int cuts = 0; cuts < 1 << 11; cuts++)
            {
                int[] ends = [.. Enumerable.Range(0, 11).Where(i => (cuts & (1 << i)) != 0).Select(i => (i + 1) * 2), 24];
                best = Math.Min(best, CostOf(ends, moves, lengths, target));
            }

            Assert.Equal(best, CostOf(found, moves, lengths, target));
        }
    }

    // Three sections of four lines, two counts each with one move of some difficulty: cuts are possible between the lines.
    private static (Part Part, ValueList<LessonMove> Moves) Made(Random random)
    {
        List<Section> sections = [];
        List<LessonMove> moves = [];
        for (int section = 0; section < 3; section++)
        {
            List<WrittenLine> lines = [];
            for (int line = 0; line < 4; line++)
            {
                WrittenMove move = new() { Steps = default, Span = default, Words = "" };
                CountSpan span = new(Counts.FromWhole(line * 2), Counts.FromWhole((line * 2) + 2));
                WrittenLine written = new() { Label = "", Counts = span, Moves = [move], Span = default, Number = 1 };
                lines.Add(written);
                Counts start = Counts.FromWhole(section * 8);
                int points = random.Next(0, 12);
                moves.Add(new LessonMove(move, written, start + span.Start, start + span.End, [new LessonReason(LessonReasonKind.Turns, 1, points)], false));
            }

            sections.Add(new Section { Number = section + 1, Length = Counts.FromWhole(8), Lines = lines.ToValueList(), Span = default });
        }

        return (new Part("", sections.ToValueList(), default), moves.ToValueList());
    }

    private static long CostOf(int[] ends, ValueList<LessonMove> moves, ValueList<int> lengths, int target)
    {
        long cost = 0;
        int from = 0;
        foreach (int end in ends)
        {
            if (end - from > LessonLimits.LongestChunk)
            {
                return long.MaxValue;
            }

            long points = moves.Where(m => m.Head.Value.Floor >= from && m.Head.Value.Floor < end).Sum(m => m.Points) + ((end - from) * LessonLimits.CountPoints);
            cost += ((points - target) * (points - target))
                + (lengths.Contains(end - from) ? 0 : LessonLimits.OddLengthCost)
                + (end % 8 == 0 ? 0 : LessonLimits.WithinSectionCost);
            from = end;
        }

        return cost;
    }

    private static void Judge(DanceAnalysis analysis, Level level)
    {
        LessonPlan plan = analysis.Lesson(new LessonOptions { Class = level });
        Counts at = Counts.Zero;
        int number = 1;
        foreach (LessonChunk chunk in plan.Chunks)
        {
            Assert.Equal(at, chunk.Span.Start);
            Assert.Equal(number++, chunk.Number);
            Assert.Equal(chunk.Span.Length.Value.Floor, chunk.Pieces.Sum(p => p.Counts.Length.Value.Floor));
            at = chunk.Span.End;
        }

        Assert.Equal(analysis.Dance.Length, at);

        // every move is in one chunk, whole
        WrittenMove[] written = [.. analysis.Dance.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Moves)];
        Assert.Equal(written, plan.Chunks.SelectMany(c => c.Moves));
        Dictionary<WrittenStep, Counts> starts = new(ReferenceEqualityComparer.Instance);
        Counts start = Counts.Zero;
        foreach (Section section in analysis.Dance.Sections)
        {
            foreach (WrittenStep step in section.Steps)
            {
                starts[step] = start + step.Count.Place;
            }

            start += section.Length;
        }

        foreach (LessonChunk chunk in plan.Chunks)
        {
            foreach (WrittenStep step in chunk.Moves.SelectMany(m => m.Steps))
            {
                // a pick-up leads in, less than a count before
                Assert.True(starts[step] < chunk.Span.End, $"{analysis.Dance.Title}: a step at {starts[step]} in a chunk up to {chunk.Span.End}");
                Assert.True(starts[step].Value > chunk.Span.Start.Value - 1, $"{analysis.Dance.Title}: a step at {starts[step]} in a chunk from {chunk.Span.Start}");
            }
        }
    }
}
