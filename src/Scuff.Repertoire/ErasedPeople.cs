namespace Scuff.Repertoire;

/// <summary>What erasing people did.</summary>
/// <param name="Count">How many were erased from the club.</param>
/// <param name="Cleaned">Backups in <c>kept/</c> that held people and hold none any more, by the names of their files.</param>
/// <param name="Untouched">Files and folders in <c>kept/</c> that could not be read, so that they may hold people still; by their names.</param>
public sealed record ErasedPeople(int Count, ValueList<string> Cleaned, ValueList<string> Untouched);
