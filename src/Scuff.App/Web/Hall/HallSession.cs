using System.IO.Compression;
using System.Text.Json;
using Scuff.App.Web.Contract;

namespace Scuff.App.Web.Hall;

/// <summary>
/// What is danced in the hall, shared by all who look: one page leads, any number follow. Each change goes out whole, to everybody in the same
/// order. Safe to share between threads.
/// </summary>
internal sealed class HallSession
{
    /// <summary>Most that follow at once.</summary>
    public const int Most = 300;

    // Often enough that a screen knows within seconds that it has lost the network.
    private static readonly TimeSpan Heartbeat = TimeSpan.FromSeconds(4);

    private static readonly ReadOnlyMemory<byte> IsHere = "event: here\ndata: 1\n\n"u8.ToArray();
    private static readonly ReadOnlyMemory<byte> IsShut = "event: shut\ndata: 1\n\n"u8.ToArray();

    private readonly Lock _lock = new();
    private readonly TimeProvider _clock;
    private readonly long _start;
    private readonly HashSet<HallFollower> _followers = [];
    private ITimer? _beat;
    private HallNews _news = new(0, null, null);
    private FloorQuestion? _asked;
    private string _askedCalls = "";
    private int _eight;
    private long _dances;
    private byte[] _dance = [];
    private byte[] _smallDance = [];
    private string? _leader;

    /// <summary>Makes one in which nothing is danced.</summary>
    /// <param name="clock">The time.</param>
    public HallSession(TimeProvider clock)
    {
        _clock = clock;
        _start = clock.GetTimestamp();
    }

    /// <summary>The clock of the hall, in milliseconds.</summary>
    public double Now => _clock.GetElapsedTime(_start).TotalMilliseconds;

    /// <summary>How many follow.</summary>
    public int Followers
    {
        get
        {
            lock (_lock)
            {
                return _followers.Count;
            }
        }
    }

    /// <summary>The dance as it is sent, <see cref="HallDance"/>, plain and gzipped; null while none is shown.</summary>
    public (ReadOnlyMemory<byte> Plain, ReadOnlyMemory<byte> Small)? Dance
    {
        get
        {
            lock (_lock)
            {
                return _news.Dance is null ? null : (_dance, _smallDance);
            }
        }
    }

    /// <summary>Takes where the playhead of a page is.</summary>
    /// <returns>Whether the hall follows that page.</returns>
    public bool Tell(HallTell told)
    {
        lock (_lock)
        {
            if (!Leads(told.Hand, told.Takes))
            {
                return false;
            }

            Publish(_news with { Playhead = told.Playhead });
            return true;
        }
    }

    /// <summary>Takes what a page dances.</summary>
    /// <param name="told">What it told.</param>
    /// <param name="dance">Makes the feet and the calls; asked only when they are not those that are shown.</param>
    /// <returns>Whether the hall follows that page.</returns>
    public bool Tell(HallTellDance told, Func<(FloorAnswer Floor, IReadOnlyList<CalledWords> Calls)> dance)
    {
        // a question about calls holds lists, which are compared by what they say
        string calls = told.Calls is null ? "" : JsonSerializer.Serialize(told.Calls, StudioJson.Default.CallQuestion);
        lock (_lock)
        {
            if (!Leads(told.Hand, told.Takes))
            {
                return false;
            }

            if (_news.Dance is { } shown && shown.Title == told.Title && _eight == told.Eight && _asked == told.Floor && _askedCalls == calls)
            {
                return true;
            }
        }

        // outside the lock: it takes as long as a hundred changes of the playhead
        (FloorAnswer floor, IReadOnlyList<CalledWords> called) = dance();
        lock (_lock)
        {
            if (!Leads(told.Hand, takes: false))
            {
                return false;
            }

            // never the number of an earlier one: a screen that was away may have that still
            HallDance made = new(++_dances, told.Title, told.Eight, floor, called, HelpOf(told.Calls));
            (_asked, _askedCalls, _eight) = (told.Floor, calls, told.Eight);
            _dance = JsonSerializer.SerializeToUtf8Bytes(made, StudioJson.Default.HallDance);
            _smallDance = Compress(_dance);
            Publish(_news with { Dance = new HallDanceName(made.Number, made.Title) });
            return true;
        }
    }

    /// <summary>Tells everybody what a remote asks; the page that leads does it.</summary>
    public void Ask(HallAsk ask)
    {
        using MemoryStream message = new(128);
        message.Write("event: ask\ndata: "u8);
        JsonSerializer.Serialize(message, ask, StudioJson.Default.HallAsk);
        message.Write("\n\n"u8);
        lock (_lock)
        {
            TellAll(message.ToArray());
        }
    }

    /// <summary>Begins to follow; the latest is told at once.</summary>
    /// <returns>The follower; null when there are too many.</returns>
    public HallFollower? Follow()
    {
        lock (_lock)
        {
            if (_followers.Count >= Most)
            {
                return null;
            }

            HallFollower follower = new();
            follower.Tell(Message(_news));
            _followers.Add(follower);
            _beat ??= _clock.CreateTimer(_ => Beat(), null, Heartbeat, Heartbeat);
            return follower;
        }
    }

    /// <summary>Follows no longer.</summary>
    public void Leave(HallFollower follower)
    {
        lock (_lock)
        {
            _followers.Remove(follower);
            if (_followers.Count == 0)
            {
                _beat?.Dispose();
                _beat = null;
            }
        }

        follower.End();
    }

    /// <summary>Tells everybody that it is over, and lets them go. What was shown is forgotten.</summary>
    public void Shut()
    {
        lock (_lock)
        {
            TellAll(IsShut);
            foreach (HallFollower follower in _followers)
            {
                follower.End();
            }

            _followers.Clear();
            _beat?.Dispose();
            _beat = null;
            _leader = null;
            _asked = null;
            _news = new HallNews(_news.Number + 1, null, null);
        }
    }

    private static string HelpOf(CallQuestion? calls) => calls is null ? "" : calls.Help is [var first, ..] ? first : "thinning";

    private static byte[] Compress(byte[] plain)
    {
        using MemoryStream small = new();
        using (GZipStream gzip = new(small, CompressionLevel.Fastest))
        {
            gzip.Write(plain);
        }

        return small.ToArray();
    }

    private static ReadOnlyMemory<byte> Message(HallNews news)
    {
        using MemoryStream message = new(512);
        message.Write("data: "u8);
        JsonSerializer.Serialize(message, news, StudioJson.Default.HallNews);
        message.Write("\n\n"u8);
        return message.ToArray();
    }

    private bool Leads(string hand, bool takes)
    {
        if (takes || _leader is null)
        {
            _leader = hand;
        }

        return _leader == hand;
    }

    private void Publish(HallNews news)
    {
        _news = news with { Number = _news.Number + 1 };
        TellAll(Message(_news));
    }

    private void Beat()
    {
        lock (_lock)
        {
            TellAll(IsHere);
        }
    }

    private void TellAll(ReadOnlyMemory<byte> message) => _followers.RemoveWhere(f => !f.Tell(message));
}
