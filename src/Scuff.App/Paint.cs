namespace Scuff.App;

/// <summary>Colours for a terminal, or none.</summary>
/// <param name="IsOn">Whether there are colours; off by default.</param>
internal readonly record struct Paint(bool IsOn)
{
    /// <summary>The words in a tone.</summary>
    public string Of(Tone tone, string words) => IsOn && words.Length > 0
        ? Start(tone) + words + "\e[0m"
        : words;

    private static string Start(Tone tone) => tone switch
    {
        Tone.Bad => "\e[1;31m",
        Tone.Open => "\e[1;33m",
        Tone.Good => "\e[32m",
        Tone.Name => "\e[1m",
        Tone.Soft => "\e[2m",
        _ => throw new ArgumentOutOfRangeException(nameof(tone)),
    };
}
