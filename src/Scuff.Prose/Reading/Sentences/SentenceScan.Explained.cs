namespace Scuff.Prose.Reading.Sentences;

// What follows from the pattern by itself and changes nothing of it: where a tag brings the dancers, and that the next wall comes after it.
internal sealed partial class SentenceScan
{
    /// <summary>"Before you go into the next wall", "so you come back to the same wall", "(two half turns)": how many words say so, or 0.</summary>
    private int TryExplained(int at)
    {
        if (_words.Is(at, "before"))
        {
            return GoesOnAfter(at);
        }

        if (_words.Is(at, "same") && IsWall(at + 1) && _words.Is(at - 1, "the") && _words.Is(at - 2, "to", "facing", "face", "towards", "at"))
        {
            // "so you come back to the same wall"
            return 2;
        }

        bool bracketed = _words.Is(at - 1, "(") || (_words.Is(at - 1, "a", "is", "are", "it's", "its", "makes", "make") && _words.Is(at - 2, "("));
        if (bracketed && (_words.NumberAt(at) is not null || _words.Is(at, "half", "quarter")))
        {
            // "the tag twice (two half turns)": what it turns in all
            int turns = _words.NumberAt(at) is (_, int used) ? at + used : at;
            turns = _words.Skip(turns, "half", "quarter", "full", "x");
            return _words.Is(turns, "turns") && Between(at, turns, "half", "quarter", "full") ? turns + 1 - at : 0;
        }

        return 0;
    }

    // "before" with words of going on up to the next wall, or of beginning again; a wall with a number says where something is danced
    private int GoesOnAfter(int at)
    {
        int end = _words.Skip(at + 1, "you", "we", "they", "it", "going", "go", "goes", "on", "into", "onto", "in", "to", "the", "a", "your", "our", "move",
            "moves", "moving", "starting", "start", "starts", "beginning", "begin", "begins", "carrying", "carry", "continuing", "continue", "getting", "get",
            "dance", "dancing", "again", "over", "with", "next", "new", "following", "wall", "round", "repetition", "comes", "all");
        bool goesOn = Between(at, end, "next", "new", "following", "again", "continuing", "continue", "carrying", "carry", "over", "on");
        if (_words.NumberAt(end) is (int wall, int used) && _words.Is(end - 1, "wall"))
        {
            // "tag after wall 3 before you start wall 4"
            return _current is { WholeWall: true, Walls: [.., var last] } && wall == last + 1 ? end + used - at : 0;
        }

        bool numbered = _words.NumberAt(end) is not null || _words.OrdinalAt(end) is not null;
        return !numbered && goesOn ? end - at : 0;
    }
}
