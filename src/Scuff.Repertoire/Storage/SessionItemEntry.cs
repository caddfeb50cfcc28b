namespace Scuff.Repertoire.Storage;

/// <summary>A dance within a session as a row of the database. When the dance goes for good, its title stays here.</summary>
internal sealed class SessionItemEntry
{
    public long SessionKey { get; set; }

    /// <summary>Its place within the session, from 0.</summary>
    public int Place { get; set; }

    public ItemRole Role { get; set; }

    public long? DanceKey { get; set; }

    public string Title { get; set; } = "";

    /// <summary>The revision of the dance on that day. A version of it stays as long as this names it.</summary>
    public int? Revision { get; set; }

    public int? Minutes { get; set; }

    public string Note { get; set; } = "";
}
