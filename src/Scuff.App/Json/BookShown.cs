namespace Scuff.App.Json;

/// <summary>What <c>book show --json</c> says: a class and the dances it ever danced or was marked for. The names are fixed: scripts depend on them.</summary>
/// <param name="Class">The class.</param>
/// <param name="Dances">The dances, the one danced last first.</param>
internal sealed record BookShown(BookClassRow Class, IReadOnlyList<BookDanceRow> Dances);
