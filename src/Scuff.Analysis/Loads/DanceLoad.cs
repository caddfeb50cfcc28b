using Scuff.Timelines;

namespace Scuff.Analysis.Loads;

/// <summary>
/// What a dance asks of a body, every written count danced once: turns in eighths, weight changes, and the actions that knees and
/// ankles notice. A peak is null where there is nothing of its kind. What could not be read asks for nothing.
/// </summary>
public sealed record DanceLoad
{
    /// <summary>Most turn one way within two counts; a turn that lasts longer gives its share.</summary>
    public LoadPeak? TurnInTwo { get; init; }

    /// <summary>Most turn on one count, as a turn that lasts several is shared out.</summary>
    public LoadPeak? TurnInOne { get; init; }

    /// <summary>Most turn one way within eight counts.</summary>
    public LoadPeak? TurnInEight { get; init; }

    /// <summary>Most turn on one foot without a step between.</summary>
    public LoadPeak? TurnOnOneFoot { get; init; }

    /// <summary>Most weight changes within two counts.</summary>
    public LoadPeak? StepsInTwo { get; init; }

    /// <summary>Most weight changes within six counts: the least stretch above four that holds whole shuffles and whole bars of three.</summary>
    public LoadPeak? StepsInSix { get; init; }

    /// <summary>Most landings (jumps, leaps, hops, scoots) and deep bends (lunges, dips) within eight counts.</summary>
    public LoadPeak? KneesInEight { get; init; }

    /// <summary>Jumps and leaps: both feet off the floor.</summary>
    public ValueList<TimedStep> Jumps { get; init; }

    /// <summary>Jumps, leaps, hops and scoots.</summary>
    public ValueList<TimedStep> Landings { get; init; }

    /// <summary>Lunges and dips.</summary>
    public ValueList<TimedStep> Bends { get; init; }

    /// <summary>Swivels, twists, grinds and unwinds: what turns a foot that bears weight.</summary>
    public ValueList<TimedStep> Twists { get; init; }

    /// <summary>Stomps.</summary>
    public ValueList<TimedStep> Stomps { get; init; }
}
