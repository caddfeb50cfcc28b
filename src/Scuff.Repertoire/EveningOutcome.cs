namespace Scuff.Repertoire;

/// <summary>What became of saving an evening.</summary>
public abstract record EveningOutcome
{
    private EveningOutcome()
    {
    }

    /// <summary>It is on the disk.</summary>
    /// <param name="Evening">The evening as it is kept, with its id and its revision.</param>
    public sealed record Saved(ClubEvening Evening) : EveningOutcome;

    /// <summary>Someone else saved in between; nothing was written. To keep the own state all the same, save it again upon this revision.</summary>
    /// <param name="Evening">The evening that is there.</param>
    public sealed record Changed(ClubEvening Evening) : EveningOutcome;

    /// <summary>There is no such evening any more.</summary>
    public sealed record Gone : EveningOutcome;
}
