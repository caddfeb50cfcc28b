using Scuff.Dances;
using Scuff.Music;
using Scuff.Timing;

namespace Scuff.Analysis.Fit;

/// <summary>What the search found, as it is written on the sheet: the track with its interruptions, and the tags that it needs.</summary>
internal sealed class FitWriting
{
    private readonly Dance _dance;
    private readonly FitActs _acts;
    private readonly CountedMusic _music;
    private readonly List<Interruption> _interruptions = [];
    private readonly List<SequenceItem> _sequence = [];
    private readonly List<Tag> _made = [];
    private readonly int[] _times;

    private FitWriting(Dance dance, FitActs acts, CountedMusic music, FitSolution solution)
    {
        _dance = dance;
        _acts = acts;
        _music = music;
        _times = new int[acts.Parts.Count];
        Write(solution);
    }

    /// <summary>The tags that the dance does not have yet.</summary>
    public ValueList<Tag> MadeTags => _made.ToValueList();

    public static FitWriting Of(Dance dance, FitActs acts, CountedMusic music, FitSolution solution) => new(dance, acts, music, solution);

    /// <summary>The track.</summary>
    /// <param name="begins">The count of the music on which the dance begins.</param>
    /// <param name="like">The track in the dance's text, whose words are kept; or null.</param>
    public Track TrackAt(int begins, Track? like) => TrackOf(_music, begins, like) with
    {
        Interruptions = _interruptions.ToValueList(),
        Sequence = _dance.IsPhrased ? _sequence.ToValueList() : [],
        Ending = null,
    };

    /// <summary>What is stated of a track, by its map.</summary>
    internal static Track TrackOf(CountedMusic music, int begins, Track? like)
    {
        TrackMap map = music.Map;
        int intro = music.IntroOf(begins);
        double seconds = music.SecondsOf(begins);

        // what sounds before the first count 1 would make counts and seconds disagree on the sheet
        double counted = intro * 60 / Math.Max(1, music.CountsPerMinute);
        bool agree = Math.Abs(seconds - counted) <= 30 / Math.Max(1, music.CountsPerMinute);
        Track track = like ?? new Track { Title = map.Title, Artist = map.Artist, Span = default, Line = 0 };
        return track with
        {
            Tempo = new Tempo(Tenths(map.Tempo.Value)),
            Intro = Counts.FromWhole(intro),
            IntroSeconds = agree ? Tenths(seconds) : null,
            LengthSeconds = new Ratio((long)Math.Round(map.Seconds), 1),
        };
    }

    // whole beats where the music is that near to them
    private static Ratio Tenths(double value) => Math.Abs(value - Math.Round(value)) < 0.2
        ? new Ratio((long)Math.Round(value), 1)
        : new Ratio((long)Math.Round(value * 10), 10);

    private void Write(FitSolution solution)
    {
        int wall = 0;
        for (int i = 0; i < solution.Events.Count; i++)
        {
            FitEvent at = solution.Events[i];
            if (at.IsBegin)
            {
                wall++;
                _times[at.Part]++;
                _sequence.Add(new SequenceItem(_acts.Danced[at.Part].Part.Name, IsTag: false, null, default));
                continue;
            }

            // all that happens at one place is one line of the sheet
            List<InterruptionAct> acts = [];
            ChangedCounts? change = null;
            int next = i;
            while (next < solution.Events.Count && !solution.Events[next].IsBegin && solution.Events[next].Count == at.Count)
            {
                FitAct act = _acts.Parts[at.Part].Acts[at.Count][solution.Events[next].Act];
                FitContent content = _acts.Contents[act.Content];
                acts.Add(ActOf(content));
                change = (content as FitContent.Again)?.Change ?? change;
                next++;
            }

            if (_dance.IsPhrased && InSequence(at, acts, change))
            {
                i = next - 1;
                continue;
            }

            bool isAtEnd = at.Count == _acts.Parts[at.Part].Length;
            if (!isAtEnd && acts[^1] is not InterruptionAct.Restart)
            {
                acts.Add(new InterruptionAct.GoOn());
            }

            _interruptions.Add(new Interruption
            {
                Walls = [_dance.IsPhrased ? _times[at.Part] : wall],
                PartName = _dance.IsPhrased ? _acts.Danced[at.Part].Part.Name : "",
                AfterCounts = Counts.FromWhole(at.Count),
                Acts = acts.ToValueList(),
                Changes = change is null ? [] : [change],
                Span = default,
                Line = 0,
                Verbatim = "",
            });
            i = next - 1;
        }
    }

    // In a phrased dance, tags between parts and parts that are cut stand in the order of the parts.
    private bool InSequence(FitEvent at, List<InterruptionAct> acts, ChangedCounts? change)
    {
        if (at.Count == _acts.Parts[at.Part].Length && acts.TrueForAll(a => a is InterruptionAct.PlayTag))
        {
            _sequence.AddRange(acts.OfType<InterruptionAct.PlayTag>().Select(p => new SequenceItem(p.Name, IsTag: true, null, default)));
            return true;
        }

        if (acts is [InterruptionAct.Restart] && change is null)
        {
            _sequence[^1] = _sequence[^1] with { Upto = Counts.FromWhole(at.Count) };
            return true;
        }

        return false;
    }

    private InterruptionAct ActOf(FitContent content)
    {
        switch (content)
        {
            case FitContent.Tagged tagged:
                if (tagged.IsMade && !_made.Contains(tagged.Tag))
                {
                    _made.Add(tagged.Tag);
                }

                return new InterruptionAct.PlayTag(tagged.Tag.Name);
            case FitContent.Quoted quoted:
                return new InterruptionAct.Quote(quoted.PartName, quoted.Section, quoted.Counts);
            case FitContent.Stands stands:
                return new InterruptionAct.Wait(Counts.FromWhole(stands.Length));
            default:
                return new InterruptionAct.Restart();
        }
    }
}
