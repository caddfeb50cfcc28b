namespace Scuff.Repertoire;

/// <summary>
/// A person who comes to her classes, if she keeps any: nothing in the program needs one. Kept on this machine alone, never shown in the hall, left
/// out of backups unless asked, and erased for good by <see cref="ClubPeople"/>. Equal by value.
/// </summary>
public sealed record ClubPerson
{
    /// <summary>Its name within the club; empty for one that is not kept yet.</summary>
    public string Id { get; init; } = "";

    /// <summary>What she calls the person.</summary>
    public required string Name { get; init; }

    /// <summary>The level in her words; empty when she does not say.</summary>
    public string Level { get; init; } = "";

    /// <summary>The classes the person comes to.</summary>
    public ValueList<string> ClassIds { get; init; }

    /// <summary>What the person needs: a chair near, no turns to the left.</summary>
    public string Needs { get; init; } = "";

    /// <summary>Her own words.</summary>
    public string Notes { get; init; } = "";
}
