namespace Tests.Analysis.Checks;

/// <summary>Every rule's two examples run: the first breaks just that rule, the second breaks none.</summary>
public sealed class RuleExamplesTests
{
    public static TheoryData<string> Ids { get; } = [.. RuleBook.All.Select(rule => rule.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_first_example_breaks_just_this_rule(string id)
        => Assert.Equal([id], RuleBook.Complaints(RuleBook.Of(id).Breaks, RuleBook.Of(id).Music).Select(c => c.Rule.Id).Distinct());

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_second_example_breaks_no_rule(string id)
        => Assert.Empty(RuleBook.Complaints(RuleBook.Of(id).Keeps, RuleBook.Of(id).Music).Select(c => c.Rule.Id + ": " + c.Message));
}
