using Scuff.Prose.Words;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>
/// Finds the stretches of a line that speak of arms, hands, head or shoulders alone ("pull the left elbow back", "arms sweep out")
/// and takes all their words for styling, so that no foot is made to sweep because an arm does.
/// </summary>
internal static class StylePhrases
{
    /// <summary>Whether a term names a part of the body above the hips, or what the hands hold.</summary>
    public static bool IsUpperBody(Term term)
        => IsArms(term)
        || term is { Kind: TermKind.Part, Meaning.Part: "shoulder" or "shoulders" }
        || (term.Kind is TermKind.Style or TermKind.Unknown && Names(term.Text));

    private static bool IsArms(Term term) => term is { Kind: TermKind.Move, Meaning.Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] };

    /// <summary>Marks the stretches; the terms keep their places in the text.</summary>
    public static void Mark(List<Term> terms)
    {
        int start = 0;
        while (start < terms.Count)
        {
            int end = start;
            while (end < terms.Count && !Ends(terms[end].Kind))
            {
                end++;
            }

            if (IsOfArms(terms, start, end))
            {
                for (int i = start; i < end; i++)
                {
                    // a move of the arms by name may have a count of its own
                    terms[i] = IsArms(terms[i]) ? terms[i] : terms[i] with { Meaning = new Meaning(TermKind.Style) };
                }
            }

            start = end + 1;
        }
    }

    private static bool Ends(TermKind kind) => kind is TermKind.Separator or TermKind.Then or TermKind.Join or TermKind.With or TermKind.Amp
        or TermKind.Open or TermKind.Close;

    /// <summary>The first thing named is above the hips, or is what a verb before it is done to; and no foot is named after it.</summary>
    private static bool IsOfArms(List<Term> terms, int start, int end)
    {
        bool verb = false;
        for (int i = start; i < end; i++)
        {
            Term term = terms[i];
            if (IsUpperBody(term))
            {
                return terms.FindIndex(i, end - i, t => t.Kind is TermKind.Foot or TermKind.Amount or TermKind.WeightOn or TermKind.WeightBoth
                    or TermKind.Clock) < 0
                    && (!IsArms(term) || verb || terms.FindIndex(i + 1, end - i - 1, t => t.Kind is TermKind.Move or TermKind.Unknown) > 0);
            }

            switch (term.Kind)
            {
                case TermKind.Filler or TermKind.Style or TermKind.Size or TermKind.BothFeet or TermKind.Unknown:
                    break;
                case TermKind.Side when verb || (i + 1 < end && IsUpperBody(terms[i + 1]) && !ClauseBuilder.DoesArms(terms[i + 1])):
                    break;
                case TermKind.Move when !verb && term.Meaning is { Figures.Count: 0 }
                    or { Verb: ActionKind.Drag or ActionKind.Slide or ActionKind.Sweep }
                    && term.Meaning.Verb is ActionKind.Drag or ActionKind.Slide or ActionKind.Sweep or ActionKind.Press or ActionKind.Drop
                        or ActionKind.Flick or ActionKind.Step:
                    verb = true;
                    break;
                default:
                    return false;
            }
        }

        return false;
    }

    private static bool Names(string word) => word.ToLowerInvariant() is "arm" or "arms" or "hand" or "hands" or "elbow" or "elbows" or "finger"
        or "fingers" or "palm" or "palms" or "thumb" or "thumbs"
        or "fist" or "fists" or "wrist" or "wrists" or "head" or "chin" or "eyes" or "chest" or "shoulder" or "shoulders" or "hat" or "brim"
            or "belt" or "rope" or "lasso" or "reins";
}
