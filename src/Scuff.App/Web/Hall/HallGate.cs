using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.Features;

namespace Scuff.App.Web.Hall;

/// <summary>What each circle may ask. It stands behind the routing, so that it knows which route is asked and what that says of itself.</summary>
internal static class HallGate
{
    /// <summary>The page of the hall.</summary>
    public const string Page = "/hall";

    // a code and its braces are far smaller
    private const long LargestOfStrangers = 4096;

    /// <summary>Who asks.</summary>
    public static HallCircle CircleOf(HttpContext context) => context.Features.Get<HallVisitor>()?.Circle ?? HallCircle.Here;

    /// <summary>Lets a request on to its route, or refuses it.</summary>
    public static Task Pass(HttpContext context, RequestDelegate next)
    {
        HallCircle circle = CircleOf(context);
        if (circle == HallCircle.Stranger && context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } size)
        {
            size.MaxRequestBodySize = LargestOfStrangers;
        }

        if (context.GetEndpoint() is { } route)
        {
            HallCircle least = route.Metadata.GetMetadata<HallReach>()?.Circle ?? HallCircle.Tablet;
            return circle >= least ? next(context) : Refuse(context, circle);
        }

        return circle >= HallCircle.Tablet || IsOfHallPage(context.Request) ? next(context) : TurnAway(context, circle);
    }

    private static bool IsOfHallPage(HttpRequest request)
    {
        bool isLook = HttpMethods.IsGet(request.Method) || HttpMethods.IsHead(request.Method);
        return isLook && request.Path.Value is { } path
            && (path is Page or "/icon.svg" or "/scuff.webmanifest" || path.StartsWith("/assets/", StringComparison.Ordinal));
    }

    // who opens another room is led to the page of the hall
    private static Task TurnAway(HttpContext context, HallCircle circle)
    {
        string path = context.Request.Path.Value ?? "/";
        bool isQuestion = !HttpMethods.IsGet(context.Request.Method) || path.StartsWith("/api", StringComparison.Ordinal);
        if (isQuestion || path.Contains('.', StringComparison.Ordinal))
        {
            return Refuse(context, circle);
        }

        context.Response.Redirect(Page);
        return Task.CompletedTask;
    }

    private static Task Refuse(HttpContext context, HallCircle circle) => circle switch
    {
        HallCircle.Stranger => Exchange.Refuse(
            context,
            StatusCodes.Status401Unauthorized,
            "Open the page of the hall and type the code that stands on her page."),
        HallCircle.Floor => Exchange.Refuse(
            context,
            StatusCodes.Status403Forbidden,
            "This screen watches; it changes nothing. Pair it with a code for her tablet to do more."),
        _ => Exchange.Refuse(context, StatusCodes.Status403Forbidden, "This is done only on the machine that Scuff runs on."),
    };
}
