using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;

namespace Tests.Corpus;

/// <summary>One block of the wording corpus: words as people write them, and the events a careful teacher reads from them.</summary>
internal sealed record CorpusCase(string File, string Manner, int Line, string Start, IReadOnlyList<string> Texts, string Want)
{
    /// <summary>What a teacher would ask and the checks ask for the reader: a pivot the wrong way, a break within a figure or without its count.</summary>
    private static readonly string[] Asks = ["turn/pivot-direction", "weight/foot-unnamed-on-both", "interruption/cuts-figure", "interruption/incomplete"];

    /// <summary>How a case came out.</summary>
    public enum Outcome
    {
        /// <summary>Read as wanted, without a question; or asked where a question is wanted.</summary>
        Right,

        /// <summary>A question or an error was raised: nothing wrong went by unnoticed.</summary>
        Asked,

        /// <summary>Read otherwise without a question: the worst fault.</summary>
        Wrong,
    }

    /// <summary>All cases of a folder, in order of file and line.</summary>
    public static List<CorpusCase> Load(string folder)
    {
        List<CorpusCase> cases = [];
        foreach (string file in Directory.EnumerateFiles(folder, "*.txt").Order(StringComparer.Ordinal))
        {
            string manner = "";
            string start = "R free, 12:00";
            List<string> texts = [];
            int number = 0;
            int first = 0;
            foreach (string line in System.IO.File.ReadLines(file).Append(""))
            {
                number++;
                if (line.StartsWith("manner:", StringComparison.Ordinal))
                {
                    manner = line[7..].Trim();
                }
                else if (line.StartsWith("start:", StringComparison.Ordinal))
                {
                    start = line[6..].Trim();
                }
                else if (line.StartsWith("text:", StringComparison.Ordinal))
                {
                    first = texts.Count == 0 ? number : first;
                    texts.Add(line[5..].Trim());
                }
                else if (line.StartsWith("want:", StringComparison.Ordinal))
                {
                    cases.Add(new CorpusCase(Path.GetFileName(file), manner, first, start, [.. texts], line[5..].Trim()));
                    texts.Clear();
                    start = "R free, 12:00";
                }
            }
        }

        return cases;
    }

    /// <summary>Reads the words and compares.</summary>
    public (Outcome Outcome, string Got, string Why) Run() => PlanFrame.Of(Start) is PlanFrame frame ? RunIn(frame) : RunSteps();

    /// <summary>Reads sentences about walls, tags and the order of parts, put under a dance they can be about.</summary>
    private (Outcome Outcome, string Got, string Why) RunIn(PlanFrame frame)
    {
        Draft draft = DanceReader.Read(frame.With(Texts));
        string asked = string.Join(" | ", draft.Report.Complaints.Where(d => d.Severity >= Severity.Warning).Select(d => d.Rule.Id + ": " + d.Message));
        asked += string.Join(" | ", DanceAnalysis.Of(draft).Report.Complaints.Where(d => Asks.Contains(d.Rule.Id)).Select(d => d.Rule.Id));
        string got = frame.Told(draft.Dance);
        bool same = PlanFrame.ByWall(got) == PlanFrame.ByWall(Want);
        if (Want.StartsWith('?') || (same && asked.Length == 0))
        {
            return (asked.Length > 0 || same ? Outcome.Right : Outcome.Wrong, got, asked.Length > 0 || same ? "" : "a question was wanted");
        }

        return (asked.Length > 0 ? Outcome.Asked : Outcome.Wrong, got, asked);
    }

