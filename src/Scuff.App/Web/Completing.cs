using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using Scuff.Analysis;
using Scuff.App.Commands;
using Scuff.App.Complaints;
using Scuff.App.Explaining;
using Scuff.App.Web.Contract;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.App.Web;

/// <summary>
/// Says what could be written at a place: moves of the catalogue that the free foot allows, each tried by the reader itself, so that nothing is offered
/// that would be read otherwise; below them those that the weight forbids, with the reason.
/// </summary>
internal static partial class Completing
{
    // What fits a list that one can take in at a glance, and what is tried for it.
    private const int MostOffers = 24;
    private const int MostTried = 60;

    private static readonly string[] Places = [" forward", " back", " to side", " across", " in place"];

    // What begins a line of the heading, and what begins one below it.
    private static readonly (string Text, string About)[] HeadingWords =
    [
        ("by: ", "who made the dance"),
        ("level: ", "absolute beginner, beginner, improver, intermediate or advanced"),
        ("counts: ", "counts of one repetition; checked"),
        ("walls: ", "1, 2 or 4; checked"),
        ("rhythm: ", "for example cha cha, waltz, two-step"),
        ("start: weight on L", "where the weight is before count 1"),
        ("bpm: ", "the tempo it is made for"),
        ("ending: last wall, after 8 counts: ", "how it finishes at the front"),
    ];

    private static readonly (string Text, string About)[] BodyWords =
    [
        ("section ", "a new section; its counts begin again at 1"),
        ("tag \"\" 4 counts", "extra counts that the music asks for"),
        ("part A", "a part of a phrased dance"),
        ("sequence: ", "the order of the parts"),
        ("track: \"\" by , 112 bpm, intro 32", "a piece of music, with its own tags and restarts below"),
        ("wall 2: after 16 restart", "below a track: where its music breaks the pattern"),
        ("style: ", "below a count line: a note on style"),
        ("option 1-2 \"easier\": ", "below a count line: an easier way to dance it"),
    ];

    private static readonly ConcurrentDictionary<(Weight, int, string), Trial> Tried = new();

    /// <summary>The offers at a place.</summary>
    /// <param name="text">The text.</param>
    /// <param name="at">The place of the cursor in it.</param>
    public static CompleteAnswer Of(string text, int at)
    {
        int lineStart = at == 0 ? 0 : text.LastIndexOf('\n', at - 1) + 1;
        string head = text[lineStart..at];
        Match label = CountLabel().Match(head);
        if (!label.Success)
        {
            return Words(text, lineStart, head);
        }

        // the clause she is in: after the last comma, or after the counts
        int clause = Math.Max(head.LastIndexOf(',') + 1, label.Length);
        while (clause < head.Length && head[clause] == ' ')
        {
            clause++;
        }

        string sought = head[clause..];
        string written = text[..(lineStart + clause)];

        // a hold takes what counts are left, and leaves weight and facing alone
        DanceAnalysis before = DanceAnalysis.Of(DanceReader.Read(written + "hold"));
        int line = text.AsSpan(0, lineStart).Count('\n') + 1;
        TimedStep? last = Last(before, line);
        Weight weight = last?.WeightAfter ?? before.Dance.Start;
        Facing? facing = last is null ? Facing.Front : last.FacingAfter;
        return new CompleteAnswer(lineStart + clause, StanceWords.Of(weight), facing?.ToString(), Moves(sought, weight, before.Dance.BeatsPerBar, Left(before, line)));
    }

    // What is danced last before the place; the end of a tag that stands below comes later in the text and so not at all.
    private static TimedStep? Last(DanceAnalysis before, int line)
    {
        TimedStep? last = null;
        foreach (TimedStep step in before.OnceTimeline.Steps)
        {
            if (step.Written.Line <= line && (last is null || step.Written.Span.Start >= last.Written.Span.Start))
            {
                last = step;
            }
        }

        return last;
    }

    // The counts of the line that nothing is danced on yet: those of the hold.
    private static double Left(DanceAnalysis before, int line)
    {
        WrittenLine? written = before.Dance.Sections.Concat(before.Dance.Tags.Select(t => t.Body)).SelectMany(s => s.Lines).LastOrDefault(l => l.Number == line);
        return written is { Moves: [.., { Steps: [var hold, ..] }] } ? (written.Counts.End - hold.Count.Place).Value.ToDouble() : 0;
    }

