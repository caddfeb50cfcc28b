using Scuff;
using Scuff.Analysis.Fit;

namespace Tests.Analysis.Fit;

/// <summary>Small problems of fitting, made by chance, and the cheapest of all their plans found by trying every one.</summary>
internal static class SmallFits
{
    /// <summary>A problem with one or two parts of a few counts each.</summary>
    public static FitModel Make(Random dice)
    {
        int counts = dice.Next(4, 15);
        int parts = dice.Next(4) == 0 ? 2 : 1;
        int kinds = dice.Next(1, 5);
        return new FitModel
        {
            Counts = counts,
            Parts = [.. Enumerable.Range(0, parts).Select(_ => PartOf(dice, parts, kinds))],
            Phrase = Prices(dice, counts, 60),
            Begin = [.. Enumerable.Range(0, parts).Select(_ => Prices(dice, counts, 40))],
            Starts = [.. Enumerable.Range(0, dice.Next(1, 4)).Select(_ => new FitStart(dice.Next(0, counts), dice.Next(0, 20)))],
            CanBeFirst = [.. Enumerable.Range(0, parts).Select(i => i == 0 || dice.Next(2) == 0)],
            Stand = Prices(dice, counts, 10),
            NewKind = dice.Next(0, 12),
            EndInside = dice.Next(0, 15),
        };
    }

    /// <summary>The least that any plan with at most so many acts pays; every plan is tried.</summary>
    public static int Least(FitModel model, int acts)
    {
        int least = int.MaxValue;
        foreach (FitStart start in model.Starts)
        {
            for (int part = 0; part < model.Parts.Count; part++)
            {
                if (model.CanBeFirst[part])
                {
                    Try(start.Count, part, 0, acts, start.Price + model.Begin[part][start.Count], [], [new FitEvent(start.Count, part, 0, -1)]);
                }
            }
        }

        return least;

        void Try(int at, int part, int count, int left, int paid, ValueList<int> kinds, ValueList<FitEvent> events)
        {
            if (at == model.Counts)
            {
                if (!Keeps(model, events))
                {
                    return;
                }

                int ends = model.Parts[part].IsBoundary[count] ? 0 : model.EndInside;
                least = Math.Min(least, paid + ends + (kinds.Distinct().Count() * model.NewKind));
                return;
            }

            if (count < model.Parts[part].Length)
            {
                int phrase = count > 0 && !model.Parts[part].IsBoundary[count] ? model.Phrase[at] : 0;
                Try(at + 1, part, count + 1, left, paid + phrase, kinds, events);
            }
            else
            {
                for (int next = 0; next < model.Parts.Count; next++)
                {
                    if (model.Parts[part].CanFollow[next])
                    {
                        Try(at, next, 0, left, paid + model.Begin[next][at], kinds, [.. events, new FitEvent(at, next, 0, -1)]);
                    }
                }
            }

            ValueList<FitAct> acts = model.Parts[part].Acts[count];
            for (int i = 0; i < acts.Count; i++)
            {
                FitAct act = acts[i];
                if (left == 0 || at + act.Length > model.Counts)
                {
                    continue;
                }

                ValueList<int> learnt = [.. kinds, act.Kind];
                ValueList<FitEvent> happened = [.. events, new FitEvent(at, part, count, i)];
                if (act.Type == FitActType.Restart)
                {
                    Try(at, act.Next, 0, left - 1, paid + act.Price + model.Begin[act.Next][at], learnt, [.. happened, new FitEvent(at, act.Next, 0, -1)]);
                    continue;
                }

                int stay = act.Price + Enumerable.Range(at + 1, act.Length - 1).Sum(i => model.Phrase[i])
                    + (act.Type == FitActType.Hold ? Enumerable.Range(at, act.Length).Sum(i => model.Stand[i]) : 0);
                Try(at + act.Length, part, count, left - 1, paid + stay, learnt, happened);
            }
        }
    }

