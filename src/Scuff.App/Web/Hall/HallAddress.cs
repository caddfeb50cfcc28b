using System.Net;

namespace Scuff.App.Web.Hall;

/// <summary>An address of this machine in a network around it.</summary>
/// <param name="Address">The address.</param>
/// <param name="Network">What this machine calls the network's plug: <c>Wi-Fi</c>.</param>
internal sealed record HallAddress(IPAddress Address, string Network);
