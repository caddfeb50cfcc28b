using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// Parts of the foot, and words that name a foot: the one that acts, or the one that something is put beside.
internal sealed partial class ClauseBuilder
{
    private string? PreviousPart(int at)
    {
        int previous = PreviousIndex(at - 1);
        return previous >= 0 && _terms[previous].Kind == TermKind.Part
            && (_current.Head?.Verb is not (ActionKind.RollBody or ActionKind.PopShoulder or ActionKind.Shimmy)) ? _terms[previous].Meaning.Part
            : null;
    }

    private void Part(Term term, int at)
    {
        string part = term.Meaning.Part;
        if (part is "heels" or "toes" && _pending is Link.None && _current.Head?.Verb is ActionKind.Swivel or ActionKind.SwivelHeels or ActionKind.SwivelToes
            && (_current.Part.Length > 0 || _current.Head.Verb is not ActionKind.Swivel)
            && (_current.Feet.Count > 0 || _current.DirSide is not null || _current.Dir is not null))
        {
            // "swivel heels right toes right heels right"
            Close(Link.Hard);
        }

        if (part is "heel" or "toe" && _pending is Link.None && _clauses is [.., { Part: "heel" or "toe" }]
            && _current is { Head: null, Feet.Count: 0, Part.Length: 0, Amount: null, Reference: null, Dir.Direction: Direction.Together or Direction.Home }
            && NextIndex(at + 1) is int owned and >= 0 && _terms[owned].Kind is TermKind.Side or TermKind.Foot)
        {
            // "heel right forward together heel left forward together": the heel that was out is back
            Close(Link.None);
        }

        StartIfPending(TermKind.Part, at);
        if (part == "ball" && _current is { Head: null, Dir: null, Feet.Count: 0, Part.Length: 0 } && _current.HasTurnWord
            && _current.Amount is not null && _current.TurnSide is not null && _pending is Link.None)
        {
            // "turn 1/2 left on the ball of the left": the foot it is made on follows
            _current.IsOnBall = true;
            Widen(term);
            return;
        }

        bool places = _current.Dir is
        {
            Direction: Direction.Together or Direction.CrossFront or Direction.CrossBehind or Direction.LockBehind
            or Direction.LockFront
        } && _current.Reference is not null;
        if (places)
        {
            // "up to R heel": a place, not a move
            Widen(term);
            return;
        }

        if (_current.Head is null && _current.Part.Length > 0
            && (_current.Feet.Count > 0 || _current.Dir is not null
                || (_current.Part is "heels" or "toes" && part != _current.Part && part is "heels" or "toes"))
            && part is "heel" or "toe" or "heels" or "toes")
        {
            Close(Link.None);
        }

        if (_current is { Head: null, Part: "toe" or "heel", Feet.Count: 0, Dir: null, Amount: null } && _pending is Link.None
            && part is "toe" or "heel" && part != _current.Part && NextIndex(at + 1) is int third and >= 0
            && _terms[third] is { Kind: TermKind.Move, Meaning.Verb: ActionKind.Stomp or ActionKind.Kick or ActionKind.Hook or ActionKind.Hitch })
        {
            // "toe heel stomp": three moves in a row
            Close(Link.None);
            _current.Part = part;
            Widen(term);
            Close(Link.None);
            return;
        }

        _current.PartFirst = _current.Feet.Count == 0;
        _current.PartLast = _current is { Head: null, Feet.Count: 1, Dir: not null } && at > 0 && _terms[at - 1] is { Kind: TermKind.Filler } on
            && on.Text.ToLowerInvariant() is "on" or "on the" or "on your" or "on its";

        if (part is "knee" && _current.Head is null)
        {
            _current.Part = "knee";
        }
        else if (part is "body" or "shoulder")
        {
            _current.HasStyle = true;
        }
        else
        {
            _current.Part = part;
        }

        Widen(term);
    }

