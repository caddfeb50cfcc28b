using System.Globalization;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Small questions on the places of a line's label.</summary>
internal static class LabelPlaces
{
    /// <summary>A number of things in words: "1 place", "3 places".</summary>
    public static string Many(int number, string what) => string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");

    /// <summary>The label of the first place, or null.</summary>
    public static string? FirstCount(IReadOnlyList<LabelPlace> places) => places.Count > 0 ? places[0].Label : null;

    /// <summary>The beat after a place.</summary>
    public static Counts EndOf(Counts place) => Counts.FromWhole(place.Value.Floor + 1);
}
