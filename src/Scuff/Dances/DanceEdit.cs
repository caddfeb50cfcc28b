using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Dances;

/// <summary>
/// A mend told in dance terms, because checks know no words: the prose room writes it into the author's text.
/// </summary>
public abstract record DanceEdit : Remedy
{
    private DanceEdit()
    {
    }

    /// <summary>Put another facing in place of a printed one.</summary>
    /// <param name="Claim">The printed one.</param>
    /// <param name="Facing">The right one.</param>
    public sealed record SetFacing(FacingClaim Claim, Facing Facing) : DanceEdit;

    /// <summary>Set a header field (add it when missing).</summary>
    /// <param name="Key">Canonical key.</param>
    /// <param name="Value">New value.</param>
    public sealed record SetHeader(string Key, string Value) : DanceEdit;

    /// <summary>Dance one action in place of another (the words of <paramref name="Old"/> are replaced).</summary>
    /// <param name="Old">The written action.</param>
    /// <param name="New">What comes in its place.</param>
    public sealed record ReplaceStep(WrittenStep Old, StepAction New) : DanceEdit;

    /// <summary>Add an action after another, on a count of its own.</summary>
    /// <param name="After">The action before.</param>
    /// <param name="Label">Its count label.</param>
    /// <param name="New">What is danced.</param>
    public sealed record AddStep(WrittenStep After, string Label, StepAction New) : DanceEdit;

    /// <summary>Take an action out.</summary>
    /// <param name="Old">The written action.</param>
    public sealed record DropStep(WrittenStep Old) : DanceEdit;

    /// <summary>Dance the count before a restart differently.</summary>
    /// <param name="At">The interruption.</param>
    /// <param name="Label">The count within its section.</param>
    /// <param name="New">What is danced there.</param>
    public sealed record ChangeLastCount(Interruption At, string Label, StepAction New) : DanceEdit;

    /// <summary>State the intro of a track in other seconds.</summary>
    /// <param name="Track">The track, whose intro is stated in counts and seconds.</param>
    /// <param name="Seconds">The seconds, to a tenth.</param>
    public sealed record SetIntroSeconds(Track Track, Timing.Ratio Seconds) : DanceEdit;

    /// <summary>Write a track with its interruptions, in place of the one of the same title or as a new one.</summary>
    /// <param name="Track">The track.</param>
    /// <param name="Tags">Tags that it needs and the dance does not have yet.</param>
    public sealed record WriteTrack(Track Track, ValueList<Tag> Tags) : DanceEdit;

    /// <summary>Write an option under the lines whose counts it replaces.</summary>
    /// <param name="Section">The section, or the body of a tag.</param>
    /// <param name="Name">Its name: <c>easier</c>.</param>
    /// <param name="Places">The places of its counts in the section, in order.</param>
    /// <param name="Moves">What is danced instead, by the section's counting.</param>
    public sealed record AddOption(Section Section, string Name, ValueList<Timing.Counts> Places, ValueList<WrittenMove> Moves) : DanceEdit;
}
