using System.Runtime.ExceptionServices;

namespace Scuff.App.Tracks;

/// <summary>Work on many things on all cores, whose answers come in the order of the things, each as soon as those before it are there.</summary>
internal static class InParallel
{
    /// <summary>Does the work for 0 to <paramref name="count"/> - 1.</summary>
    /// <param name="count">How many things.</param>
    /// <param name="threads">How many at once.</param>
    /// <param name="work">The work on one.</param>
    public static IEnumerable<T> Run<T>(int count, int threads, Func<int, T> work)
    {
        Lock gate = new();
        (bool IsDone, T? Answer, ExceptionDispatchInfo? Trouble)[] answers = new (bool, T?, ExceptionDispatchInfo?)[count];
        using SemaphoreSlim ready = new(0);
        int next = 0;
        Thread[] crew = [.. Enumerable.Range(0, Math.Min(count, threads)).Select(_ => new Thread(Work) { IsBackground = true })];
        foreach (Thread hand in crew)
        {
            hand.Start();
        }

        try
        {
            for (int i = 0; i < count; i++)
            {
                while (!IsDone(i))
                {
                    ready.Wait();
                }

                answers[i].Trouble?.Throw();
                yield return answers[i].Answer!;
                answers[i].Answer = default;
            }
        }
        finally
        {
            // who stops asking early lets nobody begin anything new
            Interlocked.Exchange(ref next, count);
            foreach (Thread hand in crew)
            {
                hand.Join();
            }
        }

        bool IsDone(int i)
        {
            lock (gate)
            {
                return answers[i].IsDone;
            }
        }

        void Work()
        {
            for (int i = Interlocked.Increment(ref next) - 1; i < count; i = Interlocked.Increment(ref next) - 1)
            {
                (bool, T?, ExceptionDispatchInfo?) answer;
                try
                {
                    answer = (true, work(i), null);
                }
                catch (Exception trouble)
                {
                    // belongs to whoever asked, on their thread
                    answer = (true, default, ExceptionDispatchInfo.Capture(trouble));
                }

                lock (gate)
                {
                    answers[i] = answer;
                }

                ready.Release();
            }
        }
    }
}
