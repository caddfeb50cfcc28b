namespace Scuff.App.Web.Contract;

/// <summary>One evening: her wishes, the programme, the night.</summary>
/// <param name="Item">The evening.</param>
/// <param name="Revision">Names this state; what she changes says upon which it was done.</param>
/// <param name="Wishes">Her wishes.</param>
/// <param name="Classes">Classes that may be there.</param>
/// <param name="Levels">The levels there are, easiest first.</param>
/// <param name="Curves">Courses of effort that can be wished for.</param>
/// <param name="Tags">Tags in use, to choose dances by.</param>
/// <param name="Programme">The programme; null before the first.</param>
/// <param name="Moved">What the last change moved, a sentence each.</param>
/// <param name="Night">The night; null until it begins.</param>
/// <param name="Files">What it can be taken along as.</param>
internal sealed record EveningAnswer(
    EveningHead Item,
    int Revision,
    EveningWishes Wishes,
    IReadOnlyList<ClassChoice> Classes,
    IReadOnlyList<string> Levels,
    IReadOnlyList<CurveChoice> Curves,
    IReadOnlyList<string> Tags,
    ProgrammeAnswer? Programme,
    IReadOnlyList<string> Moved,
    NightAnswer? Night,
    IReadOnlyList<FileOffer> Files);

/// <summary>A class that may be there.</summary>
/// <param name="Id">The class.</param>
/// <param name="Title">Its title.</param>
/// <param name="Level">Its level, or empty.</param>
/// <param name="People">About how many.</param>
internal sealed record ClassChoice(string Id, string Title, string Level, int People);

/// <summary>A course of effort.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Words">What the choice says.</param>
/// <param name="Heights">The effort wished at 21 places from the beginning to the end, 0 to 100.</param>
internal sealed record CurveChoice(string Id, string Words, IReadOnlyList<int> Heights);

/// <summary>What she wishes for.</summary>
/// <param name="Groups">Who is there.</param>
/// <param name="Stops">Rests and lessons, by time.</param>
/// <param name="WarmUpMinutes">Minutes of easy dances at the beginning.</param>
/// <param name="CoolDownMinutes">Minutes of calm dances at the end.</param>
/// <param name="Curve">Name of the course of effort.</param>
/// <param name="Opening">The dance that opens; null for any.</param>
/// <param name="Closing">The dance that closes; null for any.</param>
/// <param name="Requests">What was asked for.</param>
/// <param name="Pins">What she has decided besides.</param>
/// <param name="MaySplit">Whether two dances may be danced at once to one song.</param>
/// <param name="OnlyTags">Only dances with one of these tags; empty for all.</param>
internal sealed record EveningWishes(
    IReadOnlyList<GroupWish> Groups,
    IReadOnlyList<StopWish> Stops,
    int WarmUpMinutes,
    int CoolDownMinutes,
    string Curve,
    NamedDance? Opening,
    NamedDance? Closing,
    IReadOnlyList<RequestWish> Requests,
    IReadOnlyList<PinWish> Pins,
    bool MaySplit,
    IReadOnlyList<string> OnlyTags);

/// <summary>People who are there.</summary>
/// <param name="ClassId">Their class; null for people of a level.</param>
/// <param name="Name">What she calls them.</param>
/// <param name="Level">Their level, or empty.</param>
/// <param name="People">How many, at least 1.</param>
internal sealed record GroupWish(string? ClassId, string Name, string Level, int People);

/// <summary>A rest or a lesson.</summary>
/// <param name="At">When it begins, by the clock, as <c>20:45</c>.</param>
/// <param name="Minutes">How long.</param>
/// <param name="IsLesson">Whether it is a lesson.</param>
/// <param name="DanceId">The dance that is taught; null for a rest, or when it is not chosen yet.</param>
/// <param name="Title">Its title, or empty.</param>
internal sealed record StopWish(string At, int Minutes, bool IsLesson, string? DanceId, string Title);

/// <summary>A dance and its title.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Title">Its title.</param>
internal sealed record NamedDance(string DanceId, string Title);

/// <summary>A dance that was asked for.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Title">Its title.</param>
/// <param name="People">By how many.</param>
internal sealed record RequestWish(string DanceId, string Title, int People);

