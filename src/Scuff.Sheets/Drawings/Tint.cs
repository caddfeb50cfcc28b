namespace Scuff.Sheets.Drawings;

/// <summary>What a shape is drawn with. On paper every tint but <see cref="Paper"/> and <see cref="None"/> is ink.</summary>
public enum Tint
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>The colour of text.</summary>
    Ink,

    /// <summary>The colour of the page, to cover what lies below.</summary>
    Paper,

    /// <summary>The colour of edges.</summary>
    Line,
}
