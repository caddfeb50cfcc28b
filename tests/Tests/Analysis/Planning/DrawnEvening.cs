using Scuff;
using Scuff.Analysis.Planning;
using Scuff.Dances;

namespace Tests.Analysis.Planning;

/// <summary>Small evenings drawn at random, and the best programme found by trying every one.</summary>
internal static class DrawnEvening
{
    private static readonly ValueList<ProgrammeGroup> Groups = [new("Monday", Level.Beginner, 20), new("Tuesday", Level.Intermediate, 10)];

    /// <summary>An evening of two short stretches with a rest or a lesson between, few dances, and sometimes decisions of hers.</summary>
    public static ProgrammeQuestion Draw(int seed)
    {
        Random luck = new(seed);
        int dances = luck.Next(5, 9);
        ProgrammeDance[] list = [.. Enumerable.Range(0, dances).Select(d => Dance(luck, d))];
        bool hasLesson = luck.Next(3) == 0;
        List<ProgrammePin> pins = [];
        for (int i = luck.Next(4); i > 0; i--)
        {
            string one = $"d{luck.Next(dances)}";
            string other = $"d{luck.Next(dances)}";
            pins.Add(luck.Next(7) switch
            {
                0 => new ProgrammePin.At(one, luck.Next(2) * 2, luck.Next(2)),
                1 => new ProgrammePin.Within(one, luck.Next(2) * 2),
                2 => new ProgrammePin.Somewhere(one),
                3 => new ProgrammePin.Never(one),
                4 => new ProgrammePin.Closing(one),
                5 => new ProgrammePin.Before(one, other),
                _ => new ProgrammePin.Split(one, other),
            });
        }

        return new ProgrammeQuestion
        {
            Stretches =
            [
                new() { Kind = luck.Next(3) == 0 ? StretchKind.WarmUp : StretchKind.Dancing, Seconds = luck.Next(500, 950), EffortAtStart = 35, EffortAtEnd = 60 },
                hasLesson ? new() { Kind = StretchKind.Lesson, Seconds = 900, DanceId = "d1" } : new() { Kind = StretchKind.Rest, Seconds = 600 },
                new() { Kind = luck.Next(3) == 0 ? StretchKind.Revision : StretchKind.Dancing, Seconds = luck.Next(400, 900), EffortAtStart = 60, EffortAtEnd = luck.Next(2) == 0 ? 40 : 0 },
            ],
            Groups = Groups,
            Dances = list.ToValueList(),
            Likenesses = [new ProgrammeLikeness("d0", $"d{luck.Next(1, dances)}", luck.Next(40, 100))],
            Pins = pins.ToValueList(),
            Rules = new ProgrammeRules { MostSatOut = luck.Next(0, 3), LikeApart = luck.Next(0, 4), EmptyMinute = luck.Next(0, 20), SecondsBetween = luck.Next(0, 60) },
            Done = luck.Next(4) == 0 ? [new ProgrammeDone("d2", "", "")] : [],
            Seen = luck.Next(2) == 0 ? [new ProgrammeItem { Stretch = 0, Place = 0, Start = 0, Seconds = 200, DanceId = "d3" }] : [],
        };
    }

    /// <summary>What the best programme is worth, by trying all that hold; null when none holds.</summary>
    public static int? BestOf(ProgrammeModel model)
    {
        int[] chosen = new int[model.Slots.Length];
        Array.Fill(chosen, -1);
        int? best = null;
        Try(model, chosen, 0, [], ref best);
        return best;
    }

    private static void Try(ProgrammeModel model, int[] chosen, int slot, HashSet<int> danced, ref int? best)
    {
        if (slot == chosen.Length)
        {
            if (ProgrammeScore.Of(model, chosen) is { } points && (best is null || points > best))
            {
                best = points;
            }

            return;
        }

        if (!model.MustBeUsed(slot))
        {
            Try(model, chosen, slot + 1, danced, ref best);
        }

        bool isAfterHole = !model.MustBeUsed(slot) && model.Slots[slot].Place > 0 && chosen[slot - 1] < 0;
        for (int o = 0; !isAfterHole && o < model.Options.Length; o++)
        {
            if (!danced.Add(model.Options[o].Dance))
            {
                continue;
            }

            chosen[slot] = o;
            Try(model, chosen, slot + 1, danced, ref best);
            chosen[slot] = -1;
            danced.Remove(model.Options[o].Dance);
        }
    }

    private static ProgrammeDance Dance(Random luck, int index)
    {
        string song = index > 1 && luck.Next(3) == 0 ? $"s{luck.Next(index)}" : $"s{index}";
        return new ProgrammeDance
        {
            Id = $"d{index}",
            Title = $"Dance {index}",
            Level = luck.Next(3) switch { 0 => Level.Beginner, 1 => Level.Improver, _ => Level.Intermediate },
            CountsPerMinute = luck.Next(5) == 0 ? 0 : luck.Next(80, 160),
            Effort = luck.Next(30, 75),
            Songs = [new ProgrammeSong(song, song, luck.Next(140, 280), "")],
            Shares = luck.Next(3) switch { 0 => [80, 20], 1 => [20, 80], _ => [70, 90] },
            Due = luck.Next(2) * luck.Next(100),
            Requests = luck.Next(4) == 0 ? luck.Next(1, 4) : 0,
            DaysSinceDanced = luck.Next(2) == 0 ? null : luck.Next(100),
        };
    }
}
