using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Timing;

namespace Scuff.Prose.Reading.Sentences;

// What is done there: tags, restarts, waiting, going on, and counts that are quoted.
internal sealed partial class SentenceScan
{
    /// <summary>"No tags, no restarts".</summary>
    private int TryDenial(int at)
    {
        if (_words.Is(at, "tag", "tags", "restart", "restarts", "bridge", "bridges") && _words.Is(at + 1, ":", "-", "–", "=")
            && _words.Is(at + 2, "none", "no", "nil", "0", "zero") && !_words.Is(at + 3, "tag", "tags", "restart", "restarts"))
        {
            // "Tags: none  Restarts: none"
            _current.Denied = true;
            return 3;
        }

        if (!_words.Is(at, "no", "without", "not"))
        {
            return 0;
        }

        if (_words.Is(at + 1, "worries", "problem", "panic", "matter"))
        {
            return 2;
        }

        if (_words.Is(at, "without") && _words.Is(_words.Skip(at + 1, "the"), "&"))
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
        while (_words.Is(next, "or", "and", "/", ",")
            && _words.Is(_words.Skip(next + 1, "no"), "tag", "tags", "restart", "restarts", "bridge", "bridges"))
        {
            next = _words.Skip(next + 1, "no") + 1;
        }

        return next - at;
    }

    private void AddRestart()
    {
        if (!_current.Acts.Exists(a => a is InterruptionAct.Restart))
        {
            _current.Acts.Add(new InterruptionAct.Restart());
        }
    }

    private int TryRestart(int at)
    {
        if (_words[at].Text.StartsWith("restart", StringComparison.Ordinal)
            && _words[at].Text is "restart" or "restarts" or "restarted" or "restarting")
        {
            if (_words.NumberAt(at - 1) is ( > 1, _) && _current.Walls.Count == 0 && !_words.Is(at - 2, "wall", "walls", "after", "count")
                && Names(at + 1, "wall", "walls"))
            {
                // "2 restarts: wall 3 ..."
                AddRestart();
                return 1;
            }

            Before(at);
            AddRestart();
            if (_words.Is(at + 1, "#") && _words.NumberAt(at + 2) is ( < 10, 1))
            {
                // "restart #1: wall 4 ..."
                return 3;
            }

            if (_words.NumberAt(at + 1) is ( < 10, int one) && _words.Is(at + 1 + one, ":", "-", ",", ".", "on", "in", "is", "=")
                && Names(at + 2, "wall", "walls"))
            {
                // "restart 1: wall 2 after 16 counts": which of them
                return 1 + one;
            }

            if (HowMany(at + 1) is int told and > 0)
            {
                return 1 + told;
            }

            // "restart the dance from count 1": where every restart begins, and no place to restart at
            int end = _words.Skip(at + 1, "the", "dance", "from", "beginning", "again", "top", "start");
            int count = _words.Skip(end, "at", "with");
            return (_words.Is(count, "count", "counts") && _words.NumberAt(count + 1) is (1, int used) ? count + 1 + used : end) - at;
        }

        if (_words.Is(at, "start", "begin", "commence", "starting", "beginning", "back", "go"))
        {
            int next = _words.Skip(at + 1, "back", "the", "dance", "all", "whole", "to", "your", "straight", "right", "directly", "immediately", "on");
            bool again = _words.Is(next, "again", "over", "anew", "afresh")
                || (_words.Is(next, "from") && !_words.Is(_words.Skip(next + 1, "the"), "count", "section", "where"))
                || (_words.Is(next, "from") && _words.Is(next + 1, "count") && _words.NumberAt(next + 2) is (1, _))
                || (_words.Is(at, "back", "go") && next > at + 1 && _words.Is(next, "start", "beginning", "top"))
                || (_words.Is(at, "back", "go") && Between(at, next, "back") && Between(at, next, "to") && _words.Is(next, "count")
                    && _words.NumberAt(next + 1) is (1, _));
            if (again)
            {
                if (!(_current.WholeWall && _current.Acts.Exists(a => a is InterruptionAct.PlayTag)))
                {
                    // after a tag at the end of a wall the dance begins again anyway
                    Before(at);
                    AddRestart();
                }

                return _words.Skip(next, "again", "over", "anew", "afresh", "from", "the", "beginning", "start", "top", "count", "1", "dance",
                    "whole") - at;
            }
        }

        return 0;
    }

    // "restart: 1 (wall 2)", "tag/restart: 1, during wall 5": a number behind a colon says how many there are
    private int HowMany(int at) => _words.NumberAt(at) is ( < 10, int bare) && _words.Is(at + bare, "(") ? bare : _words.Is(at, ":", "|")
        && _words.NumberAt(at + 1) is ( < 10, int one)
        && (_words.Is(at + 1 + one, "(", ",", "-", "–", ".", "in", "on", "during", "at") || (_words.Is(at + 1 + one, "x")
        && _words.Is(at + 2 + one, "(", ",", "-", "on", "in", "during")))
        ? 1 + one : 0;

