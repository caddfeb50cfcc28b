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

    /// <summary>
    /// "Full turn left stepping right then left", "full turn L travelling forward on R and L": the feet of the turn, one behind the other as in "full turn L,
    /// R, L"; null where there is none.
    /// </summary>
    public static List<Term>? FeetOfFullTurn(List<Term> terms)
    {
        for (int i = 0; i + 3 < terms.Count; i++)
        {
            bool named = terms[i] is { Kind: TermKind.Move } && terms[i].Text.StartsWith("full turn", StringComparison.OrdinalIgnoreCase);
            bool said = terms[i] is { Kind: TermKind.Amount, Meaning.Value: 8 } && terms[i + 1].Kind is TermKind.Turn;
            if (!named && !said)
            {
                continue;
            }

            int at = said ? i + 2 : i + 1;
            bool round = named && terms[i].Meaning.Side is not null;
            int bare = at;
            while (at < terms.Count && (terms[at].Kind is TermKind.Dir or TermKind.Filler || (!round && terms[at].Kind is TermKind.Side)
                || (terms[at] is { Kind: TermKind.Separator, Text: "," } && Steps(terms, at + 1))))
            {
                round |= terms[at].Meaning.Side is not null;
                at++;
            }

            bool stepping = Steps(terms, at);
            int first = stepping ? at + 1 : at;
            int second = first + 1;
            while (second < terms.Count && terms[second].Kind is TermKind.Separator or TermKind.Join or TermKind.Then or TermKind.Amp)
            {
                second++;
            }

            bool two = round && second < terms.Count && second > first && IsFoot(terms[first]) && IsFoot(terms[second])
                && terms[first].Meaning.Side != terms[second].Meaning.Side
                && (second + 1 >= terms.Count || terms[second + 1].Kind is TermKind.Separator or TermKind.Close or TermKind.Open or TermKind.Then)
                && (second + 2 >= terms.Count || !IsFoot(terms[second + 2]) || (second + 3 < terms.Count
                    && terms[second + 3].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Close or TermKind.Join or TermKind.Amp)));
            if (!two || (!stepping && second == first + 2 && terms[first + 1].Kind is TermKind.Separator && terms[first].Kind is TermKind.Side))
            {
                continue;
            }

            // "turn a full turn": said twice
            int start = i > 0 && terms[i - 1].Kind is TermKind.Turn ? i - 1 : i;
            List<Term> plain = [.. terms[..start], .. terms[i..bare], .. terms[bare..at].Where(t => t.Kind is not TermKind.Separator)];
            plain.Add(Bare(terms[first]));
            plain.Add(new Term(new Meaning(TermKind.Separator), new TextSpan(terms[second].Span.Start, 0), ","));
            plain.Add(Bare(terms[second]));
            plain.AddRange(terms[(second + 1)..]);
            return plain;
        }

        return null;

        static bool Steps(List<Term> all, int at) => at < all.Count && all[at] is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step, IsIng: true } };
        static bool IsFoot(Term term) => term.Kind is TermKind.Side or TermKind.Foot && term.Meaning.Side is not null;

        // "on R" as "R": what the turn is made on is its step here
        static Term Bare(Term foot) => foot with
        {
            Meaning = new Meaning(TermKind.Side) { Side = foot.Meaning.Side },
            Text = foot.Meaning.Side == Foot.Right ? "R" : "L",
        };
    }

    /// <summary>"Step, pivot: L forward, pivot 1/2 R": a title of as many moves as are told behind it with their feet says nothing more; null where there is none.</summary>
    public static List<Term>? BehindTitle(List<Term> terms)
    {
        int colon = terms.FindIndex(t => t is { Kind: TermKind.Separator, Text: ":" });
        if (colon < 3 || terms.FindIndex(colon + 1, t => t.Text == ":") >= 0)
        {
            return null;
        }

        List<Term> title = terms[..colon];
        List<Term> told = terms[(colon + 1)..];
        bool plain = title.TrueForAll(t => t.Kind is TermKind.Separator or TermKind.Join or TermKind.Then or TermKind.Filler or TermKind.Turn
            || t is { Kind: TermKind.Move, Meaning.Verb: not null } or { Kind: TermKind.Dir, Meaning.Side: null });
        bool pivots = title[^1] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Pivot };
        int parts = title.Count(t => t.Kind is TermKind.Separator or TermKind.Join or TermKind.Then) + 1;
        return plain && pivots && parts > 1 && told.Count(t => t.Kind is TermKind.Separator or TermKind.Join or TermKind.Then) + 1 == parts
            && told.Exists(t => t.Kind is TermKind.Amount) && told.Exists(t => t.Kind is TermKind.Foot or TermKind.Side)
            && told.Exists(t => t.Meaning.Verb is ActionKind.Pivot) && told.TrueForAll(t => t.Kind is not TermKind.Unknown) ? told : null;
    }

    /// <summary>"Turn 1/2 right with a shuffle": the turn is made in the figure, as in "turn 1/2 right shuffle", and not before it.</summary>
    public static void TurnWithFigure(List<Term> terms)
    {
        for (int i = 2; i + 1 < terms.Count; i++)
        {
            int figure = i + 1;
            while (figure < terms.Count && terms[figure].Kind is TermKind.Filler)
            {
                figure++;
            }

            if (terms[i] is { Kind: TermKind.With, Text: "with" } && terms[i - 1].Meaning.Side is not null
                && terms.FindLastIndex(i - 1, Math.Min(i, 4), t => t.Kind is TermKind.Amount) >= 0
                && figure < terms.Count && terms[figure] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ Rows.Count: > 2 } turned, ..] } }
                && turned.TurnedForms.Count > 0 && turned.TotalTurn.Sign == 0)
            {
                terms.RemoveRange(i, figure - i);
            }
        }
    }

    /// <summary>"Turn 1/4 left rolling the hips, weight on L": the turn ends on that foot, and the hips are how it is danced.</summary>
    public static void HipsOfTurn(List<Term> terms)
    {
        for (int i = 2; i + 2 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.RollHips, IsIng: true } } hips
                && terms[i - 1].Kind is TermKind.Side or TermKind.Amount && terms[i - 2].Kind is TermKind.Amount or TermKind.Side or TermKind.Turn
                && terms.FindIndex(i + 1, t => t.Kind is not (TermKind.Separator or TermKind.Open or TermKind.Filler)) is >= 0 and int note
                && terms[note].Kind is TermKind.WeightOn)
            {
                terms[i] = hips with { Meaning = new Meaning(TermKind.Style) };
            }
        }
    }

    /// <summary>"Travelling right: swivel heels right, toes right": the way of what follows, and no step of its own.</summary>
    public static void TravellingTitle(List<Term> terms)
    {
        if (terms is not [{ Kind: TermKind.Filler } goes, { Kind: TermKind.Side or TermKind.Dir, Meaning.Side: Foot } way, { Kind: TermKind.Separator } parts,
            { Kind: TermKind.Move }, ..] || !Travels(goes.Text) || parts.Text is not (":" or "," or "-" or "–"))
        {
            return;
        }

        int verb = 3;
        int next = verb + 1;
        while (next < terms.Count && terms[next].Kind is TermKind.Filler or TermKind.Part)
        {
            next++;
        }

        bool ownWay = next < terms.Count && terms[next].Kind is TermKind.Side or TermKind.Foot or TermKind.Dir;
        if (!ownWay)
        {
            terms.Insert(next, way with { Meaning = new Meaning(TermKind.Side) { Side = way.Meaning.Side } });
        }

        terms.RemoveRange(0, verb);
    }

    // words that say that it goes somewhere, whichever step it is
    private static bool Travels(string word) => word.ToLowerInvariant() is "travelling" or "traveling" or "moving" or "going" or "travel" or "move";

    /// <summary>"Unwind 1/2 left with weight left": the foot behind it is where the weight goes.</summary>
    public static void WeightOfFoot(List<Term> terms)
    {
        for (int i = 1; i + 1 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.WeightTakes } takes && takes.Text.EndsWith("weight", StringComparison.OrdinalIgnoreCase)
                && terms[i + 1].Kind is TermKind.Side or TermKind.Foot
                && (i + 2 >= terms.Count || terms[i + 2].Kind is TermKind.Separator or TermKind.Close or TermKind.Open or TermKind.Then or TermKind.Amp))
            {
                terms[i] = takes with { Meaning = new Meaning(TermKind.WeightOn) };
            }
        }
    }

    /// <summary>"Step R to right 45 degrees": where nothing turns, it is the way of the step, a diagonal.</summary>
    public static void SlantedDegrees(List<Term> terms)
    {
        for (int i = 1; i < terms.Count; i++)
        {
            if (terms[i] is not { Kind: TermKind.Amount, Meaning.Value: 1 } angle || !angle.Text.StartsWith("45", StringComparison.Ordinal))
            {
                continue;
            }

            int from = i;
            while (from > 0 && terms[from - 1].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Open))
            {
                from--;
            }

            int to = i;
            while (to + 1 < terms.Count && terms[to + 1].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Close))
            {
                to++;
            }

            List<Term> around = terms[from..(to + 1)];
            bool goes = around.Exists(t => t.Kind is TermKind.Dir && t.Meaning.Direction is not (Direction.Together or Direction.InPlace));
            if (!goes || around.Exists(t => t.Kind is TermKind.Turn or TermKind.Clock || t.Meaning.Verb is ActionKind.Pivot or ActionKind.Unwind or ActionKind.Turn)
                || !around.Exists(t => t is { Kind: TermKind.Move, Meaning.Verb: not null }))
            {
                continue;
            }

            terms[i] = angle with { Meaning = new Meaning(TermKind.Dir) { Special = "diag", Direction = Direction.DiagonalForward } };
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
