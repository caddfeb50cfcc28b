using System.Globalization;

namespace Scuff.Sheets;

/// <summary>An evening or a class with its lines in order, in finished words: what is printed, played and kept of it. Equal by value.</summary>
public sealed record EveningPaper
{
    /// <summary>What she calls it.</summary>
    public required string Title { get; init; }

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>When it begins, by the clock of the place.</summary>
    public required TimeOnly Starts { get; init; }

    /// <summary>How long it lasts, in minutes; its last line may end earlier.</summary>
    public required int Minutes { get; init; }

    /// <summary>Where; empty when she does not say.</summary>
    public string Place { get; init; } = "";

    /// <summary>Its lines in order.</summary>
    public required ValueList<EveningLine> Lines { get; init; }

    /// <summary>What belongs to no line, such as a wish that could not be met: finished sentences, for the caller alone.</summary>
    public ValueList<string> Remarks { get; init; }

    /// <summary>When something begins, to the minute in which it does: <c>19:52</c>.</summary>
    /// <param name="seconds">Seconds from the beginning of the evening.</param>
    public string ClockAt(int seconds) => Starts.Add(TimeSpan.FromSeconds(seconds)).ToString("HH:mm", CultureInfo.InvariantCulture);
}
