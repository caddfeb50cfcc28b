using Scuff.Audio.Bars;
using Scuff.Audio.Phrases;
using Scuff.Audio.Signals;

namespace Tests.Audio.Phrases;

/// <summary>Chords without drums, so that only pitch can tell where things change and repeat.</summary>
public sealed class BeatFeaturesTests
{
    private const int BeatsInBar = 4;

    // C, F, G in close position, hertz (equal temperament, A 440)
    private static readonly double[][] Chords = [[261.63, 329.63, 392.00], [349.23, 440.00, 523.25], [392.00, 493.88, 587.33], [220.00, 261.63, 329.63]];

    [Fact]
    public void A_chord_that_changes_makes_a_one_likelier_than_the_beats_around_it()
    {
        double[] beats = MadeHearing.Beats(64);
        BeatFeatures features = FeaturesOf([.. Enumerable.Range(0, 16).Select(bar => bar % 3)], beats);

        float[] one = OneEvidence.Of(MadeHearing.At(beats, [], []), beats, features);

        for (int bar = 1; bar < 15; bar++)
        {
            for (int beat = 1; beat < BeatsInBar; beat++)
            {
                Assert.True(one[bar * BeatsInBar] > one[(bar * BeatsInBar) + beat], $"bar {bar}, beat {beat + 1}");
            }
        }
    }

    [Fact]
    public void Sections_of_the_same_chords_get_the_same_letter_also_a_semitone_higher()
    {
        int[] verse = [0, 1, 0, 2, 0, 1, 2, 0];
        int[] chorus = [3, 2, 1, 3, 1, 2, 3, 2];
        double[] beats = MadeHearing.Beats(128);
        BeatFeatures features = FeaturesOf([.. verse, .. chorus, .. verse, .. chorus], beats, raisedFrom: 24);

        Assert.Equal(["A", "B", "A", "B"], SectionLabels.Find([0, 32, 64, 96], 128, features));
    }

    [Fact]
    public void Where_music_begins_that_is_heard_again_a_boundary_is_likelier_than_inside_it()
    {
        int[] verse = [0, 1, 3, 2, 1, 1, 2, 0];
        int[] chorus = [3, 2, 1, 3, 2, 0, 3, 3];
        double[] beats = MadeHearing.Beats(128);
        BeatFeatures features = FeaturesOf([.. verse, .. chorus, .. chorus, .. verse], beats);

        float[] likely = BoundaryEvidence.Of(new float[128], BeatsInBar, features, SelfLikeness.Of(features));

        Assert.True(likely[96] > likely[80], $"at the last verse {likely[96]}, inside the chorus before it {likely[80]}");
        Assert.True(likely[32] > likely[48], $"at the first chorus {likely[32]}, inside it {likely[48]}");
    }

    [Fact]
    public void A_start_that_was_heard_of_one_verse_makes_that_of_the_others_likelier()
    {
        int[] verse = [0, 1, 3, 2, 1, 1, 2, 0];
        int[] chorus = [3, 2, 1, 3, 2, 0, 3, 3];
        BeatFeatures features = FeaturesOf([.. verse, .. chorus, .. verse, .. chorus], MadeHearing.Beats(128));
        SelfLikeness likeness = SelfLikeness.Of(features);
        float[] heard = new float[128];
        float[] before = BoundaryEvidence.Of(heard, BeatsInBar, features, likeness);

        heard[96] = 4;
        float[] after = BoundaryEvidence.Of(heard, BeatsInBar, features, likeness);

        Assert.InRange(after[32] - before[32], 2, 4);
        Assert.Equal(before[64], after[64], 0.2f);
        Assert.Equal(before[40], after[40], 0.2f);
    }

    [Fact]
    public void What_is_heard_in_one_verse_counts_most_at_the_same_beat_of_the_other()
    {
        int[] verse = [0, 1, 3, 2, 1, 1, 2, 0];
        int[] chorus = [3, 2, 1, 3, 2, 0, 3, 3];
        SelfLikeness likeness = SelfLikeness.Of(FeaturesOf([.. verse, .. chorus, .. verse], MadeHearing.Beats(96)));
        float[] heard = new float[96];

        // from F to G: once in each verse
        heard[24] = 4;

        float[] joined = Echoes.Joined(heard, 3, likeness);

        // from A minor to G is nearly the same, so the chorus hears it too, but less
        Assert.All(Enumerable.Range(0, 96).Where(i => i != 88), i => Assert.True(joined[i] < 0.75f * joined[88], $"beat {i}: {joined[i]}, {joined[88]} where the verse comes back"));
        Assert.InRange(joined[88], 1, 3);
        Assert.Equal([0f, 0f, 0f, 0f], joined[84..88]);
        Assert.Equal(heard, Echoes.Joined(heard, 0, likeness));
    }

    // A bar of each chord at the beats given; from one bar on a semitone higher.
    private static BeatFeatures FeaturesOf(int[] bars, double[] beats, int raisedFrom = int.MaxValue)
    {
        float[] samples = new float[(int)((beats[^1] + 1) * Hearing.Rate)];
        for (int bar = 0; bar < bars.Length; bar++)
        {
            int from = (int)(beats[bar * BeatsInBar] * Hearing.Rate);
            int to = bar + 1 < bars.Length ? (int)(beats[(bar + 1) * BeatsInBar] * Hearing.Rate) : samples.Length;
            double raise = bar >= raisedFrom ? Math.Pow(2, 1 / 12.0) : 1;
            for (int i = from; i < to; i++)
            {
                samples[i] = (float)Chords[bars[bar]].Sum(hertz => 0.1 * Math.Sin(2 * Math.PI * hertz * raise * i / Hearing.Rate));
            }
        }

        MonoAudio audio = new(samples, Hearing.Rate);
        return BeatFeatures.Of(audio, Hearing.Spectrum(audio), beats);
    }
}
