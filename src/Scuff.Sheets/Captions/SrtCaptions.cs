namespace Scuff.Sheets.Captions;

/// <summary>The calls as SubRip captions: a number, times with a comma, the words, an empty line (common practice; no standard is published).</summary>
internal sealed class SrtCaptions : ICaptionFormat
{
    public string Name => "srt";

    public string Extension => ".srt";

    public string MediaType => "application/x-subrip";

    public string Write(CaptionModel captions) => CaptionText.Srt(captions.Calls);
}
