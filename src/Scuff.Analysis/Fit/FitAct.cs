namespace Scuff.Analysis.Fit;

/// <summary>One thing that may happen at a place of a part, as the search sees it.</summary>
/// <param name="Type">What it is.</param>
/// <param name="Length">Counts of music it takes; none for a restart.</param>
/// <param name="Price">What it costs wherever in the music it happens, without <see cref="FitModel.NewKind"/>.</param>
/// <param name="Kind">Acts of the same kind are learnt once.</param>
/// <param name="Next">For a restart: the part that begins; else -1.</param>
/// <param name="Content">What is danced, an index for who made the model; -1 for nothing.</param>
public readonly record struct FitAct(FitActType Type, int Length, int Price, int Kind, int Next, int Content);
