namespace Scuff.Audio.Songs;

/// <summary>
/// A bar (or several) written as a line: one sign a step, the bar's beats shared out evenly. A dot rests, a dash holds the note
/// before it, anything else is struck: a digit by its force, a letter by its meaning to whoever plays it.
/// </summary>
internal sealed class Pattern
{
    private readonly string _line;

    public Pattern(string line) => _line = line.Replace(" ", "", StringComparison.Ordinal);

    /// <summary>Everything struck in a bar, in order.</summary>
    /// <param name="beats">Length of the bar; more than the line covers repeats it.</param>
    /// <param name="meter">Beats of the bar the line is written for.</param>
    /// <param name="bar">Which bar, for lines of several bars.</param>
    public IEnumerable<(double At, double Length, char Sign)> In(int beats, int meter, int bar)
    {
        // lines are written in sixteenths, or in thirds of a beat where their length says so
        int perBeat = _line.Length % (4 * meter) == 0 ? 4 : 3;
        int bars = Math.Max(1, _line.Length / (perBeat * meter));
        int from = bar % bars * perBeat * meter;
        for (int i = 0; i < Math.Min(beats, meter) * perBeat; i++)
        {
            char sign = _line[from + i];
            if (sign is '.' or '-')
            {
                continue;
            }

            int held = 1;
            while (i + held < meter * perBeat && _line[from + i + held] == '-')
            {
                held++;
            }

            yield return ((double)i / perBeat, (double)held / perBeat, sign);
        }
    }
}
