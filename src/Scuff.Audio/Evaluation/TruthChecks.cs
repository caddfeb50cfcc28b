namespace Scuff.Audio.Evaluation;

/// <summary>Which parts of a truth are sure enough to be scored.</summary>
public sealed record TruthChecks(bool Beats = true, bool Downbeats = true, bool Sections = true, bool Counts = true, bool Swing = true, bool Tempo = true);
