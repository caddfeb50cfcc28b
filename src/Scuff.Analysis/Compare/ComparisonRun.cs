using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>One comparison on its way: goes through both versions once and gathers the changes.</summary>
internal sealed class ComparisonRun(DanceAnalysis before, DanceAnalysis after)
{
    // Told by what is computed, or by the breaks, the order and the ending themselves.
    private static readonly string[] ToldOtherwise =
        ["title", "counts", "walls", "start", "ending", "restarts", "tags", "counted", "sequence"];

    private readonly List<DanceChange> _changes = [];
    private readonly List<DancePlace> _reworded = [];
    private readonly FloorTable _floorBefore = new(before);
    private readonly FloorTable _floorAfter = new(after);

    // how far the dance turned away from the brackets that stayed, as last told: those that follow it are not told again
    private Turn _leftBehind;

    /// <summary>What differs, in order.</summary>
    public IReadOnlyList<DanceChange> Changes => _changes;

    /// <summary>How many actions differ.</summary>
    public int Cost { get; private set; }

    private Dance Old => before.Dance;

    private Dance New => after.Dance;

    /// <summary>Compares.</summary>
    public void Run()
    {
        Heading();
        Parts();
        Dictionary<string, string> tagNames = Tags();
        Sequence("", Old.Sequence, New.Sequence, tagNames);
        Breaks("", null, null, Old.Interruptions, New.Interruptions, tagNames);
        Finish("", null, null, Old.Ending, New.Ending);
        Tracks(tagNames);
        OwnMoves();
        Remarks(null, "", Placed(Old.Notes.Where(n => n.Kind != "move")), Placed(New.Notes.Where(n => n.Kind != "move")), isSameLength: true);
        if (_reworded.Count > 0)
        {
            _changes.Add(new DanceChange.WordsOnly(_reworded.ToValueList(), Elsewhere: false));
        }
        else if (_changes.Count == 0 && Bare.Words(before.Draft.Text) != Bare.Words(after.Draft.Text))
        {
            _changes.Add(new DanceChange.WordsOnly(default, Elsewhere: true));
        }
    }

    private void Heading()
    {
        if (!Says(Old.Title, New.Title))
        {
            _changes.Add(new DanceChange.Renamed(Bare.Words(Old.Title), Bare.Words(New.Title)));
        }

        Fields();
        if (!Old.IsPhrased && !New.IsPhrased)
        {
            Measures();
        }

        if (StartOf(before) is var was && StartOf(after) is var becomes && was != becomes)
        {
            _changes.Add(new DanceChange.StartWeight(was, becomes));
        }

        if (Old.BeatsPerCount != New.BeatsPerCount)
        {
            _changes.Add(new DanceChange.BeatsPerCount(Old.BeatsPerCount, New.BeatsPerCount));
        }
    }

    private void Fields()
    {
        List<HeaderField> old = [.. Old.Header.Where(IsTold)];
        List<HeaderField> now = [.. New.Header.Where(IsTold)];
        foreach (string key in now.Concat(old).Select(f => f.Key).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            string? was = Joined(old, key);
            string? becomes = Joined(now, key);
            if (!Says(was ?? "", becomes ?? ""))
            {
                _changes.Add(new DanceChange.HeadingField(key, was, becomes));
            }
        }

        static bool IsTold(HeaderField field) => field.Value.Length > 0 && !ToldOtherwise.Contains(field.Key, StringComparer.OrdinalIgnoreCase);

        static string? Joined(List<HeaderField> fields, string key)
        {
            IEnumerable<HeaderField> named = fields.Where(f => string.Equals(f.Key, key, StringComparison.OrdinalIgnoreCase));
            string all = string.Join("; ", named.Select(f => Bare.Words(f.Value)));
            return all.Length > 0 ? all : null;
        }
    }

    // What is danced is told; a claim of the heading is told only when it changed although the dance did not.
    private void Measures()
    {
        if (Old.Length != New.Length)
        {
            _changes.Add(new DanceChange.Length(Old.Length, New.Length));
        }
        else if (Old.ClaimedCounts?.Value != New.ClaimedCounts?.Value)
        {
            _changes.Add(new DanceChange.HeadingField("counts", Number(Old.ClaimedCounts), Number(New.ClaimedCounts)));
        }

        if (before.Walls != after.Walls)
        {
            _changes.Add(new DanceChange.WallCount(before.Walls, after.Walls));
        }
        else if (Old.ClaimedWalls?.Value != New.ClaimedWalls?.Value)
        {
            _changes.Add(new DanceChange.HeadingField("walls", Number(Old.ClaimedWalls), Number(New.ClaimedWalls)));
        }

        static string? Number(NumberClaim? claim) => claim?.Value.ToString(System.Globalization.CultureInfo.InvariantCulture);
    }

