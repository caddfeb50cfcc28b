using System.Globalization;
using Scuff;
using Scuff.Repertoire;

namespace Tests.Repertoire;

/// <summary>Reads facts from the plainest of texts: the title in the first line, then lines of "key: value"; "!" makes a warning.</summary>
internal sealed class PlainReader(string version = "1") : IDanceFactReader
{
    private int _read;

    public string Version => version;

    /// <summary>How many texts were read.</summary>
    public int TextsRead => _read;

    public DanceFacts Read(string text)
    {
        Interlocked.Increment(ref _read);
        string[] lines = text.Split('\n');
        return new DanceFacts
        {
            Title = lines[0].Trim(),
            Choreographer = Value("by"),
            Level = Value("level"),
            Rhythm = Value("rhythm"),
            Counts = int.TryParse(Value("counts"), CultureInfo.InvariantCulture, out int counts) ? counts : null,
            Walls = int.TryParse(Value("walls"), CultureInfo.InvariantCulture, out int walls) ? walls : null,
            SlowestTempo = double.TryParse(Value("tempo"), CultureInfo.InvariantCulture, out double tempo) ? tempo : null,
            FastestTempo = double.TryParse(Value("tempo"), CultureInfo.InvariantCulture, out double fast) ? fast : null,
            Songs = lines.Where(l => l.StartsWith("track: ", StringComparison.Ordinal)).Select(l => l[7..]).ToValueList(),
            Warnings = text.Count(c => c == '!'),
            Fingerprint = string.Join(';', lines.Where(l => l.Length > 0 && char.IsAsciiDigit(l[0])).Select(l => l.ToLowerInvariant())),
            Effort = int.TryParse(Value("effort"), CultureInfo.InvariantCulture, out int effort) ? effort : null,
            Rank = int.TryParse(Value("rank"), CultureInfo.InvariantCulture, out int rank) ? rank : null,
            Feet = Value("feet"),
        };

        string Value(string key) => lines.FirstOrDefault(l => l.StartsWith(key + ": ", StringComparison.Ordinal))?[(key.Length + 2)..].Trim() ?? "";
    }
}
