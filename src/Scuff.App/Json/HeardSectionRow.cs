using Scuff.Music;

namespace Scuff.App.Json;

/// <summary>A section: its time, its first beat as an index into the beats, its length in beats, its letter and name, how sure its start is.</summary>
internal sealed record HeardSectionRow(double Start, double End, int FirstBeat, int Beats, string Label, string Name, double Confidence)
{
    /// <summary>A section of a map.</summary>
    public static HeardSectionRow Of(TrackMap map, TrackSection section)
    {
        int end = section.FirstBeat + section.Beats;
        return new HeardSectionRow(
            map.Beats[section.FirstBeat].Seconds,
            end < map.Beats.Count ? map.Beats[end].Seconds : map.Seconds,
            section.FirstBeat,
            section.Beats,
            section.Label,
            section.Name,
            section.Confidence);
    }
}
