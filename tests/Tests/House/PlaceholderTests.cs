namespace Tests.House;

public sealed class PlaceholderTests
{
    [Fact]
    public void The_runner_runs() => Assert.Equal(4, 2 + 2);
}
