using Scuff;
using Scuff.Analysis.Lessons;

namespace Tests.Analysis.Lessons;

/// <summary>The time is shared out exactly: no other choice that fits is worth more.</summary>
public sealed class LessonAllocatorTests
{
    private const int Rounds = 400;

    [Fact]
    public void No_other_choice_that_fits_is_worth_more()
    {
        int tight = 0;
        for (int seed = 0; seed < Rounds; seed++)
        {
            Random random = new(seed);
            LessonDemand[] demands = [.. Enumerable.Range(0, random.Next(1, 6)).Select(i => Demand(random, i))];
            int units = random.Next(0, 30);

            ValueList<int>? shared = LessonAllocator.Share(demands, units);
            (long Value, int Units)? best = Best(demands, units, 0);

            Assert.Equal(best is null, shared is null);
            if (shared is { } chosen && best is { } expected)
            {
                Assert.Equal(expected.Value, demands.Select((d, i) => d.Choices[chosen[i]].Value).Sum());
                Assert.Equal(expected.Units, demands.Select((d, i) => d.Choices[chosen[i]].Units).Sum());
                tight += expected.Units < demands.Sum(d => d.Choices[d.Choices.Count - 1].Units) ? 1 : 0;
            }
        }

        // where everything fits nothing has to be chosen
        Assert.True(tight > Rounds / 4, $"Only {tight} were tight.");
    }

    [Fact]
    public void Nothing_at_all_takes_no_time() => Assert.Empty(LessonAllocator.Share([], 0)!.Value);

    private static LessonDemand Demand(Random random, int index)
    {
        List<LessonChoice> choices = [];
        int units = random.Next(0, 4);
        long value = random.Next(0, 50);
        for (int i = 0; i < random.Next(1, 5); i++)
        {
            choices.Add(new LessonChoice(i, units, value));
            units += random.Next(0, 5);
            value += random.Next(-10, 60);
        }

        LessonStep step = new() { Kind = LessonStepKind.Chunk, Id = "chunk-" + index, Seconds = 0, Times = 0, Usual = 0, UsualSeconds = 0 };
        return new LessonDemand(step, [.. choices.Select(c => c with { Value = Math.Max(0, c.Value) })]);
    }

    // Every choice of every step; of equal worth the one that takes less time.
    private static (long Value, int Units)? Best(LessonDemand[] demands, int units, int from)
    {
        if (from == demands.Length)
        {
            return (0, 0);
        }

        (long Value, int Units)? best = null;
        foreach (LessonChoice choice in demands[from].Choices)
        {
            if (choice.Units <= units && Best(demands, units - choice.Units, from + 1) is { } rest)
            {
                (long Value, int Units) all = (rest.Value + choice.Value, rest.Units + choice.Units);
                best = best is not { } known || all.Value > known.Value || (all.Value == known.Value && all.Units < known.Units) ? all : best;
            }
        }

        return best;
    }
}
