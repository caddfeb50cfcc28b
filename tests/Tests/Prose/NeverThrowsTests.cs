using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using Scuff;
using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Tests.Prose;

/// <summary>
/// No text makes anything throw: reading, tidying, mending, checking, unrolling, dancing on the floor, the sheet. Each text follows
/// from a number and the demo club (<see cref="FuzzTexts"/>), so a failure names what to try again. <c>SCUFF_FUZZ=1000000</c> tries so many,
/// <c>SCUFF_FUZZ_FIRST=184822</c> begins with that number.
/// </summary>
public sealed class NeverThrowsTests(ITestOutputHelper output)
{
    // About five seconds on two cores.
    private const int Usual = 5_000;

    private static readonly int Inputs = Asked("SCUFF_FUZZ", Usual);

    private static readonly int First = Asked("SCUFF_FUZZ_FIRST", 0);

    [Fact]
    public void No_text_makes_anything_throw()
    {
        ConcurrentDictionary<string, (int Number, string Text, int Times)> failures = [];
        ConcurrentQueue<(long Milliseconds, int Number)> slow = [];
        Stopwatch watch = Stopwatch.StartNew();
        long characters = 0;
        Parallel.For(First, First + Inputs, new ParallelOptions { MaxDegreeOfParallelism = 2 }, number =>
        {
            string text = FuzzTexts.Make(number);
            Interlocked.Add(ref characters, text.Length);
            long before = Stopwatch.GetTimestamp();
            if (Fault(text) is string fault)
            {
                failures.AddOrUpdate(
                    fault,
                    _ => (number, text, 1),
                    (_, known) => text.Length < known.Text.Length ? (number, text, known.Times + 1) : known with { Times = known.Times + 1 });
            }

            long took = (long)Stopwatch.GetElapsedTime(before).TotalMilliseconds;
            if (took >= 100)
            {
                slow.Enqueue((took, number));
            }
        });

        string[] told =
        [
            string.Create(CultureInfo.InvariantCulture, $"{Inputs} texts of {characters} characters in {watch.Elapsed.TotalSeconds:F1} s, {failures.Count} kinds of failure"),
            .. slow.OrderByDescending(s => s.Milliseconds).Take(10).Select(s => string.Create(CultureInfo.InvariantCulture, $"slow: {s.Milliseconds} ms for text {s.Number} ({FuzzTexts.Make(s.Number).Length} characters)")),
            .. failures.OrderByDescending(f => f.Value.Times).Select(f => string.Create(CultureInfo.InvariantCulture, $"{f.Value.Times} times, shortest is text {f.Value.Number}: {f.Key}\n---\n{f.Value.Text}\n---")),
        ];
        foreach (string line in told)
        {
            output.WriteLine(line);
        }

        if (Environment.GetEnvironmentVariable("SCUFF_FUZZ_LOG") is { Length: > 0 } log)
        {
            File.WriteAllLines(log, told);
        }

        Assert.True(failures.IsEmpty, string.Join('\n', told));
    }

    [Theory]
    [InlineData("")]
    [InlineData("\0")]
    [InlineData("\uFEFF")]
    [InlineData("\n\r\n\r\u2028\u0085")]
    [InlineData("\uD83D")]
    [InlineData("section")]
    [InlineData("section 99999999999999999999\n1-99999999999999999999 step R")]
    [InlineData("X\n\nsection 1\n1-2147483647 vine R")]
    [InlineData("X\n\nsection 1\n1-8 vine R x2147483647")]
    [InlineData("X\n\nsection 1\n1-8 walk R\nwall 2147483647: after 2147483647 restart\nwall 2: after 4 tag \"T\" 2147483647 times\n")]
    [InlineData("X\n\nsequence: A A B A tag tag tag A\n")]
    [InlineData("X\n\nsection 1\n1-3 face [ curve, 2147483647 5-7\n")]
    [InlineData("X\n\nsection 1\n(1-4) vine R with touch\n&&\n")]
    [InlineData("X\n\nsection 1\n3-4 step R forward, pivot 1-2147483647/4 L\n")]
    public void Small_texts_of_the_worst_kind_are_read(string text) => Assert.Null(Fault(text));

    [Fact]
    public void What_is_tried_tells_a_fault()
    {
        // the trial itself: a span outside its text is a fault
        TextSpan outside = new(3, 9);

        Assert.Equal("a span lies outside the text", SpanFault("four", [outside]));
        Assert.Null(SpanFault("four", [new TextSpan(0, 4), new TextSpan(4, 0)]));
    }

    private static int Asked(string name, int usual) => int.TryParse(Environment.GetEnvironmentVariable(name), CultureInfo.InvariantCulture, out int asked) ? asked : usual;

    /// <summary>Everything that is made from a text; null when nothing threw and every span lies in the text.</summary>
    private static string? Fault(string text)
    {
        string doing = "reading";
        try
        {
            Draft draft = DanceReader.Read(text);
            if (draft.Text != text)
            {
                return "the draft has another text";
            }

            doing = "checking";
            DanceAnalysis analysis = DanceAnalysis.Of(draft);
            ValueList<Diagnostic> complaints = analysis.Report.Complaints;
            if (SpanFault(text, complaints.SelectMany(c => c.Related.Select(r => r.Span).Prepend(c.Span))) is string fault)
            {
                return fault;
            }

            doing = "telling the complaints";
            _ = complaints.Sum(c => c.Message.Length);

            doing = "mending";
            foreach (Fix fix in complaints.SelectMany(c => c.Fixes))
            {
                ValueList<TextEdit> edits = EditWriter.ToTextEdits(draft, fix.Remedy);
                if (SpanFault(text, edits.Select(e => e.Span)) is string wrong)
                {
                    return "a mend: " + wrong;
                }
            }

            doing = "tidying";
            _ = DanceWriter.Tidy(draft);

            doing = "unrolling";
            Timeline plain = analysis.PlainTimeline;
            Timeline wall = analysis.WallTimeline;
            _ = analysis.TrackTimelines;
            if (WeightFault(plain) is string nowhere)
            {
                return nowhere;
            }

            doing = "dancing on the floor";
            FloorPath path = FloorSimulator.Simulate(wall, DancerSize.Default);
            _ = path.BodyAt(1.3);

            doing = "making the sheet";
            SheetModel sheet = SheetBuilder.Build(analysis);
            foreach (ISheetFormat format in SheetFormats.All.Where(f => f.IsText))
            {
                format.Write(sheet, Stream.Null);
            }

            doing = "mirroring";
            return DanceMirror.Mirror(DanceMirror.Mirror(draft.Dance)) == draft.Dance ? null : "mirrored twice it is another dance";
        }
        catch (Exception trouble)
        {
            string[] frames = [.. (trouble.StackTrace ?? "").Split('\n').Where(f => f.Contains(" Scuff.", StringComparison.Ordinal)).Take(2).Select(f => f.Trim())];
            return $"{doing}: {trouble.GetType().Name} {string.Join(" < ", frames)}";
        }
    }

    private static string? SpanFault(string text, IEnumerable<TextSpan> spans)
        => spans.Any(s => s.Start < 0 || s.Length < 0 || s.Start > text.Length - s.Length) ? "a span lies outside the text" : null;

    private static string? WeightFault(Timeline timeline)
    {
        foreach (TimedStep step in timeline.Steps)
        {
            if (step.Action.Effect == WeightEffect.Unknown)
            {
                // after words that could not be read nobody knows where the weight is
                return null;
            }

            if (step.WeightAfter == Weight.Unknown)
            {
                return "the weight is nowhere";
            }
        }

        return null;
    }
}
