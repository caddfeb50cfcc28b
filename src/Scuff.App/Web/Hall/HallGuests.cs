using System.Buffers.Text;
using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text;

namespace Scuff.App.Web.Hall;

/// <summary>The devices that were let in, each known by a secret of its own. Safe to share between threads.</summary>
/// <param name="clock">The time.</param>
internal sealed class HallGuests(TimeProvider clock)
{
    /// <summary>Most devices of one opening.</summary>
    public const int Most = 200;

    // a guest asks for the time every ten seconds
    private static readonly TimeSpan Presence = TimeSpan.FromSeconds(30);

    // By the digest of the secret: how long a look-up takes tells nothing of the secret itself.
    private readonly ConcurrentDictionary<string, HallGuest> _guests = new(StringComparer.Ordinal);

    /// <summary>Lets a device in.</summary>
    /// <param name="circle">What it may do.</param>
    /// <returns>Its secret; null when there are too many.</returns>
    public string? Add(HallCircle circle)
    {
        if (_guests.Count >= Most)
        {
            return null;
        }

        string secret = Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(32));
        _guests[Digest(secret)] = new HallGuest(circle) { Seen = clock.GetUtcNow().UtcTicks };
        return secret;
    }

    /// <summary>The guest of a secret, who is seen with it; null when nobody has it.</summary>
    public HallGuest? Find(string? secret)
    {
        if (secret is not { Length: > 0 and < 100 } || !_guests.TryGetValue(Digest(secret), out HallGuest? guest))
        {
            return null;
        }

        guest.Seen = clock.GetUtcNow().UtcTicks;
        return guest;
    }

    /// <summary>How many of a circle are there.</summary>
    public int Present(HallCircle circle)
    {
        long since = (clock.GetUtcNow() - Presence).UtcTicks;
        return _guests.Values.Count(g => g.Circle == circle && g.Seen >= since);
    }

    private static string Digest(string secret) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
