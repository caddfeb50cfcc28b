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
    // Frames that go through the first layers at once: bounds the memory, not the answer. Even, since two become one, and whole tiles of the third layer.
    private const int Chunk = 240;

    // Steps that a convolution in time looks at: two before, the one itself, two after.
    private const int Kernel = 5;

    // Frames, and bands, that the first layer looks at together; neighbours that are pooled.
    private const int Near = 3;

    // Bands that the second layer looks at together, after pooling.
    private const int Span = 10;

    // Room for the answers.
    private const int Heads = 8;

    // Rows of the first layer are made in such lots.
    private const int Lot = 8;

    // The second layer is two filters of half as many taps.
    private const int Halves = 2;

    // Frames that the second layer, and tiles that the dilated ones, take at once: what they need stays near.
    private const int FramesAtOnce = 8;

    private const int TilesAtOnce = 64;

    // Between the numbers of one point and the next: where they lie whole pages apart, they drive each other out of the nearest memory.
    private const int Aside = 16;

    // What is pooled after the second layer is one tile.
    private static readonly TileFilter Second = new(Near, Span / Halves);

    private static readonly TileFilter Third = new(6, Near);

    private static readonly TileFilter Far = new(4, Kernel);

    private static readonly Lazy<Ear[]> Trained = new(ReadTrained);

    private readonly Shape _shape;
    private readonly Dictionary<string, float[]> _tensors = new(StringComparer.Ordinal);
    private readonly float[] _first;
    private readonly float[] _second;
    private readonly float[] _third;
    private readonly float[][] _dilated;
    private readonly float[][] _mixed;
    private readonly float[] _heads;

    private Ear(ReadOnlySpan<byte> bytes)
    {
        int header = MemoryMarshal.Read<int>(bytes);
        using JsonDocument document = JsonDocument.Parse(bytes.Slice(4, header).ToArray());
        JsonElement shape = document.RootElement;
        _shape = new Shape(Of("c1"), Of("c2"), Of("c"), Of("layers"));
        ReadOnlySpan<float> numbers = MemoryMarshal.Cast<byte, float>(bytes[(4 + header)..]);
        foreach (JsonElement tensor in shape.GetProperty("tensors").EnumerateArray())
        {
            int size = 1;
            foreach (JsonElement length in tensor.GetProperty("shape").EnumerateArray())
            {
                size *= length.GetInt32();
            }

            _tensors[tensor.GetProperty("name").GetString()!] = numbers[..size].ToArray();
            numbers = numbers[size..];
        }

        _first = Sideways("c1.weight", _shape.C1);
        _second = Halved(Turned("c2.weight", _shape.C2, _shape.C1, 1, Span));
        _third = Third.Tables(Turned("c3.weight", _shape.C, _shape.C2, Near, _tensors["c3.weight"].Length / (_shape.C * _shape.C2 * Near)));
        _dilated = [.. Enumerable.Range(0, _shape.Layers).Select(i => Far.Tables(Turned($"dil.{i}.weight", _shape.C, _shape.C, Kernel, 1)))];
        _mixed = [.. Enumerable.Range(0, _shape.Layers).Select(i => Turned($"mix.{i}.weight", _shape.C, _shape.C, 1, 1))];

        // rows of the answers are as wide as the machine's numbers, the rest stays nothing
        _heads = new float[_shape.C * Heads];
        float[] head = _tensors["head.weight"];
        for (int i = 0; i < head.Length; i++)
        {
            _heads[(i % _shape.C * Heads) + (i / _shape.C)] = head[i];
        }

        // from now on only the biases are looked up
        foreach (string name in _tensors.Keys.Where(n => n.EndsWith(".weight", StringComparison.Ordinal)).ToArray())
        {
            _tensors.Remove(name);
        }

        int Of(string name) => shape.GetProperty(name).GetInt32();
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

        // the last tile of the farthest layer looks beyond the end
        int farthest = 1 << (_shape.Layers - 1);
        int ahead = Kernel / 2 * farthest;
        int behind = (Far.Points - (Kernel / 2)) * farthest;
        using Scratch ofNow = new((ahead + steps + behind) * width);
        using Scratch ofNext = new((ahead + steps + behind) * width);
        Span<float> now = ofNow.Floats;
        Span<float> next = ofNext.Floats;
        for (int frame = 0; frame < spectrum.Frames; frame += Chunk)
        {
            cancel.ThrowIfCancellationRequested();
            Look(spectrum, frame, Math.Min(Chunk, spectrum.Frames - frame), now[((ahead + (frame / 2)) * width)..]);
            told(0.5 * frame / spectrum.Frames);
        }

        for (int layer = 0; layer < _shape.Layers; layer++)
        {
            cancel.ThrowIfCancellationRequested();
            told(0.5 + (0.5 * layer / _shape.Layers));
            LookAround(now, ahead, steps, layer, next);
            Span<float> before = now;
            now = next;
            next = before;
        }

        Span<float> x = now.Slice(ahead * width, steps * width);
        Bend(x);
        return Answer(x, steps);
    }

    // A layer that looks at steps that lie apart, and adds what it makes of them. A tile is four steps as far apart; tiles that begin beside each
    // other lie beside each other with all they look at. What a lot of tiles needs stays near.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void LookAround(ReadOnlySpan<float> x, int ahead, int steps, int layer, Span<float> to)
    {
        int width = _shape.C;
        int apart = 1 << layer;
        int tile = Far.Outputs * apart;
        int all = (steps / tile * apart) + Math.Min(apart, steps % tile);
        int pointSize = (TilesAtOnce * width) + Aside;
        float[] bias = _tensors[$"dil.{layer}.bias"];
        float[] mixedBias = _tensors[$"mix.{layer}.bias"];
        using Scratch ofPoints = new(Far.Points * pointSize);
        using Scratch ofProducts = new(Far.Points * pointSize);
        using Scratch ofSeen = new(Far.Outputs * TilesAtOnce * width);
        using Scratch ofMixed = new(Far.Outputs * TilesAtOnce * width);
        for (int first = 0; first < all; first += TilesAtOnce)
        {
            int tiles = Math.Min(TilesAtOnce, all - first);
            int size = tiles * width;
            for (int done = 0; done < tiles;)
            {
                (int at, int run) = RunOf(done);
                int start = (ahead + at - (Kernel / 2 * apart)) * width;
                Far.Spread(x, start, apart * width, run * width, ofPoints.Floats, done * width, pointSize);
                done += run;
            }

            ofProducts.Floats.Clear();
            for (int p = 0; p < Far.Points; p++)
            {
                ReadOnlySpan<float> table = _dilated[layer].AsSpan(p * width * width, width * width);
                Product.Add(ofPoints.Floats, p * pointSize, width, tiles, width, table, width, ofProducts.Floats[(p * pointSize)..]);
            }

            Span<float> seen = ofSeen.Floats[..(Far.Outputs * size)];
            Fill(seen, bias);
            Far.Gather(ofProducts.Floats, 0, pointSize, size, seen, 0, size);
            Bend(seen);
            Span<float> mixed = ofMixed.Floats[..(Far.Outputs * size)];
            Fill(mixed, mixedBias);
            Product.Add(seen, 0, width, Far.Outputs * tiles, width, _mixed[layer], width, mixed);
            for (int done = 0; done < tiles;)
            {
                (int at, int run) = RunOf(done);
                for (int o = 0; o < Far.Outputs; o++)
                {
                    // the last tile answers beyond the end as well
                    int step = at + (o * apart);
                    int length = Math.Clamp(steps - step, 0, run) * width;
                    int place = (ahead + step) * width;
                    Add(x.Slice(place, length), mixed.Slice((o * size) + (done * width), length), to.Slice(place, length));
                }

                done += run;
            }

            // the step at which a tile begins, and how many tiles begin side by side from there
            (int At, int Run) RunOf(int done)
            {
                int number = first + done;
                return ((number / apart * tile) + (number % apart), Math.Min(apart - (number % apart), tiles - done));
            }
        }
    }

    private Activations Answer(ReadOnlySpan<float> x, int steps)
    {
        float[] bias = _tensors["head.bias"];
        float[][] heads = [.. bias.Select(_ => new float[steps])];
        using Scratch ofSums = new(steps * Heads);
        Span<float> sums = ofSums.Floats;
        Product.Add(x, 0, _shape.C, steps, _shape.C, _heads, Heads, sums);
        for (int h = 0; h < heads.Length; h++)
        {
            for (int step = 0; step < steps; step++)
            {
                heads[h][step] = bias[h] + sums[(step * Heads) + h];
            }
        }

        return new Activations(heads[0], heads[1], heads[2], heads[3], heads[4]);
    }

    // Frames first to first + count of the spectrum, to half as many rows of x.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
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
        int row = kept * _shape.C2;
        int tiles = (count + Third.Outputs - 1) / Third.Outputs;
        int looked = (tiles * Third.Outputs) + Third.Taps - 1;
        using Scratch ofRows = new(looked * row);
        Span<float> rows = ofRows.Floats;
        LookAtShapes(levels, bands, count + 2, rows);

        // outside the sound the third layer sees nothing, as in training
        if (first == 0)
        {
            rows[..row].Clear();
        }

        if (first + count == spectrum.Frames)
        {
            rows[((count + 1) * row)..].Clear();
        }

        int width = _shape.C;
        int pointSize = (tiles * row) + Aside;
        int productSize = (tiles * width) + Aside;
        using Scratch ofPoints = new(Third.Points * pointSize);
        using Scratch ofProducts = new(Third.Points * productSize);
        using Scratch ofSeen = new(tiles * Third.Outputs * width);
        Span<float> seen = ofSeen.Floats;
        for (int tile = 0; tile < tiles; tile++)
        {
            Third.Spread(rows, tile * Third.Outputs * row, row, row, ofPoints.Floats, tile * row, pointSize);
        }

        for (int p = 0; p < Third.Points; p++)
        {
            ReadOnlySpan<float> table = _third.AsSpan(p * row * width, row * width);
            Product.Add(ofPoints.Floats, p * pointSize, row, tiles, row, table, width, ofProducts.Floats[(p * productSize)..]);
        }

        Fill(seen, _tensors["c3.bias"]);
        for (int tile = 0; tile < tiles; tile++)
        {
            Third.Gather(ofProducts.Floats, tile * width, productSize, width, seen, tile * Third.Outputs * width, width);
        }

        seen = seen[..(count * width)];
        Bend(seen);
        for (int i = 0; i < count; i += 2)
        {
            for (int c = 0; c < width; c++)
            {
                // a last odd frame stands alone
                float next = i + 1 < count ? seen[((i + 1) * width) + c] : seen[(i * width) + c];
                x[(i / 2 * width) + c] = 0.5f * (seen[(i * width) + c] + next);
            }
        }
    }

    // The first two layers: count frames (and one on either side) of levels, [frames × bands], to rows, [frames × kept × C2].
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private void LookAtShapes(ReadOnlySpan<float> levels, int bands, int count, Span<float> rows)
    {
        int pooled = (bands - Near + 1) / Near;
        int kept = (pooled - Span + 1) / Near;
        int row = kept * _shape.C2;
        int lots = ((pooled * Near) + Lot - 1) / Lot * Lot;
        int both = Halves * _shape.C1;
        int pointRows = FramesAtOnce * kept;
        float[] near = new float[(lots + Near - 1) * Near];
        float[] sums = new float[lots * _shape.C1];
        float[] small = new float[pooled * _shape.C1];
        using Scratch ofPoints = new(Second.Points * pointRows * both);
        using Scratch ofProducts = new(Second.Points * pointRows * _shape.C2);
        using Scratch ofWide = new(FramesAtOnce * kept * Near * _shape.C2);
        Span<float> products = ofProducts.Floats;
        for (int first = 0; first < count; first += FramesAtOnce)
        {
            int frames = Math.Min(FramesAtOnce, count - first);
            for (int i = 0; i < frames; i++)
            {
                Interleave(levels.Slice((first + i) * bands, Near * bands), near);
                Fill(sums, _tensors["c1.bias"]);
                Product.Add(near, 0, Near, lots, Near * Near, _first, _shape.C1, sums);
                Pool(sums, pooled, _shape.C1, small);
                for (int tile = 0; tile < kept; tile++)
                {
                    for (int half = 0; half < Halves; half++)
                    {
                        int start = ((tile * Near) + (half * Second.Taps)) * _shape.C1;
                        int place = (((i * kept) + tile) * both) + (half * _shape.C1);
                        Second.Spread(small, start, _shape.C1, _shape.C1, ofPoints.Floats, place, pointRows * both);
                    }
                }
            }

            products.Clear();
            for (int p = 0; p < Second.Points; p++)
            {
                ReadOnlySpan<float> table = _second.AsSpan(p * both * _shape.C2, both * _shape.C2);
                Product.Add(ofPoints.Floats, p * pointRows * both, both, frames * kept, both, table, _shape.C2, products[(p * pointRows * _shape.C2)..]);
            }

            Span<float> wide = ofWide.Floats[..(frames * kept * Near * _shape.C2)];
            Fill(wide, _tensors["c2.bias"]);
            for (int tile = 0; tile < frames * kept; tile++)
            {
                Second.Gather(products, tile * _shape.C2, pointRows * _shape.C2, _shape.C2, wide, tile * Near * _shape.C2, _shape.C2);
            }

            Pool(wide, frames * kept, _shape.C2, rows.Slice(first * row, frames * row));
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

    // The bias to every row; what is there already is copied, so that few copies do.
    private static void Fill(Span<float> rows, float[] bias)
    {
        if (rows.Length == 0)
        {
            return;
        }

        bias.CopyTo(rows);
        for (int done = bias.Length; done < rows.Length; done *= 2)
        {
            rows[..Math.Min(done, rows.Length - done)].CopyTo(rows[done..]);
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Add(ReadOnlySpan<float> one, ReadOnlySpan<float> other, Span<float> to)
    {
        ReadOnlySpan<Vector256<float>> ones = MemoryMarshal.Cast<float, Vector256<float>>(one);
        ReadOnlySpan<Vector256<float>> others = MemoryMarshal.Cast<float, Vector256<float>>(other);
        Span<Vector256<float>> sums = MemoryMarshal.Cast<float, Vector256<float>>(to);
        for (int i = 0; i < sums.Length; i++)
        {
            sums[i] = ones[i] + others[i];
        }
    }

    // The largest of three neighbours, then bent; [3 rows × width] to [rows × width], the width a multiple of eight.
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Pool(ReadOnlySpan<float> from, int rows, int width, Span<float> to)
    {
        _ = from[(Near * rows * width) - 1];
        _ = to[(rows * width) - 1];
        ref float source = ref MemoryMarshal.GetReference(from);
        ref float target = ref MemoryMarshal.GetReference(to);
        nuint u = (nuint)width;
        for (nuint r = 0; r < (nuint)rows; r++)
        {
            for (nuint c = 0; c < u; c += (nuint)Vector256<float>.Count)
            {
                nuint at = (Near * r * u) + c;
                Vector256<float> largest = Vector256.Max(
                    Vector256.LoadUnsafe(ref source, at),
                    Vector256.Max(Vector256.LoadUnsafe(ref source, at + u), Vector256.LoadUnsafe(ref source, at + (2 * u))));
                Bent(largest).StoreUnsafe(ref target, (r * u) + c);
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    private static void Bend(Span<float> values)
    {
        foreach (ref Vector256<float> v in MemoryMarshal.Cast<float, Vector256<float>>(values))
        {
            v = Bent(v);
        }
    }

    // The exponential linear unit: x above zero, e^x - 1 below (Clevert, Unterthiner and Hochreiter 2016). e^x is 2^n e^r with r at most half of ln 2,
    // and e^r its series to the sixth power: off by 1.2e-7 at most, the last bit of a number near 1.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector256<float> Bent(Vector256<float> x)
    {
        // below this e^x is nothing beside 1
        Vector256<float> low = Vector256.Max(Vector256.Min(x, Vector256<float>.Zero), Vector256.Create(-30f));
        Vector256<float> n = Vector256.Round(low * 1.44269504f);

        // ln 2 in two parts, so that nothing is lost (Cody and Waite 1980)
        Vector256<float> r = Vector256.FusedMultiplyAdd(n, Vector256.Create(-0.693359375f), low);
        r = Vector256.FusedMultiplyAdd(n, Vector256.Create(2.12194440e-4f), r);
        Vector256<float> e = Vector256.FusedMultiplyAdd(r, Vector256.Create(1f / 720), Vector256.Create(1f / 120));
        e = Vector256.FusedMultiplyAdd(e, r, Vector256.Create(1f / 24));
        e = Vector256.FusedMultiplyAdd(e, r, Vector256.Create(1f / 6));
        e = Vector256.FusedMultiplyAdd(e, r, Vector256.Create(0.5f));
        e = Vector256.FusedMultiplyAdd(e, r, Vector256<float>.One);
        e = Vector256.FusedMultiplyAdd(e, r, Vector256<float>.One);
        Vector256<int> power = Vector256.ShiftLeft(Vector256.ConvertToInt32Native(n) + Vector256.Create(127), 23);
        return Vector256.ConditionalSelect(Vector256.GreaterThan(x, Vector256<float>.Zero), x, (e * power.AsSingle()) - Vector256<float>.One);
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

    // The taps of the second layer, [pitch][in][out], to tables of the points, [point][half][in][out].
    private float[] Halved(float[] taps)
    {
        int size = taps.Length / Halves;
        int pointSize = size / Second.Taps;
        float[] tables = new float[Second.Points * Halves * pointSize];
        for (int half = 0; half < Halves; half++)
        {
            float[] spread = Second.Tables(taps.AsSpan(half * size, size));
            for (int p = 0; p < Second.Points; p++)
            {
                spread.AsSpan(p * pointSize, pointSize).CopyTo(tables.AsSpan(((p * Halves) + half) * pointSize));
            }
        }

        return tables;
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

    private sealed record Shape(int C1, int C2, int C, int Layers);
}
