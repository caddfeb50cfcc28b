namespace Scuff.Repertoire;

/// <summary>
/// Who reads dances for a club. The club keeps texts and knows no dance rule: whatever it lists, searches and compares besides the text itself is
/// read by this, at every change of the text, and can be read again at any time (<see cref="ClubDances.RefreshFacts"/>).
/// It is asked from several threads at once.
/// </summary>
public interface IDanceFactReader
{
    /// <summary>Names the program that reads, in its version. Facts of another version are read again.</summary>
    string Version { get; }

    /// <summary>The facts of a text. Never throws on what a person wrote.</summary>
    DanceFacts Read(string text);
}
