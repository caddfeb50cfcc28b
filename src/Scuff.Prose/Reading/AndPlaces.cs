using Scuff.Prose.Words;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

/// <summary>Places for an &amp; that stands between the moves of a line and not in its label: "1-2 rock R forward, recover L &amp; step R together".</summary>
internal static class AndPlaces
{
    /// <summary>The places with as many &amp; among them as the words have, in every order; none where the label knows of one or there are too many.</summary>
    /// <param name="clauses">The clauses of the line.</param>
    /// <param name="places">The places of its label.</param>
    public static IEnumerable<List<LabelPlace>> Of(List<Clause> clauses, IReadOnlyList<LabelPlace> places)
    {
        int ands = clauses.Count(c => c.IsAmp);
        bool plain = clauses.TrueForAll(c => c is
        {
            IsWith: false, SameTime: false, IsRepeat: false, Times: 1, TimesStated: false, Detail.Count: 0, Unknown.Count: 0, IsTurnOnly: false
        });
        if (ands is not (1 or 2) || !plain || places.Count is < 2 or > 8 || !places.All(p => p.Place.IsWhole))
        {
            yield break;
        }

        for (int first = 0; first < places.Count; first++)
        {
            if (ands == 1)
            {
                yield return With(places, first, first);
                continue;
            }

            for (int second = first + 1; second < places.Count; second++)
            {
                yield return With(places, first, second);
            }
        }
    }

    /// <summary>Whether every move on an &amp; is a step that an &amp; stands before, and no other is.</summary>
    /// <param name="reading">The reading.</param>
    /// <param name="danced">The clauses it dances.</param>
    public static bool AreAnds(LineReading reading, List<Clause> danced)
        => reading.Rows.TrueForAll(r => r.IsWith || (r.Place.IsWhole != (danced[r.Clause].Link is Link.Amp)
            && (r.Place.IsWhole || r.Action.Effect is WeightEffect.Takes)));

    /// <summary>Whether a colon or a dash stands among the words, so that a name may stand before the steps and say them twice.</summary>
    /// <param name="terms">The terms of the line.</param>
    public static bool MayBeTitled(List<Term> terms) => terms.Exists(t => t is { Kind: TermKind.Separator, Text: ":" or "-" or "–" or "—" });

    /// <summary>The places with an &amp; after the last; null where they are not whole counts alone.</summary>
    /// <param name="places">The places of the label.</param>
    public static List<LabelPlace>? WithLast(IReadOnlyList<LabelPlace> places)
        => places.Count is > 1 and < 9 && places.All(p => p.Place.IsWhole) ? With(places, places.Count - 1, places.Count - 1) : null;

    /// <summary>Whether a step that takes the weight is danced on the &amp; at the end.</summary>
    /// <param name="reading">The reading.</param>
    public static bool EndsInStep(LineReading reading) => reading.Rows.FindLast(r => !r.IsWith) is { Place.IsWhole: false, Action.Effect: WeightEffect.Takes };

    private static List<LabelPlace> With(IReadOnlyList<LabelPlace> places, int first, int second)
    {
        List<LabelPlace> all = [];
        for (int i = 0; i < places.Count; i++)
        {
            all.Add(places[i]);
            if (i == first || i == second)
            {
                Counts half = places[i].Place + Counts.Half;
                all.Add(new LabelPlace(CountGrid.LabelOf(half), places[i].Number, half, false));
            }
        }

        return all;
    }
}
