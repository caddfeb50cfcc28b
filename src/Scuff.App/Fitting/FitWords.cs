using System.Globalization;
using Scuff.Analysis.Fit;
using Scuff.App.Tracks;
using Scuff.Dances;
using Scuff.Music;
using Scuff.Prose;
using Scuff.Stance;

namespace Scuff.App.Fitting;

/// <summary>What a fit found, in the words of the trade.</summary>
internal static class FitWords
{
    /// <summary>A sentence on a remark.</summary>
    public static string Of(FitRemark remark, FitAnswer answer) => remark switch
    {
        FitRemark.NoBeats => "The map of this track has no beats, so nothing can be fitted. Tap along, or write its beats by hand.",
        FitRemark.NoSteps => "This dance has no counts yet, so nothing can be fitted.",
        FitRemark.TrackShorterThanDance => "The track is over before the dance is through once.",
        FitRemark.DanceHasUnknownWords =>
            "Some words of this dance could not be read (scuff check tells which). After them foot and facing are unknown, and no interruption is proposed there.",
        FitRemark.DanceDoesNotRepeat =>
            "This dance does not end with the foot free that it begins with (scuff check tells where). It was fitted as if it did.",
        FitRemark.OtherMeter => answer.Dance.BeatsPerBar == 3
            ? "This dance is a waltz, and the track is not."
            : "This track is a waltz, and the dance is not.",
        FitRemark.CountedOtherwise => $"At this tempo the dance is counted {Counted(answer)}.",
        FitRemark.MapIsUnsure => answer.Music.Map.Remark,
        FitRemark.NoSections => "The map knows no sections of the music, so phrases are counted from its first eight.",
        FitRemark.NotProven => "There were so many ways that the search was given up: a better plan may exist.",
        FitRemark.NoPlanKeepsTo => "No way through keeps to all that you have decided. Take one of your decisions back, or move it to the start of an eight.",
        FitRemark.PartOfCount => "The dance is no whole number of counts long; what is over was left out.",
        _ => throw new ArgumentOutOfRangeException(nameof(remark)),
    };

    /// <summary>How many interruptions.</summary>
    public static string Interruptions(int count) => count switch
    {
        0 => "no interruption",
        1 => "1 interruption",
        _ => string.Create(CultureInfo.InvariantCulture, $"{count} interruptions"),
    };

    /// <summary>What is done at a break: <c>tag “Lamps” (4 counts), then restart</c>.</summary>
    public static string Done(FitBreak at, Dance dance)
    {
        bool goesOn = at.Written.Acts.Any(a => a is InterruptionAct.GoOn);
        IEnumerable<string> acts = at.Written.Acts.Select(a => a switch
        {
            InterruptionAct.PlayTag play => $"{(goesOn ? "bridge" : "tag")} “{play.Name}”{Length(dance.FindTag(play.Name))}",
            InterruptionAct.Quote quote => string.Create(
                CultureInfo.InvariantCulture,
                $"section {quote.SectionNumber} counts {quote.Counts.Start.Value.Floor + 1}-{quote.Counts.End.Value.Floor} once more"),
            InterruptionAct.Wait wait => $"hold {TrackWords.Counts(wait.Length.Value.Floor)}",
            InterruptionAct.Restart => "restart",
            _ => "go on",
        });
        return string.Join(", then ", acts);

        static string Length(Tag? tag) => tag is null ? "" : $" ({TrackWords.Counts(tag.Body.Length.Value.Floor)})";
    }

    /// <summary>Which wall, of a phrased dance which part.</summary>
    public static string Wall(int wall, string part) => part.Length == 0
        ? string.Create(CultureInfo.InvariantCulture, $"wall {wall}")
        : string.Create(CultureInfo.InvariantCulture, $"wall {wall} (part {part})");

    /// <summary>A facing; a question mark when it is unknown.</summary>
    public static string Facing(Facing? facing) => facing?.ToString() ?? "?";

    /// <summary>The section of the music in which something falls; empty before the first.</summary>
    public static string Section(TrackMap map, int section) => section < 0 ? "" : TrackWords.Section(map.Sections[section]);

    /// <summary>What of the music begins with a wall.</summary>
    public static string Strength(FitWall wall, TrackMap map) => wall.Strength switch
    {
        >= 60 when wall.Section >= 0 && wall.Strength != 80 => $"with {Section(map, wall.Section)}",
        >= 80 => "with a phrase",
        >= 50 => "with a half phrase",
        >= 25 => "with an eight",
        _ => "off the music",
    };

    /// <summary>Where a plan begins, how many walls it has, and how often it is interrupted.</summary>
    public static string Beginning(FitPlan plan)
        => $"Begins after {TrackWords.Counts(plan.Intro)} of intro, at {TrackWords.Time(plan.BeginsSeconds)}, and goes through {Walls(plan)} with {Interruptions(plan.Interruptions)}.";

