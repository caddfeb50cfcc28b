using Scuff.Analysis;
using Scuff.Analysis.Floor;
using Scuff.App.Clubs;
using Scuff.App.Memory;
using Scuff.App.Programmes;
using Scuff.App.Tracks;
using Scuff.App.Web.Hall;
using Scuff.App.Web.Routes;
using Scuff.App.Web.Tracks;
using Scuff.Prose;
using Scuff.Repertoire;
using Scuff.Solving;

namespace Scuff.App.Web;

/// <summary>What the routes answer from. Safe to share between threads.</summary>
internal sealed class Studio : IDisposable
{
    // The page asks about one text in several ways, one after the other: reading it once is enough. A few, for a few open pages.
    private const int Remembered = 8;

    private readonly Lock _lock = new();
    private readonly LinkedList<DanceAnalysis> _recent = new();
    private readonly Action<string> _tell;

    /// <summary>Makes a studio.</summary>
    /// <param name="club">The club she works in; not disposed with it.</param>
    /// <param name="clock">The time.</param>
    /// <param name="tell">Where troubles that the page cannot mend are told.</param>
    /// <param name="heard">What was heard before; null when nothing is kept but in the club.</param>
    public Studio(Club club, TimeProvider clock, Action<string> tell, TrackCache? heard = null)
    {
        Club = club;
        Clock = clock;
        _tell = tell;
        Tracks = new TrackDesk(club, heard ?? new TrackCache(null), TellTrouble);
        Hall = new HallDoor(this);
    }

    /// <summary>The club she works in.</summary>
    public Club Club { get; }

    /// <summary>Where its tracks are heard and looked up.</summary>
    public TrackDesk Tracks { get; }

    /// <summary>The time.</summary>
    public TimeProvider Clock { get; }

    /// <summary>Where programmes are made.</summary>
    public INightDesk Night { get; init; } = new NightDesk(new ExactProgrammeSolver());

    /// <summary>Where it is said what a class has likely forgotten.</summary>
    public IRevisionDesk Revision { get; init; } = new RevisionDesk();

    /// <summary>Where it is said what a class knows of a new dance already.</summary>
    public ILikenessDesk Likeness { get; init; } = new LikenessDesk();

    /// <summary>Whether and how the hall may look in.</summary>
    public HallDoor Hall { get; }

    /// <summary>The dance she looked at last, as long as it is there; else the one that was saved last; null in an empty club.</summary>
    public StoredDance? LastDance()
    {
        if (Club.Settings.Get(ClubPlace.LastDanceSetting) is { } id && Club.Dances.Get(id) is { Row.RemovedAt: null } looked)
        {
            return looked;
        }

        DancePage latest = Club.Dances.Search(new DanceQuery { Take = 1, Order = DanceOrder.LastSaved });
        return latest.Rows.Count > 0 ? Club.Dances.Get(latest.Rows[0].Id) : null;
    }

    /// <summary>Reads the dance that the page will ask for first, so that it is ready by then. What goes wrong here goes wrong again when it is asked for.</summary>
    public void Warm()
    {
        try
        {
            if (LastDance() is { } dance)
            {
                DanceAnalysis analysis = Analyse(dance.Text);
                _ = Reading.Of(analysis);
                _ = FloorSampler.Of(analysis, analysis.PlainTimeline, DancerSize.Default);
            }

            LibraryRoutes.Warm(this);
        }
        catch (ClubTrouble)
        {
            // told when the page asks
        }
    }

    /// <summary>A text, read and analysed.</summary>
    public DanceAnalysis Analyse(string text)
    {
        lock (_lock)
        {
            for (LinkedListNode<DanceAnalysis>? node = _recent.First; node is not null; node = node.Next)
            {
                if (node.Value.Draft.Text == text)
                {
                    _recent.Remove(node);
                    _recent.AddFirst(node);
                    return node.Value;
                }
            }
        }

        DanceAnalysis analysis = DanceAnalysis.Of(DanceReader.Read(text));
        lock (_lock)
        {
            _recent.AddFirst(analysis);
            if (_recent.Count > Remembered)
            {
                _recent.RemoveLast();
            }
        }

        return analysis;
    }

    /// <summary>Stops what is still being heard.</summary>
    public void Dispose() => Tracks.Dispose();

    /// <summary>Tells a trouble that is the program's own.</summary>
    public void TellTrouble(string place, Exception trouble) => _tell($"{place}: {trouble}");
}
