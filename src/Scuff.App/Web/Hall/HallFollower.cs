using System.Threading.Channels;

namespace Scuff.App.Web.Hall;

/// <summary>Somebody who is told every change, in order. What is told is bytes, made once for all.</summary>
internal sealed class HallFollower
{
    // Who is that far behind has lost the network: it is let go, and gets the latest when it comes back.
    private const int MostWaiting = 256;

    private readonly Channel<ReadOnlyMemory<byte>> _waiting =
        Channel.CreateBounded<ReadOnlyMemory<byte>>(new BoundedChannelOptions(MostWaiting) { SingleReader = true });

    /// <summary>What it has still to be told; ends when it is let go.</summary>
    public ChannelReader<ReadOnlyMemory<byte>> Waiting => _waiting.Reader;

    /// <summary>Tells it something.</summary>
    /// <returns>Whether it is still followed; false lets it go.</returns>
    public bool Tell(ReadOnlyMemory<byte> message)
    {
        if (_waiting.Writer.TryWrite(message))
        {
            return true;
        }

        _waiting.Writer.TryComplete();
        return false;
    }

    /// <summary>Lets it go when it has been told what waits.</summary>
    public void End() => _waiting.Writer.TryComplete();
}
