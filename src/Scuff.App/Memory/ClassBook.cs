using Scuff.Analysis.Memory;
using Scuff.Repertoire;

namespace Scuff.App.Memory;

/// <summary>What the book says of one class on a day: how well it knew each dance, when it danced it, and what is likely left.</summary>
internal sealed class ClassBook
{
    private readonly Dictionary<string, KnownMark> _marks;
    private readonly Dictionary<string, DancedDates> _danced;
    private readonly DateOnly _day;

    private ClassBook(Dictionary<string, KnownMark> marks, Dictionary<string, DancedDates> danced, DateOnly day)
        => (_marks, _danced, _day) = (marks, danced, day);

    /// <summary>Whether nothing was ever noted.</summary>
    public bool IsEmpty => _marks.Count == 0 && _danced.Count == 0;

    /// <summary>The dances it says anything about.</summary>
    public IEnumerable<string> Dances => _marks.Keys.Union(_danced.Keys);

    /// <summary>Reads the book of a class.</summary>
    /// <param name="club">The club.</param>
    /// <param name="classId">The class.</param>
    /// <param name="day">The day; what is noted after it is not looked at.</param>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public static ClassBook Of(Club club, string classId, DateOnly day) => new(
        club.Book.Marks(classId, day).ToDictionary(m => m.DanceId, StringComparer.Ordinal),
        club.Book.LastDanced(classId).ToDictionary(d => d.DanceId, StringComparer.Ordinal),
        day);

    /// <summary>How well a dance was known last; null when nobody marked it.</summary>
    public Knowing? Knowing(string danceId) => _marks.GetValueOrDefault(danceId)?.Knowing;

    /// <summary>The last day on which it was danced; null when it never was.</summary>
    public DateOnly? LastDanced(string danceId)
        => _danced.TryGetValue(danceId, out DancedDates? dates) && dates.Dates.Any(d => d <= _day) ? dates.Dates.Last(d => d <= _day) : null;

    /// <summary>What is likely left; null when they never danced it. A mark counts as a day of dancing: to mark a dance one has seen it danced.</summary>
    public DanceMemory? Memory(string danceId)
    {
        KnownMark? mark = _marks.GetValueOrDefault(danceId);
        IEnumerable<DateOnly> days = _danced.TryGetValue(danceId, out DancedDates? dates) ? dates.Dates : [];
        return DanceMemory.Of(mark?.Knowing is { } knowing ? (int)knowing : 0, mark is { Knowing: not null } ? days.Append(mark.Date) : days, _day);
    }
}
