namespace Scuff.App.Json;

/// <summary>One action as danced, in JSON.</summary>
/// <param name="Wall">The wall (repetition), from 1.</param>
/// <param name="Section">Section number, or the name of a part, tag or the ending.</param>
/// <param name="Count">Printed count (<c>3&amp;</c>).</param>
/// <param name="Foot">L, R, both or none.</param>
/// <param name="Action">The action in words.</param>
/// <param name="Weight">Weight after it: L, R, both or unknown.</param>
/// <param name="Facing">Facing after it (<c>4:30</c>), or null when unknown.</param>
/// <param name="Line">One-based line of the text.</param>
internal sealed record DancedEvent(int Wall, SectionName Section, string Count, string Foot, string Action, string Weight, string? Facing, int Line);
