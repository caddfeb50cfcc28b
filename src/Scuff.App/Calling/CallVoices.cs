using Scuff.Audio.Decoding;
using Scuff.Audio.Voices;

namespace Scuff.App.Calling;

/// <summary>The voices of a call track, from what was typed.</summary>
internal static class CallVoices
{
    /// <summary>The word for the clips that come with Scuff.</summary>
    public const string Shipped = "shipped";

    /// <summary>The word for the voice of the machine.</summary>
    public const string System = "system";

    /// <summary>The voices, the dearest first; null after telling what is wrong.</summary>
    /// <param name="typed"><see cref="Shipped"/>, <see cref="System"/>, or a folder of recordings.</param>
    /// <param name="terminal">Where troubles are told.</param>
    public static IReadOnlyList<IVoice>? Of(string typed, Terminal terminal)
    {
        ShippedVoice shipped = new();
        switch (typed)
        {
            case Shipped:
                return [shipped];
            case System:
                if (SystemVoice.TryFind() is { } machine)
                {
                    return [machine, shipped];
                }

                terminal.Tell("Scuff finds no voice on this machine (say, espeak-ng, flite or that of Windows); the voice that comes with Scuff calls instead.");
                return [shipped];
            default:
                try
                {
                    return [RecordedVoice.OfFolder(terminal.FullPath(typed)), shipped];
                }
                catch (AudioException trouble)
                {
                    terminal.Tell($"{typed}: {trouble.Message}");
                    return null;
                }
        }
    }
}
