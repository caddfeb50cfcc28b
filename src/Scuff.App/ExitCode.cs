namespace Scuff.App;

/// <summary>What the program tells a script when it ends. Fixed: scripts depend on it.</summary>
internal static class ExitCode
{
    /// <summary>Done, and nothing worse than a hint was found.</summary>
    public const int Clean = 0;

    /// <summary>Done, and there is an error, a question or a warning (or a search found nothing, or two versions differ).</summary>
    public const int Complaints = 1;

    /// <summary>Wrong usage, or a file that could not be read or written.</summary>
    public const int Trouble = 2;
}
