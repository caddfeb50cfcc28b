using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Timelines;

/// <summary>Makes plans: which counts of the dance are danced, in which order.</summary>
public static class PlanBuilder
{
    /// <summary>How many walls a plain plan has at most: no number of eighths needs more to come home.</summary>
    public const int MostPlainWalls = 8;

    /// <summary>How many walls a plan for a track goes on for, looking for the front.</summary>
    public const int MostTrackWalls = 64;

    // Guards against a slip of the pen (wall 30000, a tag 9999 times, wait 1000000), which the checks complain about.
    private const int MostStatedWalls = 400;
    private const int MostTimes = 64;
    private const int MostActions = 400_000;

    private static readonly Counts LongestWait = Counts.FromWhole(4096);

    /// <summary>One plain repetition; of a phrased dance every part once, in the order written.</summary>
    public static Plan OneWall(Dance dance)
    {
        Drawing drawing = new(dance, default);
        foreach (Part part in dance.Parts)
        {
            drawing.AddWall(part);
        }

        return drawing.ToPlan("");
    }

    /// <summary>
    /// Plain repetitions until the floor is at the front again with the weight as at the start; when the weight never comes
    /// back, until the floor is at the front; when the facing is not known, one. A phrased dance: its sequence once.
    /// </summary>
    public static Plan Plain(Dance dance)
    {
        if (dance.IsPhrased)
        {
            return InSequence(dance, dance.Sequence, default).ToPlan("");
        }

        Drawing drawing = new(dance, default);
        int front = 0;
        int? frontStretches = null;
        while (drawing.Walls < MostPlainWalls && dance.Parts.Count > 0)
        {
            drawing.AddWall(dance.Parts[0]);
            if (drawing.State.Facing is null || (drawing.IsAtFront && drawing.State.Weight == dance.Start))
            {
                return drawing.ToPlan("");
            }

            if (drawing.IsAtFront && frontStretches is null)
            {
                (front, frontStretches) = (drawing.Walls, drawing.Stretches.Count);
            }
        }

        return frontStretches is { } count
            ? new Plan(drawing.Stretches.Take(count).ToValueList(), front, "")
            : drawing.ToPlan("");
    }

    /// <summary>
    /// The dance on a track: its own interruptions and the track's. It goes on through the last wall with an interruption and one
    /// more, then until the floor is at the front. When the track's tempo, intro and length are known: as many walls as fit.
    /// </summary>
    /// <param name="dance">The dance.</param>
    /// <param name="track">The track, or null for what is written for every track.</param>
    /// <param name="withEnding">Whether the last wall is left for the ending, where the dance or the track has one.</param>
    public static Plan ForTrack(Dance dance, Track? track, bool withEnding = false)
    {
        ValueList<Interruption> interruptions = track is null
            ? dance.Interruptions
            : [.. dance.Interruptions, .. track.Interruptions];
        string title = track?.Title ?? "";
        Ending? ending = withEnding ? track?.Ending ?? dance.Ending : null;
        ValueList<SequenceItem> sequence = track is { Sequence.Count: > 0 } ? track.Sequence : dance.Sequence;
        if (dance.IsPhrased)
        {
            Drawing phrased = InSequence(dance, sequence, interruptions);
            if (ending is not null)
            {
                phrased.End(ending);
            }

            return phrased.ToPlan(title);
        }

        Drawing drawing = new(dance, interruptions);
        if (dance.Parts.Count == 0)
        {
            return drawing.ToPlan(title);
        }

        if (track is not null && CountsOf(dance, track) is { } room)
        {
            Fill(drawing, dance.Parts[0], room, ending);
        }
        else
        {
            RunOn(drawing, dance.Parts[0], ending);
        }

        return drawing.ToPlan(title);
    }

