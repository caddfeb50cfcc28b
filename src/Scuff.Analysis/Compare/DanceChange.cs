using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>
/// One thing that differs between two versions of a dance, in dance terms and without words. Equal by value: moves, breaks and
/// endings in it are freed from their places in a text.
/// </summary>
public abstract record DanceChange
{
    private DanceChange()
    {
    }

    /// <summary>The later version is the earlier one on the other foot; what follows is told against that mirror image.</summary>
    public sealed record Mirrored : DanceChange;

    /// <summary>It has another title.</summary>
    public sealed record Renamed(string Before, string After) : DanceChange;

    /// <summary>Another field of the heading: its value changed, came (no value before) or went (no value after).</summary>
    /// <param name="Key">Its key (<c>level</c>).</param>
    /// <param name="Before">Value before, or null.</param>
    /// <param name="After">Value after, or null.</param>
    public sealed record HeadingField(string Key, string? Before, string? After) : DanceChange;

    /// <summary>One repetition has another number of counts.</summary>
    public sealed record Length(Counts Before, Counts After) : DanceChange;

    /// <summary>It has another number of walls; null where that is not known.</summary>
    public sealed record WallCount(int? Before, int? After) : DanceChange;

    /// <summary>It starts with the weight elsewhere.</summary>
    public sealed record StartWeight(Weight Before, Weight After) : DanceChange;

    /// <summary>One count takes another number of the music's beats.</summary>
    public sealed record BeatsPerCount(Ratio Before, Ratio After) : DanceChange;

    /// <summary>A part came or went.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Size">Its counts.</param>
    /// <param name="IsNew">Whether it came.</param>
    public sealed record WholePart(string Name, Counts Size, bool IsNew) : DanceChange;

    /// <summary>A section came or went.</summary>
    /// <param name="Place">Where it is: in the later version when it came, in the earlier when it went.</param>
    /// <param name="Size">Its counts.</param>
    /// <param name="Moves">What is danced in it.</param>
    /// <param name="IsNew">Whether it came.</param>
    public sealed record WholeSection(DancePlace Place, Counts Size, ValueList<WrittenMove> Moves, bool IsNew) : DanceChange;

    /// <summary>A section stands elsewhere in the order.</summary>
    public sealed record SectionMoved(DancePlace Before, DancePlace After) : DanceChange;

    /// <summary>The counts of a part are divided into other sections.</summary>
    /// <param name="PartName">The part, or empty.</param>
    /// <param name="Before">How many sections before.</param>
    /// <param name="After">How many after.</param>
    public sealed record SectionsDivided(string PartName, int Before, int After) : DanceChange;

    /// <summary>A section has another heading.</summary>
    public sealed record SectionRetitled(DancePlace Place, string Before, string After) : DanceChange;

    /// <summary>Other steps are danced on some counts.</summary>
    /// <param name="Place">The section or tag, as in the later version.</param>
    /// <param name="CountsBefore">The counts in the earlier version, within the section; of no length where nothing was.</param>
    /// <param name="CountsAfter">The counts in the later version; of no length where nothing is left.</param>
    /// <param name="Before">What was danced.</param>
    /// <param name="After">What is danced.</param>
    /// <param name="Landing">How the floor stands afterwards; null inside a tag, which is met at many facings.</param>
    public sealed record Steps(
        DancePlace Place,
        CountSpan CountsBefore,
        CountSpan CountsAfter,
        ValueList<WrittenMove> Before,
        ValueList<WrittenMove> After,
        Landing? Landing) : DanceChange
    {
        /// <summary>Whether the same actions are danced in another timing.</summary>
        public bool IsTiming => Before.Count > 0 && Danced(Before).SequenceEqual(Danced(After));

        private static IEnumerable<(StepAction Action, string Gesture)> Danced(ValueList<WrittenMove> moves)
            => moves.SelectMany(m => m.Steps).Select(s => (s.Action, s.Gesture.ToUpperInvariant()));
    }

    /// <summary>
    /// A facing in brackets and the facing that is danced there did not change together: one of them is as before. At most one of the two is
    /// right, so whoever goes by the brackets has to know.
    /// </summary>
    /// <param name="Place">The section, as in the later version.</param>
    /// <param name="Count">The count after which it holds, within the section.</param>
    /// <param name="Before">The facing she wrote before.</param>
    /// <param name="After">The facing she writes now.</param>
    /// <param name="DancedBefore">The facing that was danced.</param>
    /// <param name="DancedAfter">The facing that is danced.</param>
    public sealed record WrittenFacing(
        DancePlace Place,
        Counts Count,
        Facing Before,
        Facing After,
        Facing DancedBefore,
        Facing DancedAfter) : DanceChange
    {
        /// <summary>Whether the brackets stayed and the dance turns elsewhere.</summary>
        public bool IsLeftBehind => Before == After;
    }

    /// <summary>
    /// The facing in brackets at a break of the pattern and the facing that is danced there did not change together, as for
    /// <see cref="WrittenFacing"/>.
    /// </summary>
    /// <param name="TrackTitle">The track it is for; empty where it holds for every one.</param>
    /// <param name="Pause">The break in one wall, as in the later version.</param>
    /// <param name="Before">The facing she wrote before.</param>
    /// <param name="After">The facing she writes now.</param>
    /// <param name="DancedBefore">The facing that was danced.</param>
    /// <param name="DancedAfter">The facing that is danced.</param>
    public sealed record BreakFacing(
        string TrackTitle,
        Interruption Pause,
        Facing Before,
        Facing After,
        Facing DancedBefore,
        Facing DancedAfter) : DanceChange
    {
        /// <summary>Whether the brackets stayed and the dance turns elsewhere.</summary>
        public bool IsLeftBehind => Before == After;
    }

