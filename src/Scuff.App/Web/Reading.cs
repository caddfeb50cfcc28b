using System.Text.RegularExpressions;
using Scuff.Analysis;
using Scuff.Analysis.Loads;
using Scuff.App.Complaints;
using Scuff.App.Explaining;
using Scuff.App.Web.Contract;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Sheets.Languages;
using Scuff.Timelines;

namespace Scuff.App.Web;

/// <summary>Tells the page of a text what it shows while she types.</summary>
internal sealed partial class Reading
{
    // A slow pop tempo, for rhythms without a usual one. Design value.
    private const double QuietTempo = 104;

    private readonly DanceAnalysis _analysis;
    private readonly Dance _dance;
    private readonly ILookup<int, TimedStep> _byLine;
    private readonly Dictionary<WrittenStep, TimedStep> _danced = new(ReferenceEqualityComparer.Instance);

    private Reading(DanceAnalysis analysis)
    {
        _analysis = analysis;
        _dance = analysis.Dance;
        Timeline once = analysis.OnceTimeline;
        foreach (TimedStep step in once.Steps)
        {
            // what is danced several times is shown as it is the first time
            _danced.TryAdd(step.Written, step);
        }

        _byLine = once.Steps.ToLookup(s => s.Written.Line);
    }

    /// <summary>The answer.</summary>
    public static ReadAnswer Of(DanceAnalysis analysis) => new Reading(analysis).Answer();

    /// <summary>A tempo to practise at, in beats a minute: the one stated, else the middle of what is usual for the rhythm.</summary>
    public static double PracticeTempo(DanceAnalysis analysis)
    {
        if (analysis.Tempo is { } stated)
        {
            return stated.CountsPerMinute.ToDouble();
        }

        ValueList<UsualRange> usual = UsualTempo.Of(analysis.Dance.Rhythm);
        return usual.Count > 0 ? (usual[0].From + usual[0].To) / 2.0 : QuietTempo;
    }

    private ReadAnswer Answer()
    {
        string summary = Summary.Of("", _analysis);
        return new ReadAnswer
        {
            Title = _dance.Title,
            Standing = summary[(summary.IndexOf(": ", StringComparison.Ordinal) + 2)..],
            Level = LevelWord(),
            Counts = _dance.Length.Value.ToDouble(),
            BeatsPerBar = _dance.BeatsPerBar,
            BeatsPerMinute = PracticeTempo(_analysis),
            IsClean = _analysis.Report.IsClean,
            Complaints = [.. _analysis.Report.Complaints.Select(Complaint)],
            Lines = [.. Sections().SelectMany(s => s.Lines).Select(Line)],
            Sections = [.. SectionRows()],
            Moves = [.. Sections().SelectMany(s => s.Lines).SelectMany(l => l.Moves).Select(Move)],
            Marks = Marks(),
            Tracks = [.. _dance.Tracks.Select(t => new ReadTrack(t.Title, t.Artist))],
        };
    }

    private string LevelWord()
    {
        string word = SheetLanguage.English.Words("level." + SheetLanguage.KeyOf(_analysis.Level.Level.ToString()));
        return _analysis.Level.IsComplete ? word : word + " or harder";
    }

    private IEnumerable<Section> Sections()
        => _dance.Sections.Concat(_dance.Tags.Select(t => t.Body)).Concat(_dance.Ending?.Body is { } body ? [body] : []);

    private ReadComplaint Complaint(Diagnostic complaint) => new(
        complaint.Rule.Id,
        SeverityWords.Of(complaint.Severity),
        complaint.Span.Start,
        complaint.Span.End,
        complaint.Count,
        complaint.Message,
        complaint.Rule.Reason,
        [.. complaint.Related.Select(r => new ReadRelated(r.Span.Start, r.Span.End, r.Words))],
        [
            .. complaint.Fixes
                .Select(f => new ReadFix(f.Title, [.. EditWriter.ToTextEdits(_analysis.Draft, f.Remedy).Select(e => new ReadEdit(e.Span.Start, e.Span.End, e.NewText))]))
                .Where(f => f.Edits.Count > 0),
        ]);

    private ReadLine Line(WrittenLine line)
    {
        TimedStep[] steps = [.. _byLine[line.Number]];
        TimedStep? first = steps.Length > 0 ? steps[0] : null;
        TimedStep? last = steps.Length > 0 ? steps[^1] : null;
        return new ReadLine(
            line.Span.Start,
            line.Span.End,
            line.Number,
            line.Label,
            first is null ? null : StartOf(first, line),
            line.Counts.Length.Value.ToDouble(),
            last is null ? "" : StanceWords.Of(last.WeightAfter),
            last?.FacingAfter?.ToString());
    }

    // the place of the line's first count, also where its first action comes later
    private static double StartOf(TimedStep first, WrittenLine line) => (first.At - (first.Written.Count.Place - line.Counts.Start)).Value.ToDouble();

