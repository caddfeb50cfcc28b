using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;

namespace Scuff.Prose.Reading;

/// <summary>One move's worth of words, its slots filled; not yet bound to counts.</summary>
internal sealed class Clause
{
    public Link Link { get; set; } = Link.Hard;

    /// <summary>Whether "with" or "while" stands before it.</summary>
    public bool IsWith { get; set; }

    /// <summary>Whether "as you" or "while you" stands before it: what she does meanwhile.</summary>
    public bool SaysAsYou { get; set; }

    /// <summary>Whether a hard separator, a bracket or the end follows.</summary>
    public Link LinkAfter { get; set; } = Link.Hard;

    public int Start { get; set; } = -1;

    public int End { get; set; } = -1;

    /// <summary>The verb or figure, or null.</summary>
    public Meaning? Head { get; set; }

    public string HeadText { get; set; } = "";

    /// <summary>The word turn (or spin) stands in it.</summary>
    public bool HasTurnWord { get; set; }

    public List<FootWord> Feet { get; } = [];

    /// <summary>Whether the foot was named before the verb.</summary>
    public bool FootFirst { get; set; }

    public bool BothFeet { get; set; }

    public Foot? Reference { get; set; }

    public Meaning? Dir { get; set; }

    /// <summary>The word of the direction as written.</summary>
    public string DirText { get; set; } = "";

    public bool DirFirst { get; set; }

    /// <summary>Whether the part (heels, toes) came before any foot word.</summary>
    public bool PartFirst { get; set; }

    /// <summary>How the free foot is held in a turn ("spin a full turn right on R with L hooked"), or null.</summary>
    public Steps.ActionKind? Held { get; set; }

    /// <summary>Whether the part stands after the place, as what the foot lands on ("left out to side on heel").</summary>
    public bool PartLast { get; set; }

    public bool Diagonal { get; set; }

    /// <summary>Side of a sided direction (to the right).</summary>
    public Foot? DirSide { get; set; }

    public int? Amount { get; set; }

    public Foot? TurnSide { get; set; }

    /// <summary>The clock time a turn goes to ("turn left to 9:00"), in eighths.</summary>
    public int? TurnTo { get; set; }

    public string Part { get; set; } = "";

    public int Size { get; set; }

    public TermKind? WeightNote { get; set; }

    public Foot? WeightFoot { get; set; }

    /// <summary>The note says that the weight is or stays there, and not that it ends there.</summary>
    public bool WeightStays { get; set; }

    public int Times { get; set; } = 1;

    public bool TimesStated { get; set; }

    public int? Lasts { get; set; }

    /// <summary>The count in brackets after it ("hold (2)", the first of "(5-6)"), or null.</summary>
    public int? SaidCount { get; set; }

    public bool IsRepeat { get; set; }

    public bool IsMirrored { get; set; }

    public (int From, int To)? RepeatCounts { get; set; }

    /// <summary>The section whose counts are repeated, when one is named.</summary>
    public int? RepeatSection { get; set; }

    /// <summary>The verb taken over from the clause before, when this one has none.</summary>
    public Steps.ActionKind? Inherited { get; set; }

    /// <summary>Whether it may be a remark on the move before rather than a move: a bare place, a bare foot, a change of weight.</summary>
    public bool IsWeak => !IsRepeat && !IsAmp && Detail.Count == 0
        && (IsFeetOnly || SaysEach || (Head is null && Dir?.Direction is Direction.Together && Feet.Count == 1 && Feet[0].MayBeReference && Reference is null
            && Link is not Link.Amp)
        || (Head is null && BothFeet) || (Head is null && Feet.Count == 0 && !HasTurnWord && Amount is null)
        || (HasTurnWord && Amount is null && Head is null)
        || (Head is { Verb: Steps.ActionKind.Recover } && HeadText.Contains("weight", StringComparison.OrdinalIgnoreCase))
        || Head is
        {
            Verb: Steps.ActionKind.Shift or Steps.ActionKind.Drop or Steps.ActionKind.Bump or Steps.ActionKind.Dip
            or Steps.ActionKind.PopKnee or Steps.ActionKind.RollKnee or Steps.ActionKind.RollHips or Steps.ActionKind.Shimmy
        });

