using Scuff.Repertoire;

namespace Scuff.App.Memory;

/// <summary>Says what a class knows already of a dance that it is to learn.</summary>
internal interface ILikenessDesk
{
    /// <summary>What a class knows already of a dance, by what the feet do: a sentence each, the most helpful first; empty when nothing.</summary>
    /// <param name="club">The club.</param>
    /// <param name="danceId">The dance that is to be taught.</param>
    /// <param name="knownIds">The dances that the class knows.</param>
    IReadOnlyList<string> KnownAlready(Club club, string danceId, IReadOnlyList<string> knownIds);
}
