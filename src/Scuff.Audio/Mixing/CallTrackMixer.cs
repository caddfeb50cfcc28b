using Scuff.Audio.Songs;
using Scuff.Audio.Songs.Synthesis;
using Scuff.Audio.Stretching;
using Scuff.Audio.Voices;

namespace Scuff.Audio.Mixing;

/// <summary>
/// Mixes a call track: speech over clicks, over music that gives way to it, or both. Every call begins on the sample of its time; one whose time is short
/// is spoken faster with its pitch kept. The same input gives the same samples.
/// </summary>
public static class CallTrackMixer
{
    /// <summary>The most that speech is hurried: above it, short words are no longer understood. Design value, ours.</summary>
    public const double MostHurried = 1.35;

    private const int Rate = IVoice.Rate;

    // speech comes at VoiceTrim.Level; above music of its usual loudness it has to stand out
    private const float SpeechGain = 1.6f;
    private const float ClickGain = 0.5f;

    // what is over by less needs no hurry
    private const double Slack = 0.005;

    // the last of a word dies away for about as long: hurried words that are too long by less are cut there, and nothing is missed
    private const double Trimmed = 0.04;

    // between a call that is cut and the next
    private const double CutBefore = 0.02;
    private const double CutFade = 0.015;

    // sound after the last call or click has begun
    private const double Tail = 0.5;
    private const float Ceiling = 0.89f;

    /// <summary>Mixes.</summary>
    /// <param name="plan">What is heard when.</param>
    /// <param name="speaker">Who speaks.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="ArgumentException">A time lies before 0 or is no number, the calls are not in order, or the music has another rate.</exception>
    public static CallTrack Mix(CallTrackPlan plan, Speaker speaker, CancellationToken cancel = default)
    {
        Check(plan);
        speaker.Prepare(plan.Calls.Select(c => c.Words), cancel);
        List<(int At, float[] Samples)> spoken = [];
        List<string> unspoken = [];
        List<CallTime> overlong = [];
        for (int i = 0; i < plan.Calls.Count; i++)
        {
            CallTime call = plan.Calls[i];
            Spoken said = speaker.Say(call.Words);
            unspoken.AddRange(said.Unspoken);
            float[] words = Fitted(said.Sound.Samples, call, out bool isLate);
            if (isLate)
            {
                overlong.Add(call);
            }

            double next = i + 1 < plan.Calls.Count ? plan.Calls[i + 1].Seconds - CutBefore : double.PositiveInfinity;
            next = isLate ? next : Math.Min(next, call.Until + Slack);
            spoken.Add(((int)Math.Round(call.Seconds * Rate), CutAt(words, next - call.Seconds)));
        }

        double last = Math.Max(plan.Clicks.Count == 0 ? 0 : plan.Clicks.Max(c => c.Seconds), spoken.Count == 0 ? 0 : spoken.Max(s => (double)(s.At + s.Samples.Length) / Rate));
        int length = (int)Math.Ceiling(Math.Max(Math.Max(plan.Seconds, plan.Music?.Seconds ?? 0), last > 0 ? last + Tail : 0) * Rate);
        float[] left = new float[length];
        float[] right = new float[length];
        if (plan.Music is { } music)
        {
            MusicBed.AddTo(music, spoken.Where(s => s.Samples.Length > 0).Select(s => ((double)s.At / Rate, (double)(s.At + s.Samples.Length) / Rate)), left, right);
        }

        float[] low = WoodClick.Of(Rate, WoodClick.LowHertz);
        float[] high = WoodClick.Of(Rate, WoodClick.HighHertz);
        foreach (ClickTime click in plan.Clicks)
        {
            Add(click.IsOne ? low : high, (int)Math.Round(click.Seconds * Rate), ClickGain);
        }

        foreach ((int at, float[] samples) in spoken)
        {
            Add(samples, at, SpeechGain);
        }

        Limiter.Apply(left, right, Ceiling, Rate);
        return new CallTrack(new StereoSound(left, right, Rate), unspoken.Distinct(StringComparer.Ordinal).ToValueList(), overlong.ToValueList());

        void Add(float[] samples, int at, float gain)
        {
            int count = Math.Min(samples.Length, length - at);
            for (int i = 0; i < count; i++)
            {
                left[at + i] += samples[i] * gain;
                right[at + i] += samples[i] * gain;
            }
        }
    }

    private static void Check(CallTrackPlan plan)
    {
        if (plan.Music is { } music && music.Rate != Rate)
        {
            throw new ArgumentException(FormattableString.Invariant($"The music has to come at {Rate} samples a second."), nameof(plan));
        }

        double before = 0;
        foreach (CallTime call in plan.Calls)
        {
            if (!(call.Seconds >= before && double.IsFinite(call.Seconds) && call.Until >= call.Seconds))
            {
                throw new ArgumentException("Calls lie at 0 seconds or later, in order, and end after they begin.", nameof(plan));
            }

            before = call.Seconds;
        }

        if (plan.Clicks.Any(c => !(c.Seconds >= 0 && double.IsFinite(c.Seconds))) || !(plan.Seconds >= 0 && double.IsFinite(plan.Seconds)))
        {
            throw new ArgumentException("Clicks lie at 0 seconds or later.", nameof(plan));
        }
    }

    private static float[] Fitted(float[] words, CallTime call, out bool isLate)
    {
        double room = call.Until - call.Seconds;
        double length = (double)words.Length / Rate;
        isLate = false;
        if (length <= room + Slack)
        {
            return words;
        }

        float[] hurried = SpeechSqueeze.Squeeze(words, Rate, Math.Min(MostHurried, length / Math.Max(room, Slack)));
        isLate = (double)hurried.Length / Rate > room + Trimmed;
        return hurried;
    }

    private static float[] CutAt(float[] words, double seconds)
    {
        int most = (int)Math.Max(0, Math.Min(int.MaxValue, seconds * Rate));
        if (words.Length <= most)
        {
            return words;
        }

        float[] cut = words[..most];
        int fade = Math.Min(most, (int)(CutFade * Rate));
        for (int i = 0; i < fade; i++)
        {
            cut[most - 1 - i] *= (float)i / fade;
        }

        return cut;
    }
}
