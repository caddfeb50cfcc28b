using Scuff.Dances;

namespace Scuff.Analysis.Levels;

/// <summary>The level that the published definitions give a dance.</summary>
/// <param name="Level">The easiest level that allows everything in it.</param>
/// <param name="Reasons">Everything that the easiest level does not allow, hardest first.</param>
/// <param name="IsComplete">Whether all words could be read; if not, the dance may be harder than this.</param>
public sealed record ComputedLevel(Level Level, ValueList<LevelReason> Reasons, bool IsComplete)
{
    /// <summary>The reasons why it is not one level easier.</summary>
    public IEnumerable<LevelReason> Deciding => Reasons.Where(reason => reason.Level == Level);

    /// <summary>What would bring it one level down: <c>drop the restart and shorten to 48 counts</c>; empty at the easiest level.</summary>
    public string OneLevelDown => LevelPhrases.Join([.. Deciding.Select(reason => reason.Remedy)]);
}