    /// <summary>
    /// The dance on a track whose counts are known: walls (of a phrased dance its sequence, and then over again) until the music ends, the last cut
    /// where it does.
    /// </summary>
    /// <param name="dance">The dance.</param>
    /// <param name="track">The track, whose interruptions are danced as well as the dance's own.</param>
    /// <param name="counts">How many counts of music there are from count 1 of the dance on.</param>
    public static Plan ForMusic(Dance dance, Track track, int counts)
    {
        ArgumentNullException.ThrowIfNull(dance);
        ArgumentNullException.ThrowIfNull(track);
        Drawing drawing = new(dance, [.. dance.Interruptions, .. track.Interruptions]);
        Counts room = Counts.FromWhole(counts);
        ValueList<SequenceItem> sequence = track is { Sequence.Count: > 0 } ? track.Sequence : dance.Sequence;
        if (sequence.Count == 0)
        {
            sequence = [.. dance.Parts.Select(p => new SequenceItem(p.Name, IsTag: false, null, p.Span))];
        }

        int item = 0;
        Counts begun = Counts.Zero;
        while (drawing.Length < room && drawing.HasRoom && drawing.Walls < MostStatedWalls)
        {
            SequenceItem next = sequence[item];
            if (next.IsTag && dance.FindTag(next.Name) is { } tag)
            {
                drawing.AddTag(tag, Counts.Min(next.Upto ?? tag.Body.Length, room - drawing.Length), null);
            }
            else if (!next.IsTag && dance.FindPart(next.Name) is { Length: var length } part && length > Counts.Zero)
            {
                AddUntil(drawing, part, next.Upto, room);
            }

            item = (item + 1) % sequence.Count;
            if (item == 0)
            {
                if (drawing.Length == begun)
                {
                    break;
                }

                begun = drawing.Length;
            }
        }

        return drawing.ToPlan(track.Title);
    }

    /// <summary>Counts of the dance between the end of the intro and the end of the track; null when the track does not say.</summary>
    internal static Counts? CountsOf(Dance dance, Track track)
    {
        if (track is not { Tempo: { BeatsPerMinute.Sign: > 0 } tempo, LengthSeconds: { } length } || dance.BeatsPerCount.Sign <= 0)
        {
            return null;
        }

        Ratio countsPerSecond = tempo.BeatsPerMinute / 60 / dance.BeatsPerCount;
        Ratio? intro = track.Intro?.Value ?? (track.IntroSeconds is { } seconds ? seconds * countsPerSecond : null);
        return intro is null ? null : Counts.FromWhole(Math.Max(0, ((length * countsPerSecond) - intro.Value).Floor));
    }

    private static Drawing InSequence(Dance dance, ValueList<SequenceItem> sequence, ValueList<Interruption> interruptions)
    {
        Drawing drawing = new(dance, interruptions);
        foreach (SequenceItem item in sequence)
        {
            if (!drawing.HasRoom)
            {
                break;
            }

            if (item.IsTag)
            {
                if (dance.FindTag(item.Name) is { } tag)
                {
                    drawing.AddTag(tag, item.Upto, null);
                }
            }
            else if (dance.FindPart(item.Name) is { } part)
            {
                drawing.AddWall(part, item.Upto);
            }
        }

        if (sequence.Count == 0)
        {
            foreach (Part part in dance.Parts)
            {
                drawing.AddWall(part);
            }
        }

        return drawing;
    }

    private static void RunOn(Drawing drawing, Part part, Ending? ending)
    {
        int stated = Math.Min(drawing.LastInterruptedWall, MostStatedWalls);
        int least = ending?.Wall is { } wall ? Math.Clamp(wall, 1, MostStatedWalls) : stated + 1;
        int most = Math.Max(MostTrackWalls, least);
        while (drawing.Walls < least && drawing.HasRoom)
        {
            drawing.AddWall(part);
        }

        while (ending?.Wall is null && drawing.Walls < most && drawing.HasRoom && drawing.State.Facing is not null && !drawing.IsAtFront)
        {
            drawing.AddWall(part);
        }

        if (ending is not null)
        {
            // she says where the floor faces when the ending's wall begins: go on until a wall begins there
            if (ending is { Wall: null, WallFacing: { } facing })
            {
                RunToFacing(drawing, part, facing);
            }

            drawing.End(ending);
        }
    }

    private static void RunToFacing(Drawing drawing, Part part, Facing facing)
    {
        int more = 0;
        while (drawing.LastWallFacing != facing)
        {
            if (more == MostPlainWalls || drawing.LastWallFacing is null || !drawing.HasRoom)
            {
                // no wall begins there, which the checks tell: leave the plan as it was
                for (; more > 0; more--)
                {
                    drawing.DropLastWall();
                }

                return;
            }

            drawing.AddWall(part);
            more++;
        }
    }

