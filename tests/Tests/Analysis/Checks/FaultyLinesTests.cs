using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

public sealed class FaultyLinesTests
{
    [Theory]
    [MemberData(nameof(FaultyLines.All), MemberType = typeof(FaultyLines))]
    public void A_faulty_line_breaks_its_rule_and_no_other(string name, string text, string[] ids)
    {
        string[] found = [.. RuleBook.Complaints("Line " + name.Split(' ')[0] + "\n\n" + text)
            .Where(c => c.Severity != Severity.Hint)
            .Select(c => c.Rule.Id)
            .Order(StringComparer.Ordinal)];
        Assert.Equal(ids, found);
    }
}
