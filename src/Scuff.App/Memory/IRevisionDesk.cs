using Scuff.Repertoire;

namespace Scuff.App.Memory;

/// <summary>Says what a class is likely to have left of each dance, and what it should dance again.</summary>
internal interface IRevisionDesk
{
    /// <summary>Every dance that the class was taught or has danced, what is most due first.</summary>
    /// <param name="club">The club.</param>
    /// <param name="classId">The class.</param>
    /// <param name="on">The day it is for.</param>
    IReadOnlyList<RememberedDance> Of(Club club, string classId, DateOnly on);
}
