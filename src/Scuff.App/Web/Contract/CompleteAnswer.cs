namespace Scuff.App.Web.Contract;

/// <summary>What could be written there.</summary>
/// <param name="From">Where the words start that an offer replaces.</param>
/// <param name="Weight">Weight before it: L, R, both or unknown.</param>
/// <param name="Facing">Facing before it, or null.</param>
/// <param name="Offers">Offers, best first.</param>
internal sealed record CompleteAnswer(int From, string Weight, string? Facing, IReadOnlyList<CompleteOffer> Offers);

/// <summary>One offer.</summary>
/// <param name="Text">What is put in.</param>
/// <param name="Detail">Counts it takes and where it ends: <c>2 counts, ends on R</c>.</param>
/// <param name="About">What it does, count by count; or why it cannot be danced here.</param>
/// <param name="IsPossible">Whether the free foot allows it.</param>
/// <param name="Kind">move, key or word.</param>
internal sealed record CompleteOffer(string Text, string Detail, string About, bool IsPossible, string Kind);

/// <summary>Where she is in the text and wants to know what could be written.</summary>
/// <param name="Text">The text.</param>
/// <param name="At">The place of the cursor.</param>
internal sealed record CompleteQuestion(string Text, int At);
