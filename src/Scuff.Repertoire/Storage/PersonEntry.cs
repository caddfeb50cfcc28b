namespace Scuff.Repertoire.Storage;

/// <summary>A person as a row of the database. Written by <see cref="ClubPeople"/> alone, which leaves no traces when it erases.</summary>
internal sealed class PersonEntry
{
    public long Key { get; set; }

    public string Name { get; set; } = "";

    public string Level { get; set; } = "";

    public string Needs { get; set; } = "";

    public string Notes { get; set; } = "";
}
