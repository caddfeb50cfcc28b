using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose;

/// <summary>How a move is called by the name of its figure, taken apart so that any language can put it together. Equal by value.</summary>
/// <param name="Definition">The figure.</param>
/// <param name="Words">Its English name, without a last word that is a place (<c>shuffle</c> of <c>shuffle forward</c>).</param>
/// <param name="Foot">The foot said with it, or null.</param>
/// <param name="Way">The way it travels or turns said with it, or null.</param>
/// <param name="Place">Forward or back at the end of its name; else not stated.</param>
/// <param name="Turn">A turn to be said, or none.</param>
/// <param name="SaysAmount">Whether the name says how far that turn goes (<c>monterey half turn</c>), so that only its side is said.</param>
public sealed record FigureName(StepDefinition Definition, string Words, Foot? Foot, Foot? Way, Direction Place, Turn Turn, bool SaysAmount);
