using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>What a sentence says of one place where the pattern breaks, while it is gathered word by word.</summary>
internal sealed class SentencePart
{
    /// <summary>Walls it names.</summary>
    public List<int> Walls { get; } = [];

    /// <summary>After how many counts of the wall.</summary>
    public Counts? After { get; set; }

    /// <summary>Whether it says that the wall is danced to its end.</summary>
    public bool WholeWall { get; set; }

    /// <summary>What is done there, in the order told.</summary>
    public List<InterruptionAct> Acts { get; } = [];

    /// <summary>Whether it tells what is done before it tells where: "restart on wall 2 after 16 counts".</summary>
    public bool ActFirst { get; set; }

    /// <summary>How often the tag is danced, where that is said without naming the tag again.</summary>
    public int? Times { get; set; }

    /// <summary>Whether what is danced there is called a bridge, after which the wall goes on.</summary>
    public bool SaysBridge { get; set; }

    /// <summary>Whether it says that the dance goes on from there.</summary>
    public bool SaysGoOn { get; set; }

    /// <summary>Whether it says that there is no tag or no restart.</summary>
    public bool Denied { get; set; }

    /// <summary>The facing printed.</summary>
    public FacingClaim? Claim { get; set; }

    /// <summary>Whether it tells another facing for each of its walls.</summary>
    public bool ClaimsDiffer { get; set; }

    /// <summary>Words that play no part in what is read.</summary>
    public List<WordToken> Unread { get; } = [];

    /// <summary>Whether anything is told that could be danced.</summary>
    public bool HasContent => Walls.Count > 0 || After is not null || Acts.Count > 0;
}
