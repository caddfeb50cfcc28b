using System.Collections;
using System.Globalization;
using System.Text;
using QRCoder;
using Scuff.App.Web.Contract;

namespace Scuff.App.Web.Hall;

/// <summary>Addresses as pictures for a camera (QR codes, ISO/IEC 18004).</summary>
internal static class HallSigns
{
    /// <summary>The picture of an address.</summary>
    public static HallSign Of(string address)
    {
        using QRCodeGenerator generator = new();
        using QRCodeData code = generator.CreateQrCode(address, QRCodeGenerator.ECCLevel.M);
        List<BitArray> rows = code.ModuleMatrix;
        StringBuilder path = new();
        for (int y = 0; y < rows.Count; y++)
        {
            // a run of dark squares is one stroke
            for (int x = 0; x < rows[y].Length; x++)
            {
                int start = x;
                while (x < rows[y].Length && rows[y][x])
                {
                    x++;
                }

                if (x > start)
                {
                    path.Append(CultureInfo.InvariantCulture, $"M{start} {y}h{x - start}v1h-{x - start}z");
                }
            }
        }

        return new HallSign(rows.Count, path.ToString());
    }
}
