namespace Scuff.Sheets;

/// <summary>The sentences that tell what changed between two versions, as templates. Equal by value.</summary>
public sealed record ChangeLabels
{
    /// <summary>The sentences in English.</summary>
    public static ChangeLabels English { get; } = new();

    /// <summary>The later version is the earlier one in the mirror, and nothing else changed.</summary>
    public string Mirrored { get; init; } = "It is the same dance on the other foot.";

    /// <summary>The later version is the earlier one in the mirror, but for the changes that follow.</summary>
    public string MirroredBut { get; init; } = "It is the same dance on the other foot, but for what follows.";

    /// <summary><c>{0}</c> old title, <c>{1}</c> new title.</summary>
    public string Renamed { get; init; } = "The title is now “{1}”, it was “{0}”.";

    /// <summary><c>{0}</c> name of a field of the heading, <c>{1}</c> old value, <c>{2}</c> new value.</summary>
    public string FieldChanged { get; init; } = "{0}: {2}, was {1}.";

    /// <summary><c>{0}</c> name of a field of the heading, <c>{1}</c> its value.</summary>
    public string FieldNew { get; init; } = "{0}: {1}, new.";

    /// <summary><c>{0}</c> name of a field of the heading, <c>{1}</c> its old value.</summary>
    public string FieldGone { get; init; } = "{0}: no longer stated, was {1}.";

    /// <summary><c>{0}</c> old counts, <c>{1}</c> new counts.</summary>
    public string Length { get; init; } = "One repetition takes {1}, was {0}.";

    /// <summary><c>{0}</c> old walls, <c>{1}</c> new walls.</summary>
    public string WallCount { get; init; } = "It is danced to {1}, before to {0}.";

    /// <summary>One wall.</summary>
    public string OneWall { get; init; } = "1 wall";

    /// <summary><c>{0}</c> a number above 1.</summary>
    public string Walls { get; init; } = "{0} walls";

    /// <summary>When the number of walls cannot be told.</summary>
    public string WallsNotKnown { get; init; } = "a number of walls that is not known";

    /// <summary><c>{0}</c> old foot, <c>{1}</c> new foot.</summary>
    public string StartWeight { get; init; } = "Start with the weight on {1}, was on {0}.";

    /// <summary><c>{0}</c> old, <c>{1}</c> new beats.</summary>
    public string BeatsPerCount { get; init; } = "One count takes {1} of the music’s beats, was {0}.";

    /// <summary>The left foot.</summary>
    public string LeftFoot { get; init; } = "the left foot";

    /// <summary>The right foot.</summary>
    public string RightFoot { get; init; } = "the right foot";

    /// <summary>Both feet.</summary>
    public string BothFeet { get; init; } = "both feet";

    /// <summary><c>{0}</c> name of a part.</summary>
    public string Part { get; init; } = "part {0}";

    /// <summary><c>{0}</c> number of a section.</summary>
    public string Section { get; init; } = "section {0}";

    /// <summary><c>{0}</c> name of a part, <c>{1}</c> number of a section.</summary>
    public string SectionOfPart { get; init; } = "part {0} section {1}";

    /// <summary><c>{0}</c> name of a tag.</summary>
    public string Tag { get; init; } = "tag “{0}”";

    /// <summary>A tag without a name.</summary>
    public string OnlyTag { get; init; } = "the tag";

    /// <summary><c>{0}</c> name of a bridge.</summary>
    public string Bridge { get; init; } = "bridge “{0}”";

    /// <summary>A bridge without a name.</summary>
    public string OnlyBridge { get; init; } = "the bridge";

    /// <summary><c>{0}</c> a part, section or tag, <c>{1}</c> its counts, <c>{2}</c> what is danced.</summary>
    public string WholeNew { get; init; } = "{0} is new, {1}: {2}.";

    /// <summary><c>{0}</c> a part, <c>{1}</c> its counts.</summary>
    public string WholeNewPart { get; init; } = "{0} is new, {1}.";

