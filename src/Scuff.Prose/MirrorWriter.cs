using System.Text;
using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>
/// Writes a dance in the other foot into the author's own words: left and right exchanged, feet, turns, clock times and calls with them. Her
/// notes, names and tracks stay. Mirrored twice, a text is danced as it was.
/// </summary>
public static partial class MirrorWriter
{
    private const string Mark = " (mirrored)";

    private static readonly Dictionary<string, string> Words = Pairs(
        ("left", "right"), ("l", "r"), ("lf", "rf"), ("lt", "rt"), ("lft", "rgt"), ("lh", "rh"), ("xl", "xr"), ("xlif", "xrif"), ("xlib", "xrib"),
        ("lif", "rif"), ("leftwards", "rightwards"), ("leftside", "rightside"), ("clockwise", "anticlockwise"), ("cw", "ccw"), ("3:00", "9:00"),
        ("1:30", "10:30"), ("4:30", "7:30"), ("3.00", "9.00"), ("1.30", "10.30"), ("4.30", "7.30"));

    // words for the other way round that have no partner of their own
    private static readonly Dictionary<string, string> OneWay = new(StringComparer.OrdinalIgnoreCase)
    {
        ["counterclockwise"] = "clockwise",
        ["acw"] = "cw",

        // a rib is also what the heart beats behind
        ["lib"] = "rib",
    };

    /// <summary>The text of the dance in the other foot. Never throws, whatever the text; words that were not understood are mirrored as words.</summary>
    public static MirroredText Write(Draft draft)
    {
        Dance mirror = DanceMirror.Mirror(draft.Dance);
        List<Note> notes = [.. NotesOf(draft.Dance)];
        string text = Swapped(draft, notes);
        HashSet<int> spelled = [];
        foreach (bool spells in (ReadOnlySpan<bool>)[false, true])
        {
            Draft read = DanceReader.Read(text);
            HashSet<int> wrong = Wrong(read.Dance, mirror);
            if (wrong.Count == 0)
            {
                break;
            }

            if (spells)
            {
                spelled.UnionWith(wrong);
            }

            text = EditWriter.Apply(text, LineRewriter.Edits(read, Corrected(read.Dance, mirror, wrong), spelled));
        }

        Dance written = DanceReader.Read(text).Dance;
        IEnumerable<int> open = Wrong(written, mirror).Concat(Sentences(written, mirror)).Order();
        return new MirroredText(Titled(text, draft), notes.Where(note => note.Kind != "move" && NamesSide(note.Words)).ToValueList(), open.ToValueList());
    }

    /// <summary>Whether words say left or right, L or R, or a clock time that is another in the mirror.</summary>
    public static bool NamesSide(string words) => Token().Matches(words).Any(word => Other(word.Value) is not null);

    private static Dictionary<string, string> Pairs(params (string Left, string Right)[] pairs)
    {
        Dictionary<string, string> words = new(StringComparer.OrdinalIgnoreCase);
        foreach ((string left, string right) in pairs)
        {
            words.Add(left, right);
            words.Add(right, left);
        }

        return words;
    }

    [GeneratedRegex(@"(?<![\d:.])\d{1,2}[:.]\d\d(?![\d:])|\p{L}+", RegexOptions.ExplicitCapture | RegexOptions.CultureInvariant, 1000)]
    private static partial Regex Token();

    private static string? Other(string word)
        => (Words.TryGetValue(word, out string? other) || OneWay.TryGetValue(word, out other)) ? InCaseOf(word, other) : null;

    private static string InCaseOf(string word, string other) => !char.IsUpper(word[0])
        ? other
        : word.Length == 1 || char.IsUpper(word[^1]) ? other.ToUpperInvariant() : char.ToUpperInvariant(other[0]) + other[1..];

    private static IEnumerable<Note> NotesOf(Dance dance) => dance.Notes
        .Concat(dance.Tracks.SelectMany(track => track.Notes))
        .Concat(dance.Sections.Concat(dance.Tags.Select(tag => tag.Body)).SelectMany(section => section.Notes.Concat(section.Lines.SelectMany(line => line.Notes))));

    // Her words with the sides exchanged, line by line; what is kept are the title, the heading save the start and the ending, notes, tracks,
    // and all that stands in quotation marks.
    private static string Swapped(Draft draft, List<Note> notes)
    {
        List<TextSpan> kept = [draft.Dance.TitleSpan, .. notes.Select(note => note.Span), .. draft.Dance.Tracks.Select(track => track.Span)];
        kept.AddRange(draft.Dance.Header.Where(field => field.Key is not ("start" or "ending")).Select(field => field.Span));

        // what is called names the steps, in quotation marks or not
        List<TextSpan> called = [.. draft.Dance.Sections.Concat(draft.Dance.Tags.Select(tag => tag.Body)).SelectMany(section => section.Calls).Select(call => call.Span)];
        StringBuilder text = new(draft.Text.Length);
        int last = 0;
        foreach (Match word in Token().Matches(draft.Text))
        {
            if (Other(word.Value) is { } other && !Holds(kept, word) && (!IsQuoted(draft.Text, word.Index) || Holds(called, word)))
            {
                text.Append(draft.Text, last, word.Index - last).Append(other);
                last = word.Index + word.Length;
            }
        }

        return text.Append(draft.Text, last, draft.Text.Length - last).ToString();
    }

