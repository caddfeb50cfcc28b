using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Calls;

/// <summary>Goes through a danced dance and lists what a caller could say: moves, headings, warnings, the count-in.</summary>
internal sealed class CallItems
{
    // What dancers would miss most comes first; design values, ours.
    private const double CountInWorth = 40;
    private const double HersWorth = 20;
    private const double ComingWorth = 9;
    private const double ChangedWorth = 8;
    private const double ReminderWorth = 6;
    private const double NewWallWorth = 4;
    private const double HeadWorth = 4;
    private const double TagMoveWorth = 3;
    private const double FigureWorth = 2;
    private const double StepWorth = 1;

    private readonly Dance _dance;
    private readonly Timeline _timeline;
    private readonly CallOptions _options;
    private readonly CallWords _words;
    private readonly CallWording _wording;
    private readonly List<CallItem> _items = [];
    private readonly Dictionary<WrittenStep, WrittenMove> _moves = new(ReferenceEqualityComparer.Instance);
    private readonly HashSet<WrittenStep> _changed = new(ReferenceEqualityComparer.Instance);
    private readonly int _eight;

    private CallItems(Dance dance, Timeline timeline, CallOptions options)
    {
        (_dance, _timeline, _options, _words) = (dance, timeline, options, options.Words);
        _wording = new CallWording(_words);
        _eight = dance.BeatsPerBar == 3 ? 6 : 8;
        FindMoves();
    }

    /// <summary>What could be said.</summary>
    public static List<CallItem> Of(Dance dance, Timeline timeline, CallOptions options)
    {
        CallItems items = new(dance, timeline, options);
        items.AddCountIn();
        items.AddMoves();
        items.AddWarnings();
        return items._items;
    }

    private void FindMoves()
    {
        foreach (PlanStretch stretch in _timeline.Stretches.Select(s => s.Plan))
        {
            foreach (ChangedCounts change in stretch.Changes)
            {
                Keep(change.Moves);
                _changed.UnionWith(change.Steps);
            }

            foreach (Section section in stretch.Sections)
            {
                foreach (WrittenLine line in section.Lines)
                {
                    Keep(line.Moves);
                }
            }
        }
    }

    private void Keep(ValueList<WrittenMove> moves)
    {
        foreach (WrittenMove move in moves)
        {
            foreach (WrittenStep step in move.Steps)
            {
                _moves[step] = move;
            }
        }
    }

    // "8 more", then the last four numbers (three in a waltz), each on its own count.
    private void AddCountIn()
    {
        if (!_options.WithCountIn || _timeline.Length == Counts.Zero)
        {
            return;
        }

        int said = _eight == 6 ? 3 : 4;
        for (int i = said; i > 0; i--)
        {
            string number = (_eight - i + 1).ToString(CultureInfo.InvariantCulture);
            _items.Add(new CallItem
            {
                Kind = CallKind.CountIn,
                Wordings = [number],
                For = Counts.FromWhole(-i),
                Latest = -i,
                Lead = 0,
                IsFixed = true,
                Worth = CountInWorth,
                Wall = 1,
            });
        }

        _items.Add(new CallItem
        {
            Kind = CallKind.CountIn,
            Wordings = [_words.With("count-more", _eight)],
            For = Counts.FromWhole(-_eight),
            Latest = -_eight,
            Lead = CallLead.Reminder,
            Worth = StepWorth,
            Wall = 1,
        });
    }

    private void AddMoves()
    {
        List<Unit> units = UnitsOf();
        for (int i = 0; i < units.Count; i++)
        {
            Unit unit = units[i];
            CallHelp help = _options.HelpIn(unit.Wall);
            bool told = help switch
            {
                CallHelp.EveryStep => true,
                CallHelp.Headings => unit.IsHead || unit.IsExtra || unit.IsChanged,
                CallHelp.Warnings => unit.IsChanged,
                _ => false,
            };
            if (!told || unit.Wordings.Count == 0)
            {
                continue;
            }

            bool first = unit.For <= Counts.Zero && unit.Wall == 1;
            bool heads = help == CallHelp.Headings && unit.IsHead;
            double due = unit.For.Value.ToDouble();
            _items.Add(new CallItem
            {
                Kind = heads ? CallKind.Heading : CallKind.Move,
                Wordings = unit.Wordings,
                For = unit.For,
                Wall = unit.Wall,
                Span = unit.Span,
                IsHers = unit.IsHers,

                // the numbers of the count-in stand before the first move: it is called before them
                Latest = first && _options.WithCountIn ? due - (_eight / 2) : due,
                Lead = first && _options.WithCountIn ? (_eight / 2) + CallLead.Reminder : heads ? unit.IsNew ? CallLead.NewHeading : CallLead.Reminder : null,
                Early = heads ? 2 : 1,
                Worth = unit.IsHers ? HersWorth : unit.IsChanged ? ChangedWorth : unit.IsHead ? HeadWorth : unit.IsExtra ? TagMoveWorth
                    : unit.IsFigure ? FigureWorth : StepWorth,
            });
        }
    }

