using Scuff.Audio.Songs;

namespace Scuff.Audio.Stretching;

/// <summary>
/// Music slower or faster with its pitch kept. Strikes and tones are parted and each is stretched in its own way: strikes land within a millisecond of
/// the map, tones keep their pitch. Good from half the speed to one and a quarter; beyond, tones blur.
/// </summary>
public static class MusicStretch
{
    /// <summary>The sound as the map plays it.</summary>
    /// <param name="sound">The sound.</param>
    /// <param name="map">When each moment of it is played; what is played before 0 is left out.</param>
    /// <param name="seconds">Length of the answer; null for as long as the sound lasts when played.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="OperationCanceledException">It was ended early.</exception>
    public static StereoSound Stretch(StereoSound sound, TimeMap map, double? seconds = null, CancellationToken cancel = default)
    {
        int rate = sound.Rate;
        int length = (int)Math.Round(Math.Max(0, seconds ?? map.PlayedAt(sound.Seconds)) * rate);
        float[] left = new float[length];
        float[] right = new float[length];
        if (map.IsPlain)
        {
            int same = Math.Min(length, sound.Left.Length);
            sound.Left.AsSpan(0, same).CopyTo(left);
            sound.Right.AsSpan(0, same).CopyTo(right);
            return new StereoSound(left, right, rate);
        }

        (float[] strikesLeft, float[] strikesRight) = StrikeFilter.Strikes(sound.Left, sound.Right, cancel);
        float[] tonesLeft = Without(sound.Left, strikesLeft);
        float[] tonesRight = Without(sound.Right, strikesRight);
        new ToneStretch().AddTo(tonesLeft, tonesRight, SourceAt, left, right, cancel);
        StrikeStretch.AddTo(strikesLeft, strikesRight, rate, SourceAt, PlayedAt, left, right, cancel);
        return new StereoSound(left, right, rate);

        double SourceAt(double sample) => map.SourceAt(sample / rate) * rate;
        double PlayedAt(double sample) => map.PlayedAt(sample / rate) * rate;
    }

    private static float[] Without(float[] all, float[] some)
    {
        float[] rest = new float[all.Length];
        for (int i = 0; i < rest.Length; i++)
        {
            rest[i] = all[i] - some[i];
        }

        return rest;
    }
}
