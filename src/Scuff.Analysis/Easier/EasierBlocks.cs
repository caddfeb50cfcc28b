using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>What may be danced instead, from the catalogue: figures up to a level on both feet, and plain actions.</summary>
internal static class EasierBlocks
{
    // Points of the search (design values): a row of few words is better than one of many, a plain step better than a figure to be taught.
    private const int OfFigure = 3;
    private const int OfAction = 2;
    private const int OfHold = 3;
    private const int OfShared = 3;
    private const int OfEighth = 3;

    // a half turn on a figure that has none of its own is no help to anybody
    private const int MostStated = 2;

    private static readonly Foot[] BothFeet = [Foot.Right, Foot.Left];
    private static readonly Direction[] Ways = [Direction.Forward, Direction.Back, Direction.Side, Direction.Together, Direction.InPlace];

    private static readonly Lazy<ValueList<EasierBlock>>[] ByLevel =
        [.. Enum.GetValues<Level>().Select(level => new Lazy<ValueList<EasierBlock>>(() => Make(level).ToValueList()))];

    /// <summary>Everything up to a level, in the order of the catalogue.</summary>
    public static ValueList<EasierBlock> UpTo(Level level) => ByLevel[(int)level].Value;

    private static IEnumerable<EasierBlock> Make(Level level)
    {
        foreach (EasierBlock plain in Plain())
        {
            yield return plain;
        }

        foreach (StepDefinition definition in StepCatalogue.Default.Definitions)
        {
            if (definition.Rows.Count < 2 || LevelPhrases.Find(definition.Level) is not { } met || met > level || !IsPlain(definition)
                || IsOneActionTwice(definition))
            {
                continue;
            }

            foreach (Foot named in BothFeet)
            {
                foreach (int? turn in TurnsOf(definition))
                {
                    if (Of(definition, named, turn, OfFigure + (3 * (int)met / 2)) is { } block)
                    {
                        yield return block;
                        if (WithoutFinish(block) is { } shorter)
                        {
                            yield return shorter;
                        }
                    }
                }
            }
        }
    }

    /// <summary>Single actions on one count: what everybody knows after the first evening.</summary>
    private static IEnumerable<EasierBlock> Plain()
    {
        StepDefinition step = Entry("step");
        foreach (Foot foot in BothFeet)
        {
            foreach (Direction way in Ways)
            {
                int turns = way == Direction.InPlace ? 1 : 3;
                for (int turn = 0; turn < turns; turn++)
                {
                    yield return Action(step, foot, ActionKind.Step, way, Contact.Flat, WeightEffect.Takes, OfAction, turn switch { 1 => 2, 2 => -2, _ => 0 });
                }
            }

            yield return Action(Entry("cross_over"), foot, ActionKind.Step, Direction.CrossFront, Contact.Flat, WeightEffect.Takes, OfAction + 1);
            yield return Action(Entry("cross_behind"), foot, ActionKind.Step, Direction.CrossBehind, Contact.Flat, WeightEffect.Takes, OfAction + 1);
            yield return Action(step, foot, ActionKind.Step, Direction.Side, Contact.Flat, WeightEffect.Shares, OfShared);
            yield return Action(Entry("touch"), foot, ActionKind.Touch, Direction.Together, Contact.Toe, WeightEffect.Keeps, OfAction);
            yield return Action(Entry("touch"), foot, ActionKind.Touch, Direction.Forward, Contact.Toe, WeightEffect.Keeps, OfAction);
            yield return Action(Entry("touch"), foot, ActionKind.Touch, Direction.Back, Contact.Toe, WeightEffect.Keeps, OfAction);
            yield return Action(Entry("point"), foot, ActionKind.Point, Direction.Side, Contact.Toe, WeightEffect.Keeps, OfAction);
            yield return Action(Entry("heel_dig"), foot, ActionKind.Dig, Direction.Forward, Contact.Heel, WeightEffect.Keeps, OfAction);
            yield return Action(Entry("kick"), foot, ActionKind.Kick, Direction.Forward, Contact.Air, WeightEffect.Keeps, OfAction + 1);
            yield return Action(Entry("hitch"), foot, ActionKind.Hitch, Direction.Up, Contact.Air, WeightEffect.Keeps, OfAction + 1);
        }

        yield return new EasierBlock(Entry("hold"), null, null, [(Counts.Zero, StepAction.Hold)], 1, OfHold);
    }