    private (Outcome Outcome, string Got, string Why) RunSteps()
    {
        bool leftFree = Start.StartsWith("L free", StringComparison.Ordinal);
        bool both = Start.StartsWith("both", StringComparison.Ordinal);
        string stand = both ? "weight on both" : leftFree ? "weight on R" : "weight on L";
        string text = $"Corpus\n\nstart: {stand}\n\nsection 1\n{string.Join('\n', Texts)}\n";
        Draft draft = DanceReader.Read(text);
        Facing facing = Facing.Front;
        int comma = Start.IndexOf(',', StringComparison.Ordinal);
        if (comma > 0)
        {
            string[] clock = Start[(comma + 1)..].Trim().Split(':');
            facing = Facing.FromClock(int.Parse(clock[0], System.Globalization.CultureInfo.InvariantCulture), int.Parse(clock[1],
                System.Globalization.CultureInfo.InvariantCulture))!.Value;
        }

        string asked = string.Join(" | ", draft.Report.Complaints.Where(d => d.Severity >= Severity.Warning).Select(d => d.Rule.Id + ": " + d.Message));
        asked += string.Join(" | ", DanceAnalysis.Of(draft).Report.Complaints.Where(d => Asks.Contains(d.Rule.Id)).Select(d => d.Rule.Id));
        List<Event> got = Dance(draft.Dance, both ? Weight.Shared : leftFree ? Weight.Right : Weight.Left, facing, out string impossible);
        string shown = string.Join("; ", got);
        asked += impossible;
        if (Want.StartsWith('?'))
        {
            // a count left out in the middle is asked about by the checks; those before a line that begins later are nobody's fault here
            asked += string.Join(" | ", DanceAnalysis.Of(draft).Report.Complaints
                .Where(d => d.Rule.Id == "count/missing" && Texts[0] is ['1', not (>= '0' and <= '9'), ..]).Select(d => d.Rule.Id));
            return (asked.Length > 0 ? Outcome.Right : Outcome.Wrong, shown, asked.Length > 0 ? "" : "a question was wanted");
        }

        string why = Difference(Parse(Want, facing), got);
        if (why.Length == 0 && asked.Length == 0)
        {
            return (Outcome.Right, shown, "");
        }

        return (asked.Length > 0 ? Outcome.Asked : Outcome.Wrong, shown, why + (asked.Length > 0 ? " [" + asked + "]" : ""));
    }

    private static List<Event> Dance(Dance dance, Weight weight, Facing facing, out string impossible)
    {
        List<Event> events = [];
        impossible = "";
        foreach (WrittenStep step in dance.Sections.SelectMany(s => s.Steps).OrderBy(s => s.Count.Place))
        {
            // what the checks of the dance would say: a step by the foot that has the weight
            if (step.Action.Traits.FootRule == FootRule.Free && step.Action.Foot.ToFoot() is Foot foot && weight == foot.ToWeight())
            {
                impossible += " foot not free on " + step.Count.Label;
            }

            weight = step.Action.WeightAfter(weight);
            facing += step.Action.Turn;
            events.Add(new Event(step.Count.Label, Letter(step.Action.Foot), Letter(weight), Kind(step.Action), step.Action.Direction, facing.ToString()));
            foreach (FacingClaim claim in dance.Sections.SelectMany(x => x.Lines).Where(l => l.Steps.Contains(step)).SelectMany(l => l.Claims))
            {
                bool last = !dance.Sections.SelectMany(x => x.Lines).First(l => l.Claims.Contains(claim)).Steps.Any(o => o.Count.Place > step.Count.Place
                    && o.Count.Place <= claim.At);
                if (last && step.Count.Place <= claim.At && claim.Facing != facing)
                {
                    impossible += " facing printed " + claim.Facing;
                }
            }

            foreach (StepAction with in step.With)
            {
                events.Add(new Event(step.Count.Label, Letter(with.Foot), Letter(weight), Kind(with), with.Direction, facing.ToString()) { IsBeside = true });
            }
        }

        return events;
    }

    private static string Letter(ActingFoot foot) => foot switch { ActingFoot.Left => "L", ActingFoot.Right => "R", ActingFoot.Both => "B", _ => "-" };

    private static string Letter(Weight weight) => weight switch { Weight.Left => "L", Weight.Right => "R", Weight.Shared => "B", _ => "?" };

    private static string Kind(StepAction action) => action.Kind == ActionKind.Stomp && action.Effect == WeightEffect.Keeps ? "stomp-up" : action.Traits.Word;

