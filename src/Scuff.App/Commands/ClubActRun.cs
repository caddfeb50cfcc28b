using Scuff.App.Clubs;
using Scuff.Repertoire;

namespace Scuff.App.Commands;

/// <summary>Runs an act on a club that is there, or says clearly why not.</summary>
internal static class ClubActRun
{
    /// <summary>Runs it.</summary>
    /// <param name="command">The word of the command.</param>
    /// <param name="act">The act.</param>
    /// <param name="misplaced">An option that was given and that the act does not take; null when all is well.</param>
    /// <param name="words">The words after the act.</param>
    /// <param name="folder">The folder of the club; null for the demo club.</param>
    /// <param name="terminal">Where troubles are told.</param>
    /// <param name="run">Does it, with the club and the moment by the clock of the place.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(
        string command, IClubAct act, string? misplaced, string[] words, string? folder, Terminal terminal, Func<Club, DateTimeOffset, Task<int>> run)
    {
        if (!Options.AreKnown(words, terminal))
        {
            return ExitCode.Trouble;
        }

        if (misplaced is not null)
        {
            terminal.Tell($"{misplaced} does not go with {act.Name}.");
            return ExitCode.Trouble;
        }

        if (words.Length < act.Fewest || words.Length > act.Most)
        {
            terminal.Tell($"Usage: {CommandTree.Name} {command} {act.Name} {act.Usage}".TrimEnd());
            return ExitCode.Trouble;
        }

        if ((folder is null ? ClubPlace.Demo(terminal.Variable, terminal.Home) : terminal.FullPath(folder)) is not { } place)
        {
            terminal.Tell($"There is no place to keep a club on this machine. Name its folder: {CommandTree.Name} {command} {act.Name} --club my-club");
            return ExitCode.Trouble;
        }

        // a slip of the finger in its name would make a new and empty club
        if (!Directory.Exists(place))
        {
            terminal.Tell($"There is no club in {place}.");
            return ExitCode.Trouble;
        }

        try
        {
            TimeProvider clock = TimeProvider.System;
            using Club club = Club.Open(place, clock, new DanceFactReader());
            return await run(club, clock.GetLocalNow()).ConfigureAwait(false);
        }
        catch (ClubTrouble trouble)
        {
            terminal.Tell(trouble.Message);
            return ExitCode.Trouble;
        }
    }
}
