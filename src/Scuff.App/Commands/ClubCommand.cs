using System.CommandLine;
using Scuff.App.Clubs;
using Scuff.App.Complaints;
using Scuff.App.Web;
using Scuff.Repertoire;

namespace Scuff.App.Commands;

/// <summary><c>scuff club</c>: what one does with a whole club: back it up, restore it, take in a folder of dances, write one.</summary>
internal sealed class ClubCommand : IProgramCommand
{
    private const string Backup = "backup";
    private const string Restore = "restore";
    private const string Import = "import";
    private const string Export = "export";

    public string Name => "club";

    public IReadOnlyList<Example> Examples =>
    [
        new("club backup my-club.zip", "write dances, maps, tags and versions into one file"),
        new("club backup --music my-club.zip", "the same with the music"),
        new("club backup --people my-club.zip", "with the people you keep, if any; else they are left out"),
        new("club restore my-club.zip", "put a backup in the place of the club, which is kept aside"),
        new("club import --club ~/my-club dances", "take in every .dance file of a folder"),
        new("club import --replace dances", "a title that is there gets the new text; the old one becomes a version"),
        new("club export dances", "write every dance as a file; files with another text stay as they are"),
    ];

    public string Closing => "Ends with 0 when all was done, 2 after wrong usage or trouble with a file.";

    public Command Create(Terminal terminal)
    {
        Argument<string> act = new("act") { Description = "What to do." };
        act.AcceptOnlyFromAmong(Backup, Restore, Import, Export);
        Argument<string> path = new("path") { Description = "The backup file, or the folder of .dance files." };
        Option<string?> folder = new("--club") { Description = "The folder of the club; the demo club when not said.", HelpName = "folder" };
        Option<bool> music = new("--music") { Description = "For a backup: put the music in too." };
        Option<bool> people = new("--people") { Description = "For a backup: put the people you keep in too, if any." };
        Option<bool> replace = new("--replace") { Description = "For an import: replace the text of a dance of the same title." };
        Command command = new(Name, "Back up a club, restore it, take in a folder of dances or write one.") { act, path, folder, music, people, replace };
        command.SetAction(parsed => Run(
            new Question(
                parsed.GetValue(act)!, parsed.GetValue(path)!, parsed.GetValue(folder), parsed.GetValue(music), parsed.GetValue(people), parsed.GetValue(replace)),
            terminal));
        return command;
    }

    private static int Run(Question question, Terminal terminal)
    {
        if (!Options.AreKnown([question.Path], terminal))
        {
            return ExitCode.Trouble;
        }

        if (Misplaced(question) is { } misplaced)
        {
            terminal.Tell($"{misplaced}, not with {question.Act}.");
            return ExitCode.Trouble;
        }

        if ((question.Club is null ? ClubPlace.Demo(terminal.Variable, terminal.Home) : terminal.FullPath(question.Club)) is not { } place)
        {
            terminal.Tell($"There is no place to keep a club on this machine. Name its folder: scuff club {question.Act} --club my-club {question.Path}");
            return ExitCode.Trouble;
        }

        try
        {
            return Done(question, place, terminal);
        }
        catch (ClubTrouble trouble)
        {
            terminal.Tell(trouble.Message);
            return ExitCode.Trouble;
        }
    }

    private static string? Misplaced(Question question) => question switch
    {
        { WithMusic: true, Act: not Backup } => "--music goes with backup",
        { WithPeople: true, Act: not Backup } => "--people goes with backup",
        { IsReplacing: true, Act: not Import } => "--replace goes with import",
        _ => null,
    };

    private static int Done(Question question, string place, Terminal terminal)
    {
        string path = terminal.FullPath(question.Path);
        DanceFactReader reader = new();
        if (question.Act == Restore)
        {
            return Told(Words(Club.Restore(place, path, TimeProvider.System, reader)), hasTrouble: false, terminal);
        }

        // a slip of the finger in its name would make a new and empty club
        if (question.Act != Import && !Directory.Exists(place))
        {
            terminal.Tell($"There is no club in {place}.");
            return ExitCode.Trouble;
        }

        using Club club = Club.Open(place, TimeProvider.System, reader);
        switch (question.Act)
        {
            case Import:
                ImportReport taken = club.Import(path, question.IsReplacing ? SameTitle.Replace : SameTitle.AddBeside);
                return Told(FolderWords.Of(taken), taken.Troubles.Count > 0, terminal);
            case Export:
                ExportReport written = club.Export(path);
                return Told(FolderWords.Of(written), written.Troubles.Count > 0, terminal);
            default:
                return BackedUp(club, question, path, terminal);
        }
    }

    private static int BackedUp(Club club, Question question, string path, Terminal terminal)
    {
        if (File.Exists(path) && !IsArchive(path))
        {
            terminal.Tell($"{question.Path} is there already and is no backup, so it was left alone. Name another file.");
            return ExitCode.Trouble;
        }

        club.Backup(path, question.WithMusic, question.WithPeople);
        int dances = club.Dances.Search(new DanceQuery { Take = 0 }).Total;
        int tracks = club.Tracks.Search(new TrackQuery { Take = 0 }).Total;
        string music = tracks == 0 ? "" : question.WithMusic ? " with their music" : ", without their music (--music puts it in)";
        List<string> sentences = [$"Wrote {Summary.Number(dances, "dance")} and {Summary.Number(tracks, "track")}{music} into {question.Path}"];
        if (!question.WithPeople && club.People.List().Count > 0)
        {
            sentences.Add("The people you keep were left out (--people puts them in).");
        }

        return Told(sentences, hasTrouble: false, terminal);
    }

    // An earlier backup may be replaced, anything else not.
    private static bool IsArchive(string path)
    {
        try
        {
            using FileStream file = new(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return file.ReadByte() == 'P' && file.ReadByte() == 'K';
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return false;
        }
    }

    private static List<string> Words(RestoreReport report)
    {
        List<string> sentences = [$"The club has {Summary.Number(report.Dances, "dance")} and {Summary.Number(report.Tracks, "track")} now."];
        if (report.WithoutAudio > 0)
        {
            sentences.Add($"{Summary.Number(report.WithoutAudio, "track")} without audio: the backup was made without music. "
                + "Bring the same sound files to the club again; maps and corrections are there.");
        }

        if (report.KeptAside is { } kept)
        {
            sentences.Add($"The club as it was is kept in {kept}");
        }

        if (report.Unlinked is { } folder)
        {
            sentences.Add($"The folder {folder} is not linked any more, since its files may differ from what was restored. "
                + "Link it again in the library if you want it to follow.");
        }

        return sentences;
    }

    private static int Told(IEnumerable<string> sentences, bool hasTrouble, Terminal terminal)
    {
        foreach (string sentence in sentences)
        {
            terminal.Out.WriteLine(Plain.Line(sentence));
        }

        return hasTrouble ? ExitCode.Trouble : ExitCode.Clean;
    }

    private sealed record Question(string Act, string Path, string? Club, bool WithMusic, bool WithPeople, bool IsReplacing);
}
