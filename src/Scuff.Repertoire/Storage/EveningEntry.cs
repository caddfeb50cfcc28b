namespace Scuff.Repertoire.Storage;

/// <summary>An evening as a row of the database.</summary>
internal sealed class EveningEntry
{
    public long Key { get; set; }

    public int Revision { get; set; } = 1;

    public string Title { get; set; } = "";

    public DateOnly Date { get; set; }

    public TimeOnly Starts { get; set; }

    public int Minutes { get; set; }

    public string Place { get; set; } = "";

    public long? ClassKey { get; set; }

    /// <summary>The last column, so that lists need not walk over it.</summary>
    public string Plan { get; set; } = "";
}
