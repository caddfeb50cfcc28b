using Scuff.Sheets.Drawings;

namespace Scuff.Sheets;

/// <summary>Where students find the page of a dance.</summary>
/// <param name="Lead">What it is for, as printed before it.</param>
/// <param name="Address">The address.</param>
/// <param name="Picture">It for a camera.</param>
public sealed record SheetAddress(string Lead, string Address, Drawing Picture);
