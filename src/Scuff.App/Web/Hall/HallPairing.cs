using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Scuff.App.Web.Hall;

/// <summary>
/// The code that lets a device in. Six digits are few, so tries are fewer: with thirty in all, a guess is right once in 33 000 codes. Safe to share
/// between threads.
/// </summary>
/// <param name="clock">The time.</param>
internal sealed class HallPairing(TimeProvider clock)
{
    /// <summary>How long a code lets in.</summary>
    public static readonly TimeSpan Lifetime = TimeSpan.FromMinutes(10);

    /// <summary>Wrong tries after which a code lets nobody in any more, wherever they came from.</summary>
    public const int MostWrongInAll = 30;

    /// <summary>Wrong tries after which one address has to wait for another code.</summary>
    public const int MostWrongOfOne = 10;

    // two slips of the finger cost nothing; then 2, 4, 8 ... seconds
    private const int FreeSlips = 2;
    private const int LongestWaitSeconds = 60;

    private readonly Lock _lock = new();
    private readonly Dictionary<string, (int Wrong, DateTimeOffset Until)> _tries = new(StringComparer.Ordinal);
    private string? _digits;
    private HallCircle _circle;
    private DateTimeOffset _endsAt;
    private int _wrong;
    private string _why = "There is no code. Make a new one.";

    /// <summary>The code that lets in now; null when none does.</summary>
    public string? Digits
    {
        get
        {
            lock (_lock)
            {
                return Current();
            }
        }
    }

    /// <summary>Whom the latest code is for.</summary>
    public HallCircle Circle
    {
        get
        {
            lock (_lock)
            {
                return _circle;
            }
        }
    }

    /// <summary>Why there is no code, in a sentence for her; empty when there is one.</summary>
    public string Why
    {
        get
        {
            lock (_lock)
            {
                return Current() is null ? _why : "";
            }
        }
    }

    /// <summary>How long the code lets in from now on.</summary>
    public TimeSpan Left
    {
        get
        {
            lock (_lock)
            {
                return Current() is null ? TimeSpan.Zero : _endsAt - clock.GetUtcNow();
            }
        }
    }

    /// <summary>Makes a code; the one before lets nobody in any more.</summary>
    /// <param name="circle">Whom it lets in. A code for her tablet, which may write, lets in once.</param>
    public void MakeCode(HallCircle circle)
    {
        lock (_lock)
        {
            _digits = RandomNumberGenerator.GetInt32(1_000_000).ToString("D6", CultureInfo.InvariantCulture);
            _circle = circle;
            _endsAt = clock.GetUtcNow() + Lifetime;
            _wrong = 0;
            _tries.Clear();
        }
    }

    /// <summary>Tries a code.</summary>
    /// <param name="address">Who tries.</param>
    /// <param name="typed">What was typed; spaces do not count.</param>
    public HallTry Try(string address, string typed)
    {
        string digits = string.Concat(typed.Where(c => !char.IsWhiteSpace(c)));
        lock (_lock)
        {
            if (Current() is not { } right)
            {
                return new HallTry(null, "The code is used up. Ask for a new one: it stands on her page.", TimeSpan.Zero);
            }

            DateTimeOffset now = clock.GetUtcNow();
            (int wrong, DateTimeOffset until) = _tries.GetValueOrDefault(address);
            if (wrong >= MostWrongOfOne)
            {
                return new HallTry(null, "This device has typed too many wrong codes. Ask for a new code and begin again.", TimeSpan.Zero);
            }

            if (until > now)
            {
                return Refused(until - now, "Too many wrong codes.");
            }

            // compared whole, so that the time it takes does not tell how much of it is right
            if (CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(digits), Encoding.UTF8.GetBytes(right)))
            {
                _tries.Remove(address);
                if (_circle == HallCircle.Tablet)
                {
                    _digits = null;
                    _why = "The code has let a tablet in. Make a new one for another.";
                }

                return new HallTry(_circle, "", TimeSpan.Zero);
            }

            wrong++;
            TimeSpan wait = wrong <= FreeSlips ? TimeSpan.Zero : TimeSpan.FromSeconds(Math.Min(LongestWaitSeconds, Math.Pow(2, wrong - FreeSlips)));
            _tries[address] = (wrong, now + wait);
            if (++_wrong >= MostWrongInAll)
            {
                _digits = null;
                _why = "Too many wrong codes were typed, so this one lets nobody in any more. "
                    + "Make a new one if you know who typed them; else shut the hall.";
            }

            return Refused(wait, "This is not the code.");
        }
    }

    private static HallTry Refused(TimeSpan wait, string what)
    {
        int seconds = (int)Math.Ceiling(wait.TotalSeconds);
        return new HallTry(
            null,
            seconds == 0 ? $"{what} It stands on her page; look again."
                : string.Create(CultureInfo.InvariantCulture, $"{what} Wait {seconds} {(seconds == 1 ? "second" : "seconds")} and try again."),
            wait);
    }

    private string? Current()
    {
        if (_digits is not null && clock.GetUtcNow() >= _endsAt)
        {
            _digits = null;
            _why = "The code has run out. Make a new one.";
        }

        return _digits;
    }
}
