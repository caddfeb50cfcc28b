using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>A figure that is new to the class.</summary>
/// <param name="Definition">The figure.</param>
/// <param name="Length">Its counts as the dance has it.</param>
/// <param name="Chunk">Number of the chunk in which it is met first; zero where only a tag has it.</param>
public sealed record LessonFigure(StepDefinition Definition, Counts Length, int Chunk);
