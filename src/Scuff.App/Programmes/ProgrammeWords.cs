using System.Globalization;
using Scuff.Analysis.Planning;
using Scuff.App.Memory;

namespace Scuff.App.Programmes;

/// <summary>A programme in sentences: why each line stands where it does, how sure it is, what is not in it, what moved.</summary>
internal static class ProgrammeWords
{
    // what is said of one line; the rest stands in the figures
    private const int MostReasons = 4;
    private const int MostMoves = 6;
    private const int Tenths = 10;
    private const int MinutesOfADance = 6;

    /// <summary>All that is said of a programme.</summary>
    public static EveningWords Of(EveningProgramme programme) => new(
        Sure(programme),
        [.. programme.Items.Select(i => (IReadOnlyList<string>)[.. i.Reasons.Select(r => Reason(r, i)).Where(w => w.Length > 0).Distinct(StringComparer.Ordinal).Take(MostReasons)])],
        [.. programme.Common.Select(Common)],
        [.. programme.Missed.Select(Missed)]);

    /// <summary>What has moved, a sentence each.</summary>
    public static IReadOnlyList<string> Moved(EveningProgramme before, EveningProgramme after)
    {
        EveningItem[] was = [.. before.Items.Where(i => i.SongKey.Length > 0)];
        EveningItem[] now = [.. after.Items.Where(i => i.SongKey.Length > 0)];
        Dictionary<string, int> wasAt = was.Select((item, i) => (item.DanceId, i)).DistinctBy(w => w.DanceId).ToDictionary(w => w.DanceId, w => w.i, StringComparer.Ordinal);
        HashSet<string> isNow = [.. now.SelectMany(i => new[] { i.DanceId, i.OtherId })];
        List<string> sentences = [];
        for (int i = 0; i < now.Length; i++)
        {
            if (!wasAt.ContainsKey(now[i].DanceId))
            {
                string where = i == 0 ? "at the beginning" : $"after “{now[i - 1].Title}”";
                sentences.Add($"“{now[i].Title}” comes in, {where}.");
            }
        }

        sentences.AddRange(was.Where(w => !isNow.Contains(w.DanceId)).Select(w => $"“{w.Title}” is left out."));

        // who is out of the order of those that stay has moved
        int[] order = [.. now.Where(n => wasAt.ContainsKey(n.DanceId)).Select(n => wasAt[n.DanceId])];
        HashSet<int> kept = [.. LongestRise(order)];
        EveningItem[] stayed = [.. now.Where(n => wasAt.ContainsKey(n.DanceId))];
        for (int i = 0; i < stayed.Length; i++)
        {
            if (!kept.Contains(i))
            {
                bool isEarlier = order.Take(i).Count(o => o < order[i]) < order.Count(o => o < order[i]);
                sentences.Add($"“{stayed[i].Title}” comes {(isEarlier ? "earlier" : "later")}.");
            }
        }

        return sentences.Count <= MostMoves
            ? sentences
            : [.. sentences.Take(MostMoves - 1), $"{(sentences.Count - MostMoves + 1).ToString(CultureInfo.InvariantCulture)} more lines have changed."];
    }

    private static string Sure(EveningProgramme programme)
    {
        if (programme.Points >= programme.Bound)
        {
            return "Proven: no better programme exists for these wishes.";
        }

        double percent = Programme.GapOf(programme.Points, programme.Bound, programme.Items.SelectMany(i => i.Reasons));
        return string.Create(CultureInfo.InvariantCulture, $"At most {Math.Max(0.1, percent):0.#} percent from the best there can be.");
    }

