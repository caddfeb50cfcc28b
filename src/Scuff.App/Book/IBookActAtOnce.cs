using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>Something that <c>scuff book</c> does at once.</summary>
internal interface IBookActAtOnce : IBookAct
{
    /// <summary>Does it.</summary>
    /// <param name="question">What was asked.</param>
    /// <param name="club">The club.</param>
    /// <param name="terminal">Where the answer goes.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    /// <exception cref="ClubTrouble">It could not be done; its sentence says why.</exception>
    int Run(BookQuestion question, Club club, Terminal terminal);

    Task<int> IBookAct.RunAsync(BookQuestion question, Club club, Terminal terminal, CancellationToken cancel) => Task.FromResult(Run(question, club, terminal));
}
