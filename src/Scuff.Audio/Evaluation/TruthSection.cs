using System.Text.Json.Serialization;

namespace Scuff.Audio.Evaluation;

/// <summary>A section as it is.</summary>
/// <param name="Start">Seconds from the start of the sound; always a count 1.</param>
/// <param name="End">Seconds from the start of the sound: where the next begins.</param>
/// <param name="Label">Equal labels are the same music.</param>
/// <param name="Name">What musicians call it: verse, chorus.</param>
/// <param name="Beats">Length in beats.</param>
/// <param name="Bars">Length in bars, shortened ones included.</param>
public sealed record TruthSection(double Start, double End, string Label, string Name, int Beats, int Bars)
{
    /// <summary>The section as an answer would give it.</summary>
    [JsonIgnore]
    public AnswerSection AsAnswer => new(Start, End, Label);
}
