using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Prose.Reading.Sentences;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// What is read once all sections are known: the order of the parts, the sentences, and the moves of her own.
internal sealed partial class TextReaderRun
{
    /// <summary>move "lantern twist" 1&amp;2: step R to side, ...</summary>
    private bool ReadOwnMove(TextLine line)
    {
        int colon = _text.IndexOf(':', line.Start, line.End - line.Start);
        int open = _text.IndexOfAny(['"', '“'], line.Start, line.End - line.Start);
        if (colon < 0 || open < 0 || open > colon)
        {
            return false;
        }

        int close = _text.IndexOfAny(['"', '”'], open + 1, line.End - open - 1);
        if (close < 0 || close > colon || CountLabel.Read(_text, close + 1, colon + 1) is not CountLabel label)
        {
            return false;
        }

        string name = _text[(open + 1)..close].Trim();
        Weight kept = _state.Weight;
        Facing? facing = _state.Facing;
        _state.Weight = Weight.Left;
        LineContent content = new LineReader(_state).Read(label.Places, colon + 1, line.End, line.Number,
            _text.Substring(label.Span.Start, label.Span.Length));
        _state.Weight = kept;
        _state.Facing = facing;
        if (OwnMove.From(name, content.Moves) is Scuff.Steps.StepDefinition own)
        {
            _ownMoves.Add(own);
            _state.Lexicon = _state.Lexicon.With([own]);
        }

        _notes.Add(new Note("move", _text[line.Start..line.End], line.Span));
        return true;
    }

    /// <summary>The order of the parts is read once their names are known.</summary>
    private Dance ReadSequences(Dance dance)
    {
        foreach ((TextLine line, int track) in _sequences)
        {
            ValueList<SequenceItem> items = SequenceReader.Read(_state, line, dance).ToValueList();
            if (track >= 0)
            {
                _tracks[track] = _tracks[track] with { Sequence = items };
            }
            else
            {
                dance = dance with { Sequence = items };
            }
        }

        return dance;
    }

    /// <summary>"Part A 32 counts, part B: 16 counts" at the head of a sheet, held against the parts when they come; false when it is none.</summary>
    private bool ReadLengthsOfParts(TextLine line)
    {
        string words = _text[line.Start..line.End];
        MatchCollection found = LengthOfPart().Matches(words);
        if (found.Count < 2 || LengthOfPart().Replace(words, "").AsSpan().IndexOfAnyExcept(BetweenParts) >= 0)
        {
            return false;
        }

        foreach (Match part in found.Where(m => m.Groups[1].Success))
        {
            _partLengths[part.Groups[1].Value] = Counts.FromWhole(int.Parse(part.Groups[2].ValueSpan, System.Globalization.CultureInfo.InvariantCulture));
        }

        _notes.Add(new Note("parts", words, line.Span));
        return true;
    }

    private static readonly System.Buffers.SearchValues<char> BetweenParts = System.Buffers.SearchValues.Create(" ,;.&/|-–+()");

    [GeneratedRegex(@"\b(?:part )?([A-H])\b ?[:=(-]? ?(\d{1,3}) ?(?:counts?|cts?|c)\b\)?|\band\b", RegexOptions.IgnoreCase)]
    private static partial Regex LengthOfPart();

    // "Then restart the dance (facing 12:00)", under the counts of a tag
    private bool RestartsAfterTag(ReadOnlySpan<char> words) => _tag is not null && _section is { Lines.Count: > 0 } && words.Length < 80
        && (StartsWithWord(words, "then") || StartsWithWord(words, "and") || StartsWithWord(words, "restart") || StartsWithWord(words, "now"))
        && SentenceReader.HasWord(words, "restart") && !SentenceReader.HasWord(words, "wall") && !SentenceReader.HasWord(words, "count")
        && !SentenceReader.HasWord(words, "tag") && (words.IndexOfAnyInRange('0', '9') < 0 || ClockTime().IsMatch(words));

    /// <summary>
    /// What is told twice is kept once: the heading's summary ("Tag/restart: 1, in wall 5"), and a tag whose restart another sentence tells.
    /// </summary>
    private void KeepOnce()
    {
        for (int i = 0; i < _interruptions.Count; i++)
        {
            Interruption told = _interruptions[i];
            bool restarts = told.AfterCounts is not null && told.Acts.OfType<InterruptionAct.PlayTag>().Any(t => _restartAfter.Contains(t.Name)
                || (t.Name.Length == 0 && _tags.Count == 1))
                && _restartAfter.Count > 0 && !told.Acts.OfType<InterruptionAct.Restart>().Any();
            if (restarts)
            {
                _interruptions[i] = told with { Acts = [.. told.Acts, new InterruptionAct.Restart()] };
            }
        }

        PlaceByMarks();
        HashSet<int> headed = [.. _heading.OfPattern.Select(l => l.Number), .. _sentences.Where(s => s.Here is null).Select(s => s.Line.Number)];
        for (int i = _interruptions.Count - 1; i >= 0; i--)
        {
            if (_interruptions.Exists(o => !ReferenceEquals(o, _interruptions[i]) && o.PartName == _interruptions[i].PartName
                && IsToldBetter(_interruptions[i], o, headed)))
            {
                _interruptions.RemoveAt(i);
            }
        }
    }

