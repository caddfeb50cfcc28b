using Scuff.Analysis;
using Scuff.Analysis.Easier;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.App.Easing;

/// <summary>
/// Easier ways that can be written. The finder knows no words and the writer no dance rule: here both are held against each other, by writing
/// an offer into the text, reading all of it again and asking every check.
/// </summary>
internal sealed class EasierOffers
{
    // so many are written and read again before a move counts as one for which no words are found
    private const int MostTries = 16;

    private readonly DanceAnalysis _analysis;
    private readonly EasierFinder _finder;
    private readonly EasierQuestion _question;
    private readonly Dictionary<(string Rule, string Message), int> _complaints;

    /// <summary>Offers for one question about a dance.</summary>
    public EasierOffers(DanceAnalysis analysis, EasierQuestion question)
    {
        _analysis = analysis;
        _question = question;
        _finder = new EasierFinder(analysis, question);
        _complaints = Complaints(analysis.Report);
    }

    /// <summary>The moves that are worth making easier.</summary>
    public ValueList<EasierPlace> Places => _finder.Places;

    /// <summary>The best offers for a move, at most so many.</summary>
    public IReadOnlyList<EasierOffer> For(EasierPlace place, int most)
    {
        List<EasierOffer> offers = [];
        foreach (EasierWay way in _finder.WaysFor(place).Take(MostTries))
        {
            if (offers.Count == most)
            {
                break;
            }

            if (Written(way) is { } offer)
            {
                offers.Add(offer);
            }
        }

        return offers;
    }

    /// <summary>The best offer for each move, none overlapping another.</summary>
    /// <param name="besideOptions">Whether they are to be options beside those she has: where she has one, none is offered.</param>
    public IEnumerable<EasierOffer> BestForAll(bool besideOptions)
    {
        List<EasierWay> taken = [];
        foreach (EasierPlace place in Places)
        {
            CountSpan own = new(place.Move.Steps[0].Count.Place, place.Move.Steps[^1].Count.Place + Counts.One);
            if ((besideOptions && place.Section.Lines.SelectMany(line => line.Options).Any(option => option.Replaces.Overlaps(own)))
                || taken.Exists(way => ReferenceEquals(way.Section, place.Section) && way.Counts.Overlaps(own)))
            {
                continue;
            }

            EasierOffer? offer = For(place, 3).FirstOrDefault(o => !taken.Exists(way => ReferenceEquals(way.Section, o.Way.Section) && way.Counts.Overlaps(o.Way.Counts)));
            if (offer is not null)
            {
                taken.Add(offer.Way);
                yield return offer;
            }
        }
    }

    private static Dictionary<(string Rule, string Message), int> Complaints(Report report) => report.Complaints
        .Where(complaint => complaint.Severity > Severity.Hint)
        .CountBy(complaint => (complaint.Rule.Id, complaint.Message))
        .ToDictionary();

    private EasierOffer? Written(EasierWay way)
    {
        string name = NameOf(way);
        ValueList<TextEdit> edits = EditWriter.ToTextEdits(_analysis.Draft, new DanceEdit.AddOption(way.Section, name, way.Places, way.Moves));
        if (edits.Count == 0)
        {
            return null;
        }

        DanceAnalysis after = DanceAnalysis.Of(DanceReader.Read(EditWriter.Apply(_analysis.Draft.Text, edits)), _analysis.Namesakes, _analysis.Maps);
        List<StepOption> written = [.. OptionsLike(after.Dance, way)];
        if (written.Count != OptionsLike(_analysis.Dance, way).Count() + 1
            || Complaints(after.Report).Any(c => c.Value > _complaints.GetValueOrDefault(c.Key)))
        {
            return null;
        }

        string line = edits[0].NewText;
        return new EasierOffer(way, name, written[0].Label, line[(line.IndexOf(": ", StringComparison.Ordinal) + 2)..], edits);
    }

    private static IEnumerable<StepOption> OptionsLike(Dance dance, EasierWay way) => LineRewriter.LinesOf(dance)
        .SelectMany(line => line.Options)
        .Where(option => option.Replaces == way.Counts && IsSame(option.Steps, way.Moves.SelectMany(move => move.Steps)));

    private static bool IsSame(IEnumerable<WrittenStep> one, IEnumerable<WrittenStep> other) => one.Select(Bare).SequenceEqual(other.Select(Bare));

    private static (Counts Place, StepAction Action) Bare(WrittenStep step) => (step.Count.Place, step.Action with { Contact = default });

    private string NameOf(EasierWay way) => _question.Aim switch
    {
        EasierAim.Knees => "kind to knees",
        EasierAim.Turns => way.After.Turn.Sign == 0 ? "no turn" : "less turn",
        EasierAim.Speed => "slower",
        _ => "easier",
    };
}