    /// <summary>Whether a plan keeps to all that was decided: read off its events, one decision after the other.</summary>
    public static bool Keeps(FitModel model, IReadOnlyList<FitEvent> events) => model.Pins.All(pin => pin switch
    {
        FitPin.Begins begins => begins.At >= model.Counts || events.Any(e => e.IsBegin && e.At == begins.At),
        FitPin.Extra extra => extra.At >= model.Counts || events.Any(e => IsStay(model, e) && e.At == extra.At),
        FitPin.Undisturbed calm => !events.Any(e => !e.IsBegin && e.At >= calm.From && e.At < calm.To),
        _ => throw new ArgumentOutOfRangeException(nameof(model)),
    });

    /// <summary>A problem with one to three decisions made by chance.</summary>
    public static FitModel Pinned(Random dice)
    {
        FitModel model = Make(dice);
        return model with { Pins = [.. Enumerable.Range(0, dice.Next(1, 4)).Select(_ => PinOf(dice, model.Counts))] };
    }

    /// <summary>What a solution pays, added up from its events.</summary>
    public static int Paid(FitModel model, FitSolution solution)
    {
        int paid = model.Starts[solution.Start].Price;
        int part = -1;
        int count = 0;
        int at = model.Starts[solution.Start].Count;
        HashSet<int> kinds = [];
        foreach (FitEvent next in solution.Events)
        {
            paid += Danced(next.At);
            if (next.IsBegin)
            {
                Assert.True(part < 0 ? model.CanBeFirst[next.Part] : count == 0 || (count == model.Parts[part].Length && model.Parts[part].CanFollow[next.Part]));
                (part, count) = (next.Part, 0);
                paid += model.Begin[part][at];
                continue;
            }

            Assert.Equal((part, count), (next.Part, next.Count));
            FitAct act = model.Parts[part].Acts[count][next.Act];
            paid += model.Act(at, act);
            kinds.Add(act.Kind);
            at += act.Length;
            count = act.Type == FitActType.Restart ? 0 : count;
            part = act.Type == FitActType.Restart ? act.Next : part;
        }

        paid += Danced(model.Counts);
        return paid + model.End(part, count) + (kinds.Count * model.NewKind);

        int Danced(int upto)
        {
            int price = 0;
            while (at < upto)
            {
                Assert.True(count < model.Parts[part].Length);
                price += model.Run(at++, part, count++);
            }

            return price;
        }
    }

    private static bool IsStay(FitModel model, FitEvent at) => !at.IsBegin && model.Parts[at.Part].Acts[at.Count][at.Act].Type != FitActType.Restart;

    private static FitPin PinOf(Random dice, int counts)
    {
        int at = dice.Next(0, counts + 2);
        return dice.Next(3) switch
        {
            0 => new FitPin.Begins(at),
            1 => new FitPin.Extra(at),
            _ => new FitPin.Undisturbed(at, at + dice.Next(1, 5)),
        };
    }

    private static ValueList<int> Prices(Random dice, int counts, int most)
        => [.. Enumerable.Range(0, counts).Select(_ => dice.Next(3) == 0 ? dice.Next(0, most) : 0)];

    private static FitPart PartOf(Random dice, int parts, int kinds)
    {
        int length = dice.Next(1, 6);
        bool[] boundaries = [.. Enumerable.Range(0, length + 1).Select(i => i == 0 || i == length || dice.Next(3) == 0)];
        ValueList<FitAct>[] acts = [.. Enumerable.Range(0, length + 1).Select(i => i == 0 ? [] : ActsAt(dice, i < length, parts, kinds))];
        return new FitPart([.. boundaries], [.. acts], [.. Enumerable.Range(0, parts).Select(_ => true)]);
    }

    private static ValueList<FitAct> ActsAt(Random dice, bool isInside, int parts, int kinds)
    {
        List<FitAct> acts = [];
        for (int i = dice.Next(0, 3); i > 0; i--)
        {
            FitActType type = (FitActType)dice.Next(isInside ? 0 : 1, 3);
            acts.Add(new FitAct(
                type,
                type == FitActType.Restart ? 0 : dice.Next(1, 4),
                dice.Next(1, 20),
                dice.Next(kinds),
                type == FitActType.Restart ? dice.Next(parts) : -1,
                -1));
        }

        return acts.ToValueList();
    }
}
