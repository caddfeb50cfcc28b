using System.Globalization;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>
/// Everything that may interrupt a dance, place by place: where weight, foot and facing allow it, or would with a changed last step. The price of each is
/// fixed here, so that the search and the score agree.
/// </summary>
internal sealed class FitActs
{
    private static readonly int[] QuotedCounts = [4, 8, 16];
    private static readonly int[] QuotedWaltzCounts = [3, 6, 12];

    private readonly Dance _dance;
    private readonly FitPrices _prices;
    private readonly DancedPart[] _parts;
    private readonly List<FitContent> _contents = [];
    private readonly Dictionary<string, int> _kinds = new(StringComparer.Ordinal);
    private readonly Dictionary<(int Length, Foot Free), int> _made = [];
    private readonly Dictionary<string, int> _contentOf = new(StringComparer.Ordinal);
    private readonly int _bar;

    private FitActs(Dance dance, FitPrices prices)
    {
        _dance = dance;
        _prices = prices;
        _bar = dance.BeatsPerBar == 3 ? 3 : 4;
        _parts = [.. dance.Parts.Where(p => p.Length > Counts.Zero).Select(p => new DancedPart(dance, p))];
        Parts = [.. _parts.Select((p, i) => new FitPart(p.IsBoundary, ActsOf(i), [.. _parts.Select(next => Follows(p, next))]))];
    }

    /// <summary>The parts for the search.</summary>
    public ValueList<FitPart> Parts { get; }

    /// <summary>The parts as danced.</summary>
    public IReadOnlyList<DancedPart> Danced => _parts;

    /// <summary>What the acts are.</summary>
    public IReadOnlyList<FitContent> Contents => _contents;

    public static FitActs Of(Dance dance, FitPrices prices) => new(dance, prices);

    /// <summary>The price of a place, without what is danced there.</summary>
    public int PlacePrice(int part, int count, bool restarts)
    {
        DancedPart danced = _parts[part];
        int price = _prices.Interruption
            + (danced.IsBoundary[count] ? 0 : _prices.OffSection)
            + (count % _bar == 0 ? 0 : _prices.OffBar)
            + (danced.Places[count].CutsFigure ? _prices.CutFigure : 0)
            + (!restarts && count < danced.Length ? _prices.InsideWall : 0);
        return _prices.AtLevel(price);
    }

    /// <summary>The price of a tag or hold of a length.</summary>
    public int LengthPrice(int length) => (_prices.TagCount * length)
        + _prices.AtLevel(length % _bar == 0 ? 0 : _bar == 4 && length % 2 == 0 ? _prices.OddTag / 2 : _prices.OddTag);

    /// <summary>The price of quoting counts of the dance from a count on: the first counts of a dance make dancers believe that it begins.</summary>
    public int QuotePrice(int from) => from == 0 ? _prices.QuoteStart : _prices.Quote;

    /// <summary>A number for a kind of act: acts of one kind are learnt once.</summary>
    public int KindOf(string words)
    {
        if (!_kinds.TryGetValue(words, out int kind))
        {
            _kinds.Add(words, kind = _kinds.Count);
        }

        return kind;
    }

    /// <summary>In words what kind a restart is.</summary>
    public static string RestartKind(int part, int count) => string.Create(CultureInfo.InvariantCulture, $"restart {part} {count}");

    private static bool Follows(DancedPart part, DancedPart next)
        => ReferenceEquals(part, next) || LeavingPlace.IsFree(part.Places[part.Length].Weight, next.Begin);

    private ValueList<ValueList<FitAct>> ActsOf(int part)
    {
        ValueList<FitAct>[] acts = new ValueList<FitAct>[_parts[part].Length + 1];
        for (int count = 1; count < acts.Length; count++)
        {
            List<FitAct> here = [];
            LeavingPlace place = _parts[part].Places[count];
            if (place.MayLeave)
            {
                List<FitAct> tags = [];
                AddTags(tags, part, count, place);

                // of the tags of one length the plainest will do
                here.AddRange(tags.GroupBy(t => t.Length).Select(same => same.MinBy(t => t.Price)));
                AddHolds(here, part, count);
            }

            if (count < _parts[part].Length && place.MayLeave)
            {
                AddRestarts(here, part, count, place);
            }

            acts[count] = here.ToValueList();
        }

        return [.. acts];
    }

