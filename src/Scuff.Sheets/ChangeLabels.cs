using Scuff.Sheets.Languages;

namespace Scuff.Sheets;

/// <summary>The sentences that tell what changed between two versions, as templates. Equal by value.</summary>
public sealed record ChangeLabels
{
    /// <summary>The sentences in English.</summary>
    public static ChangeLabels English => SheetLanguage.English.Changes;

    /// <summary>The later version is the earlier one in the mirror, and nothing else changed.</summary>
    public string Mirrored { get; init; } = "";

    /// <summary>The later version is the earlier one in the mirror, but for the changes that follow.</summary>
    public string MirroredBut { get; init; } = "";

    /// <summary><c>{0}</c> old title, <c>{1}</c> new title.</summary>
    public string Renamed { get; init; } = "";

    /// <summary><c>{0}</c> name of a field of the heading, <c>{1}</c> old value, <c>{2}</c> new value.</summary>
    public string FieldChanged { get; init; } = "";

    /// <summary><c>{0}</c> name of a field of the heading, <c>{1}</c> its value.</summary>
    public string FieldNew { get; init; } = "";

    /// <summary><c>{0}</c> name of a field of the heading, <c>{1}</c> its old value.</summary>
    public string FieldGone { get; init; } = "";

    /// <summary><c>{0}</c> old counts, <c>{1}</c> new counts.</summary>
    public string Length { get; init; } = "";

    /// <summary><c>{0}</c> old walls, <c>{1}</c> new walls.</summary>
    public string WallCount { get; init; } = "";

    /// <summary>One wall.</summary>
    public string OneWall { get; init; } = "";

    /// <summary><c>{0}</c> a number above 1.</summary>
    public string Walls { get; init; } = "";

    /// <summary>When the number of walls cannot be told.</summary>
    public string WallsNotKnown { get; init; } = "";

    /// <summary><c>{0}</c> old foot, <c>{1}</c> new foot.</summary>
    public string StartWeight { get; init; } = "";

    /// <summary><c>{0}</c> old, <c>{1}</c> new beats.</summary>
    public string BeatsPerCount { get; init; } = "";

    /// <summary>The left foot.</summary>
    public string LeftFoot { get; init; } = "";

    /// <summary>The right foot.</summary>
    public string RightFoot { get; init; } = "";

    /// <summary>Both feet.</summary>
    public string BothFeet { get; init; } = "";

    /// <summary><c>{0}</c> name of a part.</summary>
    public string Part { get; init; } = "";

    /// <summary><c>{0}</c> number of a section.</summary>
    public string Section { get; init; } = "";

    /// <summary><c>{0}</c> name of a part, <c>{1}</c> number of a section.</summary>
    public string SectionOfPart { get; init; } = "";

    /// <summary><c>{0}</c> name of a tag.</summary>
    public string Tag { get; init; } = "";

    /// <summary>A tag without a name.</summary>
    public string OnlyTag { get; init; } = "";

    /// <summary><c>{0}</c> name of a bridge.</summary>
    public string Bridge { get; init; } = "";

    /// <summary>A bridge without a name.</summary>
    public string OnlyBridge { get; init; } = "";

    /// <summary><c>{0}</c> a part, section or tag, <c>{1}</c> its counts, <c>{2}</c> what is danced.</summary>
    public string WholeNew { get; init; } = "";

    /// <summary><c>{0}</c> a part, <c>{1}</c> its counts.</summary>
    public string WholeNewPart { get; init; } = "";

    /// <summary><c>{0}</c> a part, section or tag of the earlier version.</summary>
    public string WholeGone { get; init; } = "";

    /// <summary><c>{0}</c> a section before, <c>{1}</c> where it is now.</summary>
    public string SectionMoved { get; init; } = "";

    /// <summary><c>{0}</c> how many sections before, <c>{1}</c> how many now.</summary>
    public string Divided { get; init; } = "";

    /// <summary><c>{0}</c> how many sections before, <c>{1}</c> how many now, <c>{2}</c> the part.</summary>
    public string DividedPart { get; init; } = "";

    /// <summary><c>{0}</c> a section, <c>{1}</c> old heading, <c>{2}</c> new heading.</summary>
    public string Retitled { get; init; } = "";

    /// <summary><c>{0}</c> a section, <c>{1}</c> its new heading.</summary>
    public string Titled { get; init; } = "";