    /// <summary>
    /// "*** restart here ***" among the counts, whose wall the only other sentence on it tells: "restart in wall 3". The mark is its place.
    /// </summary>
    private void PlaceByMarks()
    {
        List<Interruption> marks = _interruptions.FindAll(m => m.Walls.Count == 0 && m.AfterCounts is not null && m.Changes.Count == 0
            && m.Acts.All(a => a is InterruptionAct.Restart));
        if (marks.Count != 1)
        {
            return;
        }

        int told = _interruptions.FindIndex(o => o.Walls.Count > 0 && o.AfterCounts is null && o.PartName == marks[0].PartName
            && o.Acts.Count > 0 && o.Acts.All(a => a is InterruptionAct.Restart));
        bool only = told >= 0 && !_interruptions.Exists(o => o.Walls.Count > 0 && !ReferenceEquals(o, _interruptions[told])
            && o.Acts.Any(a => a is InterruptionAct.Restart));
        if (only)
        {
            _interruptions[told] = _interruptions[told] with { AfterCounts = marks[0].AfterCounts };
            _interruptions.Remove(marks[0]);
        }
    }

    // whether another sentence says what this one says, with its place, for all its walls, or with all that is done
    private static bool IsToldBetter(Interruption one, Interruption other, HashSet<int> headed)
    {
        bool covers = one.Walls.All(other.Walls.Contains);
        bool acts = one.Acts.All(a => other.Acts.Contains(a) || (a is InterruptionAct.PlayTag { Name: var name } && (name.Length == 0 || one.Walls.Count == 0)
            && other.Acts.Any(o => o is InterruptionAct.PlayTag)));
        if (one.Changes.Count > 0 || !covers || !acts)
        {
            return false;
        }

        if (one.AfterCounts == other.AfterCounts)
        {
            if (one.Walls.Count == 0 && other.Walls.Count > 0)
            {
                // "(restart goes here, see below)"
                return true;
            }

            return one.Walls.Count > 0 && (one.Walls.Count < other.Walls.Count || one.Acts.Count < other.Acts.Count
                || (one.Acts.Count == other.Acts.Count && one.Line > other.Line));
        }

        bool restarts = one.Acts.Count > 0 && one.Acts.All(a => a is InterruptionAct.Restart);
        return one.AfterCounts is null && other.AfterCounts is not null && (restarts || (one.Walls.Count > 0 && headed.Contains(one.Line)
            && !headed.Contains(other.Line)));
    }

    private Dance ReadSentences(Dance dance)
    {
        SentenceReader reader = new(_state, dance, (part, place) => WeightAt(dance, part, place));
        List<Track> tracks = _tracks;
        foreach (PendingSentence pending in _sentences)
        {
            PendingSentence sentence = Placed(pending);
            List<Interruption>? made = reader.Read(sentence.Line, sentence.Here, sentence.OpensTag, sentence.OfTag, sentence.OfRestarts);
            if (made is null)
            {
                string words = _text[sentence.Line.Start..sentence.Line.End];
                _notes.Add(new Note("sentence", words, sentence.Line.Span));
                continue;
            }

            // the heading may tell what the steps tell again where it happens
            if (sentence.Track < 0)
            {
                // "restart here on wall 4, see below", and below what is danced differently there
                _interruptions.RemoveAll(i => i.Changes.Count == 0 && made.Exists(m => m.Changes.Count > 0 && i.Walls == m.Walls
                    && i.AfterCounts == m.AfterCounts && i.Acts == m.Acts && i.PartName == m.PartName));
            }

            made.RemoveAll(m => _interruptions.Exists(i => sentence.Track < 0 && i.Walls == m.Walls && i.AfterCounts == m.AfterCounts && i.Acts == m.Acts
                && i.PartName == m.PartName));
            if (sentence.Track >= 0)
            {
                tracks[sentence.Track] = tracks[sentence.Track] with { Interruptions = [.. tracks[sentence.Track].Interruptions, .. made] };
            }
            else
            {
                _interruptions.AddRange(made);
            }
        }

        KeepOnce();
        foreach (Interruption doubtful in _interruptions.Concat(tracks.SelectMany(t => t.Interruptions)).Where(i
            => reader.PlaceDoubts.ContainsKey(i.Line)).DistinctBy(i => i.Line))
        {
            _state.Add(reader.PlaceDoubts[doubtful.Line]);
        }

        dance = dance with
        {
            Tags = reader.Tags.ToValueList(),
            Interruptions = _interruptions.ToValueList(),
            Tracks = tracks.ToValueList(),
        };
        foreach (PendingSentence told in _endings)
        {
            Ending ending = reader.ReadEnding(told.Line);
            if (told.Track >= 0)
            {
                tracks[told.Track] = tracks[told.Track] with { Ending = ending };
            }
            else
            {
                dance = dance with { Ending = ending };
            }
        }

        return dance with { Tracks = tracks.ToValueList() };
    }

    private Weight WeightAt(Dance dance, int partIndex, Counts place)
    {
        Weight weight = dance.Start;
        for (int p = 0; p <= partIndex && p < dance.Parts.Count; p++)
        {
            Counts start = Counts.Zero;
            foreach (Section section in dance.Parts[p].Sections)
            {
                foreach (WrittenStep step in section.Steps)
                {
                    if (p == partIndex && start + step.Count.Place >= place)
                    {
                        return weight;
                    }

                    weight = step.Action.WeightAfter(weight);
                }

                start += section.Length;
            }
        }

        return weight;
    }
}
