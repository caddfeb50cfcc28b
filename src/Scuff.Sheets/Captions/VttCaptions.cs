namespace Scuff.Sheets.Captions;

/// <summary>The calls as WebVTT captions. Source: W3C, WebVTT: The Web Video Text Tracks Format, Candidate Recommendation 2019, section 4.</summary>
internal sealed class VttCaptions : ICaptionFormat
{
    public string Name => "vtt";

    public string Extension => ".vtt";

    public string MediaType => "text/vtt";

    public string Write(CaptionModel captions) => CaptionText.Vtt(captions.Title, captions.Calls);
}
