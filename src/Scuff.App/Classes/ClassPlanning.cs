using Scuff.Repertoire;

namespace Scuff.App.Classes;

/// <summary>Which session of a class comes next, and how long its dances take.</summary>
internal static class ClassPlanning
{
    /// <summary>Minutes planned for a dance whose song nobody knows: a song of usual length with what is said before it. Ours.</summary>
    public const int DanceMinutes = 4;

    /// <summary>Minutes planned for a revision: walked once, then danced. Ours.</summary>
    public const int RevisionMinutes = 7;

    /// <summary>The session that comes next: the earliest that was planned and not held, else one on the next day that the class meets; null when it has ended.</summary>
    /// <param name="held">The class.</param>
    /// <param name="planned">Its sessions that are planned and not held, in any order.</param>
    /// <param name="lastHeld">The day of the last session that was held; null when none was.</param>
    /// <param name="today">The day it is.</param>
    public static ClassSession? Next(ClubClass held, IEnumerable<ClassSession> planned, DateOnly? lastHeld, DateOnly today)
    {
        if (planned.MinBy(s => s.Date) is { } first)
        {
            return first;
        }

        DateOnly day = lastHeld is { } last && last >= today ? last.AddDays(1) : today;
        if (held.Weekday is { } weekday)
        {
            day = day.AddDays(((int)weekday - (int)day.DayOfWeek + 7) % 7);
        }

        return held.EndedOn is { } end && day > end ? null : new ClassSession { ClassId = held.Id, Date = day };
    }
}
