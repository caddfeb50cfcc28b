using Scuff.Analysis.Cautions;
using Scuff.Analysis.Checks;
using Scuff.Analysis.Fit;
using Scuff.Analysis.Floor;
using Scuff.Analysis.Lessons;
using Scuff.Analysis.Levels;
using Scuff.Analysis.Loads;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Music;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis;

/// <summary>
/// The one front door to everything that is computed from a text: each part is computed when it is first asked for, and once.
/// Immutable, and safe to share between threads.
/// </summary>
public sealed class DanceAnalysis
{
    private readonly Lazy<Timeline> _wall;
    private readonly Lazy<Timeline> _plain;
    private readonly Lazy<ValueList<TrackTimeline>> _tracks;
    private readonly Lazy<Turn?> _netTurn;
    private readonly Lazy<Timeline> _once;
    private readonly Lazy<DanceLoad> _load;
    private readonly Lazy<FloorUse> _floor;
    private readonly Lazy<DancedTempo?> _tempo;
    private readonly Lazy<ComputedLevel> _level;
    private readonly Lazy<ValueList<Caution>> _cautions;
    private readonly Lazy<Report> _report;
    private readonly Lazy<ValueList<TrackFit>> _fits;
    private readonly Lazy<DanceAnalysis> _easier;

    private DanceAnalysis(Draft draft, ValueList<Namesake> namesakes, ValueList<TrackMap> maps)
    {
        Maps = maps;
        _fits = new Lazy<ValueList<TrackFit>>(FindFits);
        _easier = new Lazy<DanceAnalysis>(FindEasier);
        Draft = draft;
        Namesakes = namesakes;
        _wall = new Lazy<Timeline>(() => Unroller.Unroll(Dance, PlanBuilder.OneWall(Dance)));
        _plain = new Lazy<Timeline>(() => Unroller.Unroll(Dance, PlanBuilder.Plain(Dance)));
        _tracks = new Lazy<ValueList<TrackTimeline>>(FindTracks);
        _netTurn = new Lazy<Turn?>(FindNetTurn);
        _once = new Lazy<Timeline>(FindOnce);
        _load = new Lazy<DanceLoad>(() => LoadMeter.Of(OnceTimeline));
        _floor = new Lazy<FloorUse>(() => FloorUse.Of(Dance.IsPhrased ? PlainTimeline : WallTimeline));
        _tempo = new Lazy<DancedTempo?>(() => DancedTempo.FastestOf(Dance));
        _level = new Lazy<ComputedLevel>(() => LevelComputer.Of(this));
        _cautions = new Lazy<ValueList<Caution>>(() => CautionFinder.Of(this));
        _report = new Lazy<Report>(FindReport);
    }

    /// <summary>The text, the dance understood from it, and the reader's complaints.</summary>
    public Draft Draft { get; }

    /// <summary>Other sheets with the same title that are kept beside it, as far as the caller told of them.</summary>
    public ValueList<Namesake> Namesakes { get; }

    /// <summary>Maps of tracks that the caller has.</summary>
    public ValueList<TrackMap> Maps { get; }

    /// <summary>The dance as its text has it on each of its tracks whose map the caller has.</summary>
    public ValueList<TrackFit> Fits => _fits.Value;

    /// <summary>The same dance with the easier options of its text danced; itself where the text offers none.</summary>
    public DanceAnalysis Easier => _easier.Value;

    /// <summary>The dance as written.</summary>
    public Dance Dance => Draft.Dance;

    /// <summary>One plain repetition as danced; of a phrased dance every part once.</summary>
    public Timeline WallTimeline => _wall.Value;

    /// <summary>Plain repetitions until the floor is back at the front with the same weight, at most eight walls; a phrased dance's sequence once.</summary>
    public Timeline PlainTimeline => _plain.Value;

    /// <summary>
    /// The dance on each track that breaks its pattern or has an order of its own; where the breaks are written for every track,
    /// also without one (the track is then null).
    /// </summary>
    public ValueList<TrackTimeline> TrackTimelines => _tracks.Value;

    /// <summary>Everything that is written, danced once: one plain repetition (of a phrased dance every part), then every tag.</summary>
    public Timeline OnceTimeline => _once.Value;

    /// <summary>What the dance asks of a body.</summary>
    public DanceLoad Load => _load.Value;

    /// <summary>How much floor it uses.</summary>
    public FloorUse FloorUse => _floor.Value;

    /// <summary>The fastest tempo stated for it, or null.</summary>
    public DancedTempo? Tempo => _tempo.Value;

    /// <summary>The level that the published definitions give it, with reasons.</summary>
    public ComputedLevel Level => _level.Value;

    /// <summary>What dancers and their teacher have to take care of.</summary>
    public ValueList<Caution> Cautions => _cautions.Value;

    /// <summary>Turn of one repetition; null when words that could not be read, or a turn without direction, leave it unknown.</summary>
    public Turn? NetTurn => _netTurn.Value;

    /// <summary>Number of walls: 1, 2, 4 or 8; null when the net turn is unknown or fits none, and for a phrased dance.</summary>
    public int? Walls => !Dance.IsPhrased && NetTurn is { } turn ? WallsOf(turn) : null;

    /// <summary>The reader's complaints and those of the checks, one for each cause.</summary>
    public Report Report => _report.Value;

