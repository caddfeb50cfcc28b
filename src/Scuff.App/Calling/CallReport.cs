using System.Globalization;
using System.Text;
using Scuff.Analysis.Calls;
using Scuff.Timing;

namespace Scuff.App.Calling;

/// <summary>The calls as a list to read.</summary>
internal static class CallReport
{
    private const int SecondsPerMinute = 60;

    /// <summary>A line for each call: when it is said, what is said, for which count of which wall.</summary>
    public static string Of(CalledDance called, CallScript script)
    {
        StringBuilder text = new();
        string title = called.Dance.Title.Length > 0 ? called.Dance.Title : "This dance";
        text.Append(Plain.Line(called.TrackTitle.Length > 0 ? $"{title}, called to “{called.TrackTitle}”" : $"{title}, called"))
            .Append(CultureInfo.InvariantCulture, $" at {called.Clock.CountsPerMinute:0.#} counts a minute\n\n  time     wall  count  call\n");
        foreach (Call call in script.Calls)
        {
            text.Append(CultureInfo.InvariantCulture, $"  {Time(call.Seconds),-8} {call.Wall,4}  {PlaceOf(called, call.For),5}  {Plain.Line(call.Words)}\n");
        }

        return text.ToString();
    }

    /// <summary>Minutes and seconds: <c>1:07.4</c>.</summary>
    public static string Time(double seconds)
    {
        double tenths = Math.Round(Math.Abs(seconds), 1);
        int minutes = (int)(tenths / SecondsPerMinute);
        return string.Create(CultureInfo.InvariantCulture, $"{(seconds < 0 && tenths > 0 ? "-" : "")}{minutes}:{tenths - (minutes * SecondsPerMinute):00.0}");
    }

    // the printed count of what is called; in the count-in the number itself
    private static string PlaceOf(CalledDance called, Counts place)
    {
        if (place < Counts.Zero && place.IsWhole)
        {
            return "in";
        }

        // a pick-up belongs to no count of its own
        string label = called.Timeline.Steps.FirstOrDefault(s => s.At == place)?.CountLabel ?? CountGrid.LabelOf(place);
        return label.StartsWith('0') ? label[1..] : label;
    }
}
