using Scuff.Prose.Words;
using Scuff.Stance;
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
        MarkTips(terms);
        int start = 0;
        bool isAside = false;
        while (start < terms.Count)
        {
            int end = start;
            while (end < terms.Count && !Ends(terms[end].Kind))
            {
                end++;
            }

            int from = start;
            isAside = IsAside(terms, start, end, isAside);
            if (isAside || IsOfArms(terms, start, end) || IsOfHips(terms, start, end) || IsRemark(terms, start, end) || ArmsBeside(terms, ref from, end))
            {
                for (int i = from; i < end; i++)
                {
                    // a move of the arms by name may have a count of its own
                    terms[i] = IsArms(terms[i]) ? terms[i] : terms[i] with { Meaning = new Meaning(TermKind.Style) };
                }
            }

            int last = LastOfManner(terms, start, end);
            for (int i = start - 1; i < last; i++)
            {
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Style) };
            }

            start = end + 1;
        }
    }

    /// <summary>
    /// "L coaster (tip: small steps, stay on the balls of your feet)", "... - note: keep it low": what is said to the dancer in brackets, or up to the end of
    /// the line, moves nobody. Where it tells a turn, a weight, a foot's move or how often, it may, and is read as any other words.
    /// </summary>
    private static void MarkTips(List<Term> terms)
    {
        for (int i = 0; i + 2 < terms.Count; i++)
        {
            bool opens = terms[i].Kind is TermKind.Open or TermKind.Separator or TermKind.Dash && IsTip(terms[i + 1].Text)
                && terms[i + 2].Text is ":" or "-" or "–" or "—" or "=";
            if (!opens)
            {
                continue;
            }

            int end = terms[i].Kind is TermKind.Open ? terms.FindIndex(i, t => t.Kind is TermKind.Close) : terms.Count;
            end = end < 0 ? terms.Count : end;
            bool feet = terms.FindIndex(i, end - i, t => t.Kind is TermKind.Foot or TermKind.Side or TermKind.Lead || t.Meaning.Side is not null) >= 0;
            bool tells = terms.FindIndex(i, end - i, t => t.Kind is TermKind.Amount or TermKind.Turn or TermKind.Times or TermKind.Repeat
                or TermKind.RepeatMirrored or TermKind.WeightOn or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth or TermKind.Clock
                or TermKind.Number) >= 0;
            for (int at = i + 1; at < end && !feet && !tells; at++)
            {
                terms[at] = terms[at] with { Meaning = new Meaning(TermKind.Style) };
            }
        }
    }

    private static bool IsTip(string word) => word.ToLowerInvariant() is "tip" or "tips" or "hint" or "hints" or "note" or "notes" or "nb" or "remember"
        or "reminder" or "remark" or "style" or "styling" or "think" or "feel" or "caution" or "careful" or "teaching tip" or "style tip" or "styling tip";

    /// <summary>"Run it back with a spring in the step: R, L, R": up to where the words say in what manner, from the with on; or -1.</summary>
    private static int LastOfManner(List<Term> terms, int start, int end)
    {
        if (start == 0 || terms[start - 1].Kind is not TermKind.With)
        {
            return -1;
        }

        for (int i = start; i < end && terms[i].Kind is not (TermKind.Foot or TermKind.Amount or TermKind.Number or TermKind.Clock or TermKind.Side); i++)
        {
            if (i > start + 1 && IsCarriage(LastWord(terms[i].Text)))
            {
                ReadOnlySpan<char> before = terms[i].Text.Contains(' ', StringComparison.Ordinal) ? terms[i].Text : terms[i - 1].Text;
                bool within = before.StartsWith("in ", StringComparison.OrdinalIgnoreCase) || before.StartsWith("to ", StringComparison.OrdinalIgnoreCase)
                    || terms[i - 1].Text.ToLowerInvariant() is "in" or "to" || terms[i - 2].Text.ToLowerInvariant() is "in" or "to";
                return within ? i + 1 : -1;
            }
        }

        return -1;
    }

    // what a spring, a swing or a bounce may be in
    private static bool IsCarriage(ReadOnlySpan<char> word) => word is "step" or "steps" or "walk" or "stride" or "knees" or "hips" or "feet" or "heels"
        or "boots" or "shoulders";

    private static ReadOnlySpan<char> LastWord(string words) => words.AsSpan(words.LastIndexOf(' ') + 1);

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
                    && (!IsArms(term) || verb || terms.FindIndex(i + 1, end - i - 1, t => t.Kind is TermKind.Move) > 0
                        || terms.FindIndex(start, end - start, t => t.Kind is TermKind.Unknown) >= 0);
            }

            switch (term.Kind)
            {
                case TermKind.Filler or TermKind.Style or TermKind.Size or TermKind.BothFeet or TermKind.Unknown:
                    break;
                case TermKind.Side when (verb && terms.FindIndex(i + 1, end - i - 1, t => t.Kind is TermKind.Side or TermKind.Dir or TermKind.Move) is int next
                    && (next < 0 || IsUpperBody(terms[next])))
                    || (i + 1 < end && (ClauseBuilder.IsSidedArm(terms[i + 1]) || (IsUpperBody(terms[i + 1]) && !ClauseBuilder.IsArm(terms[i + 1])))):
                    break;
                case TermKind.Move when !verb && term.Meaning is { Figures.Count: 0 }
                    or { Verb: ActionKind.Drag or ActionKind.Slide or ActionKind.Sweep }
                    && term.Meaning.Verb is ActionKind.Drag or ActionKind.Slide or ActionKind.Sweep or ActionKind.Press or ActionKind.Drop
                        or ActionKind.Flick or ActionKind.Step
                    && !(term.Meaning.Verb is ActionKind.Step && IsGoing(term.Text)):
                    verb = true;
                    break;
                default:
                    return false;
            }
        }

        return false;
    }

    // who steps or walks uses the feet; who brings or puts may use the hands
    private static bool IsGoing(string words) => words.StartsWith("step", StringComparison.OrdinalIgnoreCase)
        || words.StartsWith("walk", StringComparison.OrdinalIgnoreCase) || words.StartsWith("run", StringComparison.OrdinalIgnoreCase);

    /// <summary>"Sway left, hips alive": how the hips are held, where the words after them tell no way to go.</summary>
    private static bool IsOfHips(List<Term> terms, int start, int end)
    {
        while (start < end && terms[start].Kind is TermKind.Filler)
        {
            start++;
        }

        return start + 1 < end && terms[start] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Bump } hips
            && hips.Text.ToLowerInvariant() is "hips" or "hip" or "your hips" or "the hips"
            && terms.TrueForAll(start + 1, end, t => t.Kind is TermKind.Filler or TermKind.Style or TermKind.Unknown or TermKind.Size)
            && !terms.TrueForAll(start + 1, end, t => t.Kind is TermKind.Filler);
    }

    /// <summary>
    /// "... - my mother would have walked out", "and get your breath back": a word of who speaks or who is spoken to among words that are of no step, and no
    /// foot, turn or number. What goes on behind a comma with more such words belongs to it. A move is part of it only where somebody speaks of herself.
    /// </summary>
    private static bool IsAside(List<Term> terms, int start, int end, bool isInside)
    {
        bool strange = !terms.TrueForAll(start, end, t => t.Kind is not (TermKind.Style or TermKind.Unknown) || Names(t.Text));
        bool ofMe = !terms.TrueForAll(start, end, t => t.Meaning.Special != "me");
        bool ofYou = !terms.TrueForAll(start, end, t => t.Meaning.Special != "you");
        bool goesOn = isInside && start > 0 && terms[start - 1].Text is "," or "-" or "–" or "—";
        bool moves = !terms.TrueForAll(start, end, t => t.Kind is not TermKind.Move);
        bool goes = terms.TrueForAll(start, end, t => t.Kind is not TermKind.Move || t.Meaning.Verb is ActionKind.Step or ActionKind.Hold);
        return start > 0 && strange && ((ofMe && goes) || ((ofYou || goesOn) && (!moves || (goesOn && ofYou && goes))))
            && terms.TrueForAll(start, end, t => ofMe || t.Kind is not TermKind.Dir || t.Meaning.Direction is Direction.Back or Direction.Out)
            && terms.TrueForAll(start, end, t => t.Meaning.Side is null && t.Kind is not (TermKind.Foot or TermKind.Side or TermKind.Lead or TermKind.Part
                or TermKind.Amount or TermKind.Turn or TermKind.Number or TermKind.Times or TermKind.Repeat or TermKind.RepeatMirrored or TermKind.Clock
                or TermKind.WeightOn or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth or TermKind.BothFeet));
    }

    /// <summary>"... and bring the left in behind it, that's the start of your vine": a name for what was told, without a foot or a turn of its own.</summary>
    private static bool IsRemark(List<Term> terms, int start, int end)
        => start > 0 && start + 1 < end && terms[start].Text.ToLowerInvariant() is "thats" or "that's" or "that’s"
            && terms.TrueForAll(start, end, t => t.Kind is not (TermKind.Foot or TermKind.Side or TermKind.Amount or TermKind.Number or TermKind.Times
                or TermKind.WeightOn or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth or TermKind.Clock or TermKind.Repeat
                or TermKind.RepeatMirrored));

    /// <summary>"Rock L forward pushing both hands away": from where on the words are of what the hands do beside the step.</summary>
    private static bool ArmsBeside(List<Term> terms, ref int from, int end)
    {
        for (int i = from + 1; i + 1 < end; i++)
        {
            bool does = terms[i].Text.EndsWith("ing", StringComparison.OrdinalIgnoreCase)
                && (terms[i].Kind is TermKind.Unknown or TermKind.Filler or TermKind.Style
                || terms[i] is
                {
                    Kind: TermKind.Move, Meaning:
                    {
                        IsIng: true, Verb: ActionKind.Drag or ActionKind.Slide or ActionKind.Sweep or ActionKind.Press
                    or ActionKind.Flick or ActionKind.Step
                    }
                });
            int part = i + 1;
            while (part < end && terms[part].Kind is TermKind.Filler or TermKind.BothFeet or TermKind.Side or TermKind.Size or TermKind.Style
                && !IsUpperBody(terms[part]))
            {
                part++;
            }

            bool hands = terms[i].Kind is TermKind.Style or TermKind.Unknown
                && terms[i].Text.ToLowerInvariant() is "hands" or "arms" or "fists" or "elbows" or "palms"
                && terms.FindIndex(from, i - from, t => t.Kind is TermKind.Move or TermKind.Dir) >= 0
                && terms[i - 1].Kind is not (TermKind.BothFeet or TermKind.Filler or TermKind.Style)
                && terms.TrueForAll(i + 1, end, t => t.Kind is TermKind.Filler or TermKind.Style or TermKind.Size or TermKind.Part or TermKind.Unknown
                    || t is { Kind: TermKind.Dir, Meaning.Side: null });
            if (hands)
            {
                // "skate R skate L hands behind your back"
                from = i;
                return true;
            }

            if (does && part < end && IsUpperBody(terms[part]) && !IsArms(terms[part])
                && terms.TrueForAll(part, end, t => t.Kind is not (TermKind.Foot or TermKind.Amount or TermKind.WeightOn or TermKind.WeightBoth
                    or TermKind.WeightTakes or TermKind.WeightNone or TermKind.Clock or TermKind.Move)))
            {
                from = i;
                return true;
            }
        }

        return false;
    }

    private static bool TrueForAll(this List<Term> terms, int from, int to, Predicate<Term> holds)
    {
        for (int i = from; i < to; i++)
        {
            if (!holds(terms[i]))
            {
                return false;
            }
        }

        return true;
    }

    private static bool Names(string word) => word.ToLowerInvariant() is "arm" or "arms" or "hand" or "hands" or "elbow" or "elbows" or "finger"
        or "fingers" or "palm" or "palms" or "thumb" or "thumbs"
        or "fist" or "fists" or "wrist" or "wrists" or "head" or "chin" or "eyes" or "chest" or "shoulder" or "shoulders" or "hat" or "brim"
            or "belt" or "rope" or "lasso" or "reins" or "forearm" or "forearms" or "hair";
}
