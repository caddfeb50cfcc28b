using System.Globalization;
using Scuff.Dances;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// What a plan pays, one by one, read off the plan itself. The search does not use it: that both come to the same is a check on both.
/// </summary>
internal sealed class FitScore
{
    private readonly FitActs _acts;
    private readonly FitModel _model;
    private readonly FitPrices _prices;
    private readonly HashSet<string> _madeTags;
    private readonly HashSet<string> _kinds = new(StringComparer.Ordinal);
    private readonly List<FitItem> _items = [];
    private int _last;

    private FitScore(FitActs acts, FitModel model, FitPrices prices, IEnumerable<Tag> made)
    {
        _acts = acts;
        _model = model;
        _prices = prices;
        _madeTags = [.. made.Select(t => t.Name)];
    }

    /// <summary>The items of a plan, in the order in which they are paid.</summary>
    /// <param name="acts">Parts and prices of places.</param>
    /// <param name="model">The music and its prices.</param>
    /// <param name="prices">The prices.</param>
    /// <param name="made">Tags that are not in the dance.</param>
    /// <param name="plan">The plan.</param>
    /// <param name="begins">The count of the music on which it begins.</param>
    /// <param name="startPrice">What it costs to begin there.</param>
    public static ValueList<FitItem> Of(
        FitActs acts, FitModel model, FitPrices prices, IEnumerable<Tag> made, Timeline plan, int begins, int startPrice)
    {
        FitScore score = new(acts, model, prices, made);
        score.Add(FitReason.StartsElsewhere, startPrice, 0, 0, begins);
        foreach (TimedStretch stretch in plan.Stretches)
        {
            score.Take(stretch, begins + stretch.Span.Start.Value.Floor);
        }

        score.End(plan);
        return [.. score._items.Where(i => i.Price != 0)];
    }

    private void Take(TimedStretch stretch, int at)
    {
        PlanStretch plan = stretch.Plan;
        if (plan.Kind == StretchKind.Wall)
        {
            Dance(plan, at);
        }
        else
        {
            Stay(plan, at, stretch.Span.Length.Value.Floor);
        }
    }

    private void Dance(PlanStretch plan, int at)
    {
        int part = PartOf(plan);
        int from = plan.Counts.Start.Value.Floor;
        int to = plan.Counts.End.Value.Floor;
        if (plan.StartsWall)
        {
            Add(FitReason.WallOffPhrase, _model.Begin[part][at], plan.Wall, 0, at);
        }

        for (int count = from; count < to; count++)
        {
            Add(FitReason.PhraseInside, _model.Run(at + count - from, part, count), plan.Wall, count, at + count - from);
        }

        if (plan.IsCutByRestart)
        {
            int change = plan.Changes.Count > 0 ? _prices.AtLevel(_prices.ChangedStep) : 0;
            Add(FitReason.Restart, _acts.PlacePrice(part, to, restarts: true) + change, plan.Wall, to, at + to - from);
            AddKind(FitActs.RestartKind(part, to), plan.Wall, to, at + to - from);
        }
    }

    private void Stay(PlanStretch plan, int at, int length)
    {
        // where the wall was left
        (int part, int after) = PlaceOf(plan);
        bool isHold = plan.Kind == StretchKind.Wait;
        int price = _acts.PlacePrice(part, after, restarts: false) + _acts.LengthPrice(length) + (plan.Kind switch
        {
            StretchKind.Quote => _prices.AtLevel(_acts.QuotePrice(plan.Counts.Start.Value.Floor + QuotedFrom(plan))),
            StretchKind.Wait => _prices.AtLevel(_prices.Hold),
            StretchKind.Tag when _madeTags.Contains(plan.Name) => _prices.AtLevel(_prices.MadeTag),
            _ => 0,
        });
        for (int i = at; i < Math.Min(at + length, _model.Counts); i++)
        {
            price += isHold && _model.Stand[i] < FitModel.Never ? _model.Stand[i] : 0;
            Add(FitReason.PhraseInTag, i > at ? _model.Phrase[i] : 0, plan.Wall, after, i);
        }

        Add(isHold ? FitReason.Hold : FitReason.Tag, price, plan.Wall, after, at);
        string content = plan.Kind switch
        {
            StretchKind.Wait => string.Create(CultureInfo.InvariantCulture, $"hold {length}"),
            StretchKind.Quote => string.Create(CultureInfo.InvariantCulture, $"quote {plan.Name} {plan.Sections[0].Number} {plan.Counts.Start} {plan.Counts.End}"),
            _ => "tag " + plan.Name,
        };
        AddKind(content, plan.Wall, after, at);
    }

    // where the quoted section begins in its part
    private int QuotedFrom(PlanStretch plan)
    {
        Part part = _acts.Danced[PartOf(plan.Name)].Part;
        int section = part.Sections.ToList().FindIndex(s => ReferenceEquals(s, plan.Sections[0]));
        return section < 0 ? 0 : part.StartOf(section).Value.Floor;
    }

    private (int Part, int After) PlaceOf(PlanStretch plan)
    {
        int part = plan.Cause is { PartName.Length: > 0 } cause ? PartOf(cause.PartName) : _last;
        Counts? after = plan.Cause?.AfterCounts;
        int length = _acts.Parts[part].Length;
        return (part, after is { } counts ? Math.Clamp(counts.Value.Floor, 0, length) : length);
    }

    private int PartOf(PlanStretch plan) => _last = PartOf(plan.Name);

    private int PartOf(string name)
    {
        for (int i = 0; i < _acts.Danced.Count; i++)
        {
            if (string.Equals(_acts.Danced[i].Part.Name, name, StringComparison.OrdinalIgnoreCase))
            {
                return i;
            }
        }

        return 0;
    }

    private void AddKind(string kind, int wall, int count, int at)
    {
        if (_kinds.Add(kind))
        {
            Add(FitReason.NewKind, _model.NewKind, wall, count, at);
        }
    }

    private void End(Timeline plan)
    {
        // a tag in which the music ends belongs to the place where the wall was left
        if (plan.Stretches.LastOrDefault(s => s.Plan.Kind == StretchKind.Wall) is { } last)
        {
            int part = PartOf(last.Plan);
            int count = last.Plan.Counts.End.Value.Floor;
            Add(FitReason.EndsInside, _model.End(part, count), last.Plan.Wall, count, _model.Counts);
        }
    }

    private void Add(FitReason reason, int price, int wall, int count, int at) => _items.Add(new FitItem(reason, price, wall, count, at));
}
