namespace Scuff.App.Web.Contract;

/// <summary>What changed between them.</summary>
/// <param name="IsSame">Whether both dance and print the same.</param>
/// <param name="Changes">One sentence a change, in dance terms.</param>
internal sealed record CompareAnswer(bool IsSame, IReadOnlyList<string> Changes);

/// <summary>A text alone.</summary>
/// <param name="Text">The text.</param>
internal sealed record TextBody(string Text);

/// <summary>Why something was not done, and the way out.</summary>
/// <param name="Sentence">One or two sentences in trade words.</param>
internal sealed record Refusal(string Sentence);

/// <summary>Two versions to compare.</summary>
/// <param name="Before">The earlier text.</param>
/// <param name="After">The later text.</param>
internal sealed record CompareQuestion(string Before, string After);