    /// <summary><c>{0}</c> a part, section or tag of the earlier version.</summary>
    public string WholeGone { get; init; } = "The old {0} is gone.";

    /// <summary><c>{0}</c> a section before, <c>{1}</c> where it is now.</summary>
    public string SectionMoved { get; init; } = "The old {0} is now {1}.";

    /// <summary><c>{0}</c> how many sections before, <c>{1}</c> how many now.</summary>
    public string Divided { get; init; } = "The same counts are divided into {1} sections, was {0}.";

    /// <summary><c>{0}</c> how many sections before, <c>{1}</c> how many now, <c>{2}</c> the part.</summary>
    public string DividedPart { get; init; } = "The counts of {2} are divided into {1} sections, was {0}.";

    /// <summary><c>{0}</c> a section, <c>{1}</c> old heading, <c>{2}</c> new heading.</summary>
    public string Retitled { get; init; } = "{0} is headed “{2}”, was “{1}”.";

    /// <summary><c>{0}</c> a section, <c>{1}</c> its new heading.</summary>
    public string Titled { get; init; } = "{0} now has a heading, “{1}”.";

    /// <summary><c>{0}</c> a section, <c>{1}</c> its old heading.</summary>
    public string Untitled { get; init; } = "{0} has no heading any more, was “{1}”.";

    /// <summary><c>{0}</c> one count.</summary>
    public string Count { get; init; } = "count {0}";

    /// <summary><c>{0}</c> several counts.</summary>
    public string Counts { get; init; } = "counts {0}";

    /// <summary><c>{0}</c> a section or tag, <c>{1}</c> counts of it.</summary>
    public string At { get; init; } = "{0}, {1}";

    /// <summary><c>{0}</c> a section or tag, <c>{1}</c> counts of it, <c>{2}</c> the counts before.</summary>
    public string AtWas { get; init; } = "{0}, {1} (was {2})";

    /// <summary><c>{0}</c> where, <c>{1}</c> old steps, <c>{2}</c> new steps.</summary>
    public string Became { get; init; } = "{0}: {1} became {2}";

    /// <summary><c>{0}</c> where, <c>{1}</c> the steps, <c>{2}</c> old counts, <c>{3}</c> new counts.</summary>
    public string Retimed { get; init; } = "{0}: {1} now on {3}, was on {2}";

    /// <summary><c>{0}</c> where, <c>{1}</c> new steps.</summary>
    public string CameIn { get; init; } = "{0}: {1}, put in";

    /// <summary><c>{0}</c> where, <c>{1}</c> old steps.</summary>
    public string WentOut { get; init; } = "{0}: {1}, left out";

    /// <summary>Closes a sentence.</summary>
    public string FacingAndWeightUnchanged { get; init; } = "; facing and weight unchanged.";

    /// <summary>Goes on in a sentence.</summary>
    public string FacingUnchanged { get; init; } = "; facing unchanged";

    /// <summary>Goes on in a sentence: <c>{0}</c> old facing, <c>{1}</c> new facing.</summary>
    public string FacingChanged { get; init; } = "; now facing {1}, was {0}";

    /// <summary>Goes on in a sentence: <c>{0}</c> old facing, <c>{1}</c> new facing, because of a change further up.</summary>
    public string TurnsAlike { get; init; } = "; turns as before, which now faces {1}";

    /// <summary>Goes on in a sentence.</summary>
    public string WeightUnchanged { get; init; } = "; weight unchanged";

    /// <summary>Goes on in a sentence: <c>{0}</c> old foot, <c>{1}</c> new foot.</summary>
    public string WeightChanged { get; init; } = "; weight now on {1}, was on {0}";

    /// <summary><c>{0}</c> where, <c>{1}</c> kind of note, <c>{2}</c> old words, <c>{3}</c> new words.</summary>
    public string RemarkChanged { get; init; } = "{0}{1} “{3}”, was “{2}”.";

