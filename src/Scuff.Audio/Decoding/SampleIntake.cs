using System.Buffers.Binary;
using Scuff.Audio.Signals;

namespace Scuff.Audio.Decoding;

/// <summary>
/// Takes in sound that another program has decoded: one channel of 32-bit floats, least byte first, in pieces of any size. Only what the ear needs is
/// kept, so the memory follows the length of the track.
/// </summary>
public sealed class SampleIntake
{
    /// <summary>The slowest rate that is taken, samples a second: below it there is nothing to hear a beat by.</summary>
    public const int SlowestRate = 8_000;

    /// <summary>The fastest rate that is taken, samples a second: four times that of a CD.</summary>
    public const int FastestRate = 192_000;

    private const int Block = 8_192;

    private readonly int _rate;
    private readonly int _given;
    private readonly Resampler _resampler;
    private readonly SampleStore _store = new();
    private readonly float[] _block = new float[Block];
    private readonly byte[] _part = new byte[sizeof(float)];
    private int _inBlock;
    private int _inPart;
    private long _taken;

    /// <summary>Begins a track.</summary>
    /// <param name="rate">Samples a second that come in, from <see cref="SlowestRate"/> to <see cref="FastestRate"/>.</param>
    /// <param name="wanted">Samples a second that are kept.</param>
    public SampleIntake(int rate, int wanted)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rate, SlowestRate);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(rate, FastestRate);
        _rate = rate;
        _given = wanted;
        _resampler = new Resampler(rate, wanted);
    }

    /// <summary>Takes the next bytes; a sample may be cut between two pieces.</summary>
    /// <exception cref="AudioException">The track is longer than Scuff hears.</exception>
    public void Add(ReadOnlySpan<byte> bytes)
    {
        while (!bytes.IsEmpty)
        {
            if (_inPart > 0 || bytes.Length < sizeof(float))
            {
                int some = Math.Min(sizeof(float) - _inPart, bytes.Length);
                bytes[..some].CopyTo(_part.AsSpan(_inPart));
                bytes = bytes[some..];
                _inPart += some;
                if (_inPart == sizeof(float))
                {
                    _inPart = 0;
                    Put(BinaryPrimitives.ReadSingleLittleEndian(_part));
                }

                continue;
            }

            Put(BinaryPrimitives.ReadSingleLittleEndian(bytes));
            bytes = bytes[sizeof(float)..];
        }
    }

    /// <summary>The whole track.</summary>
    /// <exception cref="AudioException">There was no sound in it, or it broke off within a sample.</exception>
    public MonoAudio Finish()
    {
        if (_inPart > 0)
        {
            throw new AudioException("The sound did not arrive whole. Try again.");
        }

        Push();
        if (_taken == 0)
        {
            throw new AudioException("There was no sound in this track.");
        }

        _store.Add(_resampler.Finish());
        return new MonoAudio(_store.ToArray(), _given);
    }

    private void Put(float sample)
    {
        _block[_inBlock++] = sample;
        if (_inBlock == Block)
        {
            Push();
        }
    }

    private void Push()
    {
        Span<float> block = _block.AsSpan(0, _inBlock);
        AudioFile.Tame(block);
        _store.Add(_resampler.Push(block));
        _taken += _inBlock;
        _inBlock = 0;
        if (_taken > _rate * 60L * AudioFile.LongestMinutes)
        {
            throw AudioFile.TooLong();
        }
    }
}
