using Scuff.Sheets.Formats;

namespace Tests.App;

public sealed class OpenCommandTests
{
    [Fact]
    public void The_demo_club_is_checked_and_printed_from_any_folder_below_it()
    {
        using ProgramRun club = new();
        club.Put("demo/dances/box.dance", ProgramRun.CleanDance);
        club.Put("demo/dances/wrong.dance", ProgramRun.FaultyDance);

        int code = club.Run("open");

        Assert.Equal(1, code);
        Assert.Contains("Harbour Box: 16 counts, 1 wall, clean", club.Out, StringComparison.Ordinal);
        Assert.Contains("error weight/foot-not-free", club.Out, StringComparison.Ordinal);
        string made = Path.Combine(club.Folder, "artifacts", "sheets");
        Assert.Contains($"{2 * SheetFormats.All.Count} sheets in {made}", club.Out, StringComparison.Ordinal);
        string[] names = [.. new[] { "box", "wrong" }.SelectMany(dance => SheetFormats.All.Select(f => dance + f.Extension))];
        Assert.Equal(
            names.Order(StringComparer.Ordinal),
            Directory.GetFiles(made).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void The_sheets_go_where_they_are_wanted()
    {
        using ProgramRun club = new();
        club.Put("demo/dances/box.dance", ProgramRun.CleanDance);

        Assert.Equal(0, club.Run("open", "--output", "wall"));

        Assert.StartsWith("Harbour Box", club.Get("wall/box.txt"), StringComparison.Ordinal);
        Assert.False(Directory.Exists(Path.Combine(club.Folder, "artifacts")));
    }

    [Fact]
    public void A_folder_in_the_way_of_the_sheets_is_told()
    {
        using ProgramRun club = new();
        club.Put("demo/dances/box.dance", ProgramRun.CleanDance);
        club.Put("wall", "a file in the way");

        Assert.Equal(2, club.Run("open", "--output", "wall"));

        Assert.Contains("was not written", club.Error, StringComparison.Ordinal);
        Assert.Contains("0 sheets in", club.Out, StringComparison.Ordinal);
    }
}
