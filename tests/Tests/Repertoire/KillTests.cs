using Killed;
using Tests.Repertoire.Storage;

namespace Tests.Repertoire;

/// <summary>A short run of what <c>bench</c> does thousands of times: <c>dotnet run --project bench/Bench -c Release -- kills 3000</c>.</summary>
public sealed class KillTests
{
    private const int Kills = 10;

    [Fact]
    public void A_program_that_is_killed_while_it_writes_loses_nothing_it_had_done_and_leaves_nothing_halfway()
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("scuff-test-");
        try
        {
            KillReport report = new KillTrials(folder.FullName, seed: 20261129, EarlierForm.Text("First")).Run(Kills);

            Assert.Empty(report.Faults);
            Assert.Equal(Kills, report.Kills);
            Assert.True(report.Told > 0);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
