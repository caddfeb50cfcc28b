using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>Words that tell a row of things at once and then whose they are, dealt out so that each stands with its own.</summary>
internal static class DealtTerms
{
    private const int MostPlaces = 4;

    /// <summary>"Behind, side, cross (R-L-R)": as many feet behind the places as there are places, one for each; null where there are none.</summary>
    public static List<Term>? FeetBehindPlaces(List<Term> terms)
    {
        for (int i = 0; i < terms.Count; i++)
        {
            if (!Begins(terms, i) || PlacesFrom(terms, i) is not { Count: >= 2 and <= MostPlaces } places)
            {
                continue;
            }

            int after = places[^1] + 1;
            if (after < terms.Count && terms[after].Kind is TermKind.Separator or TermKind.Dash)
            {
                after++;
            }

            bool bracket = after < terms.Count && terms[after].Kind == TermKind.Open;
            List<int> feet = FeetFrom(terms, bracket ? after + 1 : after);
            int end = feet.Count == 0 ? after : feet[^1] + 1;
            bool closes = bracket ? end < terms.Count && terms[end].Kind == TermKind.Close : end >= terms.Count || Begins(terms, end + 1);
            bool alternate = feet.Zip(feet.Skip(1)).All(p => terms[p.First].Meaning.Side != terms[p.Second].Meaning.Side);
            if (feet.Count != places.Count || !closes || !alternate)
            {
                continue;
            }

            List<Term> dealt = [.. terms[..i]];
            for (int place = 0; place < places.Count; place++)
            {
                if (place > 0)
                {
                    // what stood between the places
                    dealt.AddRange(terms[(places[place - 1] + 1)..places[place]]);
                }

                dealt.Add(terms[feet[place]]);
                dealt.Add(terms[places[place]]);
            }

            dealt.AddRange(terms[(bracket ? end + 1 : end)..]);
            return dealt;
        }

        return null;
    }

    /// <summary>"Step R forward bumping hips R twice": the first bump goes with the step, the others follow it; null where there is none.</summary>
    public static List<Term>? BumpsOfStep(List<Term> terms)
    {
        for (int i = 2; i + 1 < terms.Count; i++)
        {
            if (terms[i] is not { Kind: TermKind.Move, Meaning.Verb: ActionKind.Bump } bump || !bump.Text.Contains("ing", StringComparison.OrdinalIgnoreCase)
                || Begins(terms, i)
                || terms.FindLastIndex(i - 1, t => t.Kind is TermKind.Move or TermKind.Separator or TermKind.Then) is not (>= 0 and int before)
                || terms[before] is not { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step })
            {
                continue;
            }

            int times = i + 1;
            while (times < terms.Count && terms[times].Kind is TermKind.Side or TermKind.Foot or TermKind.Dir or TermKind.Filler)
            {
                times++;
            }

            if (times >= terms.Count || terms[times] is not { Kind: TermKind.Times, Meaning.Value: > 1 and <= 4 and int often })
            {
                continue;
            }

            // the ways may stand behind how often as well: "bumping twice to the right"
            int end = times + 1;
            while (end < terms.Count && terms[end].Kind is TermKind.Side or TermKind.Dir or TermKind.Filler)
            {
                end++;
            }

            List<Term> ways = [.. terms[(i + 1)..times], .. terms[(times + 1)..end]];
            List<Term> dealt = [.. terms[..(i + 1)], .. ways];
            TextSpan at = terms[times].Span;
            for (int more = 1; more < often; more++)
            {
                dealt.Add(new Term(new Meaning(TermKind.Separator), at, ","));
                dealt.Add(bump with { Text = "bump", Span = at });
                dealt.AddRange(ways);
            }

            dealt.AddRange(terms[end..]);
            return dealt;
        }

        return null;
    }

