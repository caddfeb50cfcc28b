using System.Globalization;
using Scuff.Analysis.Compare;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Sheets;

/// <summary>Says what changed between two versions, one sentence a change.</summary>
public sealed class ChangeWords
{
    private readonly ChangeLabels _labels;
    private readonly Wording _wording;
    private readonly string _ending;

    private ChangeWords(SheetLanguage language)
    {
        _labels = language.Changes;
        _wording = new Wording(language);
        _ending = language.Labels.Ending;
    }

    /// <summary>The sentences in the order of the changes; empty when nothing changed.</summary>
    public static ValueList<string> Of(DanceComparison comparison, SheetLanguage language)
    {
        ChangeWords words = new(language);
        return comparison.Changes.Select(c => words.Say(c, isAlone: comparison.Changes.Count == 1)).ToValueList();
    }

    /// <summary>
    /// What changed for somebody who holds the earlier sheet: as <see cref="Of"/>, but words that dance the same are told only when nothing
    /// else changed, and brackets not at all: a sheet prints the facings that are danced.
    /// </summary>
    public static ValueList<string> ForSheet(DanceComparison comparison, SheetLanguage language)
        => Of(
            comparison.IsSame ? comparison : new DanceComparison(comparison.Changes.Where(c => c is not (
                DanceChange.WordsOnly or DanceChange.WrittenFacing or DanceChange.BreakFacing or DanceChange.EndFacing)).ToValueList()),
            language);

