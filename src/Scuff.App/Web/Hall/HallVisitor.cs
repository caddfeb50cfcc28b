using System.Net;

namespace Scuff.App.Web.Hall;

/// <summary>Who came in by the hall's door; a request without one came from this machine's own page.</summary>
/// <param name="Opening">The opening it came in by.</param>
/// <param name="Guest">The device; null for a stranger.</param>
/// <param name="Address">Where it asks from.</param>
internal sealed record HallVisitor(HallOpening Opening, HallGuest? Guest, IPAddress Address)
{
    /// <summary>What it may do.</summary>
    public HallCircle Circle => Guest?.Circle ?? HallCircle.Stranger;
}