    private void AddRestarts(List<FitAct> acts, int part, int count, LeavingPlace place)
    {
        for (int next = 0; next < _parts.Length; next++)
        {
            Foot? needed = _parts[next].Begin;
            ChangedCounts? change = LeavingPlace.IsFree(place.Weight, needed) ? null : ChangeBefore(part, count, place, needed!.Value);
            if (change is null && !LeavingPlace.IsFree(place.Weight, needed))
            {
                continue;
            }

            int price = PlacePrice(part, count, restarts: true) + (change is null ? 0 : _prices.AtLevel(_prices.ChangedStep));
            acts.Add(new FitAct(FitActType.Restart, 0, price, KindOf(RestartKind(part, count)), next, Content(new FitContent.Again(change))));
        }
    }

    // A touch in place of the step, or a step in place of the touch: then the foot is free.
    private ChangedCounts? ChangeBefore(int part, int count, LeavingPlace place, Foot needed)
    {
        if (place.Last is not { } last || last.Action.Foot.ToFoot() is not { } foot)
        {
            return null;
        }

        bool takes = last.Action.Effect == WeightEffect.Takes;
        bool helps = takes ? foot == needed && last.WeightBefore.StandingFoot() == needed.Other() : foot == needed.Other();
        if (!helps)
        {
            return null;
        }

        StepAction instead = new(
            takes ? ActionKind.Touch : ActionKind.Step,
            foot.ToActingFoot(),
            Direction.Together,
            takes ? Contact.Ball : Contact.Flat,
            takes ? WeightEffect.Keeps : WeightEffect.Takes);
        int section = 0;
        DancedPart danced = _parts[part];
        while (section + 1 < danced.Part.Sections.Count && danced.Part.StartOf(section + 1) < Counts.FromWhole(count))
        {
            section++;
        }

        Counts at = Counts.FromWhole(count - 1) - danced.Part.StartOf(section);
        return new ChangedCounts(new CountSpan(Counts.FromWhole(count - 1), Counts.FromWhole(count)), [TagIdeas.Instead(at, instead)]);
    }

    private void AddTags(List<FitAct> acts, int part, int count, LeavingPlace place)
    {
        Foot? next = count == _parts[part].Length ? NeedAfterEnd(part) : place.Next;
        HashSet<int> own = [];
        foreach (Tag tag in _dance.Tags)
        {
            StepAction[] actions = [.. tag.Body.Steps.OrderBy(s => s.Count.Place).Select(s => s.Action)];
            if (tag.Body.Length is { IsWhole: true, Value.Numerator: >= 1 and <= FitModel.LongestTag } length && Fits(actions, place.Weight, next))
            {
                own.Add(length.Value.Floor);
                Add(acts, part, count, FitActType.Tag, length.Value.Floor, new FitContent.Tagged(tag, IsMade: false), 0);
            }
        }

        AddQuotes(acts, part, count, place, next, own);
        if (place.Weight == Weight.Shared && next is null)
        {
            return;
        }

        Foot free = place.Weight.FreeFoot() ?? next!.Value;
        if (next is { } needed && needed != free)
        {
            return;
        }

        for (int length = 1; length <= FitModel.LongestTag; length++)
        {
            if (!own.Contains(length))
            {
                if (!_made.TryGetValue((length, free), out int content))
                {
                    Tag tag = TagIdeas.Make(length, free, _dance.BeatsPerBar, _parts[0].Begin ?? Foot.Right, IsTaken);
                    _made.Add((length, free), content = Content(new FitContent.Tagged(tag, IsMade: true)));
                }

                Add(acts, part, count, FitActType.Tag, length, content, _prices.MadeTag);
            }
        }
    }

    private bool IsTaken(string name) => _dance.FindTag(name) is not null
        || _contents.OfType<FitContent.Tagged>().Any(t => string.Equals(t.Tag.Name, name, StringComparison.OrdinalIgnoreCase));

