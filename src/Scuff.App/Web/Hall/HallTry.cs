namespace Scuff.App.Web.Hall;

/// <summary>What became of a typed code.</summary>
/// <param name="Circle">Whom it lets in; null when it lets nobody in.</param>
/// <param name="Sentence">Why not, and the way out; empty when it does.</param>
/// <param name="Wait">How long to wait before the next try.</param>
internal readonly record struct HallTry(HallCircle? Circle, string Sentence, TimeSpan Wait);
