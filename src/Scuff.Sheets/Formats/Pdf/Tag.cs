namespace Scuff.Sheets.Formats.Pdf;

/// <summary>An element of the tree that tells a reader what each thing on the page is. Source: PDF 1.7 (ISO 32000-1), 14.8.4.</summary>
/// <param name="parent">What it is part of; null for the document itself.</param>
/// <param name="name">Its structure type: <c>H1</c>, <c>P</c>, <c>TR</c>.</param>
internal sealed class Tag(Tag? parent, string name)
{
    /// <summary>What it is part of.</summary>
    public Tag? Parent { get; } = parent;

    /// <summary>Its structure type.</summary>
    public string Name { get; } = name;

    /// <summary>What a picture shows, in words.</summary>
    public string? Alternative { get; init; }

    /// <summary>What a heading of a table heads: <c>Row</c> or <c>Column</c>.</summary>
    public string? Scope { get; init; }

    /// <summary>Whether it goes on as the same element on the next page.</summary>
    public bool GoesOn => Name is "Table" or "L";

    /// <summary>It and what it is part of, outermost first, without the document.</summary>
    public IEnumerable<Tag> Path => Parent is null ? [] : Parent.Path.Append(this);

    /// <summary>A new element in this one.</summary>
    public Tag Add(string child) => new(this, child);
}
