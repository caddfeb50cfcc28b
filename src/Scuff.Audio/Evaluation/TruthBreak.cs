using System.Text.Json.Serialization;

namespace Scuff.Audio.Evaluation;

/// <summary>A break as it is.</summary>
/// <param name="Start">Seconds from the start of the sound: for a stop, the last hit.</param>
/// <param name="End">Seconds from the start of the sound: where the next section begins.</param>
/// <param name="Kind"><see cref="AnswerBreak.Stop"/> or <see cref="AnswerBreak.Drop"/>.</param>
/// <param name="Beats">Length in beats.</param>
public sealed record TruthBreak(double Start, double End, string Kind, int Beats)
{
    /// <summary>The break as an answer would give it.</summary>
    [JsonIgnore]
    public AnswerBreak AsAnswer => new(Start, End, Kind);
}
