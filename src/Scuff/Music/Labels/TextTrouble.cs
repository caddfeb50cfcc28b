namespace Scuff.Music.Labels;

/// <summary>What could not be understood in a text about a track.</summary>
/// <param name="Line">The line, from 1; 0 for the text as a whole.</param>
/// <param name="Sentence">What is wrong, a sentence.</param>
public sealed record TextTrouble(int Line, string Sentence)
{
    /// <summary>The sentence with its place.</summary>
    public override string ToString() => Line == 0 ? Sentence : FormattableString.Invariant($"line {Line}: {Sentence}");
}
