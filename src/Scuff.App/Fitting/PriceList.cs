using System.Globalization;
using System.Reflection;
using Scuff.Analysis.Fit;

namespace Scuff.App.Fitting;

/// <summary>The prices of a fit by their names, as she sets them.</summary>
internal static class PriceList
{
    /// <summary>The most points that a price may have.</summary>
    public const int Most = 100_000;

    /// <summary>All names, in the order of <see cref="FitPrices"/>.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Prices().Select(NameOf)];

    /// <summary>A price.</summary>
    public static int Of(FitPrices prices, string name) => (int)Find(name)!.GetValue(prices)!;

    /// <summary>The prices with one of them set by what was typed; null, with the sentence, when that is not understood.</summary>
    /// <param name="prices">The prices.</param>
    /// <param name="said">For example <c>newKind=300</c>.</param>
    /// <param name="trouble">Why not, or null.</param>
    public static FitPrices? With(FitPrices prices, string said, out string? trouble)
    {
        string[] sides = said.Split('=', 2);
        if (Find(sides[0].Trim()) is not { } price)
        {
            trouble = $"There is no price {sides[0]}. There are {string.Join(", ", Names)}.";
            return null;
        }

        if (sides.Length < 2 || !int.TryParse(sides[1], NumberStyles.None, CultureInfo.InvariantCulture, out int points) || points > Most)
        {
            trouble = $"The price {NameOf(price)} is a whole number of points from 0 to {Most}, for example {NameOf(price)}=300.";
            return null;
        }

        trouble = null;
        FitPrices changed = prices with { };
        price.SetValue(changed, points);
        return changed;
    }

    /// <summary>What a price is paid for, in words.</summary>
    public static string Words(string name) => name switch
    {
        "phraseInside" => "the music begins something inside a section of the dance",
        "wallOffPhrase" => "a wall begins where nothing of the music does",
        "interruption" => "an interruption",
        "newKind" => "a kind of interruption that was not there before",
        "offSection" => "an interruption that is not between two sections",
        "offBar" => "an interruption that is not between two bars",
        "cutFigure" => "a figure left in its middle",
        "insideWall" => "a bridge, after which the wall goes on",
        "changedStep" => "the last step before a restart danced differently",
        "oddTag" => "a tag that is no whole number of bars",
        "tagCount" => "each count of a tag",
        "madeTag" => "a tag that the dance does not have yet",
        "quote" => "a tag that dances the last counts once more",
        "quoteStart" => "a tag that quotes the first counts",
        "hold" => "everybody stands through a stop",
        "startElsewhere" => "the dance starts elsewhere than expected",
        "waitedEight" => "each eight between there and where it would start",
        "endInside" => "the music ends inside a section of the dance",
        "otherMusic" => "a part danced to the music of another part",
        "levelPercent" => "interruptions at this level, in hundredths",
        _ => throw new ArgumentOutOfRangeException(nameof(name)),
    };

    private static PropertyInfo? Find(string name)
        => Prices().FirstOrDefault(p => string.Equals(NameOf(p), name, StringComparison.OrdinalIgnoreCase));

    private static IEnumerable<PropertyInfo> Prices()
        => typeof(FitPrices).GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(p => p.PropertyType == typeof(int));

    private static string NameOf(PropertyInfo price) => char.ToLowerInvariant(price.Name[0]) + price.Name[1..];
}
