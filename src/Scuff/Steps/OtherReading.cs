namespace Scuff.Steps;

/// <summary>Something else she may have meant by the name.</summary>
/// <param name="Words">In plain words.</param>
/// <param name="Id">The other entry, when it is one.</param>
/// <param name="Rows">Its own rows, when it is none.</param>
public sealed record OtherReading(string Words, string? Id, ValueList<PatternRow> Rows);