    // Where the heading does not say it, the foot that dances count 1 does.
    private static Weight StartOf(DanceAnalysis analysis)
    {
        if (!analysis.Dance.StartIsStated)
        {
            StepAction? first = analysis.Dance.Sections.SelectMany(s => s.Steps).Select(s => s.Action)
                .FirstOrDefault(a => a.Traits.FootRule == FootRule.Free || a.Kind == ActionKind.Unknown);
            if (first?.Foot.ToFoot() is { } foot)
            {
                return foot.Other().ToWeight();
            }
        }

        return analysis.Dance.Start;
    }

    private void Parts()
    {
        bool areNamed = Old.IsPhrased && New.IsPhrased;
        List<Part> left = [.. Old.Parts];
        foreach (Part part in New.Parts)
        {
            Part? partner = areNamed
                ? left.Find(p => string.Equals(p.Name, part.Name, StringComparison.OrdinalIgnoreCase))
                : left.FirstOrDefault();
            if (partner is null)
            {
                Cost += part.Sections.Sum(s => s.Steps.Count());
                _changes.Add(new DanceChange.WholePart(part.Name, part.Length, IsNew: true));
                continue;
            }

            left.Remove(partner);
            Sections(partner, part);
        }

        foreach (Part part in left)
        {
            Cost += part.Sections.Sum(s => s.Steps.Count());
            _changes.Add(new DanceChange.WholePart(part.Name, part.Length, IsNew: false));
        }
    }

    private void Sections(Part old, Part now)
    {
        if (old.Length == now.Length && !old.Sections.Select(s => s.Length).SequenceEqual(now.Sections.Select(s => s.Length)))
        {
            Passage was = new(old.Sections);
            Passage becomes = new(now.Sections);
            PassageDifference difference = PassageDifference.Of(was, becomes);
            if (difference.Cost * 2 < was.Atoms.Count + becomes.Atoms.Count)
            {
                Divided(old, now, was, becomes, difference);
                return;
            }
        }

        SectionPairing pairing = new(old.Sections, now.Sections);
        int next = 0;
        for (int j = 0; j < now.Sections.Count; j++)
        {
            DancePlace place = new(now.Name, now.Sections[j].Number);
            if (pairing.Partner[j] is not { } i)
            {
                Cost += pairing.New(j).Atoms.Count;
                _changes.Add(new DanceChange.WholeSection(place, now.Sections[j].Length, MovesOf(now.Sections[j]), IsNew: true));
                continue;
            }

            if (pairing.Moved[j])
            {
                Cost++;
                _changes.Add(new DanceChange.SectionMoved(new DancePlace(old.Name, old.Sections[i].Number), place));
            }
            else
            {
                Gone(i);
            }

            Section(place, old.Sections[i], now.Sections[j], pairing.Old(i), pairing.New(j), pairing.Difference(i, j));
        }

        Gone(old.Sections.Count);

        void Gone(int upto)
        {
            for (; next < upto; next++)
            {
                if (!pairing.Partner.Contains(next))
                {
                    Section section = old.Sections[next];
                    Cost += pairing.Old(next).Atoms.Count;
                    DancePlace was = new(old.Name, section.Number);
                    _changes.Add(new DanceChange.WholeSection(was, section.Length, MovesOf(section), IsNew: false));
                }
            }
        }
    }

    // The same counts cut into other sections: compared as one row, told by the later version's sections.
    private void Divided(Part old, Part now, Passage was, Passage becomes, PassageDifference difference)
    {
        Cost += difference.Cost;
        _changes.Add(new DanceChange.SectionsDivided(now.Name, old.Sections.Count, now.Sections.Count));
        foreach ((CountSpan span, _) in difference.Spans)
        {
            int index = 0;
            while (index + 1 < now.Sections.Count && now.StartOf(index + 1) <= span.Start)
            {
                index++;
            }

            Counts offset = now.StartOf(index);
            CountSpan within = new(span.Start - offset, span.End - offset);
            _changes.Add(Steps(new DancePlace(now.Name, now.Sections[index].Number), was, becomes, span, span, isTag: false)
                with
            { CountsBefore = within, CountsAfter = within });
        }

        Remarks(null, "", Placed(old), Placed(now), isSameLength: false);
    }

