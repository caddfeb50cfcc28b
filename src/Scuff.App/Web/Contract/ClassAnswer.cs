namespace Scuff.App.Web.Contract;

/// <summary>One class, with all that the room shows of it at first.</summary>
/// <param name="Item">The class.</param>
/// <param name="Next">The session that comes next: planned, or proposed and not kept yet; null when the class has ended.</param>
/// <param name="Offered">Dances to dance again next, the most due first.</param>
/// <param name="History">Sessions that were held, the last first: a first page.</param>
/// <param name="Held">How many were held in all.</param>
/// <param name="Dances">The dances it knows: a first page.</param>
/// <param name="Known">How many it knows in all.</param>
internal sealed record ClassAnswer(
    ClassItem Item,
    SessionAnswer? Next,
    RevisionOffer? Offered,
    IReadOnlyList<SessionAnswer> History,
    int Held,
    IReadOnlyList<KnownDance> Dances,
    int Known);

/// <summary>Dances to dance again.</summary>
/// <param name="Words">The heading, such as <c>Dance these three next week</c>.</param>
/// <param name="Dances">The dances.</param>
internal sealed record RevisionOffer(string Words, IReadOnlyList<OfferedDance> Dances);

/// <summary>A dance to dance again.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Title">Its title.</param>
/// <param name="Reason">Why, as a sentence.</param>
/// <param name="Minutes">Minutes to plan for it.</param>
internal sealed record OfferedDance(string DanceId, string Title, string Reason, int Minutes);

/// <summary>A session of a class.</summary>
/// <param name="Id">Its name in addresses; empty for one that is only proposed.</param>
/// <param name="Date">The day, as <c>2026-12-01</c>.</param>
/// <param name="Starts">When it begins, as <c>19:00</c>; null when nobody says.</param>
/// <param name="Minutes">How long it lasts.</param>
/// <param name="IsHeld">Whether it was held.</param>
/// <param name="People">How many were there; null when she does not say.</param>
/// <param name="HowItWent">Her words.</param>
/// <param name="Items">What was danced or is planned, in order.</param>
/// <param name="When">The day and time in words.</param>
/// <param name="Words">What was danced, in a sentence or two; empty when nothing is planned.</param>
/// <param name="Past">For a planned one whose day is over, the question whether it was held; else empty.</param>
internal sealed record SessionAnswer(
    string Id,
    string Date,
    string? Starts,
    int Minutes,
    bool IsHeld,
    int? People,
    string HowItWent,
    IReadOnlyList<SessionLine> Items,
    string When,
    string Words,
    string Past);

/// <summary>A dance within a session.</summary>
/// <param name="Role">What it is there for: warm-up, revised, taught, requested, danced or cool-down.</param>
/// <param name="DanceId">The dance; null for one that the club does not have.</param>
/// <param name="Title">Its title.</param>
/// <param name="Minutes">Minutes planned or spent; null when she does not say.</param>
/// <param name="Note">Her words about it.</param>
/// <param name="Knowing">How well they knew it that day, 1 follows to 4 alone; null when she did not mark it.</param>
internal sealed record SessionLine(string Role, string? DanceId, string Title, int? Minutes, string Note, int? Knowing);

/// <summary>A plan whose time was filled.</summary>
/// <param name="Items">What is danced, in the order of a class; what she had put in is among it.</param>
/// <param name="Sentences">What found no room, a sentence each.</param>
internal sealed record FilledSession(IReadOnlyList<SessionLine> Items, IReadOnlyList<string> Sentences);

/// <summary>What she says of a session.</summary>
/// <param name="Date">The day, as <c>2026-12-01</c>.</param>
/// <param name="Starts">When it begins; null for the usual time.</param>
/// <param name="Minutes">How long it lasts; null for the usual.</param>
/// <param name="IsHeld">Whether it was held.</param>
/// <param name="People">How many were there; null for not said.</param>
/// <param name="HowItWent">Her words.</param>
/// <param name="Items">What was danced or is planned, in order.</param>
internal sealed record SessionBody(string Date, string? Starts, int? Minutes, bool IsHeld, int? People, string HowItWent, IReadOnlyList<SessionLine> Items);

/// <summary>A session is kept.</summary>
/// <param name="Session">As it is now.</param>
/// <param name="Class">The class as it is now.</param>
internal sealed record SessionSaved(SessionAnswer Session, ClassAnswer Class);

/// <summary>A page of the sessions that were held.</summary>
/// <param name="Rows">The sessions, the last first.</param>
/// <param name="Total">How many there are in all.</param>
internal sealed record HistoryPage(IReadOnlyList<SessionAnswer> Rows, int Total);

/// <summary>A dance that a class knows.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Title">Its title.</param>
/// <param name="Knowing">How well, 1 follows to 4 alone; null when she never marked it.</param>
/// <param name="Last">When it was last danced, in words.</param>
/// <param name="LeftPercent">How much is likely left, 0 to 100; null when nobody can say.</param>
/// <param name="Left">The same in words.</param>
/// <param name="Warning">What to know of its sheet: a newer version than the one taught; empty when there is none.</param>
internal sealed record KnownDance(string DanceId, string Title, int? Knowing, string Last, int? LeftPercent, string Left, string Warning);

/// <summary>A page of the dances a class knows.</summary>
/// <param name="Rows">The dances.</param>
/// <param name="Total">How many there are in all.</param>
internal sealed record KnownPage(IReadOnlyList<KnownDance> Rows, int Total);

/// <summary>How well a class knows a dance today.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Knowing">1 follows to 4 alone; null takes the mark back.</param>
internal sealed record MarkBody(string DanceId, int? Knowing);

/// <summary>What is to be known of a dance that she puts into a session.</summary>
/// <param name="Title">Its title.</param>
/// <param name="Minutes">Minutes to plan for it.</param>
/// <param name="Facts">What it is: counts, walls, level.</param>
/// <param name="Known">What the class knows of it already, a sentence each.</param>
internal sealed record PickedDance(string Title, int Minutes, string Facts, IReadOnlyList<string> Known);

/// <summary>What changed in a sheet since a class was taught it.</summary>
/// <param name="Sentence">When it was taught, and whether steps changed or only words.</param>
/// <param name="Changes">One sentence a change.</param>
internal sealed record SheetChange(string Sentence, IReadOnlyList<string> Changes);
