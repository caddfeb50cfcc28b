using Scuff.Repertoire.Files;
using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire.Backups;

/// <summary>The <c>.dance</c> files of a folder, to be taken in or written.</summary>
internal static class DanceFolder
{
    /// <summary>Their names, in order; hidden ones are left out.</summary>
    /// <exception cref="ClubTrouble">The folder is not there or cannot be read.</exception>
    public static IReadOnlyList<string> Names(string folder)
    {
        try
        {
            return
            [
                .. Directory.EnumerateFiles(folder)
                    .Select(f => Path.GetFileName(f))
                    .Where(n => n.EndsWith(TextFile.DanceEnding, StringComparison.OrdinalIgnoreCase) && n[0] != '.')
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubWords.KindOf(e), FileWords.NotRead(folder, e), e);
        }
    }

    /// <summary>Writes dances, each under a name of its own.</summary>
    /// <param name="folder">The folder; made if needed.</param>
    /// <param name="dances">Their titles and texts.</param>
    /// <exception cref="ClubTrouble">The folder cannot be made or read.</exception>
    public static ExportReport Write(string folder, IEnumerable<(string Title, string Text)> dances)
    {
        // by their names whatever the case, since the folder may go to a system where that is all the same
        Dictionary<string, string> there;
        try
        {
            Directory.CreateDirectory(folder);
            there = Directory.EnumerateFileSystemEntries(folder)
                .Select(f => Path.GetFileName(f))
                .DistinctBy(n => n.ToUpperInvariant())
                .ToDictionary(n => n, StringComparer.OrdinalIgnoreCase);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ClubTrouble(ClubWords.KindOf(e), FileWords.NotWritten(folder, e), e);
        }

        List<string> written = [];
        List<string> troubles = [];
        int alreadyThere = 0;
        foreach ((string title, string text) in dances)
        {
            bool isThere = false;
            string name = SafeFileName.Free(SafeFileName.StemOf(title), TextFile.DanceEnding, n =>
            {
                bool isTaken = there.TryGetValue(n, out string? other);
                isThere = isTaken
                    && TextFile.Read(other!, Path.Combine(folder, other!)) is { Trouble: null } file && DanceWriting.Tidy(file.Text) == text;
                return isTaken && !isThere;
            });
            if (isThere)
            {
                alreadyThere++;
                continue;
            }

            try
            {
                WholeFile.Write(Path.Combine(folder, name), text);
                there.Add(name, name);
                written.Add(name);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                troubles.Add(FileWords.NotWritten(Path.Combine(folder, name), e));
            }
        }

        return new ExportReport(written.ToValueList(), alreadyThere, troubles.ToValueList());
    }
}