    private void Section(DancePlace place, Section old, Section now, Passage was, Passage becomes, PassageDifference difference)
    {
        if (!place.IsTag && !Says(old.Title, now.Title))
        {
            _changes.Add(new DanceChange.SectionRetitled(place, Bare.Words(old.Title), Bare.Words(now.Title)));
        }

        Cost += difference.Cost;
        int told = _changes.Count;
        foreach ((CountSpan countsBefore, CountSpan countsAfter) in difference.Spans)
        {
            _changes.Add(Steps(place, was, becomes, countsBefore, countsAfter, place.IsTag));
        }

        WrittenFacings(place, old, now);
        if (told == _changes.Count && !Wording(before, old).SequenceEqual(Wording(after, now)))
        {
            _reworded.Add(place);
        }

        Options(place, old, now);
        Remarks(place, "", Placed(old), Placed(now), old.Length == now.Length);
    }

    // A tag is met at many facings, so none is danced there that brackets could be held against.
    private void WrittenFacings(DancePlace place, Section old, Section now)
    {
        if (place.IsTag)
        {
            return;
        }

        Dictionary<Counts, (Facing Written, Facing Danced)> was = [];
        foreach ((Counts count, Facing written, Facing danced) in _floorBefore.Claims(old))
        {
            was[count] = (written, danced);
        }

        foreach ((Counts count, Facing written, Facing danced) in _floorAfter.Claims(now))
        {
            if (!was.TryGetValue(count, out (Facing Written, Facing Danced) before))
            {
                continue;
            }

            Turn turned = danced - before.Danced;
            bool isLeftBehind = written == before.Written && turned.Sign != 0;
            if (isLeftBehind ? turned != _leftBehind : written != before.Written && turned.Sign == 0)
            {
                _changes.Add(new DanceChange.WrittenFacing(place, count, before.Written, written, before.Danced, danced));
            }

            _leftBehind = isLeftBehind ? turned : Turn.None;
        }
    }

    private DanceChange.Steps Steps(DancePlace place, Passage was, Passage becomes, CountSpan countsBefore, CountSpan countsAfter, bool isTag)
    {
        Landing? landing = null;
        if (!isTag)
        {
            (Facing? facingBefore, Weight weightBefore) = _floorBefore.After(was.LastBefore(countsBefore.End));
            (Facing? facingAfter, Weight weightAfter) = _floorAfter.After(becomes.LastBefore(countsAfter.End));
            Ratio turned = becomes.TurnWithin(countsAfter).Eighths - was.TurnWithin(countsBefore).Eighths;
            landing = new Landing(facingBefore, facingAfter, turned.Modulo(8) == 0, weightBefore, weightAfter);
        }

        return new DanceChange.Steps(
            place,
            countsBefore,
            countsAfter,
            Bare.Of(was.MovesWithin(countsBefore)),
            Bare.Of(becomes.MovesWithin(countsAfter)),
            landing);
    }

    private static IEnumerable<string> Wording(DanceAnalysis analysis, Section section)
        => section.Lines.Select(l => Bare.Words(analysis.Draft.Text.Substring(l.Span.Start, l.Span.Length)));

    private static ValueList<WrittenMove> MovesOf(Section section) => Bare.Of(section.Lines.SelectMany(l => l.Moves));

    private void Options(DancePlace place, Section old, Section now)
    {
        List<StepOption> left = [.. old.Lines.SelectMany(l => l.Options)];
        foreach (StepOption option in now.Lines.SelectMany(l => l.Options))
        {
            StepOption? partner = left.Find(o => o.Replaces == option.Replaces && Says(o.Name, option.Name))
                ?? left.Find(o => o.Replaces.Overlaps(option.Replaces) && Says(o.Name, option.Name))
                ?? left.Find(o => Says(o.Name, option.Name) && Danced(o).SequenceEqual(Danced(option)));
            ValueList<WrittenMove> was = partner is null ? default : Bare.Of(partner.Moves);
            if (partner is not null)
            {
                left.Remove(partner);
            }

            if (partner is null || !Danced(partner).SequenceEqual(Danced(option)))
            {
                _changes.Add(new DanceChange.Option(place, option.Replaces, option.Name, was, Bare.Of(option.Moves)));
            }
        }

        foreach (StepOption option in left)
        {
            _changes.Add(new DanceChange.Option(place, option.Replaces, option.Name, Bare.Of(option.Moves), default));
        }

        static IEnumerable<(Counts, StepAction, string)> Danced(StepOption option) => option.Moves.SelectMany(m => m.Steps.Select(s =>
            (
                s.Count.Place - option.Replaces.Start,
                s.Action with { Contact = m.SaidContact ?? default },
                s.Action.Kind == ActionKind.Unknown ? Bare.Words(m.Words) : s.Gesture.ToUpperInvariant())));
    }

