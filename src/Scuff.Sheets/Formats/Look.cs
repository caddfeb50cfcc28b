namespace Scuff.Sheets.Formats;

/// <summary>The colours of Scuff, one set for light and one for dark. Contrast is proved by a test.</summary>
/// <param name="Paper">What everything lies on.</param>
/// <param name="Floor">The floor under the feet.</param>
/// <param name="Ink">Text.</param>
/// <param name="Soft">Second text.</param>
/// <param name="Line">Edges and icons; carries no text.</param>
/// <param name="Lamp">The playhead; no text on the floor.</param>
/// <param name="Buoy">Errors.</param>
/// <param name="Tide">Links and selection.</param>
public sealed record Look(string Paper, string Floor, string Ink, string Soft, string Line, string Lamp, string Buoy, string Tide)
{
    /// <summary>By day and on paper.</summary>
    public static Look Light { get; } = new("#FBF8F1", "#EADFCB", "#14242B", "#4A5A61", "#8A8577", "#B45309", "#B3261E", "#0F5E6B");

    /// <summary>In a dark hall.</summary>
    public static Look Dark { get; } = new("#10191D", "#1E2A2E", "#F1EDE2", "#B4BFC2", "#7C8A8F", "#F6B94A", "#FF8A7A", "#6FD0DD");
}
