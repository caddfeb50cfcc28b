namespace Scuff.Audio.Songs.Synthesis;

/// <summary>A band-pass of two poles, with gain 1 at its centre (Audio EQ Cookbook, R. Bristow-Johnson).</summary>
internal struct Resonator
{
    private readonly float _b0;
    private readonly float _a1;
    private readonly float _a2;
    private float _x1;
    private float _x2;
    private float _y1;
    private float _y2;

    public Resonator(double centre, double q, int rate)
    {
        double w = 2 * Math.PI * Math.Min(centre, 0.45 * rate) / rate;
        double alpha = Math.Sin(w) / (2 * q);
        _b0 = (float)(alpha / (1 + alpha));
        _a1 = (float)(-2 * Math.Cos(w) / (1 + alpha));
        _a2 = (float)((1 - alpha) / (1 + alpha));
    }

    public float Next(float x)
    {
        float y = (_b0 * (x - _x2)) - (_a1 * _y1) - (_a2 * _y2);
        _x2 = _x1;
        _x1 = x;
        _y2 = _y1;
        _y1 = y;
        return y;
    }
}