    private static List<PlacedNote> Placed(IEnumerable<Note> notes) => [.. notes.Select(n => new PlacedNote(n.Kind, Bare.Words(n.Words), null))];

    private static List<PlacedNote> Placed(Section section) =>
    [
        .. Placed(section.Notes),
        .. section.Lines.SelectMany(l => l.Notes.Select(n => new PlacedNote(n.Kind, Bare.Words(n.Words), l.Counts))),
    ];

    private static List<PlacedNote> Placed(Part part) =>
    [
        .. part.Sections.SelectMany(s => Placed(s).Select(n => n with { At = null })),
    ];

    private void Remarks(DancePlace? place, string track, List<PlacedNote> old, List<PlacedNote> now, bool isSameLength)
    {
        List<PlacedNote> left = [.. old];
        List<PlacedNote> open = [];
        foreach (PlacedNote note in now)
        {
            int same = left.FindIndex(o => o.Says(note) && o.Meets(note));
            same = same < 0 && !isSameLength ? left.FindIndex(o => o.Says(note)) : same;
            if (same >= 0)
            {
                left.RemoveAt(same);
            }
            else
            {
                open.Add(note);
            }
        }

        foreach (PlacedNote note in open)
        {
            int changed = left.FindIndex(o => o.Kind == note.Kind && o.Meets(note));
            string? was = changed >= 0 ? left[changed].Words : null;
            if (changed >= 0)
            {
                left.RemoveAt(changed);
            }

            _changes.Add(new DanceChange.Remark(place, note.At, track, note.Kind, was, note.Words));
        }

        foreach (PlacedNote note in left)
        {
            _changes.Add(new DanceChange.Remark(place, note.At, track, note.Kind, note.Words, null));
        }
    }

    // The names of the earlier version's tags, as the later version says them.
    private Dictionary<string, string> Tags()
    {
        Dictionary<string, string> names = new(StringComparer.OrdinalIgnoreCase);
        List<Tag> left = [.. Old.Tags];
        List<(Tag Now, Tag? Old)> paired = [.. New.Tags.Select(t => (t, Take(o => Says(o.Name, t.Name))))];
        for (int i = 0; i < paired.Count; i++)
        {
            paired[i] = paired[i] with { Old = paired[i].Old ?? Take(o => DifferenceOf(o.Body, paired[i].Now.Body).Cost == 0) };
        }

        if (left.Count == 1 && paired.Count(p => p.Old is null) == 1)
        {
            int only = paired.FindIndex(p => p.Old is null);
            paired[only] = paired[only] with { Old = Take(_ => true) };
        }

        foreach ((Tag tag, Tag? old) in paired)
        {
            DancePlace place = new("", 0, tag.Name);
            if (old is null)
            {
                Cost += tag.Body.Steps.Count();
                _changes.Add(new DanceChange.WholeTag(tag.Name, tag.IsBridge, tag.Body.Length, MovesOf(tag.Body), IsNew: true));
                continue;
            }

            names[old.Name] = tag.Name;
            if (!Says(old.Name, tag.Name) || old.IsBridge != tag.IsBridge)
            {
                _changes.Add(new DanceChange.TagRenamed(old.Name, old.IsBridge, tag.Name, tag.IsBridge));
            }

            Section(place, old.Body, tag.Body, new Passage([old.Body]), new Passage([tag.Body]), DifferenceOf(old.Body, tag.Body));
        }

        foreach (Tag tag in left)
        {
            Cost += tag.Body.Steps.Count();
            _changes.Add(new DanceChange.WholeTag(tag.Name, tag.IsBridge, tag.Body.Length, MovesOf(tag.Body), IsNew: false));
        }

        return names;

        Tag? Take(Predicate<Tag> wanted)
        {
            Tag? found = left.Find(wanted);
            if (found is not null)
            {
                left.Remove(found);
            }

            return found;
        }

        static PassageDifference DifferenceOf(Section old, Section now) => PassageDifference.Of(new Passage([old]), new Passage([now]));
    }

