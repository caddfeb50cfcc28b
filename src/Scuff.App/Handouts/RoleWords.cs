using Scuff.Repertoire;

namespace Scuff.App.Handouts;

/// <summary>What a dance is, or was, in a session, and how well a class knows it, in words for tables and calendars.</summary>
internal static class RoleWords
{
    /// <summary>What is planned: <c>Teach</c>.</summary>
    public static string Planned(ItemRole role) => role switch
    {
        ItemRole.WarmUp => "Warm up",
        ItemRole.Revised => "Revise",
        ItemRole.Taught => "Teach",
        ItemRole.Requested => "Asked for",
        ItemRole.Danced => "Dance",
        ItemRole.CoolDown => "Cool down",
        _ => throw new ArgumentOutOfRangeException(nameof(role)),
    };

    /// <summary>What was done: <c>Taught</c>.</summary>
    public static string Done(ItemRole role) => role switch
    {
        ItemRole.WarmUp => "Warmed up",
        ItemRole.Revised => "Revised",
        ItemRole.Taught => "Taught",
        ItemRole.Requested => "Asked for",
        ItemRole.Danced => "Danced",
        ItemRole.CoolDown => "Cooled down",
        _ => throw new ArgumentOutOfRangeException(nameof(role)),
    };

    /// <summary>How well a class knows a dance: <c>with cues</c>.</summary>
    public static string Known(Knowing knowing) => knowing switch
    {
        Knowing.Follows => "follows",
        Knowing.KnowsTheStart => "knows the start",
        Knowing.KnowsWithCues => "with cues",
        Knowing.KnowsAlone => "alone",
        _ => throw new ArgumentOutOfRangeException(nameof(knowing)),
    };
}
