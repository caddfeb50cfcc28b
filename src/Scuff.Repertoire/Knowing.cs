namespace Scuff.Repertoire;

/// <summary>
/// How well a class knows a dance, in the four steps in which dancers come to know one: https://joe-cecil.com/theres-often-room-to-know-a-line-dance-better
/// describes following, the start, cued tags and knowing where they are; the four marks are common practice.
/// </summary>
public enum Knowing
{
    /// <summary>They can follow somebody who knows it.</summary>
    Follows = 1,

    /// <summary>They know how it starts and when to come in.</summary>
    KnowsTheStart = 2,

    /// <summary>They dance it when it is called.</summary>
    KnowsWithCues = 3,

    /// <summary>They dance it alone, with its tags and restarts.</summary>
    KnowsAlone = 4,
}