    /// <summary>What happens at a break, where that is, and what the floor sees there.</summary>
    public static string Break(FitBreak at, FitPlan plan, TrackMap map)
    {
        string section = Section(map, at.Section);
        string where = section.Length > 0 ? $", in {section} of the music" : "";
        FitWall? next = plan.Walls.FirstOrDefault(w => w.Begins >= at.Begins + at.Length && w.Number > at.Wall);
        bool goesOn = !at.IsAtEnd && !at.Restarts;
        string then = goesOn || next is null ? "" : $" Wall {next.Number} then begins facing {Facing(next.Facing)}.";
        string change = string.Join("; ", at.Written.Changes.Select(c =>
            $", with count {string.Join(", ", c.Steps.Select(s => s.Count.Label))} danced as {string.Join(", ", c.Steps.Select(s => Phrasing.Describe(s.Action)))}"));
        return $"{Capital(Wall(at.Wall, at.Part))}, after {TrackWords.Counts(at.After)}, at {TrackWords.Time(at.Seconds)}{where}: "
            + $"{Done(at, plan.Dance)}{change}. The floor faces {Facing(at.Facing)}.{then}";
    }

    /// <summary>How a plan ends.</summary>
    public static string Ending(FitPlan plan)
    {
        if (plan.Ending is not { } ending)
        {
            return plan.EndsAtFront ? "The music ends while the floor faces the front." : "No ending was found that turns to the front in time.";
        }

        string turn = ending.Turn.Sign == 0 ? "" : $", turning {ending.Turn} to the front";
        string where = ending.After == 0 ? $"where wall {ending.Wall} begins" : $"in wall {ending.Wall} after {TrackWords.Counts(ending.After)}";
        return $"Ends {where}, at {TrackWords.Time(ending.Seconds)}, facing {Facing(ending.Facing)}{turn}.";
    }

    /// <summary>What is danced on a stop of the music.</summary>
    public static string Accent(FitAccent accent)
    {
        string place = accent.Section > 0
            ? $"{Wall(accent.Wall, accent.Part)}, section {accent.Section}, count {accent.Count}"
            : $"{Wall(accent.Wall, accent.Part)}, in what is put in";
        string danced = string.Join(", ", accent.Danced.Select(s => Phrasing.Describe(s.Action)));
        string what = accent.Danced.Count == 0 || accent.Meets ? "nothing moves against it"
            : accent.Suggested is { } action ? $"{danced} is danced; {Phrasing.Describe(action)} would meet it"
            : $"{danced} is danced";
        return $"The music stops for {TrackWords.Counts(accent.Counts)} at {TrackWords.Time(accent.Seconds)} ({place}): {what}.";
    }

    /// <summary>What a plan pays for, summed up by reason.</summary>
    public static string Items(FitPlan plan)
        => string.Join(", ", Sums(plan).Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Words} {s.Points}")));

    /// <summary>What a plan pays for, summed up by reason: the reason in words, and the points.</summary>
    public static IEnumerable<(string Words, int Points)> Sums(FitPlan plan) => plan.Items.GroupBy(i => i.Reason).OrderBy(g => g.Key).Select(g =>
    {
        int many = g.Count();
        string words = g.Key switch
        {
            FitReason.StartsElsewhere => "starting elsewhere than expected",
            FitReason.WallOffPhrase => $"{Many(many, "wall begins", "walls begin")} beside a phrase",
            FitReason.PhraseInside => $"{Many(many, "time the music begins", "times the music begins")} inside a section of the dance",
            FitReason.PhraseInTag => "the music begins inside a tag",
            FitReason.Restart => Many(many, "restart", "restarts"),
            FitReason.Tag => Many(many, "tag", "tags"),
            FitReason.Hold => Many(many, "hold", "holds"),
            FitReason.NewKind => $"{Many(many, "kind", "kinds")} of interruption to learn",
            _ => "the music ends inside a section of the dance",
        };
        return (words, g.Sum(i => i.Price));
    });

    private static string Walls(FitPlan plan) => plan.Walls.Count == 1 ? "1 wall" : string.Create(CultureInfo.InvariantCulture, $"{plan.Walls.Count} walls");

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];

    private static string Many(int count, string one, string more) => string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : more)}");

    private static string Counted(FitAnswer answer) => answer.BeatsPerCount switch
    {
        var beats when beats == 2 * answer.Dance.BeatsPerCount => "at half the beat",
        var beats when beats * 2 == answer.Dance.BeatsPerCount => "at double the beat",
        var beats => $"one count to {beats} beats",
    };
}
