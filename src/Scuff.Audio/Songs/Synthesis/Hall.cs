namespace Scuff.Audio.Songs.Synthesis;

/// <summary>A room: combs and all-passes for each ear (Schroeder 1962, with the damped combs of Moorer 1979).</summary>
internal sealed class Hall
{
    private readonly Comb[] _combs;
    private readonly AllPass[] _passes;

    /// <summary>A room that is still silent.</summary>
    /// <param name="seconds">Until a sound has fallen by 60 decibels.</param>
    /// <param name="offset">Samples added to each delay, so that the ears differ.</param>
    /// <param name="rate">Samples a second.</param>
    public Hall(double seconds, int offset, int rate)
    {
        // delays in milliseconds without a common divisor
        _combs = [.. new[] { 29.7, 37.1, 41.1, 43.7 }.Select(ms => new Comb((int)(ms * rate / 1000) + offset, Math.Pow(0.001, ms / 1000 / seconds)))];
        _passes = [new((int)(0.005 * rate) + offset), new((int)(0.0017 * rate) + offset)];
    }

    /// <summary>Adds the room's answer to what it is sent.</summary>
    public void Add(ReadOnlySpan<float> sent, float[] output, float level)
    {
        for (int i = 0; i < sent.Length; i++)
        {
            float x = sent[i];
            float sum = 0;
            foreach (Comb comb in _combs)
            {
                sum += comb.Next(x);
            }

            output[i] += level * _passes[1].Next(_passes[0].Next(0.25f * sum));
        }
    }

    private sealed class Comb(int length, double feedback)
    {
        private readonly float[] _line = new float[length];
        private readonly float _feedback = (float)feedback;
        private float _dark;
        private int _at;

        public float Next(float x)
        {
            float y = _line[_at];
            _dark = (0.65f * y) + (0.35f * _dark);
            _line[_at] = x + (_feedback * _dark);
            _at = _at + 1 == _line.Length ? 0 : _at + 1;
            return y;
        }
    }

    private sealed class AllPass(int length)
    {
        private readonly float[] _line = new float[length];
        private int _at;

        public float Next(float x)
        {
            float y = _line[_at];
            float into = x + (0.6f * y);
            _line[_at] = into;
            _at = _at + 1 == _line.Length ? 0 : _at + 1;
            return y - (0.6f * into);
        }
    }
}
