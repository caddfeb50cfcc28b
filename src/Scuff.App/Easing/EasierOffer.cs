using Scuff.Analysis.Easier;
using Scuff.Diagnostics;

namespace Scuff.App.Easing;

/// <summary>An easier way as it can be taken: written as an option, read back as exactly that, with no complaint more than before.</summary>
/// <param name="Way">The way.</param>
/// <param name="Name">The option's name: <c>easier</c>.</param>
/// <param name="Label">Its counts as printed.</param>
/// <param name="Words">What is danced, in words of the trade.</param>
/// <param name="Edits">What writes it into the text.</param>
internal sealed record EasierOffer(EasierWay Way, string Name, string Label, string Words, ValueList<TextEdit> Edits)
{
    /// <summary>The option as it stands in the text, without its place under a line.</summary>
    public string Line => Edits[0].NewText.Trim();
}
