namespace Scuff.Sheets.Captions;

/// <summary>A mark for each section as WebVTT chapters. Source: W3C, WebVTT, section 4.6 (files using chapter title text).</summary>
internal sealed class ChapterVtt : ICaptionFormat
{
    public string Name => "chapters";

    public string Extension => ".chapters.vtt";

    public string MediaType => "text/vtt";

    public string Write(CaptionModel captions) => CaptionText.Vtt(captions.Title, captions.Chapters);
}
