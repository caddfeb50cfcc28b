using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>
/// Goes through the words of a sentence about the pattern once and gathers walls, places and what is done there. One sentence may
/// speak of several breaks. Every word is used, known to change nothing, or kept as unread, so that nothing is passed over in silence.
/// </summary>
internal sealed partial class SentenceScan
{
    private static readonly string[] WallWords = ["wall", "walls", "repetition", "repetitions", "rotation", "rotations", "time", "times", "round", "rounds"];

    private readonly SentenceWords _words;
    private readonly Dance _dance;
    private readonly Func<int, (string Name, int Used)> _tagName;
    private readonly Dances.Part? _part;
    private SentencePart _current = new();
    private bool _titled;

    private readonly Counts? _placeBefore;

    private SentenceScan(SentenceWords words, Dance dance, string partName, Func<int, (string Name, int Used)> tagName, Counts? placeBefore)
    {
        _placeBefore = placeBefore;
        _words = words;
        _dance = dance;
        _tagName = tagName;
        _part = dance.FindPart(partName) ?? (dance.Parts.Count > 0 ? dance.Parts[0] : null);
        Parts.Add(_current);
    }

    private List<SentencePart> Parts { get; } = [];

    /// <summary>What the sentence says, break by break.</summary>
    /// <param name="words">Its words, without footwork.</param>
    /// <param name="dance">The dance it is about.</param>
    /// <param name="partName">The part it names, or empty.</param>
    /// <param name="tagName">The name of a tag that begins at a place, and how many words it takes.</param>
    /// <param name="ofTag">The tag under whose steps or heading it stands, without naming it again: "once at the end of wall 3, twice at the end of wall
    /// 6".</param>
    /// <param name="placeBefore">After how many counts the break is that the sentence before tells, or null.</param>
    public static List<SentencePart> Of(SentenceWords words, Dance dance, string partName, Func<int, (string Name, int Used)> tagName, string? ofTag = null,
        Counts? placeBefore = null)
    {
        SentenceScan scan = new(words, dance, partName, tagName, placeBefore);
        if (ofTag is not null)
        {
            scan._current.Acts.Add(new InterruptionAct.PlayTag(ofTag));
        }

        int at = 0;
        while (at < words.Count)
        {
            at += Math.Max(1, scan.Step(at));
        }

        return scan.Finished();
    }

    private int Step(int at)
    {
        WordToken word = _words[at];
        if (word.Kind == WordTokenKind.Clock)
        {
            // "wall 3 (starts facing 6:00)" speaks of the wall's start, which is no claim about the break
            bool starts = Enumerable.Range(Math.Max(0, at - 3), Math.Min(3, at)).Any(i =>
                _words[i].Text.StartsWith("start", StringComparison.Ordinal) || _words[i].Text.StartsWith("begin", StringComparison.Ordinal));
            if (!starts && _current.Claim is { } told && told.Facing != Facing.FromEighths(word.Value))
            {
                // "walls 3 (3:00) and 6 (6:00)": one for each of them
                _current.ClaimsDiffer = true;
            }

            if (!starts)
            {
                _current.Claim = new FacingClaim(Facing.FromEighths(word.Value), Counts.Zero, word.Span);
            }

            return 1;
        }

        bool bracketed = _words.Is(at - 1, "[", "(") && _words.Is(at + 1, "]", ")") && word.Value is 3 or 6 or 9 or 12
            && (_words.Is(at - 2, "facing", "face", "at", "to", "wall") || _words.Is(at - 1, "["));
        if (word is { Kind: WordTokenKind.Number, Value: > 0 and < 13 } && (bracketed || _words.Is(at + 1, "o'clock", "oclock", "o’clock")))
        {
            _current.Claim = new FacingClaim(Facing.FromClock(word.Value, 0)!.Value, Counts.Zero, word.Span);
            return 2;
        }

        if (word is { Kind: WordTokenKind.Number, Value: 3 or 6 or 9 or 12 } && _words.Is(at + 1, "h", "uhr"))
        {
            // "(9H)": o'clock, as French and German teachers write it
            _current.Claim = new FacingClaim(Facing.FromClock(word.Value, 0)!.Value, Counts.Zero, word.Span);
            return 2;
        }

        if (word.Kind == WordTokenKind.Mark && word.Text is "." or ";")
        {
            if (_current.WholeWall && BeforeGoingOn(at + 1) is int onward and > 0)
            {
                // "after wall 2 do the tag. Continue with wall 3"
                return onward + 1;
            }

            if (_current.Walls.Count > 0 && NamesWallBeforeStop(at + 1))
            {
                Next();
            }

            return 1;
        }

        if (word is { Kind: WordTokenKind.Mark, Text: ":" } && Parts.Count == 1 && _current is { Acts.Count: > 0, Walls.Count: 0, After: null, WholeWall: false })
        {
            _titled = true;
            return 1;
        }

        if (_words.Is(at, "part") && _dance.FindPart(_words[at + 1].Text) is not null)
        {
            // "part A, time 2: ...": which part is known already
            return 2;
        }

        if (_words.Is(at, "every", "each") && IsWall(at + 1) && _words.ListAt(at + 2, ordinals: false).Values.Count == 0)
        {
            // "at the end of every wall": without the number of a wall, all of them are meant
            return 2;
        }

        if (_words.Is(at, "begin", "commence") && IsWall(at + 1))
        {
            return 1;
        }

        int used = TryAside(at);
        used = used > 0 ? used : TryDenial(at);
        used = used > 0 ? used : BeforeGoingOn(at);
        used = used > 0 ? used : TryWalls(at);
        used = used > 0 ? used : TryCut(at);
        used = used > 0 ? used : TryRestart(at);
        used = used > 0 ? used : TryShortWall(at);
        used = used > 0 ? used : TryToTheEnd(at);
        used = used > 0 ? used : TrySamePlace(at);
        used = used > 0 ? used : TryPlace(at);
        used = used > 0 ? used : TryTag(at);
        used = used > 0 ? used : TryOther(at);
        used = used > 0 ? used : TryExplained(at);
        if (used > 0)
        {
            return used;
        }

        bool changesNothing = word.Kind == WordTokenKind.Mark ? word.Text is not "\"" and not "?" : SentenceWords.IsFilling(word.Text);
        if (!changesNothing)
        {
            _current.Unread.Add(word);
        }

        return 1;
    }

