namespace Scuff.Repertoire;

/// <summary>
/// A trouble of the world with a club: its file, its disk, another program. <see cref="Exception.Message"/> is one sentence, or two, for the person
/// who keeps the club, with a way out. Nothing of the club was changed when it is thrown.
/// </summary>
/// <param name="kind">What stands in the way.</param>
/// <param name="sentence">The sentence, with its full stop.</param>
/// <param name="cause">What was met beneath, or null.</param>
public sealed class ClubTrouble(ClubTroubleKind kind, string sentence, Exception? cause = null) : Exception(sentence, cause)
{
    /// <summary>What stands in the way.</summary>
    public ClubTroubleKind Kind { get; } = kind;
}
