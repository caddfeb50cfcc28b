using Scuff.Audio.Ears;

namespace Scuff.Audio.Bars;

/// <summary>
/// Which count of the eight each beat is, found for all beats at once: the ones of bars and of eights that the ear
/// heard, against the rule that counts run on, with a price on every bar that is too long or too short.
/// </summary>
internal static class CountPath
{
    private const float Surest = 5;

    // An eight that ends after one bar of four: songs do that, so it costs less than two sure ones against it.
    private const float OddEight = 5;

    // A bar of two beats.
    private const float HalfBar = 8;

    // Any other bar: more often a slip of the beats than music.
    private const float OddBar = 12;

    // Songs begin with a pickup now and then.
    private const float Pickup = 1;

    // One of an eight against one of a bar.
    private const float EightWeight = 0.85f;

    // A section begins on a one.
    private const float StartWeight = 1.2f;

    /// <summary>The counts of the beats in a meter.</summary>
    /// <param name="beats">The beats in seconds.</param>
    /// <param name="beatsInBar">4 or 3.</param>
    /// <param name="one">How likely each beat is the one of a bar, logits, [beats].</param>
    /// <param name="eight">How likely each beat is count 1 of an eight, logits, [beats].</param>
    /// <param name="start">How likely a section begins at each beat, logits, [beats].</param>
    public static CountRow Find(double[] beats, int beatsInBar, float[] one, float[] eight, float[] start)
    {
        int cycle = beatsInBar == 3 ? 6 : 8;
        float[] score = new float[cycle];
        float[] now = new float[cycle];
        sbyte[] before = new sbyte[beats.Length * cycle];
        for (int i = 0; i < beats.Length; i++)
        {
            for (int c = 0; c < cycle; c++)
            {
                float best;
                int from;
                if (i == 0)
                {
                    best = c == 0 ? 0 : -Pickup;
                    from = 0;
                }
                else
                {
                    from = (c + cycle - 1) % cycle;
                    best = score[from];
                    for (int earlier = 0; c % beatsInBar == 0 && earlier < cycle; earlier++)
                    {
                        float s = score[earlier] - PriceOf(earlier, c, cycle, beatsInBar, start[i]);
                        if (s > best)
                        {
                            (best, from) = (s, earlier);
                        }
                    }
                }

                before[(i * cycle) + c] = (sbyte)from;
                now[c] = best + (c % beatsInBar == 0 ? one[i] : 0) + (c == 0 ? (EightWeight * eight[i]) + (StartWeight * Math.Max(0, start[i] + 1)) : 0);
            }

            (score, now) = (now, score);
        }

        int[] counts = new int[beats.Length];
        int state = Array.IndexOf(score, score.Max());
        float total = score[state];
        for (int i = beats.Length - 1; i >= 0; i--)
        {
            counts[i] = state + 1;
            state = before[(i * cycle) + state];
        }

        return new CountRow(counts, beatsInBar, total, start);
    }

    /// <summary>The largest logit within two steps of each beat, [beats], kept within what a lone answer may count for.</summary>
    public static float[] Near(float[] heard, double[] beats)
    {
        float[] near = new float[beats.Length];
        for (int i = 0; i < beats.Length; i++)
        {
            int step = (int)Math.Round(Activations.StepOf(beats[i]));
            float top = -Surest;
            for (int k = Math.Max(0, step - 2); k <= Math.Min(heard.Length - 1, step + 2); k++)
            {
                top = Math.Max(top, heard[k]);
            }

            near[i] = Math.Min(top, Surest);
        }

        return near;
    }

    private static float PriceOf(int earlier, int now, int cycle, int beatsInBar, float start)
    {
        int done = earlier + 1;
        if (done % cycle == now)
        {
            return 0;
        }

        // a bar that begins inside an eight without ending the one before is never worth it
        if (now != 0)
        {
            return OddBar + HalfBar;
        }

        float price = done % beatsInBar == 0 ? OddEight : done % 2 == 0 && beatsInBar == 4 ? HalfBar : OddBar;
        return price - Math.Clamp(1.3f * start, -1, 3.5f);
    }
}
