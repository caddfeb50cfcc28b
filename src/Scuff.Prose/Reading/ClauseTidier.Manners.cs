using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

// What goes with a move: how a foot is put down, what the body does meanwhile, how a figure ends and which of its steps turns.
internal sealed partial class ClauseTidier
{
    /// <summary>"Close R to L with a touch", "L joins it with a stamp", "step R forward with a stomp": how the foot is put there.</summary>
    private void JoinManners()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            Clause manner = _clauses[i];
            Clause put = _clauses[i - 1];
            bool gesture = manner.Head?.Verb is ActionKind.Touch or ActionKind.Tap or ActionKind.Stomp && manner is
            {
                IsWith: true, Feet.Count: 0, Dir: null, Amount: null, HasTurnWord: false, Part.Length: 0, Times: 1, TimesStated: false, Detail.Count: 0,
                BothFeet: false, WeightNote: null or TermKind.WeightTakes or TermKind.WeightNone
            };
            bool closes = put.Dir?.Direction is Direction.Together or Direction.In or Direction.Home
                || (put.Head is { Verb: ActionKind.Step } && put.HeadText.StartsWith("join", StringComparison.OrdinalIgnoreCase));
            bool placed = put is
            {
                Head: null or { Verb: ActionKind.Step }, Feet.Count: 1, Amount: null, HasTurnWord: false, Times: 1, Detail.Count: 0,
                WeightNote: null, IsAmp: false
            }
                && (closes || (manner.Head?.Verb is ActionKind.Stomp && put.Dir is not null && put.Head is not { Special: "walk" or "run" }));
            if (!gesture || !placed)
            {
                continue;
            }

