using System.Runtime.CompilerServices;

namespace Scuff.Audio.Stretching;

/// <summary>
/// Stretches what sounds on: a phase vocoder whose bins keep their phase to the nearest peak. Source: Laroche and Dolson, Improved phase vocoder
/// time-scale modification of audio (1999). Both channels are turned by the same angle, which keeps their places between the loudspeakers; where the
/// sound is played at its own speed, the angle stands still and the sound comes out as it went in.
/// </summary>
internal sealed class ToneStretch
{
    private const int Size = 4096;
    private const int Hop = Size / 4;
    private const int Bins = Size / 2;

    // four Hann windows squared, a quarter apart, add up to one and a half
    private const float Overlap = 1.5f;

    // a partial that grew by more than this, in power, is struck anew and owes nothing to what was there
    private const float Anew = 16;

    // two windows closer than this say little about how fast a phase turns
    private const int NearestLooks = 64;

    private readonly PairFft _fft = new(Size);
    private readonly float[] _window = StrikeFilter.Hann(Size);
    private readonly float[] _power = new float[Bins + 1];
    private readonly float[] _turned = new float[Bins + 1];
    private readonly float[] _before = new float[Bins + 1];
    private readonly int[] _peaks = new int[Bins];
    private float[] _lastRe = new float[Size];
    private float[] _lastIm = new float[Size];
    private float[] _lastPower = new float[Bins + 1];
    private int _lastAt;
    private bool _isFirst = true;

    /// <summary>Adds the stretched sound to the outputs.</summary>
    /// <param name="left">Left channel of the sound.</param>
    /// <param name="right">Right channel of the sound.</param>
    /// <param name="sourceAt">What sample of the sound is played at a sample of the output.</param>
    /// <param name="outLeft">Takes the left channel.</param>
    /// <param name="outRight">Takes the right channel.</param>
    /// <param name="cancel">Ends it early.</param>
    public void AddTo(float[] left, float[] right, Func<double, double> sourceAt, float[] outLeft, float[] outRight, CancellationToken cancel)
    {
        for (int centre = -Hop; centre < outLeft.Length + (Size / 2); centre += Hop)
        {
            cancel.ThrowIfCancellationRequested();
            int at = (int)Math.Clamp(Math.Round(sourceAt(centre)), -Size, (double)left.Length + Size);
            Look(left, right, at - (Size / 2));
            Turn(at);
            Put(outLeft, outRight, centre - (Size / 2));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Look(float[] left, float[] right, int from)
    {
        float[] re = _fft.Re;
        float[] im = _fft.Im;
        bool isInside = from >= 0 && from + Size <= left.Length;
        for (int i = 0; i < Size; i++)
        {
            int at = from + i;
            bool has = isInside || (at >= 0 && at < left.Length);
            re[i] = has ? left[at] * _window[i] : 0;
            im[i] = has ? right[at] * _window[i] : 0;
        }

        _fft.Forward();
        for (int k = 1; k < Bins; k++)
        {
            int m = Size - k;
            _power[k] = (re[k] * re[k]) + (im[k] * im[k]) + (re[m] * re[m]) + (im[m] * im[m]);
        }

        _power[0] = (re[0] * re[0]) + (im[0] * im[0]);
        _power[Bins] = (re[Bins] * re[Bins]) + (im[Bins] * im[Bins]);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Turn(int at)
    {
        int step = at - _lastAt;
        int count = FindPeaks();
        for (int p = 0; p < count; p++)
        {
            int peak = _peaks[p];
            int from = p == 0 ? 0 : Valley(_peaks[p - 1], peak);
            int until = p == count - 1 ? Bins + 1 : Valley(peak, _peaks[p + 1]);
            float angle = _isFirst || _power[peak] > Anew * _lastPower[peak] ? 0 : _before[peak] + ((Hop - step) * Speed(peak, step));
            angle -= MathF.Tau * MathF.Round(angle / MathF.Tau);
            _turned.AsSpan(from, until - from).Fill(angle);
        }

        if (count == 0)
        {
            _turned.AsSpan().Clear();
        }

        _fft.Re.CopyTo(_lastRe, 0);
        _fft.Im.CopyTo(_lastIm, 0);
        _power.CopyTo(_lastPower, 0);
        _turned.CopyTo(_before, 0);
        _lastAt = at;
        _isFirst = false;
        Rotate();
    }

    private int FindPeaks()
    {
        int count = 0;
        float[] e = _power;
        for (int k = 2; k < Bins - 2; k++)
        {
            float here = e[k];
            if (here > 0 && here > e[k - 1] && here >= e[k + 1] && here > e[k - 2] && here >= e[k + 2])
            {
                _peaks[count++] = k;
            }
        }

        return count;
    }

    private int Valley(int from, int until)
    {
        int lowest = from + 1;
        for (int k = from + 2; k < until; k++)
        {
            if (_power[k] < _power[lowest])
            {
                lowest = k;
            }
        }

        return lowest;
    }

    // How fast the phase of a bin turns, radians a sample, told by the louder channel.
    private float Speed(int k, int step)
    {
        float middle = MathF.Tau * k / Size;
        if (step < NearestLooks)
        {
            return middle;
        }

        int m = Size - k;
        float[] re = _fft.Re;
        float[] im = _fft.Im;

        // the spectra of the two real windows, twice their size
        (float lr, float li) = (re[k] + re[m], im[k] - im[m]);
        (float rr, float ri) = (im[k] + im[m], re[m] - re[k]);
        bool isLeft = (lr * lr) + (li * li) >= (rr * rr) + (ri * ri);
        (float nowRe, float nowIm) = isLeft ? (lr, li) : (rr, ri);
        (float wasRe, float wasIm) = isLeft
            ? (_lastRe[k] + _lastRe[m], _lastIm[k] - _lastIm[m])
            : (_lastIm[k] + _lastIm[m], _lastRe[m] - _lastRe[k]);
        float turned = MathF.Atan2((nowIm * wasRe) - (nowRe * wasIm), (nowRe * wasRe) + (nowIm * wasIm));
        float expected = (float)(Math.Tau * ((long)k * step % Size) / Size);
        float off = turned - expected;
        off -= MathF.Tau * MathF.Round(off / MathF.Tau);
        return middle + (off / step);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Rotate()
    {
        float[] re = _fft.Re;
        float[] im = _fft.Im;
        float last = float.NaN;
        float c = 1;
        float s = 0;
        for (int k = 1; k < Bins; k++)
        {
            if (_turned[k] != last)
            {
                last = _turned[k];
                (s, c) = MathF.SinCos(last);
            }

            int m = Size - k;
            (re[k], im[k]) = ((re[k] * c) - (im[k] * s), (im[k] * c) + (re[k] * s));
            (re[m], im[m]) = ((re[m] * c) + (im[m] * s), (im[m] * c) - (re[m] * s));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Put(float[] left, float[] right, int from)
    {
        _fft.Back();
        const float scale = 1f / (Size * Overlap);
        int first = Math.Max(0, -from);
        int until = Math.Min(Size, left.Length - from);
        for (int i = first; i < until; i++)
        {
            float window = _window[i] * scale;
            left[from + i] += _fft.Re[i] * window;
            right[from + i] += _fft.Im[i] * window;
        }
    }
}
