namespace Scuff.Repertoire.Storage;

/// <summary>The text of a dance, in a table of its own so that lists need not walk over it.</summary>
internal sealed class DanceText
{
    public long Key { get; set; }

    public string Text { get; set; } = "";
}
