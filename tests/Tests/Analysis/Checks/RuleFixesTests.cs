using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;

namespace Tests.Analysis.Checks;

/// <summary>Where a rule offers a mend, the first one mends its example and brings in nothing that cannot be danced.</summary>
public sealed class RuleFixesTests
{
    public static TheoryData<string> Ids { get; } =
        [.. RuleBook.All.Where(rule => RuleBook.Complaints(rule.Breaks).Any(c => c.Rule.Id == rule.Id && c.Fixes.Count > 0)).Select(rule => rule.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_best_fix_mends_the_first_example(string id)
    {
        string text = RuleBook.Of(id).Breaks;
        Draft draft = DanceReader.Read(text);
        foreach (Diagnostic complaint in Scuff.Analysis.DanceAnalysis.Of(draft).Report.Complaints.Where(c => c.Rule.Id == id && c.Fixes.Count > 0))
        {
            string mended = EditWriter.Apply(text, EditWriter.ToTextEdits(draft, complaint.Fixes[0].Remedy));
            Assert.NotEqual(text, mended);
            Assert.Empty(RuleBook.Complaints(mended)
                .Where(c => c.Rule.Id == id || c.Severity >= Severity.Question)
                .Select(c => c.Rule.Id + ": " + c.Message));
        }
    }

    [Fact]
    public void The_rules_that_can_be_mended_are_these() => Assert.Superset(
        new HashSet<string>
        {
            "count/total-differs", "facing/claim-differs", "facing/walls-differ", "interruption/facing-differs",
            "interruption/foot-not-free", "interruption/restarts-differ", "interruption/tags-differ", "turn/pivot-direction",
            "weight/close-unclear", "weight/does-not-repeat", "weight/foot-not-free", "weight/foot-not-standing",
            "weight/foot-unnamed-on-both", "weight/gesture-not-free", "weight/section-hand-over", "weight/stomp-unclear", "weight/switch-needs-step",
        },
        Ids.Select(row => row.Data).ToHashSet());
}
