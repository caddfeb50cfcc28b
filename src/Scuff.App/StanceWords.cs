using Scuff.Stance;

namespace Scuff.App;

/// <summary>Feet and weight as scripts and tables show them.</summary>
internal static class StanceWords
{
    /// <summary>L, R, both or none.</summary>
    public static string Of(ActingFoot foot) => foot switch
    {
        ActingFoot.Left => "L",
        ActingFoot.Right => "R",
        ActingFoot.Both => "both",
        _ => "none",
    };

    /// <summary>L, R, both or unknown.</summary>
    public static string Of(Weight weight) => weight switch
    {
        Weight.Left => "L",
        Weight.Right => "R",
        Weight.Shared => "both",
        _ => "unknown",
    };
}