    // A wall, or as much of it as there is room for. Tags in it take their room from the counts after them.
    private static void AddUntil(Drawing drawing, Part part, Counts? upto, Counts room)
    {
        Counts stop = upto ?? part.Length;
        while (true)
        {
            drawing.AddWall(part, stop, isEnding: upto is null && stop < part.Length);
            Counts over = drawing.Length - room;
            if (over <= Counts.Zero || stop <= Counts.Zero)
            {
                return;
            }

            drawing.DropLastWall();
            stop -= Counts.Max(over, Counts.One);
        }
    }

    // Whole walls as long as they fit; the ending then takes a wall of its own if it fits, or else the last whole one.
    private static void Fill(Drawing drawing, Part part, Counts room, Ending? ending)
    {
        while (drawing.Walls < MostStatedWalls && drawing.HasRoom && drawing.Length < room)
        {
            Counts before = drawing.Length;
            drawing.AddWall(part);
            if (drawing.Length > room && drawing.Walls > 1)
            {
                drawing.DropLastWall();
                break;
            }

            if (drawing.Length == before)
            {
                break;
            }
        }

        if (ending is { AfterCounts: not null } && drawing.Length < room)
        {
            drawing.AddWall(part);
            drawing.End(ending);
            if (drawing.Length <= room)
            {
                return;
            }

            drawing.DropLastWall();
        }

        if (ending is not null)
        {
            drawing.End(ending);
        }
    }

    // The plan as it grows, with the weight and facing that its end leaves.
    private sealed class Drawing(Dance dance, ValueList<Interruption> interruptions)
    {
        private readonly StretchScript _script = new();
        private readonly Dictionary<string, int> _timesOfPart = new(StringComparer.OrdinalIgnoreCase);
        private readonly Dictionary<(string Part, int Wall), List<Interruption>> _byWall = Sort(interruptions);
        private readonly List<Mark> _marks = [];
        private int _actions;

        public List<PlanStretch> Stretches { get; } = [];

        public int Walls { get; private set; }

        public Counts Length { get; private set; }

        public Unroller.State State { get; private set; } = new(dance.Start, Facing.Front);

        public bool IsAtFront => State.Facing == Facing.Front;

        public bool HasRoom => _actions < MostActions;

        public Facing? LastWallFacing => _marks.Count == 0 ? null : _marks[^1].State.Facing;

        public int LastInterruptedWall { get; } = interruptions.SelectMany(i => i.Walls).DefaultIfEmpty(0).Max();

        public Plan ToPlan(string trackTitle) => new(Stretches.ToValueList(), Walls, trackTitle);

        // Takes back the last wall with everything after it; answers which part it was.
        public Part? DropLastWall()
        {
            if (_marks.Count == 0)
            {
                return null;
            }

            Mark mark = _marks[^1];
            _marks.RemoveAt(_marks.Count - 1);
            _timesOfPart[mark.Part.Name]--;
            Stretches.RemoveRange(mark.Stretches, Stretches.Count - mark.Stretches);
            (Walls, Length, State) = (mark.Walls, mark.Length, mark.State);
            return mark.Part;
        }

        public void AddWall(Part part, Counts? upto = null, bool isEnding = false)
        {
            _marks.Add(new Mark(Stretches.Count, Walls, Length, State, part));
            Walls++;
            int time = _timesOfPart[part.Name] = _timesOfPart.GetValueOrDefault(part.Name) + 1;
            Counts length = part.Length;
            Counts stop = upto is { } limit ? Counts.Max(Counts.Zero, Counts.Min(limit, length)) : length;
            Counts at = Counts.Zero;
            bool starts = true;
            List<Interruption> here = [.. At(part, time, length)];
            foreach (Interruption interruption in here)
            {
                Counts place = PlaceOf(interruption, length);
                if (place > stop)
                {
                    break;
                }

                bool restarts = interruption.Restarts;
                if (place > at)
                {
                    Add(OfPart(part, at, place, starts) with
                    {
                        Changes = here.Where(i => PlaceOf(i, length) == place).SelectMany(i => i.Changes).ToValueList(),
                        Cause = interruption,
                        IsCutByRestart = restarts && place < length,
                    });
                    starts = false;
                }

                at = place;
                foreach (InterruptionAct act in interruption.Acts)
                {
                    if (act is InterruptionAct.Restart)
                    {
                        return;
                    }

                    Perform(act, interruption, part);
                }
            }

            if (at < stop)
            {
                Add(OfPart(part, at, stop, starts) with { IsCutByRestart = stop < length && !isEnding });
            }
        }

