using System.CommandLine;
using System.ComponentModel;
using System.Diagnostics;
using System.Net;
using Scuff.App.Clubs;
using Scuff.App.Tracks;
using Scuff.App.Web;
using Scuff.App.Web.Hall;
using Scuff.Prose;
using Scuff.Repertoire;

namespace Scuff.App.Commands;

/// <summary><c>scuff open</c>: the studio, a page in her browser with this program behind it.</summary>
internal sealed class OpenCommand : IProgramCommand
{
    // any dance will do: it is read to have been read once
    private const string FirstWords = "First Words\n\nsection 1\n1-2 step R forward, touch L together\n";

    /// <summary>The port that is tried first: an installed page finds its program there again.</summary>
    public const int UsualPort = 7310;

    public string Name => "open";

    public IReadOnlyList<Example> Examples =>
    [
        new("open", "open the studio on the demo club"),
        new("open --club ~/my-club", "open a club of your own"),
        new("open --no-browser", "only start it, and say its address"),
    ];

    public string Closing => "Ends when you press Ctrl+C, with 0; 2 after wrong usage or when it could not start.";

    public Command Create(Terminal terminal)
    {
        Option<string?> folder = new("--club") { Description = "The folder of your club, made when it is not there; the demo club when not said.", HelpName = "folder" };
        Option<int> port = new("--port") { Description = "The port of its address on this machine; 0 for any that is free.", DefaultValueFactory = _ => UsualPort, HelpName = "number" };
        Option<bool> quiet = new("--no-browser") { Description = "Do not open a browser; say the address." };
        Option<string?> hall = new("--hall")
        {
            Description = "The private address, or address:port, at which devices in the hall may ask once you open it in the page; found when not said.",
            HelpName = "address",
        };
        Command command = new(Name, "Open the studio: write, see, hear, fit and print in a page of your browser.") { folder, port, quiet, hall };
        command.SetAction((parsed, stop) =>
            Run(parsed.GetValue(folder), parsed.GetValue(port), parsed.GetValue(quiet), parsed.GetValue(hall), terminal, stop));
        return command;
    }

    private static async Task<int> Run(string? folder, int port, bool isQuiet, string? hall, Terminal terminal, CancellationToken stop)
    {
        if (port is < 0 or > 65_535)
        {
            terminal.Tell("--port is a number from 0 to 65535.");
            return ExitCode.Trouble;
        }

        HallPlace hallPlace = HallPlace.Around;
        if (hall is not null)
        {
            if (!IPEndPoint.TryParse(hall, out IPEndPoint? named) || !HallPlace.IsPrivate(named.Address))
            {
                terminal.Tell("--hall is an address of this machine in a private network, such as 192.168.1.20 or 192.168.1.20:7320.");
                return ExitCode.Trouble;
            }

            hallPlace = HallPlace.At(named.Port == 0 ? new IPEndPoint(named.Address, HallPlace.UsualPort) : named);
        }

        if ((folder is null ? ClubPlace.Demo(terminal.Variable, terminal.Home) : terminal.FullPath(folder)) is not { } place)
        {
            terminal.Tell("There is no place to keep a club on this machine. Name a folder for it: scuff open --club my-club");
            return ExitCode.Trouble;
        }

        // two things at once: while the club is opened, the words and steps of the trade are read in
        _ = Task.Run(() => DanceReader.Read(FirstWords), stop);
        Club club;
        try
        {
            club = Club.Open(place, TimeProvider.System, new DanceFactReader());
        }
        catch (ClubTrouble trouble)
        {
            terminal.Tell(trouble.Message);
            return ExitCode.Trouble;
        }

        using (club)
        {
            return await Serve(club, isDemo: folder is null, port, isQuiet, hallPlace, terminal, stop).ConfigureAwait(false);
        }
    }

    private static async Task WarmAfter(Task<bool> begun, Studio studio, CancellationToken stop)
    {
        await ((Task)begun).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        await Task.Run(studio.Warm, stop).ConfigureAwait(false);
    }

    private static async Task<int> Serve(Club club, bool isDemo, int port, bool isQuiet, HallPlace hall, Terminal terminal, CancellationToken stop)
    {
        using Studio studio = new(club, TimeProvider.System, terminal.Tell, new TrackCache(TrackCache.UsualFolder(terminal.Variable, terminal.Home)));
        studio.Hall.Place = hall;

        // two things at once: the server starts, and the first dance is put into a new demo club and read
        Task<bool> begun = Task.Run(() => isDemo && DemoClub.Begin(club), stop);
        Task warmed = WarmAfter(begun, studio, stop);
        StudioServer server;
        try
        {
            server = await StudioServer.Start(studio, port).ConfigureAwait(false);
        }
        catch (IOException)
        {
            terminal.Tell($"Port {port} is taken. If Scuff runs already, its page is at http://127.0.0.1:{port}; else name another port: scuff open --port 0");
            return ExitCode.Trouble;
        }

        await using (server.ConfigureAwait(false))
        {
            bool isNew;
            try
            {
                isNew = await begun.ConfigureAwait(false);
            }
            catch (ClubTrouble trouble)
            {
                terminal.Tell(trouble.Message);
                return ExitCode.Trouble;
            }

            string address = server.Address.GetLeftPart(UriPartial.Authority);
            terminal.Out.WriteLine($"The studio is open at {address}");
            terminal.Out.WriteLine("It stays open until you press Ctrl+C here. Nothing leaves this machine.");
            await terminal.Out.FlushAsync(stop).ConfigureAwait(false);
            if (!isQuiet && !OpenBrowser(address))
            {
                terminal.Tell($"No browser could be opened from here; open {address} in one.");
            }

            // she sees the first dance meanwhile
            Task filled = isNew ? Task.Run(() => DemoClub.Fill(club, DateOnly.FromDateTime(studio.Clock.GetLocalNow().DateTime)), stop) : Task.CompletedTask;
            try
            {
                await Task.Delay(Timeout.InfiniteTimeSpan, studio.Clock, stop).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                // she has closed it
            }

            await Task.WhenAll(warmed, filled).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }

        return ExitCode.Clean;
    }

    private static bool OpenBrowser(string address)
    {
        ProcessStartInfo start = OperatingSystem.IsWindows() ? new(address) { UseShellExecute = true }
            : OperatingSystem.IsMacOS() ? new("open", address)
            : new("xdg-open", address) { UseShellExecute = false, RedirectStandardError = true, RedirectStandardOutput = true };
        try
        {
            using Process? browser = Process.Start(start);
            return browser is not null;
        }
        catch (Exception trouble) when (trouble is Win32Exception or PlatformNotSupportedException or FileNotFoundException)
        {
            return false;
        }
    }
}
