namespace Scuff.Sheets;

/// <summary>A size of paper.</summary>
public enum Paper
{
    /// <summary>210 by 297 mm. Source: ISO 216.</summary>
    A4,

    /// <summary>8½ by 11 inches. Source: ANSI/ASME Y14.1, size A.</summary>
    Letter,
}
