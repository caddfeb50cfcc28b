using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

// After how many counts, or at which section.
internal sealed partial class SentenceScan
{
    /// <summary>"Leave out section 4", "omit the last 8 counts".</summary>
    private int TryCut(int at)
    {
        if (!_words.Is(at, "leave", "leaving", "omit", "omitting", "skip", "skipping", "drop", "dropping", "miss", "missing", "cut", "cutting",
            "without") || _part is null)
        {
            return 0;
        }

        if (_words.Is(at, "cut", "cutting") && _words.Is(_words.Skip(at + 1, "the"), "dance", "wall") && Names(at, "restart", "begin", "start"))
        {
            // "we cut the dance after 16 counts and begin anew"
            return 1;
        }

        int next = _words.Skip(at + 1, "out", "off", "the", "final");
        if (_words.Is(next, "last") && _words.Is(next + 1, "&"))
        {
            next++;
        }

        if (_words.Is(next, "&") && _current.After is { Value: var told } && told.IsWhole)
        {
            // "after count 16 (leave out the & that follows it)": the dance stops on the whole count
            int followed = _words.Skip(next + 1, "count", "beat", "step", "that", "which", "follows", "following", "comes", "coming", "after", "it",
                "then", "thereafter", "afterwards", "next", "straight", "directly", "immediately", "behind", "there", "is", "a", "quick");
            return (_words.NumberAt(followed) is (int count, int width16) && told == count && _words.Is(followed - 1, "after", "count", "follows")
                ? followed + width16 : followed) - at;
        }

        Counts length = _part.Length;
        Counts? after = null;
        if (_words.Is(next, "last") && _words.NumberAt(next + 1) is (int counts, int width)
            && _words.Is(next + 1 + width, "counts", "count", "beats", "steps"))
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
            bool toTheEnd = sections.Count > 0 && sections[0] > 1 && sections[^1] == _part.Sections.Count
                && sections.Zip(sections.Skip(1)).All(p => p.Second == p.First + 1);
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

    // whether an ordinal that a wall follows further on stands here
    private bool OrdinalPastWall(int at)
    {
        if (_words.OrdinalAt(at) is not (_, int used))
        {
            return false;
        }

        for (int i = at + used; i < _words.Count && i < at + used + 6; i++)
        {
            if (IsWall(i))
            {
                return true;
            }
        }

        return false;
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

    /// <summary>"Restart on wall 6, same place": where the break told before it is; "same tag again": the one told before.</summary>
    private int TrySamePlace(int at)
    {
        if (_words.Is(at, "same") && _words.Is(at + 1, "tag", "bridge", "break")
            && (_dance.Tags.Count == 1 || Parts.Exists(p => p.Acts.Exists(a => a is InterruptionAct.PlayTag))))
        {
            // "same bridge again after 16 counts of wall 4": the one that was told
            return 1;
        }

        if (!_words.Is(at, "same") || !_words.Is(at + 1, "place", "spot", "point", "count", "position", "part")
            || _current.WholeWall || (Parts.FindLast(p => p.After is not null)?.After ?? _placeBefore) is not Counts place)
        {
            return 0;
        }

        PlaceAt(place);
        return 2;
    }

    /// <summary>"after 16 counts", "first 24 counts", "counts 1-16", "after section 2", "16 counts in".</summary>
    private int TryPlace(int at)
    {
        if (_words.Is(at - 1, "add", "adds", "adding", "extra", "additional"))
        {
            // "add four counts" says how many more there are
            return 0;
        }

        int which = _words.Skip(at, "the");
        if (_words.Is(which, "first", "second", "third", "last") && _words.Is(which + 1, "one", "ones"))
        {
            // "the first one you restart facing 3:00": which of them
            _current.ClaimsDiffer = true;
            return which + 2 - at;
        }

        // "dance up to and including count 16": the "and" belongs to the place
        bool inclusive = _words.Is(at, "up") && _words.Is(at + 1, "to") && _words.Is(at + 2, "and") && _words.Is(at + 3, "including");
        int next = _words.Skip(inclusive ? at + 4 : at, "after", "following", "past", "until", "till", "up", "to", "through", "first", "dance", "dancing",
            "danced", "do", "doing", "only", "just", "the", "complete", "completing", "at", "on", "end", "of", "finish", "finishing");
        bool after = Between(at, next, "after", "following", "past", "until", "till", "first", "dance", "dancing", "danced", "do", "doing",
            "complete", "completing", "through") || (Between(at, next, "up") && Between(at, next, "to"));
        bool atEnd = Between(at, next, "end", "finish", "finishing");
        if (_words.Is(at, "between") && IsWall(_words.Skip(at + 1, "the"))
            && _words.NumberAt(_words.Skip(at + 1, "the", "wall", "walls")) is (int earlier, int earlierUsed))
        {
            // "between wall 2 and wall 3"
            int later = _words.Skip(_words.Skip(at + 1, "the", "wall", "walls") + earlierUsed, "and", "&", "the", "wall", "walls");
            if (_words.NumberAt(later) is (int following, int followingUsed) && following == earlier + 1)
            {
                Whole();
                _ = Add([earlier], 0);
                return later + followingUsed - at;
            }
        }

        if (_words.Is(at, "before") && _part is not null && _words.Is(_words.Skip(at + 1, "the"), "section")
            && _words.NumberAt(_words.Skip(at + 1, "the") + 1) is (int coming and > 1, int comingUsed) && coming <= _part.Sections.Count)
        {
            // "stop before section 4"
            PlaceAt(_part.StartOf(coming - 1));
            return _words.Skip(at + 1, "the") + 1 + comingUsed - at;
        }

        if (after && !atEnd && _words.NumberAt(next) is (int many and > 0 and < 40, int manyUsed) && _words.Is(next + manyUsed, "walls"))
        {
            // "the tag comes after 6 walls", "at the end of each of the first three walls"
            Whole();
            return Add(Between(at, next, "first") ? [.. Enumerable.Range(1, many)] : [many], next + manyUsed + 1 - at);
        }

        if ((after || atEnd) && IsWall(next))
        {
            // "after wall 2", "at the end of wall 2"
            if (Between(at, next, "after", "following", "end", "finish", "finishing")
                && (_words.NumberAt(next + 1) is not null || _words.OrdinalAt(next - 1) is not null))
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

        if (_words.Is(next, "half") && _words.Is(next - 1, "first") && _part is not null && (_part.Length.Value.Floor & 1) == 0
            && _words.NumberAt(_words.Skip(next + 1, "of", "the", "dance", "(", "wall")) is null)
        {
            // "only dance the first half, then begin again"
            PlaceAt(Counts.FromWhole(_part.Length.Value.Floor / 2));
            return _words.Skip(next + 1, "of", "the", "dance", "wall") - at;
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

            if (_part is not null && _words.Is(end, "of", "in", "from", ",") && _words.Is(_words.Skip(end + 1, "the"), "section", "sec", "s")
                && _words.NumberAt(_words.Skip(end + 1, "the") + 1) is (int own and > 0, int ownUsed) && own <= _part.Sections.Count
                && Counts.FromWhole(last) <= _part.Sections[own - 1].Length)
            {
                // "up to count 6 of section 2"
                last += _part.StartOf(own - 1).Value.Floor;
                end = _words.Skip(end + 1, "the") + 1 + ownUsed;
            }

            return PlaceAt(last, ref end) ? end - at : 0;
        }

        if (_words.Is(next - 1, "following") && _words.Is(next - 2, "the", "these"))
        {
            // "add the following 4 counts": what is put in, not where
            return 0;
        }

        (int Value, int Used)? number = _words.NumberAt(next);
        if (_words.OrdinalAt(next) is (int nth, int nthUsed) && _words.Is(next + nthUsed, "count", "beat"))
        {
            int end = next + nthUsed + 1;
            return (after || atEnd) && PlaceAt(nth, ref end) ? end - at : 0;
        }

        if (number is not null && OrdinalPastWall(next))
        {
            // "after the end of the 2nd and of the 6th wall": no place of two counts
            number = null;
        }

        if (after && number is null && NamedPlace(next) is (Counts named, int behind))
        {
            // "dance up to the touch (count 16)"
            PlaceAt(named);
            return behind - at;
        }

        if (number is (int eights and > 0 and < 12, int eightsUsed) && after && EightsAt(next + eightsUsed) is int over and > 0)
        {
            // "after 2 x 8", "after two eights"
            PlaceAt(Counts.FromWhole(eights * 8));
            return over - at;
        }

        if (number is (1, int one) && after && _words.Is(next + one, "-", "to") && _words.NumberAt(next + one + 1) is (int until and > 3, int untilUsed)
            && !_words.Is(next + one + 1 + untilUsed, "o'clock", "h", "x"))
        {
            // "dance 1-16, then restart"
            int beyond = next + one + 1 + untilUsed;
            return PlaceAt(until, ref beyond) ? beyond - at : 0;
        }

        if (_words.Is(at, "at") && _words.NumberAt(at + 1) is (int bare and >= 4, 1) && bare % 4 == 0 && _words[at + 1].Kind == WordTokenKind.Number
            && (at + 2 >= _words.Count || _words.Is(at + 2, "(", ",")) && _current is { Walls.Count: > 0, After: null, WholeWall: false }
            && _current.Acts.Exists(a => a is Dances.InterruptionAct.Restart))
        {
            // "restart in 3rd wall at 16 (12h)"
            int beyond = at + 2;
            return PlaceAt(bare, ref beyond) ? 2 : 0;
        }

        if (number is (int value, int used))
        {
            int end = next + used;
            if (_words.Is(end, "extra", "additional") && IsOnlyTag(value))
            {
                // "dance the 4 extra counts after wall 4"
                return next - at;
            }

            bool half = _words.Is(end, "&");
            int beyond = _words.Skip(end + (half ? 1 : 0), "-", "first");
            bool counts = _words.Is(beyond, "count", "counts", "beats", "steps");
            // "wall 5: after 16 counts tag": where it is put in, and not how long it is
            bool before = after && next == at + 1 && _words.Is(beyond, "counts", "beats") && _current is { After: null, WholeWall: false }
                && !IsOnlyTag(value);
            bool ofTag = counts && ((_words.Is(beyond + 1, "tag", "bridge") && !before) || _words.Is(_words.Skip(next - 1, "("), "tag")
                || (!after && IsAfterTag(at))
                || (_words.Is(beyond + 1, ":") && !after)
                || (_current.WholeWall && !after && _current.Acts.Exists(a => a is Dances.InterruptionAct.PlayTag)));
            if (ofTag)
            {
                // "4 count tag", "tag (4 counts)", "tag after wall 2, 4 counts: ..."
                return beyond + 1 - at;
            }

            bool into = counts && _words.Is(beyond + 1, "into", "in", "of", "then", "and", ",", "later", "through", "done", "danced", "gone", "completed")
                && !_words.Is(next - 1, "hold", "wait", "for", "add", "the", "last");
            bool places = after ? !IsWall(next - 1) : into
                || (counts && beyond + 1 >= _words.Count && at > 0 && _words.Is(at - 1, ",", "wall", "(", ":"));
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

    // "x 8", "eights", "sets of 8", "8s" behind how many of them: the place after it, or 0
    private int EightsAt(int at)
    {
        if (_words.Is(at, "x", "times") && _words.NumberAt(at + 1) is (8, int width) && !_words.Is(at + 1 + width, "counts", "count"))
        {
            return at + 1 + width;
        }

        if (_words.Is(at, "eights"))
        {
            return at + 1;
        }

        return _words.Is(at, "sets", "sections") && _words.Is(at + 1, "of") && _words.NumberAt(at + 2) is (8, int used) ? at + 2 + used : 0;
    }

    // the count in brackets behind a few words that name the step there
    private (Counts Place, int End)? NamedPlace(int at)
    {
        for (int open = at + 1; open < at + 5 && open < _words.Count; open++)
        {
            if (_words.Is(open, "("))
            {
                return _words.Is(open + 1, "count", "counts") && _words.NumberAt(open + 2) is (int count and > 0 and < 1000, int used)
                    && _words.Is(open + 2 + used, ")")
                    ? (Counts.FromWhole(count), open + 3 + used) : null;
            }

            if (_words[open].Kind != WordTokenKind.Word)
            {
                return null;
            }
        }

        return null;
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
            if (listed.Count == 0 && Between(at, next, "first") && _part.Sections.Count > 0)
            {
                // "after the first section of wall 3"
                listed.Add(1);
                end = next + 1;
            }

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
        while (before >= 0 && (_words.Is(before, "(", ",", ":", "of", "-", "–", "for")
            || (_words[before].Kind == WordTokenKind.Number && _words.Is(before - 1, "tag", "bridge"))))
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
}
