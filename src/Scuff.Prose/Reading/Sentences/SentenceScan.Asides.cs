namespace Scuff.Prose.Reading.Sentences;

// What is said to the dancers on the way, and breaks nothing.
internal sealed partial class SentenceScan
{
    /// <summary>Words that urge or reassure, or lead to what is told behind them; how many they are, or 0.</summary>
    private int TryAside(int at)
    {
        if (_words.Is(at, "nb", "ps") || (_words.Is(at, "n", "p") && _words.Is(at + 1, ".") && _words.Is(at + 2, "b", "s")))
        {
            // "N.B. The tag is danced once": look here
            return _words.Is(at, "nb", "ps") ? 1 : _words.Is(at + 3, ".") ? 4 : 3;
        }

        if (_words.Is(at, "nothing") && _words.Is(at + 1, "else", "more", "complicated", "difficult"))
        {
            // "..., nothing else to worry about!"
            int end = EndOfPlainWords(at + 1, "wall", "walls", "tag", "tags", "restart", "restarts", "bridge", "count", "counts", "until", "till", "than");
            return end > 0 ? end - at : 0;
        }

        if (_words.Is(at, "without"))
        {
            // "dance it twice without any interruption"
            int next = _words.Skip(at + 1, "any", "a", "an", "single");
            return _words.Is(next, "interruption", "interruptions", "interrupting", "interrupt", "break", "breaks", "breaking", "pause", "pauses", "pausing",
                "stopping", "stops", "fuss") ? next + 1 - at : 0;
        }

        if (_words.Is(at, "except", "only", "save") && _words.Is(at + 1, "that"))
        {
            // "it runs normally, except that when you have finished wall six you add the tag": what is excepted tells itself, unless it denies something
            return EndOfPlainWords(at + 2, "no", "not", "dont", "don't", "don’t", "never", "without", "skip", "leave") > 0 ? 2 : 0;
        }

        if (_words.Is(at, "normally", "normal", "usual"))
        {
            bool waits = _current is { Walls.Count: > 0, Acts.Count: 0, After: null, WholeWall: false };
            if (waits && WallNext(at + 1))
            {
                // "walls 1 and 2 normal, wall 3 restart after 16": of them nothing is told
                _current.Walls.Clear();
                waits = false;
            }

            // "after that it runs normally"
            return waits ? 0 : 1;
        }

        int verb = _words.Is(at, "dont", "don't", "don’t", "never") ? at + 1 : _words.Is(at, "do") && _words.Is(at + 1, "not") ? at + 2 : 0;
        if (verb > 0 && _words.Is(verb, "forget", "overlook"))
        {
            // "dont forget on wall 6 theres the tag after 16 counts": what is not to be forgotten tells itself
            return verb + 1 - at;
        }

        if (verb > 0 && _words.Is(verb, "let", "lose", "rush", "worry", "panic", "hurry", "slouch", "slack"))
        {
            // "and don't let the energy drop!"
            int end = EndOfPlainWords(verb + 1, "wall", "walls", "tag", "tags", "restart", "restarts", "bridge", "count", "counts", "section", "part",
                "step", "steps", "chorus", "left", "right", "then", "until", "again");
            return end > 0 ? end - at : 0;
        }

        return 0;
    }

    // whether other walls are spoken of next: ", then restart wall 4", ". On wall 4"
    private bool WallNext(int at)
    {
        int next = _words.Skip(at, ",", ".", ";", "-", "–", "and", "then", "but", "a", "the");
        next = next > at ? _words.Skip(next, "restart", "tag", "on", "in", "during", "at", "end", "of", "the", "after") : next;
        return IsWall(next) || (_words.OrdinalAt(next) is (_, int used) && IsWall(next + used));
    }

    // the place of the stop that ends these words, if none of them is a number or one of those; or 0
    private int EndOfPlainWords(int at, params ReadOnlySpan<string> barred)
    {
        int end = at;
        bool numbers = barred.Contains("wall");
        while (end < _words.Count && !_words.Is(end, ".", ",", ";", "!", ")", "-", "–", ":"))
        {
            if (_words.Is(end, barred) || (numbers && _words.NumberAt(end) is not null))
            {
                return 0;
            }

            end++;
        }

        return end;
    }
}
