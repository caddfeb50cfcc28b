using Scuff.Stance;

namespace Scuff.Prose.Reading;

/// <summary>"x2", "twice" and "repeat with L" at the end of a line may speak of the whole line, with the same or the other foot.</summary>
internal static class LineRepeats
{
    /// <summary>The clauses written out, once with the same feet and once with the feet exchanged each time; none when nothing is repeated.</summary>
    public static IEnumerable<List<Clause>> Of(List<Clause> clauses)
    {
        if (clauses.Count < 2)
        {
            yield break;
        }

        int repeat = clauses.FindIndex(c => c.IsRepeat);
        int after = clauses.Count - 1 - repeat;
        if (repeat > after && after > 0
            && Enumerable.Range(1, after).All(i => clauses[^i].Head is not null && clauses[^i].HeadText == clauses[repeat - i].HeadText
            && clauses[^i].Feet.Count == 0))
        {
            // "lock step with scuff, repeat L with scuff": the last words say again what is repeated
            clauses = clauses.GetRange(0, repeat + 1);
        }

        Clause last = clauses[^1];
        List<Clause> body;
        int times;
        bool? mirrored = null;
        if (last.IsRepeat)
        {
            body = clauses.GetRange(0, clauses.Count - 1);
            times = Math.Max(2, last.Times);
            Foot? lead = last.Feet.Count > 0 ? last.Feet[0].Foot : last.DirSide ?? last.TurnSide;
            Foot? first = body.SelectMany(c => c.Feet).Select(f => (Foot?)f.Foot).FirstOrDefault();
            mirrored = last.IsMirrored ? true : lead is null || first is null ? null : lead != first;
        }
        else if (last.TimesStated && last.Times > 1
            && last.Head?.Verb is not (Steps.ActionKind.Clap or Steps.ActionKind.Snap or Steps.ActionKind.Bump or Steps.ActionKind.Slap))
        {
            Clause once = last.Copy(mirrored: false);
            once.Times = 1;
            once.TimesStated = false;
            body = [.. clauses.GetRange(0, clauses.Count - 1), once];
            times = last.Times;
        }
        else
        {
            yield break;
        }

        if (mirrored != true)
        {
            yield return Written(body, times, false);
        }

        if (mirrored != false)
        {
            yield return Written(body, times, true);
        }
    }

    /// <summary>The clauses so many times over, once with the same feet and once with the feet exchanged each time.</summary>
    public static IEnumerable<List<Clause>> Times(List<Clause> once, int times) => [Written(once, times, false), Written(once, times, true)];

    private static List<Clause> Written(List<Clause> body, int times, bool mirrored)
    {
        List<Clause> all = [];
        for (int i = 0; i < times; i++)
        {
            foreach (Clause clause in body)
            {
                all.Add(clause.Copy(mirrored && i % 2 == 1));
            }
        }

        return all;
    }
}