    /// <summary>The kind as far as feet and weight go: a slide that takes the weight, or a jump onto one foot, is a step.</summary>
    private static string Group(Event told)
    {
        string group = Group(told.Kind);
        bool steps = told.Foot is "R" or "L" && told.Weight == told.Foot;

        // a slapped boot is flicked or hooked to the hand
        return steps && group is "drag" or "jump" ? "step" : told.Foot is "R" or "L" && group == "slap" ? "flick" : group;
    }

    /// <summary>Kinds that differ in name only.</summary>
    private static string Group(string kind) => kind switch
    {
        "touch" or "tap" or "point" or "dig" or "press" => "touch",
        "step" or "rock" or "recover" or "pivot" or "shift" or "lunge" or "drop" or "leap" or "grind" or "unwind" or "turn" or "stomp" or "sway" => "step",
        "drag" or "slide" => "drag",
        "sweep" or "ronde" => "sweep",
        "scuff" or "brush" => "scuff",
        "hips" or "bump" or "roll-hips" or "roll" => "hips",
        "bodyroll" or "roll-body" => "body",
        "knee" or "pop-knee" or "roll-knee" => "knee",
        "shoulder" or "pop-shoulder" or "shimmy" => "shoulder",
        "split" or "split-heels" or "split-toes" or "fan" or "fan-toe" or "fan-heel" or "swivel" or "swivel-heels" or "swivel-toes" or "swivel-heel"
            or "swivel-toe" or "heels" or "toes" or "swivet" or "twist" or "applejack" => "swivel",
        "jump" or "hop" => kind,
        "flick" or "hook" or "hitch" or "kick" => kind,
        _ => kind,
    };

    private static List<Event> Parse(string want, Facing facing)
    {
        List<Event> events = [];
        string now = facing.ToString();
        foreach (string part in want.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string[] words = part.Split(' ', StringSplitOptions.RemoveEmptyEntries);
            string[] feet = words[1].Split('>');
            string[] kind = words[2].Split(':');
            if (words.Length > 3 && words[3][0] == '@')
            {
                now = words[3][1..];
            }

            events.Add(new Event(words[0], feet[0], feet[1], kind[0], kind.Length > 1 ? DirectionOf(kind[1]) : Direction.Unstated, now));
        }

        return events;
    }

    private static Direction DirectionOf(string word) => word switch
    {
        "forward" => Direction.Forward,
        "back" => Direction.Back,
        "side" => Direction.Side,
        "together" => Direction.Together,
        "in-place" => Direction.InPlace,
        "cross-front" => Direction.CrossFront,
        "cross-behind" => Direction.CrossBehind,
        "lock-behind" => Direction.LockBehind,
        "lock-front" => Direction.LockFront,
        "diag-forward" => Direction.DiagonalForward,
        "diag-back" => Direction.DiagonalBack,
        "out" => Direction.Out,
        "in" => Direction.In,
        "home" => Direction.Home,
        _ => Direction.Unstated,
    };

    private static Direction Family(Direction direction) => direction switch
    {
        Direction.DiagonalForward or Direction.DiagonalForwardAcross => Direction.Forward,
        Direction.DiagonalBack or Direction.DiagonalBackAcross => Direction.Back,
        Direction.LockBehind or Direction.Behind => Direction.CrossBehind,
        Direction.LockFront or Direction.Across => Direction.CrossFront,
        Direction.Home or Direction.In or Direction.Together or Direction.InPlace or Direction.Centre => Direction.Together,
        Direction.Out => Direction.Side,
        _ => direction,
    };

