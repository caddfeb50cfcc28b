using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// A line of one word that goes on with the move of the line before: "5 fan right toe out", "6 in"; "1 bump hips R", "2 L". Only moves that nobody takes for
/// steps when the verb is left out; of others the words that stand there are read as they are.
/// </summary>
internal static class Ellipsis
{
    /// <summary>
    /// The terms with the verb, and where one acts the foot, of the move before in front of them; the terms themselves where nothing is left out.
    /// </summary>
    /// <param name="terms">The terms of a line.</param>
    /// <param name="last">The last action of the line before, or null.</param>
    public static List<Term> Filled(List<Term> terms, StepAction? last)
    {
        if (last is null || terms.Count is 0 or > 8 || Verb(last) is not ActionKind verb || Way(terms) is not Term way || !Suits(last, way))
        {
            return terms;
        }

        TextSpan before = new(terms[0].Span.Start, 0);
        List<Term> filled = [new Term(new Meaning(TermKind.Move) { Verb = verb }, before, last.Traits.Word)];
        if (last.Foot.ToFoot() is Foot foot && verb is not ActionKind.Bump)
        {
            filled.Add(new Term(new Meaning(TermKind.Foot) { Side = foot }, before, foot == Foot.Right ? "R" : "L"));
        }

        filled.AddRange(terms);
        return filled;
    }

    private static ActionKind? Verb(StepAction last) => last.Kind is ActionKind.FanToe or ActionKind.FanHeel or ActionKind.Bump or ActionKind.Swivel
        or ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Twist or ActionKind.Touch or ActionKind.Tap or ActionKind.Point ? last.Kind : null;

    // the one word that says where to; anything else and the line says more than that
    private static Term? Way(List<Term> terms)
    {
        Term? way = null;
        foreach (Term term in terms)
        {
            switch (term.Kind)
            {
                case TermKind.Filler or TermKind.Size or TermKind.Then or TermKind.Join or TermKind.Style or TermKind.Open or TermKind.Close:
                case TermKind.WeightOn or TermKind.WeightNone or TermKind.WeightBoth when way is not null:
                    break;
                case TermKind.Side or TermKind.Foot when term.Meaning.Side is not null && terms.Exists(t => t.Kind is TermKind.WeightOn) && way is not null:
                    break;
                case TermKind.Dir or TermKind.Side when way is null:
                    way = term;
                    break;
                default:
                    return null;
            }
        }

        return way;
    }

    private static bool Suits(StepAction last, Term way)
    {
        Direction to = way.Meaning.Direction;
        return last.Kind switch
        {
            ActionKind.Bump => way.Kind is TermKind.Side || (to is Direction.Side && way.Meaning.Side is not null),
            ActionKind.FanToe or ActionKind.FanHeel => to is Direction.In or Direction.Out or Direction.Centre or Direction.Home,
            ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Twist
                => way.Kind is TermKind.Side || to is Direction.Centre or Direction.Home || (to is Direction.Side && way.Meaning.Side is not null),

            // "touch right out", "in", "out": between two of these no weight is taken
            _ => (last.Direction, to) is (Direction.Out, Direction.In) or (Direction.In, Direction.Out),
        };
    }
}
