using Scuff.Audio.Evaluation;
using Scuff.Music;
using Tests.Music;

namespace Tests.Audio.Evaluation;

public sealed class TrackAnswerTests
{
    [Fact]
    public void A_map_is_answered_as_it_is_scored()
    {
        TrackMap map = Maps.Steady(0.5, 0.5, 10, 16) with { Breaks = [new TrackBreak(3, 4, true, 1), new TrackBreak(5, 6, false, 1)] };

        TrackAnswer answer = TrackAnswer.Read(TrackAnswer.Of(map).Write());

        Assert.Equal(26, answer.Beats!.Value.Count);
        Assert.Equal([0.5, 4.5, 5.5, 9.5], answer.CountOnes!.Value);
        Assert.Equal([0.5, 2.5, 4.5, 5.5, 7.5, 9.5, 11.5], answer.Downbeats!.Value);
        Assert.Equal([new AnswerSection(0.5, 5.5, "A"), new AnswerSection(5.5, 14, "B")], answer.Sections!.Value);
        Assert.Equal([new AnswerBreak(3, 4), new AnswerBreak(5, 6, AnswerBreak.Drop)], answer.Breaks!.Value);
        Assert.Equal((120, 0, 14), (answer.TempoBpm, answer.FirstCountBeatIndex, answer.AudioSeconds));
    }

    [Fact]
    public void A_track_without_beats_says_so()
    {
        TrackAnswer answer = TrackAnswer.Of(new TrackMap { Seconds = 3 });

        Assert.Empty(answer.Beats!.Value);
        Assert.Null(answer.FirstCountBeatIndex);
    }
}
