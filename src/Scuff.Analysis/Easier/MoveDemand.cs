using Scuff.Analysis.Levels;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>What a row of moves asks of a dancer: measured by the same meters as a whole dance, so that both mean the same.</summary>
public sealed record MoveDemand
{
    /// <summary>
    /// The easiest level that allows it: the highest of the levels at which its moves are usually met (our catalogue) and of what the
    /// published limits say of its turns, its rhythm and its jumps (<see cref="LevelLimits"/>).
    /// </summary>
    public required Level Level { get; init; }

    /// <summary>All turns added up whichever way they go, in eighths.</summary>
    public required Ratio Turn { get; init; }

    /// <summary>Most turn on one foot, in eighths.</summary>
    public required Ratio OneFootTurn { get; init; }

    /// <summary>Actions between two counts.</summary>
    public required int OffBeats { get; init; }

    /// <summary>Weight changes.</summary>
    public required int Steps { get; init; }

    /// <summary>Jumps, leaps, hops and scoots.</summary>
    public required int Landings { get; init; }

    /// <summary>Swivels, twists, grinds and unwinds.</summary>
    public required int Twists { get; init; }

    /// <summary>Lunges and dips.</summary>
    public required int Bends { get; init; }

    /// <summary>Whether a knee notices it: twists, landings, bends, or more than a quarter on one foot.</summary>
    public bool IsForKnees => Landings + Twists + Bends > 0 || OneFootTurn > 2;

    /// <summary>Measures moves.</summary>
    /// <param name="moves">The moves, by the counting of their section.</param>
    /// <param name="before">Where the weight is before them.</param>
    public static MoveDemand Of(IEnumerable<WrittenMove> moves, Weight before)
    {
        ValueList<WrittenMove> all = moves.ToValueList();
        Timeline timeline = Danced(all, before);
        DanceLoad load = LoadMeter.Of(timeline);
        Level level = Level.AbsoluteBeginner;
        Ratio sum = 0;
        foreach (WrittenMove move in all)
        {
            Ratio turn = 0;
            foreach (WrittenStep step in move.Steps)
            {
                turn += step.Action.Turn.Amount;
            }

            sum += turn;
            Raise(LevelMeasure.TurnSize, turn);
            level = Higher(level, move.Definition is { } definition ? LevelPhrases.Find(definition.Level) : null);
        }

        int between = 0;
        int quarters = 0;
        int changes = 0;
        foreach (TimedStep step in timeline.Steps)
        {
            Ratio place = step.Written.Count.Place.Value;
            bool isDanced = step.Action.Kind != ActionKind.Hold;
            between += !isDanced || place.IsWhole ? 0 : 1;
            quarters += !isDanced || (place * 2).IsWhole ? 0 : 1;
            changes += step.WeightAfter == step.WeightBefore ? 0 : 1;
        }

        Raise(LevelMeasure.OffBeats, between);
        Raise(LevelMeasure.QuarterBeats, quarters);
        Raise(LevelMeasure.Jumps, load.Jumps.Count);
        Raise(LevelMeasure.TurnInOne, load.TurnInOne?.Amount ?? 0);
        Raise(LevelMeasure.TurnInTwo, load.TurnInTwo?.Amount ?? 0);
        Raise(LevelMeasure.TurnInEight, load.TurnInEight?.Amount ?? 0);
        Raise(LevelMeasure.TurnOnOneFoot, load.TurnOnOneFoot?.Amount ?? 0);
        return new MoveDemand
        {
            Level = level,
            Turn = sum,
            OneFootTurn = load.TurnOnOneFoot?.Amount ?? 0,
            OffBeats = between,
            Steps = changes,
            Landings = load.Landings.Count,
            Twists = load.Twists.Count,
            Bends = load.Bends.Count,
        };

        void Raise(LevelMeasure measure, Ratio value) => level = Higher(level, LevelLimits.Of(measure).LevelOf(value));
    }

    private static Level Higher(Level level, Level? other) => other is { } met && met > level ? met : level;

    private static Timeline Danced(ValueList<WrittenMove> moves, Weight before)
    {
        Counts end = Counts.Zero;
        foreach (WrittenStep step in moves.SelectMany(m => m.Steps))
        {
            end = Counts.Max(end, step.Count.Place + step.Duration);
        }

        CountSpan counts = new(Counts.Zero, end);
        WrittenLine line = new() { Label = "", Counts = counts, Moves = moves, Span = default, Number = 0 };
        Section section = new() { Number = 1, Length = end, Lines = [line], Span = default };
        Dance dance = new() { Start = before, Parts = [new Part("", [section], default)] };
        return Unroller.Unroll(dance, PlanBuilder.OneWall(dance));
    }
}
