using Scuff.Sheets.Drawings;

namespace Tests.Sheets;

public sealed class WallPictureTests
{
    [Theory]
    [InlineData("1-2 walk R, walk L", "The room seen from above. Every wall starts at 12:00.")]
    [InlineData("1-2 step R forward, pivot 1/2 left", "The room seen from above. Wall 1 starts at 12:00. Wall 2 starts at 6:00. Then they begin again.")]
    [InlineData(
        "1-2 step R forward, pivot 1/4 left",
        "The room seen from above. Wall 1 starts at 12:00. Wall 2 starts at 9:00. Wall 3 starts at 6:00. Wall 4 starts at 3:00. Then they begin again.")]
    [InlineData(
        "1-2 step R forward, pivot 1/8 right",
        "The room seen from above. Wall 1 starts at 12:00. Wall 2 starts at 1:30. Wall 3 starts at 3:00. Wall 4 starts at 4:30. "
        + "Wall 5 starts at 6:00. Wall 6 starts at 7:30. Wall 7 starts at 9:00. Wall 8 starts at 10:30. Then they begin again.")]
    public void It_tells_where_each_wall_starts(string line, string words)
    {
        Drawing picture = Picture(line);

        Assert.Equal(words, picture.Words);
        Assert.True(DrawnBox.Of(picture.Shapes).IsInside(picture), DrawnBox.Of(picture.Shapes).ToString());
        DrawnBox[] labels = [.. picture.Shapes.OfType<DrawnShape.Label>().Select(l => DrawnBox.Of(l))];
        Assert.All(labels, (a, i) => Assert.All(labels.Skip(i + 1), b => Assert.False(a.Overlaps(b))));
    }

    // Seen from above with the front on top, a wall to the left stands left.
    [Fact]
    public void The_numbers_stand_where_the_walls_are()
    {
        DrawnShape.Label[] numbers = [.. Picture("1-2 step R forward, pivot 1/4 left").Shapes.OfType<DrawnShape.Label>().Where(l => l.Words.Length == 1)];

        Assert.Equal(["1", "2", "3", "4"], numbers.Select(n => n.Words));
        Assert.True(numbers[0].Y < numbers[1].Y && numbers[1].Y < numbers[2].Y);
        Assert.True(numbers[1].X < numbers[0].X && numbers[0].X < numbers[3].X);
    }

    [Theory]
    [InlineData("1-2 wibble wobble")]
    [InlineData("1-2 step R forward, pivot left")]
    public void Without_a_known_turn_there_is_no_picture(string line) => Assert.Null(SheetSamples.Build(Text(line)).WallPicture);

    [Fact]
    public void A_phrased_dance_has_no_walls_to_draw() => Assert.Null(SheetSamples.Build(SheetSamples.Phrased).WallPicture);

    private static Drawing Picture(string line) => Assert.IsType<Drawing>(SheetSamples.Build(Text(line)).WallPicture);

    private static string Text(string line) => "Walls\n\nstart: weight on L\n\nsection 1\n" + line + "\n";
}
