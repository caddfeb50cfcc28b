namespace Scuff.App.Web;

/// <summary>Whether the studio is open to a tablet in the hall's network. It is shut until she opens it.</summary>
internal sealed class HallDoor
{
    private volatile string[] _hosts = [];

    /// <summary>Whether a host name is one under which the hall may ask.</summary>
    public bool IsHost(string name) => _hosts.Contains(name, StringComparer.OrdinalIgnoreCase);

    /// <summary>Opens it under these names.</summary>
    public void Open(IEnumerable<string> hosts) => _hosts = [.. hosts];

    /// <summary>Shuts it.</summary>
    public void Shut() => _hosts = [];
}
