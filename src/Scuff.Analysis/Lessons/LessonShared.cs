using Scuff.Analysis.Likeness;

namespace Scuff.Analysis.Lessons;

/// <summary>A section that a class knows from another dance. Equal by value.</summary>
/// <param name="Title">The other dance.</param>
/// <param name="Shared">Which section is which of its sections, and how much alike they are.</param>
public sealed record LessonShared(string Title, SharedSection Shared);