    private IEnumerable<ReadSection> SectionRows()
    {
        foreach (Part part in _dance.Parts)
        {
            foreach (Section section in part.Sections)
            {
                string name = part.Name.Length > 0 ? $"part {part.Name} section {section.Number}" : $"section {section.Number}";
                yield return Row(section, name, section.Span.Start);
            }
        }

        foreach (Tag tag in _dance.Tags)
        {
            string kind = tag.IsBridge ? "bridge" : "tag";
            yield return Row(tag.Body, tag.Name.Length > 0 ? $"{kind} “{tag.Name}”" : kind, tag.Span.Start);
        }
    }

    private ReadSection Row(Section section, string name, int from)
    {
        TimedStep[] steps = [.. section.Steps.Select(s => _danced.GetValueOrDefault(s)).OfType<TimedStep>()];
        return new ReadSection(
            from,
            name,
            section.Title,
            section.Length.Value.ToDouble(),
            steps.Length > 0 ? (steps[0].At - steps[0].Written.Count.Place).Value.ToDouble() : null,
            steps.Length > 0 ? steps[^1].FacingAfter?.ToString() : null);
    }

    private ReadMove Move(WrittenMove move) => new(
        move.Span.Start,
        move.Span.End,
        move.Definition?.Name ?? "",
        move.Definition?.Level ?? "",
        move.Definition?.Call ?? "",
        Plainly(move.Definition?.Note ?? ""),
        [
            .. move.Steps.Select(s => _danced.TryGetValue(s, out TimedStep? danced)
                ? new ReadRow(danced.CountLabel, DancedWords.Of(danced), StanceWords.Of(danced.WeightAfter), danced.FacingAfter?.ToString())
                : new ReadRow(s.Count.Label, Phrasing.Describe(s.Action), "", null)),
        ]);

    // The catalogue calls the foot that a figure is named by S and the other one O; nobody else does.
    private static string Plainly(string note) => OtherFoot().Replace(NamedFoot().Replace(note, "the named foot"), "the other foot");

    private List<ReadMark> Marks()
    {
        List<ReadMark> marks = [];
        Add("title", _dance.TitleSpan);
        foreach (HeaderField field in _dance.Header)
        {
            // the key stands before its value, on the same line
            int start = LineStart(field.Span.Start);
            Add("key", new TextSpan(start, Math.Max(0, field.Span.Start - start)));
        }

        foreach (Part part in _dance.Parts.Where(p => p.Name.Length > 0))
        {
            Add("heading", part.Span);
        }

        foreach (Section section in _dance.Sections)
        {
            Add("heading", section.Span);
        }

        foreach (Tag tag in _dance.Tags)
        {
            Add("heading", tag.Span);
        }

        foreach (WrittenLine line in Sections().SelectMany(s => s.Lines))
        {
            Add("count", line.LabelSpan);
            foreach (WrittenMove move in line.Moves)
            {
                Add(move.IsUnknown ? "unknown" : "move", move.Span);
            }

            foreach (FacingClaim claim in line.Claims)
            {
                Add("claim", claim.Span);
            }

            foreach (Note note in line.Notes)
            {
                Add("note", note.Span);
            }

            foreach (StepOption option in line.Options)
            {
                Add("option", option.Span);
            }
        }

        foreach (Note note in _dance.Notes.Concat(_dance.Sections.SelectMany(s => s.Notes)))
        {
            Add("note", note.Span);
        }

        foreach (Track track in _dance.Tracks)
        {
            Add("track", track.Span);
        }

        foreach (Interruption interruption in _dance.Interruptions.Concat(_dance.Tracks.SelectMany(t => t.Interruptions)))
        {
            Add("break", interruption.Span);
        }

        marks.Sort((a, b) => a.From != b.From ? a.From.CompareTo(b.From) : b.To.CompareTo(a.To));
        return WithoutOverlaps(marks);

        void Add(string kind, TextSpan span)
        {
            if (span.Length > 0)
            {
                marks.Add(new ReadMark(span.Start, span.End, kind));
            }
        }
    }

    private static List<ReadMark> WithoutOverlaps(List<ReadMark> marks)
    {
        List<ReadMark> kept = [];
        foreach (ReadMark mark in marks)
        {
            if (kept.Count == 0 || mark.From >= kept[^1].To)
            {
                kept.Add(mark);
            }
        }

        return kept;
    }

    [GeneratedRegex(@"\bS\b")]
    private static partial Regex NamedFoot();

    [GeneratedRegex(@"\bO\b")]
    private static partial Regex OtherFoot();

    private int LineStart(int offset)
    {
        string text = _analysis.Draft.Text;
        int at = Math.Min(offset, text.Length);
        while (at > 0 && text[at - 1] is not ('\n' or '\r'))
        {
            at--;
        }

        return at;
    }
}