    private static string TagName(Dance dance, string name, Dictionary<string, string>? newNames)
    {
        string own = dance.FindTag(name)?.Name ?? name;
        return newNames?.GetValueOrDefault(own) ?? own;
    }

    // A part by the letters in which the later version writes it.
    private string PartName(string name) => New.FindPart(name)?.Name ?? Old.FindPart(name)?.Name ?? name;

    private void Sequence(string track, ValueList<SequenceItem> old, ValueList<SequenceItem> now, Dictionary<string, string> tagNames)
    {
        ValueList<SequenceItem> was = Bare.Of(old, n => TagName(Old, n, tagNames), PartName);
        ValueList<SequenceItem> becomes = Bare.Of(now, n => TagName(New, n, null), PartName);
        if (was != becomes)
        {
            _changes.Add(new DanceChange.Sequence(track, was, becomes));
        }
    }

    private void Breaks(
        string title,
        Track? oldTrack,
        Track? track,
        ValueList<Interruption> old,
        ValueList<Interruption> now,
        Dictionary<string, string> tagNames)
    {
        List<WallBreak> was = BreakList.Of(Old, old, n => TagName(Old, n, tagNames), PartName);
        List<WallBreak> becomes = BreakList.Of(New, now, n => TagName(New, n, null), PartName);
        foreach (BreakPair pair in BreakList.Compare(was, becomes))
        {
            if (pair.IsChanged)
            {
                _changes.Add(new DanceChange.Break(title, pair.Before?.Bare, pair.After?.Bare));
            }

            if (pair is { Before: { Written.Claim: { } writtenBefore } pauseBefore, After: { Written.Claim: { } written } pause }
                && BreakFacings.Of(before, oldTrack, pauseBefore) is { Count: > 0 } facedBefore
                && BreakFacings.Of(after, track, pause) is { Count: > 0 } faced)
            {
                // brackets may tell where a wall is left or where its tag ends
                int at = Math.Max(0, facedBefore.IndexOf(writtenBefore.Facing));
                if (facedBefore[at] is { } dancedBefore
                    && (at < faced.Count ? faced[at] : faced[^1]) is { } danced
                    && (written.Facing == writtenBefore.Facing) != (danced == dancedBefore))
                {
                    _changes.Add(new DanceChange.BreakFacing(title, pause.Bare, writtenBefore.Facing, written.Facing, dancedBefore, danced));
                }
            }
        }
    }

    private void Finish(string title, Track? oldTrack, Track? track, Ending? old, Ending? now)
    {
        if (old?.Claim is { } writtenBefore
            && now?.Claim is { } written
            && EndingFloor.FacingOf(before, old, oldTrack) is { } dancedBefore
            && EndingFloor.FacingOf(after, now, track) is { } danced
            && (written.Facing == writtenBefore.Facing) != (danced == dancedBefore))
        {
            _changes.Add(new DanceChange.EndFacing(title, writtenBefore.Facing, written.Facing, dancedBefore, danced));
        }

        Ending? was = Bare.Of(old);
        Ending? becomes = Bare.Of(now);
        if (was is null && becomes is null)
        {
            return;
        }

        bool isSame = was is not null
            && becomes is not null
            && was.Wall == becomes.Wall
            && was.AfterCounts == becomes.AfterCounts
            && was.WallFacing == becomes.WallFacing
            && was.SaysFront == becomes.SaysFront
            && (was.Body is { } oldBody && becomes.Body is { } newBody
                ? PassageDifference.Of(new Passage([oldBody]), new Passage([newBody])).Cost == 0 && oldBody.Length == newBody.Length
                : was.Body is null && becomes.Body is null && Says(was.Verbatim, becomes.Verbatim));
        if (!isSame)
        {
            _changes.Add(new DanceChange.Finish(title, was, becomes));
        }
    }

