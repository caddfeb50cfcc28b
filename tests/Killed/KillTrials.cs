using System.Diagnostics;
using System.Globalization;
using System.Text;
using Microsoft.Data.Sqlite;
using Scuff.Repertoire;

namespace Killed;

/// <summary>
/// Kills a program that writes to a club, again and again at drawn moments, and looks each time whether the club is sound, holds every write that was
/// told as done, and of the one that was going on all or nothing. The next writer goes on upon what the last one left.
/// </summary>
/// <param name="place">A folder for the clubs.</param>
/// <param name="seed">Says when is killed and what is written.</param>
/// <param name="olderForm">The statements that make the database of a club of an older form, with dances in it.</param>
/// <param name="program">The program that is killed; null for the one beside this one.</param>
internal sealed class KillTrials(string place, int seed, string olderForm, string? program = null)
{
    // a club gets old after so many kills: then a new one is begun
    private const int KillsOfClub = 40;

    // each so many kills are of a program that opens clubs: new ones, or ones of an older form
    private const int OpeningEach = 5;
    private const int Clubs = 60;
    private const int MostAwaited = 14;
    private const int MostDelay = 25;
    private const int StartMilliseconds = 400;
    private const int Patience = 60_000;

    private readonly Random _dice = new(seed);
    private readonly List<string> _faults = [];
    private readonly Dictionary<string, (int Nothing, int Whole)> _inFlight = [];
    private int _told;

    private string _folder = "";
    private int _serial;
    private Dictionary<string, string> _stands = [];
    private Dictionary<string, string>? _backup;

    /// <summary>Does it so often.</summary>
    public KillReport Run(int kills)
    {
        for (int i = 0; i < kills; i++)
        {
            if (i % OpeningEach == OpeningEach - 1)
            {
                KillOpening(i, isOlder: i / OpeningEach % 2 == 0);
            }
            else
            {
                KillWriting(i);
            }
        }

        Clear(_folder);
        return new KillReport(kills, _told, _inFlight, _faults);
    }

    private static void Clear(string folder)
    {
        if (folder.Length > 0 && Directory.Exists(folder))
        {
            Directory.Delete(folder, recursive: true);
        }

        File.Delete(Writer.BackupOf(folder));
    }

    private void KillWriting(int kill)
    {
        if (kill % KillsOfClub == 0)
        {
            Clear(_folder);
            _folder = Path.Combine(place, Line($"club {kill}"));
            using Club club = Club.Open(_folder, TimeProvider.System, new FirstLineReader());
            Writer.Begin(club);
            (_serial, _stands, _backup) = (1, Witness.Beginning(), null);
        }

        List<string> said = Kill("write", _folder, Line($"{seed}"), Line($"{_serial}"));
        for (int done = 0; done < said.Count - 1; done++)
        {
            Deed deed = Deed.Of(seed, _serial++);
            if (said[done + 1] != Line($"{deed.Serial}"))
            {
                _faults.Add(Line($"kill {kill}: the writer said {said[done + 1]} instead of {deed.Serial}"));
            }

            _stands = Witness.After(_stands, _backup, deed);
            _backup = deed.Kind == DeedKind.Backup ? _stands : _backup;
            _told++;
        }

        Judge(kill, Deed.Of(seed, _serial));
        _serial++;
    }

    private void Judge(int kill, Deed cut)
    {
        Dictionary<string, string> whole = Witness.After(_stands, _backup, cut);
        List<string> faults = [];
        Dictionary<string, string> seen = Witness.Seen(_folder, faults);
        bool isNothing = Same(seen, _stands);
        if (!isNothing && !Same(seen, whole))
        {
            faults.Add($"neither as before {cut} nor as after it:\n{Witness.Difference(_stands, seen)}");
        }

        if (cut.Kind == DeedKind.Backup)
        {
            JudgeBackup(faults);
        }
        else if (!Same(_stands, whole))
        {
            (int nothing, int all) = _inFlight.GetValueOrDefault(Line($"{cut.Kind}"));
            _inFlight[Line($"{cut.Kind}")] = isNothing ? (nothing + 1, all) : (nothing, all + 1);
        }

        _stands = seen;
        _faults.AddRange(faults.Select(f => Line($"kill {kill}: {f}")));
    }

