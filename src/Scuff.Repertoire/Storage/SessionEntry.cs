namespace Scuff.Repertoire.Storage;

/// <summary>A session as a row of the database.</summary>
internal sealed class SessionEntry
{
    public long Key { get; set; }

    public long ClassKey { get; set; }

    public DateOnly Date { get; set; }

    public TimeOnly? Starts { get; set; }

    public int? Minutes { get; set; }

    public bool IsHeld { get; set; }

    public int? People { get; set; }

    public string HowItWent { get; set; } = "";
}
