namespace Scuff.Analysis.Planning;

/// <summary>Makes a programme of what was chosen: the clock, every reason with its points, and what was wished and is not there.</summary>
internal static class ProgrammeWriting
{
    /// <summary>Writes it.</summary>
    /// <param name="model">The question.</param>
    /// <param name="chosen">For each place the option, or -1.</param>
    /// <param name="bound">What no programme can exceed.</param>
    /// <exception cref="ArgumentException">What was chosen breaks what must hold.</exception>
    public static Programme Write(ProgrammeModel model, int[] chosen, int bound)
    {
        int points = ProgrammeScore.Of(model, chosen) ?? throw new ArgumentException("This choice breaks what must hold.", nameof(chosen));
        List<ProgrammeItem> items = [];
        List<ProgrammeReason> common = [];
        int start = 0;
        for (int s = 0; s < model.Question.Stretches.Count; s++)
        {
            ProgrammeStretch stretch = model.Question.Stretches[s];
            if (!stretch.IsDanced)
            {
                items.Add(new ProgrammeItem { Stretch = s, Place = 0, Start = start, Seconds = stretch.Seconds, DanceId = stretch.DanceId });
                start += stretch.Seconds;
                continue;
            }

            int at = start;
            int[] sitting = new int[model.Groups.Length];
            int place = 0;
            for (int slot = model.FirstSlot[s]; slot < model.FirstSlot[s + 1]; slot++)
            {
                if (chosen[slot] >= 0)
                {
                    items.Add(Item(model, chosen, slot, sitting) with { Start = at, Place = place++ });
                    at += model.Options[chosen[slot]].Seconds;
                }
            }

            int empty = start + stretch.Seconds - at;
            if (model.Capacity[s] > 0 && model.EmptyCost(empty) > 0)
            {
                common.Add(new ProgrammeReason(ProgrammeReasonKind.EmptyTime, -model.EmptyCost(empty), empty));
            }

            start += stretch.Seconds;
        }

        return new Programme
        {
            Items = items.ToValueList(),
            Common = common.ToValueList(),
            Points = points,
            Bound = Math.Max(bound, points),
            Missed = [.. model.Missed, .. Unmet(model, chosen, points)],
        };
    }

    private static ProgrammeItem Item(ProgrammeModel model, int[] chosen, int slot, int[] sitting)
    {
        int index = chosen[slot];
        ProgrammeOption option = model.Options[index];
        List<ProgrammeReason> reasons = [.. model.ReasonsAt(index, slot)];
        bool isPinned = model.PinnedAt.Exists(p => p.Slot == slot && !reasons.Exists(r => r.Kind == ProgrammeReasonKind.JustTaught))
            || model.PinnedSplits.Exists(p => option.IsSplit && (p.One == option.Dance || p.Other == option.Dance))
            || model.PinnedWithin.Exists(p => p.Dance == option.Dance || p.Dance == option.Other)
            || model.PinnedSomewhere.Exists(d => d == option.Dance || d == option.Other);
        if (isPinned)
        {
            reasons.Add(new ProgrammeReason(ProgrammeReasonKind.Pinned, 0));
        }

        if (slot > model.FirstSlot[model.Slots[slot].Stretch] && !model.Slots[slot].IsClosing)
        {
            Follow(model, model.Options[chosen[slot - 1]], option, reasons);
        }

        for (int g = 0; g < sitting.Length && !model.Slots[slot].IsClosing; g++)
        {
            sitting[g] = (option.Dancing >> model.Groups[g] & 1) == 1 ? 0 : sitting[g] + 1;
            if (sitting[g] > model.Rules.MostSatOut)
            {
                reasons.Add(new ProgrammeReason(ProgrammeReasonKind.SatOut, -model.Rules.SatOut, sitting[g], model.Question.Groups[model.Groups[g]].Name));
            }
        }

        return new ProgrammeItem
        {
            Stretch = model.Slots[slot].Stretch,
            Place = model.Slots[slot].Place,
            Start = 0,
            Seconds = option.Seconds,
            DanceId = model.Question.Dances[option.Dance].Id,
            OtherId = option.IsSplit ? model.Question.Dances[option.Other].Id : "",
            SongKey = option.SongKey,
            IsPinned = isPinned,
            FloorShare = option.Floor,
            Reasons = reasons.OrderByDescending(r => r.Kind == ProgrammeReasonKind.Pinned).ThenByDescending(r => Math.Abs(r.Points)).ThenBy(r => r.Kind).ToValueList(),
        };
    }

