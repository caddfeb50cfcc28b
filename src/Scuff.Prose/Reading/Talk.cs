using Scuff.Diagnostics;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading;

/// <summary>
/// Finds what a teacher says between the steps and nobody dances: "... recover onto left foot. Ooh, very elegant!", "(a wave to the door costs nothing)",
/// "as gracefully as your knees allow". It may only be taken so where the steps come out even without it, and stands beside them as styling does: no word of
/// hers is lost.
/// </summary>
internal static class Talk
{
    /// <summary>The terms with the talk taken for styling, and the stretches of it; null where there is none, or nothing else.</summary>
    public static (List<Term> Steps, List<TextSpan> Said)? Apart(List<Term> terms)
    {
        List<Term> steps = [];
        List<TextSpan> said = [];
        bool moves = false;
        bool goesOn = false;
        int start = 0;
        while (start < terms.Count)
        {
            bool isBracket = terms[start].Kind is TermKind.Open;
            int end = isBracket ? terms.FindIndex(start, t => t.Kind is TermKind.Close) + 1 : start + 1;
            end = end <= start ? terms.Count : end;
            while (!isBracket && end < terms.Count && !Begins(terms[end]))
            {
                end++;
            }

            List<Term> part = terms.GetRange(start, end - start);
            goesOn &= terms[start].Text is not ("." or "!" or "?");
            if (IsTalk(part, goesOn))
            {
                said.Add(TextSpan.FromBounds(part.Find(t => t.Kind is not (TermKind.Separator or TermKind.Dash)).Span.Start, part[^1].Span.End));
                steps.AddRange(part.Select(t => IsMark(t) ? t : t with { Meaning = new Meaning(TermKind.Style) }));
                goesOn = !isBracket;
            }
            else
            {
                steps.AddRange(part);
                moves |= part.Exists(t => t.Kind is TermKind.Move or TermKind.Dir);
                goesOn = false;
            }

            start = end;
        }

        return said.Count == 0 || !moves ? null : (steps, said);
    }

    private static bool IsMark(Term term) => term.Kind is TermKind.Separator or TermKind.Dash or TermKind.Open or TermKind.Close or TermKind.Join;

    // where one thing is said after another: behind a mark, or with a word such as "as" or "while"
    private static bool Begins(Term term) => term.Kind is TermKind.Separator or TermKind.Dash or TermKind.Open or TermKind.Join
        || term.Meaning.Special == "aside" || term.Text is "!" or "?" or "..." or "…";

    private static bool IsTalk(List<Term> part, bool goesOn)
    {
        int strange = part.Count(t => t.Kind is TermKind.Unknown && char.IsLetter(t.Text[0]));
        bool manner = part.Exists(t => t.Kind is TermKind.Style || t.Meaning.Special == "aside");
        bool person = part.Exists(t => t.Meaning.Special is "me" or "you");
        bool moves = part.Exists(t => t.Kind is TermKind.Move or TermKind.Part);
        bool sided = part.Exists(t => t.Kind is TermKind.Side or TermKind.Lead || t.Meaning.Side is not null);
        bool aside = part[0].Meaning.Special == "aside" && part.Exists(t => t.Kind is TermKind.Style);

        // "walk R, L, stp forward": a word that nobody knows beside a move or a way to go may be a step, and so may one by itself or behind a comma
        bool sentence = part[0].Kind is TermKind.Open || part[0].Text is "." or "!" or "?" or "-" or "–" or "—";
        bool spoken = person || goesOn || part[0].Meaning.Special == "aside" || (sentence && part.Count > 3);
        bool step = !spoken && (moves || part.Exists(t => t.Kind is TermKind.Dir) || (strange == 1 && !manner && (!sentence || part.Count < 3)));
        return !step && (strange > 0 || aside || (person && manner) || (goesOn && (person || manner))) && (!sided || (person && !moves))
            && part.TrueForAll(t => t.Kind is not (TermKind.Foot or TermKind.Turn or TermKind.Clock or TermKind.Times or TermKind.RepeatMirrored or TermKind.WeightOn
                or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth or TermKind.BothFeet)
                && !(t.Kind is TermKind.Number or TermKind.Amount && (char.IsAsciiDigit(t.Text[0]) || strange + (person ? 1 : 0) < 2)));
    }
}