    private void Next()
    {
        _current = new SentencePart();
        Parts.Add(_current);
    }

    /// <summary>Fills in what a part leaves to the one before it: "on wall 7 restart after 24, on wall 8 after 8".</summary>
    private List<SentencePart> Finished()
    {
        // "one restart, on wall 3 after 16 counts. You restart wall 3 facing 3:00": the same told once more
        Parts.RemoveAll(p => p.After is null && !p.WholeWall && p.Unread.Count == 0 && p.Walls.Count > 0 && Parts.IndexOf(p) > 0
            && Parts.Exists(o => Parts.IndexOf(o) < Parts.IndexOf(p) && o.After is not null && p.Walls.TrueForAll(o.Walls.Contains)
                && p.Acts.TrueForAll(o.Acts.Contains)));

        foreach (SentencePart part in Parts.Where(p => p.ClaimsDiffer && p.Walls.Count > 1))
        {
            part.Claim = null;
        }

        // "restart: 2nd wall, after count 24. (Wall begins at 9:00)": what adds nothing is no break of its own
        Parts.RemoveAll(p => Parts.IndexOf(p) > 0 && !p.HasContent && !p.WholeWall && !p.Denied && p.Times is null && p.Unread.Count == 0);

        for (int i = Parts.Count - 1; i > 0; i--)
        {
            // "restart on wall 3 and on wall 6 after 16 counts": one place, told behind the last of them
            bool actsAgain = Parts[i].Acts is [] || (_titled && Parts[i].Acts is [InterruptionAct.Restart]);
            if (actsAgain && Parts[i] is { Denied: false, After: Counts place, Walls.Count: > 0, Claim: null, Times: null }
                && Parts[i - 1] is { After: null, WholeWall: false, Walls.Count: > 0, Acts: [InterruptionAct.Restart], Claim: null, Unread.Count: 0 } open)
            {
                open.After = place;
            }
        }

        for (int i = 1; i < Parts.Count; i++)
        {
            SentencePart before = Parts[i - 1];
            SentencePart part = Parts[i];
            if (part.Walls.Count == 0)
            {
                part.Walls.AddRange(before.Walls);
            }

            if (part.Acts.Count == 0 && !part.Denied)
            {
                part.Acts.AddRange(before.Acts);
                part.SaysBridge = before.SaysBridge;
                if (part.After is null && !part.WholeWall)
                {
                    part.After = before.After;
                    part.WholeWall = before.WholeWall;
                }
            }

            if (part.Times is int times)
            {
                SetTimes(part, times);
            }
        }

        foreach (SentencePart part in Parts.Where(p => p is { SaysBridge: true, WholeWall: false, After: not null, Acts: [.., InterruptionAct.PlayTag] }))
        {
            // a bridge is put into a wall, which goes on behind it
            part.Acts.Add(new InterruptionAct.GoOn());
        }

        return Parts;
    }

    private static void SetTimes(SentencePart part, int times)
    {
        int last = part.Acts.FindLastIndex(a => a is InterruptionAct.PlayTag);
        if (last >= 0)
        {
            part.Acts[last] = ((InterruptionAct.PlayTag)part.Acts[last]) with { Times = times };
        }
    }
}