    // The first counts of the part once more, or the last before the place.
    private void AddQuotes(List<FitAct> acts, int part, int count, LeavingPlace place, Foot? next, HashSet<int> own)
    {
        foreach (int length in _bar == 3 ? QuotedWaltzCounts : QuotedCounts)
        {
            foreach (int from in new[] { 0, count - length }.Where(f => f >= 0).Distinct())
            {
                if (own.Contains(length) || from + length > _parts[part].Length
                    || !_parts[part].Places[from + length].MayLeave || !(from == 0 || _parts[part].Places[from].MayLeave)
                    || !Fits([.. _parts[part].Actions(from, from + length)], place.Weight, next)
                    || SectionOf(part, from, length) is not { } section)
                {
                    continue;
                }

                Counts start = Counts.FromWhole(from) - _parts[part].Part.StartOf(section);
                CountSpan counts = new(start, start + Counts.FromWhole(length));
                Add(acts, part, count, FitActType.Tag, length, new FitContent.Quoted(_parts[part].Part.Name, section + 1, counts), QuotePrice(from));
            }
        }
    }

    // Only whole figures inside one section can be quoted.
    private int? SectionOf(int part, int from, int length)
    {
        Part of = _parts[part].Part;
        for (int i = 0; i < of.Sections.Count; i++)
        {
            if (of.StartOf(i) <= Counts.FromWhole(from) && Counts.FromWhole(from + length) <= of.StartOf(i) + of.Sections[i].Length)
            {
                return _parts[part].Places[from + length].CutsFigure || (from > 0 && _parts[part].Places[from].CutsFigure) ? null : i;
            }
        }

        return null;
    }

    private void AddHolds(List<FitAct> acts, int part, int count)
    {
        for (int length = 1; length <= FitModel.LongestTag; length++)
        {
            Add(acts, part, count, FitActType.Hold, length, new FitContent.Stands(length), _prices.Hold);
        }
    }

    private void Add(List<FitAct> acts, int part, int count, FitActType type, int length, FitContent content, int price)
        => Add(acts, part, count, type, length, Content(content), price);

    private void Add(List<FitAct> acts, int part, int count, FitActType type, int length, int content, int price)
    {
        int whole = PlacePrice(part, count, restarts: false) + LengthPrice(length) + _prices.AtLevel(price);
        acts.Add(new FitAct(type, length, whole, KindOf(NameOf(_contents[content])), -1, content));
    }

    /// <summary>In words which content it is.</summary>
    public static string NameOf(FitContent content) => content switch
    {
        FitContent.Tagged tagged => "tag " + tagged.Tag.Name,
        FitContent.Quoted quoted => string.Create(CultureInfo.InvariantCulture, $"quote {quoted.PartName} {quoted.Section} {quoted.Counts.Start} {quoted.Counts.End}"),
        FitContent.Stands stands => string.Create(CultureInfo.InvariantCulture, $"hold {stands.Length}"),
        _ => "restart",
    };

    // Each kind of content once; what is danced before a restart is another for each place.
    private int Content(FitContent content)
    {
        if (content is FitContent.Again { Change: not null })
        {
            _contents.Add(content);
            return _contents.Count - 1;
        }

        string name = NameOf(content);
        if (!_contentOf.TryGetValue(name, out int known))
        {
            _contentOf.Add(name, known = _contents.Count);
            _contents.Add(content);
        }

        return known;
    }

    // Whether actions can be danced with the weight there, keep the floor on a wall, and leave the next foot free.
    private static bool Fits(StepAction[] actions, Weight weight, Foot? next)
    {
        if (!LeavingPlace.IsFree(weight, LeavingPlace.NeedOf(actions)) || actions.Any(a => a.Kind == ActionKind.Unknown))
        {
            return false;
        }

        Turn turn = Turn.None;
        foreach (StepAction action in actions)
        {
            weight = action.WeightAfter(weight);
            turn += action.Turn;
        }

        return weight != Weight.Unknown && LeavingPlace.IsFree(weight, next) && Facing.FromEighths(turn.Eighths).IsWall;
    }

    // After a tag at the end of a part, any part that may follow begins; all of them need to be able to.
    private Foot? NeedAfterEnd(int part) => _parts.Where(next => Follows(_parts[part], next)).Select(next => next.Begin).FirstOrDefault(f => f is not null);
}