    public List<Term> Unknown { get; } = [];

    public bool HasStyle { get; set; }

    /// <summary>It is danced on the turn that is told before it ("hitching R on the turn").</summary>
    public bool OnTurn { get; set; }

    /// <summary>The weight stands on the part that it names ("on R heel stand").</summary>
    public bool Stands { get; set; }

    /// <summary>Where the first action of the figure goes, where a detail says so ("paddle 1/4 left (R presses to side)"), or null.</summary>
    public Direction? FirstWay { get; set; }

    /// <summary>It is danced at the same time as the move before.</summary>
    public bool SameTime { get; set; }

    /// <summary>The turn is made with the move before ("as you do it").</summary>
    public bool WithBefore { get; set; }

    /// <summary>The steps of the figure are told, and none of them is its customary last one.</summary>
    public bool WithoutFinish { get; set; }

    /// <summary>Its moves are said to be slow: two counts each, where the line has them.</summary>
    public bool IsSlow { get; set; }

    /// <summary>Lasts as long as there are counts for it, as a sway over the foot that was just put down does.</summary>
    public bool MayLast { get; set; }

    /// <summary>The first of its feet is danced with the move before ("step R to side swaying hips R, L, R, L").</summary>
    public bool FirstWithBefore { get; set; }

    /// <summary>A boot is slapped: a foot is lifted to the hand.</summary>
    public bool NamesBoot { get; set; }

    /// <summary>The word waltz stands in it.</summary>
    public bool SaysWaltz { get; set; }

    /// <summary>Whether the turn is made on the ball of a foot that is named after it.</summary>
    public bool IsOnBall { get; set; }

    /// <summary>The weight is noted for a turn on the ball of a foot that is named before the turn ("on ball of L 1/4 right").</summary>
    public bool SaysBall { get; set; }

    /// <summary>A word for lifting stands in it.</summary>
    public bool HasLift { get; set; }

    /// <summary>It speaks of the foot of the move before as "it" or "the same foot".</summary>
    public bool SaysIt { get; set; }

    /// <summary>The count a turn is said to fall on ("1/4 left on 8"), or null.</summary>
    public int? OnCount { get; set; }

    /// <summary>The step of the figure that its turn is said to fall on ("turning 1/4 left on the back step"), by where it goes, or null.</summary>
    public Direction? OnWay { get; set; }

    /// <summary>The step of the move before that a turn is said to fall on (1 the first, -1 the last), or null.</summary>
    public int? OnStep { get; set; }

    /// <summary>The turn is said before the move ("1/4 left chassé right").</summary>
    public bool TurnFirst { get; set; }

    /// <summary>The turn leads "into" the move: it is made before it, not spread over it.</summary>
    public bool TurnsInto { get; set; }

    /// <summary>It speaks of a circle or an arc: the turn is shared by the steps that walk it.</summary>
    public bool SaysCircle { get; set; }

    /// <summary>Over how many steps, told after it, a turn is said to be made, or null.</summary>
    public int? OverSteps { get; set; }

    /// <summary>The half of the figure that is danced ("rumba box, first half"): 1, 2, or null for the whole.</summary>
    public int? HalfOf { get; set; }

    /// <summary>It says how the move before ends ("finishing with a cross").</summary>
    public bool SaysFinish { get; set; }

    /// <summary>It says "the same foot" for the foot of the move before.</summary>
    public bool SaysSameFoot { get; set; }

    /// <summary>It says what is done each time, of moves that are told already.</summary>
    public bool SaysEach { get; set; }

    /// <summary>It says what goes with moves that are told already ("clap on every touch").</summary>
    public bool OnEachMove { get; set; }

    public List<Term> Corrected { get; } = [];

    /// <summary>The detail in brackets or after a colon.</summary>
    public List<Clause> Detail { get; set; } = [];

    /// <summary>The detail stands after a dash, which may as well part one move from the next.</summary>
    public bool DetailAfterDash { get; set; }

    /// <summary>It is an &amp; that may be a step together of its own.</summary>
    public bool IsAmp { get; set; }

