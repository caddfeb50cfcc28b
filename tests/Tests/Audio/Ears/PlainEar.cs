using System.Text.Json;
using Scuff.Audio.Signals;

namespace Tests.Audio.Ears;

/// <summary>The network of bench/train written down layer by layer in plain loops: slow, and easy to hold against the script that trains it.</summary>
internal sealed class PlainEar
{
    private readonly Dictionary<string, double[]> _tensors = [];
    private readonly int _c1;
    private readonly int _c2;
    private readonly int _c;
    private readonly int _layers;

    /// <summary>The ear of a file of weights.</summary>
    public PlainEar(byte[] bytes)
    {
        int header = BitConverter.ToInt32(bytes, 0);
        using JsonDocument document = JsonDocument.Parse(bytes.AsMemory(4, header));
        JsonElement shape = document.RootElement;
        (_c1, _c2, _c, _layers) = (Of("c1"), Of("c2"), Of("c"), Of("layers"));
        int at = 4 + header;
        foreach (JsonElement tensor in shape.GetProperty("tensors").EnumerateArray())
        {
            int size = tensor.GetProperty("shape").EnumerateArray().Aggregate(1, (n, length) => n * length.GetInt32());
            _tensors[tensor.GetProperty("name").GetString()!] = [.. Enumerable.Range(0, size).Select(i => (double)BitConverter.ToSingle(bytes, at + (4 * i)))];
            at += 4 * size;
        }

        int Of(string name) => shape.GetProperty(name).GetInt32();
    }

    /// <summary>The five answers, [heads][steps].</summary>
    public double[][] Listen(Spectrogram spectrum)
    {
        int frames = spectrum.Frames;
        double[][][] rows = [.. Enumerable.Range(0, frames).Select(f => Shapes(spectrum, f))];
        int pitches = _tensors["c3.weight"].Length / (_c * _c2 * 3);
        double[][] seen = [.. Enumerable.Range(0, frames).Select(f => Row(_c, o =>
        {
            double sum = _tensors["c3.bias"][o];
            for (int t = 0; t < 3; t++)
            {
                for (int p = 0; p < pitches && f + t - 1 >= 0 && f + t - 1 < frames; p++)
                {
                    for (int i = 0; i < _c2; i++)
                    {
                        sum += rows[f + t - 1][p][i] * _tensors["c3.weight"][(((((o * _c2) + i) * 3) + t) * pitches) + p];
                    }
                }
            }

            return Bent(sum);
        }))];
        double[][] x = [.. seen.Chunk(2).Select(pair => Row(_c, o => pair.Average(p => p[o])))];
        for (int layer = 0; layer < _layers; layer++)
        {
            double[][] around = [.. x.Select((_, step) => Row(_c, o =>
            {
                double sum = _tensors[$"dil.{layer}.bias"][o];
                for (int k = 0; k < 5; k++)
                {
                    int other = step + ((k - 2) << layer);
                    for (int i = 0; i < _c && other >= 0 && other < x.Length; i++)
                    {
                        sum += x[other][i] * _tensors[$"dil.{layer}.weight"][(((o * _c) + i) * 5) + k];
                    }
                }

                return Bent(sum);
            }))];
            x = [.. x.Zip(around, (before, a) => Row(_c, o => before[o] + Dot($"mix.{layer}", o, a)))];
        }

        return [.. _tensors["head.bias"].Select((_, h) => x.Select(row => Dot("head", h, [.. row.Select(Bent)])).ToArray())];
    }

    // The first two layers of one frame, [pitches][C2].
    private double[][] Shapes(Spectrogram spectrum, int frame)
    {
        double[][] one = [.. Enumerable.Range(0, spectrum.Bands - 2).Select(b => Row(_c1, o =>
        {
            double sum = _tensors["c1.bias"][o];
            for (int i = 0; i < 9; i++)
            {
                int f = frame + (i / 3) - 1;
                sum += f < 0 || f >= spectrum.Frames ? 0 : spectrum[f][b + (i % 3)] * _tensors["c1.weight"][(o * 9) + i];
            }

            return sum;
        }))];
        double[][] small = Pooled(one);
        double[][] two = [.. Enumerable.Range(0, small.Length - 9).Select(b => Row(_c2, o =>
        {
            double sum = _tensors["c2.bias"][o];
            for (int k = 0; k < 10; k++)
            {
                for (int i = 0; i < _c1; i++)
                {
                    sum += small[b + k][i] * _tensors["c2.weight"][(((o * _c1) + i) * 10) + k];
                }
            }

            return sum;
        }))];
        return Pooled(two);
    }

    private static double[][] Pooled(double[][] rows)
        => [.. rows.Chunk(3).Where(c => c.Length == 3).Select(three => Row(three[0].Length, o => Bent(three.Max(r => r[o]))))];

    private static double[] Row(int width, Func<int, double> of) => [.. Enumerable.Range(0, width).Select(of)];

    private static double Bent(double x) => x > 0 ? x : Math.Exp(x) - 1;

    private double Dot(string name, int o, double[] row)
    {
        double[] weights = _tensors[name + ".weight"];
        return _tensors[name + ".bias"][o] + row.Select((v, i) => v * weights[(o * row.Length) + i]).Sum();
    }
}
