namespace Scuff.Diagnostics;

/// <summary>A change that would mend a complaint; see <see cref="TextRemedy"/> and the dance edits.</summary>
public abstract record Remedy;
