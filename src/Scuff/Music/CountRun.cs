namespace Scuff.Music;

/// <summary>Lays counts over beats: they run from 1 to the end of an eight and begin anew, or earlier where something begins.</summary>
public static class CountRun
{
    /// <summary>The beats with their counts and places in the bar.</summary>
    /// <param name="seconds">When the beats fall, rising.</param>
    /// <param name="meter">How they fall into bars.</param>
    /// <param name="ones">Beats that are a count 1 whatever the count before; what comes before the first of them is counted towards it. If there is
    /// none, the first beat is one.</param>
    public static ValueList<TrackBeat> Lay(IReadOnlyList<double> seconds, Meter meter, IEnumerable<int> ones)
    {
        int cycle = meter.BeatsInEight;
        HashSet<int> starts = [.. ones.Where(o => o >= 0 && o < seconds.Count)];
        int first = starts.Count > 0 ? starts.Min() : 0;
        int count = cycle - 1 - ((((first - 1) % cycle) + cycle) % cycle);
        TrackBeat[] beats = new TrackBeat[seconds.Count];
        for (int i = 0; i < beats.Length; i++)
        {
            count = starts.Contains(i) ? 0 : count % cycle;
            beats[i] = new TrackBeat(seconds[i], (count % meter.BeatsInBar) + 1, count + 1);
            count++;
        }

        return [.. beats];
    }

    /// <summary>The beats on which a count 1 does not follow from the count before it: the first one, and those after an eight that is too short or too
    /// long. Rising.</summary>
    public static ValueList<int> RestartsIn(ValueList<TrackBeat> beats, Meter meter)
    {
        List<int> restarts = [];
        for (int i = 0; i < beats.Count; i++)
        {
            if (beats[i].Count == 1 && (restarts.Count == 0 || beats[i - 1].Count != meter.BeatsInEight))
            {
                restarts.Add(i);
            }
        }

        return [.. restarts];
    }
}
