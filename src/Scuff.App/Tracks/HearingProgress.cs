using System.Diagnostics;
using System.Globalization;

namespace Scuff.App.Tracks;

/// <summary>One line on standard error that says how far long work has come; nothing when that is no screen, or the work is short.</summary>
/// <param name="tracks">How many tracks there are.</param>
/// <param name="terminal">Where to tell it.</param>
/// <param name="patience">How long work may last untold; 0.7 seconds if not given. From then on it is told seven times in that span.</param>
internal sealed class HearingProgress(int tracks, Terminal terminal, TimeSpan? patience = null)
{
    private readonly TimeSpan _patience = patience ?? TimeSpan.FromSeconds(0.7);

    private readonly Lock _gate = new();
    private readonly double[] _parts = new double[tracks];
    private readonly Stopwatch _since = Stopwatch.StartNew();
    private TimeSpan _last;
    private int _shown;

    /// <summary>Where the work on one track tells how far it is.</summary>
    /// <param name="track">Which, from 0.</param>
    /// <param name="name">Its name.</param>
    public IProgress<double> Of(int track, string name) => new One(this, track, name);

    /// <summary>Takes the line off the screen, before something else is written.</summary>
    public void Clear()
    {
        lock (_gate)
        {
            if (_shown > 0)
            {
                terminal.Error.Write("\r" + new string(' ', _shown) + "\r");
                _shown = 0;
            }
        }
    }

    private void Report(int track, string name, double part)
    {
        lock (_gate)
        {
            _parts[track] = part;
            TimeSpan now = _since.Elapsed;
            if (!terminal.ErrorIsScreen || now < _patience || now - _last < _patience / 7)
            {
                return;
            }

            _last = now;
            string line = string.Create(CultureInfo.InvariantCulture, $"hearing {100 * _parts.Sum() / tracks:F0} %, {_parts.Count(p => p >= 1)} of {tracks} tracks: {Plain.Line(name)}");
            line = line.Length < terminal.Width ? line : line[..(terminal.Width - 1)];
            terminal.Error.Write("\r" + line.PadRight(_shown));
            _shown = line.Length;
        }
    }

    private sealed class One(HearingProgress all, int track, string name) : IProgress<double>
    {
        public void Report(double value) => all.Report(track, name, value);
    }
}
