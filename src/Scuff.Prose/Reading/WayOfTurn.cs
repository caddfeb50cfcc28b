using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// Puts the way round of a turn behind how far it goes where a writer has it in front: "sailor step with a right 1/4 turn" as "with a 1/4 turn right". A
/// side in front of an amount may as well be the foot that acts ("step right 1/4 turn"), so only what can be no foot is moved.
/// </summary>
internal static class WayOfTurn
{
    /// <summary>Moves every side that can only be a way round; the terms keep their places in the text.</summary>
    /// <param name="terms">The terms of a line, changed in place.</param>
    public static void PutLast(List<Term> terms)
    {
        for (int i = 0; i + 1 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Foot, Meaning.Side: not null } joined && terms[i + 1].Kind is TermKind.Amount
                && joined.Text.IndexOf(' ', StringComparison.Ordinal) is > 0 and int blank && joined.Text[..blank].ToLowerInvariant() is "with" or "w/" or "w"
                && !joined.Text.EndsWith("foot", StringComparison.OrdinalIgnoreCase) && IsWayOnly(terms, i, AfterTurn(terms, i + 2), joined.Meaning.Side.Value))
            {
                // "with R 1/4 turn": the two words that are else the foot something is done with
                TextSpan side = TextSpan.FromBounds(joined.Span.Start + blank + 1, joined.Span.End);
                terms[i] = new Term(new Meaning(TermKind.With), new TextSpan(joined.Span.Start, blank), joined.Text[..blank]);
                terms.Insert(i + 1, new Term(new Meaning(TermKind.Side) { Side = joined.Meaning.Side }, side, joined.Text[(blank + 1)..].TrimStart()));
                continue;
            }

            if (terms[i] is not { Kind: TermKind.Side, Meaning.Side: Foot way } || terms[i + 1].Kind is not TermKind.Amount)
            {
                continue;
            }

            int end = AfterTurn(terms, i + 2);
            if (IsWayOnly(terms, i, end, way))
            {
                Term side = terms[i];
                terms.RemoveAt(i);
                terms.Insert(end - 1, side);
                i = end - 1;
            }
        }
    }

    /// <summary>
    /// The terms with every side that stands before a turn and another foot taken for the way round ("left 1/2 R back"); null where there is none.
    /// </summary>
    /// <param name="terms">The terms of a line.</param>
    public static List<Term>? BeforeFeet(List<Term> terms)
    {
        List<Term>? turned = null;
        for (int i = 0; i + 2 < terms.Count; i++)
        {
            List<Term> now = turned ?? terms;
            if (now[i] is not { Kind: TermKind.Side, Meaning.Side: Foot way } || now[i + 1].Kind is not TermKind.Amount
                || (i > 0 && now[i - 1].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Amp or TermKind.Join or TermKind.Turn)))
            {
                continue;
            }

            int end = AfterTurn(now, i + 2);
            if (end + 1 < now.Count && now[end] is { Kind: TermKind.Side } foot && foot.Meaning.Side != way
                && now[end + 1].Kind is TermKind.Dir or TermKind.Move or TermKind.Part)
            {
                turned ??= [.. terms];
                Term side = turned[i];
                turned.RemoveAt(i);
                turned.Insert(end - 1, side);
                i = end - 1;
            }
        }

        return turned;
    }

    private static int AfterTurn(List<Term> terms, int at)
    {
        while (at < terms.Count && terms[at].Kind is TermKind.Turn)
        {
            at++;
        }

        return at;
    }

    private static bool IsWayOnly(List<Term> terms, int at, int end, Foot way)
    {
        int before = at - 1;
        while (before >= 0 && terms[before].Kind is TermKind.Filler or TermKind.Style or TermKind.Size)
        {
            before--;
        }

        int next = end;
        bool upon = false;
        while (next < terms.Count && terms[next].Kind is TermKind.Filler)
        {
            upon |= terms[next].Text.Split(' ')[0].ToLowerInvariant() is "on" or "onto" or "into";
            next++;
        }

        Term? follows = next < terms.Count ? terms[next] : null;
        upon |= follows is { Kind: TermKind.Foot } foot && foot.Text.StartsWith("on", StringComparison.OrdinalIgnoreCase);
        upon &= follows?.Meaning.Side is not null;
        Term? after = next + 1 < terms.Count ? terms[next + 1] : null;

        // "left 1/4 turn RF forward", "right 1/4 right to side", "left 1/4 stepping R back": a foot of its own acts after the turn
        bool footActs = follows is { Kind: TermKind.Foot } && !upon;
        footActs |= follows is { Kind: TermKind.Side } again && again.Meaning.Side == way && after is { Kind: TermKind.Dir or TermKind.Move };
        footActs |= follows is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step, IsIng: true } } && after?.Meaning.Side is not null;
        bool sideFollows = !upon && !footActs && follows is { Kind: TermKind.Side or TermKind.Dir, Meaning.Side: not null };
        bool begins = before < 0 || terms[before].Kind is TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Close or TermKind.Amp
            or TermKind.Join;
        if (begins && terms[at].Kind is not TermKind.Foot)
        {
            // "left 1/2 onto L", "right 1/4 turn RF forward"
            return upon || footActs;
        }

        if (terms[at].Kind is TermKind.Foot || terms[before].Kind is TermKind.With or TermKind.Turn || IsTurn(terms[before]))
        {
            // "sailor R with R 1/4 turn", "making left 1/4 turn to the right side", "pivot left 1/2 onto L"
            return !sideFollows
                || (follows is { Kind: TermKind.Dir } dir && dir.Text.EndsWith("side", StringComparison.OrdinalIgnoreCase)
                    && terms[before].Kind is TermKind.Turn && !terms[before].Text.StartsWith("turn", StringComparison.OrdinalIgnoreCase));
        }

        if (terms[before].Kind is TermKind.Foot or TermKind.Side)
        {
            // "step L right 1/2 back", "RF left 1/4 turn step side": the foot is named already
            return upon || footActs || follows is { Kind: TermKind.Dir, Meaning.Side: null } or { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step };
        }

        if (upon && terms[before] is { Kind: TermKind.Dir, Meaning.Side: null } or { Kind: TermKind.Move, Meaning.Verb: ActionKind.Recover })
        {
            // "recover left 1/4 onto L", "step back right 1/4 on left"
            return true;
        }

        // "shuffle right 1/2 turn stepping L, R, L", "triple left 1/2 turn (R, L, R)": it begins with the other foot
        return terms[before] is { Kind: TermKind.Move, Meaning: { Verb: null, Figures: [{ Rows.Count: > 2 }, ..] } }
            && follows is { Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step, IsIng: true } } or { Kind: TermKind.Open } or { Text: ":" }
            && after?.Meaning.Side is Foot first && first != way;
    }

    private static bool IsTurn(Term term) => term is { Kind: TermKind.Move, Meaning: { } move }
        && (move.Verb is ActionKind.Pivot or ActionKind.Unwind
            || (move is { Verb: null, Figures.Count: > 0 }
                && move.Figures.All(f => f.NamedBy == NamedBy.Turn || (f.NamedBy == NamedBy.ActingFoot && f.TotalTurn.Sign != 0))));
}
