namespace Scuff.Music.Corrections;

/// <summary>The beats of a track as one rising line: which (broken) beat is it at a time, and when is a beat. Beyond the ends it goes straight on.</summary>
/// <param name="beats">At least two times in seconds, rising.</param>
internal sealed class BeatCurve(double[] beats)
{
    /// <summary>The beat at a time, counted from 0, with its fraction.</summary>
    public double BeatAt(double seconds)
    {
        int i = Array.BinarySearch(beats, seconds);
        if (i >= 0)
        {
            return i;
        }

        int before = Math.Clamp(~i - 1, 0, beats.Length - 2);
        return before + ((seconds - beats[before]) / (beats[before + 1] - beats[before]));
    }

    /// <summary>When a beat falls, in seconds.</summary>
    public double SecondsAt(double beat)
    {
        int before = Math.Clamp((int)Math.Floor(beat), 0, beats.Length - 2);
        return beats[before] + ((beat - before) * (beats[before + 1] - beats[before]));
    }
}
