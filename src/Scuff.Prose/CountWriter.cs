using System.Globalization;
using System.Text;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>Writes the counts of a line as they are printed: <c>1-2</c>, <c>3&amp;4</c>, <c>1-4</c>, <c>5-6&amp;</c>.</summary>
public static class CountWriter
{
    /// <summary>The label of places in order; an empty text for none.</summary>
    public static string Label(IReadOnlyList<Counts> places)
    {
        StringBuilder label = new();
        int? lastWhole = null;
        bool dashed = false;
        for (int i = 0; i < places.Count; i++)
        {
            Counts place = places[i];
            int number = place.Value.Floor + 1;
            if (!place.IsWhole)
            {
                Flush(label, lastWhole, ref dashed);
                string letter = CountGrid.LabelOf(place)[number.ToString(CultureInfo.InvariantCulture).Length..];
                label.Append(letter);
                lastWhole = null;
                continue;
            }

            bool follows = lastWhole is int last && number == last + 1 && i > 0 && places[i - 1].IsWhole;
            if (follows)
            {
                dashed = true;
                lastWhole = number;
                continue;
            }

            Flush(label, lastWhole, ref dashed);
            if (label.Length > 0 && char.IsAsciiDigit(label[^1]))
            {
                label.Append(',');
            }

            label.Append(number.ToString(CultureInfo.InvariantCulture));
            lastWhole = number;
        }

        Flush(label, lastWhole, ref dashed);
        return label.ToString();
    }

    private static void Flush(StringBuilder label, int? last, ref bool dashed)
    {
        if (dashed && last is int number)
        {
            label.Append('-').Append(number.ToString(CultureInfo.InvariantCulture));
        }

        dashed = false;
    }
}
