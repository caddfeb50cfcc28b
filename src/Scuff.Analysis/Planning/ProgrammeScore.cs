namespace Scuff.Analysis.Planning;

/// <summary>What a programme is worth, reckoned from the model without looking at how it was found, and whether it keeps to all that must hold.</summary>
internal static class ProgrammeScore
{
    /// <summary>The points of a programme; null when it breaks what must hold.</summary>
    /// <param name="model">The question.</param>
    /// <param name="chosen">For each place the option, or -1; within a stretch those in use come first.</param>
    public static int? Of(ProgrammeModel model, ReadOnlySpan<int> chosen)
    {
        if (!Holds(model, chosen))
        {
            return null;
        }

        int points = 0;
        int[] sitting = new int[model.Groups.Length];
        for (int s = 0; s < model.Capacity.Length; s++)
        {
            int seconds = model.Question.Stretches[s].Seconds;
            Array.Clear(sitting);
            for (int slot = model.FirstSlot[s]; slot < model.FirstSlot[s + 1]; slot++)
            {
                if (chosen[slot] < 0)
                {
                    continue;
                }

                ProgrammeOption option = model.Options[chosen[slot]];
                points += model.PointsAt(chosen[slot], slot);
                seconds -= option.Seconds;
                if (model.Slots[slot].IsClosing)
                {
                    continue;
                }

                if (slot > model.FirstSlot[s])
                {
                    ProgrammeOption before = model.Options[chosen[slot - 1]];
                    points -= model.DifficultyCost(before.Difficulty, option.Difficulty) + model.TempoCost(before.Tempo, option.Tempo);
                }

                for (int g = 0; g < sitting.Length; g++)
                {
                    sitting[g] = (option.Dancing >> model.Groups[g] & 1) == 1 ? 0 : sitting[g] + 1;
                    points -= sitting[g] > model.Rules.MostSatOut ? model.Rules.SatOut : 0;
                }
            }

            points -= model.Capacity[s] > 0 ? model.EmptyCost(seconds) : 0;
        }

        return points;
    }

    /// <summary>Whether all that must hold does.</summary>
    public static bool Holds(ProgrammeModel model, ReadOnlySpan<int> chosen)
    {
        int[] slotOf = new int[model.Question.Dances.Count];
        Array.Fill(slotOf, -1);
        HashSet<int> songs = [];
        HashSet<(int, int)> splits = [];
        for (int s = 0; s < model.Capacity.Length; s++)
        {
            int seconds = 0;
            for (int slot = model.FirstSlot[s]; slot < model.FirstSlot[s + 1]; slot++)
            {
                if (chosen[slot] < 0)
                {
                    if (model.MustBeUsed(slot))
                    {
                        return false;
                    }

                    continue;
                }

                ProgrammeOption option = model.Options[chosen[slot]];
                seconds += option.Seconds;
                bool isAfterHole = !model.MustBeUsed(slot) && slot > model.FirstSlot[s] && chosen[slot - 1] < 0;
                if (isAfterHole || !model.MayStand(chosen[slot], slot) || !songs.Add(option.Song) || slotOf[option.Dance] >= 0)
                {
                    return false;
                }

                slotOf[option.Dance] = slot;
                if (option.IsSplit)
                {
                    if (slotOf[option.Other] >= 0)
                    {
                        return false;
                    }

                    slotOf[option.Other] = slot;
                    splits.Add((Math.Min(option.Dance, option.Other), Math.Max(option.Dance, option.Other)));
                }
            }

            if (seconds > model.Question.Stretches[s].Seconds)
            {
                return false;
            }
        }

        return KeepsApart(model, slotOf) && KeepsPins(model, slotOf, splits);
    }

    private static bool KeepsApart(ProgrammeModel model, int[] slotOf)
    {
        foreach ((int one, int other) in model.Alike)
        {
            (int a, int b) = (slotOf[one], slotOf[other]);
            if (a >= 0 && b >= 0 && model.Slots[a].Stretch == model.Slots[b].Stretch
                && (Math.Abs(a - b) <= model.Rules.LikeApart || model.Slots[a].IsClosing || model.Slots[b].IsClosing))
            {
                return false;
            }
        }

        return true;
    }

    private static bool KeepsPins(ProgrammeModel model, int[] slotOf, HashSet<(int, int)> splits)
    {
        return model.PinnedAt.TrueForAll(p => slotOf[p.Dance] == p.Slot)
            && model.PinnedWithin.TrueForAll(p => slotOf[p.Dance] >= 0 && model.Slots[slotOf[p.Dance]].Stretch == p.Stretch)
            && model.PinnedSomewhere.TrueForAll(d => slotOf[d] >= 0)
            && model.PinnedSplits.TrueForAll(p => splits.Contains((Math.Min(p.One, p.Other), Math.Max(p.One, p.Other))))
            && model.PinnedBefore.TrueForAll(p => slotOf[p.First] < 0 || slotOf[p.Second] < 0 || slotOf[p.First] < slotOf[p.Second]);
    }
}