    private static StepDefinition Entry(string id) => StepCatalogue.Default.Find(id)
        ?? throw new InvalidOperationException("The catalogue has no entry " + id + ".");

    private static EasierBlock Action(
        StepDefinition definition,
        Foot foot,
        ActionKind kind,
        Direction way,
        Contact contact,
        WeightEffect effect,
        int price,
        int eighths = 0)
        => new(
            definition,
            foot,
            null,
            [(Counts.Zero, new StepAction(kind, foot.ToActingFoot(), way, contact, effect, Turn.FromEighths(eighths)))],
            1,
            price + (OfEighth * Math.Abs(eighths)));

    // Arms, hips and shoulders replace no step; what twists or leaves the floor makes nothing easier.
    private static bool IsPlain(StepDefinition definition)
    {
        foreach (PatternRow row in definition.Rows)
        {
            bool isPlain = row.At >= Counts.Zero
                && row.Action.Size == StepSize.Usual
                && row.Action.Turn.Eighths.IsWhole
                && row.Action.Kind is ActionKind.Step or ActionKind.Touch or ActionKind.Point or ActionKind.Dig or ActionKind.Kick or ActionKind.Scuff
                    or ActionKind.Brush or ActionKind.Hitch or ActionKind.Hold or ActionKind.Rock or ActionKind.Recover or ActionKind.Pivot
                    or ActionKind.Sway or ActionKind.Drop or ActionKind.Drag;
            if (!isPlain)
            {
                return false;
            }
        }

        return true;
    }

    // "two walks" are told better one by one
    private static bool IsOneActionTwice(StepDefinition definition)
        => definition.Rows is [{ Action: var one }, { Action: var two }] && one.Kind == two.Kind && one.Direction == two.Direction && one.Turn.Sign == 0
            && two.Turn.Sign == 0;

    // the touch that ends a vine gives way to what comes next
    private static EasierBlock? WithoutFinish(EasierBlock block)
    {
        int core = block.Definition.Rows.Count(row => !row.IsFinish);
        if (core == block.Rows.Count || core < 2)
        {
            return null;
        }

        ValueList<(Counts At, StepAction Action)> rows = block.Rows.Take(core).ToValueList();
        return block with { Rows = rows, Length = rows[core - 1].At.Value.Floor + 1 };
    }

    private static IEnumerable<int?> TurnsOf(StepDefinition definition)
    {
        yield return null;
        if (definition.TotalTurn.Sign != 0 || definition.Spread.Count == 0)
        {
            yield break;
        }

        foreach (int eighths in definition.Amounts)
        {
            // with such a turn the words mean another entry, which stands for itself
            if (Math.Abs(eighths) <= MostStated && !definition.TurnedForms.Any(form => form.Eighths is null || form.Eighths == eighths))
            {
                yield return eighths;
            }
        }
    }

    private static EasierBlock? Of(StepDefinition definition, Foot named, int? stated, int price)
    {
        bool stepsAndPivots = definition.Rows is [{ Action: { Turn.Sign: 0, Effect: WeightEffect.Takes } }, { Action.Turn.Sign: not 0 }];
        List<(Counts At, StepAction Action)> rows = [];
        foreach (PatternRow row in definition.Rows)
        {
            StepAction action = row.For(named);
            if (stated is { } turn)
            {
                int total = definition.Spread.Sum(share => share.Share);
                int mine = definition.Spread.Where(share => share.Label == row.Label).Sum(share => share.Share);
                Ratio part = new Ratio(turn * mine, total);
                if (!part.IsWhole)
                {
                    return null;
                }

                action = action with { Turn = Turn.FromEighths(named == Foot.Right ? part : -part) };
            }

            if (stepsAndPivots && action.Kind == ActionKind.Recover)
            {
                // on the floor it is the pivot, and so the reader has it
                action = action with { Kind = ActionKind.Pivot };
            }

            price += row.At.IsWhole ? 0 : 1;
            price += OfEighth * action.Turn.Amount.Numerator;
            price += action.Direction is Direction.CrossFront or Direction.CrossBehind ? 1 : 0;
            rows.Add((row.At, action));
        }

        Turn native = named == Foot.Right ? definition.TotalTurn : -definition.TotalTurn;
        Turn? said = stated is { } eighths ? Turn.FromEighths(named == Foot.Right ? eighths : -eighths) : native.Sign != 0 ? native : null;
        return new EasierBlock(definition, named, said, rows.ToValueList(), definition.Length.Value.Floor, price);
    }
}
