namespace Scuff.Analysis.Planning;

/// <summary>What a stretch of a class or an evening is for.</summary>
public enum StretchKind
{
    /// <summary>Easy known dances that warm the body.</summary>
    WarmUp,

    /// <summary>Dances that the class is about to forget.</summary>
    Revision,

    /// <summary>Dancing.</summary>
    Dancing,

    /// <summary>A dance is taught; nothing else happens meanwhile.</summary>
    Lesson,

    /// <summary>Nobody dances.</summary>
    Rest,

    /// <summary>Calm dances at the end.</summary>
    CoolDown,
}
