namespace Scuff.Analysis.Fit;

/// <summary>
/// The problem of fitting, in whole numbers: counts of music, parts of a dance, and a price for everything. A plan is a start, then parts count by
/// count with acts between counts, until the music ends; its price is the sum of all it pays, and <see cref="NewKind"/> for each kind of act in it.
/// </summary>
public sealed record FitModel
{
    /// <summary>The longest tag or hold, in counts.</summary>
    public const int LongestTag = 16;

    /// <summary>A price that nobody pays. Four of them together still fit into a number.</summary>
    public const int Never = 1 << 28;

    /// <summary>How many counts of music there are.</summary>
    public required int Counts { get; init; }

    /// <summary>The parts.</summary>
    public required ValueList<FitPart> Parts { get; init; }

    /// <summary>For each count of the music: the price of what begins there, when it falls inside a section of the dance or into a tag.</summary>
    public required ValueList<int> Phrase { get; init; }

    /// <summary>For each part and each count of the music: the price of beginning the part there.</summary>
    public required ValueList<ValueList<int>> Begin { get; init; }

    /// <summary>Where the dance may begin.</summary>
    public required ValueList<FitStart> Starts { get; init; }

    /// <summary>For each part: whether the dance may begin with it.</summary>
    public required ValueList<bool> CanBeFirst { get; init; }

    /// <summary>For each count of the music: what it costs to stand still on it; <see cref="Never"/> where the music plays on.</summary>
    public required ValueList<int> Stand { get; init; }

    /// <summary>The price of each kind of act.</summary>
    public int NewKind { get; init; }

    /// <summary>The price of ending inside a section of the dance.</summary>
    public int EndInside { get; init; }

    /// <summary>What was decided about the plan. Decisions beyond the music ask for nothing.</summary>
    public ValueList<FitPin> Pins { get; init; } = [];

    /// <summary>What is the same for all tracks of the dance; null to find it anew.</summary>
    internal FitTables? Tables { get; init; }

    /// <summary>What dancing a count costs: something of the music begins on it, and nothing of the dance does.</summary>
    /// <param name="at">The count of the music.</param>
    /// <param name="part">The part.</param>
    /// <param name="count">The count of the part. On count 0 what it costs is in <see cref="Begin"/>.</param>
    public int Run(int at, int part, int count) => count == 0 || Parts[part].IsBoundary[count] ? 0 : Phrase[at];

    /// <summary>Whether a count may be danced there: where a part has to begin, only its first one; where extra counts have to, none.</summary>
    /// <param name="at">The count of the music.</param>
    /// <param name="count">The count of the part.</param>
    public bool MayRun(int at, int count) => Decided(at) switch
    {
        FitDecided.Begins => count == 0,
        FitDecided.Extra or FitDecided.Nothing => false,
        _ => true,
    };

    /// <summary>Whether an act may happen there: where a part has to begin, nothing may go on over that; the same for extra counts.</summary>
    /// <param name="at">The count of the music on which it begins.</param>
    /// <param name="act">The act.</param>
    public bool MayAct(int at, FitAct act)
    {
        if (Pins.Count == 0)
        {
            return true;
        }

        if (Pins.Any(p => p is FitPin.Undisturbed calm && at >= calm.From && at < calm.To))
        {
            return false;
        }

        // extra counts that begin where they have to are what was asked for
        return !Pins.Any(p => p switch
        {
            FitPin.Begins begins => begins.At >= at && begins.At < at + act.Length,
            FitPin.Extra extra => extra.At > at && extra.At < at + act.Length,
            _ => false,
        });
    }

    /// <summary>
    /// The first count by which the dance has to have begun, because something was decided about it; <see cref="Counts"/> when nothing was.
    /// </summary>
    public int LatestStart => Pins.Select(p => p switch
    {
        FitPin.Begins begins => begins.At,
        FitPin.Extra extra => extra.At - 1,
        _ => Counts,
    }).Where(at => at < Counts).Append(Counts).Min();

    /// <summary>What was decided of a count of the music.</summary>
    internal FitDecided Decided(int at)
    {
        if (Pins.Count == 0)
        {
            return FitDecided.Free;
        }

        bool begins = Pins.Any(p => p is FitPin.Begins b && b.At == at);
        bool extra = Pins.Any(p => p is FitPin.Extra e && e.At == at);
        return (begins, extra) switch
        {
            (true, true) => FitDecided.Nothing,
            (true, false) => FitDecided.Begins,
            (false, true) => FitDecided.Extra,
            _ => FitDecided.Free,
        };
    }

    /// <summary>What an act costs there, without its kind and without the part that begins after a restart.</summary>
    /// <param name="at">The count of the music on which it begins.</param>
    /// <param name="act">The act.</param>
    public int Act(int at, FitAct act)
    {
        if (!MayAct(at, act))
        {
            return Never;
        }

        int price = act.Price;
        for (int i = at; i < at + act.Length; i++)
        {
            price += (i > at ? Phrase[i] : 0) + (act.Type == FitActType.Hold ? Stand[i] : 0);
            if (price >= Never)
            {
                return Never;
            }
        }

        return price;
    }

    /// <summary>What it costs that the music ends at a count of a part.</summary>
    public int End(int part, int count) => Parts[part].IsBoundary[count] ? 0 : EndInside;
}