    private static CompleteAnswer Words(string text, int lineStart, string head)
    {
        string sought = head.TrimStart();
        int from = lineStart + head.Length - sought.Length;
        List<CompleteOffer> offers = [];
        if (sought.Length == 0 && NextLabel(text[..lineStart]) is { } next)
        {
            offers.AddRange(next.Select(l => new CompleteOffer(l.PadRight(6), "counts", "the next counts of this section", true, "word")));
        }

        bool isBelow = BelowHeading().IsMatch(text[..lineStart]);
        offers.AddRange((isBelow ? BodyWords : [.. HeadingWords, .. BodyWords])
            .Where(k => k.Text.StartsWith(sought, StringComparison.OrdinalIgnoreCase))
            .Select(k => new CompleteOffer(k.Text, "", k.About, true, "key")));
        return new CompleteAnswer(from, "", null, offers);
    }

    // After 3-4 come 5-6 and 5-8, after the last count of an eight none.
    private static string[]? NextLabel(string before)
    {
        string line = before.TrimEnd('\r', '\n').Split('\n')[^1];
        Match heading = SectionHeading().Match(line);
        int end = heading.Success ? 0 : CountLabel().Match(line) is { Success: true } label ? LastCount(label.Value) : -1;
        return end switch
        {
            < 0 or >= 8 => null,
            7 => ["8"],
            _ => [Span(end + 1, "-", end + 2), Span(end + 1, "&", end + 2), Span(end + 1, "-", Math.Min(end + 4, 8))],
        };

        static string Span(int from, string between, int to) => string.Create(CultureInfo.InvariantCulture, $"{from}{between}{to}");
    }

    private static int LastCount(string label)
    {
        Match number = LastNumber().Match(label.TrimEnd());
        return number.Success && int.TryParse(number.Value, NumberStyles.None, CultureInfo.InvariantCulture, out int count) ? count : -1;
    }

    private static List<CompleteOffer> Moves(string sought, Weight weight, int beatsPerBar, double left)
    {
        IReadOnlyList<StepDefinition> found = CatalogueSearch.Find(StepCatalogue.Default, SideWords().Split(sought).Where(w => w.Length > 0).ToList());
        List<(CompleteOffer Offer, bool IsTooLong)> offers = [];
        int tried = 0;
        string begun = SideWords().Replace(sought, " ").Trim();
        foreach ((StepDefinition definition, string name) in found
            .Where(d => d.Meter is null || d.Meter == beatsPerBar || begun.Length > 0)
            .Select(d => (Definition: d, Name: NameFor(d, begun)))
            .OrderBy(d => d.Name.StartsWith(begun, StringComparison.OrdinalIgnoreCase) ? 0 : 1)
            .ThenBy(d => Familiarity(d.Definition))
            .ThenBy(d => d.Name.Length))
        {
            foreach (string words in Ways(definition, name))
            {
                if (tried >= MostTried || !SaysAll(words, sought))
                {
                    continue;
                }

                tried++;
                Trial trial = Tried.GetOrAdd((weight, beatsPerBar, words), key => Try(key.Item1, key.Item2, key.Item3, definition));
                if (trial.IsRead)
                {
                    offers.Add((new CompleteOffer(words, trial.Detail, trial.About, trial.IsPossible, "move"), left > 0 && trial.Counts > left));
                }
            }
        }

        return [.. offers.OrderByDescending(o => o.Offer.IsPossible).ThenBy(o => o.IsTooLong).Select(o => o.Offer).DistinctBy(o => o.Text).Take(MostOffers)];
    }

    private static int Familiarity(StepDefinition definition) => definition.Level switch
    {
        "absolute beginner" => 0,
        "beginner" => 1,
        "improver" => 2,
        "intermediate" => 3,
        _ => 4,
    };

    // She is offered the name that she has begun to type.
    private static string NameFor(StepDefinition definition, string begun)
        => definition.Name.StartsWith(begun, StringComparison.OrdinalIgnoreCase)
            ? definition.Name
            : definition.Aliases.FirstOrDefault(a => a.StartsWith(begun, StringComparison.OrdinalIgnoreCase)) ?? definition.Name;

    // The name with each side she can put to it, and of a single step with the places it can go to.
    private static IEnumerable<string> Ways(StepDefinition definition, string name)
    {
        string[] sides = definition.NamedBy switch
        {
            NamedBy.None => [name],
            NamedBy.Travel or NamedBy.Turn => [name + " right", name + " left"],
            _ => [name + " R", name + " L"],
        };
        bool goesAnywhere = definition.Rows is [{ Action: { Direction: Direction.Unstated, Kind: ActionKind.Step or ActionKind.Touch or ActionKind.Rock or ActionKind.Point } }];
        return goesAnywhere ? sides.SelectMany(s => Places.Select(p => s + p)) : sides;
    }

