using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Dances;

/// <summary>A piece of music the dance is danced to, with what is special about the dance there.</summary>
public sealed record Track
{
    /// <summary>Title as written.</summary>
    public required string Title { get; init; }

    /// <summary>Artist as written, or empty.</summary>
    public string Artist { get; init; } = "";

    /// <summary>Stated tempo, or null.</summary>
    public Tempo? Tempo { get; init; }

    /// <summary>Stated intro in counts, or null.</summary>
    public Counts? Intro { get; init; }

    /// <summary>Stated intro in seconds, or null.</summary>
    public Ratio? IntroSeconds { get; init; }

    /// <summary>Stated length in seconds, or null.</summary>
    public Ratio? LengthSeconds { get; init; }

    /// <summary>Where the pattern breaks on this track.</summary>
    public ValueList<Interruption> Interruptions { get; init; }

    /// <summary>Order of the parts on this track, for a phrased dance.</summary>
    public ValueList<SequenceItem> Sequence { get; init; }

    /// <summary>Ending on this track, or null for the dance's own.</summary>
    public Ending? Ending { get; init; }

    /// <summary>Other words on the track, kept.</summary>
    public ValueList<Note> Notes { get; init; }

    /// <summary>Its line in the text.</summary>
    public required TextSpan Span { get; init; }

    /// <summary>One-based line of the text.</summary>
    public required int Line { get; init; }
}
