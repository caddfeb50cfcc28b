using Microsoft.AspNetCore.Http;
using Scuff.Repertoire;

namespace Scuff.App.Web.Tracks;

/// <summary>How the sound of a track is named and served: by what its bytes are, never by what its name pretends.</summary>
internal static class TrackSounds
{
    // Kinds as the decoders name them, the endings that are right for each, and the type that browsers know.
    private static readonly (string Format, string[] Endings, string MediaType)[] Kinds =
    [
        ("WAV", [".wav"], "audio/wav"),
        ("AIFF", [".aiff", ".aif", ".aifc"], "audio/aiff"),
        ("MP3", [".mp3"], "audio/mpeg"),
        ("Ogg Vorbis", [".ogg", ".oga"], "audio/ogg"),
        ("Ogg Opus", [".opus", ".ogg", ".oga"], "audio/ogg"),
        ("Ogg FLAC", [".oga", ".ogg"], "audio/ogg"),
        ("FLAC", [".flac"], "audio/flac"),
        ("M4A", [".m4a", ".mp4"], "audio/mp4"),
        ("AAC", [".aac"], "audio/aac"),
        ("WebM", [".webm"], "audio/webm"),
    ];

    private static readonly string[] Foreign = ["audio/mp4", "audio/aac", "audio/webm"];

    /// <summary>A name that says what the bytes are: the last part of the given one, with the right ending put on where it has another.</summary>
    /// <param name="given">The name that the page told; anything.</param>
    /// <param name="format">What the bytes are.</param>
    public static string NameOf(string given, string format)
    {
        string last = given[(given.LastIndexOfAny(['/', '\\']) + 1)..];
        string plain = string.Concat(last.Where(c => !char.IsControl(c) && c is not (':' or '*' or '?' or '"' or '<' or '>' or '|'))).Trim(' ', '.');
        plain = plain.Length == 0 ? "track" : plain.Length > 120 ? plain[..60] + plain[^60..] : plain;
        (string _, string[]? endings, string _) = Array.Find(Kinds, k => k.Format == format);
        return endings is null || Array.Exists(endings, e => plain.EndsWith(e, StringComparison.OrdinalIgnoreCase)) ? plain : plain + endings[0];
    }

    /// <summary>What a browser is told that the sound of a track is; empty without sound.</summary>
    public static string MediaTypeOf(TrackRow row) => !row.HasAudio ? ""
        : Array.Find(Kinds, k => Array.Exists(k.Endings, e => row.FileName.EndsWith(e, StringComparison.OrdinalIgnoreCase))).MediaType ?? "application/octet-stream";

    /// <summary>Whether only a browser, or another program, can decode the sound of a track.</summary>
    public static bool NeedsSamples(TrackRow row) => Array.IndexOf(Foreign, MediaTypeOf(row)) >= 0;

    /// <summary>Gives the sound, or the stretch of it that was asked for (RFC 9110, 14: range requests).</summary>
    public static Task Give(HttpContext context, TrackRow row, string path)
    {
        // what a track sounds like never changes: its digest is its name
        return TypedResults.PhysicalFile(
            path,
            MediaTypeOf(row),
            entityTag: new Microsoft.Net.Http.Headers.EntityTagHeaderValue($"\"{row.Digest}\""),
            enableRangeProcessing: true).ExecuteAsync(context);
    }
}
