namespace Scuff.Sheets;

/// <summary>What a line of an evening is.</summary>
public enum EveningLineKind
{
    /// <summary>A dance, or two side by side.</summary>
    Dance,

    /// <summary>A dance is taught.</summary>
    Lesson,

    /// <summary>Nobody dances.</summary>
    Rest,
}