    /// <summary>One change as a sentence.</summary>
    /// <param name="change">The change.</param>
    /// <param name="isAlone">Whether there is no other.</param>
    public string Say(DanceChange change, bool isAlone) => SheetWords.Capital(change switch
    {
        DanceChange.Mirrored => isAlone ? _labels.Mirrored : _labels.MirroredBut,
        DanceChange.Renamed c => Fill(_labels.Renamed, c.Before, c.After),
        DanceChange.HeadingField { Before: null } c => Fill(_labels.FieldNew, SheetWords.Capital(_wording.Usual("field", c.Key)), c.After!),
        DanceChange.HeadingField { After: null } c => Fill(_labels.FieldGone, SheetWords.Capital(_wording.Usual("field", c.Key)), c.Before!),
        DanceChange.HeadingField c => Fill(_labels.FieldChanged, SheetWords.Capital(_wording.Usual("field", c.Key)), c.Before!, c.After!),
        DanceChange.Length c => Fill(_labels.Length, Size(c.Before), Size(c.After)),
        DanceChange.WallCount c => Fill(_labels.WallCount, Walls(c.Before), Walls(c.After)),
        DanceChange.StartWeight c => Fill(_labels.StartWeight, Foot(c.Before), Foot(c.After)),
        DanceChange.BeatsPerCount c => Fill(_labels.BeatsPerCount, SheetWords.Amount(c.Before), SheetWords.Amount(c.After)),
        DanceChange.WholePart { IsNew: true } c => Fill(_labels.WholeNewPart, Fill(_labels.Part, c.Name), Size(c.Size)),
        DanceChange.WholePart c => Fill(_labels.WholeGone, Fill(_labels.Part, c.Name)),
        DanceChange.WholeSection { IsNew: true } c => Fill(_labels.WholeNew, Place(c.Place), Size(c.Size), Moves(c.Moves)),
        DanceChange.WholeSection c => Fill(_labels.WholeGone, Place(c.Place)),
        DanceChange.SectionMoved c => Fill(_labels.SectionMoved, Place(c.Before), Place(c.After)),
        DanceChange.SectionsDivided { PartName: "" } c => Fill(_labels.Divided, Number(c.Before), Number(c.After)),
        DanceChange.SectionsDivided c => Fill(_labels.DividedPart, Number(c.Before), Number(c.After), Fill(_labels.Part, c.PartName)),
        DanceChange.SectionRetitled { Before: "" } c => Fill(_labels.Titled, Place(c.Place), c.After),
        DanceChange.SectionRetitled { After: "" } c => Fill(_labels.Untitled, Place(c.Place), c.Before),
        DanceChange.SectionRetitled c => Fill(_labels.Retitled, Place(c.Place), c.Before, c.After),
        DanceChange.Steps c => Steps(c),
        DanceChange.WrittenFacing c => WrittenFacing(Where(c), c.IsLeftBehind, c.Before, c.After, c.DancedBefore, c.DancedAfter),
        DanceChange.BreakFacing c => OnTrack(c.TrackTitle, WrittenFacing(
            Fill(_labels.At, WallOf(c.Pause), AfterCounts(c.Pause)), c.IsLeftBehind, c.Before, c.After, c.DancedBefore, c.DancedAfter)),
        DanceChange.EndFacing c => OnTrack(c.TrackTitle, WrittenFacing(
            _ending, c.IsLeftBehind, c.Before, c.After, c.DancedBefore, c.DancedAfter)),
        DanceChange.Remark c => Remark(c),
        DanceChange.Option c => Option(c),
        DanceChange.WholeTag { IsNew: true } c => Fill(_labels.WholeNew, Tag(c.Name, c.IsBridge), Size(c.Size), Moves(c.Moves)),
        DanceChange.WholeTag c => Fill(_labels.WholeGone, Tag(c.Name, c.IsBridge)),
        DanceChange.TagRenamed c => Fill(_labels.TagRenamed, Tag(c.Before, c.WasBridge), Tag(c.After, c.IsBridge)),
        DanceChange.Sequence c => OnTrack(c.TrackTitle, Fill(_labels.Sequence, Order(c.Before), Order(c.After))),
        DanceChange.Break c => OnTrack(c.TrackTitle, Break(c)),
        DanceChange.Finish c => OnTrack(c.TrackTitle, Finish(c)),
        DanceChange.Music c => Music(c),
        DanceChange.TrackTempo c => OnTrack(c.TrackTitle, Fill(_labels.Tempo, Tempo(c.Before), Tempo(c.After))),
        DanceChange.TrackIntro c => OnTrack(c.TrackTitle, Fill(_labels.Intro, Intro(c.Before, c.SecondsBefore), Intro(c.After, c.SecondsAfter))),
        DanceChange.TrackLength c => OnTrack(c.TrackTitle, Fill(_labels.TrackLength, Minutes(c.Before), Minutes(c.After))),
        DanceChange.OwnMove c => OwnMove(c),
        DanceChange.WordsOnly { Elsewhere: false } c => Fill(_labels.WordsOnlyIn, string.Join(", ", c.Places.Select(Place))),
        DanceChange.WordsOnly => _labels.WordsOnly,
        _ => throw new ArgumentOutOfRangeException(nameof(change)),
    });

    private string Steps(DanceChange.Steps change)
    {
        string where = Where(change);
        if (change.Before.Count == 0 || change.After.Count == 0)
        {
            return change.After.Count > 0
                ? Fill(_labels.CameIn, where, Moves(change.After)) + Closing(change.Landing)
                : Fill(_labels.WentOut, where, Moves(change.Before)) + Closing(change.Landing);
        }

        return (change.IsTiming
            ? Fill(_labels.Retimed, where, Moves(change.After), Timing(change.Before), Timing(change.After))
            : Fill(_labels.Became, where, Moves(change.Before), Moves(change.After))) + Closing(change.Landing);
    }

    // The counts are those of the later sheet; where it has none for this, or others than before, those of the earlier one are told.
    private string Where(DanceChange.Steps change)
    {
        string place = Place(change.Place);
        bool isGone = change.CountsAfter.Length <= Counts.Zero;
        return change.CountsBefore == change.CountsAfter || change.CountsBefore.Length <= Counts.Zero || isGone
            ? Fill(_labels.At, place, CountWords(isGone ? change.CountsBefore : change.CountsAfter))
            : Fill(_labels.AtWas, place, CountWords(change.CountsAfter), Label(change.CountsBefore));
    }

