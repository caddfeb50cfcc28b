namespace Tests.App;

public sealed class OpenCommandTests
{
    [Theory]
    [InlineData("-1")]
    [InlineData("70000")]
    public void A_port_that_is_none_is_told(string port)
    {
        using ProgramRun club = new();

        Assert.Equal(2, club.Run("open", "--no-browser", "--port", port));

        Assert.Contains("from 0 to 65535", club.Error, StringComparison.Ordinal);
    }
}