    /// <summary>The feet on the floor for a timeline of this dance, in metres seen from above.</summary>
    /// <param name="timeline">Any timeline made here.</param>
    /// <param name="size">The dancer.</param>
    public static FloorPath FloorPathOf(Timeline timeline, DancerSize size) => FloorSimulator.Simulate(timeline, size);

    /// <summary>The dance as danced on a track (null for none), with its ending when there is one.</summary>
    public Timeline WithEnding(Track? track) => Unroller.Unroll(Dance, PlanBuilder.ForTrack(Dance, track, withEnding: true));

    /// <summary>The analysis of a draft; nothing is computed yet.</summary>
    public static DanceAnalysis Of(Draft draft) => new(draft, default, default);

    /// <summary>The analysis of a draft that is kept beside others; nothing is computed yet.</summary>
    /// <param name="draft">The draft.</param>
    /// <param name="namesakes">Other sheets with its title.</param>
    /// <param name="maps">Maps of tracks; those of the dance's own tracks (by title) are checked against its text.</param>
    public static DanceAnalysis Of(Draft draft, ValueList<Namesake> namesakes, ValueList<TrackMap> maps = default) => new(draft, namesakes, maps);

    /// <summary>How the dance fits a track.</summary>
    /// <param name="map">The track.</param>
    /// <param name="options">What is asked; null for the usual.</param>
    public FitAnswer Fit(TrackMap map, FitOptions? options = null) => new DanceFitter(Dance, options).Fit(map);

    /// <summary>How the dance is taught.</summary>
    /// <param name="options">What is asked of the lesson; null for the usual.</param>
    public LessonPlan Lesson(LessonOptions? options = null) => LessonPlanner.Plan(this, options ?? LessonOptions.Usual);

    /// <summary>
    /// How many walls a dance has whose repetition turns so much: none 1, a half 2, a quarter 4, an eighth 8; null for other amounts.
    /// Source: the clock rule of the sheets (facing in eighths, right positive), see docs/rules/facing-walls-differ.md.
    /// </summary>
    public static int? WallsOf(Turn netTurn)
    {
        Ratio rest = netTurn.Eighths.Modulo(8);
        return !rest.IsWhole ? null : rest.Numerator switch
        {
            0 => 1,
            4 => 2,
            2 or 6 => 4,
            _ => 8,
        };
    }

    private DanceAnalysis FindEasier()
        => TakenOptions.IsOffered(Dance) ? new DanceAnalysis(Draft with { Dance = TakenOptions.Of(Dance) }, Namesakes, Maps) : this;

    private ValueList<TrackFit> FindFits()
    {
        List<TrackFit> fits = [];
        foreach (Track track in Dance.Tracks)
        {
            if (Maps.FirstOrDefault(m => DanceFitter.IsOf(track, m)) is { } map)
            {
                FitAnswer answer = Fit(map, new FitOptions { MostInterruptions = 0, BeatsPerCount = DanceFitter.IsCountable(Dance.BeatsPerCount) ? Dance.BeatsPerCount : null });
                fits.Add(new TrackFit(track, answer.Music, answer.AsWritten));
            }
        }

        return fits.ToValueList();
    }

    private ValueList<TrackTimeline> FindTracks()
    {
        List<TrackTimeline> found = [];
        if (Dance.Interruptions.Count > 0)
        {
            found.Add(Unrolled(null));
        }

        foreach (Track track in Dance.Tracks)
        {
            if (track.Interruptions.Count > 0 || track.Sequence.Count > 0)
            {
                found.Add(Unrolled(track));
            }
        }

        return found.ToValueList();
    }

    private TrackTimeline Unrolled(Track? track)
    {
        Plan plan = PlanBuilder.ForTrack(Dance, track);
        return new TrackTimeline(track, plan, Unroller.Unroll(Dance, plan));
    }

    private Timeline FindOnce()
    {
        if (Dance.Tags.Count == 0)
        {
            return WallTimeline;
        }

        Plan wall = PlanBuilder.OneWall(Dance);
        IEnumerable<PlanStretch> tags = Dance.Tags.Select(tag => new PlanStretch(
            StretchKind.Tag,
            wall.Walls,
            [tag.Body],
            tag.Name,
            new CountSpan(Counts.Zero, tag.Body.Length),
            default,
            StartsWall: false));
        return Unroller.Unroll(Dance, wall with { Stretches = [.. wall.Stretches, .. tags] });
    }

    private Turn? FindNetTurn()
    {
        Turn sum = Turn.None;
        foreach (WrittenStep step in Dance.Sections.SelectMany(section => section.Steps))
        {
            if (step.Action.Kind == ActionKind.Unknown)
            {
                return null;
            }

            sum += step.Action.Turn;
        }

        // a turn whose direction or amount the reader asks for is in none of the actions
        bool isAsked = Draft.Report.Complaints.Any(complaint =>
            complaint.Severity >= Severity.Question && complaint.Rule.Id.StartsWith("turn/", StringComparison.Ordinal));
        return isAsked ? null : sum;
    }

    private Report FindReport()
    {
        CheckContext context = new(this);
        return new Report(Draft.Report.Complaints.Concat(AllChecks.Ordered.SelectMany(check => check.Check(context))));
    }
}