    private string Where(DanceChange.WrittenFacing change)
        => Fill(_labels.At, Place(change.Place), Fill(_labels.Count, CountGrid.LabelOf(change.Count)));

    private string WrittenFacing(string where, bool isLeftBehind, Facing before, Facing after, Facing dancedBefore, Facing danced) => isLeftBehind
        ? Fill(_labels.FacingLeftBehind, where, after.ToString(), dancedBefore.ToString(), danced.ToString())
        : Fill(_labels.FacingWritten, where, before.ToString(), after.ToString(), danced.ToString());

    private string Closing(Landing? landing)
    {
        if (landing is null)
        {
            return ".";
        }

        if (landing.FacingIsUnchanged && landing.WeightIsUnchanged)
        {
            return _labels.FacingAndWeightUnchanged;
        }

        string facing = landing switch
        {
            { FacingIsUnchanged: true } => _labels.FacingUnchanged,
            { FacingBefore: { } before, FacingAfter: { } after, TurnsAlike: true } => Fill(_labels.TurnsAlike, before.ToString(), after.ToString()),
            { FacingBefore: { } before, FacingAfter: { } after } => Fill(_labels.FacingChanged, before.ToString(), after.ToString()),
            _ => "",
        };
        string weight = landing.WeightIsUnchanged ? _labels.WeightUnchanged
            : landing.WeightBefore != Weight.Unknown && landing.WeightAfter != Weight.Unknown
                ? Fill(_labels.WeightChanged, Foot(landing.WeightBefore), Foot(landing.WeightAfter))
                : "";
        return facing + weight + ".";
    }

    private string Remark(DanceChange.Remark change)
    {
        string lead = change.Place is not { } place ? ""
            : (change.At is { } at ? Fill(_labels.At, Place(place), CountWords(at)) : Place(place)) + ": ";
        string words = change switch
        {
            { Before: null } => Fill(_labels.RemarkNew, lead, _wording.Usual("note", change.Kind), change.After!),
            { After: null } => Fill(_labels.RemarkGone, lead, _wording.Usual("note", change.Kind), change.Before),
            _ => Fill(_labels.RemarkChanged, lead, _wording.Usual("note", change.Kind), change.Before, change.After),
        };
        return OnTrack(change.TrackTitle, words);
    }

    private string Option(DanceChange.Option change)
    {
        string where = Fill(_labels.At, Place(change.Place), CountWords(change.Replaces));
        string option = change.Name.Length > 0 ? Fill(_labels.Option, change.Name) : _labels.OnlyOption;
        return change.Before.Count == 0 ? Fill(_labels.OptionNew, where, option, Moves(change.After))
            : change.After.Count == 0 ? Fill(_labels.OptionGone, where, option, Moves(change.Before))
            : Fill(_labels.OptionChanged, where, option, Moves(change.Before), Moves(change.After));
    }

    private string Break(DanceChange.Break change) => change switch
    {
        { Before: null, After: { } now } => Fill(_labels.BreakNew, WallOf(now), AfterCounts(now), Acts(now)),
        { After: null, Before: { } old } => Fill(_labels.BreakGone, WallOf(old), AfterCounts(old), Acts(old)),
        { IsDancedOtherwise: true, Before: { } old, After: { } now }
            => Fill(_labels.BreakOtherwise, WallOf(now), AfterCounts(now), Acts(old), Acts(now)),
        { Before: { } old, After: { } now } when old.Walls != now.Walls || old.PartName != now.PartName
            => Fill(_labels.BreakOtherWall, WallOf(old), Acts(now), AfterCounts(old), WallOf(now), AfterCounts(now)),
        { IsMoved: true, Before: { } old, After: { } now } => Fill(_labels.BreakMoved, WallOf(now), Acts(now), AfterCounts(old), AfterCounts(now)),
        { Before: { } old, After: { } now }
            => Fill(_labels.BreakMovedOtherwise, WallOf(now), AfterCounts(old), Acts(old), AfterCounts(now), Acts(now)),
        _ => "",
    };

