using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Prose.Reading;

// Where parts, sections and tags begin and end.
internal sealed partial class TextReaderRun
{
    private void OpenPart(string name, Counts? claimed, TextLine line)
    {
        CloseAll();
        _partName = name;
        _partSpan = line.Span;
        _partClaim = claimed ?? (_partLengths.TryGetValue(name, out Counts told) ? told : null);
        if (_parts.Any(p => string.Equals(p.Name, name, StringComparison.OrdinalIgnoreCase)))
        {
            _state.Add(ReadingRules.NameTwice.At(line.Span, ("name", name), ("things", "parts")));
        }
    }

    private void OpenSection(string title, Counts? claimed, TextLine line)
    {
        if (_tag is not null)
        {
            CloseAll();
        }

        CloseSection();
        _section = new SectionBuilder(_sections.Count + 1, title, claimed, line.Span, line.Number);
        _state.SectionLines.Clear();
        if (_sections.Count == 0 && _parts.Count == 0)
        {
            _headTracks = _tracks.Count;
            _state.Weight = _heading.Start;
            _state.IsWaltz = _heading.ToDance().BeatsPerBar == 3;
            _state.Facing = Facing.Front;
        }

        TakeCarried();
    }

    private void CloseSection()
    {
        if (_section is null)
        {
            return;
        }

        Section made = new()
        {
            Number = _section.Number,
            Title = _section.Title,
            ClaimedLength = _section.Claimed,
            Length = _section.Length,
            Lines = _section.Lines.ToValueList(),
            Notes = _section.Notes.ToValueList(),
            Calls = _section.Calls.ToValueList(),
            Span = _section.Span,
            LineNumber = _section.Line,
        };
        if (_tag is not null)
        {
            _tags.Add(new Tag(_tag.Name, _tag.IsBridge, _tag.Length, made, _tag.Span));
            if (_tags.Count(t => string.Equals(t.Name, _tag.Name, StringComparison.OrdinalIgnoreCase)) > 1)
            {
                _state.Add(ReadingRules.NameTwice.At(_tag.Span, ("name", _tag.Name), ("things", "tags")));
            }

            _tag = null;
            _state.InTag = false;
            _section = null;
            _state.SectionLines.Clear();
            return;
        }

        _sections.Add(made);
        _sectionsLength += made.Length;
        _state.Sections.Add(made);
        _section = null;
        _state.SectionLines.Clear();
    }

    private void CloseAll()
    {
        CloseSection();
        if (_sections.Count > 0 || _partName.Length > 0)
        {
            _parts.Add(new Part(_partName, _sections.ToValueList(), _partSpan, _partClaim));
            _sections.Clear();
            _sectionsLength = Counts.Zero;
        }

        _partName = "";
        _partSpan = default;
        _partClaim = null;
    }
}
