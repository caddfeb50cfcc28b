using Scuff.Audio.Voices;

namespace Tests.Audio.Voices;

public sealed class SpokenTextTests
{
    [Theory]
    [InlineData("Vine right", "vine right")]
    [InlineData("rock, recover", "rock recover")]
    [InlineData("K-step", "k step")]
    [InlineData("5, 6, 7, 8", "five six seven eight")]
    [InlineData("1/4 turn R", "quarter turn right")]
    [InlineData("1 1/2", "one half")]
    [InlineData("½ L", "half left")]
    [InlineData("heel & toe", "heel and toe")]
    [InlineData("heel&toe", "heel and toe")]
    [InlineData("hold 16", "hold sixteen")]
    [InlineData("32 more", "thirty two more")]
    [InlineData("120", "one hundred twenty")]
    [InlineData("let's go!", "lets go")]
    [InlineData("fwd", "forward")]
    [InlineData("3rd wall", "three rd wall")]
    [InlineData("  ", "")]
    [InlineData("… — ?!", "")]
    [InlineData("Été", "été")]
    public void Words_are_read_as_they_are_spoken(string written, string spoken) => Assert.Equal(spoken, SpokenText.Phrase(written));

    [Fact]
    public void A_comma_is_a_pause_before_the_next_word()
        => Assert.Equal([("rock", false), ("back", false), ("recover", true)], SpokenText.Tokens("rock back, recover"));
}
