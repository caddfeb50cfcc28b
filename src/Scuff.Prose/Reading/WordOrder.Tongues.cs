using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Orders of words that other tongues bring along.
internal static partial class WordOrder
{
    /// <summary>"LF behind RF cross", "LF beside RF tap on": foot, place, the other foot, and the verb at the end, as German and Dutch have it.</summary>
    private static void VerbLast(List<Term> terms, int start, int end)
    {
        // "L beside R tap on with a click", "L behind R cross turning 1/4 left": what goes with it comes after
        int with = terms.FindIndex(start, end - start, t => t.Kind is TermKind.With or TermKind.Amp or TermKind.Number or TermKind.Clock or TermKind.WeightOn
            or TermKind.WeightNone or TermKind.WeightTakes or TermKind.WeightBoth or TermKind.Times || (t.Kind is TermKind.Turn && t.Meaning.IsIng));
        end = with > start + 3 ? with : end;
        int verb = end - 1;
        while (verb > start + 2 && terms[verb].Kind is TermKind.Filler or TermKind.Size or TermKind.Style)
        {
            verb--;
        }

        if (verb > start + 3 && terms[verb] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Back or Direction.Down } particle
            && terms[verb - 1] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Step } put
            && put.Text.ToLowerInvariant() is "put" or "set" or "place" or "bring" or "pull" or "draw")
        {
            // "left foot beside right put back": how it is put, and not where
            terms[verb] = particle with { Meaning = new Meaning(TermKind.Filler) };
            verb--;
        }

        if (verb < start + 3)
        {
            return;
        }

        int other = Previous(terms, verb, start);
        int place = other < 0 ? -1 : Previous(terms, other, start);
        if (place >= 0 && terms[place].Kind is TermKind.Side or TermKind.Foot && other - place == 2 && terms[verb].Kind is TermKind.Move
            && terms[place + 1].Text.ToLowerInvariant() is "to" or "towards" or "against" or "at" && terms[other].Kind is TermKind.Side or TermKind.Foot
            && terms[place].Meaning.Side != terms[other].Meaning.Side && terms[verb].Meaning.Verb is ActionKind.Drag or ActionKind.Slide or ActionKind.Touch
            or ActionKind.Tap or ActionKind.Step && terms.FindIndex(start, place - start, t => t.Kind is TermKind.Move) < 0)
        {
            // "LF to RF drag"
            Term drawn = terms[verb];
            terms.RemoveAt(verb);
            terms.Insert(place + 1, drawn);
            return;
        }

        int foot = place < 0 ? -1 : Previous(terms, place, start);
        if (foot < 0 || terms[foot].Kind is not (TermKind.Side or TermKind.Foot) || terms[other].Kind is not (TermKind.Side or TermKind.Foot)
            || terms[foot].Meaning.Side == terms[other].Meaning.Side
            || terms[place] is not
            {
                Kind: TermKind.Dir, Meaning:
                {
                    Side: null, Direction: Direction.CrossFront or Direction.CrossBehind
                or Direction.Together or Direction.LockBehind or Direction.LockFront
                }
            }
            || terms.FindIndex(start, foot - start, t => t.Kind is TermKind.Move) >= 0)
        {
            return;
        }

        string word = terms[verb].Text;
        bool saysPlace = terms[verb].Kind is TermKind.Dir && (word.StartsWith("cross", StringComparison.OrdinalIgnoreCase)
            || word.StartsWith("clos", StringComparison.OrdinalIgnoreCase));
        if (saysPlace)
        {
            // the place is told already
            terms[verb] = terms[verb] with { Meaning = new Meaning(TermKind.Filler) };
        }
        else if (terms[verb] is
        {
            Kind: TermKind.Move, Meaning:
            {
                Verb: ActionKind.Step or ActionKind.Touch or ActionKind.Tap or ActionKind.Point
            or ActionKind.Kick or ActionKind.Stomp or ActionKind.Hook or ActionKind.Rock or ActionKind.Brush or ActionKind.Scuff or ActionKind.Drag
            or ActionKind.Slide or ActionKind.Press or ActionKind.Dig or ActionKind.Flick or ActionKind.Sweep
            }
        })
        {
            Term moved = terms[verb];
            terms.RemoveAt(verb);
            terms.Insert(foot + 1, moved);
        }
    }

    private static int Previous(List<Term> terms, int at, int start)
    {
        for (int i = at - 1; i >= start; i--)
        {
            if (terms[i].Kind is not (TermKind.Filler or TermKind.Size or TermKind.Style))
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>"Rock R forward, back on L", "rock L back, forward on R": where the weight comes back to, and no step.</summary>
    private static void BackOnIsRecover(List<Term> terms, int start, int end)
    {
        int first = start;
        while (first < end && terms[first].Kind is TermKind.Filler)
        {
            first++;
        }

        if (first + 2 > end || start == 0 || terms[first] is not { Kind: TermKind.Dir, Meaning: { Side: null, Direction: Direction.Forward or Direction.Back } }
            || terms[first + 1] is not { Kind: TermKind.Foot, Meaning.Side: Foot back }
            || !terms[first + 1].Text.StartsWith("on", StringComparison.OrdinalIgnoreCase)
            || terms.FindIndex(first + 2, end - first - 2, t => t.Kind is not (TermKind.Filler or TermKind.Style)) >= 0)
        {
            return;
        }

        Foot? rocking = null;
        bool rocks = false;
        for (int i = start - 2; i >= 0 && terms[i].Kind is not (TermKind.Separator or TermKind.Then or TermKind.Open or TermKind.Close); i--)
        {
            rocks |= terms[i] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Rock };
            rocking = terms[i].Kind is TermKind.Foot or TermKind.Side ? terms[i].Meaning.Side : rocking;
        }

        if (rocks && rocking != back)
        {
            terms[first] = terms[first] with { Meaning = new Meaning(TermKind.Move) { Verb = ActionKind.Recover, Special = "recover" } };
        }
    }
}
