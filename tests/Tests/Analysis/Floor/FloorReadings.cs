using Scuff.Analysis.Floor;

namespace Tests.Analysis.Floor;

/// <summary>What tests like to know of a path.</summary>
internal static class FloorReadings
{
    public static FloorKey End(this FloorPath path) => path.Keys[path.Keys.Count - 1];

    public static FloorPoint WayBetweenFeet(this FloorKey key) => key.Right.Place - key.Left.Place;

    public static FloorPoint WayBetweenFeet(this FloorPath path) => path.End().WayBetweenFeet();
}