    private static string Difference(List<Event> want, List<Event> got)
    {
        // a clap or a bump, a hitch, a bounce or a sweep beside a foot's action may be told or not; events of no foot are compared by count only
        List<Event> a = want.Where(e => e.Foot != "-").ToList();
        List<Event> b = got.Where(e => e.Foot != "-" && !(e.IsBeside && e.Kind is "hitch" or "sweep" or "drag" or "slide" or "bounce"
            && !want.Exists(w => w.Kind == e.Kind))).ToList();
        if (a.Count != b.Count)
        {
            return $"{a.Count} foot events wanted, {b.Count} read";
        }

        for (int i = 0; i < a.Count; i++)
        {
            // the sources differ on whether a cross before an unwind has all the weight or shares it; where it ends they all say
            bool beforeUnwind = i + 1 < a.Count && a[i + 1].Kind == "unwind" && b[i + 1].Kind == "unwind";
            // both feet turn in an unwind: some name both, some the one that it ends on
            bool unwinds = a[i].Kind == "unwind" && b[i].Kind == "unwind";
            if (a[i].Count != b[i].Count || (a[i].Foot != b[i].Foot && !unwinds) || (a[i].Weight != b[i].Weight && !beforeUnwind))
            {
                return $"wanted {a[i]}, read {b[i]}";
            }

            // touched or stepped across before an unwind: the same in the weight it has, which they differ on
            bool crossTold = beforeUnwind && Group(a[i]) is "touch" or "step" && Group(b[i]) is "touch" or "step";
            if (Group(a[i]) != Group(b[i]) && !crossTold)
            {
                return $"kind: wanted {a[i]}, read {b[i]}";
            }

            Direction first = Family(a[i].Direction);
            Direction second = Family(b[i].Direction);
            if (first != Direction.Unstated && second != Direction.Unstated && first != second && Group(a[i]) is "step" or "touch" or "kick")
            {
                return $"direction: wanted {a[i]}, read {b[i]}";
            }

            // writers differ on where within a quick triple it turns; where it ends they all say
            bool inTriple = i + 2 < a.Count && !int.TryParse(a[i + 1].Count, out _) && a[i + 2].Facing == b[i + 2].Facing;
            if (a[i].Facing != b[i].Facing && !inTriple && !IsShared(a, b, i) && (i == a.Count - 1 || a[i + 1].Facing != b[i + 1].Facing))
            {
                return $"facing: wanted {a[i]}, read {b[i]}";
            }
        }

        foreach (Event hold in want.Where(e => e.Foot == "-" && e.Kind is "hold" or "clap" or "hips"))
        {
            bool covered = got.Any(e => e.Count == hold.Count) || want.Any(e => e.Count == hold.Count && e.Foot != "-");
            if (!covered)
            {
                return $"nothing read on {hold.Count}";
            }
        }

        return "";
    }

    /// <summary>
    /// Whether a facing on the way is one of a turn that several steps share evenly, and which ends where it is wanted: "walk R, L, R, L in a 3/4 circle
    /// left" has no clock of its own between its first step and its last.
    /// </summary>
    private static bool IsShared(List<Event> want, List<Event> got, int at)
    {
        int end = at;
        while (end < want.Count && want[end].Facing != got[end].Facing)
        {
            end++;
        }

        int start = at;
        while (start > 0 && want[start - 1].Facing != got[start - 1].Facing)
        {
            start--;
        }

        if (end == want.Count || start == 0 || want.GetRange(start - 1, end - start + 1).Exists(e => e.Facing != want[start - 1].Facing))
        {
            return start == 0 && end < want.Count && Steps(got, 1, end).Distinct().Count() == 1
                && want.GetRange(0, end).TrueForAll(e => e.Facing == want[0].Facing);
        }

        return Steps(got, start, end).Distinct().Count() == 1;
    }

    /// <summary>How far each event turns from the one before, in minutes of the clock.</summary>
    private static IEnumerable<int> Steps(List<Event> events, int from, int to)
        => Enumerable.Range(from, to - from + 1).Select(i => ((Minutes(events[i].Facing) - Minutes(events[i - 1].Facing)) % 720 + 720) % 720);

    private static int Minutes(string clock)
    {
        string[] parts = clock.Split(':');
        return int.TryParse(parts[0], out int hours) && parts.Length > 1 && int.TryParse(parts[1], out int minutes) ? (hours * 60) + minutes : 0;
    }

    private sealed record Event(string Count, string Foot, string Weight, string Kind, Direction Direction, string Facing)
    {
        /// <summary>Whether it is danced beside another action.</summary>
        public bool IsBeside { get; init; }

        public override string ToString() => $"{Count} {Foot}>{Weight} {Kind}{(Direction == Direction.Unstated ? "" : ":" + Direction)} @{Facing}";
    }
}
