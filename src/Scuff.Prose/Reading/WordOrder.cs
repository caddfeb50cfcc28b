using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>Puts the words of a move into the order that the reader of clauses knows, where a writer has them in another; the terms keep their places in the
/// text.</summary>
internal static partial class WordOrder
{
    /// <summary>Mends all stretches between separators, and words of turning that only mean "do".</summary>
    /// <param name="terms">The terms of a line, changed in place.</param>
    public static void Mend(List<Term> terms)
    {
        MakeIsDo(terms);
        SwingIsSweep(terms);
        NowTheFoot(terms);
        RockOnto(terms);
        HeelHome(terms);
        PlaceBeforeFeet(terms);
        if (terms is [{ Kind: TermKind.Dir } first, _, ..] && first.Text.Equals("next", StringComparison.OrdinalIgnoreCase))
        {
            // "Next, swivel heels right": what comes after what, and no place
            terms[0] = first with { Meaning = new Meaning(TermKind.Filler) };
        }

        int start = 0;
        while (start < terms.Count)
        {
            int end = start;
            while (end < terms.Count && terms[end].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Close or TermKind.Join))
            {
                end++;
            }

            PlaceLast(terms, start, end);
            VerbLast(terms, start, end);
            BackOnIsRecover(terms, start, end);
            start = end + 1;
        }
    }

    /// <summary>
    /// "RF+LF swivel both heels to right", "R+L 1/2 turn left": two feet before what only both feet do are both feet, and no steps.
    /// </summary>
    /// <param name="terms">The terms of a line, changed in place.</param>
    public static void JoinFeet(List<Term> terms)
    {
        for (int i = 0; i + 2 < terms.Count; i++)
        {
            bool begins = i == 0 || terms[i - 1].Kind is TermKind.Separator or TermKind.Then or TermKind.Open;
            bool two = terms[i].Kind is TermKind.Side or TermKind.Foot && terms[i + 1] is { Kind: TermKind.Amp or TermKind.Join }
                && terms[i + 2].Kind is TermKind.Side or TermKind.Foot && terms[i + 2].Meaning.Side != terms[i].Meaning.Side;
            bool before = begins && i + 3 < terms.Count && (IsOfBoth(terms[i + 3]) || (terms[i + 1].Text is "+" && IsTurned(terms[i + 3])));

            // "weight on RF+LF", "jump RF and LF out"; "jump R and L" may be a jump onto each
            bool placed = i + 3 < terms.Count && terms[i + 3].Kind is TermKind.Dir;
            bool behind = i > 0 && ((terms[i - 1].Kind is TermKind.WeightOn && !placed)
                || (terms[i - 1] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Jump } && placed));
            if (two && (before || behind))
            {
                terms[i] = new Term(new Meaning(TermKind.BothFeet), TextSpan.FromBounds(terms[i].Span.Start, terms[i + 2].Span.End), "both");
                terms.RemoveRange(i + 1, 2);
            }
        }
    }

    private static bool IsOfBoth(Term term) => term is
    {
        Kind: TermKind.Move, Meaning.Verb: ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Twist or ActionKind.SplitHeels
            or ActionKind.SplitToes or ActionKind.Bounce or ActionKind.Jump or ActionKind.Click
    }
        or { Kind: TermKind.Part, Meaning.Part: "heels" or "toes" };

    private static bool IsTurned(Term term) => term.Kind is TermKind.Amount or TermKind.Turn
        || term is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Unwind or ActionKind.Pivot };

    /// <summary>"Bring the right heel home": where the heel goes, and no heel beside the other foot.</summary>
    private static void HeelHome(List<Term> terms)
    {
        for (int i = terms.Count - 1; i > 0; i--)
        {
            if (terms[i] is not { Kind: TermKind.Move, Meaning: { Verb: null, Figures.Count: > 0 } } home
                || home.Text.ToLowerInvariant() is not ("heel home" or "heel close"))
            {
                continue;
            }

            int verb = i - 1;
            while (verb > 0 && terms[verb].Kind is TermKind.Side or TermKind.Foot or TermKind.Filler)
            {
                verb--;
            }

            if (terms[verb] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step or ActionKind.Recover or ActionKind.Drag }
                && terms[verb].Text.Length > 3 && terms[verb].Text[..4].ToLowerInvariant() is "brin" or "brou" or "take" or "draw" or "pull" or "retu")
            {
                int split = home.Span.Start + 4;
                terms[i] = new Term(new Meaning(TermKind.Part) { Part = "heel" }, TextSpan.FromBounds(home.Span.Start, split), "heel");
                terms.Insert(i + 1, new Term(new Meaning(TermKind.Dir) { Direction = Direction.Home }, TextSpan.FromBounds(split, home.Span.End), "home"));
            }
        }
    }

    /// <summary>
    /// "Rock onto L behind R, recover": who rocks onto a foot recovers on it, unless it is said where that goes, or a recover comes after it.
    /// </summary>
    private static void RockOnto(List<Term> terms)
    {
        for (int i = 0; i + 1 < terms.Count; i++)
        {
            if (terms[i] is not { Kind: TermKind.Move, Meaning.Verb: ActionKind.Recover }
                || !terms[i].Text.StartsWith("rock", StringComparison.OrdinalIgnoreCase)
                || terms[i + 1].Kind is not (TermKind.Side or TermKind.Foot))
            {
                continue;
            }

            int next = i + 2;
            while (next < terms.Count && terms[next].Kind is TermKind.Filler or TermKind.Size or TermKind.Style)
            {
                next++;
            }

            bool goes = next < terms.Count && terms[next] is
            {
                Kind: TermKind.Dir, Meaning.Direction: Direction.CrossFront or Direction.CrossBehind or Direction.Side or Direction.Forward or Direction.Back
                or Direction.DiagonalForward or Direction.DiagonalBack
            };
            int onward = terms.FindIndex(next, t => t.Kind is TermKind.Move);
            bool recovers = onward > 0 && terms[onward].Meaning.Verb is ActionKind.Recover
                && !terms[onward].Text.StartsWith("rock", StringComparison.OrdinalIgnoreCase)
                && !(i > 1 && terms.FindLastIndex(i - 1, t => t.Kind is TermKind.Move) is int before and >= 0 && terms[before].Meaning.Verb is ActionKind.Rock);
            if (goes || recovers)
            {
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Rock, Special = "rock" } };
            }
        }
    }

    /// <summary>"XIF L of R", "behind L of R": the place, the foot that goes there, and the foot it goes by.</summary>
    private static void PlaceBeforeFeet(List<Term> terms)
    {
        for (int i = 0; i + 3 < terms.Count; i++)
        {
            if (terms[i] is { Kind: TermKind.Dir, Meaning: { Side: null, Direction: Direction.CrossFront or Direction.CrossBehind } }
                && terms[i + 1].Kind is TermKind.Side or TermKind.Foot && terms[i + 2] is { Kind: TermKind.Filler, Text: "of" or "OF" or "Of" }
                && terms[i + 3].Kind is TermKind.Side or TermKind.Foot && terms[i + 3].Meaning.Side != terms[i + 1].Meaning.Side)
            {
                (terms[i], terms[i + 1]) = (terms[i + 1], terms[i]);
            }
        }
    }

    /// <summary>"Right make a big step back": nothing is turned by making a step.</summary>
    private static void MakeIsDo(List<Term> terms)
    {
        for (int i = 0; i + 1 < terms.Count; i++)
        {
            if (terms[i].Kind is not TermKind.Turn || !terms[i].Text.StartsWith("mak", StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            int next = i + 1;
            while (next < terms.Count && terms[next].Kind is TermKind.Filler or TermKind.Size or TermKind.Style)
            {
                next++;
            }

            if (next < terms.Count && terms[next] is
                {
                    Kind: TermKind.Move, Meaning: { Verb: ActionKind.Step }
                or { Verb: null, Figures: [{ Rows: [{ Action: { Kind: ActionKind.Step, Turn.Sign: 0 } }] }, ..] }
                })
            {
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Filler) };
            }
        }
    }

    /// <summary>"Now right coaster step": the side is that of a move that is told in full, and nothing is danced again.</summary>
    private static void NowTheFoot(List<Term> terms)
    {
        for (int i = 0; i + 1 < terms.Count; i++)
        {
            if (terms[i].Kind is not TermKind.RepeatMirrored || terms[i].Text.Split(' ') is not [.., var now, var side]
                || !now.Equals("now", StringComparison.OrdinalIgnoreCase) || side.ToLowerInvariant() is not ("right" or "left"))
            {
                continue;
            }

            int next = terms[i + 1] is { Kind: TermKind.Filler, Text: "foot" } && i + 2 < terms.Count ? i + 2 : i + 1;
            if (terms[next].Kind is TermKind.Move or TermKind.Dir or TermKind.Part)
            {
                Foot foot = side.Equals("right", StringComparison.OrdinalIgnoreCase) ? Foot.Right : Foot.Left;
                TextSpan span = TextSpan.FromBounds(terms[i].Span.End - side.Length, terms[i].Span.End);
                terms[i] = new Term(new Meaning(TermKind.Side) { Side = foot }, span, side);
            }
        }
    }

    /// <summary>"Swing R leg across L": a foot that swings to a place turns nobody.</summary>
    private static void SwingIsSweep(List<Term> terms)
    {
        for (int i = 1; i + 1 < terms.Count; i++)
        {
            if (terms[i].Kind is TermKind.Turn && terms[i].Text.StartsWith("swing", StringComparison.OrdinalIgnoreCase)
                && terms[i - 1] is { Kind: TermKind.Foot } && terms[i + 1] is
                { Kind: TermKind.Dir, Meaning.Direction: Direction.Forward or Direction.Back or Direction.CrossFront or Direction.CrossBehind }
                && (i + 2 >= terms.Count || terms[i + 2].Kind is TermKind.Separator or TermKind.Then or TermKind.Close or TermKind.Open or TermKind.Join))
            {
                // "right foot swing forward"
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Sweep, Special = "sweep" } };
            }
        }

        for (int i = 0; i + 2 < terms.Count; i++)
        {
            if (terms[i].Kind is not TermKind.Turn || !terms[i].Text.StartsWith("swing", StringComparison.OrdinalIgnoreCase))
            {
                continue;
            }

            int end = terms.FindIndex(i, t => t.Kind is TermKind.Separator or TermKind.Then or TermKind.Join or TermKind.Close);
            if (SwingsToVerb(terms, i))
            {
                continue;
            }

            if (end >= 0 && terms[end].Kind is TermKind.Join or TermKind.Then)
            {
                // "swing L in front of R and step on it": the verb that counts comes after
                continue;
            }

            List<Term> said = terms.GetRange(i + 1, (end < 0 ? terms.Count : end) - i - 1).FindAll(t => t.Kind is not (TermKind.Filler or TermKind.Size
                or TermKind.Style));
            if (said is [{ Kind: TermKind.Side or TermKind.Foot },
                {
                    Kind: TermKind.Move, Meaning.Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point
                or ActionKind.Step or ActionKind.Kick
                }, ..] && !said.Exists(t => t.Kind is TermKind.Amount or TermKind.Turn or TermKind.Clock))
            {
                // "swing right round to touch toe forward": the way to the touch
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Filler) };
            }

            if (terms[i + 1].Text.Equals("it", StringComparison.OrdinalIgnoreCase) && terms.FindIndex(0, i, t => t.Meaning.Verb is ActionKind.Sweep) >= 0
                && said is [{ Kind: TermKind.Dir, Meaning.Direction: Direction.Forward or Direction.Back or Direction.CrossFront or Direction.CrossBehind }])
            {
                // "swing right foot across left, swing it back"
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Sweep, Special = "sweep" } };
            }

            if (said is [{ Kind: TermKind.Side or TermKind.Foot }, { Kind: TermKind.Dir, Meaning.Direction: not (Direction.In or Direction.Together) }, ..]
                && !said.Exists(t => t.Kind is TermKind.Amount or TermKind.Turn or TermKind.Move or TermKind.Clock))
            {
                terms[i] = terms[i] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Sweep, Special = "sweep" } };
            }
        }
    }

    /// <summary>"Swing RF forward and touch the toe", "swing R back and step", "swing R forward touching the toe": the verb behind has its place.</summary>
    private static bool SwingsToVerb(List<Term> terms, int swing)
    {
        int end = terms.FindIndex(swing, t => t.Kind is TermKind.Separator or TermKind.Open or TermKind.Close);
        end = end < 0 ? terms.Count : end;
        List<int> said = [.. Enumerable.Range(swing + 1, end - swing - 1)
            .Where(i => terms[i].Kind is not (TermKind.Filler or TermKind.Size or TermKind.Style))];
        bool joined = said.Count > 2 && terms[said[2]].Kind is TermKind.Join or TermKind.Then;
        int verb = joined ? 3 : 2;
        bool tells = said.Count > verb && terms[said[0]].Kind is TermKind.Side or TermKind.Foot
            && terms[said[1]] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Forward or Direction.Back or Direction.Side }
            && terms[said[verb]] is
            {
                Kind: TermKind.Move,
                Meaning: { Verb: ActionKind.Touch or ActionKind.Tap or ActionKind.Point or ActionKind.Step, Figures.Count: < 2 }
            }
            && (joined || terms[said[verb]].Meaning.IsIng)
            && said.Skip(verb + 1).All(i => terms[i].Kind is TermKind.Part or TermKind.WeightTakes
                || terms[i].Text.Equals("it", StringComparison.OrdinalIgnoreCase)
                || terms[i] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Down });
        if (!tells)
        {
            return false;
        }

        Term made = terms[said[verb]];
        terms[swing] = terms[swing] with { Meaning = made.Meaning with { IsIng = false }, Text = made.Text };
        foreach (int rest in said.Skip(2))
        {
            terms[rest] = terms[rest].Kind is TermKind.Part or TermKind.WeightTakes ? terms[rest] : terms[rest] with { Meaning = new Meaning(TermKind.Filler) };
        }

        return true;
    }

    /// <summary>"Over L crosses R foot", "beside R touches L toe": the place and its foot, the verb, and the foot that acts at the end.</summary>
    private static void PlaceLast(List<Term> terms, int start, int end)
    {
        List<int> words = [];
        for (int i = start; i < end; i++)
        {
            if (terms[i].Kind is not (TermKind.Filler or TermKind.Size or TermKind.Style))
            {
                words.Add(i);
            }
        }

        bool turned = words.Count is 4 or 5
            && terms[words[0]] is
            {
                Kind: TermKind.Dir, Meaning:
                {
                    Side: null, Direction: Direction.CrossFront or Direction.CrossBehind
            or Direction.Together
                }
            }
            && terms[words[1]].Kind is TermKind.Side or TermKind.Foot && IsThirdPerson(terms[words[2]])
            && terms[words[3]].Kind is TermKind.Side or TermKind.Foot && terms[words[3]].Meaning.Side != terms[words[1]].Meaning.Side
            && (words.Count == 4 || terms[words[4]].Kind is TermKind.Part);
        if (!turned)
        {
            return;
        }

        List<Term> order = [terms[words[3]]];
        if (words.Count == 5)
        {
            order.Add(terms[words[4]]);
        }

        order.AddRange([terms[words[2]], terms[words[0]], terms[words[1]]]);
        for (int i = 0; i < order.Count; i++)
        {
            terms[words[i]] = order[i];
        }
    }

    // "crosses", "touches", "locks": what a foot does, not what she is told to do
    private static bool IsThirdPerson(Term term) => term.Text.EndsWith("s", StringComparison.OrdinalIgnoreCase) && term.Text.Length > 4
        && (term is { Kind: TermKind.Move, Meaning.Verb: not null }
            || (term.Kind is TermKind.Dir && (term.Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase)
                || term.Text.StartsWith("clos", StringComparison.OrdinalIgnoreCase) || term.Text.StartsWith("lock", StringComparison.OrdinalIgnoreCase))));
}
