using Scuff.Repertoire.Storage;

namespace Scuff.Repertoire.Folders;

/// <summary>A <see cref="FolderReport"/> while it is gathered, with keys for ids.</summary>
internal sealed class Findings
{
    public List<long> Added { get; } = [];

    public List<long> Edited { get; } = [];

    public List<long> Renamed { get; } = [];

    public List<long> Binned { get; } = [];

    public List<long> Written { get; } = [];

    public List<FolderClash> Clashes { get; } = [];

    public List<string> Troubles { get; } = [];

    /// <summary>Takes in what another part found.</summary>
    public void Add(Findings other)
    {
        Added.AddRange(other.Added);
        Edited.AddRange(other.Edited);
        Renamed.AddRange(other.Renamed);
        Binned.AddRange(other.Binned);
        Written.AddRange(other.Written);
        Clashes.AddRange(other.Clashes);
        Troubles.AddRange(other.Troubles);
    }

    /// <summary>The report.</summary>
    public FolderReport ToReport() => new()
    {
        Added = IdsOf(Added),
        Edited = IdsOf(Edited),
        Renamed = IdsOf(Renamed),
        Binned = IdsOf(Binned),
        Written = IdsOf(Written),
        Clashes = Clashes.ToValueList(),
        Troubles = Troubles.ToValueList(),
    };

    private static ValueList<string> IdsOf(List<long> keys) => keys.Distinct().Select(Ids.Dance).ToValueList();
}
