using Scuff.Dances;
using Scuff.Prose;
using Scuff.Stance;

namespace Tests.Prose;

public sealed class EndingReaderTests
{
    [Theory]
    [InlineData("last wall (starts at 6:00), after 8 counts: stomp R", 4, null, false)]
    [InlineData("last wall (starts at 12:00), after 8 counts: stomp R [6:00]", 0, 4, false)]
    [InlineData("last wall (begins facing 3:00), after 8 counts: stomp R [12:00]", 2, 0, true)]
    [InlineData("wall 9, after 8 counts: step R forward, pivot to 12:00", null, 0, true)]
    [InlineData("last wall, after 8 counts: pivot to the front", null, null, true)]
    [InlineData("wall 9, after 8 counts: stomp R", null, null, false)]
    public void Where_the_wall_starts_and_where_the_dance_ends_are_kept_apart(string words, int? wallStart, int? end, bool saysFront)
    {
        Ending ending = DanceReader.Read("Clock\n\nending: " + words + "\n\nsection 1\n1-4  vine right, touch L\n5-8  vine left, touch R\n").Dance.Ending!;

        Assert.Equal(Of(wallStart), ending.WallFacing);
        Assert.Equal(Of(end), ending.Claim?.Facing);
        Assert.Equal(saysFront, ending.SaysFront);

        static Facing? Of(int? eighths) => eighths is { } known ? Facing.FromEighths(known) : null;
    }
}
