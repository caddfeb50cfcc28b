using Scuff.Repertoire;

namespace Tests.Repertoire;

/// <summary>A club in a folder of its own, with a clock that stands.</summary>
internal sealed class ClubHouse : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scuff-test-");
    private Club? _club;

    /// <summary>The folder everything is in.</summary>
    public string Root => _folder.FullName;

    /// <summary>The folder of the club.</summary>
    public string ClubFolder => In("club");

    /// <summary>The clock.</summary>
    public SlowClock Clock { get; } = new();

    /// <summary>The club, opened when first asked for.</summary>
    public Club Club
    {
        get
        {
            lock (_folder)
            {
                return _club ??= Open();
            }
        }
    }

    /// <summary>A path in the folder.</summary>
    public string In(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>A folder of dances, with these files.</summary>
    public string Folder(string name, params (string Name, string Text)[] files)
    {
        Directory.CreateDirectory(In(name));
        foreach ((string file, string text) in files)
        {
            File.WriteAllText(In(name, file), text);
        }

        return In(name);
    }

    /// <summary>Opens the club in its folder, or another one.</summary>
    public Club Open(string? folder = null, IDanceFactReader? reader = null) => Club.Open(folder ?? ClubFolder, Clock, reader ?? new PlainReader());

    /// <summary>Closes the club and opens it again.</summary>
    public Club Reopen(IDanceFactReader? reader = null)
    {
        _club?.Dispose();
        return _club = Open(reader: reader);
    }

    /// <summary>Closes the club.</summary>
    public void Close()
    {
        _club?.Dispose();
        _club = null;
    }

    public void Dispose()
    {
        Close();
        _folder.Delete(recursive: true);
    }
}
