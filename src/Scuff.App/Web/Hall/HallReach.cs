namespace Scuff.App.Web.Hall;

/// <summary>
/// What a route says of itself: the circle it is for. A route that says nothing is for her tablet and this machine, never for a watching screen.
/// </summary>
/// <param name="Circle">The least trusted circle that is answered.</param>
internal sealed record HallReach(HallCircle Circle);
