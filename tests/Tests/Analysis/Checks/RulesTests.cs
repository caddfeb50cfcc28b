using Scuff.Analysis.Checks;
using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

public sealed class RulesTests
{
    [Fact]
    public void Checks_are_found_and_ordered_by_rule_id()
    {
        string[] ids = [.. AllChecks.Ordered.Select(check => check.Rule.Id)];
        Assert.Equal(ids.Order(StringComparer.Ordinal), ids);
        Assert.Equal(ids.Distinct(), ids);
        Assert.Contains("weight/foot-not-free", ids);
    }

    [Fact]
    public void Every_rule_says_what_why_and_shows_it()
    {
        foreach (Rule rule in RuleBook.All)
        {
            Assert.Matches("^[a-z]+/[a-z]+(-[a-z]+)*$", rule.Id);
            Assert.NotEmpty(rule.Message);
            Assert.NotEmpty(rule.Reason);
            Assert.NotEmpty(rule.Breaks);
            Assert.NotEmpty(rule.Keeps);
            Assert.NotEmpty(rule.Source);
        }
    }

    [Fact]
    public void No_message_leaves_a_place_empty()
    {
        foreach (Rule rule in RuleBook.All)
        {
            foreach (Diagnostic complaint in RuleBook.Complaints(rule.Breaks).Where(c => c.Rule.Id == rule.Id))
            {
                Assert.DoesNotContain("{", complaint.Message, StringComparison.Ordinal);
            }
        }
    }
}
