using Scuff.Analysis.Memory;

namespace Tests.Analysis.Memory;

/// <summary>
/// The forgetting curve against the worked figures of its source: H. Ebbinghaus, Über das Gedächtnis (Leipzig 1885), section 29, the table of savings that were
/// measured and savings that the formula gives; English by H. A. Ruger and C. E. Bussenius (New York 1913), pages 76 to 78. Figures from memory, held against the
/// formula that the same section states.
/// </summary>
public sealed class ForgettingCurveTests
{
    // minutes, saving measured, saving by the formula, in percent
    public static TheoryData<int, double, double> Table => new()
    {
        { 20, 58.2, 57.0 },
        { 64, 44.2, 46.7 },
        { 526, 35.8, 34.5 },
        { 24 * 60, 33.7, 30.4 },
        { 2 * 24 * 60, 27.8, 28.1 },
        { 6 * 24 * 60, 25.4, 24.9 },
        { 31 * 24 * 60, 21.1, 21.2 },
    };

    [Theory]
    [MemberData(nameof(Table))]
    public void It_gives_what_Ebbinghaus_reckoned_and_lies_near_what_he_measured(int minutes, double measured, double reckoned)
    {
        double saving = 100 * ForgettingCurve.Saving(minutes);

        Assert.Equal(reckoned, saving, 0.11);

        // his own largest difference is 3.3
        Assert.Equal(measured, saving, 3.4);
    }

    [Fact]
    public void At_first_all_is_there_and_then_ever_less_but_never_nothing()
    {
        double before = 1;
        for (int minutes = 0; minutes < 60 * 24 * 365 * 20; minutes = (minutes * 2) + 1)
        {
            double saving = ForgettingCurve.Saving(minutes);

            Assert.InRange(saving, 0.1, before);
            before = saving;
        }

        Assert.Equal(1, ForgettingCurve.Saving(0));
        Assert.Equal(0.5, ForgettingCurve.Saving(ForgettingCurve.HalfMinutes), 1e-12);
    }
}
