using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;
using Tests.Prose;

namespace Tests.Analysis.Levels;

/// <summary>More turn, or faster music, never makes a dance easier.</summary>
public sealed class LevelMonotonyTests
{
    private const int Dances = 400;

    [Fact]
    public void Adding_turns_never_lowers_the_level()
    {
        int raised = 0;
        for (int seed = 0; seed < Dances; seed++)
        {
            Random random = new(seed);
            Dance dance = GeneratedDances.Make(seed, (seed % 4) + 1);
            Level before = LevelOf(dance);
            for (int more = 0; more < 6; more++)
            {
                dance = WithMoreTurn(dance, random);
                Level after = LevelOf(dance);
                Assert.True(after >= before, $"Dance {seed} went from {before} to {after} with more turn.");
                raised += after > before ? 1 : 0;
                before = after;
            }
        }

        // the law would hold for a level that never changes, too
        Assert.True(raised > Dances / 4, $"Only {raised} levels rose.");
    }

    [Fact]
    public void Faster_music_never_lowers_the_level()
    {
        int raised = 0;
        for (int seed = 0; seed < Dances / 4; seed++)
        {
            Dance dance = GeneratedDances.Make(seed, (seed % 4) + 1);
            Level before = LevelOf(dance);
            foreach (int tempo in (int[])[60, 96, 120, 131, 141, 170, 200, 240, 300])
            {
                Level after = LevelOf(dance with { Tracks = [new Track { Title = "Gale", Tempo = new Tempo(tempo), Span = default, Line = 1 }] });
                Assert.True(after >= before, $"Dance {seed} went from {before} to {after} at {tempo} beats a minute.");
                raised += after > before ? 1 : 0;
                before = after;
            }
        }

        Assert.True(raised > Dances / 16, $"Only {raised} levels rose.");
    }

    private static Level LevelOf(Dance dance) => DanceAnalysis.Of(new Draft("", dance, Report.Empty)).Level.Level;

    // one action turns further the way it turns, or begins to turn
    private static Dance WithMoreTurn(Dance dance, Random random)
    {
        int chosen = random.Next(dance.Sections.Sum(section => section.Steps.Count()));
        int eighths = random.Next(1, 9);
        bool toRight = random.Next(2) == 0;
        int at = 0;
        return dance with
        {
            Parts = [.. dance.Parts.Select(part => part with
            {
                Sections = [.. part.Sections.Select(section => section with
                {
                    Lines = [.. section.Lines.Select(line => line with
                    {
                        Moves = [.. line.Moves.Select(move => move with { Steps = [.. move.Steps.Select(step => at++ == chosen ? More(step) : step)] })],
                    })],
                })],
            })],
        };

        WrittenStep More(WrittenStep step)
        {
            int sign = step.Action.Turn.Sign != 0 ? step.Action.Turn.Sign : toRight ? 1 : -1;
            return step with { Action = step.Action with { Turn = step.Action.Turn + Turn.FromEighths(sign * eighths) } };
        }
    }
}
