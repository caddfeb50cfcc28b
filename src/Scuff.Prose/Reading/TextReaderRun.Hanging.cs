using System.Text.RegularExpressions;
using Scuff.Dances;
using Scuff.Prose.Reading.Sentences;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// What hangs under a line of counts: notes and options.
internal sealed partial class TextReaderRun
{
    /// <summary>Lines that hang on the line above: styling, arms, notes, options.</summary>
    private bool ReadHanging(TextLine line)
    {
        ReadOnlySpan<char> words = _text.AsSpan(line.Start, line.End - line.Start);
        foreach (string kind in (ReadOnlySpan<string>)["style", "styling", "arms", "arm", "hands", "note", "body", "hips", "head", "tip", "n.b.",
            "nb", "remark", "caution"])
        {
            if (StartsWithWord(words, kind) && words[kind.Length..].TrimStart() is { Length: > 0 } rest && rest[0] is ':' or '-' or '–')
            {
                string note = rest[1..].Trim().ToString();
                if (kind is "note" or "remark" or "nb" or "n.b." or "tip" && TellsABreak(note))
                {
                    // "Note: restart on wall 3 after 16 counts"
                    return false;
                }

                if (kind is "note" or "remark" && _section is null && _sections.Count == 0
                    && _heading.ReadFacts(new TextLine(line.Number, line.Start + words.IndexOf(rest[0]) + 1, line.End).Trimmed(_text)))
                {
                    // "Note: the dance begins after 32 beats"
                    return true;
                }

                AddNote(new Note(kind switch { "styling" => "style", "arm" or "hands" => "arms", _ => kind }, note, line.Span));
                Abbreviations.Tell(_state, line.Span);
                return true;
            }
        }

        if (_section is not null && StartsWithWord(words, "call") && ReadCall(line))
        {
            return true;
        }

        if (StartsWithWord(words, "option") || StartsWithWord(words, "options") || StartsWithWord(words, "opt")
            || (words.IndexOf("option", StringComparison.OrdinalIgnoreCase) is > 0 and < 16 && words.IndexOf(':') > 0))
        {
            return ReadOption(line);
        }

        return false;
    }

    private static bool TellsABreak(string words) => (SentenceReader.HasWord(words, "restart") || SentenceReader.HasWord(words, "tag")
        || SentenceReader.HasWord(words, "bridge"))
        && SentenceReader.NamesWall(words) && (words.AsSpan().IndexOfAnyInRange('0', '9') >= 0 || CountedInWords().IsMatch(words));

    [GeneratedRegex(@"\b(?:first|second|third|fourth|fifth|sixth|seventh|eighth|ninth|tenth|one|two|three|four|five|six|seven|eight|nine|ten)\b",
        RegexOptions.IgnoreCase)]
    private static partial Regex CountedInWords();

    private void AddNote(Note note)
    {
        if (_section is { Lines.Count: > 0 })
        {
            WrittenLine last = _section.Lines[^1];
            _section.Lines[^1] = last with { Notes = [.. last.Notes, note] };
        }
        else if (_section is not null)
        {
            _section.Notes.Add(note);
        }
        else
        {
            _notes.Add(note);
        }
    }

    // A label's places in the section's own counting, however the section is numbered.
    private static List<LabelPlace> PlacesOf(CountLabel label, SectionBuilder section)
    {
        int offset = section.Offset ?? 0;
        return label.Places.Select(p =>
            p with
            {
                Number = p.Number - offset,
                Place = p.Place - Counts.FromWhole(offset),
                Label = CountGrid.LabelOf(p.Place - Counts.FromWhole(offset))
            }).ToList();
    }

    // call: box and shuffles          under a heading, for the section; under a line, for its first move
    // call 3&4: shuffle               for the moves that begin on these counts
    // call 7: nothing
    private bool ReadCall(TextLine line)
    {
        int colon = _text.IndexOf(':', line.Start, line.End - line.Start);
        if (colon < 0)
        {
            return false;
        }

        string said = _text[(colon + 1)..line.End].Trim().Trim('"', '“', '”').Trim();
        string words = said.ToUpperInvariant() is "NOTHING" or "NONE" or "SILENT" or "-" ? "" : said;
        int head = line.Start + "call".Length;
        if (string.IsNullOrWhiteSpace(_text[head..colon]))
        {
            // the counts of a line begin a little before it where it has a pick-up; that move is its first one
            CountSpan? counts = _section!.Lines is [.., var last] ? new CountSpan(last.Counts.Start, last.Counts.End) : null;
            _section.Calls.Add(new WrittenCall(counts, words, line.Span, line.Number));
            return true;
        }

        if (CountLabel.Read(_text, head, colon + 1) is not { Places.Count: > 0 } label)
        {
            return false;
        }

        List<LabelPlace> places = PlacesOf(label, _section!);
        Counts first = places.Min(p => p.Place);
        Counts end = Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        _section!.Calls.Add(new WrittenCall(new CountSpan(first, end), words, line.Span, line.Number)
        {
            Label = _text.Substring(label.Span.Start, label.Span.Length),
        });
        return true;
    }