    // What is danced, move by move; what begins within a count of another is called with it.
    private List<Unit> UnitsOf()
    {
        List<Unit> units = [];
        WrittenMove? current = null;
        int stretch = -1;
        Section? section = null;
        Counts? last = null;
        HashSet<Section> seen = new(ReferenceEqualityComparer.Instance);
        Dictionary<WrittenCall, int> saidIn = new(ReferenceEqualityComparer.Instance);
        foreach (TimedStep step in _timeline.Steps)
        {
            WrittenMove? move = _moves.GetValueOrDefault(step.Written);
            bool begins = move is not null && (step.Stretch != stretch || !ReferenceEquals(move, current) || ReferenceEquals(step.Written, move.Steps[0]));
            bool newSection = step.Stretch != stretch || !ReferenceEquals(step.Section, section);
            (stretch, current, section) = (step.Stretch, move, step.Section);
            if (!begins)
            {
                continue;
            }

            PlanStretch plan = _timeline.Stretches[step.Stretch].Plan;
            bool extra = plan.Kind is StretchKind.Tag or StretchKind.Quote or StretchKind.Ending;
            bool whole = ReferenceEquals(step.Written, move!.Steps[0]);
            bool head = newSection && whole && step.Written.Count.Place <= Counts.Zero;
            WrittenCall? hers = plan.Kind == StretchKind.Ending ? null : HersFor(step.Section, step.Written.Count.Place);
            bool isNew = head && seen.Add(step.Section);
            if (hers is not null)
            {
                // said once each time it is danced, for the first of its moves
                int key = step.Stretch;
                bool again = saidIn.TryGetValue(hers, out int saidKey) && saidKey == key && last is { } before
                    && step.At - before <= hers.Counts!.Value.Length;
                saidIn[hers] = key;
                if (again)
                {
                    continue;
                }

                last = step.At;
                units.Add(new Unit(step.At, step.Wall, hers.Words.Length == 0 ? [] : [hers.Words], hers.Span)
                {
                    IsHers = true,
                    IsHead = head,
                    IsNew = isNew,
                    IsExtra = extra,
                    IsFigure = true,
                });
                continue;
            }

            // it is cut in two by what came between: its name would mean the whole of it
            if (!whole)
            {
                continue;
            }

            List<string> wordings = _wording.Of(move, head || step.WeightBefore == Weight.Shared);
            bool changed = _changed.Contains(step.Written);
            if (units.Count > 0 && !head && last is { } gone && step.At - gone < Counts.One && units[^1] is { IsHers: false } joined
                && joined.IsChanged == changed && !joined.IsFigure)
            {
                joined.Join(wordings, move.Span);
                last = step.At;
                continue;
            }

            last = step.At;
            units.Add(new Unit(step.At, step.Wall, wordings, move.Span)
            {
                IsHead = head && !extra,
                IsNew = isNew,
                IsExtra = extra,
                IsChanged = changed,
                IsFigure = move.Definition is { Rows.Count: > 1 },
                Title = head && plan.Kind == StretchKind.Wall ? TitleOf(step.Section) : null,
            });
        }

        foreach (Unit unit in units)
        {
            if (unit.Title is { } title && _options.HelpIn(unit.Wall) == CallHelp.Headings)
            {
                unit.Wordings.Insert(0, title);
            }
        }

        return units;
    }

    // What she calls the section, where it is short enough to be called.
    private static string? TitleOf(Section section)
    {
        if (section.Calls.FirstOrDefault(c => c.Counts is null) is { Words.Length: > 0 } hers)
        {
            return hers.Words;
        }

        int words = SpokenLength.WordsIn(section.Title);
        return words is > 0 and <= 4 && !section.Title.Any(char.IsDigit) ? section.Title : null;
    }

    private static WrittenCall? HersFor(Section section, Counts place)
        => section.Calls.LastOrDefault(c => c.Counts is { } counts && counts.Contains(place));

