namespace Scuff.App.Handouts;

/// <summary>The front door to everything the book of a club can be taken out as: the program's commands and the page's downloads both ask here.</summary>
internal static class BookHandouts
{
    /// <summary>All forms, in order of their names.</summary>
    public static ValueList<Handout<BookOut>> All { get; } = FoundHandouts.Of<BookOut>();

    /// <summary>The form of a name, or null.</summary>
    public static Handout<BookOut>? Find(string name) => All.FirstOrDefault(h => h.Name == name);
}
