using System.Globalization;
using System.Text;
using Scuff.App.Web.Contract;
using Scuff.Sheets.Drawings;

namespace Scuff.App.Web.Hall;

/// <summary>Addresses as pictures for a camera, as the page draws them.</summary>
internal static class HallSigns
{
    /// <summary>The picture of an address.</summary>
    public static HallSign Of(string address)
    {
        IReadOnlyList<(int X, int Y, int Length)> runs = AddressPicture.Runs(address, out int size);
        StringBuilder path = new();
        foreach ((int x, int y, int length) in runs)
        {
            // a run of dark squares is one stroke
            path.Append(CultureInfo.InvariantCulture, $"M{x} {y}h{length}v1h-{length}z");
        }

        return new HallSign(size, path.ToString());
    }
}