    private void FootTerm(Term term, int at, bool certain, bool mayBeReference = false)
    {
        Foot foot = term.Meaning.Side!.Value;
        if (_skipsFoot)
        {
            _skipsFoot = false;
            Widen(term);
            return;
        }

        if (_pending is Link.None && _current is { Feet: [{ } rocked], Detail.Count: 0, Amount: null, Times: 1 } && rocked.Foot == foot.Other()
            && _current.HeadText.EndsWith("recover", StringComparison.OrdinalIgnoreCase)
            && _current.Head is { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Rock }, { Action.Kind: ActionKind.Recover }] }, ..] })
        {
            // "R side rock recover L cross R over L": the foot that it recovers on
            Widen(term);
            Close(Link.None);
            return;
        }

        if (at + 1 < _end && IsSidedArm(_terms[at + 1]))
        {
            // "with L hand on hat brim"
            _current.HasStyle = true;
            Widen(term);
            return;
        }

        if (term.Text.StartsWith("with ", StringComparison.OrdinalIgnoreCase)
            && ((_current.Head is not null && _current.Feet.Count > 0) || _current is { IsTurnOnly: true, WeightNote: TermKind.WeightOn })
            && at + 1 < _end && _terms[at + 1].Kind is TermKind.Move)
        {
            // "scoot twice on R with L knee up"
            Close(Link.Soft);
            _current.IsWith = true;
            _current.Link = Link.Soft;
            _pending = Link.None;
        }

        if (_current.Head?.Verb is ActionKind.Recover && _current.Dir is null && _current.Feet.Count == 1 && _pending is Link.None
            && _current.Feet[0].Foot != foot)
        {
            // "recover left right coaster step": one foot recovers, the other begins the next move
            Close(Link.None);
        }

        if (at > 0 && _terms[at - 1] is { Kind: TermKind.Dir } beside && beside.Text.EndsWith(" it", StringComparison.OrdinalIgnoreCase)
            && _current.Feet.Count > 0 && _pending is Link.None && NextIndex(at + 1) >= 0)
        {
            // "touch left beside it left foot steps back": what it is put beside is told already
            Close(Link.None);
        }

        if (at > 0 && IsPassing(at - 1) && _current.HasContent)
        {
            // "scuff R past the left foot"
            _current.Reference ??= foot;
            Widen(term);
            return;
        }

        if ((_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase))
            && _current is { IsFigure: true, Feet.Count: 1 } or { IsFigure: true, Feet.Count: 0, TurnSide: not null, Amount: not null }
            && _current.Head!.Figures[0].Rows.Count > 2 && !_current.Feet.Exists(f => f.Foot == foot) && NextIndex(at + 1) is int ends and >= 0
            && _terms[ends].Kind is TermKind.Dir or TermKind.Move && NextIndex(ends + 1) < 0)
        {
            // "jazz box R with L cross": how it ends
            Close(Link.Soft);
            _current.IsWith = false;
            _current.SaysFinish = true;
            _pending = Link.None;
        }

        if ((_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase)) && _current is { IsFigure: true, Feet: [{ IsCertain: false }] }
            && _current.Head!.Figures.All(f => f.NamedBy is NamedBy.ActingFoot or NamedBy.Turn && f.Rows.Any(r => r.Action.Turn.Sign != 0))
            && _current.Feet[0].Foot != foot && NextIndex(at + 1) < 0)
        {
            // "paddle 1/4 left with R": the first side is the way round
            _current.TurnSide ??= _current.Feet[0].Foot;
            _current.Feet[0] = new FootWord(foot, true, false);
            _pending = Link.None;
            Widen(term);
            return;
        }

        if ((_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase))
            && _current is
            {
                HasVerb: true, IsFigure: false, Feet: [{ IsCertain: false }], Dir: null, Head.Verb: ActionKind.Step or ActionKind.Touch
            or ActionKind.Point
            }
            && _current.Feet[0].Foot == foot && NextIndex(at + 1) < 0 && !_current.FootFirst)
        {
            // "small step right with RF": the first is where it goes
            _current.Feet[0] = new FootWord(foot, true, false);
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = foot };
            _current.DirSide = foot;
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (_current is
            {
                HasVerb: true, IsFigure: false, FootFirst: false, Feet: [{ IsCertain: false } upon], Dir: null, Diagonal: false,
                Head.Verb: ActionKind.Sway or ActionKind.Rock or ActionKind.Lunge or ActionKind.Step or ActionKind.Bump
            }
            && upon.Foot == foot && (_pending is Link.None || _with) && NextIndex(at + 1) < 0 && SaysUpon(term, at))
        {
            // "sway right onto RF", "rock left onto your left foot": where it goes, and then the foot
            _current.Feet[0] = new FootWord(foot, true, false);
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = foot };
            _current.DirSide = foot;
            _pending = Link.None;
            Widen(term);
            return;
        }

        bool withOther = (_with || term.Text.StartsWith("with", StringComparison.OrdinalIgnoreCase)) && _current.Feet.Count == 1
            && _current.Feet[0].Foot != foot;
        if (withOther && _current.Feet[0].MayBeReference && _current is { Dir.Direction: Direction.Together, Reference: null }
            && SaysClosing(_current.DirText))
        {
            // "close right with left", "gather right with left": the first goes to the second
            _current.Reference = foot;
            _current.Feet[0] = _current.Feet[0] with { MayBeReference = false };
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (withOther && _current.Feet[0].MayBeReference)
        {
            // "step across the right with your left"
            _current.Reference = _current.Feet[0].Foot;
            _current.Feet[0] = new FootWord(foot, true, false);
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (withOther && _current.Dir is { Direction: Direction.Together })
        {
            // "close R together with L"
            _current.Reference = foot;
            _pending = Link.None;
            Widen(term);
            return;
        }

        if (certain && term.Text.Split(' ')[0].ToLowerInvariant() is "on" or "with" && _pending is Link.None && NextIndex(at + 1) < 0
            && _current is
            {
                Diagonal: true, DirSide: null, IsFigure: false, FootFirst: false, Dir.Direction: Direction.Forward or Direction.Back,
                Feet: [{ IsCertain: false } corner]
            })
        {
            // "step diagonally forward right on R": the corner, and then the foot
            _current.DirSide = corner.Foot;
            _current.Feet[0] = new FootWord(foot, true, false, term.Text.Length > 3);
            Widen(term);
            return;
        }

        bool sideAgain = !certain && _current.Feet.Count > 0 && _current.Feet[^1].Foot == foot
            && (_current.Diagonal || _current.Dir is { Direction: Direction.Forward or Direction.Back or Direction.Side })
            && _current.DirSide is null && NextIndex(at + 1) < 0 && _pending is Link.None && !_current.IsFigure;
        if (sideAgain)
        {
            // "step left diagonally forward left"
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        if (_current is { Head.Verb: ActionKind.Step, Feet.Count: 1, Dir: null, Reference: null } && _current.Feet[0].Foot != foot && _pending is Link.None
            && _current.HeadText.Split(' ')[0].ToLowerInvariant() is "join" or "joins" or "joining" or "rejoin" or "rejoins" or "rejoining"
                or "meet" or "meets" or "meeting")
        {
            // "R rejoins L"
            _current.Reference = foot;
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Together };
            Widen(term);
            return;
        }

        if (_current is { Head.Verb: ActionKind.Recover, Feet.Count: 1, Dir: null } && _current.Feet[0].Foot == foot && _pending is Link.None
            && at > 0 && _terms[at - 1].Meaning.Side == foot && NextIndex(at + 1) < 0)
        {
            // "recover R R": typed twice, nobody recovers on one foot twice
            Widen(term);
            return;
        }

        if (_pending is Link.None
            && _current is { Head.Verb: ActionKind.Kick or ActionKind.Flick or ActionKind.Hitch or ActionKind.Hook, Feet: [{ } lifted], Amount: null }
            && lifted.Foot == foot && NextIndex(at + 1) is int closes and >= 0
            && _terms[closes] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Together or Direction.Home or Direction.InPlace })
        {
            // "kick right right together": nobody kicks together
            Close(Link.None);
        }

        bool closed = _current is
        {
            Head.Verb: ActionKind.Step, Feet.Count: 0, Dir.Direction: Direction.Together
            or Direction.Home, Amount: null, Reference: null
        }
            || (_current is { IsFigure: true, Feet.Count: 0, Dir: null, Amount: null }
                && _current.Head!.Figures[0].Rows is [{ Action: { Kind: ActionKind.Step, Direction: Direction.Together } }]);
        if (closed && _pending is Link.None && at + 1 < _end && _terms[at + 1] is { Kind: TermKind.Part, Meaning.Part: "heel" or "toe" }
            or
            {
                Kind: TermKind.Move, Meaning:
                {
                    Verb: null or ActionKind.Dig, Figures: [
                    {
                        Rows: [
                            {
                                Action.Kind: ActionKind.Dig
                or ActionKind.Touch
                            }]
                    }, ..]
                }
            })
        {
            // "R heel fwd step together L heel fwd step together": the foot begins the next move
            Close(Link.None);
        }

        bool namedPlace = at > 0 && _terms[at - 1 - (_terms[at - 1].Kind == TermKind.Filler && at > 1 ? 1 : 0)] is { Kind: TermKind.Move } named
            && EndsInPlace(named.Text) && named.Meaning.Figures.All(f => f.Rows.Count < 3);
        if (namedPlace && _current.Feet.Count == 1 && _current.Feet[0].Foot != foot && _pending is Link.None && NextIndex(at + 1) < 0)
        {
            // "L foot touch next to R"
            _current.Reference = foot;
            Widen(term);
            return;
        }

        if (namedPlace && _current.Feet.Count == 0 && _pending is Link.None)
        {
            // "touch next to the left": the standing foot, where that has the weight
            _current.Feet.Add(new FootWord(foot, certain, true, term.Text.Length > 3));
            Widen(term);
            return;
        }

        bool endsOn = term.Text.StartsWith("onto", StringComparison.OrdinalIgnoreCase) && _current is { TurnSide: not null, WeightNote: null }
            && _pending is Link.None && NextIndex(at + 1) < 0
            && (IsTurnVerb(_current.Head) && _current.Head!.Verb is ActionKind.Pivot or ActionKind.Unwind
                || (_current.IsFigure && _current.Head!.Figures.Any(VariantParts.IsStepAndPivot)));
        if (endsOn)
        {
            // "pivot half left onto left"
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = foot;
            Widen(term);
            return;
        }

        if (term.Text.StartsWith("on", StringComparison.OrdinalIgnoreCase)
            && _current is { Dir.Direction: Direction.CrossFront, Reference: null, Feet: [{ } over] } && over.Foot != foot && _pending is Link.None
            && PreviousIndex(at - 1) is int crosser and >= 0 && _terms[crosser].Kind is TermKind.Side or TermKind.Foot)
        {
            // "cross right on left": over it
            _current.Reference = foot;
            Widen(term);
            return;
        }

        bool onOther = term.Text.StartsWith("on", StringComparison.OrdinalIgnoreCase)
            && _current is { Amount: not null, TurnSide: not null, Head.Verb: not null, Feet.Count: 1 } && _current.Feet[0].Foot != foot
            && _pending is Link.None && NextIndex(at + 1) < 0;
        if (onOther)
        {
            // "hitch R turning 1/4 left on L": the foot it turns on
            _current.Reference = foot;
            Widen(term);
            return;
        }

        bool afterPlace = _current.Dir
            is { Direction: Direction.CrossFront or Direction.CrossBehind or Direction.Together or Direction.LockBehind or Direction.LockFront }
            && PreviousIndex(at - 1) is int before and >= 0 && _terms[before].Kind is TermKind.Dir or TermKind.Part;
        if (afterPlace && _pending is not (Link.Soft or Link.Amp) && _current.Reference is null && _current.Feet.Count > 0
            && _current.Feet[^1].Foot != foot && !NextSuitsNewClause(at))
        {
            // "over left", "next to right": the standing foot
            _current.Reference = foot;
            Widen(term);
            return;
        }

        if (_current is { SaysIt: true, Feet.Count: 0, Reference: null, Dir: not null } && _pending is Link.None && PreviousIndex(at - 1) is int placed and >= 0
            && _terms[placed] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Together or Direction.CrossFront or Direction.CrossBehind }
            && (NextIndex(at + 1) < 0 || _terms[NextIndex(at + 1)].Kind is TermKind.WeightTakes or TermKind.WeightNone or TermKind.WeightOn))
        {
            // "then bring it back in next to your left foot": the standing foot
            _current.Reference = foot;
            Widen(term);
            return;
        }

        if (_current is { HasTurnWord: true, TurnSide: not null, Part: "ball", Feet.Count: > 0 } && _current.Feet[^1].Foot != foot
            && _pending is Link.None)
        {
            // "hitch R turning 1/2 left on the ball of the left"
            _current.Reference = foot;
            Widen(term);
            return;
        }

        bool toFoot = at > 0 && _terms[at - 1].Kind == TermKind.Filler
            && (_terms[at - 1].Text is "to" or "by" or "at" or "towards" || (certain && SaysTo(at - 1))
            || (_current.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Drag or ActionKind.Slide && SaysTo(at - 1)))
            && _current.Feet.Count > 0 && _current.Feet[^1].Foot != foot && _pending is not (Link.Soft or Link.Amp)
            && (_current.Dir is null or { Direction: Direction.Together or Direction.Up or Direction.In }
                || (_current.Head?.Verb is ActionKind.Drag or ActionKind.Slide && _current.Dir is { Direction: Direction.Back or Direction.Forward }
                    && NextIndex(at + 1) < 0));
        bool backToFoot = at > 1 && _terms[at - 1] is { Kind: TermKind.Filler }
            && _terms[at - 1].Text.Split(' ')[0].ToLowerInvariant() is "to" or "the" or "your" or "towards" or "toward"
            && _terms[PreviousIndex(at - 1) is int way and >= 0 ? way : at] is { Kind: TermKind.Dir, Meaning.Direction: Direction.Back }
            && SaysTo(at - 1) && _current is
            {
                Feet.Count: > 0, Dir.Direction: Direction.Back, Head: null or
                {
                    Verb: ActionKind.Step or ActionKind.Drag
                or ActionKind.Slide
                }
            }
                && _current.Feet[^1].Foot != foot && _pending is Link.None && NextIndex(at + 1) < 0;
        if (toFoot || backToFoot)
        {
            // "touch L to R", "drag LF to RF", "R back to the L"
            _current.Reference = foot;
            _current.Dir = backToFoot || _current.Dir is null ? new Meaning(TermKind.Dir) { Direction = Direction.Together } : _current.Dir;
            Widen(term);
            return;
        }

        bool turnsOn = _current.IsOnBall || term.Text.StartsWith("on", StringComparison.OrdinalIgnoreCase)
            || (certain && at > 0 && _terms[at - 1] is { Kind: TermKind.Filler } on && on.Text.ToLowerInvariant() is "on" or "on the" or "on your");
        if (_current.IsTurnOnly && _pending is Link.None && turnsOn
            && (_current.TurnSide is not null || _current.Amount is not null))
        {
            // "turn 1/4 left on L"
            _current.WeightNote = TermKind.WeightOn;
            _current.WeightFoot = foot;
            Widen(term);
            return;
        }

        if (_current is { Head.Verb: ActionKind.Hold or ActionKind.Clap or ActionKind.Snap, Feet.Count: 0, Dir: null } && !VerbFirst
            && _pending is Link.None && NextIndex(at + 1) >= 0)
        {
            // "clap right to the side"
            Close(Link.None);
        }

        bool partFollows = !VerbFirst && _current is { FootFirst: true, HasVerb: true, IsFigure: false, Feet.Count: 1, Dir: null, Part.Length: 0 }
            && _current.Feet[0].Foot == foot && _pending is Link.None && at + 1 < _end && _terms[at + 1].Kind is TermKind.Part
            && !_current.HeadText.Contains(' ', StringComparison.Ordinal);
        if (partFollows)
        {
            // "left hitch left heel"
            Close(Link.None);
        }

        bool sideOfFoot = !certain && _current is { Feet.Count: 1, Dir: null, Reference: null } && (_current.Feet[0].IsCertain || _current.FootFirst)
            && _current.Feet[0].Foot == foot && _current.Head?.Verb is not null && !_current.IsFigure && _pending is Link.None;
        if (sideOfFoot && !VerbFirst && NextIndex(at + 1) is int coming and >= 0
            && (_terms[coming].Kind is TermKind.Move
            || (_terms[coming].Kind is TermKind.Dir && _current.Head!.Verb is ActionKind.Touch or ActionKind.Tap
            && _terms[coming].Meaning.Direction is Direction.CrossFront or Direction.CrossBehind or Direction.Together)
            || (_terms[coming].Kind is TermKind.Dir && _current.Head!.Verb is ActionKind.Hitch or ActionKind.Scuff or ActionKind.Brush
            or ActionKind.Stomp or ActionKind.Hook or ActionKind.Flick or ActionKind.Kick
            && !(_current.Head.Verb is ActionKind.Kick && _terms[coming].Meaning.Direction is Direction.Side))
            || (_terms[coming].Kind is TermKind.Part && !_current.HeadText.Contains(' ', StringComparison.Ordinal))))
        {
            // "left kick left scuff", "right brush right heel": the foot begins the next move
            Close(Link.None);
            sideOfFoot = false;
        }

        // "RF right", "R right": the foot, and where it goes
        sideOfFoot |= !certain && _current is
        {
            Feet: [{ } bare], Head: null, Dir: null, Reference: null, Part.Length: 0, Amount: null, HasTurnWord: false,
            BothFeet: false, IsRepeat: false
        } && bare.Foot == foot && _pending is Link.None && NextIndex(at + 1) < 0
            && (bare.IsCertain || !string.Equals(_terms[at - 1].Text, term.Text, StringComparison.OrdinalIgnoreCase)) && at > 0
            && _terms[at - 1].Kind is TermKind.Foot or TermKind.Side;
        sideOfFoot |= !certain && _current is { Feet: [{ IsCertain: true }], FootFirst: true, Head: null, Dir: null, Reference: null, Part: "toe" or "heel" }
            && _current.Feet[0].Foot == foot && _pending is Link.None && NextIndex(at + 1) < 0;
        if (sideOfFoot)
        {
            // "RF step right": the foot is named already, so this is where it goes
            _current.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Side, Side = foot };
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        bool diagonalWay = !certain && _current is { Diagonal: true, DirSide: null, Feet.Count: 1, Head.Verb: not null }
            && _current.Feet[0].Foot != foot
            && _pending is Link.None && NextIndex(at + 1) < 0 && at > 0 && _terms[at - 1].Kind is TermKind.Dir;
        if (diagonalWay)
        {
            // "kick right diagonally forward left"
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        if (_current.Diagonal && at > 0 && _terms[at - 1].Meaning.Special == "diag" && _current.DirSide is null && _current.Feet.Count > 0)
        {
            _current.DirSide = foot;
            Widen(term);
            return;
        }

        StartIfPending(certain ? TermKind.Foot : TermKind.Side, at);
        if (certain && _pending is Link.None && NextIndex(at + 1) is int runsOn and >= 0 && EndsBeforeFoot(foot)
            && (_terms[runsOn].Kind is TermKind.Dir or TermKind.Part || (_terms[runsOn].Kind is TermKind.Move && !VerbFirst)))
        {
            // "pivot half left right foot steps forward", "weight on L R foot steps forward", "touch left left foot steps to side"
            Close(Link.None);
        }

        if (_current is { Head.Verb: ActionKind.Pivot or ActionKind.Unwind, TurnSide: not null, Feet.Count: 0, Amount: not null }
            && _pending is Link.None && NextIndex(at + 1) is int begun and >= 0
            && (_terms[begun].Kind is TermKind.Dir or TermKind.Part || (_terms[begun].Kind is TermKind.Move && !VerbFirst)))
        {
            // "1/2 pivot left right mambo forward"
            Close(Link.None);
        }

        if (_current.Feet.Count > 0 && (_current.Dir is not null || _current.Part.Length > 0 || _current.Amount is not null) && !IsListContinued(at)
            && !(_current.IsFigure && _current.Feet[^1].Foot != foot && AllFeetUpTo(at)))
        {
            Close(Link.None);
        }
        else if (_current is { IsFigure: true, Feet.Count: > 0 } && !VerbFirst && NextIndex(at + 1) is int move and >= 0
            && (_terms[move].Kind is TermKind.Move
            || (_terms[move].Kind is TermKind.Dir or TermKind.Part && _current is { FootFirst: true, Feet.Count: 1 }))
            && (_current.Feet[^1].Foot != foot || (_current is { FootFirst: true, Feet.Count: 1 } && _pending is Link.None)))
        {
            // "right heel strut left heel strut"
            Close(Link.None);
        }
        else if (_current.Feet.Count > 0 && _current.HasVerb && !_current.IsFigure && NextIndex(at + 1) is int following and >= 0
            && (_terms[following].Kind is TermKind.Dir or TermKind.Part || (_terms[following].Kind is TermKind.Move && !VerbFirst))
            && _current.Feet[^1].Foot != foot)
        {
            // "step right left behind": the second foot begins its own move when something follows it
            Close(Link.None);
        }

        bool reference = mayBeReference || (afterPlace && _current.Feet.Count == 0);
        _current.FootFirst |= _current.Head is null;
        _current.Feet.Add(new FootWord(foot, certain, reference && afterPlace, term.Text.Length > 3));
        Widen(term);
    }

    /// <summary>Whether a clause is told so far that a foot, and what it does, can only begin the next one.</summary>
    private bool EndsBeforeFoot(Foot foot) => _current is { TurnSide: not null, Feet.Count: 0, Head: { NamesAmount: true } named } && IsTurnVerb(named)
        || _current is { IsTurnOnly: true, Amount: not null, WeightNote: TermKind.WeightOn }
        || (_current is { Dir.Direction: Direction.Together, Feet.Count: 1, Reference: null }
            && _current.DirText.StartsWith("tog", StringComparison.OrdinalIgnoreCase))
        || (_current is { HasVerb: true, IsFigure: false, FootFirst: false, Feet: [{ } last], Dir: null, Amount: null, Part.Length: 0 } && last.Foot == foot);

    // a foot that is drawn to the other: "close", "gather", "collect", "reunite"
    private static bool SaysClosing(string word) => word.StartsWith("clos", StringComparison.OrdinalIgnoreCase)
        || word.StartsWith("gather", StringComparison.OrdinalIgnoreCase) || word.StartsWith("collect", StringComparison.OrdinalIgnoreCase)
        || word.StartsWith("unite", StringComparison.OrdinalIgnoreCase) || word.StartsWith("reunite", StringComparison.OrdinalIgnoreCase)
        || word.StartsWith("attach", StringComparison.OrdinalIgnoreCase);

    /// <summary>Whether a foot is said to be what the weight goes onto: "onto RF", "onto the right foot", and for a sway "on RF".</summary>
    private bool SaysUpon(Term foot, int at) => (_current.Head?.Verb is ActionKind.Sway or ActionKind.Lunge
            && (foot.Text.StartsWith("on ", StringComparison.OrdinalIgnoreCase)
            || (at > 0 && _terms[at - 1].Text.Equals("on", StringComparison.OrdinalIgnoreCase))))
        || foot.Text.StartsWith("onto", StringComparison.OrdinalIgnoreCase)
        || foot.Text.StartsWith("on to", StringComparison.OrdinalIgnoreCase) || SaysOnto(at - 1);

    private bool SaysTo(int at)
    {
        for (int i = at; i >= 0 && _terms[i].Kind is TermKind.Filler; i--)
        {
            if (_terms[i].Text.Split(' ').Any(w => w.ToLowerInvariant() is "to" or "by" or "towards" or "toward" or "twd" or "twds" or "twrd" or "twrds"))
            {
                return true;
            }
        }

        return false;
    }

    private static bool EndsInPlace(string name) => name.EndsWith(" next to", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(" beside", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(" across", StringComparison.OrdinalIgnoreCase) || name.EndsWith(" over", StringComparison.OrdinalIgnoreCase)
            || name.EndsWith(" behind", StringComparison.OrdinalIgnoreCase)
        || name.EndsWith(" in front of", StringComparison.OrdinalIgnoreCase);

    private bool IsPassing(int at)
    {
        while (at > 0 && _terms[at].Kind == TermKind.Filler && _terms[at].Text.ToLowerInvariant() is "the" or "your")
        {
            at--;
        }

        return _terms[at].Kind == TermKind.Filler && _terms[at].Text.ToLowerInvariant() is "past" or "past the" or "past your" or "passing"
            or "along" or "along the";
    }

    private bool AllFeetUpTo(int at)
    {
        int next = NextIndex(at + 1);
        return next < 0 || _terms[next].Kind is TermKind.Side or TermKind.Foot || (_terms[next].Kind is TermKind.Move && VerbFirst);
    }

    private bool NextSuitsNewClause(int at)
    {
        // "cross R over L side R": L is the standing foot; "cross R over, L side": a comma stands there.
        // "step R together L side": L begins the next move when a direction follows and no other foot comes before it
        int next = NextIndex(at + 1);
        bool verbLast = _terms[at].Kind is TermKind.Foot && _current.Dir is { Direction: Direction.CrossBehind } && next >= 0
            && _terms[next] is { Kind: TermKind.Dir, Meaning.Direction: Direction.CrossFront }
            && _terms[next].Text.StartsWith("cross", StringComparison.OrdinalIgnoreCase) && NextIndex(next + 1) < 0;
        if (_current.Head is null && !verbLast && next >= 0 && _terms[next].Kind is TermKind.Dir
            && _terms[next].Meaning.Direction is not Direction.Together)
        {
            return true;
        }

        return _current.Dir is { Direction: Direction.Together }
            && _terms[PreviousIndex(at - 1)].Text.StartsWith("tog", StringComparison.OrdinalIgnoreCase)
            && next >= 0 && (_terms[next].Kind is TermKind.Dir || (_terms[next].Kind is TermKind.Move && !VerbFirst));
    }

    private bool IsListContinued(int at)
    {
        // feet listed one after the other: "walk forward R L R"
        int before = PreviousIndex(at - 1);
        return before >= 0 && _terms[before].Kind is TermKind.Side or TermKind.Foot && AllFeetUpTo(at)
            && !(_current.Part.Length > 0 && _current.Head is null);
    }
}