    /// <summary><c>{0}</c> where, <c>{1}</c> kind of note, <c>{2}</c> its words.</summary>
    public string RemarkNew { get; init; } = "{0}{1} “{2}”, new.";

    /// <summary><c>{0}</c> where, <c>{1}</c> kind of note, <c>{2}</c> its old words.</summary>
    public string RemarkGone { get; init; } = "{0}{1} “{2}” is gone.";

    /// <summary><c>{0}</c> name of an option.</summary>
    public string Option { get; init; } = "option “{0}”";

    /// <summary>An option without a name.</summary>
    public string OnlyOption { get; init; } = "option";

    /// <summary><c>{0}</c> where, <c>{1}</c> the option, <c>{2}</c> old steps, <c>{3}</c> new steps.</summary>
    public string OptionChanged { get; init; } = "{0}: {1} is {3}, was {2}.";

    /// <summary><c>{0}</c> where, <c>{1}</c> the option, <c>{2}</c> its steps.</summary>
    public string OptionNew { get; init; } = "{0}: new {1}, {2}.";

    /// <summary><c>{0}</c> where, <c>{1}</c> the option, <c>{2}</c> its old steps.</summary>
    public string OptionGone { get; init; } = "{0}: the {1} is gone ({2}).";

    /// <summary><c>{0}</c> old tag or bridge, <c>{1}</c> new one.</summary>
    public string TagRenamed { get; init; } = "{0} is now called {1}.";

    /// <summary><c>{0}</c> old order, <c>{1}</c> new order.</summary>
    public string Sequence { get; init; } = "The order of the parts is {1}, was {0}.";

    /// <summary>When there is no order of the parts.</summary>
    public string NoSequence { get; init; } = "as written";

    /// <summary><c>{0}</c> a part, <c>{1}</c> how many counts of it.</summary>
    public string SequenceUpto { get; init; } = "{0} ({1})";

    /// <summary><c>{0}</c> title of a track, <c>{1}</c> a sentence.</summary>
    public string OnTrack { get; init; } = "On “{0}”: {1}";

    /// <summary><c>{0}</c> number of a wall.</summary>
    public string Wall { get; init; } = "wall {0}";

    /// <summary><c>{0}</c> name of a part, <c>{1}</c> how many times it has begun.</summary>
    public string TimeOfPart { get; init; } = "part {0} (time {1})";

    /// <summary><c>{0}</c> counts.</summary>
    public string After { get; init; } = "after {0}";

    /// <summary>At the end of a wall.</summary>
    public string AfterLast { get; init; } = "after its last count";

    /// <summary><c>{0}</c> wall, <c>{1}</c> after which counts, <c>{2}</c> what is done.</summary>
    public string BreakNew { get; init; } = "{0}, {1}: {2}, new.";

    /// <summary><c>{0}</c> wall, <c>{1}</c> after which counts, <c>{2}</c> what was done.</summary>
    public string BreakGone { get; init; } = "{0}, {1}: no longer {2}.";

    /// <summary><c>{0}</c> wall, <c>{1}</c> what is done, <c>{2}</c> old place, <c>{3}</c> new place.</summary>
    public string BreakMoved { get; init; } = "{0}: {1} moved, now {3}, before {2}.";

    /// <summary><c>{0}</c> old wall, <c>{1}</c> what is done, <c>{2}</c> old place, <c>{3}</c> new wall, <c>{4}</c> new place.</summary>
    public string BreakOtherWall { get; init; } = "{3}, {4}: {1}, was in {0} {2}.";

    /// <summary><c>{0}</c> wall, <c>{1}</c> after which counts, <c>{2}</c> what was done, <c>{3}</c> what is done.</summary>
    public string BreakOtherwise { get; init; } = "{0}, {1}: {3}, was {2}.";

    /// <summary><c>{0}</c> wall, <c>{1}</c> old place, <c>{2}</c> what was done, <c>{3}</c> new place, <c>{4}</c> what is done.</summary>
    public string BreakMovedOtherwise { get; init; } = "{0}: now {3}, {4}; before, {1}, {2}.";