/// <summary>Something she has decided.</summary>
/// <param name="Kind">at, within, somewhere, never, closing, before, split or song.</param>
/// <param name="DanceId">The dance.</param>
/// <param name="OtherId">The other dance, or empty.</param>
/// <param name="Stretch">Index of the stretch.</param>
/// <param name="Place">Index within it.</param>
/// <param name="SongKey">Key of the song, or empty.</param>
/// <param name="Words">The decision as a sentence; not read when she sends it.</param>
internal sealed record PinWish(string Kind, string DanceId, string OtherId, int Stretch, int Place, string SongKey, string Words);

/// <summary>An evening and its wishes as she sends them.</summary>
/// <param name="Revision">The state she changed; 0 for a new evening.</param>
/// <param name="Title">What she calls it.</param>
/// <param name="Date">The day.</param>
/// <param name="Starts">When it begins, as <c>19:30</c>.</param>
/// <param name="Minutes">How long it lasts, 10 to 900.</param>
/// <param name="Place">Where, or empty.</param>
/// <param name="Wishes">Her wishes; null for none yet, or for no change.</param>
internal sealed record EveningBody(int Revision, string Title, string Date, string Starts, int Minutes, string Place, EveningWishes? Wishes);

/// <summary>Something to do with an evening as it is.</summary>
/// <param name="Revision">The state she sees.</param>
internal sealed record EveningTurn(int Revision);

/// <summary>What she decides in the programme; it is made anew at once.</summary>
/// <param name="Revision">The state she sees.</param>
/// <param name="What">pin, unpin, forbid, allow, must, song, request or unrequest.</param>
/// <param name="DanceId">The dance.</param>
/// <param name="Stretch">Where it is moved or pinned to: index of the stretch.</param>
/// <param name="Place">And within it.</param>
/// <param name="SongKey">The song; empty for any.</param>
internal sealed record EveningDecision(int Revision, string What, string DanceId, int Stretch, int Place, string SongKey);

/// <summary>What happens in the night.</summary>
/// <param name="Revision">The state she sees.</param>
/// <param name="What">begin, danced, skip, back, end-at, again, request, close or reopen.</param>
/// <param name="DanceId">The dance of request; else empty.</param>
/// <param name="Line">Of danced and skip, the line: where it begins, in seconds.</param>
/// <param name="EndsAt">The clock time of end-at, as <c>22:00</c>; empty for the planned end.</param>
internal sealed record NightTurn(int Revision, string What, string DanceId, int Line, string EndsAt);

/// <summary>A programme.</summary>
/// <param name="Stretches">Its stretches in order, with their lines. In the night, what is still to come.</param>
/// <param name="Effort">The effort over time, to be drawn.</param>
/// <param name="Sure">How sure it is.</param>
/// <param name="Common">What belongs to no single line.</param>
/// <param name="Missed">What was asked for and is not in it.</param>
/// <param name="Stale">Why it is to be made anew; empty when it fits her wishes.</param>
internal sealed record ProgrammeAnswer(
    IReadOnlyList<ProgrammeStretchItem> Stretches,
    EffortDrawing Effort,
    string Sure,
    IReadOnlyList<string> Common,
    IReadOnlyList<MissedItem> Missed,
    string Stale);

/// <summary>A stretch of the evening.</summary>
/// <param name="Index">Its index in the whole evening.</param>
/// <param name="Name">What it is for, such as <c>Dancing</c>.</param>
/// <param name="Kind">warm-up, revision, dancing, lesson, rest or cool-down.</param>
/// <param name="When">From when to when, by the clock.</param>
/// <param name="Lines">Its lines.</param>
internal sealed record ProgrammeStretchItem(int Index, string Name, string Kind, string When, IReadOnlyList<ProgrammeLine> Lines);

