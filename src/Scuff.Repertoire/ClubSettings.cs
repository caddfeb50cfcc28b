namespace Scuff.Repertoire;

/// <summary>Small settings of a club, by name. They travel with its backups.</summary>
public sealed class ClubSettings
{
    internal ClubSettings()
    {
    }

    /// <summary>What was set; null when nothing was.</summary>
    /// <exception cref="ClubTrouble">The club could not be read.</exception>
    public string? Get(string name) => throw Club.Unfinished;

    /// <summary>Sets it; null takes it away.</summary>
    /// <exception cref="ClubTrouble">It could not be written.</exception>
    public void Set(string name, string? value) => throw Club.Unfinished;
}
