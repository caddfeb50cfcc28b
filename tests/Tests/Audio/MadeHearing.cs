using Scuff.Audio.Ears;

namespace Tests.Audio;

/// <summary>What an ear might have heard, made by hand.</summary>
internal static class MadeHearing
{
    /// <summary>Logits of about 3 at the given times, -4 elsewhere, [steps].</summary>
    public static float[] Pulses(IEnumerable<double> seconds, double length)
    {
        float[] heard = new float[(int)(length * Activations.StepsPerSecond) + 1];
        Array.Fill(heard, -4);
        foreach (double at in seconds.Select(Activations.StepOf))
        {
            for (int i = Math.Max(0, (int)at - 2); i <= Math.Min(heard.Length - 1, (int)at + 3); i++)
            {
                heard[i] = Math.Max(heard[i], (float)(3 - (3.5 * Math.Abs(i - at))));
            }
        }

        return heard;
    }

    /// <summary>Beats half a second apart from a second on.</summary>
    public static double[] Beats(int count) => [.. Enumerable.Range(0, count).Select(i => 1 + (0.5 * i))];

    /// <summary>Ones, eights, starts and stops at beats of such a row; the stops are stretches from beat to beat.</summary>
    public static Activations At(double[] beats, IEnumerable<int> ones, IEnumerable<int> eights, params (int From, int To)[] stops)
    {
        double length = beats[^1] + 2;
        float[] stopped = Pulses([], length);
        foreach ((int from, int to) in stops)
        {
            stopped.AsSpan((int)Activations.StepOf(beats[from]), (int)(Activations.StepOf(beats[to]) - Activations.StepOf(beats[from]))).Fill(3);
        }

        return new Activations(
            Pulses(beats, length),
            Pulses(ones.Select(b => beats[b]), length),
            Pulses(eights.Select(b => beats[b]), length),
            Pulses([], length),
            stopped);
    }
}
