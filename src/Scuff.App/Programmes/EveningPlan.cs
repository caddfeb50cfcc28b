using System.Text.Json;
using System.Text.Json.Serialization;

namespace Scuff.App.Programmes;

/// <summary>
/// What she wishes for an evening, the programme that was made of it, and how the night went so far: the document that <see cref="Repertoire.ClubEvening.Plan"/>
/// keeps. Its day, beginning, length and place stand in the evening itself. Lists are in her order unless said otherwise.
/// </summary>
/// <remarks>
/// Nobody changes a plan: another is made <c>with</c> something else. What a document may leave out can be set all the same, because the compiler's JSON
/// gives what can only be set at the beginning nothing instead of its default.
/// </remarks>
internal sealed record EveningPlan
{
    /// <summary>The newest form of the document that this program writes. Fields may come without another number; a number says that old readers misunderstand.</summary>
    public const int NewestVersion = 1;

    /// <summary>An evening of which nothing is said yet.</summary>
    public static EveningPlan Empty { get; } = new();

    /// <summary>The form of this document.</summary>
    public int Version { get; set; } = NewestVersion;

    /// <summary>Who is there. Empty when she does not say: all dances of the club are taken to be known to all.</summary>
    public IReadOnlyList<EveningGroup> Groups { get; set; } = [];

    /// <summary>Rests and lessons, by the minute they begin at.</summary>
    public IReadOnlyList<EveningStop> Stops { get; set; } = [];

    /// <summary>Minutes of easy dances at the beginning; 0 for none. A class has them, a social seldom.</summary>
    public int WarmUpMinutes { get; set; }

    /// <summary>Minutes of revision after the warm-up; 0 for none.</summary>
    public int RevisionMinutes { get; set; }

    /// <summary>Minutes of calm dances at the end; 0 for none.</summary>
    public int CoolDownMinutes { get; set; }

    /// <summary>The wished course of effort: the id of one of <see cref="EveningCurve.All"/>. One that is not known counts as the first.</summary>
    public string Curve { get; set; } = EveningCurve.All[0].Id;

    /// <summary>The dance that opens; empty when she does not say.</summary>
    public string OpeningId { get; set; } = "";

    /// <summary>The dance that closes; empty when she does not say.</summary>
    public string ClosingId { get; set; } = "";

    /// <summary>What was asked for.</summary>
    public IReadOnlyList<EveningRequest> Requests { get; set; } = [];

    /// <summary>What she has decided: pins, forbidden dances, songs, splits, what comes before what.</summary>
    public IReadOnlyList<EveningPin> Pins { get; set; } = [];

    /// <summary>Whether two dances may be danced at once to one song.</summary>
    public bool MaySplit { get; set; } = true;

    /// <summary>Only dances with one of these tags are danced, besides requested and pinned ones; empty for all of the club.</summary>
    public IReadOnlyList<string> OnlyTags { get; set; } = [];

    /// <summary>Numbers of <see cref="Analysis.Planning.ProgrammeRules"/> that she changed, by their names (<c>SecondsBetween</c>). Names not known are left alone.</summary>
    public IReadOnlyDictionary<string, int> Rules { get; set; } = new Dictionary<string, int>();

    /// <summary>The programme she sees; null before the first. While a night goes on: what is still to come.</summary>
    public EveningProgramme? Programme { get; set; }

    /// <summary>The night itself; null until it begins.</summary>
    public EveningNight? Night { get; set; }

    /// <summary>What a newer program has added stays in it.</summary>
    [JsonExtensionData]
    public Dictionary<string, JsonElement>? More { get; set; }

    /// <summary>Reads a document; an empty text gives <see cref="Empty"/>.</summary>
    /// <param name="text">What <see cref="Text"/> wrote.</param>
    /// <exception cref="FormatException">It is no such document, or of a newer form; the message says which, for her to read.</exception>
    public static EveningPlan Read(string text)
    {
        if (text.Length == 0)
        {
            return Empty;
        }

        EveningPlan? plan;
        try
        {
            plan = JsonSerializer.Deserialize(text, EveningJson.Default.EveningPlan);
        }
        catch (JsonException trouble)
        {
            throw new FormatException("The plan of this evening cannot be read. A newer Scuff may have written it; the evening itself is still there.", trouble);
        }

        return plan switch
        {
            null => Empty,
            { Version: > NewestVersion } => throw new FormatException("The plan of this evening was written by a newer Scuff. Open it there; it is left as it is."),
            _ => plan,
        };
    }

    /// <summary>The document as the club keeps it.</summary>
    public string Text() => JsonSerializer.Serialize(this, EveningJson.Default.EveningPlan);
}