    private static string Reason(ProgrammeReason reason, EveningItem item)
    {
        string effort = Met(item.Effort);
        return reason.Kind switch
        {
            ProgrammeReasonKind.Pinned => "You put it here.",
            ProgrammeReasonKind.Requested => reason.Value == 1 ? "It was asked for." : $"It was asked for {Times(reason.Value)}.",
            ProgrammeReasonKind.Floor => reason.Value switch
            {
                >= 95 => "Nearly the whole floor can dance it.",
                >= 15 => $"About {Rounded(reason.Value)} percent of the floor can dance it.",
                _ => "Few of the floor can dance it.",
            },
            ProgrammeReasonKind.Due => reason.Value >= 40 ? "It is about to be forgotten." : "It is due to be danced again.",
            ProgrammeReasonKind.Fresh => reason.Value < 0 ? "" : $"They danced it last {RevisionDesk.Ago(reason.Value)}.",
            ProgrammeReasonKind.Effort => Math.Abs(item.Effort - reason.Value) <= 5
                ? $"Its effort, about {effort} MET, is what is wished here."
                : $"Its effort, about {effort} MET, is {(item.Effort > reason.Value ? "above" : "below")} the {Met(reason.Value)} wished here.",
            ProgrammeReasonKind.SameDifficulty => reason.Value == 2 ? "It follows a dance that is hard as well." : "It follows a dance that is easy as well.",
            ProgrammeReasonKind.SameTempo => reason.Value == 2 ? "It follows a dance that is fast as well." : "It follows a dance that is slow as well.",
            ProgrammeReasonKind.Change => reason.Value switch
            {
                1 => "It is slower than the dance before it.",
                2 => "It is faster than the dance before it.",
                3 => "It is easier than the dance before it.",
                _ => "It is harder than the dance before it.",
            },
            ProgrammeReasonKind.Opening => $"About {Rounded(reason.Value)} percent cannot dance it, which counts in a place that is for all.",
            ProgrammeReasonKind.Closing => $"About {Rounded(reason.Value)} percent cannot dance it, which counts at the end.",
            ProgrammeReasonKind.Split => "Two dances share the floor to one song, so that more can dance.",
            ProgrammeReasonKind.Stays => "It stays where you saw it.",
            ProgrammeReasonKind.SatOut => $"{reason.About} sits out the {Ordinal(reason.Value)} dance in a row.",
            ProgrammeReasonKind.JustTaught => "It is danced to its music right after its lesson.",
            ProgrammeReasonKind.EmptyTime => "",
            _ => throw new InvalidOperationException($"There are no words for {reason.Kind}."),
        };
    }

    private static string Common(ProgrammeReason reason)
    {
        int minutes = (reason.Value + 30) / 60;
        return minutes switch
        {
            < 1 => "Some seconds of a stretch stay free.",
            1 => "A minute of a stretch stays free.",
            < MinutesOfADance => $"{minutes} minutes of a stretch stay free.",
            _ => $"{minutes} minutes of a stretch stay free: too few dances are left that enough of the floor can dance.",
        };
    }

    private static string Missed(EveningMissed missed)
    {
        string title = missed.Title.Length > 0 ? $"“{missed.Title}”" : "A dance that is not in the club any more";
        string other = $"“{missed.OtherTitle}”";
        return missed.Kind switch
        {
            ProgrammeMissedKind.NotThere => $"{title} cannot be danced: it was danced already, is forbidden here, or is not in the club.",
            ProgrammeMissedKind.NoSong => $"{title} has no song: write a track line into its text.",
            ProgrammeMissedKind.NoRoom => $"There is no room for {title} where it should be.",
            ProgrammeMissedKind.PlaceTaken => $"{title} would stand where {other} is pinned.",
            ProgrammeMissedKind.SongTaken => missed.OtherTitle.Length > 0 ? $"The song of {title} is played for {other}." : $"The song of {title} was played already.",
            ProgrammeMissedKind.TooAlike => $"{title} is nearly the same as {other}, which stands near.",
            ProgrammeMissedKind.Forbidden => $"{title} is asked for and forbidden as well.",
            ProgrammeMissedKind.NoCommonSong => $"{title} and {other} have no song in common.",
            ProgrammeMissedKind.Together => missed.OtherTitle.Length > 0
                ? $"That {title} comes before {other} cannot be had together with what you decided before."
                : $"What you decided for {title} cannot be had together with what you decided before.",
            ProgrammeMissedKind.WorthLess => missed.Points == 0
                ? $"{title} is as good as what stands there: pin it if you want it."
                : $"{title} would cost {missed.Points.ToString(CultureInfo.InvariantCulture)} points: others suit this evening better.",
            _ => throw new InvalidOperationException($"There are no words for {missed.Kind}."),
        };
    }

    // Indices of a longest row of rising numbers.
    private static IEnumerable<int> LongestRise(int[] numbers)
    {
        int[] length = new int[numbers.Length];
        int[] from = new int[numbers.Length];
        int best = -1;
        for (int i = 0; i < numbers.Length; i++)
        {
            (length[i], from[i]) = (1, -1);
            for (int j = 0; j < i; j++)
            {
                if (numbers[j] < numbers[i] && length[j] + 1 > length[i])
                {
                    (length[i], from[i]) = (length[j] + 1, j);
                }
            }

            best = best < 0 || length[i] > length[best] ? i : best;
        }

        for (; best >= 0; best = from[best])
        {
            yield return best;
        }
    }

    private static string Met(int tenths) => (tenths / (double)Tenths).ToString("0.0", CultureInfo.InvariantCulture);

    private static int Rounded(int percent) => (percent + 2) / 5 * 5;

    private static string Times(int people) => people switch { 2 => "by two people", 3 => "by three people", _ => $"by {people.ToString(CultureInfo.InvariantCulture)} people" };

    private static string Ordinal(int number) => number switch
    {
        1 => "first",
        2 => "second",
        3 => "third",
        4 => "fourth",
        5 => "fifth",
        _ => number.ToString(CultureInfo.InvariantCulture) + "th",
    };
}
