namespace Killed;

/// <summary>What came of killing the writer many times.</summary>
/// <param name="Kills">How often it was killed.</param>
/// <param name="Told">How many writes it had told as done.</param>
/// <param name="InFlight">Deeds that were going on when it was killed and would have changed something, by kind: how often none of it was there, and how often all.</param>
/// <param name="Faults">Everything that was lost, halfway or unsound.</param>
internal sealed record KillReport(
    int Kills, int Told, IReadOnlyDictionary<string, (int Nothing, int Whole)> InFlight, IReadOnlyList<string> Faults);
