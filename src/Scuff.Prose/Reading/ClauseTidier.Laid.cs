using Scuff.Prose.Words;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// What becomes of a foot or of the weight once it is put somewhere.
internal sealed partial class ClauseTidier
{
    /// <summary>"Left heel forward, lower the toes": the foot that is laid with one part is put down with the other, and takes the weight.</summary>
    private void DropLaid()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause drop = _clauses[i];
            Clause laid = _clauses[i - 1].IsAmp && i > 1 ? _clauses[i - 2] : _clauses[i - 1];
            bool lowers = drop is { Feet.Count: < 2, BothFeet: false, Amount: null, HasTurnWord: false, Times: 1, Detail.Count: 0 }
                && (drop.Head is { Figures: [{ Id: "lower" }, ..] }
                    || (drop is { Head.Verb: ActionKind.Slap, Dir.Direction: Stance.Direction.Down }
                        && drop.HeadText.StartsWith("slap", StringComparison.OrdinalIgnoreCase)));
            bool ofHeel = lowers && drop.Part is "toe" or "toes" or "ball" && IsHeelLaid(laid);
            bool ofToe = lowers && drop.Part is "heel"
                && (laid.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Point || laid is { Head: null, Part: "toe" });
            if ((ofHeel || ofToe) && laid.Feet.Count < 2 && (drop.Feet.Count == 0 || laid.Feet.Count == 0 || drop.Feet[0].Foot == laid.Feet[0].Foot))
            {
                drop.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Drop, Special = "drop" };
                drop.Dir = null;
                drop.Part = ofHeel ? "toe" : "heel";
            }
        }
    }

    /// <summary>"Sway to the left, letting the weight come back onto the left": where the sway brings the weight, and no move after it.</summary>
    private void JoinWeightThatGoes()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            Clause goes = _clauses[i];
            Clause owner = _clauses[i - 1];
            bool tells = goes is
            {
                Link: Link.Soft, Head.Verb: ActionKind.Recover or ActionKind.Shift, Feet.Count: 1, Amount: null, Dir: null, Times: 1, Detail.Count: 0
            }
                && (goes.SaysIt || goes.HeadText.Contains("weight", StringComparison.OrdinalIgnoreCase));

            // "letting it go onto the left"
            tells |= goes is { IsWith: true, IsFeetOnly: true, SaysIt: true, Feet.Count: 1, Times: 1, Detail.Count: 0 };
            if (tells && owner is { Head.Verb: ActionKind.Sway or ActionKind.Bump or ActionKind.Lunge, WeightNote: null, Times: 1, Amount: null }
                && (owner.Feet.Count == 1 ? owner.Feet[0].Foot : owner.DirSide) == goes.Feet[0].Foot)
            {
                owner.WeightNote = TermKind.WeightOn;
                owner.WeightFoot = goes.Feet[0].Foot;
                owner.Cover(goes.Span);
                owner.LinkAfter = goes.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Sweep R over two counts, turning 1/4 left on each": as much on every count that it takes.</summary>
    private void TurnOnEachCount()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            if (_clauses[i] is { IsTurnOnly: true, SaysEach: true, Amount: not null }
                && _clauses[i - 1] is { Lasts: > 1 and < 5 and int counts, Times: 1, Amount: null, Head.Verb: ActionKind.Sweep or ActionKind.Ronde } slow)
            {
                slow.Lasts = null;
                slow.Times = counts;
                slow.TimesStated = true;
            }
        }
    }
}
