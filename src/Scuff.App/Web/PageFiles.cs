using System.Collections.Concurrent;
using System.IO.Compression;
using System.Net;
using Microsoft.AspNetCore.Http;

namespace Scuff.App.Web;

/// <summary>The built page, which stands in this program.</summary>
internal static class PageFiles
{
    private const string Root = "web/";
    private const string Ahead = "; rel=preload; as=fetch; crossorigin";

    private static readonly Dictionary<string, string> MediaTypes = new(StringComparer.OrdinalIgnoreCase)
    {
        [".html"] = "text/html; charset=utf-8",
        [".js"] = "text/javascript; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".svg"] = "image/svg+xml",
        [".png"] = "image/png",
        [".woff2"] = "font/woff2",
        [".webmanifest"] = "application/manifest+json",
        [".json"] = "application/json; charset=utf-8",
        [".txt"] = "text/plain; charset=utf-8",
    };

    // for the tablet in the hall; made when first asked for
    private static readonly ConcurrentDictionary<string, byte[]> Compressed = new(StringComparer.Ordinal);

    private static readonly HashSet<string> Names =
    [
        .. typeof(PageFiles).Assembly.GetManifestResourceNames().Where(n => n.StartsWith(Root, StringComparison.Ordinal)).Select(n => n[Root.Length..]),
    ];

    /// <summary>Whether this program was built with its page.</summary>
    public static bool Exist => Names.Contains("index.html");

    private static bool IsText(string name) => Path.GetExtension(name) is not (".woff2" or ".png");

    private static byte[] Whole(Stream file)
    {
        byte[] content = new byte[file.Length];
        file.ReadExactly(content);
        return content;
    }

    private static byte[] Compress(Stream file)
    {
        using MemoryStream small = new();
        using (GZipStream gzip = new(small, CompressionLevel.Optimal))
        {
            file.CopyTo(gzip);
        }

        return small.ToArray();
    }

    /// <summary>Answers with a file of the page; every path that names none and asks for a page gets the page itself, whose rooms have addresses.</summary>
    /// <param name="context">The exchange.</param>
    /// <param name="firstDance">The dance that the page opens with where its address names none; null when there is none.</param>
    public static async Task Answer(HttpContext context, Func<string?> firstDance)
    {
        if (!HttpMethods.IsGet(context.Request.Method) && !HttpMethods.IsHead(context.Request.Method))
        {
            await Exchange.Refuse(context, StatusCodes.Status405MethodNotAllowed, "There is nothing to do at this address.").ConfigureAwait(false);
            return;
        }

        string asked = context.Request.Path.Value?.TrimStart('/') ?? "";
        bool isRoom = !asked.Contains('.', StringComparison.Ordinal) && !asked.StartsWith("api/", StringComparison.Ordinal);
        string? name = Names.Contains(asked) ? asked : isRoom ? "index.html" : null;
        Stream? file = name is null ? null : typeof(PageFiles).Assembly.GetManifestResourceStream(Root + name);
        if (file is null)
        {
            await Exchange.Refuse(context, StatusCodes.Status404NotFound, "There is nothing at this address. Go back to the first page.").ConfigureAwait(false);
            return;
        }

        await using (file.ConfigureAwait(false))
        {
            context.Response.ContentType = MediaTypes.GetValueOrDefault(Path.GetExtension(name!), "application/octet-stream");

            // the builder names these files after their content
            context.Response.Headers.CacheControl = name!.StartsWith("assets/", StringComparison.Ordinal) ? "public, max-age=31536000, immutable" : "no-cache";
            context.Response.Headers.Vary = "Accept-Encoding";

            // a page on this machine has no way to go: packing it would only make it wait
            bool isNear = context.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from);
            if (isNear && name == "index.html" && !asked.StartsWith("hall", StringComparison.Ordinal))
            {
                // the page asks for these as soon as it runs; said here, the browser asks while it still reads the script
                string? dance = asked.Split('/') is [not ("classes" or "evening"), { Length: > 0 } named] ? named : firstDance();
                context.Response.Headers.Link = "</api/club>" + Ahead + (dance is null ? "" : $", </api/dances/{Uri.EscapeDataString(dance)}>" + Ahead);
            }

            bool isSmaller = !isNear && IsText(name) && context.Request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.OrdinalIgnoreCase);
            ReadOnlyMemory<byte> content = isSmaller ? Compressed.GetOrAdd(name, static (_, source) => Compress(source), file) : Whole(file);
            if (isSmaller)
            {
                context.Response.Headers.ContentEncoding = "gzip";
            }

            context.Response.ContentLength = content.Length;
            if (HttpMethods.IsGet(context.Request.Method))
            {
                await context.Response.Body.WriteAsync(content, context.RequestAborted).ConfigureAwait(false);
            }
        }
    }
}
