using Scuff.Analysis.Calls;

namespace Scuff.App.Calling;

/// <summary>The words for how much is called, and for what a call is.</summary>
internal static class HelpWords
{
    private static readonly (string Word, CallHelp Help)[] Helps =
    [
        ("every-step", CallHelp.EveryStep), ("headings", CallHelp.Headings), ("warnings", CallHelp.Warnings), ("silent", CallHelp.Silent),
    ];

    /// <summary>All words.</summary>
    public static IEnumerable<string> All => Helps.Select(h => h.Word);

    /// <summary>How much words mean, wall by wall; null, with the word that means nothing, where one does not.</summary>
    public static ValueList<CallHelp>? Read(IReadOnlyList<string> words, out string? unknown)
    {
        List<CallHelp> read = [];
        foreach (string word in words)
        {
            int found = Array.FindIndex(Helps, h => h.Word == word.Trim());
            if (found < 0)
            {
                unknown = word;
                return null;
            }

            read.Add(Helps[found].Help);
        }

        unknown = null;
        return read.ToValueList();
    }

    /// <summary>The word for a kind of call.</summary>
    public static string Of(CallKind kind) => kind switch
    {
        CallKind.CountIn => "count-in",
        CallKind.Move => "move",
        CallKind.Heading => "heading",
        CallKind.Tag => "tag",
        CallKind.Restart => "restart",
        CallKind.NewWall => "new-wall",
        CallKind.LastOne => "last-one",
        CallKind.Ending => "ending",
        CallKind.Wait => "wait",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
