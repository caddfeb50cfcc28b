namespace Scuff.Audio.Decoding;

/// <summary>Samples as they come, without knowing how many will; never more than twice their own memory.</summary>
internal sealed class SampleStore
{
    // about 12 seconds at the rate of the analysis
    private const int Piece = 1 << 18;

    private readonly List<float[]> _pieces = [];
    private int _inLast = Piece;
    private long _count;

    /// <summary>Keeps a copy of the samples.</summary>
    public void Add(ReadOnlySpan<float> samples)
    {
        ReadOnlySpan<float> rest = samples;
        while (!rest.IsEmpty)
        {
            if (_inLast == Piece)
            {
                _pieces.Add(new float[Piece]);
                _inLast = 0;
            }

            int some = Math.Min(rest.Length, Piece - _inLast);
            rest[..some].CopyTo(_pieces[^1].AsSpan(_inLast));
            rest = rest[some..];
            _inLast += some;
            _count += some;
        }
    }

    /// <summary>All of them in one row. The store is empty afterwards.</summary>
    public float[] ToArray()
    {
        float[] all = new float[_count];
        for (int i = 0; i < _pieces.Count; i++)
        {
            int from = i * Piece;
            _pieces[i].AsSpan(0, Math.Min(Piece, all.Length - from)).CopyTo(all.AsSpan(from));

            // each piece may go as soon as it is copied
            _pieces[i] = [];
        }

        _pieces.Clear();
        _inLast = Piece;
        _count = 0;
        return all;
    }
}
