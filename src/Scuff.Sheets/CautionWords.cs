using System.Globalization;
using Scuff.Analysis.Cautions;
using Scuff.Analysis.Loads;
using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>Cautions as the sentences of a sheet.</summary>
internal static class CautionWords
{
    /// <summary>A sentence for each caution, then who has the last word; none where there is nothing to take care of.</summary>
    public static ValueList<string> Of(ValueList<Caution> cautions, Wording words) => cautions.Count == 0
        ? default
        : [.. cautions.Select(caution => Sentence(caution, words)), words.Language.Cautions.Deference];

    private static string Sentence(Caution caution, Wording words)
    {
        CautionLabels labels = words.Language.Cautions;
        string template = caution.Kind switch
        {
            CautionKind.KneeTwist => labels.KneeTwist,
            CautionKind.OneFootSpin => labels.OneFootSpin,
            CautionKind.ManyTurns => labels.ManyTurns,
            CautionKind.Jumps => labels.Jumps,
            CautionKind.Kneel => labels.Kneel,
            CautionKind.Stomps => labels.Stomps,
            CautionKind.FastFeet => labels.FastFeet,
            CautionKind.SharedFloor => caution.Way switch
            {
                FloorWay.Left => labels.SharedFloorLeft,
                FloorWay.Right => labels.SharedFloorRight,
                FloorWay.Forward => labels.SharedFloorForward,
                _ => labels.SharedFloorBack,
            },
            _ => throw new ArgumentOutOfRangeException(nameof(caution)),
        };
        return Filled(template, Number(caution, words), Place(caution.Place, labels));
    }

    private static string Number(Caution caution, Wording words) => caution.Kind is CautionKind.OneFootSpin or CautionKind.ManyTurns
        ? Filled(
            caution.Number <= 8 || words.IsOne(caution.Number / 8) ? words.Language.Cautions.Turn : words.Language.Cautions.Turns,
            SheetWords.Amount(caution.Number / 8))
        : words.Decimal(caution.Number);

    private static string Place(DancePlace place, CautionLabels labels)
    {
        string section = Number(place.Section);
        return place.Section == 0
            ? Filled(labels.InTag, place.Tag, place.Count)
            : place.Part.Length > 0
                ? Filled(labels.InPart, place.Part, section, place.Count)
                : Filled(labels.InSection, section, place.Count);
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Filled(string template, params object[] values) => string.Format(CultureInfo.InvariantCulture, template, values);
}
