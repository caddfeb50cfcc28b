using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;
using ZXing;
using ZXing.Common;

namespace Tests.Sheets;

/// <summary>Reads the picture of an address as a camera would: what is dark on the printed sheet, painted into dots, read by an independent reader.</summary>
internal static partial class AddressReading
{
    private const int Dots = 480;

    /// <summary>What a reader sees on a page of a PDF.</summary>
    public static string? OfPdf(byte[] file)
    {
        using PdfDocument document = PdfDocument.Open(file);
        foreach (var page in document.GetPages())
        {
            foreach (var path in page.Paths.Where(p => p.IsFilled && p.Count > 40))
            {
                List<Box> boxes = [.. path.Select(s => s.GetBoundingRectangle()).OfType<PdfRectangle>().Select(r => new Box(r.Left, -r.Top, r.Right, -r.Bottom))];
                if (Decode(boxes) is { } read)
                {
                    return read;
                }
            }
        }

        return null;
    }

    /// <summary>What a reader sees in the paths of a page's pictures.</summary>
    public static string? OfHtml(string page)
        => PathData().Matches(page).Select(m => Decode(Boxes(m.Groups[1].Value))).FirstOrDefault(read => read is not null);

    /// <summary>What a reader sees in the shapes of a document for word processors.</summary>
    public static string? OfDocx(XDocument document)
    {
        XNamespace a = "http://schemas.openxmlformats.org/drawingml/2006/main";
        foreach (XElement path in document.Descendants(a + "path"))
        {
            List<Box> boxes = [];
            List<(double X, double Y)> figure = [];
            foreach (XElement step in path.Elements())
            {
                if (step.Name == a + "close")
                {
                    boxes.Add(Around(figure));
                    figure.Clear();
                    continue;
                }

                figure.AddRange(step.Elements(a + "pt").Select(p => ((double)p.Attribute("x")!, (double)p.Attribute("y")!)));
            }

            if (boxes.Count > 40 && Decode(boxes) is { } read)
            {
                return read;
            }
        }

        return null;
    }

    private static List<Box> Boxes(string data) =>
    [
        .. data.Split('M', StringSplitOptions.RemoveEmptyEntries)
            .Select(figure => (double[])[.. Numbers().Matches(figure).Select(n => double.Parse(n.Value, CultureInfo.InvariantCulture))])
            .Where(n => n.Length == 8)
            .Select(n => Around([(n[0], n[1]), (n[2], n[3]), (n[4], n[5]), (n[6], n[7])])),
    ];

    private static Box Around(IReadOnlyCollection<(double X, double Y)> points)
        => new(points.Min(p => p.X), points.Min(p => p.Y), points.Max(p => p.X), points.Max(p => p.Y));

    private static string? Decode(List<Box> dark)
    {
        if (dark.Count == 0)
        {
            return null;
        }

        double left = dark.Min(b => b.Left);
        double top = dark.Min(b => b.Top);
        double scale = Dots * 0.8 / Math.Max(dark.Max(b => b.Right) - left, dark.Max(b => b.Bottom) - top);
        byte[] dots = new byte[Dots * Dots];
        Array.Fill(dots, byte.MaxValue);
        foreach (Box box in dark)
        {
            for (int y = Place(box.Top - top); y < Place(box.Bottom - top); y++)
            {
                for (int x = Place(box.Left - left); x < Place(box.Right - left); x++)
                {
                    dots[(y * Dots) + x] = 0;
                }
            }
        }

        BarcodeReaderGeneric reader = new() { Options = new DecodingOptions { PossibleFormats = [BarcodeFormat.QR_CODE], TryHarder = true } };
        return reader.Decode(new RGBLuminanceSource(dots, Dots, Dots, RGBLuminanceSource.BitmapFormat.Gray8))?.Text;

        int Place(double at) => (int)Math.Round((Dots * 0.1) + (at * scale));
    }

    [GeneratedRegex(" d=\"([^\"]{400,})\"")]
    private static partial Regex PathData();

    [GeneratedRegex(@"-?\d+(?:\.\d+)?")]
    private static partial Regex Numbers();

    private readonly record struct Box(double Left, double Top, double Right, double Bottom);
}