    private static void Follow(ProgrammeModel model, ProgrammeOption before, ProgrammeOption option, List<ProgrammeReason> reasons)
    {
        string about = model.Question.Dances[before.Dance].Id;
        int hard = model.DifficultyCost(before.Difficulty, option.Difficulty);
        int fast = model.TempoCost(before.Tempo, option.Tempo);
        if (hard > 0)
        {
            reasons.Add(new ProgrammeReason(ProgrammeReasonKind.SameDifficulty, -hard, option.Difficulty, about));
        }

        if (fast > 0)
        {
            reasons.Add(new ProgrammeReason(ProgrammeReasonKind.SameTempo, -fast, option.Tempo, about));
        }

        if (before.Difficulty != option.Difficulty || before.Tempo != option.Tempo)
        {
            reasons.Add(new ProgrammeReason(ProgrammeReasonKind.Change, 0, ChangeOf(before, option), about));
        }
    }

    // what changes most: fast and slow, hard and easy; as 1 slower, 2 faster, 3 easier, 4 harder
    private static int ChangeOf(ProgrammeOption before, ProgrammeOption option)
    {
        int tempo = option.Tempo - before.Tempo;
        int difficulty = option.Difficulty - before.Difficulty;
        return Math.Abs(tempo) >= Math.Abs(difficulty) ? (tempo < 0 ? 1 : 2) : difficulty < 0 ? 3 : 4;
    }

    // Requests that are not in it: what stands in the way, or what it would cost at the best place that it could take from another.
    private static IEnumerable<ProgrammeMissed> Unmet(ProgrammeModel model, int[] chosen, int points)
    {
        HashSet<int> danced = [.. chosen.Where(c => c >= 0).SelectMany(c => new[] { model.Options[c].Dance, model.Options[c].Other })];
        HashSet<string> told = [.. model.Missed.Select(m => m.DanceId)];
        for (int d = 0; d < model.Question.Dances.Count; d++)
        {
            ProgrammeDance dance = model.Question.Dances[d];
            if (dance.Requests <= 0 || danced.Contains(d) || told.Contains(dance.Id))
            {
                continue;
            }

            yield return Why(model, chosen, points, d);
        }
    }

    private static ProgrammeMissed Why(ProgrammeModel model, int[] chosen, int points, int dance)
    {
        string id = model.Question.Dances[dance].Id;
        if (model.OptionsOf[dance].Length == 0)
        {
            bool isForbidden = model.Question.Pins.OfType<ProgrammePin.Never>().Any(n => n.DanceId == id);
            bool hasSong = model.Question.Dances[dance].Songs.Count > 0;
            bool isPlayed = hasSong && model.Question.Done.Any(d => model.Question.Dances[dance].Songs.Any(s => s.Key == d.SongKey));
            bool isDone = model.Question.Done.Any(d => d.DanceId == id || d.OtherId == id);
            return new ProgrammeMissed(id, isForbidden ? ProgrammeMissedKind.Forbidden : isDone ? ProgrammeMissedKind.NotThere : isPlayed ? ProgrammeMissedKind.SongTaken : ProgrammeMissedKind.NoSong);
        }

        int? best = null;
        int[] tried = [.. chosen];
        for (int slot = 0; slot < tried.Length; slot++)
        {
            int was = tried[slot];
            if (was < 0)
            {
                continue;
            }

            foreach (int option in model.OptionsOf[dance].Where(o => model.MayStand(o, slot)))
            {
                tried[slot] = option;
                if (ProgrammeScore.Of(model, tried) is { } found && (best is null || found > best))
                {
                    best = found;
                }
            }

            tried[slot] = was;
        }

        if (best is { } with)
        {
            return new ProgrammeMissed(id, ProgrammeMissedKind.WorthLess, "", Math.Max(0, points - with));
        }

        foreach (int slot in Enumerable.Range(0, chosen.Length).Where(s => chosen[s] >= 0))
        {
            ProgrammeOption there = model.Options[chosen[slot]];
            if (model.OptionsOf[dance].All(o => model.Options[o].Song == there.Song))
            {
                return new ProgrammeMissed(id, ProgrammeMissedKind.SongTaken, model.Question.Dances[there.Dance].Id);
            }
        }

        int alike = model.Alike.Where(a => a.One == dance || a.Other == dance).Select(a => a.One == dance ? a.Other : a.One)
            .FirstOrDefault(a => chosen.Any(c => c >= 0 && (model.Options[c].Dance == a || model.Options[c].Other == a)), -1);
        return alike >= 0
            ? new ProgrammeMissed(id, ProgrammeMissedKind.TooAlike, model.Question.Dances[alike].Id)
            : new ProgrammeMissed(id, ProgrammeMissedKind.NoRoom);
    }
}
