using System.CommandLine;
using System.Globalization;
using Scuff.App.Book;
using Scuff.App.Classes;
using Scuff.App.Json;
using Scuff.App.Programmes;
using Scuff.Repertoire;
using Scuff.Solving;

namespace Scuff.App.Nights;

/// <summary><c>scuff night plan EVENING</c>: makes the programme and keeps it; further wishes may be said with it.</summary>
internal sealed class PlanAct : INightAct
{
    public string Name => "plan";

    public string Usage => "EVENING";

    public int Fewest => 1;

    public int Most => 1;

    public IReadOnlyList<string> Takes => [.. NightOptions.OfWishes, NightOptions.Seconds, NightOptions.Why, NightOptions.Json];

    public Task<int> RunAsync(IReadOnlyList<string> words, NightOptions options, ParseResult parsed, Club club, Terminal terminal, DateTimeOffset now, CancellationToken cancel)
    {
        ClubEvening evening = NightNames.Evening(club, words[0], DateOnly.FromDateTime(now.DateTime));
        EveningPlan plan = NightNames.PlanOf(evening);
        if (plan.Night is { EndedAt: null })
        {
            throw BookWords.Cannot($"{evening.Title} is being danced. Plan the rest of it in the studio, where it is ticked off.");
        }

        evening = options.Timed(parsed, evening);
        plan = options.Wished(parsed, club, plan);
        NightDesk desk = new(new ExactProgrammeSolver());
        plan = plan with { Programme = desk.Plan(club, evening, plan, 0, options.LookFor(parsed), cancel) };
        evening = NightNames.Keep(club, evening, plan);
        Show(club, evening, plan, desk, options, parsed, terminal);
        return Task.FromResult(ExitCode.Clean);
    }

    /// <summary>Shows the programme of a plan.</summary>
    public static void Show(Club club, ClubEvening evening, EveningPlan plan, NightDesk desk, NightOptions options, ParseResult parsed, Terminal terminal)
    {
        EveningWords said = desk.Words(club, evening, plan);
        EveningProgramme programme = plan.Programme!;
        if (options.IsJson(parsed))
        {
            ScuffJson.Write(terminal.Out, new NightFile(
                evening.Id,
                evening.Title,
                DayWords.Plain(evening.Date),
                programme.Points,
                programme.Bound,
                [.. programme.Items.Select((i, at) => new NightLineRow(
                    DayWords.Clock(evening.Starts, i.Start), programme.Stretches[i.Stretch].Kind.ToString(), i.DanceId, i.Title, i.OtherId, i.OtherTitle, i.SongTitle, i.FloorShare, i.Effort / 10.0, [.. said.Items[at]]))],
                [.. said.Missed]));
            return;
        }

        terminal.Out.WriteLine($"{evening.Title}, {DayWords.Plain(evening.Date)}");
        bool isWhy = options.IsWhy(parsed);
        Table.Write(
            terminal.Out,
            terminal.Paint,
            ["time", "level", "floor", isWhy ? "dance, song, why" : "dance, song"],
            [.. programme.Items.Select((item, i) => Line(evening, programme, item, isWhy ? said.Items[i] : []))]);
        terminal.Out.WriteLine(said.Sure);
        foreach (string sentence in said.Common.Concat(said.Missed))
        {
            terminal.Out.WriteLine(sentence);
        }
    }

    private static string[] Line(ClubEvening evening, EveningProgramme programme, EveningItem item, IReadOnlyList<string> why)
    {
        string at = DayWords.Clock(evening.Starts, item.Start);
        if (item.SongKey.Length == 0)
        {
            bool isLesson = programme.Stretches[item.Stretch].Kind == Analysis.Planning.StretchKind.Lesson;
            string minutes = (item.Seconds / 60).ToString(CultureInfo.InvariantCulture);
            return [at, "", "", isLesson ? $"lesson: {(item.Title.Length > 0 ? item.Title : "no dance chosen yet")}, {minutes} minutes" : $"rest, {minutes} minutes"];
        }

        string dances = item.OtherId.Length > 0 ? $"{item.Title} and {item.OtherTitle}, one each side" : item.Title;
        string reasons = why.Count > 0 ? " " + string.Join(' ', why) : "";
        return [at, item.Level, item.FloorShare.ToString(CultureInfo.InvariantCulture) + " %", $"{dances}, to {item.SongTitle}{(item.IsPinned ? " (yours)" : "")}{(reasons.Length > 0 ? ":" + reasons : "")}"];
    }
}
