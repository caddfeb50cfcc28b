namespace Scuff.App.Json;

/// <summary>A move with easier ways, in JSON.</summary>
/// <param name="Place">Where, in words.</param>
/// <param name="Line">One-based line of the text.</param>
/// <param name="Move">What is danced there.</param>
/// <param name="Level">The easiest level that allows it.</param>
/// <param name="Offers">Easier ways, best first; empty where none was found.</param>
internal sealed record EasedMoveRow(string Place, int Line, string Move, string Level, IReadOnlyList<EasedOfferRow> Offers);
