using Scuff.Stance;

namespace Scuff.Prose.Reading;

/// <summary>One way to dance a whole line.</summary>
/// <param name="Rows">The rows in order.</param>
/// <param name="Cost">How far-fetched it is; 0 is what the words say.</param>
/// <param name="Fits">Whether moves and counts come out even.</param>
/// <param name="Actions">Number of actions read, for the arithmetic of a misfit.</param>
/// <param name="Weight">Where the weight is afterwards.</param>
internal sealed record LineReading(List<PlacedRow> Rows, double Cost, bool Fits, int Actions, Weight Weight)
{
    /// <summary>Whether another reading has the same feet, weight and turns on the same counts.</summary>
    public bool DancesLike(LineReading other)
    {
        List<PlacedRow> mine = Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).ToList();
        List<PlacedRow> theirs = other.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).ToList();
        if (mine.Count != theirs.Count || Weight != other.Weight)
        {
            return false;
        }

        for (int i = 0; i < mine.Count; i++)
        {
            if (mine[i].Place != theirs[i].Place || mine[i].Action.Foot != theirs[i].Action.Foot
                || mine[i].Action.Effect != theirs[i].Action.Effect || mine[i].Action.Turn != theirs[i].Action.Turn)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Whether the words it leaves out say the same once more.</summary>
    public bool SaidTwice { get; init; }

    /// <summary>Whether the body turns anywhere.</summary>
    public bool Turns => Rows.Exists(r => r.Action.Turn.Sign != 0);

    /// <summary>Whether another reading has the same feet and weight on the same counts, whatever the turns.</summary>
    public bool SameFeet(LineReading other)
    {
        List<PlacedRow> mine = Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).ToList();
        List<PlacedRow> theirs = other.Rows.Where(r => !r.IsWith && r.Action.Foot != ActingFoot.None).ToList();
        return mine.Count == theirs.Count && Weight == other.Weight
            && mine.Zip(theirs).All(p => p.First.Place == p.Second.Place && p.First.Action.Foot == p.Second.Action.Foot
            && p.First.Action.Effect == p.Second.Action.Effect);
    }
}
