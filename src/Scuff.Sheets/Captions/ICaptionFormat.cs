namespace Scuff.Sheets.Captions;

/// <summary>A way to write captions. A class that implements it, with a constructor without arguments, is found and offered; no list names it.</summary>
public interface ICaptionFormat
{
    /// <summary>Its word (<c>vtt</c>).</summary>
    string Name { get; }

    /// <summary>Extension of its files, with the dot.</summary>
    string Extension { get; }

    /// <summary>Its media type.</summary>
    string MediaType { get; }

    /// <summary>The captions as text; lines end in one line feed.</summary>
    string Write(CaptionModel captions);
}
