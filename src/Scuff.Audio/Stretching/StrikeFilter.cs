using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace Scuff.Audio.Stretching;

/// <summary>
/// Takes the strikes out of music: what is short in time and wide in pitch, against what sounds on. Source: Fitzgerald, Harmonic/percussive separation
/// using median filtering (2010), with soft masks; both channels by one mask, so that nothing moves between the loudspeakers.
/// </summary>
internal static class StrikeFilter
{
    private const int Size = 2048;
    private const int Hop = Size / 4;
    private const int Bins = Size / 2;
    private const int Reach = MedianNetwork.Count / 2;

    // frames worked on together; so many that those computed twice, at both edges, cost little
    private const int Block = 128;

    // four Hann windows squared, a quarter apart, add up to one and a half
    private const float Overlap = 1.5f;

    private static readonly float[] Window = Hann(Size);

    /// <summary>A window of raised cosine.</summary>
    public static float[] Hann(int size) => [.. Enumerable.Range(0, size).Select(i => (float)(0.5 - (0.5 * Math.Cos(2 * Math.PI * i / size))))];

    /// <summary>The strikes of both channels; what is left of the sound without them is the rest.</summary>
    public static (float[] Left, float[] Right) Strikes(float[] left, float[] right, CancellationToken cancel)
    {
        float[] strikesLeft = new float[left.Length];
        float[] strikesRight = new float[left.Length];
        int frames = (left.Length / Hop) + 4;
        int blocks = (frames + Block - 1) / Block;
        Lock adding = new();
        Parallel.For(
            0,
            blocks,
            new ParallelOptions { CancellationToken = cancel },
            () => new Work(),
            (b, _, work) =>
            {
                int first = b * Block;
                int count = Math.Min(Block, frames - first);
                work.Run(left, right, first, count);
                lock (adding)
                {
                    // at each edge two blocks add to the same samples: a sum of two, whose order changes nothing
                    int at = (first - 3) * Hop;
                    int from = Math.Max(0, -at);
                    int until = Math.Min(((count - 1) * Hop) + Size, left.Length - at);
                    for (int i = from; i < until; i++)
                    {
                        strikesLeft[at + i] += work.Left[i];
                        strikesRight[at + i] += work.Right[i];
                    }
                }

                return work;
            },
            _ => { });
        return (strikesLeft, strikesRight);
    }

    // What one thread needs for a block.
    private sealed class Work
    {
        private const int Rows = Block + (2 * Reach);

        // bins before the first and behind the last, for the medians along pitch
        private const int Wide = Bins + (4 * Reach);

        private readonly PairFft _fft = new(Size);
        private readonly float[] _re = new float[Rows * Size];
        private readonly float[] _im = new float[Rows * Size];
        private readonly float[] _power = new float[Rows * Wide];
        private readonly float[] _mask = new float[Bins];

        public float[] Left { get; } = new float[(Block * Hop) + Size];

        public float[] Right { get; } = new float[(Block * Hop) + Size];

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        public void Run(float[] left, float[] right, int first, int count)
        {
            Left.AsSpan().Clear();
            Right.AsSpan().Clear();
            int rows = count + (2 * Reach);
            for (int row = 0; row < rows; row++)
            {
                Look(left, right, (first - Reach + row - 3) * Hop, row);
            }

            for (int row = 0; row < count; row++)
            {
                MaskOf(row + Reach);
                int from = (row + Reach) * Size;
                float scale = 1f / (Size * Overlap);
                _fft.Re[0] = _fft.Im[0] = _fft.Re[Bins] = _fft.Im[Bins] = 0;
                for (int k = 1; k < Bins; k++)
                {
                    float mask = _mask[k] * scale;
                    _fft.Re[k] = _re[from + k] * mask;
                    _fft.Im[k] = _im[from + k] * mask;
                    _fft.Re[Size - k] = _re[from + Size - k] * mask;
                    _fft.Im[Size - k] = _im[from + Size - k] * mask;
                }

                _fft.Back();
                Span<float> outLeft = Left.AsSpan(row * Hop, Size);
                Span<float> outRight = Right.AsSpan(row * Hop, Size);
                for (int i = 0; i < Size; i++)
                {
                    outLeft[i] += _fft.Re[i] * Window[i];
                    outRight[i] += _fft.Im[i] * Window[i];
                }
            }
        }

        private void Look(float[] left, float[] right, int at, int row)
        {
            for (int i = 0; i < Size; i++)
            {
                int from = at + i;
                bool isInside = from >= 0 && from < left.Length;
                _fft.Re[i] = isInside ? left[from] * Window[i] : 0;
                _fft.Im[i] = isInside ? right[from] * Window[i] : 0;
            }

            _fft.Forward();
            _fft.Re.CopyTo(_re, row * Size);
            _fft.Im.CopyTo(_im, row * Size);
            Span<float> power = _power.AsSpan(row * Wide, Wide);
            for (int k = 1; k < Bins; k++)
            {
                int m = Size - k;
                power[k + Reach] = (_fft.Re[k] * _fft.Re[k]) + (_fft.Im[k] * _fft.Im[k]) + (_fft.Re[m] * _fft.Re[m]) + (_fft.Im[m] * _fft.Im[m]);
            }

            power[Reach] = power[Reach + 1];
            power[..Reach].Fill(power[Reach]);
            power[(Bins + Reach)..].Fill(power[Bins + Reach - 1]);
        }

        [MethodImpl(MethodImplOptions.AggressiveOptimization)]
        private void MaskOf(int row)
        {
            Span<Vector256<float>> along = stackalloc Vector256<float>[MedianNetwork.Count];
            Vector256<float> least = Vector256.Create(1e-20f);
            for (int k = 0; k < Bins; k += Vector256<float>.Count)
            {
                for (int i = 0; i < MedianNetwork.Count; i++)
                {
                    along[i] = Vector256.LoadUnsafe(ref _power[((row - Reach + i) * Wide) + k + Reach]);
                }

                Vector256<float> lasting = MedianNetwork.Of(along);
                for (int i = 0; i < MedianNetwork.Count; i++)
                {
                    along[i] = Vector256.LoadUnsafe(ref _power[(row * Wide) + k + i]);
                }

                Vector256<float> struck = MedianNetwork.Of(along);
                (struck / (struck + lasting + least)).StoreUnsafe(ref _mask[k]);
            }
        }
    }
}
