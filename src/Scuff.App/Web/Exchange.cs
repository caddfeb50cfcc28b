using System.Text.Json;
using System.Text.Json.Serialization.Metadata;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.WebUtilities;
using Scuff.App.Handouts;
using Scuff.App.Web.Contract;

namespace Scuff.App.Web;

/// <summary>How questions are read and answers are written: JSON that is known to the compiler, troubles as sentences.</summary>
internal static class Exchange
{
    private const string Json = "application/json; charset=utf-8";

    /// <summary>Reads the question.</summary>
    /// <exception cref="RefusalException">It is no JSON of that shape.</exception>
    public static async Task<T> Read<T>(HttpContext context)
        where T : class
    {
        if (!context.Request.HasJsonContentType())
        {
            throw new RefusalException(StatusCodes.Status415UnsupportedMediaType, "This question is not in the form that Scuff understands.");
        }

        try
        {
            T? question = await JsonSerializer.DeserializeAsync(context.Request.Body, TypeOf<T>(), context.RequestAborted).ConfigureAwait(false);
            return question ?? throw new RefusalException(StatusCodes.Status400BadRequest, "This question is empty.");
        }
        catch (JsonException)
        {
            throw new RefusalException(StatusCodes.Status400BadRequest, "This question is not in the form that Scuff understands. Load the page anew and try again.");
        }
    }

    /// <summary>Writes the answer.</summary>
    public static Task Answer<T>(HttpContext context, T answer, int status = StatusCodes.Status200OK)
    {
        context.Response.StatusCode = status;
        context.Response.ContentType = Json;
        return JsonSerializer.SerializeAsync(context.Response.Body, answer, TypeOf<T>(), context.RequestAborted);
    }

    /// <summary>Writes why not.</summary>
    public static Task Refuse(HttpContext context, int status, string sentence) => Answer(context, new Refusal(sentence), status);

    /// <summary>Writes a file.</summary>
    /// <param name="context">The exchange.</param>
    /// <param name="mediaType">What it is.</param>
    /// <param name="name">The name it is kept under; null to show it.</param>
    /// <param name="content">Its bytes.</param>
    public static Task File(HttpContext context, string mediaType, string? name, ReadOnlyMemory<byte> content)
    {
        context.Response.ContentType = mediaType;
        context.Response.ContentLength = content.Length;
        if (name is not null)
        {
            context.Response.Headers.ContentDisposition = "attachment; filename*=UTF-8''" + Uri.EscapeDataString(name);
        }

        return context.Response.Body.WriteAsync(content, context.RequestAborted).AsTask();
    }

    /// <summary>
    /// Sends something in the form asked for; made whole before the first byte goes, so that a trouble is told as one. What is large, a pack of songs, is made in
    /// a passing file.
    /// </summary>
    public static async Task Handout<T>(HttpContext context, Handout<T> form, T taken, string name)
    {
        using FileBufferingWriteStream made = new();
        await form.WriteAsync(taken, made, context.RequestAborted).ConfigureAwait(false);
        context.Response.ContentType = form.MediaType;
        context.Response.ContentLength = made.Length;
        context.Response.Headers.ContentDisposition = "attachment; filename*=UTF-8''" + Uri.EscapeDataString(name);
        await made.DrainBufferAsync(context.Response.Body, context.RequestAborted).ConfigureAwait(false);
    }

    /// <summary>A value of the path.</summary>
    public static string Path(HttpContext context, string name) => context.Request.RouteValues[name] as string ?? "";

    private static JsonTypeInfo<T> TypeOf<T>() => (JsonTypeInfo<T>)StudioJson.Default.GetTypeInfo(typeof(T))!;
}
