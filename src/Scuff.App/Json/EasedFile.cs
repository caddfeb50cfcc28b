using System.Text.Json.Serialization;
using Scuff.Analysis.Levels;
using Scuff.App.Easing;
using Scuff.App.Files;
using Scuff.Prose;

namespace Scuff.App.Json;

/// <summary>What <c>easier --json</c> says about one file. The names are fixed: scripts depend on them.</summary>
internal sealed record EasedFile
{
    /// <summary>The file as named.</summary>
    public required string File { get; init; }

    /// <summary>Why it could not be read; absent when it was.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)]
    public string? Error { get; init; }

    /// <summary>The moves that are worth making easier, in the order of the text.</summary>
    public required IReadOnlyList<EasedMoveRow> Moves { get; init; }

    /// <summary>A file that was read.</summary>
    public static EasedFile Of(DanceInput input, EasierOffers offers, int most) => new()
    {
        File = input.Name,
        Moves =
        [
            .. offers.Places.Select(place => new EasedMoveRow(
                place.Place.Words,
                place.Place.Line,
                Phrasing.Describe(place.Move),
                LevelPhrases.Name(place.Demand.Level),
                [.. offers.For(place, most).Select(EasedOfferRow.Of)])),
        ],
    };

    /// <summary>A file that could not be read.</summary>
    public static EasedFile Unreadable(DanceInput input) => new() { File = input.Name, Error = input.Trouble, Moves = [] };
}