    /// <summary>What is done in a wall.</summary>
    public string Restart { get; init; } = "restart";

    /// <summary>What is done in a wall.</summary>
    public string GoOn { get; init; } = "go on";

    /// <summary>What is done in a wall: <c>{0}</c> counts.</summary>
    public string Wait { get; init; } = "wait {0}";

    /// <summary>What is done in a wall: <c>{0}</c> a section, <c>{1}</c> counts.</summary>
    public string Quote { get; init; } = "{0} {1}";

    /// <summary>What is done in a wall: <c>{0}</c> a tag, <c>{1}</c> how often.</summary>
    public string Times { get; init; } = "{0} {1} times";

    /// <summary>Between two things done one after the other.</summary>
    public string Then { get; init; } = ", then ";

    /// <summary>Goes on: <c>{0}</c> counts, <c>{1}</c> what is danced there.</summary>
    public string With { get; init; } = ", with {0} as {1}";

    /// <summary>The wall of the ending when none is named.</summary>
    public string LastWall { get; init; } = "last wall";

    /// <summary><c>{0}</c> old ending, <c>{1}</c> new ending.</summary>
    public string EndingChanged { get; init; } = "The ending is now: {1}; it was: {0}.";

    /// <summary><c>{0}</c> the ending.</summary>
    public string EndingNew { get; init; } = "There is an ending now: {0}.";

    /// <summary><c>{0}</c> the old ending.</summary>
    public string EndingGone { get; init; } = "There is no ending any more; it was: {0}.";

    /// <summary><c>{0}</c> title, <c>{1}</c> artist.</summary>
    public string TrackWithArtist { get; init; } = "“{0}” by {1}";

    /// <summary><c>{0}</c> title.</summary>
    public string TrackWithoutArtist { get; init; } = "“{0}”";

    /// <summary><c>{0}</c> a track.</summary>
    public string MusicNew { get; init; } = "New music: {0}.";

    /// <summary><c>{0}</c> a track.</summary>
    public string MusicGone { get; init; } = "No longer danced to {0}.";

    /// <summary><c>{0}</c> old track, <c>{1}</c> new track.</summary>
    public string MusicReplaced { get; init; } = "Danced to {1} in place of {0}.";

    /// <summary><c>{0}</c> old tempo, <c>{1}</c> new tempo.</summary>
    public string Tempo { get; init; } = "{1}, was {0}.";

    /// <summary><c>{0}</c> a number.</summary>
    public string BeatsPerMinute { get; init; } = "{0} bpm";

    /// <summary><c>{0}</c> old intro, <c>{1}</c> new intro.</summary>
    public string Intro { get; init; } = "intro {1}, was {0}.";

    /// <summary><c>{0}</c> old length, <c>{1}</c> new length.</summary>
    public string TrackLength { get; init; } = "length {1}, was {0}.";

    /// <summary><c>{0}</c> a number.</summary>
    public string Seconds { get; init; } = "{0} seconds";

    /// <summary>For a value that is not stated.</summary>
    public string NotStated { get; init; } = "not stated";

    /// <summary><c>{0}</c> name of a move of her own, <c>{1}</c> old steps, <c>{2}</c> new steps.</summary>
    public string OwnMoveChanged { get; init; } = "The move “{0}” is now {2}; it was {1}.";

    /// <summary><c>{0}</c> name of a move of her own, <c>{1}</c> its steps.</summary>
    public string OwnMoveNew { get; init; } = "The move “{0}” is new: {1}.";

    /// <summary><c>{0}</c> name of a move of her own.</summary>
    public string OwnMoveGone { get; init; } = "The move “{0}” is gone.";

    /// <summary><c>{0}</c> sections and tags.</summary>
    public string WordsOnlyIn { get; init; } = "Words only, danced as before: {0}.";

    /// <summary>When only words outside the sections changed.</summary>
    public string WordsOnly { get; init; } = "Words only; it is danced as before.";
}
