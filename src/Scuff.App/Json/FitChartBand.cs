namespace Scuff.App.Json;

/// <summary>What is danced over some counts: intro, wall, tag or hold, from a count to before another, with wall, part, name and facing.</summary>
internal sealed record FitChartBand(string Kind, int From, int To, int Wall, string Part, string Name, string? Facing, bool Starts, bool IsCut);
