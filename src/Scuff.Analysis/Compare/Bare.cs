using Scuff.Dances;
using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>What is written, freed from where and in which letters it is written, so that it compares by what is danced.</summary>
internal static class Bare
{
    /// <summary>A move without its places in the text.</summary>
    public static WrittenMove Of(WrittenMove move) => move with { Span = default, Steps = move.Steps.Select(Of).ToValueList() };

    /// <summary>Moves without their places in the text.</summary>
    public static ValueList<WrittenMove> Of(IEnumerable<WrittenMove> moves) => moves.Select(Of).ToValueList();

    /// <summary>An ending without its places in the text.</summary>
    public static Ending? Of(Ending? ending) => ending is null ? null : ending with
    {
        Span = default,
        Line = 0,
        Body = ending.Body is { } body ? Of(body) : null,
        Claim = null,
        MoveWords = Words(ending.MoveWords),
        Verbatim = Words(ending.Verbatim),
    };

    /// <summary>A section without its places in the text.</summary>
    public static Section Of(Section section) => section with
    {
        Span = default,
        LineNumber = 0,
        Lines = section.Lines.Select(l => l with
        {
            Span = default,
            LabelSpan = default,
            Number = 0,
            Claims = default,
            LeavesWordsOut = false,
            Moves = Of(l.Moves),
            Notes = default,
            Options = default,
        }).ToValueList(),
        Notes = default,
    };

    /// <summary>A row of sequence items without their places in the text.</summary>
    public static ValueList<SequenceItem> Of(ValueList<SequenceItem> sequence, Func<string, string> tagName, Func<string, string> partName)
        => sequence.Select(i => i with { Span = default, Name = i.IsTag ? tagName(i.Name) : partName(i.Name) }).ToValueList();

    /// <summary>Words with single spaces.</summary>
    public static string Words(string words) => string.Join(' ', words.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static WrittenStep Of(WrittenStep step) => step with
    {
        Span = default,
        Line = 0,
        FootIsNamed = false,
        WeightIsStated = false,
        Count = new WrittenCount(CountGrid.LabelOf(step.Count.Place), step.Count.Place),
    };
}
