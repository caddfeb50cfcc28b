using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace Scuff.App.Web.Hall;

/// <summary>Where the hall may ask.</summary>
/// <param name="Addresses">Finds the addresses to listen on, the likeliest first, when the hall is opened and not before.</param>
/// <param name="Port">The port to try first; 0 for any that is free.</param>
internal sealed record HallPlace(Func<IReadOnlyList<HallAddress>> Addresses, int Port)
{
    /// <summary>The port that is tried first.</summary>
    public const int UsualPort = 7320;

    // Networks within this machine, for programs and machines that it plays itself; no tablet is in them.
    private static readonly string[] Inner =
        ["docker", "br-", "veth", "virbr", "vmnet", "vboxnet", "cni", "podman", "vEthernet", "utun", "tun", "tap", "wg"];

    /// <summary>The private networks that this machine is in.</summary>
    public static HallPlace Around { get; } = new(Find, UsualPort);

    /// <summary>One address that was named.</summary>
    public static HallPlace At(IPEndPoint named) => new(() => [new HallAddress(named.Address, "as named")], named.Port);

    /// <summary>
    /// Whether an address is one of a private network or of this machine, so that nothing outside can be meant by it.
    /// Source: RFC 1918; RFC 3927 (addresses that machines give themselves where nobody hands any out).
    /// </summary>
    public static bool IsPrivate(IPAddress address)
    {
        if (address.IsIPv4MappedToIPv6)
        {
            address = address.MapToIPv4();
        }

        if (IPAddress.IsLoopback(address))
        {
            return true;
        }

        if (address.AddressFamily != AddressFamily.InterNetwork)
        {
            return false;
        }

        byte[] parts = address.GetAddressBytes();
        return parts is [10, ..] or [192, 168, ..] or [169, 254, ..] || (parts is [172, ..] && parts[1] is >= 16 and <= 31);
    }

    private static List<HallAddress> Find() =>
    [
        .. NetworkInterface.GetAllNetworkInterfaces()
            .Where(n => n.OperationalStatus == OperationalStatus.Up)
            .Where(n => n.NetworkInterfaceType is not (NetworkInterfaceType.Loopback or NetworkInterfaceType.Tunnel or NetworkInterfaceType.Ppp))
            .Where(n => !Inner.Any(i => n.Name.StartsWith(i, StringComparison.OrdinalIgnoreCase)))
            .Select(n => (Plug: n, Properties: n.GetIPProperties()))
            .OrderByDescending(n => n.Plug.NetworkInterfaceType == NetworkInterfaceType.Wireless80211)
            .ThenByDescending(n => n.Properties.GatewayAddresses.Count > 0)
            .SelectMany(n => n.Properties.UnicastAddresses.Select(a => new HallAddress(a.Address, n.Plug.Name)))
            .Where(a => a.Address.AddressFamily == AddressFamily.InterNetwork && IsPrivate(a.Address) && !IPAddress.IsLoopback(a.Address)),
    ];
}
