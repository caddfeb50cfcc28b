namespace Scuff.App.Programmes;

/// <summary>
/// A wished course of effort, as a line through points. The shapes are ours, after common practice: begin with what all can do, the hardest in the middle, calm
/// at the end.
/// </summary>
/// <param name="Id">Its name in documents.</param>
/// <param name="Words">Its name for her.</param>
/// <param name="Points">Part of the evening in percent, and the effort there: 0 is the calmest dance that might be danced, 100 the liveliest.</param>
internal sealed record EveningCurve(string Id, string Words, ValueList<(int AtPercent, int EffortPercent)> Points)
{
    /// <summary>All shapes, the usual one first.</summary>
    public static IReadOnlyList<EveningCurve> All { get; } =
    [
        new("arch", "up and down", [(0, 30), (50, 80), (80, 70), (100, 20)]),
        new("steady", "steady", [(0, 45), (10, 55), (90, 55), (100, 45)]),
        new("waves", "in waves", [(0, 30), (17, 75), (34, 35), (50, 80), (67, 35), (84, 75), (100, 20)]),
        new("calm", "calm", [(0, 20), (50, 40), (100, 15)]),
        new("climb", "to a high end", [(0, 25), (50, 50), (90, 90), (100, 80)]),
    ];

    /// <summary>The shape of that name; the usual one when there is none.</summary>
    public static EveningCurve Find(string id) => All.FirstOrDefault(c => c.Id == id) ?? All[0];

    /// <summary>The effort wished there, 0 to 100.</summary>
    /// <param name="percent">Part of the evening, 0 to 100.</param>
    public int At(double percent)
    {
        for (int i = 1; i < Points.Count; i++)
        {
            if (percent <= Points[i].AtPercent)
            {
                (int from, int low) = Points[i - 1];
                (int to, int high) = Points[i];
                return (int)Math.Round(low + ((high - low) * (Math.Max(percent, from) - from) / (to - from)));
            }
        }

        return Points[^1].EffortPercent;
    }
}
