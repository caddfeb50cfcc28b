using Scuff.Repertoire.Files;

namespace Tests.Repertoire.Files;

public sealed class WholeFileTests : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("scuff-test-");

    public void Dispose() => _folder.Delete(recursive: true);

    [Fact]
    public void A_write_that_fails_halfway_leaves_the_old_file_and_nothing_else()
    {
        string path = Path.Combine(_folder.FullName, "box.dance");
        File.WriteAllText(path, "old");

        IOException full = Assert.Throws<IOException>(() => WholeFile.Write(path, stream =>
        {
            stream.Write("half of the new"u8);
            stream.Flush();
            throw new IOException("No space left on device", 28);
        }));

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Equal([path], Directory.GetFiles(_folder.FullName));
        Assert.Equal("box.dance was not written: the disk is full.", FileWords.NotWritten("box.dance", full));
    }

    [Fact]
    public void A_locked_file_is_not_replaced()
    {
        string path = Path.Combine(_folder.FullName, "box.dance");
        File.WriteAllText(path, "old");
        File.SetAttributes(path, FileAttributes.ReadOnly);

        UnauthorizedAccessException locked = Assert.Throws<UnauthorizedAccessException>(() => WholeFile.Write(path, "new"));

        Assert.Equal("old", File.ReadAllText(path));
        Assert.Contains("read-only", FileWords.NotWritten("box.dance", locked), StringComparison.Ordinal);
        File.SetAttributes(path, FileAttributes.Normal);
    }

    [Fact]
    public void A_link_stays_a_link_and_its_file_is_replaced()
    {
        string file = Path.Combine(_folder.FullName, "box.dance");
        string link = Path.Combine(_folder.FullName, "link.dance");
        File.WriteAllText(file, "old");
        File.CreateSymbolicLink(link, file);

        WholeFile.Write(link, "new");

        Assert.Equal("new", File.ReadAllText(file));
        Assert.Equal(file, new FileInfo(link).LinkTarget);
    }

    [Fact]
    public void A_folder_that_is_not_there_is_told()
    {
        string path = Path.Combine(_folder.FullName, "gone", "box.dance");

        Exception trouble = Assert.ThrowsAny<IOException>(() => WholeFile.Write(path, "new"));

        Assert.Equal("box.dance was not written: its folder does not exist.", FileWords.NotWritten("box.dance", trouble));
    }

    [Fact]
    public void Rights_of_the_old_file_are_kept()
    {
        if (OperatingSystem.IsWindows())
        {
            Assert.Skip("Windows has no such rights.");
            return;
        }

        string path = Path.Combine(_folder.FullName, "box.dance");
        File.WriteAllText(path, "old");
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite);

        WholeFile.Write(path, "new");

        Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(path));
    }
}
