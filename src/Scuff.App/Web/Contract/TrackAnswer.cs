namespace Scuff.App.Web.Contract;

/// <summary>A track with its music, ready to draw. Times are seconds from the start of the sound.</summary>
internal sealed record TrackAnswer
{
    /// <summary>What a list shows of it.</summary>
    public required TrackItem Track { get; init; }

    /// <summary>The music; null when it was not heard.</summary>
    public required TrackMusic? Music { get; init; }

    /// <summary>What she said of it, in the order said.</summary>
    public required IReadOnlyList<TrackSaid> Said { get; init; }

    /// <summary>Names what was said; pass it on when saying more.</summary>
    public required int Revision { get; init; }

    /// <summary>What she should know before she trusts it, a sentence each.</summary>
    public required IReadOnlyList<string> Notes { get; init; }
}

/// <summary>The music of a track.</summary>
internal sealed record TrackMusic
{
    /// <summary>Length.</summary>
    public required double Seconds { get; init; }

    /// <summary>When each beat falls.</summary>
    public required double[] Beats { get; init; }

    /// <summary>The dancer's count of each beat; 0 where it is not known.</summary>
    public required int[] Counts { get; init; }

    /// <summary>The place of each beat in its bar, from 1; 0 where it is not known.</summary>
    public required int[] Bars { get; init; }

    /// <summary>Beats of an eight: 6 in a waltz.</summary>
    public required int Eight { get; init; }

    /// <summary>The eights in order; each begins where the one before ends.</summary>
    public required IReadOnlyList<TrackEight> Eights { get; init; }

    /// <summary>The sections in order.</summary>
    public required IReadOnlyList<TrackPart> Sections { get; init; }

    /// <summary>Where the music stops or thins out.</summary>
    public required IReadOnlyList<TrackGap> Breaks { get; init; }

    /// <summary>How loud it is: 0 for silence, 100 for its loudest moment.</summary>
    public required int[] Loudness { get; init; }

    /// <summary>Values of <see cref="Loudness"/> a second.</summary>
    public required double LoudnessPerSecond { get; init; }

    /// <summary>Beats a minute.</summary>
    public required TrackEstimate Tempo { get; init; }

    /// <summary>How beats fall into bars.</summary>
    public required TrackEstimate Meter { get; init; }

    /// <summary>How the halves of a beat are played.</summary>
    public required TrackEstimate Swing { get; init; }

    /// <summary>Where the dance starts.</summary>
    public required TrackEstimate Start { get; init; }

    /// <summary>The beat on which the dance starts, an index into <see cref="Beats"/>; -1 when unknown.</summary>
    public required int StartBeat { get; init; }

    /// <summary>Where the and stands between two beats, 0 to 1.</summary>
    public required double And { get; init; }
}

/// <summary>Something that was heard, how sure it is, and what else it might be.</summary>
/// <param name="Words">The answer.</param>
/// <param name="Sure">How sure it is, in words.</param>
/// <param name="Confidence">The same from 0 to 1.</param>
/// <param name="IsSaid">Whether a person has said it.</param>
/// <param name="Others">Other answers, the likelier first.</param>
internal sealed record TrackEstimate(string Words, string Sure, double Confidence, bool IsSaid, IReadOnlyList<TrackOther> Others);

/// <summary>Another answer.</summary>
/// <param name="Words">The answer.</param>
/// <param name="Say">What she says when it is the right one.</param>
internal sealed record TrackOther(string Words, TrackSay Say);

/// <summary>Counts that belong together: eight, in a waltz six, or fewer where the music begins anew.</summary>
/// <param name="Beat">Its first beat.</param>
/// <param name="Beats">How many it has.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it ends.</param>
/// <param name="Section">The section it lies in; -1 before the first.</param>
/// <param name="BeginsSection">Whether that begins with it.</param>
/// <param name="IsOdd">Whether it is too short or too long: where tags come from.</param>
internal sealed record TrackEight(int Beat, int Beats, double Start, double End, int Section, bool BeginsSection, bool IsOdd);

/// <summary>A section of the music.</summary>
/// <param name="Beat">Its first beat.</param>
/// <param name="Beats">How many it has.</param>
/// <param name="Start">When it begins.</param>
/// <param name="End">When it ends.</param>
/// <param name="Label">The same letter where the music is the same.</param>
/// <param name="Name">What a person calls it, or empty.</param>
/// <param name="Words">Both together, with its length.</param>
/// <param name="Sure">How sure its start is, in words.</param>
/// <param name="Confidence">The same from 0 to 1.</param>
internal sealed record TrackPart(int Beat, int Beats, double Start, double End, string Label, string Name, string Words, string Sure, double Confidence);

/// <summary>A place where the music stops or thins out.</summary>
/// <param name="Start">When the last hit before it falls.</param>
/// <param name="End">When the music is back.</param>
/// <param name="IsStop">Everybody stops; otherwise only the drums are gone.</param>
/// <param name="Words">What it is, in words.</param>
internal sealed record TrackGap(double Start, double End, bool IsStop, string Words);

/// <summary>One thing that was said of a track.</summary>
/// <param name="Words">What, in words.</param>
/// <param name="Text">It as it stands in a file of corrections, so that it can be said again.</param>
internal sealed record TrackSaid(string Words, string Text);

/// <summary>One thing that she says of a track; which of the rest is needed depends on the kind (docs/how-to/hear-a-track.md, Corrections).</summary>
/// <param name="Kind">taps, beat, one, meter, boundary-moved, boundary-added, boundary-removed, section, swing or first-count.</param>
internal sealed record TrackSay(string Kind)
{
    /// <summary>When the taps fell.</summary>
    public double[]? Seconds { get; init; }

    /// <summary>Where it begins to hold, or where a boundary was.</summary>
    public double? From { get; init; }

    /// <summary>Where it ends to hold, or where a boundary goes.</summary>
    public double? To { get; init; }

    /// <summary>half, double or off-beat; or the meter.</summary>
    public string? Is { get; init; }

    /// <summary>How many beats later count 1 falls.</summary>
    public int? BeatsLater { get; init; }

    /// <summary>The place.</summary>
    public double? At { get; init; }

    /// <summary>The letter of a section.</summary>
    public string? Label { get; init; }

    /// <summary>Its name.</summary>
    public string? Name { get; init; }

    /// <summary>Long half of a beat to short half.</summary>
    public double? Ratio { get; init; }
}

/// <summary>Something said of a track, or taken back.</summary>
/// <param name="Revision">The revision she sees.</param>
/// <param name="Say">What she says; null when she only takes back.</param>
/// <param name="Again">Something that was said before, as <see cref="TrackSaid.Text"/>, to be said again; or null.</param>
/// <param name="TakeBack">Which of the things said is taken back, from 0; null for none.</param>
internal sealed record TrackSayQuestion(int Revision, TrackSay? Say, string? Again, int? TakeBack);
