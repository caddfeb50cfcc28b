namespace Scuff.Sheets;

/// <summary>A place where the pattern breaks, in words.</summary>
/// <param name="Where">Wall, count, facing and place in the music: <c>Wall 4 (starts at 9:00), after 16 counts, facing 6:00, about 1:07 min in</c>.</param>
/// <param name="What">What is done there: <c>restart, with count 8 as touch R together</c>.</param>
public sealed record SheetBreak(string Where, string What);