    /// <summary>"Shuffle forward with r - l - r": dashes between three feet or more are no dash before a detail.</summary>
    public static List<Term>? DashedFeet(List<Term> terms)
    {
        for (int i = 0; i + 4 < terms.Count; i++)
        {
            int end = i;
            while (end + 2 < terms.Count && IsSide(terms[end]) && terms[end + 1].Kind is TermKind.Dash or TermKind.Separator
                && terms[end + 1].Text is "-" or "–" or "—" && IsSide(terms[end + 2]))
            {
                end += 2;
            }

            if (end - i < 4 || !terms[i].Text.StartsWith("with", StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            List<Term> plain = [.. terms[..i]];
            for (int at = i; at <= end; at += 2)
            {
                plain.Add(terms[at]);
            }

            plain.AddRange(terms[(end + 1)..]);
            return plain;
        }

        return null;

        static bool IsSide(Term term) => term.Kind is TermKind.Side or TermKind.Foot && term.Meaning.Side is not null;
    }

    /// <summary>"Bumping hips R, then L, then R", "walk R and L and R": a row of feet or ways, with commas; null where there is none.</summary>
    public static List<Term>? RowOfSides(List<Term> terms)
    {
        for (int i = 0; i + 4 < terms.Count; i++)
        {
            if (terms[i].Kind is not TermKind.Move || terms[i + 1].Kind is not (TermKind.Side or TermKind.Foot))
            {
                continue;
            }

            List<int> sides = [i + 1];
            bool said = false;
            for (int at = i + 2; at < terms.Count;)
            {
                int next = at;
                while (next < terms.Count && terms[next].Kind is TermKind.Separator or TermKind.Then or TermKind.Join)
                {
                    said |= terms[next].Kind is TermKind.Then or TermKind.Join;
                    next++;
                }

                bool ends = next + 1 >= terms.Count
                    || terms[next + 1].Kind is TermKind.Separator or TermKind.Then or TermKind.Join or TermKind.Close or TermKind.Open;
                if (next == at || next >= terms.Count || terms[next].Kind is not (TermKind.Side or TermKind.Foot) || !ends)
                {
                    break;
                }

                sides.Add(next);
                at = next + 1;
            }

            if (sides.Count < 3 || !said)
            {
                continue;
            }

            List<Term> row = [.. terms[..(i + 2)]];
            foreach (int side in sides.Skip(1))
            {
                row.Add(new Term(new Meaning(TermKind.Separator), new TextSpan(terms[side].Span.Start, 0), ","));
                row.Add(terms[side]);
            }

            row.AddRange(terms[(sides[^1] + 1)..]);
            return row;
        }

        return null;
    }

    /// <summary>"Both heels turn to the right" are heels to the right: nobody turns round on them.</summary>
    public static void HeelsTurned(List<Term> terms)
    {
        for (int i = 0; i + 2 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Part, Meaning.Part: "heels" or "toes" } && terms[i + 1] is { Kind: TermKind.Turn, Meaning.Side: null }
                && terms[i + 2].Kind is TermKind.Dir or TermKind.Side && (i + 3 >= terms.Count || terms[i + 3].Kind is not TermKind.Amount))
            {
                terms.RemoveAt(i + 1);
            }
        }
    }

    /// <summary>"Diagonal L back" goes where "diagonal back L" does.</summary>
    public static void WayOfDiagonal(List<Term> terms)
    {
        for (int i = 0; i + 2 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Dir, Meaning.Side: null } && terms[i].Text.StartsWith("diag", StringComparison.OrdinalIgnoreCase)
                && terms[i + 1].Kind is TermKind.Side
                && terms[i + 2] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Forward or Direction.Back, Meaning.Side: null })
            {
                (terms[i + 1], terms[i + 2]) = (terms[i + 2], terms[i + 1]);
            }
        }
    }

    // where a move may begin: at the start, or behind something that parts moves
    private static bool Begins(List<Term> terms, int at)
        => at == 0 || terms[at - 1].Kind is TermKind.Separator or TermKind.Then or TermKind.Amp or TermKind.Close;

    // places alone, with nothing but a comma, "and" or "then" between them
    private static List<int> PlacesFrom(List<Term> terms, int from)
    {
        List<int> places = [];
        for (int i = from; i < terms.Count && terms[i] is { Kind: TermKind.Dir, Meaning.Side: null }; i++)
        {
            places.Add(i);
            bool parted = false;
            while (i + 1 < terms.Count && terms[i + 1].Kind is TermKind.Separator or TermKind.Join or TermKind.Then or TermKind.Amp)
            {
                parted = true;
                i++;
            }

            if (!parted)
            {
                break;
            }
        }

        return places;
    }

    private static List<int> FeetFrom(List<Term> terms, int from)
    {
        List<int> feet = [];
        for (int i = from; i < terms.Count && terms[i] is { Kind: TermKind.Side or TermKind.Foot, Meaning.Side: not null }; i++)
        {
            feet.Add(i);
            if (i + 2 < terms.Count && terms[i + 1].Kind is TermKind.Dash or TermKind.Separator && terms[i + 2].Kind is TermKind.Side or TermKind.Foot)
            {
                i++;
            }
        }

        return feet;
    }
}
