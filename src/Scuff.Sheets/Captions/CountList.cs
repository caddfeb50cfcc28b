using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Scuff.Sheets.Captions;

/// <summary>Every count with wall, section, facing and what is danced, as JSON, for a program that draws them over the film.</summary>
internal sealed partial class CountList : ICaptionFormat
{
    private static readonly Json Readable = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    public string Name => "counts";

    public string Extension => ".counts.json";

    public string MediaType => "application/json";

    public string Write(CaptionModel captions)
        => JsonSerializer.Serialize(new Overlay(captions.Title, [.. captions.Counts.Select(Rounded)]), Readable.Overlay) + "\n";

    private static CaptionCount Rounded(CaptionCount count) => count with { Start = Math.Round(count.Start, 4), End = Math.Round(count.End, 4) };

    internal sealed record Overlay(string Dance, IReadOnlyList<CaptionCount> Counts);

    [JsonSerializable(typeof(Overlay))]
    internal sealed partial class Json : JsonSerializerContext;
}
