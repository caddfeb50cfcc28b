using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Compare;

/// <summary>Counts in a row (a section, a tag, or a whole part) as moves and actions on one scale of counts.</summary>
internal sealed class Passage
{
    private readonly List<Atom> _atoms = [];
    private readonly List<Piece> _moves = [];
    private readonly HashSet<Counts> _lineStarts = [];

    /// <summary>The sections one after the other.</summary>
    public Passage(IEnumerable<Section> sections)
    {
        foreach (Section section in sections)
        {
            Add(section, Length);
            Length += section.Length;
        }

        _atoms.Sort((a, b) => a.At.CompareTo(b.At) is not 0 and var order ? order : a.Move.CompareTo(b.Move));
        for (int i = 0; i < _atoms.Count; i++)
        {
            Counts end = i + 1 < _atoms.Count ? _atoms[i + 1].At : Counts.Max(Length, _atoms[i].At);
            _atoms[i] = _atoms[i] with { Length = end - _atoms[i].At };
        }

        foreach (Atom atom in _atoms)
        {
            Piece piece = _moves[atom.Move];
            _moves[atom.Move] = piece with
            {
                Start = piece.IsPlaced ? Counts.Min(piece.Start, atom.At) : atom.At,
                End = piece.IsPlaced ? Counts.Max(piece.End, atom.At + atom.Length) : atom.At + atom.Length,
                IsPlaced = true,
            };
        }
    }

    /// <summary>Its counts.</summary>
    public Counts Length { get; private set; }

    /// <summary>Its actions in danced order.</summary>
    public IReadOnlyList<Atom> Atoms => _atoms;

    /// <summary>Its moves in written order.</summary>
    public IReadOnlyList<Piece> Moves => _moves;

    /// <summary>Whether a line begins at a place.</summary>
    public bool StartsLine(Counts at) => _lineStarts.Contains(at);

    /// <summary>The moves that are danced within a span.</summary>
    public IEnumerable<WrittenMove> MovesWithin(CountSpan span)
        => _moves
            .Where(m => m.IsPlaced && m.Start >= span.Start && m.End <= span.End && (m.Start < span.End || m.Start == m.End))
            .Select(m => m.Move);

    /// <summary>The last action that begins before a place, or null.</summary>
    public Atom? LastBefore(Counts place) => _atoms.FindLast(a => a.At < place);

    /// <summary>Turn of the actions that begin within a span.</summary>
    public Turn TurnWithin(CountSpan span)
    {
        Turn sum = Turn.None;
        foreach (Atom atom in _atoms)
        {
            if (atom.At >= span.Start && atom.At < span.End)
            {
                sum += atom.Danced.Action.Turn;
            }
        }

        return sum;
    }

    private void Add(Section section, Counts offset)
    {
        foreach (WrittenLine line in section.Lines)
        {
            bool isFirst = true;
            foreach (WrittenMove move in line.Moves)
            {
                string words = move.IsUnknown ? Bare.Words(move.Words) : "";
                foreach (WrittenStep step in move.Steps)
                {
                    Counts at = offset + step.Count.Place;
                    if (isFirst)
                    {
                        _lineStarts.Add(at);
                        isFirst = false;
                    }

                    string unread = step.Action.Kind == ActionKind.Unknown ? words : step.Gesture.ToUpperInvariant();
                    Danced danced = new(step.Action with { Contact = move.SaidContact ?? default }, step.BodyAngle, step.With, unread);
                    _atoms.Add(new Atom(at, Counts.Zero, danced, _moves.Count, step));
                }

                _moves.Add(new Piece(move, Counts.Zero, Counts.Zero, false));
            }
        }
    }

    /// <summary>A move with the counts it takes.</summary>
    internal sealed record Piece(WrittenMove Move, Counts Start, Counts End, bool IsPlaced);
}