    // A side that she has typed already is kept.
    private static bool SaysAll(string words, string sought) => SideWords().Matches(sought).All(side =>
        side.Value.Trim().Length == 0 || HasSide(words, isRight: side.Value.TrimStart().StartsWith('r') || side.Value.TrimStart().StartsWith('R')));

    private static bool HasSide(string words, bool isRight)
        => words.Split(' ').Contains(isRight ? "R" : "L", StringComparer.Ordinal) || words.EndsWith(isRight ? " right" : " left", StringComparison.Ordinal);

    private static Trial Try(Weight weight, int beatsPerBar, string words, StepDefinition definition)
    {
        string start = weight switch { Weight.Right => "weight on R", Weight.Shared => "weight on both feet", _ => "weight on L" };
        string label = Label(definition);
        string meter = beatsPerBar == 3 ? "rhythm: waltz\n" : "";
        string text = $"Try\n\n{meter}start: {start}\n\nsection 1\n{label} {words}\n";
        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
        WrittenMove[] moves = [.. analysis.Dance.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Moves)];
        if (moves.Length != 1 || moves[0].IsUnknown || moves[0].Definition?.Id != definition.Id)
        {
            return new Trial(false, false, 0, "", "");
        }

        // of all that could be said of this scrap only what the weight forbids counts
        Diagnostic? forbids = weight == Weight.Unknown ? null : analysis.Report.Complaints.FirstOrDefault(c =>
            c.Severity >= Severity.Question && c.Rule.Id is "weight/foot-not-free" or "weight/foot-not-standing" or "weight/gesture-not-free" or "weight/foot-unnamed-on-both");
        TimedStep[] steps = [.. analysis.WallTimeline.Steps];
        string rows = string.Join("; ", steps.Select(s => $"{s.CountLabel} {DancedWords.Of(s)}"));
        string turn = analysis.NetTurn is { Sign: not 0 } net ? ", " + Phrasing.TurnWords(net) : "";
        string ends = steps.Length > 0 ? ", ends on " + StanceWords.Of(steps[^1].WeightAfter) : "";
        string detail = Summary.Number(definition.Length.Value.Floor, "count") + ends + turn;
        return new Trial(true, forbids is null, definition.Length.Value.ToDouble(), detail, forbids is null ? rows : forbids.Message);
    }

    private static string Label(StepDefinition definition)
    {
        string[] labels = [.. definition.Rows.Select(r => r.Label).Distinct(StringComparer.Ordinal)];
        int counts = definition.Length.Value.Floor;
        return labels.All(l => l.All(char.IsAsciiDigit))
            ? counts == 1 ? "1" : string.Create(CultureInfo.InvariantCulture, $"1-{counts}")
            : string.Concat(labels);
    }

    [GeneratedRegex(@"^\s*(?:counts?\s+)?(?:&|a)?\d+[\d&ae,\-–]*[:.)]?\s+")]
    private static partial Regex CountLabel();

    [GeneratedRegex(@"^\s*(section|tag|bridge|part)\b", RegexOptions.IgnoreCase)]
    private static partial Regex SectionHeading();

    [GeneratedRegex(@"\d+(?=\D*$)")]
    private static partial Regex LastNumber();

    [GeneratedRegex(@"^\s*(section|part|tag|bridge)\b", RegexOptions.IgnoreCase | RegexOptions.Multiline)]
    private static partial Regex BelowHeading();

    // also while the word is still being typed
    [GeneratedRegex(@"\s(?:right|righ|rig|ri|left|lef|le|R|L|rt|lt)\b\s*|\s+$", RegexOptions.IgnoreCase)]
    private static partial Regex SideWords();

    /// <summary>A move tried after a weight.</summary>
    /// <param name="IsRead">Whether the words are read as that move.</param>
    /// <param name="IsPossible">Whether the free foot allows it.</param>
    /// <param name="Counts">Counts it takes.</param>
    /// <param name="Detail">Counts, and where it ends.</param>
    /// <param name="About">What it does, or why not.</param>
    private sealed record Trial(bool IsRead, bool IsPossible, double Counts, string Detail, string About);
}
