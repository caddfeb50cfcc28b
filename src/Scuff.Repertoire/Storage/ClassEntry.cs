namespace Scuff.Repertoire.Storage;

/// <summary>A class as a row of the database.</summary>
internal sealed class ClassEntry
{
    public long Key { get; set; }

    public string Title { get; set; } = "";

    public string Level { get; set; } = "";

    public DayOfWeek? Weekday { get; set; }

    public TimeOnly? Starts { get; set; }

    public int Minutes { get; set; }

    public string Place { get; set; } = "";

    public int? People { get; set; }

    public string Notes { get; set; } = "";

    public DateOnly? EndedOn { get; set; }
}
