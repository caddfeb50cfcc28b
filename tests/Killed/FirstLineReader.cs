using Scuff.Repertoire;

namespace Killed;

/// <summary>Reads the title from the first line and nothing else: a dance is only something to be written here.</summary>
internal sealed class FirstLineReader : IDanceFactReader
{
    public string Version => "1";

    public DanceFacts Read(string text) => new() { Title = text.Split('\n')[0], Fingerprint = text.Length.ToString(System.Globalization.CultureInfo.InvariantCulture) };
}
