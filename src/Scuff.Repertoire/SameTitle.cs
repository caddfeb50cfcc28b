namespace Scuff.Repertoire;

/// <summary>What importing does with a file whose title the club has already, with another text.</summary>
public enum SameTitle
{
    /// <summary>It becomes a dance of its own; <see cref="ClubDances.Duplicates"/> tells both.</summary>
    AddBeside,

    /// <summary>Its text becomes the dance's, and the text before it a version. With several dances of that title it is added beside.</summary>
    Replace,
}