    public TextSpan Span => TextSpan.FromBounds(Math.Max(Start, 0), Math.Max(End, 0));

    public bool IsFigure => Head is { Figures.Count: > 0 };

    /// <summary>A step and a turn on the same foot: a spiral.</summary>
    public bool IsSpiral => Head is
    {
        Figures: [
        {
            Rows: [{ Action.Effect: Steps.WeightEffect.Takes } step,
            { Action: { Kind: Steps.ActionKind.Pivot } turn } last]
        }, ..]
    }
        && turn.Turn.Sign != 0 && step.Foot == last.Foot;

    public bool HasVerb => Head?.Verb is not null;

    public bool IsTurnOnly => Head is null && (HasTurnWord || Amount is not null) && Dir is null && Feet.Count == 0 && Part.Length == 0;

    /// <summary>Whether it says something that can be danced.</summary>
    public bool HasContent => Head is not null || HasTurnWord || Amount is not null || Feet.Count > 0 || Dir is not null || Part.Length > 0
        || IsRepeat || IsAmp || BothFeet;

    public bool IsFeetOnly => Head is null && !HasTurnWord && Amount is null && Dir is null && Part.Length == 0 && !IsRepeat && Feet.Count > 0
        && Size == 0;

    /// <summary>A copy, with left and right exchanged if wanted.</summary>
    public Clause Copy(bool mirrored)
    {
        Clause copy = new()
        {
            Link = Link,
            LinkAfter = LinkAfter,
            Start = Start,
            End = End,
            Head = Head,
            HeadText = HeadText,
            HasTurnWord = HasTurnWord,
            BothFeet = BothFeet,
            Reference = Turned(Reference),
            Dir = Dir,
            DirText = DirText,
            DirFirst = DirFirst,
            PartFirst = PartFirst,
            PartLast = PartLast,
            Held = Held,
            Diagonal = Diagonal,
            DirSide = Turned(DirSide),
            Amount = Amount,
            TurnSide = Turned(TurnSide),
            TurnTo = TurnTo,
            Part = Part,
            Size = Size,
            WeightNote = WeightNote,
            WeightFoot = Turned(WeightFoot),
            WeightStays = WeightStays,
            Times = Times,
            TimesStated = TimesStated,
            Lasts = Lasts,
            MayLast = MayLast,
            SaidCount = SaidCount,
            IsRepeat = IsRepeat,
            HasLift = HasLift,
            SaysBall = SaysBall,
            SaysIt = SaysIt,
            SaysEach = SaysEach,
            OnEachMove = OnEachMove,
            SaysFinish = SaysFinish,
            HalfOf = HalfOf,
            SaysSameFoot = SaysSameFoot,
            OnCount = OnCount,
            OnWay = OnWay,
            OverSteps = OverSteps,
            SaysCircle = SaysCircle,
            TurnFirst = TurnFirst,
            TurnsInto = TurnsInto,
            OnStep = OnStep,
            SaysWaltz = SaysWaltz,
            IsWith = IsWith,
            SaysAsYou = SaysAsYou,
            FootFirst = FootFirst,
            IsMirrored = IsMirrored,
            RepeatCounts = RepeatCounts,
            RepeatSection = RepeatSection,
            HasStyle = HasStyle,
            NamesBoot = NamesBoot,
            IsSlow = IsSlow,
            WithoutFinish = WithoutFinish,
            SameTime = SameTime,
            WithBefore = WithBefore,
            OnTurn = OnTurn,
            Stands = Stands,
            FirstWay = FirstWay,
            DetailAfterDash = DetailAfterDash,
            Detail = [.. Detail.Select(d => d.Copy(mirrored))],
            IsAmp = IsAmp,
        };
        foreach (FootWord word in Feet)
        {
            copy.Feet.Add(mirrored ? word with { Foot = word.Foot.Other() } : word);
        }

        copy.Unknown.AddRange(Unknown);
        return copy;

        Foot? Turned(Foot? foot) => mirrored ? foot?.Other() : foot;
    }

    public void Cover(TextSpan span)
    {
        Start = Start < 0 ? span.Start : Math.Min(Start, span.Start);
        End = Math.Max(End, span.End);
    }
}
