using System.Globalization;
using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Analysis.Easier;

/// <summary>One reason for an easier way, as a value.</summary>
/// <param name="Kind">Which.</param>
/// <param name="Before">How much of it there was; its unit follows from the kind.</param>
/// <param name="After">How much there is.</param>
public sealed record EasierReason(EasierReasonKind Kind, Ratio Before, Ratio After)
{
    private const int Near = 10;

    /// <summary>The reason in English: <c>no turn instead of a full turn</c>.</summary>
    public string Words => Kind switch
    {
        EasierReasonKind.NoTurn => "no turn instead of " + TurnOf(Before),
        EasierReasonKind.SmallerTurn => TurnOf(After) + " instead of " + TurnOf(Before),
        EasierReasonKind.NoSpin => "no turn on one foot",
        EasierReasonKind.NoLanding => "nothing leaves the floor",
        EasierReasonKind.NoTwist => "no twist for the knee",
        EasierReasonKind.NoBend => "no deep bend",
        EasierReasonKind.WholeCounts => "whole counts only",
        EasierReasonKind.FewerSteps => string.Create(CultureInfo.InvariantCulture, $"{After} {(After == 1 ? "step" : "steps")} instead of {Before}"),
        EasierReasonKind.Level => LevelPhrases.Name((Level)After.Floor) + " instead of " + LevelPhrases.Name((Level)Before.Floor),
        EasierReasonKind.SameEnd => "ends on the same foot and wall",
        EasierReasonKind.Away => After <= Near ? "ends in the same place" : string.Create(CultureInfo.InvariantCulture, $"ends {After} cm from the others"),
        EasierReasonKind.Wider => string.Create(CultureInfo.InvariantCulture, $"takes {After} counts, to meet the others again at their end"),
        _ => throw new InvalidOperationException("No words for " + Kind + "."),
    };

    internal static ValueList<EasierReason> Of(EasierWay way)
    {
        MoveDemand before = way.Before;
        MoveDemand after = way.After;
        List<EasierReason> reasons = [];
        if (after.Turn < before.Turn)
        {
            reasons.Add(new EasierReason(after.Turn.Sign == 0 ? EasierReasonKind.NoTurn : EasierReasonKind.SmallerTurn, before.Turn, after.Turn));
        }

        Gone(EasierReasonKind.NoSpin, before.OneFootTurn, after.OneFootTurn);
        Gone(EasierReasonKind.NoLanding, before.Landings, after.Landings);
        Gone(EasierReasonKind.NoTwist, before.Twists, after.Twists);
        Gone(EasierReasonKind.NoBend, before.Bends, after.Bends);
        Gone(EasierReasonKind.WholeCounts, before.OffBeats, after.OffBeats);
        if (after.Steps < before.Steps)
        {
            reasons.Add(new EasierReason(EasierReasonKind.FewerSteps, before.Steps, after.Steps));
        }

        if (after.Level < before.Level)
        {
            reasons.Add(new EasierReason(EasierReasonKind.Level, (int)before.Level, (int)after.Level));
        }

        reasons.Add(new EasierReason(EasierReasonKind.SameEnd, 0, 0));
        reasons.Add(new EasierReason(EasierReasonKind.Away, 0, (int)Math.Round(way.Away * 100)));
        if (way.IsWider)
        {
            reasons.Add(new EasierReason(EasierReasonKind.Wider, 0, way.Counts.End.Value - Counts.Max(Counts.Zero, way.Counts.Start).Value));
        }

        return reasons.ToValueList();

        void Gone(EasierReasonKind kind, Ratio much, Ratio left)
        {
            if (much.Sign > 0 && left.Sign == 0)
            {
                reasons.Add(new EasierReason(kind, much, left));
            }
        }
    }

    // "1/4 right" without its side: the amounts are added up whichever way they go
    private static string TurnOf(Ratio eighths)
    {
        string words = Checks.Walks.Words.Of(Turn.FromEighths(eighths));
        words = words[..words.LastIndexOf(' ')];
        return words switch { "full turn" => "a full turn", _ when char.IsAsciiDigit(words[0]) && !words.Contains("turn", StringComparison.Ordinal) => words + " turn", _ => words };
    }
}
