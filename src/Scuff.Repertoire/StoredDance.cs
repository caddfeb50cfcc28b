namespace Scuff.Repertoire;

/// <summary>A dance with its text.</summary>
/// <param name="Row">What lists show about it.</param>
/// <param name="Text">The text, its lines ended by line feeds.</param>
public sealed record StoredDance(DanceRow Row, string Text)
{
    /// <summary>Its name within the club.</summary>
    public string Id => Row.Id;

    /// <summary>How often the text changed; pass it on when saving.</summary>
    public int Revision => Row.Revision;
}
