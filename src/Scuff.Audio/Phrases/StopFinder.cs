using Scuff.Audio.Ears;
using Scuff.Music;

namespace Scuff.Audio.Phrases;

/// <summary>Where everybody stops.</summary>
internal static class StopFinder
{
    private const int Fewest = 2;

    /// <summary>Stops in order: from the beat of the last hit to the beat on which the music is back.</summary>
    public static TrackBreak[] Find(double[] beats, int[] counts, Activations heard)
    {
        float[] likely = new float[Math.Max(0, beats.Length - 1)];
        for (int i = 0; i < likely.Length; i++)
        {
            int first = Math.Clamp((int)Math.Round(Activations.StepOf(beats[i])), 0, heard.Stopped.Length - 1);
            int last = Math.Clamp((int)Math.Round(Activations.StepOf(beats[i + 1])), first + 1, heard.Stopped.Length);
            float sum = 0;
            for (int k = first; k < last; k++)
            {
                sum += 1 / (1 + MathF.Exp(-heard.Stopped[k]));
            }

            likely[i] = sum / (last - first);
        }

        List<TrackBreak> stops = [];
        for (int i = 0; i < likely.Length; i++)
        {
            if (likely[i] < 0.5f)
            {
                continue;
            }

            int end = i;
            while (end < likely.Length && likely[end] >= 0.5f)
            {
                end++;
            }

            // the music comes back on a one; a beat either way is the ear's own doubt
            int back = end < counts.Length && counts[end] != 1 && end + 1 < counts.Length && counts[end + 1] == 1 ? end + 1
                : end - 1 > i && counts[end - 1] == 1 ? end - 1
                : end;
            if (back - i >= Fewest)
            {
                stops.Add(new TrackBreak(beats[i], beats[back], true, likely.AsSpan(i, end - i).ToArray().Average()));
            }

            i = end;
        }

        return [.. stops];
    }
}
