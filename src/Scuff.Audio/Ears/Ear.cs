using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Text.Json;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Ears;

/// <summary>
/// A small network that says, fifty times a second, how likely a beat, the one of a bar, the one of an eight and the
/// start of a section are just then, and whether everybody has stopped. Three layers look at pitch and shape, ten at
/// the bars around (dilated convolutions in time, the idea of Davies and Böck, EUSIPCO 2019). Its weights are made by
/// bench/train from songs of our own.
/// </summary>
internal sealed class Ear
{
    // Frames that go through the first layers at once: bounds the memory, not the answer. Even, since two become one.
    private const int Chunk = 512;

    // Steps that a convolution in time looks at: two before, the one itself, two after.
    private const int Kernel = 5;

    // Frames, and bands, that the first layer looks at together; neighbours that are pooled.
    private const int Near = 3;

    // Bands that the second layer looks at together, after pooling.
    private const int Span = 10;

    // Rows of the first layer are made in such lots.
    private const int Lot = 8;

    private static readonly Lazy<Ear[]> Trained = new(ReadTrained);

    private readonly Shape _shape;
    private readonly Dictionary<string, float[]> _tensors = new(StringComparer.Ordinal);
    private readonly float[] _first;
    private readonly float[] _second;
    private readonly float[] _third;
    private readonly float[][] _dilated;
    private readonly float[][] _mixed;

    private Ear(ReadOnlySpan<byte> bytes)
    {
        int header = MemoryMarshal.Read<int>(bytes);
        _shape = JsonSerializer.Deserialize<Shape>(bytes.Slice(4, header), JsonSerializerOptions.Web)!;
        ReadOnlySpan<float> numbers = MemoryMarshal.Cast<byte, float>(bytes[(4 + header)..]);
        foreach (Tensor tensor in _shape.Tensors)
        {
            int size = tensor.Shape.Aggregate(1, (a, b) => a * b);
            _tensors[tensor.Name] = numbers[..size].ToArray();
            numbers = numbers[size..];
        }

        _first = Sideways("c1.weight", _shape.C1);
        _second = Turned("c2.weight", _shape.C2, _shape.C1, 1, Span);
        _third = Turned("c3.weight", _shape.C, _shape.C2, 3, 4);
        _dilated = [.. Enumerable.Range(0, _shape.Layers).Select(i => Turned($"dil.{i}.weight", _shape.C, _shape.C, Kernel, 1))];
        _mixed = [.. Enumerable.Range(0, _shape.Layers).Select(i => Turned($"mix.{i}.weight", _shape.C, _shape.C, 1, 1))];
    }

    /// <summary>
    /// Listens with every ear that comes with the program and takes the mean of what they say: those that were trained apart
    /// err in different places.
    /// </summary>
    /// <param name="spectrum">A spectrum of <see cref="Hearing.Spectrum"/>.</param>
    /// <param name="progress">Is told the part of the work that is done, 0 to 1.</param>
    /// <param name="cancel">Stops the work.</param>
    public static Activations ListenWithAll(Spectrogram spectrum, IProgress<double>? progress = null, CancellationToken cancel = default)
    {
        Ear[] ears = Trained.Value;
        Activations[] heard = new Activations[ears.Length];
        for (int i = 0; i < ears.Length; i++)
        {
            int before = i;
            heard[i] = ears[i].Listen(spectrum, part => progress?.Report((before + part) / ears.Length), cancel);
        }

        return new Activations(Mean(a => a.Beat), Mean(a => a.One), Mean(a => a.Eight), Mean(a => a.Start), Mean(a => a.Stopped));

        float[] Mean(Func<Activations, float[]> head)
        {
            float[] mean = new float[head(heard[0]).Length];
            foreach (float[] one in heard.Select(head))
            {
                for (int i = 0; i < mean.Length; i++)
                {
                    mean[i] += one[i] / heard.Length;
                }
            }

            return mean;
        }
    }

    /// <summary>An ear with other weights, as bench/train writes them.</summary>
    public static Ear From(ReadOnlySpan<byte> weights) => new(weights);

    /// <summary>Listens to a spectrum of <see cref="Hearing.Spectrum"/>.</summary>
    public Activations Listen(Spectrogram spectrum) => Listen(spectrum, _ => { }, CancellationToken.None);

