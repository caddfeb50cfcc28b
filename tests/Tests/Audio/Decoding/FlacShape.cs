namespace Tests.Audio.Decoding;

/// <summary>How <see cref="FlacFile"/> writes.</summary>
/// <param name="Kind">Kind of subframe: 0 constant, 1 verbatim, 8 to 12 fixed of order 0 to 4, 32 and above predicted of order 1 and above.</param>
/// <param name="Stereo">0 for channels apart, 8 left and difference, 9 difference and right, 10 mean and difference.</param>
/// <param name="Wasted">Low bits that are zero in every sample and not written.</param>
/// <param name="Block">Samples a block.</param>
/// <param name="Variable">Whether blocks are numbered by their first sample.</param>
/// <param name="KnowsLength">Whether the head says how many samples there are.</param>
/// <param name="Method">0 for parameters of 4 bits, 1 for 5.</param>
/// <param name="Partitions">Order of the partitions.</param>
/// <param name="Escape">Whether what is left over is written as plain numbers.</param>
internal sealed record FlacShape(
    int Kind = 10,
    int Stereo = 0,
    int Wasted = 0,
    int Block = 192,
    bool Variable = false,
    bool KnowsLength = true,
    int Method = 0,
    int Partitions = 2,
    bool Escape = false);
