using System.Globalization;
using Scuff.Audio.Decoding;
using Scuff.Repertoire;

namespace Scuff.App.Web.Tracks;

/// <summary>
/// Long work on tracks, one after the other on a thread of its own: however much waits, the page's questions have the other cores. The thread
/// ends when nothing is left to do.
/// </summary>
/// <param name="tell">Where troubles of the program itself are told.</param>
internal sealed class TrackJobs(Action<string, Exception> tell) : IDisposable
{
    // What she has not looked at by then she will not miss.
    private const int Remembered = 40;

    // Dropping a folder of a thousand files is a slip; a hundred is a library on its first day.
    private const int MostWaiting = 200;

    private readonly Lock _lock = new();
    private readonly List<TrackJob> _jobs = [];
    private Thread? _hand;
    private int _number;
    private bool _isClosed;

    /// <summary>Puts work into the queue.</summary>
    /// <param name="kind">What is done.</param>
    /// <param name="title">Of what.</param>
    /// <param name="track">The track it is about, or null as long as there is none.</param>
    /// <param name="work">Does it.</param>
    /// <exception cref="RefusalException">Too much waits already.</exception>
    public TrackJob Add(string kind, string title, string? track, Action<TrackJob, CancellationToken> work)
    {
        lock (_lock)
        {
            if (_isClosed || _jobs.Count(j => j.State == JobState.Waiting) >= MostWaiting)
            {
                throw new RefusalException(429, $"{MostWaiting} tracks wait already. Add more when some of them are heard.");
            }

            // asked twice, heard once
            if (track is not null && _jobs.Find(j => j.Track == track && j.IsOpen) is { } same)
            {
                return same;
            }

            TrackJob job = new((++_number).ToString(CultureInfo.InvariantCulture), kind, title, work) { Track = track };
            _jobs.Add(job);
            Forget();
            if (_hand is null)
            {
                _hand = new Thread(Work) { IsBackground = true, Name = "tracks", Priority = ThreadPriority.BelowNormal };
                _hand.Start();
            }

            return job;
        }
    }

    /// <summary>What one can see of all of them, oldest first.</summary>
    /// <param name="of">What is wanted of one; called while nothing changes.</param>
    public IReadOnlyList<T> All<T>(Func<TrackJob, T> of)
    {
        lock (_lock)
        {
            return [.. _jobs.Select(of)];
        }
    }

    /// <summary>The work that waits or runs for a track; null when there is none.</summary>
    public T? Of<T>(string track, Func<TrackJob, T> of)
        where T : class
    {
        lock (_lock)
        {
            return _jobs.FindLast(j => j.Track == track && j.IsOpen) is { } job ? of(job) : null;
        }
    }

    /// <summary>Stops one, wherever it stands.</summary>
    /// <returns>Whether there was such work to stop.</returns>
    public bool Stop(string id)
    {
        lock (_lock)
        {
            if (_jobs.Find(j => j.Id == id) is not { IsOpen: true } job)
            {
                return false;
            }

            job.Stop();
            job.State = JobState.Stopped;
            return true;
        }
    }

    public void Dispose()
    {
        Thread? hand;
        lock (_lock)
        {
            _isClosed = true;
            hand = _hand;
            foreach (TrackJob job in _jobs.Where(j => j.IsOpen))
            {
                job.Stop();
                job.State = JobState.Stopped;
            }
        }

        hand?.Join();
        foreach (TrackJob job in _jobs)
        {
            job.Dispose();
        }
    }

    private void Work()
    {
        while (Next() is { } job)
        {
            (JobState state, string sentence) = Done(job);
            lock (_lock)
            {
                // what she stopped stays stopped, though it came to its end meanwhile
                if (job.State == JobState.Running)
                {
                    job.State = state;
                    job.Sentence = sentence.Length > 0 ? sentence : job.Sentence;
                    job.Report(state == JobState.Done ? 1 : 0);
                }
            }
        }
    }

    private TrackJob? Next()
    {
        lock (_lock)
        {
            if (_jobs.Find(j => j.State == JobState.Waiting) is not { } job)
            {
                _hand = null;
                return null;
            }

            job.State = JobState.Running;
            return job;
        }
    }

    private (JobState State, string Sentence) Done(TrackJob job)
    {
        try
        {
            job.Work();
            return (JobState.Done, "");
        }
        catch (OperationCanceledException)
        {
            return (JobState.Stopped, "");
        }
        catch (Exception trouble) when (trouble is RefusalException or ClubTrouble or AudioException)
        {
            return (JobState.Failed, trouble.Message);
        }
        catch (Exception trouble) when (trouble is IOException or UnauthorizedAccessException)
        {
            return (JobState.Failed, $"{job.Title} could not be read or written: {trouble.Message}");
        }
        catch (Exception trouble) when (trouble is not OutOfMemoryException)
        {
            tell(job.Title, trouble);
            return (JobState.Failed, $"Something went wrong in Scuff itself with {job.Title}. The track is safe; try again.");
        }
    }

    private void Forget()
    {
        for (int i = 0; i < _jobs.Count && _jobs.Count > Remembered; i++)
        {
            if (!_jobs[i].IsOpen)
            {
                _jobs.RemoveAt(i--);
            }
        }
    }
}
