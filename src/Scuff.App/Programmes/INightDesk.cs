using Scuff.Analysis.Planning;
using Scuff.Repertoire;

namespace Scuff.App.Programmes;

/// <summary>Makes the programme of an evening out of a club and her wishes, and says why it is so.</summary>
internal interface INightDesk
{
    /// <summary>
    /// Makes the programme, or what is still to come of it. <see cref="EveningPlan.Programme"/> is the one she has seen; what is in
    /// <see cref="EveningNight.Done"/> does not come again. Every stop is a stretch of its own, in the order of their times. Bad wishes are let go and named in
    /// <see cref="EveningProgramme.Missed"/>.
    /// </summary>
    /// <param name="club">The club.</param>
    /// <param name="evening">The evening.</param>
    /// <param name="plan">Her wishes.</param>
    /// <param name="fromSecond">
    /// Where it begins, in seconds from the beginning of the evening; 0 before the night. Stretches before it are over, one around it is cut. It may be later
    /// than the end: nothing is to come then.
    /// </param>
    /// <param name="seconds">How long it may look, about.</param>
    /// <param name="stop">Ends the search early; the best so far is the answer.</param>
    EveningProgramme Plan(Club club, ClubEvening evening, EveningPlan plan, int fromSecond, double seconds, CancellationToken stop);

    /// <summary>The words of <see cref="EveningPlan.Programme"/>, which is there.</summary>
    /// <param name="club">The club.</param>
    /// <param name="evening">The evening.</param>
    /// <param name="plan">Her wishes with the programme.</param>
    EveningWords Words(Club club, ClubEvening evening, EveningPlan plan);

    /// <summary>The songs that a dance can be danced to, what she likes best first; empty when it has none.</summary>
    /// <param name="club">The club.</param>
    /// <param name="danceId">The dance.</param>
    IReadOnlyList<ProgrammeSong> Songs(Club club, string danceId);

    /// <summary>What has moved from one programme to the next, a sentence each; empty when nothing has.</summary>
    /// <param name="before">The one she saw.</param>
    /// <param name="after">The one she sees now.</param>
    IReadOnlyList<string> Moved(EveningProgramme before, EveningProgramme after);
}
