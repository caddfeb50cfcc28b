using Scuff.Analysis.Likeness;
using Scuff.Dances;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Lessons;

/// <summary>What is asked of a lesson. Equal by value.</summary>
public sealed record LessonOptions
{
    /// <summary>As long as it takes, for a class of the dance's own level.</summary>
    public static LessonOptions Usual { get; } = new();

    /// <summary>Minutes there are, warm-up and cool-down within them; null for as long as it takes.</summary>
    public int? Minutes { get; init; }

    /// <summary>Level of the class; null for that of the dance: the one in its heading, else the computed one.</summary>
    public Level? Class { get; init; }

    /// <summary>
    /// Ids of figures that the class has met; null when nobody says. Figures that are usually met below the class's level count as known in any
    /// case; where nobody says, those of its level as well (common practice, no source).
    /// </summary>
    public ValueList<string>? Known { get; init; }

    /// <summary>Dances that the class knows, whose sections it need not be taught again; empty where nobody says.</summary>
    public ValueList<LearnedDance> KnownDances { get; init; }

    /// <summary>Title of the track it is taught to; empty for the first one of the dance.</summary>
    public string Track { get; init; } = "";

    /// <summary>Tempo of other, slower practice music, in counts a minute; null for the track itself, slowed.</summary>
    public Ratio? PracticeTempo { get; init; }

    /// <summary>The order of the chunks; null for the one that suits the dance.</summary>
    public LessonOrder? Order { get; init; }

    /// <summary>Whether options that spare knees are wanted.</summary>
    public bool ForKnees { get; init; }

    /// <summary>Whether options for beginners are wanted.</summary>
    public bool ForBeginners { get; init; }

    /// <summary>Whether warm-up and cool-down belong to this time; false when the dance is taught in the middle of a class.</summary>
    public bool HasWarmUp { get; init; } = true;

    /// <summary>The same lesson for a class that knows these dances: their figures count as met, and sections that they share are named.</summary>
    public LessonOptions Knowing(IEnumerable<DanceAnalysis> dances)
    {
        DanceAnalysis[] known = [.. dances];
        return this with { Known = FiguresOf(known), KnownDances = known.Select(d => new LearnedDance(d.Dance.Title, FeetPrint.Of(d))).ToValueList() };
    }

    /// <summary>The figures that somebody who knows these dances has met, as ids in order.</summary>
    public static ValueList<string> FiguresOf(IEnumerable<DanceAnalysis> dances)
    {
        ArgumentNullException.ThrowIfNull(dances);
        return
        [
            .. dances
                .SelectMany(d => d.Dance.Sections.Concat(d.Dance.Tags.Select(t => t.Body)))
                .SelectMany(s => s.Lines)
                .SelectMany(l => l.Moves)
                .Select(m => m.Definition)
                .OfType<StepDefinition>()
                .Where(d => d.Rows.Count > 1)
                .Select(d => d.Id)
                .Distinct(StringComparer.Ordinal)
                .Order(StringComparer.Ordinal),
        ];
    }
}
