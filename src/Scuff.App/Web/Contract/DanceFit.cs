using Scuff.App.Json;

namespace Scuff.App.Web.Contract;

/// <summary>How a dance fits a track, ready to draw and to dance.</summary>
internal sealed record DanceFit
{
    /// <summary>All plans, as <c>scuff fit --json</c> has them; its chart is that of the chosen plan.</summary>
    public required FittedTrackRow Fit { get; init; }

    /// <summary>The plans in words, in the same order.</summary>
    public required IReadOnlyList<DanceFitPlan> Plans { get; init; }

    /// <summary>The chosen plan, an index into them; null when there is none.</summary>
    public required int? Chosen { get; init; }

    /// <summary>The plan as the text has it, in words; null when it has none for this track.</summary>
    public required DanceFitPlan? AsWritten { get; init; }

    /// <summary>Where each count of the music falls, in seconds; one more for the end of the last.</summary>
    public required double[] Seconds { get; init; }

    /// <summary>For the player: counts of the chosen plan and seconds of the track, both rising; the first in the intro, below zero.</summary>
    public required double[][] Table { get; init; }

    /// <summary>The text with the chosen plan in it; null when it cannot be put in.</summary>
    public required string? Text { get; init; }

    /// <summary>Why it cannot be put in, or null.</summary>
    public required string? Trouble { get; init; }

    /// <summary>Where in the dance it may begin again: after so many counts of the wall.</summary>
    public required IReadOnlyList<int> RestartPlaces { get; init; }

    /// <summary>What a plan pays for.</summary>
    public required IReadOnlyList<DanceFitPrice> Prices { get; init; }

    /// <summary>What is danced on the stops of the music, a sentence each.</summary>
    public required IReadOnlyList<string> Accents { get; init; }
}

/// <summary>A plan in words.</summary>
/// <param name="Title">How many interruptions it has.</param>
/// <param name="Begins">The count of the music on which it begins: count 0 of the floor.</param>
/// <param name="Beginning">Where it begins and how many walls it has.</param>
/// <param name="Breaks">What happens at each interruption, and what the floor sees there.</param>
/// <param name="Ending">How it ends.</param>
/// <param name="Score">What it pays for.</param>
internal sealed record DanceFitPlan(string Title, int Begins, string Beginning, IReadOnlyList<string> Breaks, string Ending, IReadOnlyList<DanceFitSum> Score);

/// <summary>What a plan pays for one reason.</summary>
/// <param name="Words">The reason.</param>
/// <param name="Points">The points.</param>
internal sealed record DanceFitSum(string Words, int Points);

/// <summary>A price.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Words">What it is paid for.</param>
/// <param name="Points">The points.</param>
/// <param name="Usual">What it is when nobody sets it.</param>
internal sealed record DanceFitPrice(string Name, string Words, int Points, int Usual);

/// <summary>Which fit is asked for.</summary>
/// <param name="Text">The text of the dance.</param>
/// <param name="Track">The track.</param>
/// <param name="Interruptions">The best plan with so many interruptions at most is chosen; null for the kindest.</param>
/// <param name="Intro">Begin after so many counts; null for what is likely.</param>
/// <param name="Pins">What she has decided.</param>
/// <param name="Prices">Prices that she has set, each as <c>newKind=300</c>.</param>
internal sealed record DanceFitQuestion(string Text, string Track, int? Interruptions, int? Intro, IReadOnlyList<DanceFitPin> Pins, IReadOnlyList<string> Prices);

/// <summary>Something that she has decided about the plan.</summary>
/// <param name="Kind"><c>begins</c>: a wall begins here; <c>extra</c>: extra counts begin here; <c>calm</c>: nothing interrupts the dance here.</param>
/// <param name="At">The count of the music.</param>
/// <param name="To">For <c>calm</c>: the count after the last; else null.</param>
internal sealed record DanceFitPin(string Kind, int At, int? To);
