namespace Scuff.Repertoire;

/// <summary>What became of a save.</summary>
public abstract record SaveOutcome
{
    private SaveOutcome()
    {
    }

    /// <summary>It is on the disk.</summary>
    /// <param name="Revision">The revision that names the text now.</param>
    /// <param name="FileTrouble">
    ///  Why the file of the linked folder could not be written, as a sentence, or null. The text is in the club all the same, and is written to the
    /// file at the next rescan that finds it possible.
    /// </param>
    public sealed record Saved(int Revision, string? FileTrouble = null) : SaveOutcome;

    /// <summary>Someone else saved in between; nothing was written. To keep the own text all the same, save it again upon this revision.</summary>
    /// <param name="Revision">The revision of the text that is there.</param>
    /// <param name="Text">The text that is there.</param>
    public sealed record Changed(int Revision, string Text) : SaveOutcome;

    /// <summary>There is no such dance or track any more: it was removed for good.</summary>
    public sealed record Gone : SaveOutcome;
}