    // The first layers do about half of the work.
    private Activations Listen(Spectrogram spectrum, Action<double> told, CancellationToken cancel)
    {
        int width = _shape.C;
        int steps = (spectrum.Frames + 1) / 2;
        int pad = (Kernel / 2) << (_shape.Layers - 1);
        using Scratch ofX = new(steps * width);
        using Scratch ofPadded = new((steps + (2 * pad)) * width);
        using Scratch ofSums = new(steps * width);
        Span<float> x = ofX.Floats;
        Span<float> padded = ofPadded.Floats;
        Span<float> sums = ofSums.Floats;
        for (int frame = 0; frame < spectrum.Frames; frame += Chunk)
        {
            cancel.ThrowIfCancellationRequested();
            Look(spectrum, frame, Math.Min(Chunk, spectrum.Frames - frame), x[(frame / 2 * width)..]);
            told(0.5 * frame / spectrum.Frames);
        }

        for (int layer = 0; layer < _shape.Layers; layer++)
        {
            cancel.ThrowIfCancellationRequested();
            told(0.5 + (0.5 * layer / _shape.Layers));
            x.CopyTo(padded[(pad * width)..]);
            Fill(sums, _tensors[$"dil.{layer}.bias"]);
            for (int k = 0; k < Kernel; k++)
            {
                int start = (pad + ((k - (Kernel / 2)) << layer)) * width;
                Product.Add(padded, start, width, steps, width, _dilated[layer].AsSpan(k * width * width, width * width), width, sums);
            }

            Bend(sums);
            Fill(padded[..sums.Length], _tensors[$"mix.{layer}.bias"]);
            Product.Add(sums, 0, width, steps, width, _mixed[layer], width, padded[..sums.Length]);
            for (int i = 0; i < x.Length; i++)
            {
                x[i] += padded[i];
            }

            padded[..(pad * width)].Clear();
            padded[((pad + steps) * width)..].Clear();
        }

        Bend(x);
        return Answer(x, steps);
    }

    private Activations Answer(ReadOnlySpan<float> x, int steps)
    {
        float[] weights = _tensors["head.weight"];
        float[] bias = _tensors["head.bias"];
        float[][] heads = [.. bias.Select(_ => new float[steps])];
        for (int step = 0; step < steps; step++)
        {
            ReadOnlySpan<float> row = x.Slice(step * _shape.C, _shape.C);
            for (int h = 0; h < heads.Length; h++)
            {
                float sum = bias[h];
                for (int i = 0; i < row.Length; i++)
                {
                    sum += row[i] * weights[(h * row.Length) + i];
                }

                heads[h][step] = sum;
            }
        }

        return new Activations(heads[0], heads[1], heads[2], heads[3], heads[4]);
    }

    // Frames first to first + count of the spectrum, to half as many rows of x.
    private void Look(Spectrogram spectrum, int first, int count, Span<float> x)
    {
        int bands = spectrum.Bands;

        // one frame more on either side for the third layer, and one more for the first
        using Scratch ofLevels = new((count + 4) * bands);
        Span<float> levels = ofLevels.Floats;
        for (int i = 0; i < count + 4; i++)
        {
            int frame = first + i - 2;
            if (frame >= 0 && frame < spectrum.Frames)
            {
                spectrum[frame].CopyTo(levels.Slice(i * bands, bands));
            }
        }

        // what pooling leaves over is not looked at
        int pooled = (bands - Near + 1) / Near;
        int kept = (pooled - Span + 1) / Near;
        int shapes = ((pooled * Near) + Lot - 1) / Lot * Lot;
        float[] near = new float[(shapes + Near - 1) * Near];
        float[] sums = new float[shapes * _shape.C1];
        float[] small = new float[pooled * _shape.C1];
        float[] wide = new float[kept * Near * _shape.C2];
        using Scratch ofRows = new((count + 2) * kept * _shape.C2);
        Span<float> rows = ofRows.Floats;
        for (int i = 0; i < count + 2; i++)
        {
            // outside the sound the third layer sees nothing, as in training
            int frame = first + i - 1;
            if (frame < 0 || frame >= spectrum.Frames)
            {
                continue;
            }

            Interleave(levels.Slice(i * bands, Near * bands), near);
            Fill(sums, _tensors["c1.bias"]);
            Product.Add(near, 0, Near, shapes, Near * Near, _first, _shape.C1, sums);
            Pool(sums, pooled, _shape.C1, small);
            Fill(wide, _tensors["c2.bias"]);
            Product.Add(small, 0, _shape.C1, kept * Near, Span * _shape.C1, _second, _shape.C2, wide);
            Pool(wide, kept, _shape.C2, rows.Slice(i * kept * _shape.C2, kept * _shape.C2));
        }

        int row = kept * _shape.C2;
        using Scratch ofSeen = new(count * _shape.C);
        Span<float> seen = ofSeen.Floats;
        Fill(seen, _tensors["c3.bias"]);
        for (int k = 0; k < 3; k++)
        {
            Product.Add(rows, k * row, row, count, row, _third.AsSpan(k * row * _shape.C, row * _shape.C), _shape.C, seen);
        }

        Bend(seen);
        for (int i = 0; i < count; i += 2)
        {
            for (int c = 0; c < _shape.C; c++)
            {
                // a last odd frame stands alone
                float next = i + 1 < count ? seen[((i + 1) * _shape.C) + c] : seen[(i * _shape.C) + c];
                x[(i / 2 * _shape.C) + c] = 0.5f * (seen[(i * _shape.C) + c] + next);
            }
        }
    }

