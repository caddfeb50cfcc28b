using Scuff.Dances;
using Scuff.Prose.Words;
using Scuff.Stance;

namespace Scuff.Prose.Reading;

// The key of a text: what its letters stand for.
internal sealed partial class TextReaderRun
{
    /// <summary>Takes the lines that tell what letters stand for the feet out of the text, and has all others read by them.</summary>
    private void ReadFootLetters()
    {
        List<(int Line, List<(string Letters, Foot Side, bool IsFoot)> Told)> keys = [];
        for (int i = 0; i < _lines.Count; i++)
        {
            TextLine line = _lines[i].Trimmed(_text);
            if (line.Start < line.End && line.End - line.Start < LongestKeyLine
                && FootLetters.Told(_text[line.Start..line.End], _state.Lexicon) is { Count: > 0 } told)
            {
                keys.Add((i, told));
            }
        }

        // one foot alone is a key only where another line has the other: "BAR - right leg" may be anything
        keys.RemoveAll(k => k.Told.TrueForAll(t => t.Side == k.Told[0].Side) && !keys.Exists(o => o.Told.Exists(t => t.Side != k.Told[0].Side)));
        if (keys.Count == 0)
        {
            return;
        }

        Dictionary<string, string>? feet = FootLetters.Of([.. keys.SelectMany(k => k.Told)], _state.Lexicon);
        if (feet is { Count: 0 })
        {
            // "RF = right foot" tells nothing new
            return;
        }

        foreach ((int at, _) in keys)
        {
            TextLine line = _lines[at].Trimmed(_text);
            _notes.Add(new Note("key", _text[line.Start..line.End], line.Span));
            _lines[at] = _lines[at] with { End = _lines[at].Start };
            if (feet is null)
            {
                // it contradicts itself, or what the letters mean to everybody
                _state.Add(ReadingRules.UnknownLine.At(line.Span, ("words", _text[line.Start..line.End])));
            }
        }

        _state.Lexicon = feet is null ? _state.Lexicon : _state.Lexicon.WithFeet(feet);
    }

    // a key of a few letters is no longer than this
    private const int LongestKeyLine = 200;
}
