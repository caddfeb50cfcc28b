using Scuff;
using Scuff.Analysis.Fit;

namespace Tests.Analysis.Fit;

public sealed class FitSearchTests
{
    [Fact]
    public void The_cheapest_of_all_plans_is_found_in_thousands_of_small_cases()
    {
        Random dice = new(5);
        int withActs = 0;
        for (int i = 0; i < 4000; i++)
        {
            FitModel model = SmallFits.Make(dice);
            ValueList<FitSolution> solutions = new FitSearch(model).Solve(3);
            for (int acts = 0; acts <= 3; acts++)
            {
                FitSolution best = solutions.Last(s => s.Acts <= acts);
                int least = SmallFits.Least(model, acts);
                Assert.True(least == best.Price, $"case {i}, {acts} acts: {best.Price} found, {least} possible");
            }

            Assert.All(solutions, s => Assert.True(s.IsProven));
            withActs += solutions.Count > 1 ? 1 : 0;
        }

        // the cases would prove little if interruptions never paid
        Assert.True(withActs > 1000, $"{withActs} cases with acts");
    }

    [Fact]
    public void The_cheapest_of_all_plans_that_keep_to_what_was_decided_is_found()
    {
        Random dice = new(17);
        int impossible = 0;
        int changed = 0;
        for (int i = 0; i < 4000; i++)
        {
            FitModel model = SmallFits.Pinned(dice);
            ValueList<FitSolution> solutions = new FitSearch(model).Solve(3);
            for (int acts = 0; acts <= 3; acts++)
            {
                FitSolution? best = solutions.LastOrDefault(s => s.Acts <= acts);
                int least = SmallFits.Least(model, acts);
                Assert.True(least == (best?.Price ?? int.MaxValue), $"case {i}, {acts} acts: {best?.Price} found, {least} possible");
            }

            Assert.All(solutions, s => Assert.True(s.IsProven && SmallFits.Keeps(model, s.Events) && SmallFits.Paid(model, s) == s.Price, $"case {i}"));
            impossible += solutions.Count == 0 ? 1 : 0;
            int free = new FitSearch(model with { Pins = [] }).Solve(3)[^1].Price;
            changed += solutions.Count > 0 && solutions[^1].Price != free ? 1 : 0;
        }

        // the cases would prove little if decisions changed nothing, or left nothing
        Assert.True(changed > 800 && impossible is > 300 and < 2500, $"{changed} changed, {impossible} impossible");
    }

    [Fact]
    public void A_plan_pays_what_its_events_pay()
    {
        Random dice = new(6);
        for (int i = 0; i < 1000; i++)
        {
            FitModel model = SmallFits.Make(dice);
            foreach (FitSolution solution in new FitSearch(model).Solve(4))
            {
                Assert.Equal(SmallFits.Paid(model, solution), solution.Price);
            }
        }
    }

    [Fact]
    public void More_acts_stand_in_the_list_only_where_they_pay()
    {
        Random dice = new(7);
        for (int i = 0; i < 500; i++)
        {
            ValueList<FitSolution> solutions = new FitSearch(SmallFits.Make(dice)).Solve(4);
            Assert.Equal(solutions.OrderByDescending(s => s.Price).Select(s => s.Price), solutions.Select(s => s.Price));
            Assert.Equal(solutions.Select(s => s.Acts).Distinct().Order(), solutions.Select(s => s.Acts));
        }
    }
}