    /// <summary>"Walls 3 and 6 are only 16 counts long".</summary>
    private int TryShortWall(int at)
    {
        if (_current.Walls.Count == 0 || _current.Acts.Count > 0)
        {
            return 0;
        }

        int number = _words.Skip(at + 1, "only", "just");
        if (_words.Is(at, "is", "are", "has", "have", "lasts") && number > at + 1 && _words.NumberAt(number) is (int counts and > 0 and < 1000, int used)
            && _words.Is(number + used, "counts", "count", "beats") && !_words.Is(number + used + 1, "tag", "bridge"))
        {
            PlaceAt(Counts.FromWhole(counts));
            AddRestart();
            return _words.Skip(number + used, "counts", "count", "beats", "long") - at;
        }

        return 0;
    }

    /// <summary>"... then dance to the end": nothing breaks there.</summary>
    private int TryToTheEnd(int at)
    {
        if (_current.Acts.Count == 0 || !_words.Is(at, "dance", "dancing", "keep", "play", "through"))
        {
            return 0;
        }

        int next = _words.Skip(at + 1, "on", "dancing", "right", "it", "through", "to", "until", "till", "the", "end", "of", "song", "music", "track", "dance");
        return Between(at + 1, next, "to", "until", "till") && Between(at + 1, next, "end") && !IsWall(next) ? next - at : 0;
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
        _current.ActFirst |= _current is { Acts.Count: 0, Walls.Count: 0, After: null, WholeWall: false };
        if (_current is { Acts.Count: 0, Walls.Count: > 0 } && (_current.After is not null || _current.WholeWall) && Parts.Count > 1
            && Parts[^2] is { ActFirst: true, Acts.Count: > 0 } && WallFollows(at))
        {
            // "restart on wall 2 after 16 counts and again on wall 5 after 16 counts and then a tag at the end of wall 6"
            Next();
            _current.ActFirst = true;
            return;
        }

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

    /// <summary>Whether a wall stands behind an act with nothing but words between them, no comma and no other act.</summary>
    private bool WallFollows(int at)
    {
        for (int i = at + 1; i < _words.Count; i++)
        {
            if (IsWall(i))
            {
                return true;
            }

            bool ends = _words[i].Kind == WordTokenKind.Mark && !_words.Is(i, "(", "#", "-");
            if (ends || _words.Is(i, "tag", "bridge", "restart", "begin", "start", "and", "then"))
            {
                return false;
            }
        }

        return false;
    }

    private int TryTag(int at)
    {
        if (!_words.Is(at, "tag", "tags", "bridge", "bridges"))
        {
            return 0;
        }

        if (_words.NumberAt(at + 1) is (int often and > 1 and < 9, 1) && _words.Is(at + 2, "x", "times"))
        {
            // "tag 2x after wall 3"
            Before(at);
            _current.Acts.Add(new InterruptionAct.PlayTag(""));
            _current.Times = often;
            SetTimes(_current, often);
            return 3;
        }

        if (_words.Is(at + 1, "of") && _words.NumberAt(at + 2) is ( > 1 and < 33, int width) && _words.Is(at + 2 + width, "times", "tempos", "tempi"))
        {
            // "tag of 4 times": how long it is, as Portuguese and Spanish count
            Before(at);
            _current.Acts.Add(new InterruptionAct.PlayTag(""));
            return 3 + width;
        }

        (string name, int used) = HowMany(at + 1) is int told and > 0 ? ("", told) : _tagName(at + 1);
        bool again = name.Length == 0 && _current.Acts.Count > 0 && _current.Acts[^1] is InterruptionAct.PlayTag
            && !_words.Is(at - 1, "then", "and", "again");
        if (name.Length == 0 && _titled && _current.Acts is [InterruptionAct.PlayTag { Name: "" }, ..])
        {
            // "Tag and restart: on wall 4 after 16 counts dance the tag, then restart": the title said so already
            _titled = false;
            again = true;
        }

        if (!again)
        {
            Before(at);
            _current.Acts.Add(new InterruptionAct.PlayTag(name));
            _current.SaysBridge = _words.Is(at, "bridge", "bridges");
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
        if (_words.Is(at, "both", "each", "every", "all") && _words.Is(at + 1, "times", "time"))
        {
            // "both times facing 12:00"
            return 2;
        }

        if (_words.Is(at, "both", "each") && _words.Is(at + 1, "after", "following"))
        {
            // "restarts: wall 2, wall 5, each after 16 counts"
            return 1;
        }

        if (_words.Is(at, "before") && _words.Is(at + 1, "starting", "beginning", "start", "you"))
        {
            // "dance the tag before starting wall 5"
            return 1;
        }

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
            if (_current.Acts.Count > 0 && !_current.Acts.Exists(a => a is InterruptionAct.Restart))
            {
                // who starts again from the top cannot go on from there as well: "restart on wall 3 after 16 counts, then continue as normal"
                _current.Acts.Add(new InterruptionAct.GoOn());
            }

            _current.SaysGoOn = true;
            return GoOnEnd(at + 1) - at;
        }

        if (_words.Is(at, "repeat") && _words.Is(at + 1, "section"))
        {
            // "after 32 repeat section 4 counts 5-8"
            return 1;
        }

        if (_words.Is(at, "section", "sections") && !_words.Is(at - 1, "during", "in", "of", "at", "before", "within") && (_current.Acts.Count > 0
            || _words.Is(at - 1, "repeat", "again"))
            && QuoteAt(at, out int end) is InterruptionAct.Quote quote)
        {
            _current.Acts.Add(quote);
            return end + 1 - at;
        }

        if (SectionCount(at) is (Counts inside, int told))
        {
            // "restart after the touch in section 2 count 8"
            PlaceAt(inside);
            return told;
        }

        if (_part is not null && _words.Is(at, "section", "sections", "s") && _current is { Walls.Count: > 0, Acts.Count: 0, After: null, WholeWall: false }
            && Names(at, "restart", "again") && _words.ListAt(at + 1, ordinals: false) is ({ Count: > 0 } danced, int over) && danced[0] == 1
            && danced[^1] == danced.Count && danced.Count < _part.Sections.Count)
        {
            // "wall 3: S1 + S2, restart"
            PlaceAt(_part.StartOf(danced.Count));
            return over - at;
        }

        if (_words.NumberAt(at) is (int many, int width)
            && _words.Is(_words.Skip(at + width, "easy", "simple", "short"), "tag", "tags", "restart", "restarts", "bridge", "bridges"))
        {
            // "there is 1 restart": how many there are
            return many > 0 ? width : 0;
        }

        if (_words.Is(at, "first", "second", "third", "last") && _words.Is(at + 1, "facing", "one", "restart", "tag", "at", "on"))
        {
            // "the first facing 6:00 and the second facing 9:00"
            _current.ClaimsDiffer = true;
            return 1;
        }

        if (_current.After is not null && _words.Is(at - 1, "(") && _words.NumberAt(at) is (_, 1) && _words.Is(at + 1, "-", "to")
            && _words.NumberAt(at + 2) is (_, 1) && _words.Is(at + 3, ")"))
        {
            // "skip the last four counts (29-32)"
            return 3;
        }

        if (_words.Is(at, "first") && _words.Is(at + 1, "half") && _words.NumberAt(_words.Skip(at + 2, "of", "the", "dance", "(", "wall")) is not null)
        {
            // "the first half (16 counts)"
            return 2;
        }

        if (_current.After is Counts stated && _words.NumberAt(at) is (int again, int againUsed) && stated == Counts.FromWhole(again)
            && _words.Is(at + againUsed, "counts", "count", "beats"))
        {
            // "dance S1 and S2 (16 counts)"
            return againUsed + 1;
        }

        bool alone = _current.After is null && !_current.WholeWall && _words.NumberAt(at) is (int counted and >= 4 and < 200, int danceUsed)
            && _words.Is(at + danceUsed, "counts", "count", "beats") && !_words.Is(at + danceUsed + 1, "tag", "bridge", "intro") && !IsAfterTag(at)
            && (_current.Acts.Count == 0 || _current.Acts.TrueForAll(a => a is InterruptionAct.Restart)) && Names(at, "restart", "again");
        if (alone && _words.NumberAt(at) is (int place, int width16))
        {
            // "W6: 16 counts + tag + restart", "(16 counts)"
            PlaceAt(Counts.FromWhole(place));
            return width16 + 1;
        }

        if (_words.NumberAt(at) is (int more, int moreUsed) && _words.Is(at + moreUsed, "extra", "additional", "more", "bonus") && IsOnlyTag(more)
            && _words.Is(at + moreUsed + 1, "count", "counts", "beats", "steps"))
        {
            // "the four extra counts come once, when wall 4 is complete"
            if (!_current.Acts.Exists(a => a is InterruptionAct.PlayTag))
            {
                Before(at);
                _current.Acts.Add(new InterruptionAct.PlayTag(""));
            }

            return moreUsed + 2;
        }

        bool ofTag = _words.NumberAt(at) is (int extra, int extraUsed) && _words.Is(at + extraUsed, "count", "counts") && extra > 0
            && _words.Is(at - 1, "add", "the", "these", "extra", "following", "with", "of", "a", "an")
            && (_current.Acts.Exists(a => a is InterruptionAct.PlayTag) || IsOnlyTag(extra));
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

    private (Counts Place, int Used)? SectionCount(int at)
    {
        if (_part is null || _current.After is not null || !_words.Is(at, "section", "sec", "s")
            || _words.NumberAt(at + 1) is not (int section and > 0, int width)
            || section > _part.Sections.Count)
        {
            return null;
        }

        int next = _words.Skip(at + 1 + width, ",", "on", "at", "after", "-", "–");
        if (!_words.Is(next, "count", "counts", "beat") || _words.NumberAt(next + 1) is not (int count and > 0, int used))
        {
            return null;
        }

        int end = next + 1 + used;
        if (_words.Is(end, "-", "to", "&") && _words.NumberAt(end + 1) is (int last, int lastUsed) && last > count)
        {
            (count, end) = (last, end + 1 + lastUsed);
        }

        return Counts.FromWhole(count) <= _part.Sections[section - 1].Length ? (_part.StartOf(section - 1) + Counts.FromWhole(count), end - at) : null;
    }

    /// <summary>
    /// "Before you go on to wall 7", "and carry on with wall 3": what comes next, said of what is put in; after the end of a wall it changes nothing. How
    /// many words.
    /// </summary>
    private int BeforeGoingOn(int at)
    {
        if (!_current.Acts.Exists(a => a is InterruptionAct.PlayTag))
        {
            return 0;
        }

        bool before = _words.Is(at, "before");
        int next = _words.Skip(_words.Is(at, "before", "and", "then", ",") ? at + 1 : at, "and", "then", "you", "we", "they", "all", "just", "can", "simply");
        bool begins = _words.Is(next, "start", "starting", "begin", "beginning") || (before && _words.Is(next, "restart", "restarting"));
        if (!begins && !_words.Is(next, "go", "going", "goes", "carry", "carrying", "continue", "continuing", "move", "moving"))
        {
            return 0;
        }

        int end = _words.Skip(next + 1, "on", "to", "onto", "into", "with", "the", "next", "again", "anew");
        int? onward = IsWall(end) && _words.ListAt(end + 1, ordinals: false) is { Values: [int wall], End: int after }
            && _current.Walls.Contains(wall - 1) ? after
            : _words.OrdinalAt(end) is (int nth, int used) && IsWall(end + used) && _current.Walls.Contains(nth - 1) ? end + used + 1
            : IsWall(end) && Between(next, end, "next") ? end + 1
            : before && (end >= _words.Count || _words[end].Kind == WordTokenKind.Mark) ? end
            : null;
        if (onward is not int stop || (!before && !_current.WholeWall))
        {
            return 0;
        }

        if (!_current.WholeWall && _current.After is not null && begins)
        {
            AddRestart();
        }
        else if (!_current.WholeWall && _current.After is not null)
        {
            _current.Acts.Add(new InterruptionAct.GoOn());
        }

        return _words.Skip(stop, "as", "usual", "normal", "normally") - at;
    }

    private bool IsOnlyTag(int counts) => _dance.Tags.Count == 1
        && (_dance.Tags[0].ClaimedLength ?? _dance.Tags[0].Body.Length) == Counts.FromWhole(counts);

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

        if (_words.Is(at, "once") && Parts.Exists(p => p.Acts.Exists(a => a is InterruptionAct.PlayTag)))
        {
            return (1, 1);
        }

        if (_words.NumberAt(at) is (int times and > 0 and < 9, int used) && (_words.Is(at + used, "times", "x")
            || (times == 1 && _words.Is(at + used, "time") && !_words.Is(at + used + 1, "through"))))
        {
            return (times, used + 1);
        }

        return _words.Is(at, "x") && _words.NumberAt(at + 1) is (int after and > 0 and < 9, int width) ? (after, width + 1) : null;
    }

    /// <summary>The place after "go on with count 17", "carry on from where you left off".</summary>
    private int GoOnEnd(int at)
    {
        int end = _words.Skip(at, "on", "with", "from", "at", "the", "dance", "dancing", "where", "you", "left", "off", "rest", "of", "normal",
            "normally", "as", "usual", "to", "end");
        if (_words.Is(end, "wall") && _words.NumberAt(end + 1) is null)
        {
            // "continue the wall from count 17"
            end = _words.Skip(end + 1, "from", "with", "at", "the");
        }

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

        return from < 1 || to < from || to > 1000 ? null
            : new InterruptionAct.Quote("", section, new CountSpan(Counts.FromWhole(from - 1), Counts.FromWhole(to)));
    }
}
