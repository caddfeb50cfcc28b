namespace Scuff.Sheets.Formats.Pdf;

/// <summary>How large a sheet is printed.</summary>
/// <param name="Body">Size of the type of the steps in points; all else follows from it.</param>
/// <param name="Pictures">Scale of the foot diagrams.</param>
/// <param name="Columns">How many columns there are.</param>
/// <param name="Air">Room between lines and blocks; 1 is what looks best.</param>
/// <param name="IsBeside">Whether the feet stand beside their section, which saves a third of its height, or below it.</param>
internal sealed record PrintSize(double Body, double Pictures, int Columns = 1, double Air = 1, bool IsBeside = false)
{
    /// <summary>
    /// The sizes that are tried, from the largest to the smallest that is still read at arm's length: the source is ours, looked at
    /// on paper. Large print begins at 16 points (source: the usual definition of large print among libraries for the blind).
    /// </summary>
    public static IReadOnlyList<PrintSize> For(SheetModel sheet) => (sheet.IsCard, sheet.IsLarge) switch
    {
        (false, true) when sheet.IsNotice => [new(24, 1), new(22, 1), new(20, 1), new(18, 1), new(16, 1), new(16, 1, 1, 0.6)],
        (false, false) when sheet.IsNotice =>
            [new(18, 1), new(17, 1), new(16, 1), new(15, 1), new(14, 1), new(13, 1), new(12.5, 1), new(12, 1), new(11.5, 1), new(11, 1), new(11, 1, 1, 0.8), new(10.5, 1, 1, 0.7), new(10, 1, 1, 0.6), new(9.5, 1, 1, 0.5)],
        (true, true) => [new(24, 1), new(22, 1), new(20, 1), new(18, 1), new(16, 1), new(16, 1, 2), new(14, 1, 2)],
        (true, false) => [new(16, 1), new(15, 1), new(14, 1), new(13, 1), new(12, 1), new(11, 1), new(12, 1, 2), new(11, 1, 2), new(10, 1, 2), new(9, 1, 2)],
        (false, true) => [new(16, 1.5)],
        _ =>
        [
            new(11, 1),
            new(10.5, 0.95, 1, 0.9),
            new(10.5, 0.95, 1, 0.9, IsBeside: true),
            new(10, 0.85, 1, 0.8),
            new(10, 0.85, 1, 0.8, IsBeside: true),
            new(9.5, 0.8, 1, 0.65),
            new(9.5, 0.8, 1, 0.65, IsBeside: true),
            new(9, 0.72, 1, 0.5),
            new(9, 0.72, 1, 0.5, IsBeside: true),
            new(9, 0.66, 1, 0.3, IsBeside: true),
        ],
    };
}