/// <summary>A line of a programme.</summary>
/// <param name="Place">Index within its stretch.</param>
/// <param name="At">When it begins, by the clock.</param>
/// <param name="StartSecond">The same in seconds from the beginning of the evening.</param>
/// <param name="Seconds">How long it takes, with what is said before.</param>
/// <param name="DanceId">The dance; empty for a rest.</param>
/// <param name="Title">What stands on the line: the title, a rest, a lesson.</param>
/// <param name="Level">Its level.</param>
/// <param name="OtherId">The dance on the other side of a split floor, or empty.</param>
/// <param name="OtherTitle">Its title.</param>
/// <param name="OtherLevel">Its level.</param>
/// <param name="SongKey">Key of the song, or empty.</param>
/// <param name="Song">The song, or empty.</param>
/// <param name="TrackId">The track of the club that plays it, or empty.</param>
/// <param name="FloorShare">How much of the floor can dance it, in percent.</param>
/// <param name="Floor">The same in words.</param>
/// <param name="Effort">What it asks of a body, in words with its METs; empty for a rest.</param>
/// <param name="IsPinned">Whether she pinned it there.</param>
/// <param name="IsAsked">Whether it was asked for.</param>
/// <param name="Reasons">Why it stands there, a sentence each.</param>
internal sealed record ProgrammeLine(
    int Place,
    string At,
    int StartSecond,
    int Seconds,
    string DanceId,
    string Title,
    string Level,
    string OtherId,
    string OtherTitle,
    string OtherLevel,
    string SongKey,
    string Song,
    string TrackId,
    int FloorShare,
    string Floor,
    string Effort,
    bool IsPinned,
    bool IsAsked,
    IReadOnlyList<string> Reasons);

/// <summary>The effort of an evening over its time.</summary>
/// <param name="Seconds">How long the evening is.</param>
/// <param name="Lines">One for each dance.</param>
/// <param name="Wished">The wished course.</param>
/// <param name="Words">What the drawing shows, in a sentence.</param>
internal sealed record EffortDrawing(int Seconds, IReadOnlyList<EffortLine> Lines, IReadOnlyList<EffortPoint> Wished, string Words);

/// <summary>The effort of a dance.</summary>
/// <param name="From">When it begins, in seconds.</param>
/// <param name="To">When it ends.</param>
/// <param name="Effort">In tenths of a MET.</param>
/// <param name="Title">The dance.</param>
internal sealed record EffortLine(int From, int To, int Effort, string Title);

/// <summary>A place of the wished course; a stretch without a wish ends a line.</summary>
/// <param name="At">Seconds.</param>
/// <param name="Effort">In tenths of a MET; 0 where nothing is wished.</param>
internal sealed record EffortPoint(int At, int Effort);

/// <summary>A wish that is not met.</summary>
/// <param name="DanceId">The dance.</param>
/// <param name="Title">Its title.</param>
/// <param name="Sentence">Why not.</param>
/// <param name="CanInsist">Whether it could still be danced if she insists.</param>
internal sealed record MissedItem(string DanceId, string Title, string Sentence, bool CanInsist);

/// <summary>The night itself.</summary>
/// <param name="Now">The time of the program (ISO 8601), by which the page sets its clock.</param>
/// <param name="Origin">The moment from which the seconds of the lines count (ISO 8601).</param>
/// <param name="Since">When the present line began, in those seconds: with the last tick.</param>
/// <param name="EndSecond">When it has to end, in those seconds.</param>
/// <param name="EndsAt">The same by the clock.</param>
/// <param name="Done">What is over, the last first.</param>
/// <param name="IsOver">Whether she closed it.</param>
/// <param name="Words">How it went, once it is over; else empty.</param>
internal sealed record NightAnswer(string Now, string Origin, int Since, int EndSecond, string EndsAt, IReadOnlyList<DoneLine> Done, bool IsOver, string Words);

/// <summary>A line that is over.</summary>
/// <param name="Title">What it was.</param>
/// <param name="At">When it was ticked, by the clock.</param>
/// <param name="IsSkipped">Whether it was left out.</param>
internal sealed record DoneLine(string Title, string At, bool IsSkipped);

/// <summary>The songs a dance can be danced to.</summary>
/// <param name="Songs">The songs, what she likes best first.</param>
internal sealed record SongChoices(IReadOnlyList<SongChoice> Songs);

/// <summary>A song.</summary>
/// <param name="Key">Its key.</param>
/// <param name="Title">Its title, with the artist where known.</param>
/// <param name="Length">How long it plays, as <c>3:25</c>.</param>
internal sealed record SongChoice(string Key, string Title, string Length);