            put.Head = manner.Head;
            put.HeadText = manner.HeadText;
            put.Dir ??= new Meaning(TermKind.Dir) { Direction = Direction.Together };
            put.WeightNote = manner.WeightNote;
            put.LinkAfter = manner.LinkAfter;
            put.Cover(manner.Span);
            _clauses.RemoveAt(i);
        }
    }

    /// <summary>"1/2 turn right with triple: 1/4 right and R to side, L to R, 1/4 right and R forward": the turn in front is the sum of those told.</summary>
    private void TurnOverDetail()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i - 1] is not { IsTurnOnly: true, Amount: int whole, SaysEach: false, Times: 1 } turn
                || _clauses[i] is not { IsFigure: true, Amount: null, Detail.Count: > 1 } figure)
            {
                continue;
            }

            int sum = 0;
            foreach (Clause told in figure.Detail)
            {
                sum += told.Amount ?? 0;
            }

            if (sum == whole && figure.Detail.TrueForAll(d => d.Amount is null || d.TurnSide is null || turn.TurnSide is null || d.TurnSide == turn.TurnSide))
            {
                figure.Amount = whole;
                figure.TurnSide = turn.TurnSide;
                figure.Cover(turn.Span);
                figure.Link = turn.Link;
                figure.IsWith = turn.IsWith;
                _clauses.RemoveAt(i - 1);
                i--;
            }
        }
    }

    /// <summary>"Step L to left and sway", "step R to side with a sway": over the foot that was put down, where no other sway follows.</summary>
    private void SwayOverStep()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            bool bare = _clauses[i] is
            {
                Head: { Verb: ActionKind.Sway } or { Verb: null, Figures: [{ Id: "sway_one" }, ..] }, Feet.Count: 0, Dir: null, DirSide: null, Amount: null,
                HasTurnWord: false, Times: 1, TimesStated: false, BothFeet: false, IsAmp: false, Detail.Count: 0, Lasts: null, Unknown.Count: 0
            } sway && (sway.Link is Link.Soft || sway.IsWith || sway.Head!.IsIng);
            bool aside = _clauses[i - 1] is
            {
                Head: null or { Verb: ActionKind.Step }, Feet.Count: 1, Dir.Direction: Direction.Side or Direction.Out,
                Times: 1
            };
            bool others = i + 1 < _clauses.Count && _clauses[i + 1].Head is { Verb: ActionKind.Sway } or { Figures: [{ Id: "sway_one" or "sway" }, ..] };
            if (!bare || !aside || others)
            {
                continue;
            }

            _clauses[i].Feet.Add(_clauses[i - 1].Feet[0]);
            _clauses[i].MayLast = true;
        }
    }

    /// <summary>
    /// "Rock L fwd recover L back touch R": a recover cannot be on the foot that has rocked, so that the foot and its place begin a step of their own.
    /// </summary>
    private void RecoverThenStep()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is not { Head.Verb: ActionKind.Recover, Feet: [{ } stepped], Amount: null, Detail.Count: 0, WeightNote: null } recover
                || _clauses[i - 1] is not { Feet: [{ } rocked] } rock || rocked.Foot != stepped.Foot
                || rock.Head is not ({ Verb: ActionKind.Rock }
                    or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.Rock }, ..] and { Count: < 3 } }, ..] }))
            {
                continue;
            }

            if (recover.Dir is null && recover.HeadText.Split(' ') is [_, { Length: < 6 }, "back" or "BACK" or "Back"]
                && !recover.HeadText.Contains("weight", StringComparison.OrdinalIgnoreCase))
            {
                // "recover R back"
                recover.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Back };
                recover.DirText = "back";
            }

            if (recover.Dir is null)
            {
                continue;
            }

            Clause step = new()
            {
                Dir = recover.Dir,
                DirText = recover.DirText,
                DirSide = recover.DirSide,
                Diagonal = recover.Diagonal,
                Reference = recover.Reference
            };
            step.Feet.Add(stepped);
            step.Cover(recover.Span);
            step.Link = Link.None;
            step.LinkAfter = recover.LinkAfter;
            recover.Feet.Clear();
            (recover.Dir, recover.DirText, recover.DirSide, recover.Diagonal, recover.Reference) = (null, "", null, false, null);
            recover.LinkAfter = Link.None;
            _clauses.Insert(i + 1, step);
        }
    }

    /// <summary>"Stomp R and then stomp L, and both stomps take weight": a note on moves that are told already.</summary>
    private void NoteOnBoth()
    {
        if (_clauses.Count < 2 || _clauses[^1] is not
            {
                BothFeet: true, Head.Verb: ActionKind verb, Feet.Count: 0, Dir: null, Amount: null, Part.Length: 0, Detail.Count: 0,
                WeightNote: TermKind.WeightTakes or TermKind.WeightNone
            } note
            || !note.HeadText.EndsWith("s", StringComparison.OrdinalIgnoreCase))
        {
            return;
        }

        List<Clause> meant = _clauses.FindAll(c => c.Head?.Verb == verb && !ReferenceEquals(c, note) && c.WeightNote is null);
        if (meant.Count == 2 || (meant.Count == 1 && (meant[0].Times == 2 || meant[0].Feet.Count == 2)))
        {
            meant.ForEach(c => c.WeightNote = note.WeightNote);
            _clauses[^2].Cover(note.Span);
            _clauses[^2].LinkAfter = note.LinkAfter;
            _clauses.RemoveAt(_clauses.Count - 1);
        }
    }

    /// <summary>"Kick L, throwing both hands up as you kick", "kick R forward two times, low kicks": the move before, spoken of once more.</summary>
    private void DropSaidAgain()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            Clause said = _clauses[i];
            if (said is not
                {
                    Head.Verb: ActionKind verb, Feet.Count: 0, Dir: null, Amount: null, Part.Length: 0, Times: 1, TimesStated: false,
                    Detail.Count: 0, WeightNote: null, Unknown.Count: 0, IsAmp: false, BothFeet: false, Lasts: null
                } || verb is ActionKind.Hold)
            {
                continue;
            }

            // what goes between is a remark on arms, or stands beside the move
            int before = i - 1;
            while (before > 0 && (_clauses[before].Head?.Verb is ActionKind.Clap or ActionKind.Snap
                || _clauses[before].Head is { Figures: [{ Rows: [{ Action.Kind: ActionKind.Arms }] }, ..] }))
            {
                before--;
            }

            bool sameMove = _clauses[before].Head?.Verb == verb;
            bool asYouDo = said.IsWith && said.SaysAsYou && sameMove;
            bool severalOfThem = said.Link is Link.Hard && sameMove && before == i - 1 && (said.HasStyle || said.Size != 0)
                && said.HeadText.EndsWith("s", StringComparison.OrdinalIgnoreCase) && !said.HeadText.EndsWith("ss", StringComparison.Ordinal)
                && (_clauses[before].Times > 1 || _clauses[before].Feet.Count > 1);
            if (asYouDo || severalOfThem)
            {
                _clauses[before].Size = _clauses[before].Size == 0 ? said.Size : _clauses[before].Size;
                _clauses[before].HasStyle = true;
                _clauses[i - 1].LinkAfter = said.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Spin a full turn right on the right with left hooked": how the free foot is held in a turn.</summary>
    private void JoinHeld()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is
                {
                    IsWith: true, Head.Verb: ActionKind.Hook or ActionKind.Hitch or ActionKind.Flick, Feet.Count: 1, Amount: null, Detail.Count: 0,
                    Times: 1
                } held
                && held.HeadText.Split(' ')[0].EndsWith("ed", StringComparison.OrdinalIgnoreCase)
                && _clauses[i - 1] is { WeightNote: TermKind.WeightOn, Amount: not null } turn && (turn.IsTurnOnly || ClauseBuilder.IsTurnVerb(turn.Head))
                && turn.WeightFoot == held.Feet[0].Foot.Other())
            {
                turn.Held = held.Head!.Verb;
                turn.Reference = held.Feet[0].Foot;
                turn.Cover(held.Span);
                turn.LinkAfter = held.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Roll your shoulders as you step R to side": the step, and what the body does meanwhile.</summary>
    private void BodyAsYouStep()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            Clause body = _clauses[i - 1];
            Clause step = _clauses[i];
            if (SwaysOnStep(body, step))
            {
                // "sway to the right as you step your right foot out to the side": one action, told in two ways
                if (step.Feet.Count > 0)
                {
                    body.Feet.Clear();
                    body.Feet.Add(step.Feet[0]);
                }

                body.Cover(step.Span);
                body.LinkAfter = step.LinkAfter;
                body.Unknown.AddRange(step.Unknown);
                _clauses.RemoveAt(i);
                i--;
                continue;
            }

            bool bumps = body is { Head.Verb: ActionKind.Bump, Feet: [] or [{ IsCertain: false }] };
            bool ofBody = body is { Link: Link.Hard or Link.None, Amount: null, Times: 1, Detail.Count: 0, IsAmp: false, IsWith: false }
                && (bumps || body.Feet.Count == 0) && body.Head is
                {
                    Verb: ActionKind.RollBody or ActionKind.Shimmy or ActionKind.PopShoulder or ActionKind.RollHips or ActionKind.Dip
                    or ActionKind.Clap or ActionKind.Snap or ActionKind.Bump
                };
            if (ofBody && step is { SaysAsYou: true, Head: null or { Verb: ActionKind.Step or ActionKind.Rock }, Feet.Count: 1, Times: 1 })
            {
                (step.Link, step.IsWith, step.SaysAsYou) = (body.Link, false, false);
                body.LinkAfter = step.LinkAfter;
                step.LinkAfter = Link.Soft;
                (body.Link, body.IsWith) = (Link.Soft, true);
                (_clauses[i - 1], _clauses[i]) = (step, body);
            }
        }
    }

    /// <summary>Whether a sway goes with the step aside that is told behind it, on the foot of that side.</summary>
    private static bool SwaysOnStep(Clause sway, Clause step)
    {
        bool stepsAside = step is
        {
            Head: null or { Verb: ActionKind.Step }, Feet.Count: < 2, Amount: null, HasTurnWord: false, Times: 1, TimesStated: false,
            Detail.Count: 0, WeightNote: null or TermKind.WeightTakes, Dir.Direction: Direction.Side or Direction.Out
        }
            && GoesAlong(step);
        Foot? stepped = step.Feet is [{ } named] ? named.Foot : step.DirSide;
        return stepsAside && stepped is not null && sway is
        {
            Head: { Verb: ActionKind.Sway } or { Verb: null, Figures: [{ Id: "sway_one" }, ..] }, Feet.Count: < 2, Amount: null, HasTurnWord: false, Times: 1,
            TimesStated: false, Detail.Count: 0, WeightNote: null, BothFeet: false
        }
            && (sway.DirSide ?? (sway.Feet is [{ } foot] ? foot.Foot : stepped)) == stepped;
    }

    /// <summary>Whether a step is told as going along with what stands before it: "as you step", "stepping".</summary>
    private static bool GoesAlong(Clause step) => (step.IsWith && step.SaysAsYou) || (step.Link is Link.None or Link.Soft && step.Head is { IsIng: true });

    /// <summary>"Jazz box 1/4 right with scuff": how a figure of four ends.</summary>
    private void EndWith()
    {
        for (int i = 1; i < _clauses.Count; i++)
        {
            if (_clauses[i] is
                {
                    IsWith: true, Feet.Count: 0, Dir: null, Amount: null, Times: 1, TimesStated: false, Detail.Count: 0, Part.Length: 0,
                    Head.Verb: ActionKind.Touch or ActionKind.Scuff or ActionKind.Brush
                } end
                && _clauses[i - 1] is { IsFigure: true, Times: 1, Detail.Count: 0 } figure
                && figure.Head!.Figures[0].Rows is [_, _, _, { Action: { Kind: ActionKind.Step, Effect: WeightEffect.Takes } }])
            {
                end.SaysFinish = true;
            }
        }
    }

    /// <summary>"Sway R, sway L, and finish on L": where the weight ends that is there already, and no sway more.</summary>
    private void EndOn()
    {
        for (int i = _clauses.Count - 1; i > 0; i--)
        {
            if (_clauses[i] is { SaysFinish: true, IsFeetOnly: true, Feet.Count: 1, Times: 1, Detail.Count: 0, Reference: null, WeightNote: null } end
                && _clauses[i - 1] is { IsFigure: false, IsRepeat: false, IsAmp: false, Detail.Count: 0, Times: 1, WeightNote: null, Feet.Count: > 0 } before
                && before.Feet[^1].Foot == end.Feet[0].Foot
                && before.Head?.Verb is ActionKind.Sway or ActionKind.Bump or ActionKind.Step or ActionKind.Stomp or ActionKind.Recover)
            {
                before.WeightNote = TermKind.WeightOn;
                before.WeightFoot = end.Feet[0].Foot;
                before.Unknown.AddRange(end.Unknown);
                before.Cover(end.Span);
                before.LinkAfter = end.LinkAfter;
                _clauses.RemoveAt(i);
            }
        }
    }

    /// <summary>"Fan right toe: open to the right, come back to the centre": a title, and the ways of the toe.</summary>
    private void WaysOfFan()
    {
        for (int i = 0; i + 2 < _clauses.Count; i++)
        {
            // "split the heels, out and in": what the title says is done in these two
            if (_clauses[i] is { Head.Verb: ActionKind.SplitHeels or ActionKind.SplitToes, Feet.Count: 0, Dir: null, Amount: null, Times: 1, Detail.Count: 0 } splits
                && IsBare(_clauses[i + 1], Direction.Out) && IsBare(_clauses[i + 2], Direction.In))
            {
                splits.Dir = _clauses[i + 1].Dir;
                splits.DirText = _clauses[i + 1].DirText;
                splits.Cover(_clauses[i + 1].Span);
                splits.LinkAfter = _clauses[i + 1].LinkAfter;
                _clauses.RemoveAt(i + 1);
            }
        }

        static bool IsBare(Clause clause, Direction way) => clause is { Head: null, Feet.Count: 0, Part.Length: 0, Amount: null, WeightNote: null, IsAmp: false }
            && clause.Dir?.Direction == way;

        for (int i = 0; i + 2 < _clauses.Count; i++)
        {
            Clause title = _clauses[i];
            if (title is not { Feet: [{ } fanning], Dir: null, DirSide: null, Amount: null, Times: 1, Detail.Count: 0, BothFeet: false, WeightNote: null }
                || title.Head is not ({ Verb: ActionKind.FanToe or ActionKind.FanHeel }
                    or { Verb: null, Figures: [{ Rows: [{ Action.Kind: ActionKind.FanToe or ActionKind.FanHeel }, ..] }, ..] })
                || _clauses[i + 1] is not { Head: null, Feet.Count: 0, DirSide: not null } opens || _clauses[i + 2] is not { Feet.Count: 0 } comes
                || ClauseBuilder.FanWay(opens, fanning.Foot) is not Direction.Out || ClauseBuilder.FanWay(comes, fanning.Foot) is not Direction.In
                || (comes.Head is null && comes.Dir?.Direction is not (Direction.Home or Direction.Centre)))
            {
                continue;
            }

            ActionKind fan = title.Part is "heel" || title.HeadText.Contains("heel", StringComparison.OrdinalIgnoreCase) ? ActionKind.FanHeel
                : title.Head.Verb ?? title.Head.Figures[0].Rows[0].Action.Kind;
            ClauseBuilder.Fan(opens, fan, fanning);
            ClauseBuilder.Fan(comes, fan, fanning);
            opens.Cover(title.Span);
            opens.Link = title.Link;
            opens.IsWith = title.IsWith;
            _clauses.RemoveAt(i);
        }
    }

    /// <summary>"R toe goes out to the side, R next to L": a toe or a heel that goes touches, and takes no weight.</summary>
    private void PartGoes()
    {
        foreach (Clause clause in _clauses)
        {
            if (clause is { Head.Verb: ActionKind.Step, Part: "toe" or "heel", Feet.Count: 1, Dir: not null, Amount: null, WeightNote: null, SaysBall: false }
                && clause.HeadText.ToLowerInvariant() is "goes" or "go" or "goes out" or "going")
            {
                clause.Head = null;
                clause.HeadText = "";
            }
        }
    }

    /// <summary>"Monterey 1/4 R: point R out, pull R in with 1/4 right": what is pulled in where the figure has a step takes the weight.</summary>
    private void PullsIn()
    {
        foreach (Clause figure in _clauses)
        {
            if (figure is not { IsFigure: true, Detail.Count: > 2 } || figure.Head!.Figures[0].Rows is not { Count: > 2 } rows)
            {
                continue;
            }

            List<Clause> told = figure.Detail.FindAll(d => d is { HasContent: true, IsAmp: false, IsTurnOnly: false });
            if (told.Count != rows.Count)
            {
                continue;
            }

            for (int i = 0; i < rows.Count; i++)
            {
                if (told[i] is { Head.Verb: ActionKind.Drag or ActionKind.Slide, WeightNote: null, Feet.Count: 1 } pull
                    && pull.Dir?.Direction is null or Direction.In or Direction.Together
                    && rows[i].Action is { Kind: ActionKind.Step, Direction: Direction.Together })
                {
                    pull.Head = new Meaning(TermKind.Move) { Verb = ActionKind.Step, Special = "step" };
                    pull.HeadText = "step";
                    pull.Dir = new Meaning(TermKind.Dir) { Direction = Direction.Together };
                }
            }
        }
    }

    /// <summary>"Jazz box R, and make a quarter turn right as you step back on the left": which step of the figure turns.</summary>
    private void TurnAsYouStep()
    {
        for (int i = _clauses.Count - 1; i > 1; i--)
        {
            if (TellsTurnedStep(_clauses[i - 2], _clauses[i - 1], _clauses[i]))
            {
                // "vine left, turning 1/4 left on the third count as you step forward on the left": what that step of the figure is called once it turns
                _clauses[i - 1].Cover(_clauses[i].Span);
                _clauses[i - 1].LinkAfter = _clauses[i].LinkAfter;
                _clauses.RemoveAt(i);
                continue;
            }

            if (_clauses[i] is
                {
                    SaysAsYou: true, Head: null or { Verb: ActionKind.Step }, Feet.Count: < 2, Dir: { } way, Amount: null, Detail.Count: 0, Times: 1
                } step
                && _clauses[i - 1] is { IsTurnOnly: true, Amount: not null, TurnSide: not null, TurnTo: null, SaysEach: false } turn
                && _clauses[i - 2] is { IsFigure: true, Amount: null, HasTurnWord: false, Detail.Count: 0, Times: 1 } figure
                && figure.Head!.Figures[0].Rows.Count(r => FigureComparison.Family(r.Action.Direction) == FigureComparison.Family(way.Direction)) == 1
                && figure.Head.Figures[0].Rows.Count > 2)
            {
                figure.Amount = turn.Amount;
                figure.TurnSide = turn.TurnSide;
                figure.HasTurnWord = true;
                figure.OnWay = way.Direction;
                figure.Cover(step.Span);
                figure.LinkAfter = step.LinkAfter;
                _clauses.RemoveRange(i - 1, 2);
                i--;
            }
        }
    }

    /// <summary>Whether a step is the one of the figure that a turn behind the figure is said to fall on, by its number, and told once more.</summary>
    private static bool TellsTurnedStep(Clause figure, Clause turn, Clause step)
    {
        if (step is not
            {
                Head: null or { Verb: ActionKind.Step }, Feet.Count: < 2, Amount: null, HasTurnWord: false, Detail.Count: 0, Times: 1,
                WeightNote: null or TermKind.WeightTakes
            }
            || !GoesAlong(step) || step.Dir?.Direction is not (null or Direction.Forward or Direction.Side)
            || turn is not { IsTurnOnly: true, Amount: not null, TurnSide: not null, TurnTo: null, SaysEach: false }
            || (turn.OnStep is null && turn.OnCount is null) || figure is not { IsFigure: true, Amount: null, HasTurnWord: false, Detail.Count: 0, Times: 1 })
        {
            return false;
        }

        ValueList<PatternRow> rows = figure.Head!.Figures[0].Rows;
        if (rows.Count < 3)
        {
            return false;
        }

        if (step.Feet is not [{ } stepped] || (figure.DirSide ?? (figure.Feet is [{ } only] ? only.Foot : null)) is not Foot lead)
        {
            return true;
        }

        return turn.OnStep is not int told ? rows.Any(r => r.For(lead).Foot.ToFoot() == stepped.Foot)
            : told > 0 && told <= rows.Count && rows[told - 1].For(lead).Foot.ToFoot() == stepped.Foot;
    }

    /// <summary>"Pivot 1/2 right on ball of L &amp; step R beside L": the turn is made on the foot that stands, as the other one closes.</summary>
    private void TurnAndClose()
    {
        for (int i = 0; i + 1 < _clauses.Count; i++)
        {
            int next = _clauses[i + 1].IsAmp && i + 2 < _clauses.Count ? i + 2 : i + 1;
            if (_clauses[i] is
                {
                    Head: { Verb: ActionKind.Pivot, Figures.Count: < 2 }, Amount: not null, TurnSide: not null, Feet: [{ } stood], Part: "ball",
                    WeightNote: null,
                    Times: 1, Detail.Count: 0
                } turn
                && _clauses[next] is { Head: null or { Verb: ActionKind.Step }, Dir.Direction: Direction.Together, Feet: [{ } closed], Amount: null } close
                && (next > i + 1 || close.Link is Link.Soft) && closed.Foot == stood.Foot.Other())
            {
                turn.Head = null;
                turn.HasTurnWord = true;
                turn.Part = "";
                turn.Feet.Clear();
                turn.WeightNote = TermKind.WeightOn;
                turn.WeightFoot = stood.Foot;
            }
        }
    }
}
