using Scuff.Prose;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;

namespace Scuff.App.Explaining;

/// <summary>What is danced on a count, in words.</summary>
internal static class DancedWords
{
    /// <summary>The action with what goes along with it: a clap, a body angled for style.</summary>
    public static string Of(TimedStep step)
    {
        string words = Phrasing.Describe(step.Action);
        foreach (StepAction with in step.Written.With)
        {
            words += " and " + Phrasing.Describe(with);
        }

        Turn angle = step.Written.BodyAngle;
        return angle == Turn.None ? words : $"{words}, body angled {Phrasing.TurnWords(angle)}";
    }
}