    private static bool Holds(List<TextSpan> spans, Match word) => spans.Exists(span => word.Index >= span.Start && word.Index < span.End);

    private static bool IsQuoted(string text, int at)
    {
        int start = text.LastIndexOf('\n', at) + 1;
        int quotes = text.AsSpan(start, at - start).Count('"');
        int opened = text.AsSpan(start, at - start).Count('“') - text.AsSpan(start, at - start).Count('”');
        return quotes % 2 == 1 || opened > 0;
    }

    private static string Titled(string text, Draft draft)
    {
        TextSpan span = draft.Dance.TitleSpan;
        if (span.Length == 0)
        {
            return text;
        }

        // all before the title is as long as before: nothing is exchanged there
        string title = text.Substring(span.Start, span.Length);
        string marked = title.EndsWith(Mark, StringComparison.Ordinal) ? title[..^Mark.Length] : title + Mark;
        return string.Concat(text.AsSpan(0, span.Start), marked, text.AsSpan(span.End));
    }

    // Numbers of count lines that are danced otherwise than they should be.
    private static HashSet<int> Wrong(Dance written, Dance mirror)
    {
        ILookup<int, WrittenLine> lines = LineRewriter.LinesOf(written).ToLookup(line => line.Number);
        HashSet<int> wrong = [];
        foreach (IGrouping<int, WrittenLine> meant in LineRewriter.LinesOf(mirror).GroupBy(line => line.Number))
        {
            if (lines[meant.Key].Count() != meant.Count() || lines[meant.Key].Zip(meant).Any(pair => !IsAlike(pair.First, pair.Second)))
            {
                wrong.Add(meant.Key);
            }
        }

        return wrong;
    }

    private static bool IsAlike(WrittenLine one, WrittenLine other) => IsAlike(one.Steps, other.Steps)
        && one.Claims.Select(claim => (claim.Facing, claim.At)).SequenceEqual(other.Claims.Select(claim => (claim.Facing, claim.At)))
        && IsAlike(one.Options.SelectMany(o => o.Steps), other.Options.SelectMany(o => o.Steps));

    private static bool IsAlike(IEnumerable<WrittenStep> one, IEnumerable<WrittenStep> other) => one.Select(Bare).SequenceEqual(other.Select(Bare));

    private static (Counts Place, StepAction Action, ValueList<StepAction> With) Bare(WrittenStep step) => (step.Count.Place, step.Action, step.With);

    // What is said about walls, tags, restarts and the ending.
    private static IEnumerable<int> Sentences(Dance written, Dance mirror)
    {
        if (written.Start != mirror.Start)
        {
            yield return 1;
        }

        foreach ((Interruption found, Interruption meant) in BreaksOf(written).Zip(BreaksOf(mirror)))
        {
            if (found.Claim?.Facing != meant.Claim?.Facing || !IsAlike(found.Changes.SelectMany(c => c.Steps), meant.Changes.SelectMany(c => c.Steps)))
            {
                yield return found.Line;
            }
        }

        foreach ((Ending? found, Ending? meant) in EndingsOf(written).Zip(EndingsOf(mirror)))
        {
            if (found is not null && meant is not null && (found.Claim?.Facing != meant.Claim?.Facing || found.WallFacing != meant.WallFacing
                || !IsAlike(found.Body?.Steps ?? [], meant.Body?.Steps ?? [])))
            {
                yield return found.Line;
            }
        }
    }

    private static IEnumerable<Interruption> BreaksOf(Dance dance) => dance.Interruptions.Concat(dance.Tracks.SelectMany(track => track.Interruptions));

    private static IEnumerable<Ending?> EndingsOf(Dance dance) => dance.Tracks.Select(track => track.Ending).Append(dance.Ending);

    // The dance as it was read, with the lines that are wrong as they should be.
    private static Dance Corrected(Dance written, Dance mirror, HashSet<int> wrong)
    {
        Dictionary<int, WrittenLine> meant = [];
        foreach (WrittenLine line in LineRewriter.LinesOf(mirror).Where(line => wrong.Contains(line.Number)))
        {
            meant.TryAdd(line.Number, line);
        }

        return written with
        {
            Parts = written.Parts.Select(part => part with { Sections = part.Sections.Select(Mended).ToValueList() }).ToValueList(),
            Tags = written.Tags.Select(tag => tag with { Body = Mended(tag.Body) }).ToValueList(),
        };

        Section Mended(Section section) => section with
        {
            Lines = section.Lines.Select(line => meant.TryGetValue(line.Number, out WrittenLine? other)
                ? line with { Moves = other.Moves, Claims = other.Claims, Places = other.Places }
                : line).ToValueList(),
        };
    }
}
