using System.Net;
using Microsoft.AspNetCore.Http;

namespace Scuff.App.Web;

/// <summary>
/// Who may talk with the studio. It listens on this machine only, but every page she has open in her browser can send requests here: those are told
/// apart by their Origin; and a name on the net that is made to point here is told apart by its Host (DNS rebinding).
/// </summary>
/// <param name="isHere">Whether a host is the very address that is listened at: <see cref="IsThisMachine"/>, or that of the hall.</param>
internal sealed class HouseRules(Func<HostString, bool> isHere)
{
    private const string NotItsPage = "This studio answers only to its own page.";

    // Everything comes from this page's own files. Sheets are shown in a frame that may run no script; sound and pictures are made in the page.
    private const string Policy = "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' blob: data:; font-src 'self' data:; "
        + "connect-src 'self'; media-src 'self' blob:; worker-src 'self'; manifest-src 'self'; frame-src 'self' blob:; base-uri 'none'; form-action 'none'; "
        + "frame-ancestors 'self'";

    /// <summary>Whether a host is one of the names that this machine has for itself, with the port that is listened at.</summary>
    public static bool IsThisMachine(HostString host, int port)
    {
        string name = host.Host.Trim('[', ']');
        return (host.Port ?? 80) == port
            && (string.Equals(name, "localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(name, out IPAddress? address) && IPAddress.IsLoopback(address)));
    }

    /// <summary>Why a request is refused; null when it may go on.</summary>
    public string? Refusal(HttpContext context)
    {
        HostString host = context.Request.Host;
        if (!host.HasValue || !isHere(host))
        {
            return "This studio answers only to this machine.";
        }

        string? origin = context.Request.Headers.Origin;
        if (!string.IsNullOrEmpty(origin) && !(Uri.TryCreate(origin, UriKind.Absolute, out Uri? from) && from.Scheme == "http"
            && string.Equals(from.Authority, host.Value, StringComparison.OrdinalIgnoreCase)))
        {
            return NotItsPage;
        }

        // browsers say so even where they send no Origin; following a link to the page is no question
        bool isApart = (string?)context.Request.Headers["Sec-Fetch-Site"] is "cross-site" or "same-site";
        bool isQuestion = context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal) || !HttpMethods.IsGet(context.Request.Method);
        return isApart && isQuestion ? NotItsPage : null;
    }

    /// <summary>Sets what every answer says about itself.</summary>
    public static void Mark(HttpResponse response)
    {
        IHeaderDictionary headers = response.Headers;
        headers.ContentSecurityPolicy = Policy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "no-referrer";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        headers["Permissions-Policy"] = "camera=(), geolocation=(), microphone=(self)";
        headers.CacheControl = "no-store";
    }
}
