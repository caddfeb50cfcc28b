using Microsoft.AspNetCore.Http;
using Scuff.Analysis;
using Scuff.Analysis.Fit;
using Scuff.App.Fitting;
using Scuff.App.Json;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Tracks;
using Scuff.Music;
using Scuff.Repertoire;

namespace Scuff.App.Web;

/// <summary>Answers how a dance fits a track, by the same front door as <c>scuff fit</c>.</summary>
internal static class FitRoom
{
    private const int MostInterruptions = 12;
    private const int MostPins = 60;

    /// <summary>The plans, the chosen one ready to draw, to play and to put into the text.</summary>
    public static DanceFit Of(Studio studio, DanceAnalysis analysis, DanceFitQuestion asked)
    {
        (DanceFitter fitter, FitAnswer answer, FitPlan? chosen) = Fitted(studio, analysis, asked);
        FitPrices usual = new DanceFitter(analysis.Dance).Prices;
        string? trouble = null;
        string? text = chosen is null ? null : PlanWriting.Put(asked.Text, answer, chosen, out trouble);
        CountedMusic music = answer.Music;
        return new DanceFit
        {
            Fit = FittedTrackRow.Of(analysis.Dance.Title, music.Map.Title, answer, chosen),
            Plans = [.. answer.Plans.Select(p => Words(p, music.Map))],
            Chosen = chosen is null ? null : Enumerable.Range(0, answer.Plans.Count).First(i => ReferenceEquals(answer.Plans[i], chosen)),
            AsWritten = answer.AsWritten is { } written ? Words(written, music.Map) : null,
            Seconds = [.. Enumerable.Range(0, music.Counts == 0 ? 0 : music.Counts + 1).Select(i => Math.Round(music.SecondsOf(i), 4))],
            Table = chosen is null ? [] : [.. music.Performed(chosen.Begins).Select(t => new[] { t.Count, Math.Round(t.Seconds, 4) })],
            Text = text,
            Trouble = trouble,
            RestartPlaces = [.. fitter.RestartPlaces],
            Prices = [.. PriceList.Names.Select(n => new DanceFitPrice(n, PriceList.Words(n), PriceList.Of(fitter.Prices, n), PriceList.Of(usual, n)))],
            Accents = chosen is null ? [] : [.. AccentFinder.Find(music, chosen).Select(FitWords.Accent)],
        };
    }

    /// <summary>The chosen plan danced.</summary>
    /// <exception cref="RefusalException">There is no plan.</exception>
    public static FitPlan Chosen(Studio studio, DanceAnalysis analysis, DanceFitQuestion asked)
    {
        (_, FitAnswer answer, FitPlan? chosen) = Fitted(studio, analysis, asked);
        string why = answer.Remarks.Count > 0 ? " " + FitWords.Of(answer.Remarks[^1], answer) : "";
        return chosen ?? throw new RefusalException(StatusCodes.Status422UnprocessableEntity, $"There is no plan to dance.{why}");
    }

    private static (DanceFitter Fitter, FitAnswer Answer, FitPlan? Chosen) Fitted(Studio studio, DanceAnalysis analysis, DanceFitQuestion asked)
    {
        if (asked.Interruptions is < 0 or > MostInterruptions || asked.Intro is < 0 || asked.Pins.Count > MostPins)
        {
            throw new RefusalException(
                StatusCodes.Status400BadRequest,
                $"A plan has 0 to {MostInterruptions} interruptions, an intro of 0 or more counts, and up to {MostPins} decisions of yours.");
        }

        TrackRow row = studio.Tracks.Find(asked.Track);
        TrackMap map = studio.Tracks.Ready(row)
            ?? throw new RefusalException(StatusCodes.Status409Conflict, $"{KnownTrack.TitleOf(row)} was not heard yet. Hear it first, then fit.");
        FitPrices prices = new DanceFitter(analysis.Dance).Prices;
        foreach (string said in asked.Prices)
        {
            prices = PriceList.With(prices, said, out string? trouble) ?? throw new RefusalException(StatusCodes.Status400BadRequest, trouble!);
        }

        DanceFitter fitter = new(analysis.Dance, new FitOptions
        {
            Prices = prices,
            Intro = asked.Intro,
            MostInterruptions = Math.Max(asked.Interruptions ?? 0, new FitOptions().MostInterruptions),
            Pins = [.. asked.Pins.Select(Pin)],
        });
        FitAnswer answer = fitter.Fit(map);

        // where what she decided needs more interruptions than she wants, the fewest there are
        FitPlan? fewest = answer.Plans.Count == 0 ? null : answer.Plans[0];
        FitPlan? chosen = asked.Interruptions is { } most ? answer.Plans.LastOrDefault(p => p.Interruptions <= most) ?? fewest : answer.Kindest;
        return (fitter, answer, chosen);
    }

    private static FitPin Pin(DanceFitPin pin) => pin switch
    {
        { At: < 0 } => throw new RefusalException(StatusCodes.Status400BadRequest, "The counts of the music begin at 0."),
        { Kind: "begins" } => new FitPin.Begins(pin.At),
        { Kind: "extra" } => new FitPin.Extra(pin.At),
        { Kind: "calm" } => new FitPin.Undisturbed(pin.At, pin.To ?? pin.At + 1),
        _ => throw new RefusalException(StatusCodes.Status400BadRequest, "A decision is begins, extra or calm."),
    };

    private static DanceFitPlan Words(FitPlan plan, TrackMap map) => new(
        FitWords.Interruptions(plan.Interruptions),
        plan.Begins,
        FitWords.Beginning(plan),
        [.. plan.Breaks.Select(b => FitWords.Break(b, plan, map))],
        FitWords.Ending(plan),
        [.. FitWords.Sums(plan).Select(s => new DanceFitSum(s.Words, s.Points))]);
}
