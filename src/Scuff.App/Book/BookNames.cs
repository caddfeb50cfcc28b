using Scuff.Repertoire;

namespace Scuff.App.Book;

/// <summary>Finds classes, dances and people by what is typed of their names, or says clearly why not.</summary>
internal static class BookNames
{
    /// <summary>What stands before the title of a dance that the club does not have.</summary>
    public const char Visitor = '+';

    private const int MostNamed = 5;

    /// <summary>The class of a name.</summary>
    /// <exception cref="ClubTrouble">There is none, or more than one.</exception>
    public static ClubClass Class(Club club, string typed) => One(club.Book.Named(typed), c => (c.Id, c.Title), typed, "class", "classes")
        ?? throw None(club.Book.Classes() is { Count: > 0 } classes
            ? $"There is no class called {typed}. The classes are {Names(classes.Select(c => c.Title))}."
            : $"There is no class called {typed}, nor any other yet. Begin one: {CommandTree.Name} book class \"Monday beginners\"");

    /// <summary>The dance of a name.</summary>
    /// <exception cref="ClubTrouble">There is none, or more than one.</exception>
    public static DanceRow Dance(Club club, string typed) => One(club.Dances.Named(typed), d => (d.Id, d.Facts.Title), typed, "dance", "dances")
        ?? throw None($"There is no dance called {typed} in the club. For a dance of somebody else write {Visitor} before its title: \"{Visitor}{typed}\"");

    /// <summary>A dance of a session by its name; a title after a plus is one that the club does not have.</summary>
    /// <exception cref="ClubTrouble">There is none, or more than one.</exception>
    public static SessionItem Item(Club club, ItemRole role, string typed)
    {
        if (typed.Length > 0 && typed[0] == Visitor)
        {
            return new SessionItem { Role = role, Title = typed[1..] };
        }

        DanceRow dance = Dance(club, typed);
        return new SessionItem { Role = role, DanceId = dance.Id, Title = dance.Facts.Title };
    }

    private static T? One<T>(ValueList<T> found, Func<T, (string Id, string Title)> of, string typed, string noun, string nouns)
        where T : class
        => found.Count == 0 ? null : found.Count == 1 ? found[0] : throw new ClubTrouble(
            ClubTroubleKind.NotFound,
            $"{typed} may be one of {found.Count} {nouns}: {Names(found.Select(f => $"{of(f).Title} ({of(f).Id})"))}. Write more of the title, or the {noun}'s id.");

    private static string Names(IEnumerable<string> titles)
    {
        string[] all = [.. titles];
        return string.Join(", ", all.Take(MostNamed)) + (all.Length > MostNamed ? " and others" : "");
    }

    private static ClubTrouble None(string sentence) => new(ClubTroubleKind.NotFound, sentence);
}
