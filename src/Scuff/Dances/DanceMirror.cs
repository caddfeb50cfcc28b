using System.Text;
using Scuff.Stance;

namespace Scuff.Dances;

/// <summary>
/// A dance in the mirror: left and right exchanged in everything that is danced and claimed, and in the canonical words of
/// the moves. Her own words (titles, notes, verbatim sentences) and the places in the text stay. Twice is once back.
/// </summary>
public static class DanceMirror
{
    /// <summary>The dance with left and right exchanged.</summary>
    public static Dance Mirror(Dance dance) => dance with
    {
        Start = dance.Start.Mirrored(),
        Parts = Each(dance.Parts, p => p with { Sections = Each(p.Sections, Mirror) }),
        Tags = Each(dance.Tags, t => t with { Body = Mirror(t.Body) }),
        Interruptions = Each(dance.Interruptions, Mirror),
        Ending = Mirror(dance.Ending),
        Tracks = Each(dance.Tracks, t => t with { Interruptions = Each(t.Interruptions, Mirror), Ending = Mirror(t.Ending) }),
    };

    /// <summary>Words with left and right exchanged, letters for feet as well.</summary>
    public static string MirrorWords(string words)
    {
        StringBuilder mirrored = new(words.Length);
        int start = 0;
        for (int i = 0; i <= words.Length; i++)
        {
            if (i < words.Length && char.IsLetter(words[i]))
            {
                continue;
            }

            mirrored.Append(MirrorWord(words[start..i]));
            if (i < words.Length)
            {
                mirrored.Append(words[i]);
            }

            start = i + 1;
        }

        return mirrored.ToString();
    }

    private static ValueList<T> Each<T>(ValueList<T> items, Func<T, T> mirror) => items.Select(mirror).ToValueList();

    private static Section Mirror(Section section) => section with { Lines = Each(section.Lines, Mirror) };

    private static WrittenLine Mirror(WrittenLine line) => line with
    {
        Moves = Each(line.Moves, Mirror),
        Claims = Each(line.Claims, Mirror),
        Options = Each(line.Options, o => o with { Moves = Each(o.Moves, Mirror) }),
    };

    private static WrittenMove Mirror(WrittenMove move) => move with
    {
        Named = move.Named?.Other(),
        StatedTurn = move.StatedTurn is { } turn ? -turn : null,
        Direction = move.Direction.Mirrored(),
        Steps = Each(move.Steps, Mirror),
        Words = move.IsUnknown ? move.Words : MirrorWords(move.Words),
    };

    private static WrittenStep Mirror(WrittenStep step) => step with
    {
        Action = step.Action.Mirrored(),
        BodyAngle = -step.BodyAngle,
        With = Each(step.With, a => a.Mirrored()),
        Gesture = MirrorWords(step.Gesture),
    };

    private static Interruption Mirror(Interruption interruption) => interruption with
    {
        Acts = Each(interruption.Acts, a => a is InterruptionAct.Dance d ? d with { Body = Mirror(d.Body) } : a),
        Changes = Each(interruption.Changes, c => c with { Moves = Each(c.Moves, Mirror) }),
        Claim = interruption.Claim is { } claim ? Mirror(claim) : null,
    };

    private static Ending? Mirror(Ending? ending) => ending is null ? null : ending with
    {
        Body = ending.Body is { } body ? Mirror(body) : null,
        Claim = ending.Claim is { } claim ? Mirror(claim) : null,
        WallFacing = ending.WallFacing is { } facing ? Mirror(facing) : null,
    };

    private static FacingClaim Mirror(FacingClaim claim) => claim with { Facing = Mirror(claim.Facing) };

    private static Facing Mirror(Facing facing) => Facing.FromEighths(-facing.Eighths);

    private static string MirrorWord(string word) => word switch
    {
        "L" => "R",
        "R" => "L",
        "left" => "right",
        "right" => "left",
        _ => word,
    };
}
