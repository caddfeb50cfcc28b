using System.Globalization;
using Scuff.Analysis.Memory;
using Scuff.Repertoire;

namespace Scuff.App.Memory;

/// <summary>What a class is likely to have left of its dances, by <see cref="DanceMemory"/>, in words.</summary>
internal sealed class RevisionDesk : IRevisionDesk
{
    // "dance these three next week"
    private const int Offered = 3;

    private static readonly string[] Small = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

    /// <inheritdoc/>
    public IReadOnlyList<RememberedDance> Of(Club club, string classId, DateOnly on)
    {
        ClassBook book = ClassBook.Of(club, classId, on);
        List<RememberedDance> dances = [];
        foreach (string id in book.Dances)
        {
            if (book.Memory(id) is { } memory)
            {
                Knowing? knowing = book.Knowing(id);
                string left = Left(memory.Left);
                dances.Add(new RememberedDance(
                    id, knowing, book.LastDanced(id), (int)Math.Round(100 * memory.Left), "likely " + left, memory.Due, Reason(knowing, memory, left)));
            }
        }

        return [.. dances.OrderByDescending(d => d.Due).ThenBy(d => d.DanceId, StringComparer.Ordinal)];
    }

    /// <summary>The dances to revise next: the three that are most due, as far as there are any.</summary>
    public IReadOnlyList<RememberedDance> Next(Club club, string classId, DateOnly on) => [.. Of(club, classId, on).Where(d => d.Due > 0).Take(Offered)];

    /// <summary>So many days in words: <c>five weeks ago</c>.</summary>
    public static string Ago(int days) => days switch
    {
        <= 0 => "today",
        1 => "yesterday",
        < 14 => $"{Count(days)} days ago",
        < 70 => $"{Count(days / 7)} weeks ago",
        < 700 => $"{Count(days / 30)} months ago",
        _ => $"{Count(days / 365)} years ago",
    };

    private static string Reason(Knowing? knowing, DanceMemory memory, string left)
    {
        string known = knowing switch
        {
            Knowing.Follows => " and could be followed then",
            Knowing.KnowsTheStart => ", when they knew its start",
            Knowing.KnowsWithCues => " and known with cues",
            Knowing.KnowsAlone => " and known without a call",
            _ => "",
        };
        return $"Danced last {Ago(memory.Days)}{known}; {left} is likely left.";
    }

    private static string Left(double left) => left switch
    {
        >= 0.85 => "nearly all",
        >= 0.65 => "most of it",
        >= 0.4 => "about half",
        >= 0.28 => "a little",
        _ => "hardly anything",
    };

    private static string Count(int number) => number < Small.Length ? Small[number] : number.ToString(CultureInfo.InvariantCulture);
}
