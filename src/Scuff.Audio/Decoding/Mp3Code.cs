using System.Globalization;

namespace Scuff.Audio.Decoding;

/// <summary>One of the prefix codes of layer III, as a table to look bits up in.</summary>
internal sealed class Mp3Code
{
    /// <summary>Bits that the first look takes.</summary>
    public const int FirstBits = 9;

    private readonly int[] _entries;

    /// <summary>A code from its values in the order of the code words.</summary>
    /// <param name="values">Two hexadecimal digits a value.</param>
    /// <param name="lengths">Bits of the code word of each value, a digit to base 36.</param>
    public Mp3Code(string values, string lengths)
    {
        List<int> entries = [.. new int[1 << FirstBits]];
        long word = 0;
        for (int i = 0; i < lengths.Length;)
        {
            // word counts in steps of the longest code there may be, 32 bits
            int length = LengthAt(lengths, i);
            if (length <= FirstBits)
            {
                int first = (int)(word >> (32 - FirstBits));
                int entry = (length << 8) | ValueAt(values, i);
                for (int k = 0; k < 1 << (FirstBits - length); k++)
                {
                    entries[first + k] = entry;
                }

                word += 1L << (32 - length);
                i++;
                continue;
            }

            // all longer words with these first bits share a second table
            long end = ((word >> (32 - FirstBits)) + 1) << (32 - FirstBits);
            int last = i;
            int more = 0;
            for (long at = word; at < end; last++)
            {
                more = Math.Max(more, LengthAt(lengths, last) - FirstBits);
                at += 1L << (32 - LengthAt(lengths, last));
            }

            entries[(int)(word >> (32 - FirstBits))] = -((entries.Count << 4) | more);
            for (; i < last; i++)
            {
                int rest = LengthAt(lengths, i) - FirstBits;
                entries.AddRange(Enumerable.Repeat((rest << 8) | ValueAt(values, i), 1 << (more - rest)));
                word += 1L << (32 - rest - FirstBits);
            }
        }

        _entries = [.. entries];
    }

    /// <summary>
    /// By the first 9 bits: the length of the word times 256 plus its value; or less than 0, minus (16 times the place of a second table plus
    /// the bits to look up there), whose lengths are without these 9 bits.
    /// </summary>
    public ReadOnlySpan<int> Entries => _entries;

    private static int LengthAt(string lengths, int i) => lengths[i] <= '9' ? lengths[i] - '0' : lengths[i] - 'a' + 10;

    private static int ValueAt(string values, int i) => int.Parse(values.AsSpan(2 * i, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture);
}