    private string WallOf(Interruption pause) => pause.PartName.Length > 0
        ? Fill(_labels.TimeOfPart, pause.PartName, Number(pause.Walls[0]))
        : Fill(_labels.Wall, Number(pause.Walls[0]));

    private string AfterCounts(Interruption pause) => pause.AfterCounts is { } counts ? Fill(_labels.After, Size(counts)) : _labels.AfterLast;

    private string Acts(Interruption pause)
    {
        string words = pause.Acts.Count == 0 ? pause.Verbatim : string.Join(_labels.Then, pause.Acts.Select(Act));
        foreach (ChangedCounts changed in pause.Changes)
        {
            List<Counts> places = [.. changed.Steps.Select(s => s.Count.Place)];
            string label = places.Count > 0 ? CountWriter.Label(places) : Label(changed.Replaces);
            words += Fill(_labels.With, Fill(places.Count > 1 ? _labels.Counts : _labels.Count, label), Moves(changed.Moves));
        }

        return words;
    }

    private string Act(InterruptionAct act) => act switch
    {
        InterruptionAct.PlayTag { Times: 1 } play => Tag(play.Name, isBridge: false),
        InterruptionAct.PlayTag play => Fill(_labels.Times, Tag(play.Name, isBridge: false), Number(play.Times)),
        InterruptionAct.Quote quote => Fill(_labels.Quote, Place(new DancePlace(quote.PartName, quote.SectionNumber)), CountWords(quote.Counts)),
        InterruptionAct.Wait wait => Fill(_labels.Wait, Size(wait.Length)),
        InterruptionAct.Dance moves => _wording.MovesOf(moves.Body),
        InterruptionAct.Restart => _labels.Restart,
        InterruptionAct.GoOn => _labels.GoOn,
        _ => throw new ArgumentOutOfRangeException(nameof(act)),
    };

    private string Finish(DanceChange.Finish change) => change switch
    {
        { Before: null, After: { } now } => Fill(_labels.EndingNew, Ending(now)),
        { After: null, Before: { } old } => Fill(_labels.EndingGone, Ending(old)),
        { Before: { } old, After: { } now } when Ending(old) is var was && Ending(now) is var becomes => was == becomes
            ? Fill(_labels.EndingChanged, ToFront(old), ToFront(now))
            : Fill(_labels.EndingChanged, was, becomes),
        _ => "",
    };

    // Where only what is said of the front differs.
    private string ToFront(Ending ending) => ending.SaysFront
        ? _wording.Say("ending.at", ("act", Ending(ending)), ("facing", Facing.Front.ToString()))
        : Ending(ending);

    private string Ending(Ending ending)
    {
        string wall = ending.Wall is { } number ? Fill(_labels.Wall, Number(number)) : _labels.LastWall;
        if (ending.WallFacing is { } facing)
        {
            wall = _wording.Say("break.starts", ("where", wall), ("facing", facing.ToString()));
        }

        string after = ending.AfterCounts is { } counts ? ", " + Fill(_labels.After, Size(counts)) : "";

        return wall + after + ", " + _wording.MovesOf(ending);
    }

    private string Music(DanceChange.Music change) => change switch
    {
        { TitleBefore: null } => Fill(_labels.MusicNew, Track(change.TitleAfter!, change.ArtistAfter)),
        { TitleAfter: null } => Fill(_labels.MusicGone, Track(change.TitleBefore, change.ArtistBefore)),
        _ => Fill(_labels.MusicReplaced, Track(change.TitleBefore, change.ArtistBefore), Track(change.TitleAfter, change.ArtistAfter)),
    };

    private string OwnMove(DanceChange.OwnMove change) => change switch
    {
        { After: null } => Fill(_labels.OwnMoveGone, change.Name),
        { Before: null } => Fill(_labels.OwnMoveNew, change.Name, Rows(change.After)),
        _ => Fill(_labels.OwnMoveChanged, change.Name, Rows(change.Before), Rows(change.After)),
    };

