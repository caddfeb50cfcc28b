namespace Scuff.App.Web.Contract;

/// <summary>How a dance is taught in the time there is. The seconds of the steps add up to <paramref name="Seconds"/>.</summary>
/// <param name="Title">The heading of the plan.</param>
/// <param name="Facts">How long, for whom: a sentence each.</param>
/// <param name="Notes">What is to be said of the plan as a whole.</param>
/// <param name="Cautions">What to take care of.</param>
/// <param name="More">What there was no time for, what is never left out, why in this order.</param>
/// <param name="Class">Level of the class.</param>
/// <param name="Seconds">How long the lesson is.</param>
/// <param name="UsualSeconds">What teaching the dance usually takes, without warm-up and cool-down.</param>
/// <param name="LeastSeconds">The least in which the whole dance can be taught.</param>
/// <param name="IsWhole">Whether the whole dance is taught.</param>
/// <param name="Steps">The steps in order.</param>
internal sealed record LessonAnswer(
    string Title,
    IReadOnlyList<string> Facts,
    IReadOnlyList<string> Notes,
    IReadOnlyList<string> Cautions,
    IReadOnlyList<LessonTold> More,
    string Class,
    int Seconds,
    int UsualSeconds,
    int LeastSeconds,
    bool IsWhole,
    IReadOnlyList<LessonStepItem> Steps);

/// <summary>A step of a lesson.</summary>
/// <param name="Id">Its name, the same whatever the length of the lesson.</param>
/// <param name="Kind">What is done, in one word: chunk, join, second-wall …</param>
/// <param name="Phase">The heading it stands under.</param>
/// <param name="Words">The step as a sentence, without its full stop.</param>
/// <param name="Details">What hangs on it.</param>
/// <param name="Start">When it begins, in seconds of the lesson.</param>
/// <param name="Seconds">How long it takes.</param>
/// <param name="Times">How often it is danced.</param>
/// <param name="LeaveOut">Its turn when the class runs late, from 1; null when it is never left out.</param>
/// <param name="FromCount">First count that is danced, within one repetition, from zero; null where no counts of the dance are walked.</param>
/// <param name="ToCount">The count after the last.</param>
/// <param name="Wall">The wall it is danced on, from 1.</param>
/// <param name="Percent">Speed of the music in percent; zero without music.</param>
/// <param name="Pace">Counts a minute; null where nothing is danced.</param>
/// <param name="Help">How much is called: every-step, headings, warnings or silent; null without music.</param>
internal sealed record LessonStepItem(
    string Id,
    string Kind,
    string Phase,
    string Words,
    IReadOnlyList<LessonTold> Details,
    int Start,
    int Seconds,
    int Times,
    int? LeaveOut,
    double? FromCount,
    double? ToCount,
    int Wall,
    int Percent,
    double? Pace,
    string? Help);

/// <summary>Words that hang on something.</summary>
/// <param name="Lead">What they are about.</param>
/// <param name="Words">The words.</param>
internal sealed record LessonTold(string Lead, string Words);

/// <summary>What the page asks to have planned.</summary>
/// <param name="Text">The text of the dance.</param>
/// <param name="Minutes">Minutes there are, 1 to 600; null for as long as it takes.</param>
/// <param name="Class">Level of the class; null for that of the dance.</param>
/// <param name="Knows">Ids of dances of the club that the class knows; null when nobody says.</param>
/// <param name="Track">Title of the track it is taught to; null for the first.</param>
/// <param name="PracticeTempo">Tempo of slower practice music in counts a minute; null for none.</param>
/// <param name="Order">forward or backward; null for what suits the dance.</param>
/// <param name="Knees">Whether to say what spares knees.</param>
/// <param name="Beginners">Whether to say what to offer beginners.</param>
/// <param name="WarmUp">Whether warm-up and cool-down belong to this time.</param>
internal sealed record LessonQuestion(
    string Text,
    int? Minutes,
    string? Class,
    string[]? Knows,
    string? Track,
    double? PracticeTempo,
    string? Order,
    bool Knees,
    bool Beginners,
    bool WarmUp);

/// <summary>Which printed plan is asked for.</summary>
/// <param name="Lesson">The lesson.</param>
/// <param name="Format">html, pdf, docx, text or markdown.</param>
/// <param name="Paper">a4 or letter.</param>
/// <param name="Large">Whether it is printed large.</param>
internal sealed record LessonSheetQuestion(LessonQuestion Lesson, string Format, string Paper, bool Large);
