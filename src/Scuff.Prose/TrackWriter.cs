using System.Globalization;
using System.Text;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>Writes a track with its interruptions, and the tags it needs, in the canonical words of a step text.</summary>
public static class TrackWriter
{
    private const int LabelWidth = 6;

    /// <summary>The lines of a track: what is stated of it, its sequence, where the pattern breaks, and its ending. Lines end with a line feed.</summary>
    public static string Block(Track track)
    {
        ArgumentNullException.ThrowIfNull(track);
        StringBuilder text = new();
        text.Append(Heading(track)).Append('\n');
        if (track.Sequence.Count > 0)
        {
            text.Append("sequence: ").AppendJoin(' ', track.Sequence.Select(ItemOf)).Append('\n');
        }

        foreach (Interruption interruption in track.Interruptions)
        {
            text.Append(Sentence(interruption)).Append('\n');
        }

        if (track.Ending is { } ending)
        {
            text.Append(EndingLine(ending)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>The line that names a track: <c>track: "Harbour Lights Out" by The Demo Band, 112 bpm, intro 32 counts 17.5 seconds, 3:25</c>.</summary>
    public static string Heading(Track track)
    {
        ArgumentNullException.ThrowIfNull(track);
        StringBuilder line = new();
        Add(line, $"track: \"{track.Title.Replace('"', '\'')}\"");
        if (track.Artist.Length > 0)
        {
            Add(line, $" by {track.Artist}");
        }

        if (track.Tempo is { } tempo)
        {
            Add(line, $", {Tenths(tempo.BeatsPerMinute)} bpm");
        }

        if (track.Intro is { } intro)
        {
            Add(line, $", intro {intro} {(intro == Counts.One ? "count" : "counts")}");
            if (track.IntroSeconds is { } seconds)
            {
                Add(line, $" {Tenths(seconds)} seconds");
            }
        }
        else if (track.IntroSeconds is { } alone)
        {
            Add(line, $", intro {Tenths(alone)} seconds");
        }

        if (track.LengthSeconds is { } length)
        {
            int whole = (length + new Ratio(1, 2)).Floor;
            Add(line, $", {whole / 60}:{whole % 60:00}");
        }

        foreach (Note note in track.Notes)
        {
            line.Append(", ").Append(note.Words);
        }

        return line.ToString();
    }

    /// <summary>A sentence on an interruption: <c>wall 4: after 16 restart, with count 8: touch R together [12:00]</c>.</summary>
    public static string Sentence(Interruption interruption)
    {
        ArgumentNullException.ThrowIfNull(interruption);
        StringBuilder line = new();
        string walls = string.Join(" and ", interruption.Walls);
        line.Append(interruption.PartName.Length > 0 ? $"wall {walls} of part {interruption.PartName}:" : $"wall {walls}:");
        if (interruption.AfterCounts is { } after)
        {
            Add(line, $" after {after}");
        }

        bool goesOn = interruption.Acts.Any(a => a is InterruptionAct.GoOn);
        for (int i = 0; i < interruption.Acts.Count; i++)
        {
            line.Append(i == 0 ? " " : ", then ").Append(ActOf(interruption.Acts[i], i == 0, goesOn));
        }

        foreach (ChangedCounts change in interruption.Changes)
        {
            // the count is told in the numbering of its section
            string label = CountWriter.Label([.. change.Steps.Select(s => s.Count.Place)]);
            Add(line, $", with count {label}: {string.Join(", ", change.Steps.Select(s => Phrasing.Describe(s.Action)))}");
        }

        if (interruption.Claim is { } claim)
        {
            Add(line, $" [{claim.Facing}]");
        }

        return line.ToString();
    }

    /// <summary>The line on an ending.</summary>
    public static string EndingLine(Ending ending)
    {
        ArgumentNullException.ThrowIfNull(ending);
        if (ending.Verbatim.Length > 0)
        {
            return ending.Verbatim;
        }

        StringBuilder line = new("ending:");
        if (ending.Wall is { } wall)
        {
            Add(line, $" wall {wall}");
        }

        if (ending.AfterCounts is { } after)
        {
            Add(line, $"{(ending.Wall is null ? "" : ",")} after {after} counts");
        }

        if (ending.Body is { } body)
        {
            line.Append(": ").AppendJoin(", ", body.Lines.SelectMany(l => l.Moves).Select(Phrasing.Describe));
        }

        if (ending.Claim is { } claim)
        {
            Add(line, $" [{claim.Facing}]");
        }

        return line.ToString();
    }

    /// <summary>A tag as it is written, heading and counts; lines end with a line feed.</summary>
    public static string TagLines(Tag tag)
    {
        ArgumentNullException.ThrowIfNull(tag);
        StringBuilder text = new();
        Add(text, $"{(tag.IsBridge ? "bridge" : "tag")} \"{tag.Name}\" {tag.Body.Length} {(tag.Body.Length == Counts.One ? "count" : "counts")}\n");
        foreach (WrittenLine line in tag.Body.Lines)
        {
            text.Append(CountWriter.Label([.. line.Steps.Select(s => s.Count.Place)]).PadRight(LabelWidth - 1)).Append(' ');
            text.AppendJoin(", ", line.Moves.Select(Phrasing.Describe)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>
    /// The replacements that put a track into a text: in place of the track of that title with its sentences, or at the end; tags that it needs go before
    /// the first track. What else is in the text stays.
    /// </summary>
    internal static ValueList<TextEdit> ToTextEdits(Draft draft, DanceEdit.WriteTrack edit)
    {
        string text = draft.Text;
        Track? old = draft.Dance.Tracks.FirstOrDefault(t => string.Equals(t.Title, edit.Track.Title, StringComparison.OrdinalIgnoreCase));
        string tags = string.Concat(edit.Tags.Select(t => TagLines(t) + "\n"));
        string block = Block(edit.Track);
        List<TextEdit> edits = [];
        if (old is null)
        {
            string gap = text.Length == 0 || text.EndsWith("\n\n", StringComparison.Ordinal) ? "" : text.EndsWith('\n') ? "\n" : "\n\n";
            if (draft.Dance.Tracks.Count == 0)
            {
                return [new TextEdit(new TextSpan(text.Length, 0), gap + tags + block)];
            }

            edits.Add(new TextEdit(new TextSpan(text.Length, 0), gap + block));
        }
        else
        {
            edits.Add(new TextEdit(WholeLine(text, old.Span), block));
            foreach (TextSpan span in old.Interruptions.Select(i => i.Span).Concat(old.Sequence.Select(s => s.Span)).Append(old.Ending?.Span ?? default))
            {
                TextSpan line = WholeLine(text, span);
                if (span.Length > 0 && !edits.Any(e => e.Span == line))
                {
                    edits.Add(new TextEdit(line, ""));
                }
            }
        }

        if (tags.Length > 0)
        {
            edits.Add(new TextEdit(new TextSpan(WholeLine(text, draft.Dance.Tracks[0].Span).Start, 0), tags));
        }

        // two at one place: the insertion comes first
        return [.. edits.OrderBy(e => e.Span.Start).ThenBy(e => e.Span.Length)];
    }

    private static TextSpan WholeLine(string text, TextSpan span)
    {
        int start = Math.Clamp(span.Start, 0, text.Length);
        while (start > 0 && text[start - 1] is not ('\n' or '\r'))
        {
            start--;
        }

        int end = Math.Clamp(span.End, start, text.Length);
        while (end < text.Length && text[end] is not ('\n' or '\r'))
        {
            end++;
        }

        end += end < text.Length && text[end] == '\r' ? 1 : 0;
        end += end < text.Length && text[end] == '\n' ? 1 : 0;
        return TextSpan.FromBounds(start, end);
    }

    private static string ItemOf(SequenceItem item)
    {
        string name = item.IsTag ? $"tag \"{item.Name}\"" : item.Name;
        return item.Upto is { } upto ? $"{name}({upto})" : name;
    }

    private static string ActOf(InterruptionAct act, bool isFirst, bool goesOn) => act switch
    {
        InterruptionAct.PlayTag play => (goesOn ? "bridge" : "tag") + (play.Name.Length > 0 ? $" \"{play.Name}\"" : "") + (play.Times > 1 ? $" {play.Times} times" : ""),
        InterruptionAct.Quote quote => string.Create(
            CultureInfo.InvariantCulture,
            $"{(isFirst ? "repeat " : "")}section {quote.SectionNumber} counts {(quote.Counts.Start + Counts.One).Value.Floor}-{quote.Counts.End.Value.Floor}"),
        InterruptionAct.Wait wait => string.Create(CultureInfo.InvariantCulture, $"hold {wait.Length} {(wait.Length == Counts.One ? "count" : "counts")}"),
        InterruptionAct.Restart => "restart",
        InterruptionAct.GoOn => "go on",
        _ => "",
    };

    private static string Tenths(Ratio value) => value.IsWhole
        ? value.Floor.ToString(CultureInfo.InvariantCulture)
        : value.ToDouble().ToString("0.#", CultureInfo.InvariantCulture);

    private static void Add(StringBuilder text, FormattableString words) => text.Append(words.ToString(CultureInfo.InvariantCulture));
}
