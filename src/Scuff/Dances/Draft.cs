using Scuff.Diagnostics;

namespace Scuff.Dances;

/// <summary>A text, the dance understood from it, and what the reader had to say. Nothing of the text is lost.</summary>
/// <param name="Text">The text as it was given.</param>
/// <param name="Dance">What was understood; words that were not are in it as unknown steps.</param>
/// <param name="Report">Complaints and questions of the reader.</param>
public sealed record Draft(string Text, Dance Dance, Report Report);
