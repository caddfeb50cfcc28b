using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Signals;

/// <summary>
/// The spectrum of eight windows of real samples at once: each window has a lane of its own in every vector, so the
/// answer does not depend on how wide the machine's vectors are. Cooley and Tukey 1965; a real transform of n
/// samples through a complex one of n/2. Not for several threads at once.
/// </summary>
internal sealed class LaneFft
{
    /// <summary>How many windows are transformed together.</summary>
    public const int Lanes = 8;

    private readonly int _half;
    private readonly float[] _window;
    private readonly int[] _reversed;
    private readonly float[] _cos;
    private readonly float[] _sin;
    private readonly Vector256<float>[] _re;
    private readonly Vector256<float>[] _im;
    private readonly float[] _gather = new float[Lanes];

    /// <summary>Prepares windows of <paramref name="size"/> samples, a power of two of at least 8, under a Hann window.</summary>
    public LaneFft(int size)
    {
        if (size < 8 || (size & (size - 1)) != 0)
        {
            throw new ArgumentOutOfRangeException(nameof(size), size, "a power of two of at least 8");
        }

        Size = size;
        _half = size / 2;
        _window = new float[size];
        double sum = 0;
        for (int i = 0; i < size; i++)
        {
            _window[i] = (float)(0.5 - (0.5 * Math.Cos(2 * Math.PI * i / size)));
            sum += _window[i];
        }

        // a sine of amplitude 1 gives a magnitude of 1
        for (int i = 0; i < size; i++)
        {
            _window[i] *= (float)(2 / sum);
        }

        _reversed = new int[_half];
        int bits = int.Log2(_half);
        for (int i = 0; i < _half; i++)
        {
            int r = 0;
            for (int b = 0; b < bits; b++)
            {
                r |= ((i >> b) & 1) << (bits - 1 - b);
            }

            _reversed[i] = r;
        }

        _cos = new float[_half];
        _sin = new float[_half];
        for (int i = 0; i < _half; i++)
        {
            // steps of one part in size: the complex transform takes every second, the last pass every one
            _cos[i] = (float)Math.Cos(2 * Math.PI * i / size);
            _sin[i] = (float)Math.Sin(2 * Math.PI * i / size);
        }

        _re = new Vector256<float>[_half];
        _im = new Vector256<float>[_half];
    }

    /// <summary>Samples in a window.</summary>
    public int Size { get; }

    /// <summary>
    /// Magnitudes of bins 0 to size/2 - 1 for eight windows; window i begins at <paramref name="start"/> + i *
    /// <paramref name="hop"/>, and what lies outside the samples is silence.
    /// </summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void Magnitudes(ReadOnlySpan<float> samples, int start, int hop, Span<Vector256<float>> magnitudes)
    {
        Gather(samples, start, hop);
        Transform();

        magnitudes[0] = Vector256.Abs(_re[0] + _im[0]);
        for (int k = 1; k < _half; k++)
        {
            int m = _half - k;
            Vector256<float> evenRe = 0.5f * (_re[k] + _re[m]);
            Vector256<float> evenIm = 0.5f * (_im[k] - _im[m]);
            Vector256<float> oddRe = 0.5f * (_im[k] + _im[m]);
            Vector256<float> oddIm = -0.5f * (_re[k] - _re[m]);
            Vector256<float> c = Vector256.Create(_cos[k]);
            Vector256<float> s = Vector256.Create(_sin[k]);
            Vector256<float> re = evenRe + (oddRe * c) + (oddIm * s);
            Vector256<float> im = evenIm + (oddIm * c) - (oddRe * s);
            magnitudes[k] = Vector256.Sqrt((re * re) + (im * im));
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Gather(ReadOnlySpan<float> samples, int start, int hop)
    {
        bool isInside = start >= 0 && (long)start + ((Lanes - 1) * hop) + Size <= samples.Length;
        for (int i = 0; i < _half; i++)
        {
            int to = _reversed[i];
            _re[to] = Load(samples, start + (2 * i), hop, isInside) * _window[2 * i];
            _im[to] = Load(samples, start + (2 * i) + 1, hop, isInside) * _window[(2 * i) + 1];
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<float> Load(ReadOnlySpan<float> samples, int at, int hop, bool isInside)
    {
        if (isInside)
        {
            return Vector256.Create(
                samples[at],
                samples[at + hop],
                samples[at + (2 * hop)],
                samples[at + (3 * hop)],
                samples[at + (4 * hop)],
                samples[at + (5 * hop)],
                samples[at + (6 * hop)],
                samples[at + (7 * hop)]);
        }

        return AtTheEdge(samples, at, hop);
    }

    private Vector256<float> AtTheEdge(ReadOnlySpan<float> samples, int at, int hop)
    {
        for (int lane = 0; lane < Lanes; lane++)
        {
            long from = at + ((long)lane * hop);
            _gather[lane] = from >= 0 && from < samples.Length ? samples[(int)from] : 0;
        }

        return Vector256.Create<float>(_gather);
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void Transform()
    {
        Vector256<float>[] re = _re;
        Vector256<float>[] im = _im;
        for (int span = 1; span < _half; span *= 2)
        {
            int stride = _half / span;
            for (int j = 0; j < span; j++)
            {
                Vector256<float> c = Vector256.Create(_cos[j * stride]);
                Vector256<float> s = Vector256.Create(_sin[j * stride]);
                for (int a = j; a < _half; a += 2 * span)
                {
                    int b = a + span;
                    Vector256<float> tr = (re[b] * c) + (im[b] * s);
                    Vector256<float> ti = (im[b] * c) - (re[b] * s);
                    re[b] = re[a] - tr;
                    im[b] = im[a] - ti;
                    re[a] += tr;
                    im[a] += ti;
                }
            }
        }
    }
}
