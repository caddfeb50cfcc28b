using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>What was asked of the book. What was not said is null or empty.</summary>
internal sealed record BookQuestion
{
    /// <summary>The words after the act.</summary>
    public required IReadOnlyList<string> Words { get; init; }

    /// <summary>The moment, by the clock of the place.</summary>
    public required DateTimeOffset Now { get; init; }

    /// <summary>The day it is.</summary>
    public DateOnly Today => DateOnly.FromDateTime(Now.DateTime);

    /// <summary>Whether the answer is JSON.</summary>
    public bool AsJson { get; init; }

    /// <summary>Dances with their roles, in the order of a lesson: as typed, those of one role together.</summary>
    public IReadOnlyList<(ItemRole Role, string Dance)> Dances { get; init; } = [];

    /// <summary>A day.</summary>
    public string? Date { get; init; }

    /// <summary>A day of the week.</summary>
    public string? Day { get; init; }

    /// <summary>A time.</summary>
    public string? Starts { get; init; }

    /// <summary>Minutes.</summary>
    public int? Minutes { get; init; }

    /// <summary>A level.</summary>
    public string? Level { get; init; }

    /// <summary>A place.</summary>
    public string? Place { get; init; }

    /// <summary>How many people.</summary>
    public int? People { get; init; }

    /// <summary>Words about it.</summary>
    public string? Note { get; init; }

    /// <summary>A new title.</summary>
    public string? Title { get; init; }

    /// <summary>A last day.</summary>
    public string? Ended { get; init; }

    /// <summary>Classes of a person.</summary>
    public IReadOnlyList<string> Classes { get; init; } = [];

    /// <summary>What a person needs.</summary>
    public string? Needs { get; init; }

    /// <summary>Whether it is to be removed.</summary>
    public bool IsRemoving { get; init; }

    /// <summary>Whether for good.</summary>
    public bool IsForGood { get; init; }

    /// <summary>Whether all are meant.</summary>
    public bool IsAll { get; init; }
}