    private void AddWarnings()
    {
        int last = -1;
        for (int i = 0; i < _timeline.Stretches.Count; i++)
        {
            last = _timeline.Stretches[i].Plan.StartsWall ? i : last;
        }

        bool cut = false;
        Facing? facing = null;
        for (int i = 0; i < _timeline.Stretches.Count; i++)
        {
            TimedStretch stretch = _timeline.Stretches[i];
            PlanStretch plan = stretch.Plan;
            Counts at = stretch.Span.Start;
            if (_options.HelpIn(plan.Wall) == CallHelp.Silent)
            {
                cut = plan.StartsWall ? plan.IsCutByRestart : cut || plan.IsCutByRestart;
                facing = plan.StartsWall ? stretch.Facing : facing;
                continue;
            }

            bool again = i > 0 && plan.Cause is not null && _timeline.Stretches[i - 1].Plan is { Kind: not StretchKind.Wall } previous
                && ReferenceEquals(previous.Cause, plan.Cause);
            switch (plan.Kind)
            {
                case StretchKind.Tag or StretchKind.Quote when !again && at > Counts.Zero:
                    AddTag(plan, at);
                    break;
                case StretchKind.Wait when plan.Counts.Length >= Counts.One:
                    Add(CallKind.Wait, [_words.With("wait", plan.Counts.Length.Value.Floor)], at, CallLead.Reminder, ReminderWorth, plan.Wall, CauseSpan(plan));
                    break;
                case StretchKind.Ending:
                    Add(CallKind.Ending, [_words["ending-coming"]], at, CallLead.Warning, ComingWorth, plan.Wall, default, CallLead.WarningSaid);
                    Add(CallKind.Ending, [_words["ending"]], at, CallLead.Reminder, StepWorth, plan.Wall, default);
                    break;
            }

            if (plan.StartsWall)
            {
                if (cut && i > 0)
                {
                    TextSpan span = CauseSpan(_timeline.Stretches[i - 1].Plan);
                    Add(CallKind.Restart, [_words["restart-coming"], _words["restart"]], at, CallLead.Warning, ComingWorth, plan.Wall, span, CallLead.WarningSaid);
                    Add(CallKind.Restart, [_words["restart"]], at, CallLead.Reminder, ReminderWorth, plan.Wall, span);
                }
                else if (i > 0 && stretch.Facing is { } now && facing is { } before && now != before && i != last)
                {
                    Add(CallKind.NewWall, [_words["new-wall"]], at, CallLead.Reminder, NewWallWorth, plan.Wall, default);
                }

                if (i == last && plan.Wall > 2)
                {
                    Add(CallKind.LastOne, [_words["last-one"]], at, CallLead.Warning, ComingWorth, plan.Wall, default, CallLead.WarningSaid);
                }

                facing = stretch.Facing;
                cut = false;
            }

            cut |= plan.IsCutByRestart;
        }
    }

    private void AddTag(PlanStretch plan, Counts at)
    {
        Section body = plan.Sections[0];
        bool bridge = _dance.FindTag(plan.Name) is { IsBridge: true } && plan.Kind == StretchKind.Tag;
        string name = plan.Kind == StretchKind.Tag && body.Calls.FirstOrDefault(c => c.Counts is null) is { Words.Length: > 0 } hers
            ? hers.Words : _words[bridge ? "bridge" : "tag"];
        string coming = name == _words["tag"] ? _words["tag-coming"] : name == _words["bridge"] ? _words["bridge-coming"] : _words.With("coming", name);
        Add(CallKind.Tag, [coming, name], at, CallLead.Warning, ComingWorth, plan.Wall, CauseSpan(plan), CallLead.WarningSaid);
        Add(CallKind.Tag, [name], at, CallLead.Reminder, ReminderWorth, plan.Wall, CauseSpan(plan));
    }

    private void Add(CallKind kind, List<string> wordings, Counts at, double lead, double worth, int wall, TextSpan span, double before = 0)
        => _items.Add(new CallItem
        {
            Kind = kind,
            Wordings = wordings,
            For = at,
            Latest = at.Value.ToDouble() - before,
            Lead = lead,
            Early = 2,
            Worth = worth,
            Wall = wall,
            Span = span,
        });

    private static TextSpan CauseSpan(PlanStretch plan) => plan.Cause?.Span ?? default;

    // A move as it is danced, or several that begin within one count.
    private sealed class Unit(Counts at, int wall, List<string> wordings, TextSpan span)
    {
        private string? _alone;
        private string? _joined;

        public Counts For { get; } = at;

        public int Wall { get; } = wall;

        public List<string> Wordings { get; private set; } = wordings;

        public TextSpan Span { get; private set; } = span;

        public bool IsHers { get; init; }

        public bool IsHead { get; init; }

        public bool IsNew { get; init; }

        public bool IsExtra { get; init; }

        public bool IsChanged { get; init; }

        public bool IsFigure { get; init; }

        public string? Title { get; init; }

        // "behind", "side", "cross": said in one breath as long as that is short enough
        public void Join(List<string> more, TextSpan span)
        {
            Span = TextSpan.Cover(Span, span);
            if (more.Count == 0 || Wordings.Count == 0)
            {
                return;
            }

            string alone = _alone ??= Wordings[^1];
            string joined = (_joined ?? alone) + " " + more[^1];
            if (SpokenLength.WordsIn(joined) <= SpokenLength.MostWords)
            {
                _joined = joined;
                Wordings = [joined, alone];
            }
        }
    }
}
