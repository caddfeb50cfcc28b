using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Reading;

/// <summary>What is known while a text is read from top to bottom.</summary>
internal sealed class ReaderState(string text, Lexicon lexicon)
{
    public string Text { get; } = text;

    public Lexicon Lexicon { get; set; } = lexicon;

    public Weight Weight { get; set; } = Weight.Left;

    /// <summary>Null once words could not be read.</summary>
    public Facing? Facing { get; set; } = Stance.Facing.Front;

    /// <summary>Complaints so far.</summary>
    public List<Diagnostic> Complaints { get; } = [];

    /// <summary>Lines of the section that is being read, for "repeat".</summary>
    public List<WrittenLine> SectionLines { get; } = [];

    /// <summary>Lines of the section before, for "repeat section 1".</summary>
    public List<Section> Sections { get; } = [];

    /// <summary>Whether a tag is being read: its end weight is judged even when a count is wanting.</summary>
    public bool InTag { get; set; }

    /// <summary>Entries whose other use has been told once.</summary>
    public HashSet<string> ToldUses { get; } = new(StringComparer.Ordinal);

    /// <summary>Whether the dance is a waltz, which chooses between figures of one name.</summary>
    public bool IsWaltz { get; set; }

    /// <summary>How both feet swung last, or null where the last move was another.</summary>
    public ActionKind? Swung { get; private set; }

    /// <summary>The last action that was read, or null.</summary>
    public StepAction? LastAction { get; private set; }

    public void Add(Diagnostic diagnostic) => Complaints.Add(diagnostic);

    /// <summary>Moves facing and weight on past the moves of a line.</summary>
    /// <param name="moves">The moves, in order.</param>
    /// <param name="weight">Where the weight is after them.</param>
    public void Follow(List<WrittenMove> moves, Weight weight)
    {
        Weight = weight;
        List<StepAction> made = [.. moves.SelectMany(m => m.Steps).Select(s => s.Action)];
        int last = made.FindLastIndex(a => a.Kind is not ActionKind.Hold);
        if (last >= 0 || made.Count == 0)
        {
            // after a line of holds the feet are where they were
            LastAction = last >= 0 && made[last].Kind is not ActionKind.Unknown ? made[last] : null;
        }

        Swung = moves.Count > 0 && moves[^1].Steps.Count > 0 && moves[^1].Steps[^1].Action is { Foot: ActingFoot.Both } swung
            && swung.Kind is ActionKind.SwivelHeels or ActionKind.SwivelToes or ActionKind.Swivel or ActionKind.Twist ? swung.Kind : null;
        foreach (WrittenMove move in moves)
        {
            foreach (WrittenStep step in move.Steps)
            {
                Facing = step.Action.Kind == ActionKind.Unknown ? null : Facing + step.Action.Turn;
            }
        }
    }
}
