using System.CommandLine;
using Scuff.App.Commands;
using Scuff.Repertoire;

namespace Scuff.App.Nights;

/// <summary>
/// Something that <c>scuff night</c> does. A class that implements it, with a constructor without arguments, is found and offered; no list names it.
/// </summary>
internal interface INightAct : IClubAct
{
    /// <summary>Does it.</summary>
    /// <param name="words">The words after the act.</param>
    /// <param name="options">What else was said.</param>
    /// <param name="parsed">The command line.</param>
    /// <param name="club">The club.</param>
    /// <param name="terminal">Where the answer goes.</param>
    /// <param name="now">The moment, by the clock of the place.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    /// <exception cref="ClubTrouble">It could not be done; its sentence says why.</exception>
    Task<int> RunAsync(IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel);
}
