namespace Scuff.App.Commands;

/// <summary>A line to type, and what it does.</summary>
/// <param name="Line">What is typed after the name of the program.</param>
/// <param name="Meaning">What it does, as a phrase.</param>
internal sealed record Example(string Line, string Meaning);
