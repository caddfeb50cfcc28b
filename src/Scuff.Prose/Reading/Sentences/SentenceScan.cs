using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

/// <summary>
/// Goes through the words of a sentence about the pattern once and gathers walls, places and what is done there. One sentence may
/// speak of several breaks. Every word is used, known to change nothing, or kept as unread, so that nothing is passed over in silence.
/// </summary>
internal sealed class SentenceScan
{
    private static readonly string[] WallWords = ["wall", "walls", "repetition", "repetitions", "rotation", "rotations", "time", "times", "round"];

    private readonly SentenceWords _words;
    private readonly Dance _dance;
    private readonly Func<int, (string Name, int Used)> _tagName;
    private readonly Dances.Part? _part;
    private SentencePart _current = new();

    private SentenceScan(SentenceWords words, Dance dance, string partName, Func<int, (string Name, int Used)> tagName)
    {
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
    public static List<SentencePart> Of(SentenceWords words, Dance dance, string partName, Func<int, (string Name, int Used)> tagName)
    {
        SentenceScan scan = new(words, dance, partName, tagName);
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
            bool starts = Enumerable.Range(Math.Max(0, at - 3), Math.Min(3, at)).Any(i => _words[i].Text.StartsWith("start", StringComparison.Ordinal) || _words[i].Text.StartsWith("begin", StringComparison.Ordinal));
            if (!starts)
            {
                _current.Claim = new FacingClaim(Facing.FromEighths(word.Value), Counts.Zero, word.Span);
            }

            return 1;
        }

        if (word.Kind == WordTokenKind.Mark && word.Text is "." or ";")
        {
            if (_current.Walls.Count > 0 && NamesWallBeforeStop(at + 1))
            {
                Next();
            }

            return 1;
        }

        int used = TryDenial(at);
        used = used > 0 ? used : TryWalls(at);
        used = used > 0 ? used : TryCut(at);
        used = used > 0 ? used : TryRestart(at);
        used = used > 0 ? used : TryPlace(at);
        used = used > 0 ? used : TryTag(at);
        used = used > 0 ? used : TryOther(at);
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

    private bool IsWall(int at) => _words.Is(at, WallWords) && !(_words.Is(at, "time", "times") && _words.NumberAt(at - 1) is not null && _words.OrdinalAt(at - 2) is null);

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

    /// <summary>"No tags, no restarts".</summary>
    private int TryDenial(int at)
    {
        if (!_words.Is(at, "no", "without", "not"))
        {
            return 0;
        }

        int next = _words.Skip(at + 1, "any", "a");
        if (!_words.Is(next, "tag", "tags", "restart", "restarts", "bridge", "bridges"))
        {
            if (!_words.Is(at, "no") || _words[at + 1].Kind != WordTokenKind.Number)
            {
                _current.Unread.Add(_words[at]);
            }

            return 1;
        }

        _current.Denied = true;
        next++;
        while (_words.Is(next, "or", "and", "/", ",") && _words.Is(_words.Skip(next + 1, "no"), "tag", "tags", "restart", "restarts", "bridge", "bridges"))
        {
            next = _words.Skip(next + 1, "no") + 1;
        }

        return next - at;
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

        if (!IsWall(at))
        {
            return 0;
        }

        int start = _words.Skip(at + 1, "no", "nr", "number", "#", ".", ":");
        (List<int> walls, int end) = _words.ListAt(start, ordinals: false);
        if (walls.Count == 0)
        {
            return 0;
        }

        bool begins = _words.Is(at - 1, "begin", "start", "commence", "into") && _current.Walls.Count > 0 && walls.Count == 1 && walls[0] == _current.Walls[^1] + 1;
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

    /// <summary>"Leave out section 4", "omit the last 8 counts".</summary>
    private int TryCut(int at)
    {
        if (!_words.Is(at, "leave", "leaving", "omit", "omitting", "skip", "skipping", "drop", "dropping", "miss", "missing", "cut", "cutting", "without") || _part is null)
        {
            return 0;
        }

        int next = _words.Skip(at + 1, "out", "off", "the", "final");
        Counts length = _part.Length;
        Counts? after = null;
        if (_words.Is(next, "last") && _words.NumberAt(next + 1) is (int counts, int width) && _words.Is(next + 1 + width, "counts", "count", "beats", "steps"))
        {
            after = length - Counts.FromWhole(Math.Min(counts, 4000));
            next += width + 2;
        }
        else if (_words.Is(next, "last") && _words.Is(next + 1, "section") && _part.Sections.Count > 1)
        {
            after = _part.StartOf(_part.Sections.Count - 1);
            next += 2;
        }
        else if (_words.Is(next, "section", "sections"))
        {
            (List<int> sections, int end) = _words.ListAt(next + 1, ordinals: false);
            bool toTheEnd = sections.Count > 0 && sections[0] > 1 && sections[^1] == _part.Sections.Count && sections.Zip(sections.Skip(1)).All(p => p.Second == p.First + 1);
            after = toTheEnd ? _part.StartOf(sections[0] - 1) : null;
            next = end;
        }

        if (after is not Counts place || place <= Counts.Zero)
        {
            _current.Unread.Add(_words[at]);
            return 1;
        }

        PlaceAt(place);
        AddRestart();
        return next - at;
    }

    private void AddRestart()
    {
        if (!_current.Acts.Exists(a => a is InterruptionAct.Restart))
        {
            _current.Acts.Add(new InterruptionAct.Restart());
        }
    }

    private void PlaceAt(Counts place)
    {
        if (_current.After is Counts before && before != place)
        {
            // "wall 3: after 8 tag, after 16 restart"
            if (_current.Acts.Count > 0)
            {
                Next();
            }
            else
            {
                _current.Unread.Add(_words[0]);
            }
        }

        _current.After = place;
    }

    private int TryRestart(int at)
    {
        if (_words[at].Text.StartsWith("restart", StringComparison.Ordinal) && _words[at].Text is "restart" or "restarts" or "restarted" or "restarting")
        {
            if (_words.NumberAt(at - 1) is (> 1, _) && _current.Walls.Count == 0 && !_words.Is(at - 2, "wall", "walls", "after", "count") && Names(at + 1, "wall", "walls"))
            {
                // "2 restarts: wall 3 ..."
                AddRestart();
                return 1;
            }

            Before(at);
            AddRestart();
            return 1 + (_words.Skip(at + 1, "the", "dance", "from", "beginning", "again", "top", "start") - at - 1);
        }

        if (_words.Is(at, "start", "begin", "commence", "starting", "beginning", "back", "go"))
        {
            int next = _words.Skip(at + 1, "back", "the", "dance", "all", "whole", "to", "your");
            bool again = _words.Is(next, "again", "over", "anew", "afresh") || (_words.Is(next, "from") && !_words.Is(_words.Skip(next + 1, "the"), "count", "section", "where"))
                || (_words.Is(next, "from") && _words.Is(next + 1, "count") && _words.NumberAt(next + 2) is (1, _))
                || (_words.Is(at, "back", "go") && next > at + 1 && _words.Is(next, "start", "beginning", "top"));
            if (again)
            {
                Before(at);
                AddRestart();
                return _words.Skip(next, "again", "over", "anew", "afresh", "from", "the", "beginning", "start", "top", "count", "1", "dance", "whole") - at;
            }
        }

        return 0;
    }

    private bool Names(int from, params ReadOnlySpan<string> words)
    {
        for (int i = from; i < _words.Count; i++)
        {
            if (_words.Is(i, words))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Opens a new part when an act is followed by a wall of its own: "restart on wall 3 after 16, tag after wall 5".</summary>
    private void Before(int at)
    {
        if (_current.Walls.Count == 0 || _current.Acts.Count == 0)
        {
            return;
        }

        for (int i = at + 1; i < _words.Count; i++)
        {
            if (_words.Is(i, "tag", "bridge", "restart", ".", ";", "begin", "start"))
            {
                return;
            }

            if (IsWall(i))
            {
                Next();
                return;
            }
        }
    }

    /// <summary>"after 16 counts", "first 24 counts", "counts 1-16", "after section 2", "16 counts in".</summary>
    private int TryPlace(int at)
    {
        int next = _words.Skip(at, "after", "following", "past", "until", "till", "up", "to", "through", "first", "dance", "dancing", "danced", "do", "doing", "only", "just", "the", "complete", "completing", "at", "on", "end", "of", "finish", "finishing");
        bool after = Between(at, next, "after", "following", "past", "until", "till", "first", "dance", "dancing", "danced", "do", "doing", "complete", "completing", "through") || (Between(at, next, "up") && Between(at, next, "to"));
        bool atEnd = Between(at, next, "end", "finish", "finishing");
        if ((after || atEnd) && IsWall(next))
        {
            // "after wall 2", "at the end of wall 2"
            if (Between(at, next, "after", "following", "end", "finish", "finishing") && (_words.NumberAt(next + 1) is not null || _words.OrdinalAt(next - 1) is not null))
            {
                Whole();
            }

            return next - at;
        }

        if ((after || atEnd) && _words.OrdinalAt(next) is not null && IsWall(_words.ListAt(next, ordinals: true).End))
        {
            if (Between(at, next, "after", "following", "end", "finish", "finishing"))
            {
                Whole();
            }

            return next - at;
        }

        if (atEnd && (_words.Is(next, "dance", "every", "each") || next >= _words.Count))
        {
            Whole();
            return Math.Max(1, next - at);
        }

        if (SectionPlace(at, next, after) is int ofSection and > 0)
        {
            return ofSection;
        }

        // "count 16", "counts 1-16"
        if (_words.Is(next, "count", "counts", "beat", "beats") && _words.NumberAt(next + 1) is (int first, int firstUsed))
        {
            int end = next + 1 + firstUsed;
            int last = first;
            if (_words.Is(end, "-", "to", "through") && _words.NumberAt(end + 1) is (int to, int toUsed))
            {
                last = to;
                end += 1 + toUsed;
                if (first != 1)
                {
                    return Unread(at, end);
                }
            }
            else if (Between(at, next, "on", "at") && !after && last % 4 != 0)
            {
                // "restart on count 17": before it, or with it?
                return Unread(at, end);
            }

            return PlaceAt(last, ref end) ? end - at : 0;
        }

        (int Value, int Used)? number = _words.NumberAt(next);
        if (_words.OrdinalAt(next) is (int nth, int nthUsed) && _words.Is(next + nthUsed, "count", "beat"))
        {
            int end = next + nthUsed + 1;
            return (after || atEnd) && PlaceAt(nth, ref end) ? end - at : 0;
        }

        if (number is (int value, int used))
        {
            int end = next + used;
            bool half = _words.Is(end, "&");
            int beyond = _words.Skip(end + (half ? 1 : 0), "-");
            bool counts = _words.Is(beyond, "count", "counts", "beats", "steps");
            bool ofTag = counts && (_words.Is(beyond + 1, "tag", "bridge") || _words.Is(_words.Skip(next - 1, "("), "tag") || IsAfterTag(at) || _words.Is(beyond + 1, ":"));
            if (ofTag)
            {
                // "4 count tag", "tag (4 counts)", "tag after wall 2, 4 counts: ..."
                return beyond + 1 - at;
            }

            bool into = counts && _words.Is(beyond + 1, "into", "in", "of", "then", "and", ",", "later", "through") && !_words.Is(next - 1, "hold", "wait", "for", "add", "the", "last");
            bool places = after ? !IsWall(next - 1) : into || (counts && beyond + 1 >= _words.Count && at > 0 && _words.Is(at - 1, ",", "wall", "(", ":"));
            if (counts && !places && _words.Is(_words.Skip(beyond + 1, ")"), "restart", "then") && _current.Walls.Count > 0)
            {
                places = true;
            }

            if (!places)
            {
                return 0;
            }

            end = half && !counts ? end + 1 : end;
            if (half)
            {
                // "after 16&": the half after it
                end = beyond;
                PlaceAt(Counts.FromWhole(value) + Counts.Half);
                return (counts ? beyond + 1 : beyond) - at;
            }

            return PlaceAt(value, ref end) ? (counts ? beyond + 1 : end) - at : 0;
        }

        return 0;
    }

    private int SectionPlace(int at, int next, bool after)
    {
        if (_part is null)
        {
            return 0;
        }

        bool atEnd = Between(at, next, "end", "finish", "finishing");
        if (!after && !atEnd)
        {
            return 0;
        }

        int section;
        int end;
        if (_words.Is(next, "section", "sections", "sec", "s"))
        {
            (List<int> listed, end) = _words.ListAt(_words.Skip(next + 1, ".", "#"), ordinals: false);
            if (listed.Count == 0)
            {
                return 0;
            }

            section = listed.Max();
        }
        else if (_words.OrdinalAt(next) is (int nth, int nthUsed) && _words.Is(next + nthUsed, "section"))
        {
            section = nth;
            end = next + nthUsed + 1;
        }
        else if (_words.NumberAt(next) is (int many, int manyUsed) && _words.Is(next + manyUsed, "sections", "section"))
        {
            section = many;
            end = next + manyUsed + 1;
        }
        else if (Between(at, next, "first") && _words.Is(next, "section"))
        {
            section = 1;
            end = next + 1;
        }
        else
        {
            return 0;
        }

        if (section < 1 || section > _part.Sections.Count)
        {
            return Unread(at, end);
        }

        PlaceAt(_part.StartOf(section));
        return end - at;
    }

    private bool PlaceAt(int value, ref int end)
    {
        if (value is < 1 or > 4000)
        {
            return false;
        }

        PlaceAt(Counts.FromWhole(value));
        return end > 0;
    }

    /// <summary>The wall is danced to its end; a tag told before it stays with it.</summary>
    private void Whole()
    {
        if (_current.Walls.Count > 0 && (_current.WholeWall || _current.After is not null) && _current.Acts.Count > 0)
        {
            Next();
        }

        _current.WholeWall = true;
    }

    private bool IsAfterTag(int at)
    {
        int before = at - 1;
        while (before >= 0 && _words.Is(before, "(", ",", ":", "of", "-", "for"))
        {
            before--;
        }

        return _words.Is(before, "tag", "bridge");
    }

    private bool Between(int from, int to, params ReadOnlySpan<string> words)
    {
        for (int i = from; i < to; i++)
        {
            if (_words.Is(i, words))
            {
                return true;
            }
        }

        return false;
    }

    private int Unread(int from, int to)
    {
        for (int i = from; i < to; i++)
        {
            if (_words[i].Kind != WordTokenKind.Mark)
            {
                _current.Unread.Add(_words[i]);
            }
        }

        return to - from;
    }

    private int TryTag(int at)
    {
        if (!_words.Is(at, "tag", "tags", "bridge", "bridges"))
        {
            return 0;
        }

        (string name, int used) = _tagName(at + 1);
        bool again = name.Length == 0 && _current.Acts.Count > 0 && _current.Acts[^1] is InterruptionAct.PlayTag && !_words.Is(at - 1, "then", "and", "again");
        if (!again)
        {
            Before(at);
            _current.Acts.Add(new InterruptionAct.PlayTag(name));
            if (_current.Times is int times)
            {
                SetTimes(_current, times);
            }
        }

        return used + 1;
    }

    /// <summary>How often, waiting, going on, and counts of the dance quoted.</summary>
    private int TryOther(int at)
    {
        if (TimesAt(at) is (int times, int timesUsed))
        {
            if (_words.Is(at - 1, "and", ",", "but", "also"))
            {
                // "after wall 1, and twice after wall 6"
                Before(at);
            }

            _current.Times = times;
            SetTimes(_current, times);
            return timesUsed;
        }

        if (_words.Is(at, "hold", "wait", "pause", "holding", "waiting"))
        {
            int number = _words.Skip(at + 1, "for", "still", "the");
            if (_words.NumberAt(number) is (int counts and > 0 and < 1000, int used))
            {
                Before(at);
                _current.Acts.Add(new InterruptionAct.Wait(Counts.FromWhole(counts)));
                return _words.Skip(number + used, "counts", "count", "beats") - at;
            }

            return 0;
        }

        if (_words.Is(at, "continue", "continuing", "carry", "resume", "resuming") || (_words.Is(at, "go", "going") && _words.Is(at + 1, "on")))
        {
            if (_current.Acts.Count > 0)
            {
                _current.Acts.Add(new InterruptionAct.GoOn());
            }

            return GoOnEnd(at + 1) - at;
        }

        if (_words.Is(at, "section", "sections") && _current.Acts.Count > 0 && QuoteAt(at, out int end) is InterruptionAct.Quote quote)
        {
            _current.Acts.Add(quote);
            return end + 1 - at;
        }

        if (_words.NumberAt(at) is (int many, int width) && _words.Is(_words.Skip(at + width, "easy", "simple", "short"), "tag", "tags", "restart", "restarts", "bridge", "bridges"))
        {
            // "there is 1 restart": how many there are
            return many > 0 ? width : 0;
        }

        bool ofTag = _words.NumberAt(at) is (int extra, int extraUsed) && _words.Is(at + extraUsed, "count", "counts") && extra > 0 && _words.Is(at - 1, "add", "the", "these", "extra", "following", "with", "of", "a", "an") && (_current.Acts.Exists(a => a is InterruptionAct.PlayTag) || IsOnlyTag(extra));
        if (ofTag)
        {
            if (!_current.Acts.Exists(a => a is InterruptionAct.PlayTag))
            {
                _current.Acts.Add(new InterruptionAct.PlayTag(""));
            }

            return 2;
        }

        return 0;
    }

    private bool IsOnlyTag(int counts) => _dance.Tags.Count == 1 && (_dance.Tags[0].ClaimedLength ?? _dance.Tags[0].Body.Length) == Counts.FromWhole(counts);

    private (int Times, int Used)? TimesAt(int at)
    {
        if (_words.Is(at, "twice", "x2"))
        {
            return (2, 1);
        }

        if (_words.Is(at, "x3", "thrice"))
        {
            return (3, 1);
        }

        if (_words.Is(at, "once") && _current.Acts.Exists(a => a is InterruptionAct.PlayTag))
        {
            return (1, 1);
        }

        if (_words.NumberAt(at) is (int times and > 0 and < 9, int used) && _words.Is(at + used, "times", "x"))
        {
            return (times, used + 1);
        }

        return _words.Is(at, "x") && _words.NumberAt(at + 1) is (int after and > 0 and < 9, int width) ? (after, width + 1) : null;
    }

    /// <summary>The place after "go on with count 17", "carry on from where you left off".</summary>
    private int GoOnEnd(int at)
    {
        int end = _words.Skip(at, "on", "with", "from", "at", "the", "dance", "dancing", "where", "you", "left", "off", "rest", "of", "normal", "normally", "as", "usual", "to", "end");
        if (_words.Is(end, "count", "counts", "section", "sections") && _words.NumberAt(end + 1) is (_, int used))
        {
            end += 1 + used;
            if (_words.Is(end, "-", "to") && _words.NumberAt(end + 1) is (_, int more))
            {
                end += 1 + more;
            }
        }

        return end;
    }

    private InterruptionAct.Quote? QuoteAt(int at, out int end)
    {
        end = at;
        if (_words.NumberAt(at + 1) is not (int section, int sectionUsed) || _part is null || section < 1 || section > _part.Sections.Count)
        {
            return null;
        }

        end = at + sectionUsed;
        int from = 1;
        int to = _part.Sections[section - 1].Length.Value.Floor;
        int next = _words.Skip(end + 1, ",", "counts", "count", "(");
        if (_words.NumberAt(next) is (int first, int firstUsed))
        {
            from = first;
            to = first;
            end = next + firstUsed - 1;
            if (_words.Is(end + 1, "-", "to") && _words.NumberAt(end + 2) is (int last, int lastUsed))
            {
                to = last;
                end += 1 + lastUsed;
            }
        }

        return from < 1 || to < from || to > 1000 ? null : new InterruptionAct.Quote("", section, new CountSpan(Counts.FromWhole(from - 1), Counts.FromWhole(to)));
    }
}
