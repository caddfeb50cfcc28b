using Microsoft.AspNetCore.Builder;

namespace Scuff.App.Web.Hall;

/// <summary>How a route says for whom it is.</summary>
internal static class HallReachSaying
{
    /// <summary>Says for whom a route is.</summary>
    public static void For(this IEndpointConventionBuilder route, HallCircle circle) => route.WithMetadata(new HallReach(circle));
}
