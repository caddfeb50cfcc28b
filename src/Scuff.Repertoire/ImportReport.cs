namespace Scuff.Repertoire;

/// <summary>What importing a folder did.</summary>
/// <param name="Added">Dances that came.</param>
/// <param name="Replaced">Dances whose text was replaced.</param>
/// <param name="AlreadyHere">How many files hold a text that the club has, letter for letter.</param>
/// <param name="Troubles">Files that could not be read, a sentence each.</param>
public sealed record ImportReport(ValueList<string> Added, ValueList<string> Replaced, int AlreadyHere, ValueList<string> Troubles);