    /// <summary><c>{0}</c> a section, <c>{1}</c> its old heading.</summary>
    public string Untitled { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> old facing in brackets, <c>{2}</c> new facing in brackets, <c>{3}</c> facing that is danced.</summary>
    public string FacingWritten { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> facing in brackets, <c>{2}</c> facing that was danced, <c>{3}</c> facing that is danced.</summary>
    public string FacingLeftBehind { get; init; } = "";

    /// <summary><c>{0}</c> one count.</summary>
    public string Count { get; init; } = "";

    /// <summary><c>{0}</c> several counts.</summary>
    public string Counts { get; init; } = "";

    /// <summary><c>{0}</c> a section or tag, <c>{1}</c> counts of it.</summary>
    public string At { get; init; } = "";

    /// <summary><c>{0}</c> a section or tag, <c>{1}</c> counts of it, <c>{2}</c> the counts before.</summary>
    public string AtWas { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> old steps, <c>{2}</c> new steps.</summary>
    public string Became { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> the steps, <c>{2}</c> old counts, <c>{3}</c> new counts.</summary>
    public string Retimed { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> new steps.</summary>
    public string CameIn { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> old steps.</summary>
    public string WentOut { get; init; } = "";

    /// <summary>Closes a sentence.</summary>
    public string FacingAndWeightUnchanged { get; init; } = "";

    /// <summary>Goes on in a sentence.</summary>
    public string FacingUnchanged { get; init; } = "";

    /// <summary>Goes on in a sentence: <c>{0}</c> old facing, <c>{1}</c> new facing.</summary>
    public string FacingChanged { get; init; } = "";

    /// <summary>Goes on in a sentence: <c>{0}</c> old facing, <c>{1}</c> new facing, because of a change further up.</summary>
    public string TurnsAlike { get; init; } = "";

    /// <summary>Goes on in a sentence.</summary>
    public string WeightUnchanged { get; init; } = "";

    /// <summary>Goes on in a sentence: <c>{0}</c> old foot, <c>{1}</c> new foot.</summary>
    public string WeightChanged { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> kind of note, <c>{2}</c> old words, <c>{3}</c> new words.</summary>
    public string RemarkChanged { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> kind of note, <c>{2}</c> its words.</summary>
    public string RemarkNew { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> kind of note, <c>{2}</c> its old words.</summary>
    public string RemarkGone { get; init; } = "";

    /// <summary><c>{0}</c> name of an option.</summary>
    public string Option { get; init; } = "";

    /// <summary>An option without a name.</summary>
    public string OnlyOption { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> the option, <c>{2}</c> old steps, <c>{3}</c> new steps.</summary>
    public string OptionChanged { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> the option, <c>{2}</c> its steps.</summary>
    public string OptionNew { get; init; } = "";

    /// <summary><c>{0}</c> where, <c>{1}</c> the option, <c>{2}</c> its old steps.</summary>
    public string OptionGone { get; init; } = "";

    /// <summary><c>{0}</c> old tag or bridge, <c>{1}</c> new one.</summary>
    public string TagRenamed { get; init; } = "";

    /// <summary><c>{0}</c> old order, <c>{1}</c> new order.</summary>
    public string Sequence { get; init; } = "";

    /// <summary>When there is no order of the parts.</summary>
    public string NoSequence { get; init; } = "";

    /// <summary><c>{0}</c> a part, <c>{1}</c> how many counts of it.</summary>
    public string SequenceUpto { get; init; } = "";

    /// <summary><c>{0}</c> title of a track, <c>{1}</c> a sentence.</summary>
    public string OnTrack { get; init; } = "";

    /// <summary><c>{0}</c> number of a wall.</summary>
    public string Wall { get; init; } = "";

    /// <summary><c>{0}</c> name of a part, <c>{1}</c> how many times it has begun.</summary>
    public string TimeOfPart { get; init; } = "";

    /// <summary><c>{0}</c> counts.</summary>
    public string After { get; init; } = "";

    /// <summary>At the end of a wall.</summary>
    public string AfterLast { get; init; } = "";

    /// <summary><c>{0}</c> wall, <c>{1}</c> after which counts, <c>{2}</c> what is done.</summary>
    public string BreakNew { get; init; } = "";

    /// <summary><c>{0}</c> wall, <c>{1}</c> after which counts, <c>{2}</c> what was done.</summary>
    public string BreakGone { get; init; } = "";

    /// <summary><c>{0}</c> wall, <c>{1}</c> what is done, <c>{2}</c> old place, <c>{3}</c> new place.</summary>
    public string BreakMoved { get; init; } = "";

    /// <summary><c>{0}</c> old wall, <c>{1}</c> what is done, <c>{2}</c> old place, <c>{3}</c> new wall, <c>{4}</c> new place.</summary>
    public string BreakOtherWall { get; init; } = "";

    /// <summary><c>{0}</c> wall, <c>{1}</c> after which counts, <c>{2}</c> what was done, <c>{3}</c> what is done.</summary>
    public string BreakOtherwise { get; init; } = "";

    /// <summary><c>{0}</c> wall, <c>{1}</c> old place, <c>{2}</c> what was done, <c>{3}</c> new place, <c>{4}</c> what is done.</summary>
    public string BreakMovedOtherwise { get; init; } = "";

    /// <summary>What is done in a wall.</summary>
    public string Restart { get; init; } = "";

    /// <summary>What is done in a wall.</summary>
    public string GoOn { get; init; } = "";

    /// <summary>What is done in a wall: <c>{0}</c> counts.</summary>
    public string Wait { get; init; } = "";

    /// <summary>What is done in a wall: <c>{0}</c> a section, <c>{1}</c> counts.</summary>
    public string Quote { get; init; } = "";

    /// <summary>What is done in a wall: <c>{0}</c> a tag, <c>{1}</c> how often.</summary>
    public string Times { get; init; } = "";

    /// <summary>Between two things done one after the other.</summary>
    public string Then { get; init; } = "";

    /// <summary>Goes on: <c>{0}</c> counts, <c>{1}</c> what is danced there.</summary>
    public string With { get; init; } = "";

    /// <summary>The wall of the ending when none is named.</summary>
    public string LastWall { get; init; } = "";

    /// <summary><c>{0}</c> old ending, <c>{1}</c> new ending.</summary>
    public string EndingChanged { get; init; } = "";

    /// <summary><c>{0}</c> the ending.</summary>
    public string EndingNew { get; init; } = "";

    /// <summary><c>{0}</c> the old ending.</summary>
    public string EndingGone { get; init; } = "";

    /// <summary><c>{0}</c> title, <c>{1}</c> artist.</summary>
    public string TrackWithArtist { get; init; } = "";

    /// <summary><c>{0}</c> title.</summary>
    public string TrackWithoutArtist { get; init; } = "";

    /// <summary><c>{0}</c> a track.</summary>
    public string MusicNew { get; init; } = "";

    /// <summary><c>{0}</c> a track.</summary>
    public string MusicGone { get; init; } = "";

    /// <summary><c>{0}</c> old track, <c>{1}</c> new track.</summary>
    public string MusicReplaced { get; init; } = "";

    /// <summary><c>{0}</c> old tempo, <c>{1}</c> new tempo.</summary>
    public string Tempo { get; init; } = "";

    /// <summary><c>{0}</c> a number.</summary>
    public string BeatsPerMinute { get; init; } = "";

    /// <summary><c>{0}</c> old intro, <c>{1}</c> new intro.</summary>
    public string Intro { get; init; } = "";

    /// <summary><c>{0}</c> old length, <c>{1}</c> new length.</summary>
    public string TrackLength { get; init; } = "";

    /// <summary><c>{0}</c> a number.</summary>
    public string Seconds { get; init; } = "";

    /// <summary>For a value that is not stated.</summary>
    public string NotStated { get; init; } = "";

    /// <summary><c>{0}</c> name of a move of her own, <c>{1}</c> old steps, <c>{2}</c> new steps.</summary>
    public string OwnMoveChanged { get; init; } = "";

    /// <summary><c>{0}</c> name of a move of her own, <c>{1}</c> its steps.</summary>
    public string OwnMoveNew { get; init; } = "";

    /// <summary><c>{0}</c> name of a move of her own.</summary>
    public string OwnMoveGone { get; init; } = "";

    /// <summary><c>{0}</c> sections and tags.</summary>
    public string WordsOnlyIn { get; init; } = "";

    /// <summary>When only words outside the sections changed.</summary>
    public string WordsOnly { get; init; } = "";
}
