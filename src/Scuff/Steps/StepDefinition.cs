using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Steps;

/// <summary>One movement of the trade, as data: the figure's names and the primitive actions it is made of. Equal by value.</summary>
public sealed record StepDefinition
{
    /// <summary>Stable key, words joined by underscores.</summary>
    public required string Id { get; init; }

    /// <summary>The name printed on sheets.</summary>
    public required string Name { get; init; }

    /// <summary>Other names it is read from.</summary>
    public ValueList<string> Aliases { get; init; }

    /// <summary>Direction words that choose this entry among those that share a name.</summary>
    public ValueList<string> Cues { get; init; }

    /// <summary>Whether this entry is meant when a shared name stands without a cue.</summary>
    public bool IsDefaultOfName { get; init; }

    /// <summary>Level at which dancers usually first meet it; advisory.</summary>
    public required string Level { get; init; }

    /// <summary>How right and left in front of the name are read.</summary>
    public required NamedBy NamedBy { get; init; }

    /// <summary>Beats of the bar it is made for: 4, 3, or null for any.</summary>
    public int? Meter { get; init; }

    /// <summary>What a caller says.</summary>
    public string Call { get; init; } = "";

    /// <summary>The positions in order, right-named.</summary>
    public required ValueList<PatternRow> Rows { get; init; }

    /// <summary>Weight before it.</summary>
    public RelativeWeight From { get; init; }

    /// <summary>Weight after it.</summary>
    public RelativeWeight To { get; init; }

    /// <summary>Turns commonly stated with it, in eighths, right-named.</summary>
    public ValueList<int> Amounts { get; init; }

    /// <summary>Where a stated turn goes.</summary>
    public ValueList<TurnShare> Spread { get; init; }

    /// <summary>Other entries to use when a turn is stated.</summary>
    public ValueList<TurnedForm> TurnedForms { get; init; }

    /// <summary>Other count patterns of the same rows, as label lists.</summary>
    public ValueList<ValueList<string>> Rhythms { get; init; }

    /// <summary>What else she may have meant.</summary>
    public ValueList<OtherReading> Others { get; init; }

    /// <summary>A remark on execution.</summary>
    public string? Note { get; init; }

    /// <summary>Where sources disagree and which reading is taken.</summary>
    public string? Conflict { get; init; }

    /// <summary>Keys of the sources that define it.</summary>
    public ValueList<string> Sources { get; init; }

    /// <summary>Keys of the sources that only list it.</summary>
    public ValueList<string> NamedIn { get; init; }

    /// <summary>How sure the entry is.</summary>
    public Confidence Confidence { get; init; }

    /// <summary>Sum of the turns of its rows, right-named.</summary>
    public Turn TotalTurn
    {
        get
        {
            Turn sum = Turn.None;
            foreach (PatternRow row in Rows)
            {
                sum += row.Action.Turn;
            }

            return sum;
        }
    }

    /// <summary>Counts from its count 1 to the end of its last whole count (a pick-up comes before that).</summary>
    public Counts Length
    {
        get
        {
            Counts last = Counts.Zero;
            foreach (PatternRow row in Rows)
            {
                last = Counts.Max(last, row.At);
            }

            return Counts.FromWhole(last.Value.Floor + 1);
        }
    }
}
