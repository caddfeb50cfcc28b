using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// A figure's name in front of its first step alone, where each of its steps has a line of its own: "1 Monterey 1/2 R: point R to side", "2 turn 1/2 right
/// closing R", "3 point L to side", "4 close L". The name is a title over those lines, and nothing more is danced for it on the first.
/// </summary>
internal static class SpreadTitle
{
    /// <summary>Where the steps begin behind such a name, as an index of the terms; null where the line has none.</summary>
    /// <param name="terms">The terms of a line of one count.</param>
    public static int? StepsFrom(List<Term> terms)
    {
        int mark = terms.FindIndex(t => t.Kind is TermKind.Separator && t.Text is ":" or "-" or "–" or "—");
        if (mark < 1 || mark >= terms.Count - 1)
        {
            return null;
        }

        bool named = false;
        for (int i = 0; i < mark; i++)
        {
            switch (terms[i].Kind)
            {
                case TermKind.Move when !named && IsLong(terms[i].Meaning):
                    named = true;
                    break;
                case TermKind.Amount or TermKind.Turn or TermKind.Side or TermKind.Foot or TermKind.Dir or TermKind.Filler:
                    break;
                default:
                    return null;
            }
        }

        return named ? mark + 1 : null;
    }

    /// <summary>Whether the one action that is read behind the name is what a figure of that name begins with.</summary>
    /// <param name="terms">The terms of the line.</param>
    /// <param name="steps">What was read behind the name.</param>
    public static bool Begins(List<Term> terms, LineReading steps)
        => steps.Rows is [{ Action: StepAction first }] && terms.Find(t => t.Kind == TermKind.Move).Meaning.Figures.Any(f => f.Rows.Count > 2
            && IsLike(f.Rows[0].Action, first));

    private static bool IsLong(Meaning move) => move.Verb is null && move.Figures.Any(f => f.Rows.Count > 2);

    private static bool IsLike(StepAction usual, StepAction told)
    {
        Direction a = FigureComparison.Family(usual.Direction);
        Direction b = FigureComparison.Family(told.Direction);
        return usual.Effect == told.Effect && (a == b || a == Direction.Unstated || b == Direction.Unstated);
    }
}