    // Frames one after the other to the levels of a band side by side, so that three bands of three frames are one row; beyond the bands stays 0.
    private static void Interleave(ReadOnlySpan<float> frames, Span<float> near)
    {
        int bands = frames.Length / Near;
        for (int frame = 0; frame < Near; frame++)
        {
            ReadOnlySpan<float> levels = frames.Slice(frame * bands, bands);
            for (int band = 0, at = frame; band < levels.Length; band++, at += Near)
            {
                near[at] = levels[band];
            }
        }
    }

    private static void Fill(Span<float> rows, float[] bias)
    {
        for (int at = 0; at < rows.Length; at += bias.Length)
        {
            bias.CopyTo(rows[at..]);
        }
    }

    // The largest of three neighbours, then bent; [3 rows × width] to [rows × width].
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Pool(ReadOnlySpan<float> from, int rows, int width, Span<float> to)
    {
        for (int r = 0; r < rows; r++)
        {
            for (int c = 0; c < width; c++)
            {
                int at = (3 * r * width) + c;
                to[(r * width) + c] = MathF.Max(from[at], MathF.Max(from[at + width], from[at + (2 * width)]));
            }
        }

        Bend(to[..(rows * width)]);
    }

    // The exponential linear unit: x above zero, e^x - 1 below (Clevert, Unterthiner and Hochreiter 2016).
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Bend(Span<float> values)
    {
        Span<Vector256<float>> vectors = MemoryMarshal.Cast<float, Vector256<float>>(values);
        foreach (ref Vector256<float> v in vectors)
        {
            v = Vector256.ConditionalSelect(Vector256.GreaterThan(v, Vector256<float>.Zero), v, Vector256.Exp(Vector256.Min(v, Vector256<float>.Zero)) - Vector256<float>.One);
        }
    }

    // [out][time][pitch] as trained, to [pitch][time][out] as used.
    private float[] Sideways(string name, int outputs)
    {
        float[] from = _tensors[name];
        float[] to = new float[from.Length];
        for (int i = 0; i < from.Length; i++)
        {
            int time = i / Near % Near;
            int pitch = i % Near;
            to[(((pitch * Near) + time) * outputs) + (i / (Near * Near))] = from[i];
        }

        return to;
    }

    // [out][in][time][pitch] as trained, to [time][pitch][in][out] as used.
    private float[] Turned(string name, int outputs, int inputs, int times, int pitches)
    {
        float[] from = _tensors[name];
        float[] to = new float[from.Length];
        for (int o = 0; o < outputs; o++)
        {
            for (int i = 0; i < inputs; i++)
            {
                for (int t = 0; t < times; t++)
                {
                    for (int p = 0; p < pitches; p++)
                    {
                        to[((((t * pitches) + p) * inputs) + i) * outputs + o] = from[((((o * inputs) + i) * times) + t) * pitches + p];
                    }
                }
            }
        }

        return to;
    }

    private static Ear[] ReadTrained()
    {
        Assembly assembly = typeof(Ear).Assembly;
        return
        [
            .. assembly.GetManifestResourceNames().Where(n => n.StartsWith("data/ear/", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(name =>
            {
                using Stream stream = assembly.GetManifestResourceStream(name)!;
                byte[] bytes = new byte[stream.Length];
                stream.ReadExactly(bytes);
                return new Ear(bytes);
            }),
        ];
    }

    private sealed record Shape(int C1, int C2, int C, int Layers, Tensor[] Tensors);

    private sealed record Tensor(string Name, int[] Shape);
}