    /// <summary>The facing in brackets at the ending and the facing that is danced there did not change together.</summary>
    /// <param name="TrackTitle">The track it is for; empty for the dance's own ending.</param>
    /// <param name="Before">The facing she wrote before.</param>
    /// <param name="After">The facing she writes now.</param>
    /// <param name="DancedBefore">The facing that was danced.</param>
    /// <param name="DancedAfter">The facing that is danced.</param>
    public sealed record EndFacing(string TrackTitle, Facing Before, Facing After, Facing DancedBefore, Facing DancedAfter) : DanceChange
    {
        /// <summary>Whether the brackets stayed and the dance turns elsewhere.</summary>
        public bool IsLeftBehind => Before == After;
    }

    /// <summary>A note (style, arms, other words) changed, came or went.</summary>
    /// <param name="Place">Its section or tag; null for a note on the whole dance or on a track.</param>
    /// <param name="At">Its counts; null for a note on the whole section.</param>
    /// <param name="TrackTitle">Its track, or empty.</param>
    /// <param name="Kind">style, arms, note.</param>
    /// <param name="Before">Her words before, or null.</param>
    /// <param name="After">Her words after, or null.</param>
    public sealed record Remark(DancePlace? Place, CountSpan? At, string TrackTitle, string Kind, string? Before, string? After) : DanceChange;

    /// <summary>An option changed, came (nothing before) or went (nothing after).</summary>
    /// <param name="Place">Its section or tag.</param>
    /// <param name="Replaces">The counts it replaces.</param>
    /// <param name="Name">Its name, or empty.</param>
    /// <param name="Before">What it was.</param>
    /// <param name="After">What it is.</param>
    public sealed record Option(
        DancePlace Place,
        CountSpan Replaces,
        string Name,
        ValueList<WrittenMove> Before,
        ValueList<WrittenMove> After) : DanceChange;

    /// <summary>A tag or bridge came or went.</summary>
    /// <param name="Name">Its name, or empty.</param>
    /// <param name="IsBridge">Whether it is called a bridge.</param>
    /// <param name="Size">Its counts.</param>
    /// <param name="Moves">What is danced in it.</param>
    /// <param name="IsNew">Whether it came.</param>
    public sealed record WholeTag(string Name, bool IsBridge, Counts Size, ValueList<WrittenMove> Moves, bool IsNew) : DanceChange;

    /// <summary>A tag has another name, or is now called a bridge (or no longer).</summary>
    public sealed record TagRenamed(string Before, bool WasBridge, string After, bool IsBridge) : DanceChange;

    /// <summary>The order of the parts changed.</summary>
    /// <param name="TrackTitle">The track it is for; empty for the dance's own.</param>
    /// <param name="Before">Order before.</param>
    /// <param name="After">Order after.</param>
    public sealed record Sequence(string TrackTitle, ValueList<SequenceItem> Before, ValueList<SequenceItem> After) : DanceChange;

    /// <summary>A tag, bridge or restart in one wall came, went, moved, or is danced otherwise.</summary>
    /// <param name="TrackTitle">The track it is for; empty where it holds for every one.</param>
    /// <param name="Before">It before, in one wall; null when it came.</param>
    /// <param name="After">It after, in one wall; null when it went.</param>
    public sealed record Break(string TrackTitle, Interruption? Before, Interruption? After) : DanceChange
    {
        /// <summary>Whether the same is done at another place.</summary>
        public bool IsMoved => Before is not null && After is not null && Before.Acts == After.Acts && Before.Changes == After.Changes;

        /// <summary>Whether something else is done at the same place.</summary>
        public bool IsDancedOtherwise => Before is not null && After is not null
            && Before.Walls == After.Walls && Before.PartName == After.PartName && Before.AfterCounts == After.AfterCounts;
    }

    /// <summary>The ending changed, came or went.</summary>
    /// <param name="TrackTitle">The track it is for; empty for the dance's own.</param>
    /// <param name="Before">Ending before, or null.</param>
    /// <param name="After">Ending after, or null.</param>
    public sealed record Finish(string TrackTitle, Ending? Before, Ending? After) : DanceChange;

    /// <summary>A track came (nothing before), went (nothing after), or took the place of another.</summary>
    public sealed record Music(string? TitleBefore, string ArtistBefore, string? TitleAfter, string ArtistAfter) : DanceChange;

    /// <summary>A track has another tempo; null where none is stated.</summary>
    public sealed record TrackTempo(string TrackTitle, Tempo? Before, Tempo? After) : DanceChange;

    /// <summary>A track has another intro, in counts or seconds.</summary>
    public sealed record TrackIntro(string TrackTitle, Counts? Before, Ratio? SecondsBefore, Counts? After, Ratio? SecondsAfter) : DanceChange;

    /// <summary>A track has another length in seconds; null where none is stated.</summary>
    public sealed record TrackLength(string TrackTitle, Ratio? Before, Ratio? After) : DanceChange;

    /// <summary>A move of her own changed, came or went.</summary>
    /// <param name="Name">Its name.</param>
    /// <param name="Before">What it was, or null.</param>
    /// <param name="After">What it is, or null.</param>
    public sealed record OwnMove(string Name, StepDefinition? Before, StepDefinition? After) : DanceChange;

    /// <summary>Only the wording changed; what is danced did not.</summary>
    /// <param name="Places">The sections and tags it changed in.</param>
    /// <param name="Elsewhere">Whether words outside the sections changed as well.</param>
    public sealed record WordsOnly(ValueList<DancePlace> Places, bool Elsewhere) : DanceChange;
}
