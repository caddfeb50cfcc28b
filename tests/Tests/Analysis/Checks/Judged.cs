using Scuff.Analysis;
using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

/// <summary>Asks for the complaints about a made dance.</summary>
internal static class Judged
{
    public static string[] Ids(this DanceBuilder dance, params Diagnostic[] complaints)
        => [.. dance.Report(complaints).Complaints.Where(d => !complaints.Contains(d)).Select(d => d.Rule.Id)];

    public static Report Report(this DanceBuilder dance, params Diagnostic[] complaints)
        => DanceAnalysis.Of(dance.Draft(complaints)).Report;

    public static Diagnostic Only(this DanceBuilder dance) => Assert.Single(dance.Report().Complaints);
}
