namespace Scuff.Repertoire;

/// <summary>A dance as a list shows it: everything but its text.</summary>
/// <param name="Id">Its name within the club: short, safe in an address, never given to another dance.</param>
/// <param name="Revision">How often its text changed, from 1; names the text that a save began with.</param>
/// <param name="Facts">What its text says about it.</param>
/// <param name="Tags">Her own words for it, in the order she gave them.</param>
/// <param name="AddedAt">When it came into the club.</param>
/// <param name="SavedAt">When its text last changed.</param>
/// <param name="RemovedAt">When it went into the bin; null when it is not there.</param>
/// <param name="FileName">The file of the linked folder that holds it; null when none does.</param>
public sealed record DanceRow(
    string Id,
    int Revision,
    DanceFacts Facts,
    ValueList<string> Tags,
    DateTimeOffset AddedAt,
    DateTimeOffset SavedAt,
    DateTimeOffset? RemovedAt,
    string? FileName);
