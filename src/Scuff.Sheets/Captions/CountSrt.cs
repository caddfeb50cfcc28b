using System.Globalization;

namespace Scuff.Sheets.Captions;

/// <summary>The number of every count as SubRip captions, ready to be burned into the film by any program that does so.</summary>
internal sealed class CountSrt : ICaptionFormat
{
    public string Name => "counts-srt";

    public string Extension => ".counts.srt";

    public string MediaType => "application/x-subrip";

    public string Write(CaptionModel captions) => CaptionText.Srt(captions.Counts.Select(c => new CaptionCue(c.Start, c.End, c.Count.ToString(CultureInfo.InvariantCulture))));
}
