using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>A dance as written, once. Equal by value; places in the text count.</summary>
public sealed record Dance
{
    /// <summary>Title, or empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>The title in the text.</summary>
    public TextSpan TitleSpan { get; init; }

    /// <summary>All header fields in order.</summary>
    public ValueList<HeaderField> Header { get; init; }

    /// <summary>Rhythm in trade words (<c>cha cha</c>), or empty.</summary>
    public string Rhythm { get; init; } = "";

    /// <summary>Beats in a bar: 4, 3 or 2.</summary>
    public int BeatsPerBar { get; init; } = 4;

    /// <summary>Where the weight is before count 1.</summary>
    public Weight Start { get; init; } = Weight.Left;

    /// <summary>Whether the heading says where the weight starts.</summary>
    public bool StartIsStated { get; init; }

    /// <summary>Counts of the music's beat that one count of the dance takes: 1, 2 for half time, 1/2 for double time.</summary>
    public Ratio BeatsPerCount { get; init; } = 1;

    /// <summary>Claimed counts of one repetition.</summary>
    public NumberClaim? ClaimedCounts { get; init; }

    /// <summary>Claimed number of walls.</summary>
    public NumberClaim? ClaimedWalls { get; init; }

    /// <summary>Claimed number of restarts.</summary>
    public NumberClaim? ClaimedRestarts { get; init; }

    /// <summary>Claimed number of tags.</summary>
    public NumberClaim? ClaimedTags { get; init; }

    /// <summary>Claimed level, or null when none is stated or it is in words of her own.</summary>
    public Level? ClaimedLevel { get; init; }

    /// <summary>The parts; an ordinary dance has one.</summary>
    public ValueList<Part> Parts { get; init; }

    /// <summary>Order of the parts; empty for an ordinary dance.</summary>
    public ValueList<SequenceItem> Sequence { get; init; }

    /// <summary>Tags and bridges.</summary>
    public ValueList<Tag> Tags { get; init; }

    /// <summary>Where the pattern breaks whatever the track (written before any track).</summary>
    public ValueList<Interruption> Interruptions { get; init; }

    /// <summary>How it ends, or null.</summary>
    public Ending? Ending { get; init; }

    /// <summary>Tracks with their own plans.</summary>
    public ValueList<Track> Tracks { get; init; }

    /// <summary>Moves she defined in the dance.</summary>
    public ValueList<Steps.StepDefinition> OwnMoves { get; init; }

    /// <summary>Notes that belong to no line.</summary>
    public ValueList<Note> Notes { get; init; }

    /// <summary>Whether the dance has several parts in an order of its own.</summary>
    public bool IsPhrased => Parts.Count > 1 || Sequence.Count > 0;

    /// <summary>All sections of all parts.</summary>
    public IEnumerable<Section> Sections => Parts.SelectMany(p => p.Sections);

    /// <summary>Counts of one repetition (of all parts once, for a phrased dance), without tags.</summary>
    public Counts Length
    {
        get
        {
            Counts sum = Counts.Zero;
            foreach (Part part in Parts)
            {
                sum += part.Length;
            }

            return sum;
        }
    }

    /// <summary>The part of a name (without regard to case), or null.</summary>
    public Part? FindPart(string name) => Parts.FirstOrDefault(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The tag or bridge of a name (without regard to case); with an empty name the only one; null when there is none.</summary>
    public Tag? FindTag(string name) => name.Length == 0 && Tags.Count == 1
        ? Tags[0]
        : Tags.FirstOrDefault(t => string.Equals(t.Name, name, StringComparison.OrdinalIgnoreCase));
}