    private string Track(string title, string artist)
        => artist.Length > 0 ? Fill(_labels.TrackWithArtist, title, artist) : Fill(_labels.TrackWithoutArtist, title);

    private string OnTrack(string title, string sentence) => title.Length > 0 ? Fill(_labels.OnTrack, title, sentence) : sentence;

    private string Order(ValueList<SequenceItem> sequence) => sequence.Count == 0
        ? _labels.NoSequence
        : string.Join(' ', sequence.Select(i =>
        {
            string name = i.IsTag ? Tag(i.Name, isBridge: false) : i.Name;
            return i.Upto is { } upto ? Fill(_labels.SequenceUpto, name, Size(upto)) : name;
        }));

    private string Place(DancePlace place) => place switch
    {
        { TagName: { } tag } => Tag(tag, isBridge: false),
        { PartName: "" } => Fill(_labels.Section, Number(place.Section)),
        _ => Fill(_labels.SectionOfPart, place.PartName, Number(place.Section)),
    };

    private string Tag(string name, bool isBridge) => name.Length > 0
        ? Fill(isBridge ? _labels.Bridge : _labels.Tag, name)
        : isBridge ? _labels.OnlyBridge : _labels.OnlyTag;

    private string Walls(int? walls) => walls switch
    {
        null => _labels.WallsNotKnown,
        1 => _labels.OneWall,
        { } many => Fill(_labels.Walls, Number(many)),
    };

    private string Foot(Weight weight) => weight switch
    {
        Weight.Left => _labels.LeftFoot,
        Weight.Right => _labels.RightFoot,
        _ => _labels.BothFeet,
    };

    private string CountWords(CountSpan span) => Fill(span.Length <= Counts.One ? _labels.Count : _labels.Counts, Label(span));

    private string Tempo(Tempo? tempo) => tempo is { } known ? Fill(_labels.BeatsPerMinute, Decimal(known.BeatsPerMinute)) : _labels.NotStated;

    private string Intro(Counts? counts, Ratio? seconds) => counts is { } known ? Size(known)
        : seconds is { } time ? Fill(_labels.Seconds, Decimal(time)) : _labels.NotStated;

    private string Minutes(Ratio? length)
    {
        if (length is not { } known)
        {
            return _labels.NotStated;
        }

        int seconds = (known + new Ratio(1, 2)).Floor;
        return string.Create(CultureInfo.InvariantCulture, $"{seconds / 60}:{seconds % 60:00}");
    }

    // An & before count 1 has no number of its own on a sheet.
    private static string Label(CountSpan span) => span.Start < Counts.Zero && span.End > Counts.Zero
        ? "&" + SheetWords.Label(new CountSpan(Counts.Zero, span.End))
        : SheetWords.Label(span);

    private static string Timing(ValueList<WrittenMove> moves) => CountWriter.Label([.. moves.SelectMany(m => m.Steps).Select(s => s.Count.Place)]);

    private string Rows(StepDefinition move) => string.Join(", ", move.Rows.Select(r => $"{r.Label} {_wording.Moves.Describe(r.Action)}"));

    private string Moves(ValueList<WrittenMove> moves) => _wording.Moves.Describe(moves);

    private string Size(Counts counts) => _wording.Counts(counts);

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private string Decimal(Ratio value)
        => value.ToDouble().ToString("0.##", CultureInfo.InvariantCulture).Replace(".", _wording["number.decimal"], StringComparison.Ordinal);

    // Her words may hold braces: only the template is a template.
    private static string Fill(string template, params ReadOnlySpan<string> words)
    {
        System.Text.StringBuilder filled = new(template.Length + 32);
        for (int i = 0; i < template.Length; i++)
        {
            if (template[i] == '{'
                && i + 2 < template.Length
                && template[i + 2] == '}'
                && template[i + 1] - '0' is >= 0 and <= 9 and var at
                && at < words.Length)
            {
                filled.Append(words[at]);
                i += 2;
            }
            else
            {
                filled.Append(template[i]);
            }
        }

        return filled.ToString();
    }
}
