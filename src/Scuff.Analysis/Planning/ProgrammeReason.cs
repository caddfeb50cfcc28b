namespace Scuff.Analysis.Planning;

/// <summary>One item of what a choice is worth. Equal by value.</summary>
/// <param name="Kind">What it is for.</param>
/// <param name="Points">What it brings; negative for what it costs; 0 for what she decided.</param>
/// <param name="Value">The figure behind it, as <see cref="ProgrammeReasonKind"/> says.</param>
/// <param name="About">The dance or group behind it, by id or name; empty for none.</param>
public sealed record ProgrammeReason(ProgrammeReasonKind Kind, int Points, int Value = 0, string About = "");
