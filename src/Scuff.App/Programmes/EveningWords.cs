namespace Scuff.App.Programmes;

/// <summary>What is said of a programme.</summary>
/// <param name="Sure">How sure it is: <c>Proven: no better one exists.</c>, <c>At most 1.2 percent from the best.</c></param>
/// <param name="Items">For each line, why it stands there: a sentence each, what weighs most first.</param>
/// <param name="Common">What belongs to no single line, a sentence each.</param>
/// <param name="Missed">What was asked for and is not in it, a sentence each, in the order of <see cref="EveningProgramme.Missed"/>.</param>
internal sealed record EveningWords(
    string Sure,
    IReadOnlyList<IReadOnlyList<string>> Items,
    IReadOnlyList<string> Common,
    IReadOnlyList<string> Missed);
