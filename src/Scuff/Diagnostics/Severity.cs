namespace Scuff.Diagnostics;

/// <summary>How bad a complaint is, mildest first.</summary>
public enum Severity
{
    /// <summary>House style, or kindness to learners.</summary>
    Hint,

    /// <summary>It probably is not what was meant.</summary>
    Warning,

    /// <summary>The words could not be read, or have two readings.</summary>
    Question,

    /// <summary>It cannot be danced as written.</summary>
    Error,
}
