using Scuff.Dances;
using Scuff.Prose.Words;

namespace Scuff.Prose.Reading.Sentences;

// Which walls a sentence names.
internal sealed partial class SentenceScan
{
    private bool IsWall(int at) => _words.Is(at, WallWords)
        && !(_words.Is(at, "time", "times") && _words.NumberAt(at - 1) is not null && _words.OrdinalAt(at - 2) is null);

    private bool NamesWallBeforeStop(int at)
    {
        for (int i = at; i < _words.Count && !_words.Is(i, ";"); i++)
        {
            if (_words.Is(i, ".") && !_words.Is(i - 1, "no", "nr"))
            {
                return false;
            }

            if (IsWall(i))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>"wall 3", "walls 2, 4 and 6", "the 3rd wall", "second and fourth repetition".</summary>
    private int TryWalls(int at)
    {
        (List<int> ordinals, int afterOrdinals) = _words.ListAt(at, ordinals: true);
        if (ordinals.Count > 0 && IsWall(afterOrdinals))
        {
            return Add(ordinals, afterOrdinals + 1 - at);
        }

        if (ordinals.Count > 0 && _words.Is(afterOrdinals, "restart", "tag", "bridge"))
        {
            // "1st restart: ...": which of them, not which wall
            return afterOrdinals - at;
        }

        if (ordinals.Count > 0 && _words.Is(at - 1, "the")
            && (_words.Is(at - 2, "of", "after", "on", "in", "at", "during") || (_words.Is(at - 2, "and", "&", ",") && IsWall(at - 3)))
            && NamesOrdinalWallBefore(at)
            && (afterOrdinals >= _words.Count || _words.Is(afterOrdinals, ".", ",", ";", "!", ")", "and", "then", "after", "facing", "(")))
        {
            // "at the end of the second wall and again at the end of the fifth"
            return Add(ordinals, afterOrdinals - at);
        }

        if (_words[at].Kind == WordTokenKind.Number && _words.Is(at + 1, "wall") && _words.NumberAt(at + 2) is null
            && _words.Is(at - 1, "after", "on", "in", "at", "the", "of", "during"))
        {
            // "after 4 wall", "on the 3 wall": the 4th, the 3rd
            return Add([_words[at].Value], 2);
        }

        if (!IsWall(at))
        {
            return 0;
        }

        int start = _words.Skip(at + 1, "no", "nr", "number", "#", ".", ":");
        _words.PassedClock = false;
        (List<int> walls, int end) = _words.ListAt(start, ordinals: false);
        bool tellsLength = walls.Count == 1 && start > at + 1 && _words.Is(end, "counts", "beats") && _words.NumberAt(end + 1) is null
            && _current.Walls.Count > 0;
        if (walls.Count == 0 || tellsLength)
        {
            // "wall 3 is a short wall: 16 counts"
            return 0;
        }

        _current.ClaimsDiffer |= _words.PassedClock && walls.Count > 1;

        bool begins = _words.Is(at - 1, "begin", "start", "commence", "into", "starting", "beginning") && _current.Walls.Count > 0 && walls.Count == 1
            && walls[0] == _current.Walls[^1] + 1;
        if (begins)
        {
            // "then the tag, and begin wall 3": says again what comes next
            if (_current.After is not null && !_current.Acts.Exists(a => a is InterruptionAct.Restart))
            {
                _current.Acts.Add(new InterruptionAct.Restart());
            }

            return end - at;
        }

        return Add(walls, end - at);
    }

    private bool NamesOrdinalWallBefore(int at)
    {
        for (int i = 0; i < at; i++)
        {
            if (_words.OrdinalAt(i) is (_, int used) && IsWall(i + used))
            {
                return true;
            }
        }

        return false;
    }

    private int Add(List<int> walls, int used)
    {
        walls.RemoveAll(w => w is < 1 or > 1000);
        if (_current.Walls.Count > 0 && (_current.Acts.Count > 0 || _current.After is not null) && !walls.TrueForAll(_current.Walls.Contains))
        {
            Next();
        }

        _current.Walls.AddRange(walls.Except(_current.Walls).ToList());
        return used;
    }
}