    // Killed while a backup was written: the file is the one before or the new one, and either is whole.
    private void JudgeBackup(List<string> faults)
    {
        if (!File.Exists(Writer.BackupOf(_folder)))
        {
            if (_backup is not null)
            {
                faults.Add("the backup is gone");
            }

            return;
        }

        string elsewhere = _folder + " restored";
        Club.Restore(elsewhere, Writer.BackupOf(_folder), TimeProvider.System, new FirstLineReader());
        Dictionary<string, string> kept = Witness.Seen(elsewhere, faults);
        bool isBefore = _backup is not null && Same(kept, _backup);
        if (!isBefore && !Same(kept, _stands))
        {
            faults.Add($"the backup is neither the one before nor the new one:\n{Witness.Difference(_stands, kept)}");
        }

        (int nothing, int whole) = _inFlight.GetValueOrDefault(nameof(DeedKind.Backup));
        _inFlight[nameof(DeedKind.Backup)] = isBefore ? (nothing + 1, whole) : (nothing, whole + 1);
        _backup = kept;
        Clear(elsewhere);
    }

    // The making of clubs, or the bringing of older ones to the present form.
    private void KillOpening(int kill, bool isOlder)
    {
        string clubs = Path.Combine(place, Line($"clubs {kill}"));
        Directory.CreateDirectory(clubs);
        for (int i = 0; isOlder && i < Clubs; i++)
        {
            File.Copy(Older(), Path.Combine(Directory.CreateDirectory(Path.Combine(clubs, Line($"{i}"))).FullName, "club.db"));
        }

        int opened = Kill("open", clubs, Line($"{Clubs}")).Count - 1;
        for (int i = Math.Max(0, opened - 2); i <= Math.Min(opened, Clubs - 1); i++)
        {
            string folder = Path.Combine(clubs, Line($"{i}"));
            using Club club = Club.Open(folder, TimeProvider.System, new FirstLineReader());
            int dances = club.Dances.Every().Count;
            if (isOlder ? dances == 0 || club.Dances.Every().Any(d => club.Dances.Get(d.Id)!.Text.Length == 0) : dances > 0)
            {
                _faults.Add(Line($"kill {kill}: club {i} has {dances} dances after it was {(isOlder ? "brought to the present form" : "made")}"));
            }

            club.Book.SaveClass(new ClubClass { Title = "after" });
            _faults.AddRange(Witness.Unsound(folder).Select(f => Line($"kill {kill}: club {i}: {f}")));
        }

        string what = isOlder ? "Bringing" : "Making";
        (int nothing, int whole) = _inFlight.GetValueOrDefault(what);
        _inFlight[what] = (nothing, whole + 1);
        _told += opened;
        Clear(clubs);
    }

    private string Older()
    {
        string file = Path.Combine(place, "older.db");
        if (!File.Exists(file))
        {
            using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = file, Pooling = false }.ToString());
            connection.Open();
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = olderForm;
            command.ExecuteNonQuery();
        }

        return file;
    }

    // Starts the program, kills it at a drawn moment, and answers with what it had said; at least one line is counted.
    private List<string> Kill(params string[] arguments)
    {
        // some are killed while they still start
        bool isEarly = _dice.Next(12) == 0;
        int awaited = 1 + _dice.Next(MostAwaited);
        int delay = _dice.Next(isEarly ? StartMilliseconds : MostDelay);
        List<string> said = [];
        using ManualResetEventSlim saidEnough = new();
        ProcessStartInfo start = program is null
            ? new ProcessStartInfo("dotnet", [typeof(KillTrials).Assembly.Location, .. arguments])
            : new ProcessStartInfo(program, arguments);
        start.RedirectStandardOutput = true;
        start.RedirectStandardError = true;
        start.UseShellExecute = false;
        using Process process = new() { StartInfo = start };
        using ManualResetEventSlim never = new();
        StringBuilder complained = new();
        process.OutputDataReceived += (_, e) =>
        {
            if (e.Data is { } line)
            {
                lock (said)
                {
                    said.Add(line);
                    if (said.Count >= awaited)
                    {
                        saidEnough.Set();
                    }
                }
            }
        };
        process.ErrorDataReceived += (_, e) => complained.AppendLine(e.Data);
        process.Start();
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        if (!isEarly)
        {
            saidEnough.Wait(Patience);
        }

        never.Wait(delay);
        bool ended = process.HasExited;
        process.Kill();

        // waits for the last line too
        process.WaitForExit();
        if (ended && arguments[0] == "write")
        {
            _faults.Add($"the writer ended by itself: {complained}");
        }

        return said.Count == 0 ? [Writer.Ready] : said;
    }

    private static bool Same(Dictionary<string, string> a, Dictionary<string, string> b)
        => a.Count == b.Count && a.All(l => b.TryGetValue(l.Key, out string? other) && other == l.Value);

    private static string Line(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
