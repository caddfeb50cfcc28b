using Scuff.App.Commands;
using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>
/// Something that <c>scuff book</c> does. A class that implements it, with a constructor without arguments, is found and offered; no list names it.
/// </summary>
internal interface IBookAct : IClubAct
{
    /// <summary>Does it.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="club">The club.</param>
    /// <param name="terminal">Where the answer goes.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    /// <exception cref="ClubTrouble">It could not be done; its sentence says why.</exception>
    Task<int> RunAsync(BookQuestion question, Club club, Terminal terminal, CancellationToken cancel);
}
