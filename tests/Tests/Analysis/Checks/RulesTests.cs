using Scuff.Analysis.Checks;
using Scuff.Diagnostics;

namespace Tests.Analysis.Checks;

public sealed class RulesTests
{
    [Fact]
    public void Every_check_is_listed_in_the_order_of_rule_ids()
    {
        IEnumerable<ICheck> found = typeof(ICheck).Assembly.GetTypes()
            .Where(type => type is { IsClass: true, IsAbstract: false } && type.IsAssignableTo(typeof(ICheck)))
            .Select(type => (ICheck)Activator.CreateInstance(type)!);
        Assert.Equal(
            found.Select(check => check.Rule.Id).Order(StringComparer.Ordinal),
            AllChecks.Ordered.Select(check => check.Rule.Id));
    }

    [Fact]
    public void No_two_checks_share_a_rule()
        => Assert.Equal(AllChecks.Ordered.Count, AllChecks.Ordered.Select(check => check.Rule.Id).Distinct().Count());

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
            foreach (Diagnostic complaint in RuleBook.Complaints(rule.Breaks, rule.Music).Where(c => c.Rule.Id == rule.Id))
            {
                Assert.DoesNotContain("{", complaint.Message, StringComparison.Ordinal);
            }
        }
    }
}
