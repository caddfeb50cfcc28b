namespace Scuff.Diagnostics;

/// <summary>A mend that is offered, with the words on its button.</summary>
/// <param name="Title">A verb phrase: "change count 2 to touch L".</param>
/// <param name="Remedy">The change.</param>
/// <param name="IsSafe">Whether it may be applied unasked by <c>--fix</c>: it changes nothing that is danced, or there is only one sensible mend.</param>
public sealed record Fix(string Title, Remedy Remedy, bool IsSafe);