    private bool ReadOption(TextLine line)
    {
        if (_section is not { Lines.Count: > 0 })
        {
            return false;
        }

        // option 7&8 "easier": triple R in place
        int colon = _text.IndexOf(':', line.Start, line.End - line.Start);
        string head = colon < 0 ? _text[line.Start..line.End] : _text[line.Start..colon];
        string name = "option";
        int quote = head.IndexOfAny(['"', '“']);
        if (quote >= 0 && head.IndexOfAny(['"', '”'], quote + 1) is int close and > 0)
        {
            name = head[(quote + 1)..close];
        }
        else if (head.Contains("eas", StringComparison.OrdinalIgnoreCase))
        {
            name = "easier";
        }
        else if (head.Contains("hard", StringComparison.OrdinalIgnoreCase))
        {
            name = "harder";
        }

        int digit = head.AsSpan().IndexOfAnyInRange('0', '9');
        while (digit > 0 && head[digit - 1] is '&' or 'a')
        {
            digit--;
        }

        CountLabel? label = digit >= 0 ? CountLabel.Read(_text, line.Start + digit, colon < 0 ? line.End : colon + 1) : null;
        WrittenLine last = _section.Lines[^1];
        List<LabelPlace> places;
        string printed;
        int start;
        if (label is not null)
        {
            places = PlacesOf(label, _section);
            printed = _text.Substring(label.Span.Start, label.Span.Length);
            start = colon >= 0 ? colon + 1 : label.End;
        }
        else
        {
            places = last.Places.Select((p, i) => new LabelPlace(p.Label, p.Place.Value.Floor + 1, p.Place, i > 0)).ToList();
            printed = last.Label;
            start = colon >= 0 ? colon + 1 : line.End;
        }

        if (label is null && colon >= 0 && CountLabel.Read(_text, colon + 1, line.End) is { Places.Count: > 0 } inside && inside.End < line.End)
        {
            // "Option: 7-8 clap"
            places = PlacesOf(inside, _section);
            printed = _text.Substring(inside.Span.Start, inside.Span.Length);
            start = inside.End;
        }

        foreach (ValueMatch led in MayBeDanced().EnumerateMatches(_text.AsSpan(start, line.End - start)))
        {
            // "31-32 can be danced as walk right, walk left"
            start += led.Index + led.Length;
        }

        string said = start < line.End ? _text[start..line.End].TrimStart() : "";
        bool isTalk = StartsWithWord(said, "leave") || StartsWithWord(said, "omit") || StartsWithWord(said, "skip") || StartsWithWord(said, "do not")
            || StartsWithWord(said, "don't") || StartsWithWord(said, "instead") || StartsWithWord(said, "you can") || StartsWithWord(said, "clap on");
        if (start >= line.End || places.Count == 0 || isTalk)
        {
            AddNote(new Note("option", _text[line.Start..line.End], line.Span));
            return true;
        }

        Weight kept = _state.Weight;
        Facing? facing = _state.Facing;

        // what leads in on an & is replaced from there on, and the count before it stays
        Counts from = places[0].Place;
        _state.Weight = WeightBefore(_section.Lines, from) ?? kept;
        LineContent content = new LineReader(_state).Read(places, start, line.End, line.Number, printed);
        _state.Weight = kept;
        _state.Facing = facing;
        Counts end = Counts.FromWhole(places.Max(p => p.Place).Value.Floor + 1);
        StepOption option = new(name, new CountSpan(from, end), content.Moves, line.Span,
            line.Number)
        { Label = printed };
        Counts first = Counts.Max(Counts.Zero, Counts.FromWhole(from.Value.Floor));
        int owner = _section.Lines.FindLastIndex(l => l.Counts.Start <= first && l.Counts.End > first);
        owner = owner < 0 ? _section.Lines.Count - 1 : owner;
        _section.Lines[owner] = _section.Lines[owner] with { Options = [.. _section.Lines[owner].Options, option] };
        return true;
    }

    [GeneratedRegex(@"^\s*(?:(?:these|this|you|it|they|counts?|also|just|instead)\s+)*(?:can|may|could|might)\s+(?:also\s+|instead\s+)?"
        + @"(?:(?:be\s+)?(?:danced|done|replaced|substituted|swapped|made|changed|simplified)\s+(?:as|with|by|for|to|into)|be|do|dance)\s+(?:an?\s+"
            + @"|the\s+|two\s+)?",
        RegexOptions.IgnoreCase)]
    private static partial Regex MayBeDanced();

    private Weight? WeightBefore(List<WrittenLine> lines, Counts place)
    {
        Counts start = _sectionsLength;

        if (_tag is null && _weightBefore.TryGetValue((_parts.Count, start + place), out Weight remembered))
        {
            return remembered;
        }

        Weight? weight = _tag is null && _weightBefore.TryGetValue((_parts.Count, start), out Weight atStart) ? atStart : null;
        foreach (WrittenStep step in lines.SelectMany(l => l.Steps))
        {
            if (step.Count.Place >= place)
            {
                break;
            }

            weight = step.Action.WeightAfter(weight ?? Weight.Unknown);
        }

        return weight;
    }
}
