using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>Extra counts: a tag (after a wall) or a bridge (inside it).</summary>
/// <param name="Name">Its name, unique in the dance without regard to case.</param>
/// <param name="IsBridge">Whether she calls it a bridge.</param>
/// <param name="ClaimedLength">The stated length.</param>
/// <param name="Body">Its counts, as one section.</param>
/// <param name="Span">Its heading in the text.</param>
public sealed record Tag(string Name, bool IsBridge, Counts? ClaimedLength, Section Body, TextSpan Span);
