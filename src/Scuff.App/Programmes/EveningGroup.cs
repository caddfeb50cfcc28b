namespace Scuff.App.Programmes;

/// <summary>People who are there: one of her classes, or people of a level.</summary>
internal sealed record EveningGroup
{
    /// <summary>The class; null for people of whom only the level is known.</summary>
    public string? ClassId { get; set; }

    /// <summary>What she calls them; for a class its title as it was then.</summary>
    public string Name { get; set; } = "";

    /// <summary>Their level (<see cref="Analysis.Levels.LevelPhrases"/>); empty for that of the class, or when she does not say.</summary>
    public string Level { get; set; } = "";

    /// <summary>How many, about; at least 1.</summary>
    public int People { get; set; } = 1;
}
