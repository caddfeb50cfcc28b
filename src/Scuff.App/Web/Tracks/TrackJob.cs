namespace Scuff.App.Web.Tracks;

/// <summary>A piece of long work on a track. Its state may change at any moment: read it through <see cref="TrackJobs"/>.</summary>
/// <param name="id">Its number, as a name in addresses.</param>
/// <param name="kind">What is done: <c>hear</c> or <c>play</c>.</param>
/// <param name="title">Of what, for her to read.</param>
/// <param name="work">Does it; the first argument is the job.</param>
internal sealed class TrackJob(string id, string kind, string title, Action<TrackJob, CancellationToken> work) : IProgress<double>, IDisposable
{
    private readonly CancellationTokenSource _stop = new();

    /// <summary>Its number, as a name in addresses.</summary>
    public string Id { get; } = id;

    /// <summary>What is done.</summary>
    public string Kind { get; } = kind;

    /// <summary>Of what.</summary>
    public string Title { get; } = title;

    /// <summary>How it stands.</summary>
    public JobState State { get; set; }

    /// <summary>Whether it waits or is being done.</summary>
    public bool IsOpen => State is JobState.Waiting or JobState.Running;

    /// <summary>The part that is done, 0 to 1; it never goes back.</summary>
    public double Part { get; private set; }

    /// <summary>The track it is about; null as long as there is none.</summary>
    public string? Track { get; set; }

    /// <summary>What she should know of how it ended, or empty.</summary>
    public string Sentence { get; set; } = "";

    /// <summary>Is told how far the work has come.</summary>
    public void Report(double value) => Part = Math.Max(Part, Math.Clamp(value, 0, 1));

    /// <summary>Does the work.</summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public void Work() => work(this, _stop.Token);

    /// <summary>Asks it to stop.</summary>
    public void Stop() => _stop.Cancel();

    public void Dispose() => _stop.Dispose();
}
