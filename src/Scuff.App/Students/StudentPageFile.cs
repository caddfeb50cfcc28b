using System.Net;
using System.Text;
using System.Text.Json;
using Scuff.App.Web;
using Scuff.App.Web.Contract;

namespace Scuff.App.Students;

/// <summary>
/// Joins what a page for students shows, its script and its style into one file that stands alone: it asks for nothing, from nobody, and holds
/// no music.
/// </summary>
internal static class StudentPageFile
{
    private const string Root = "student/";

    // Nothing but what stands in the file itself: also a fault in it could not ask the net for anything.
    private const string Policy = "default-src 'none'; script-src 'unsafe-inline'; style-src 'unsafe-inline'; font-src data:; img-src data:";

    /// <summary>The ending of its file.</summary>
    public const string Extension = ".html";

    /// <summary>Whether this program was built with the parts of the page.</summary>
    public static bool Exists => Part("student.js") is not null;

    /// <summary>Writes the page as UTF-8.</summary>
    /// <exception cref="InvalidOperationException">The program was built without it.</exception>
    public static byte[] Write(StudentPage page)
    {
        string script = Part("student.js") ?? throw new InvalidOperationException("This program was built without its pages.");
        string style = Part("student.css") ?? "";

        // the serializer writes < and > as signs of JSON, so that no word of hers can end the element it stands in
        string data = JsonSerializer.Serialize(page, StudioJson.Default.StudentPage);
        StringBuilder file = new();
        file.Append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"").Append(Policy).Append("\">\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta name=\"color-scheme\" content=\"light dark\">\n")
            .Append("<meta name=\"referrer\" content=\"no-referrer\">\n")
            .Append("<title>").Append(WebUtility.HtmlEncode(page.Title)).Append("</title>\n")
            .Append("<style>").Append(Inside(style, "style")).Append("</style>\n</head>\n<body>\n<div id=\"page\"></div>\n")
            .Append("<noscript>This page dances and plays, so it needs its script to be allowed. The printed sheet says the same in words.</noscript>\n")
            .Append("<script type=\"application/json\" id=\"dance\">").Append(data).Append("</script>\n")
            .Append("<script>").Append(Inside(script, "script")).Append("</script>\n</body>\n</html>\n");
        return Encoding.UTF8.GetBytes(file.ToString());
    }

    // Neither may hold the end of the element it stands in; in both a backslash before the slash changes nothing else.
    private static string Inside(string part, string element) => part
        .Replace("</" + element, "<\\/" + element, StringComparison.OrdinalIgnoreCase)
        .Replace("<!--", "<\\!--", StringComparison.Ordinal);

    private static string? Part(string name)
    {
        using Stream? file = typeof(StudentPageFile).Assembly.GetManifestResourceStream(Root + name);
        if (file is null)
        {
            return null;
        }

        using StreamReader reader = new(file, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
