using System.Runtime.Intrinsics;
using Scuff.Audio.Stretching;

namespace Tests.Audio.Stretching;

public sealed class MedianNetworkTests
{
    [Fact]
    public void It_gives_the_middle_one_of_any_seventeen_numbers()
    {
        Random random = new(7);
        for (int run = 0; run < 200; run++)
        {
            Vector256<float>[] rows = [.. Enumerable.Range(0, MedianNetwork.Count).Select(_ => Vector256.Create(Some(), Some(), Some(), Some(), Some(), Some(), Some(), Some()))];
            float[] expected = [.. Enumerable.Range(0, 8).Select(lane => rows.Select(r => r[lane]).Order().ElementAt(MedianNetwork.Count / 2))];

            Vector256<float> median = MedianNetwork.Of(rows);

            Assert.Equal(expected, Enumerable.Range(0, 8).Select(lane => median[lane]));
        }

        // few different values, so that equal ones stand side by side
        float Some() => random.Next(12);
    }
}
