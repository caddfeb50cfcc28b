namespace Scuff.Repertoire.Storage;

/// <summary>How well a class knew a dance on a day, as a row of the database.</summary>
internal sealed class MarkEntry
{
    public long ClassKey { get; set; }

    public long DanceKey { get; set; }

    public DateOnly Date { get; set; }

    public Knowing? Knowing { get; set; }
}
