namespace Scuff.App.Web.Tracks;

/// <summary>How long work stands.</summary>
internal enum JobState
{
    /// <summary>It waits for its turn.</summary>
    Waiting,

    /// <summary>It is being done.</summary>
    Running,

    /// <summary>It is done.</summary>
    Done,

    /// <summary>It could not be done.</summary>
    Failed,

    /// <summary>She stopped it.</summary>
    Stopped,
}
