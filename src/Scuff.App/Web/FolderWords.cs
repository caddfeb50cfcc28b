using Scuff.App.Complaints;
using Scuff.Repertoire;

namespace Scuff.App.Web;

/// <summary>Says what was done with a folder of dances.</summary>
internal static class FolderWords
{
    /// <summary>After a look through the linked folder.</summary>
    public static IReadOnlyList<string> Of(FolderReport report) => Told(
        [
            (report.Added.Count, "came from the folder"),
            (report.Edited.Count, "changed in the folder and so here"),
            (report.Renamed.Count, "has another file name now"),
            (report.Binned.Count, "went into the bin, since the file is gone"),
            (report.Written.Count, "written into the folder"),
            (report.Clashes.Count, "changed both here and in the folder: the other text is kept as a version"),
        ],
        report.Troubles,
        "The folder and the club agree.");

    /// <summary>After an import.</summary>
    public static IReadOnlyList<string> Of(ImportReport report) => Told(
        [(report.Added.Count, "came into the club"), (report.Replaced.Count, "replaced"), (report.AlreadyHere, "already here")],
        report.Troubles,
        "There is no .dance file in this folder.");

    /// <summary>After an export.</summary>
    public static IReadOnlyList<string> Of(ExportReport report) => Told(
        [(report.Written.Count, "written into the folder"), (report.AlreadyThere, "already there")],
        report.Troubles,
        "There is no dance to write.");

    private static List<string> Told(IEnumerable<(int Count, string Words)> parts, IEnumerable<string> troubles, string nothing)
    {
        List<string> sentences = [.. parts.Where(p => p.Count > 0).Select(p => $"{Summary.Number(p.Count, "dance")} {p.Words}."), .. troubles];
        return sentences.Count > 0 ? sentences : [nothing];
    }
}