        public void AddTag(Tag tag, Counts? upto, Interruption? cause)
        {
            Counts end = upto is { } limit ? Counts.Max(Counts.Zero, Counts.Min(limit, tag.Body.Length)) : tag.Body.Length;
            Add(OfSection(StretchKind.Tag, tag.Body, tag.Name, new CountSpan(Counts.Zero, end)) with { Cause = cause });
        }

        // Leaves the last wall where the ending says, and dances the ending.
        public void End(Ending ending)
        {
            if (ending.AfterCounts is { } after && DropLastWall() is { } part)
            {
                AddWall(part, after, isEnding: true);
            }

            if (ending.Body is { } body)
            {
                Add(OfSection(StretchKind.Ending, body, "", new CountSpan(Counts.Zero, body.Length)));
            }
        }

        private static Dictionary<(string Part, int Wall), List<Interruption>> Sort(ValueList<Interruption> interruptions)
        {
            Dictionary<(string Part, int Wall), List<Interruption>> byWall = [];
            foreach (Interruption interruption in interruptions)
            {
                foreach (int wall in interruption.Walls.Distinct())
                {
                    (string, int) key = (interruption.PartName.ToUpperInvariant(), wall);
                    if (!byWall.TryGetValue(key, out List<Interruption>? there))
                    {
                        byWall[key] = there = [];
                    }

                    there.Add(interruption);
                }
            }

            return byWall;
        }

        private static Counts PlaceOf(Interruption interruption, Counts length)
            => interruption.AfterCounts is { } after ? Counts.Max(Counts.Zero, Counts.Min(after, length)) : length;

        // Named for the part, by how often it came; not named, by the wall.
        private IEnumerable<Interruption> At(Part part, int time, Counts length)
        {
            List<Interruption>? byWall = _byWall.GetValueOrDefault(("", Walls));
            List<Interruption>? byPart = part.Name.Length > 0 ? _byWall.GetValueOrDefault((part.Name.ToUpperInvariant(), time)) : null;
            return (byWall ?? []).Concat(byPart ?? []).OrderBy(i => PlaceOf(i, length));
        }

        private void Perform(InterruptionAct act, Interruption cause, Part part)
        {
            switch (act)
            {
                case InterruptionAct.PlayTag play when dance.FindTag(play.Name) is { } tag:
                    for (int i = 0; i < Math.Min(play.Times, MostTimes); i++)
                    {
                        AddTag(tag, null, cause);
                    }

                    break;
                case InterruptionAct.Quote quote:
                    Part? quoted = quote.PartName.Length == 0 ? part : dance.FindPart(quote.PartName);
                    if (quoted is not null && quote.SectionNumber >= 1 && quote.SectionNumber <= quoted.Sections.Count)
                    {
                        Section section = quoted.Sections[quote.SectionNumber - 1];
                        Add(OfSection(StretchKind.Quote, section, quoted.Name, quote.Counts) with { Cause = cause });
                    }

                    break;
                case InterruptionAct.Wait wait:
                    Counts length = Counts.Max(Counts.Zero, Counts.Min(wait.Length, LongestWait));
                    Add(new PlanStretch(StretchKind.Wait, Walls, default, "", new CountSpan(Counts.Zero, length), default, false) { Cause = cause });
                    break;
                case InterruptionAct.Dance moves:
                    Add(OfSection(StretchKind.Tag, moves.Body, "", new CountSpan(Counts.Zero, moves.Body.Length)) with { Cause = cause });
                    break;
                default:
                    break; // going on is what happens anyway; a tag that is not there is the reader's complaint
            }
        }

        private PlanStretch OfPart(Part part, Counts from, Counts to, bool startsWall)
            => new(StretchKind.Wall, Walls, part.Sections, part.Name, new CountSpan(from, to), default, startsWall);

        private PlanStretch OfSection(StretchKind kind, Section section, string name, CountSpan counts)
            => new(kind, Walls, [section], name, counts, default, false);

        private void Add(PlanStretch stretch)
        {
            Unroller.State state = State;
            foreach (StretchScript.Line line in _script.LinesOf(stretch))
            {
                state = state.After(line.Step.Action);
                _actions++;
            }

            State = state;
            Length += stretch.Counts.Length;
            Stretches.Add(stretch);
        }

        /// <summary>Where a wall begins, to come back to.</summary>
        internal readonly record struct Mark(int Stretches, int Walls, Counts Length, Unroller.State State, Part Part);
    }
}
