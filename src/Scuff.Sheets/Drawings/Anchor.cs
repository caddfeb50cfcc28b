namespace Scuff.Sheets.Drawings;

/// <summary>Which end of a word stands at its place.</summary>
public enum Anchor
{
    /// <summary>Its first letter.</summary>
    Start,

    /// <summary>Its middle.</summary>
    Middle,

    /// <summary>Its last letter.</summary>
    End,
}