    private void Tracks(Dictionary<string, string> tagNames)
    {
        List<Track> left = [.. Old.Tracks];
        List<(Track Now, Track? Old)> paired = [.. New.Tracks.Select(t => (t, Take(o => Says(o.Title, t.Title) && Says(o.Artist, t.Artist))))];
        for (int i = 0; i < paired.Count; i++)
        {
            paired[i] = paired[i] with { Old = paired[i].Old ?? Take(o => Says(o.Title, paired[i].Now.Title)) };
        }

        if (left.Count == 1 && paired.Count(p => p.Old is null) == 1)
        {
            int only = paired.FindIndex(p => p.Old is null);
            paired[only] = paired[only] with { Old = Take(_ => true) };
        }

        foreach ((Track track, Track? old) in paired)
        {
            if (old is null)
            {
                // what is special on new music nobody knows yet
                string title = Bare.Words(track.Title);
                _changes.Add(new DanceChange.Music(null, "", title, Bare.Words(track.Artist)));
                Sequence(title, default, track.Sequence, tagNames);
                Breaks(title, null, track, default, track.Interruptions, tagNames);
                Finish(title, null, track, null, track.Ending);
                continue;
            }

            if (!Says(old.Title, track.Title) || !Says(old.Artist, track.Artist))
            {
                _changes.Add(new DanceChange.Music(Bare.Words(old.Title), Bare.Words(old.Artist), Bare.Words(track.Title), Bare.Words(track.Artist)));
            }

            Compare(old, track, tagNames);
        }

        foreach (Track track in left)
        {
            _changes.Add(new DanceChange.Music(Bare.Words(track.Title), Bare.Words(track.Artist), null, ""));
        }

        Track? Take(Predicate<Track> wanted)
        {
            Track? found = left.Find(wanted);
            if (found is not null)
            {
                left.Remove(found);
            }

            return found;
        }
    }

    private void Compare(Track old, Track now, Dictionary<string, string> tagNames)
    {
        string title = Bare.Words(now.Title);
        if (old.Tempo != now.Tempo)
        {
            _changes.Add(new DanceChange.TrackTempo(title, old.Tempo, now.Tempo));
        }

        if (old.Intro != now.Intro || old.IntroSeconds != now.IntroSeconds)
        {
            _changes.Add(new DanceChange.TrackIntro(title, old.Intro, old.IntroSeconds, now.Intro, now.IntroSeconds));
        }

        if (old.LengthSeconds != now.LengthSeconds)
        {
            _changes.Add(new DanceChange.TrackLength(title, old.LengthSeconds, now.LengthSeconds));
        }

        Sequence(title, old.Sequence, now.Sequence, tagNames);
        Breaks(title, old, now, old.Interruptions, now.Interruptions, tagNames);
        Finish(title, old, now, old.Ending, now.Ending);
        Remarks(null, title, Placed(old.Notes), Placed(now.Notes), isSameLength: true);
    }

    private void OwnMoves()
    {
        foreach (string name in New.OwnMoves.Concat(Old.OwnMoves).Select(m => m.Name).Distinct(StringComparer.OrdinalIgnoreCase))
        {
            StepDefinition? old = Old.OwnMoves.FirstOrDefault(m => Says(m.Name, name));
            StepDefinition? now = New.OwnMoves.FirstOrDefault(m => Says(m.Name, name));
            if (old?.Rows != now?.Rows)
            {
                _changes.Add(new DanceChange.OwnMove(name, old, now));
            }
        }
    }

    private static bool Says(string a, string b) => string.Equals(Bare.Words(a), Bare.Words(b), StringComparison.OrdinalIgnoreCase);

    private sealed record PlacedNote(string Kind, string Words, CountSpan? At)
    {
        public bool Says(PlacedNote other) => Kind == other.Kind && Words == other.Words;

        public bool Meets(PlacedNote other) => At is { } here && other.At is { } there ? here.Overlaps(there) : At is null && other.At is null;
    }

    // Where each written action first leaves the floor.
    private sealed class FloorTable
    {
        private readonly Dictionary<WrittenStep, TimedStep> _first = new(ReferenceEqualityComparer.Instance);

        public FloorTable(DanceAnalysis analysis)
        {
            foreach (TimedStep step in analysis.PlainTimeline.Steps)
            {
                _first.TryAdd(step.Written, step);
            }
        }

        public (Facing? Facing, Weight Weight) After(Atom? atom)
            => atom is not null && _first.TryGetValue(atom.Step, out TimedStep? step) ? (step.FacingAfter, step.WeightAfter) : (null, Weight.Unknown);

        /// <summary>The facings in brackets of a section: after which count, what she wrote, and what is danced; those that are known.</summary>
        public IEnumerable<(Counts Count, Facing Written, Facing Danced)> Claims(Section section)
        {
            foreach (WrittenLine line in section.Lines)
            {
                foreach (FacingClaim claim in line.Claims)
                {
                    WrittenStep? last = line.Steps.LastOrDefault(s => s.Count.Place <= claim.At);
                    if (last is not null && _first.TryGetValue(last, out TimedStep? step) && step.FacingAfter is { } danced)
                    {
                        yield return (last.Count.Place, claim.Facing, danced);
                    }
                }
            }
        }
    }
}
