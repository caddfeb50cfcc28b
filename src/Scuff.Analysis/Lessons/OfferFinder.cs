using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>Finds what can be offered with each chunk: the dance's own options first, else what the trade offers for what the cautions warn of.</summary>
internal static class OfferFinder
{
    /// <summary>Half a turn, in eighths: from here on a turn is one to be afraid of. Design value.</summary>
    private static readonly Ratio LargeTurn = 4;

    // Words of an option's name that say what it spares.
    private static readonly string[] KneeWords = ["jump", "hop", "knee", "turn", "spin", "twist", "swivel", "low", "gentle", "easy", "easier"];
    private static readonly string[] HarderWords = ["harder", "advanced", "challenge"];

    /// <summary>The offers, by chunks.</summary>
    public static ValueList<LessonOffer> Of(DanceAnalysis analysis, ValueList<LessonChunk> chunks, ValueList<LessonMove> moves, LessonOptions options)
    {
        if (!options.ForKnees && !options.ForBeginners)
        {
            return [];
        }

        List<LessonOffer> offers = [];
        HashSet<WrittenStep> twists = Written(analysis.Load.Twists);
        HashSet<WrittenStep> landings = Written(analysis.Load.Landings);
        HashSet<WrittenStep> bends = Written(analysis.Load.Bends);
        HashSet<WrittenStep> stomps = Written(analysis.Load.Stomps);
        foreach (LessonChunk chunk in chunks)
        {
            LessonMove[] here = [.. moves.Where(m => m.Head >= chunk.Span.Start && m.Head < chunk.Span.End)];
            WrittenStep[] steps = [.. here.SelectMany(m => m.Move.Steps)];
            bool sparesKnees = false;
            bool isEasier = false;
            foreach (StepOption option in here.Select(m => m.Line).Distinct().SelectMany(l => l.Options).Distinct())
            {
                bool isHarder = Array.Exists(HarderWords, w => option.Name.Contains(w, StringComparison.OrdinalIgnoreCase));
                bool forKnees = !isHarder && Array.Exists(KneeWords, w => option.Name.Contains(w, StringComparison.OrdinalIgnoreCase));
                if (!isHarder && ((options.ForKnees && forKnees) || options.ForBeginners))
                {
                    offers.Add(new LessonOffer(LessonOfferKind.Own, chunk.Number, forKnees, ForBeginners: true) { Option = option });
                    sparesKnees |= forKnees;
                    isEasier = true;
                }
            }

            Ratio oneFoot = Number(chunk, LessonReasonKind.OneFoot);
            if (options.ForKnees && !sparesKnees)
            {
                Add(LessonOfferKind.SmallSwivel, steps.Any(twists.Contains), forKnees: true);
                Add(LessonOfferKind.StepForJump, steps.Any(landings.Contains), forKnees: true);
                Add(LessonOfferKind.LessBend, steps.Any(bends.Contains), forKnees: true);
                Add(LessonOfferKind.SoftStomp, steps.Any(stomps.Contains), forKnees: true);
                Add(LessonOfferKind.WalkAround, oneFoot >= LargeTurn, forKnees: true);
            }

            if (options.ForBeginners && !isEasier)
            {
                Add(LessonOfferKind.NoTurn, steps.Length > 0 && here.Any(m => IsWholeTurn(m.Move)), forKnees: false);
                Add(LessonOfferKind.WholeCounts, Number(chunk, LessonReasonKind.OffBeats).Sign > 0, forKnees: false);
            }

            void Add(LessonOfferKind kind, bool isThere, bool forKnees)
            {
                if (isThere)
                {
                    offers.Add(new LessonOffer(kind, chunk.Number, forKnees, !forKnees));
                }
            }
        }

        return offers.ToValueList();
    }

    private static HashSet<WrittenStep> Written(ValueList<Timelines.TimedStep> steps) => new(steps.Select(s => s.Written), ReferenceEqualityComparer.Instance);

    // Only what comes round to where it began can be left out without the floor facing elsewhere.
    private static bool IsWholeTurn(WrittenMove move)
    {
        Ratio turn = 0;
        foreach (WrittenStep step in move.Steps)
        {
            turn += step.Action.Turn.Eighths;
        }

        return turn.Sign != 0 && turn.IsWhole && turn.Numerator % 8 == 0;
    }

    private static Ratio Number(LessonChunk chunk, LessonReasonKind kind) => chunk.Reasons.FirstOrDefault(r => r.Kind == kind)?.Number ?? 0;
}
