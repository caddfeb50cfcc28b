using System.Text.Json.Serialization;
using Scuff.Analysis.Compare;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Timing;

namespace Scuff.App.Json;

/// <summary>One change, in JSON. What a kind of change does not have is absent.</summary>
internal sealed record ComparedChange
{
    /// <summary>The kind: <c>steps</c>, <c>break</c>, <c>headingField</c> and so on, as the cases of <see cref="DanceChange"/> are called.</summary>
    public required string Kind { get; init; }

    /// <summary>The change in a sentence.</summary>
    public required string Sentence { get; init; }

    /// <summary>Number of the section, or the name of a part and section (<c>A1</c>) or of a tag.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public SectionName? Section { get; init; }

    /// <summary>
    /// Its counts before: the first, and the first that no longer belongs to it, from zero within the section; of a break or an
    /// ending the counts after which it comes.
    /// </summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<double>? CountsBefore { get; init; }

    /// <summary>The same in the later version.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<double>? CountsAfter { get; init; }

    /// <summary>What was danced before, in words.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? MovesBefore { get; init; }

    /// <summary>What is danced after, in words.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public IReadOnlyList<string>? MovesAfter { get; init; }

    /// <summary>Facing after those counts in the earlier version.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? FacingBefore { get; init; }

    /// <summary>Facing after those counts in the later version.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? FacingAfter { get; init; }

    /// <summary>Facing in brackets there in the earlier version, where it and the facing danced did not change together.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? WrittenBefore { get; init; }

    /// <summary>Facing in brackets there in the later version.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? WrittenAfter { get; init; }

    /// <summary>Weight after those counts in the earlier version.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? WeightBefore { get; init; }

    /// <summary>Weight after those counts in the later version.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? WeightAfter { get; init; }

    /// <summary>Wall of a break or an ending before.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? WallBefore { get; init; }

    /// <summary>Wall of a break or an ending after.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public int? WallAfter { get; init; }

    /// <summary>Title of the track the change is for; absent where it holds for every one.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Track { get; init; }

    /// <summary>A change with its sentence.</summary>
    public static ComparedChange Of(DanceChange change, string sentence)
    {
        string name = change.GetType().Name;
        ComparedChange plain = new() { Kind = char.ToLowerInvariant(name[0]) + name[1..], Sentence = sentence, Track = TrackOf(change) };
        return change switch
        {
            DanceChange.Steps c => plain with
            {
                Section = Name(c.Place),
                CountsBefore = Span(c.CountsBefore),
                CountsAfter = Span(c.CountsAfter),
                MovesBefore = Moves(c.Before),
                MovesAfter = Moves(c.After),
                FacingBefore = c.Landing?.FacingBefore?.ToString(),
                FacingAfter = c.Landing?.FacingAfter?.ToString(),
                WeightBefore = c.Landing is { } landing ? StanceWords.Of(landing.WeightBefore) : null,
                WeightAfter = c.Landing is { } landed ? StanceWords.Of(landed.WeightAfter) : null,
            },
            DanceChange.WholeSection { IsNew: true } c => plain with { Section = Name(c.Place), MovesAfter = Moves(c.Moves) },
            DanceChange.WholeSection c => plain with { Section = Name(c.Place), MovesBefore = Moves(c.Moves) },
            DanceChange.WholeTag { IsNew: true } c => plain with { Section = new SectionName(0, c.Name), MovesAfter = Moves(c.Moves) },
            DanceChange.WholeTag c => plain with { Section = new SectionName(0, c.Name), MovesBefore = Moves(c.Moves) },
            DanceChange.SectionMoved c => plain with { Section = Name(c.After) },
            DanceChange.SectionRetitled c => plain with { Section = Name(c.Place) },
            DanceChange.WrittenFacing c => plain with
            {
                Section = Name(c.Place),
                CountsAfter = Span(new CountSpan(c.Count, c.Count)),
                WrittenBefore = c.Before.ToString(),
                WrittenAfter = c.After.ToString(),
                FacingBefore = c.DancedBefore.ToString(),
                FacingAfter = c.DancedAfter.ToString(),
            },
            DanceChange.Remark { Place: { } place } c => plain with { Section = Name(place), CountsAfter = c.At is { } at ? Span(at) : null },
            DanceChange.Option c => plain with
            {
                Section = Name(c.Place),
                CountsAfter = Span(c.Replaces),
                MovesBefore = Moves(c.Before),
                MovesAfter = Moves(c.After),
            },
            DanceChange.Break c => plain with
            {
                WallBefore = c.Before?.Walls[0],
                WallAfter = c.After?.Walls[0],
                CountsBefore = Place(c.Before),
                CountsAfter = Place(c.After),
            },
            DanceChange.BreakFacing c => plain with
            {
                WallAfter = c.Pause.Walls[0],
                CountsAfter = Place(c.Pause),
                WrittenBefore = c.Before.ToString(),
                WrittenAfter = c.After.ToString(),
                FacingBefore = c.DancedBefore.ToString(),
                FacingAfter = c.DancedAfter.ToString(),
            },
            DanceChange.EndFacing c => plain with
            {
                WrittenBefore = c.Before.ToString(),
                WrittenAfter = c.After.ToString(),
                FacingBefore = c.DancedBefore.ToString(),
                FacingAfter = c.DancedAfter.ToString(),
            },
            DanceChange.Finish c => plain with
            {
                WallBefore = c.Before?.Wall,
                WallAfter = c.After?.Wall,
                CountsBefore = Place(c.Before?.AfterCounts),
                CountsAfter = Place(c.After?.AfterCounts),
                MovesBefore = Moves(c.Before),
                MovesAfter = Moves(c.After),
            },
            _ => plain,
        };
    }

    private static string? TrackOf(DanceChange change)
    {
        string title = change switch
        {
            DanceChange.Break c => c.TrackTitle,
            DanceChange.BreakFacing c => c.TrackTitle,
            DanceChange.Finish c => c.TrackTitle,
            DanceChange.EndFacing c => c.TrackTitle,
            DanceChange.Sequence c => c.TrackTitle,
            DanceChange.Remark c => c.TrackTitle,
            DanceChange.TrackTempo c => c.TrackTitle,
            DanceChange.TrackIntro c => c.TrackTitle,
            DanceChange.TrackLength c => c.TrackTitle,
            DanceChange.Music c => c.TitleAfter ?? c.TitleBefore ?? "",
            _ => "",
        };
        return title.Length > 0 ? title : null;
    }

    private static SectionName Name(DancePlace place) => place switch
    {
        { TagName: { } tag } => new SectionName(0, tag),
        { PartName: "" } => new SectionName(place.Section, null),
        _ => new SectionName(0, place.PartName + place.Section),
    };

    private static List<double> Span(CountSpan span) => [span.Start.Value.ToDouble(), span.End.Value.ToDouble()];

    private static List<double>? Place(Interruption? pause) => Place(pause?.AfterCounts);

    private static List<double>? Place(Counts? place) => place is { } after ? [after.Value.ToDouble()] : null;

    private static List<string>? Moves(Ending? ending)
        => ending?.Body is { } body ? Moves(body.Lines.SelectMany(l => l.Moves).ToValueList()) : null;

    private static List<string> Moves(ValueList<WrittenMove> moves) => [.. moves.Select(Phrasing.Describe)];
}
