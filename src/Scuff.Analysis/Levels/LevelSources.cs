namespace Scuff.Analysis.Levels;

/// <summary>Where the limits come from. No single standard exists; where sources differ, the limit's own remark says which one is taken.</summary>
internal static class LevelSources
{
    /// <summary>A trade magazine's guide of 2014 and 2017.</summary>
    public const string Guide = "Guide to line dance level definitions, https://pdfslide.net/documents/guide-to-line-dance-level-definitionsindd.html";

    /// <summary>A newsletter's guidelines of about 2011.</summary>
    public const string Newsletter = "Newsletter level guidelines, https://www.artsentertainment.cc/Dance/Dance-Other/28959.html";

    /// <summary>A club's page for its classes.</summary>
    public const string ClassPage = "Dance levels of a class, http://palmcoastlinedance.weebly.com/dance-levels.html";

    /// <summary>Our own value, where nothing is published: it follows the trade's advice on bodies and tempo.</summary>
    public const string Design = "design value";
}
