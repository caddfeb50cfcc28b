namespace Scuff.Repertoire;

/// <summary>What exporting to a folder did.</summary>
/// <param name="Written">The names of the files that were written.</param>
/// <param name="AlreadyThere">How many dances had a file with their very text there already.</param>
/// <param name="Troubles">Files that could not be written, a sentence each.</param>
public sealed record ExportReport(ValueList<string> Written, int AlreadyThere, ValueList<string> Troubles);
