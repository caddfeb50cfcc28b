using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;

namespace Scuff.App.Json;

/// <summary>The JSON that the program writes; its code is made by the compiler, because reflection would slow every start.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, GenerationMode = JsonSourceGenerationMode.Default)]
[JsonSerializable(typeof(IReadOnlyList<CheckedFile>))]
[JsonSerializable(typeof(IReadOnlyList<ExplainedFile>))]
[JsonSerializable(typeof(IReadOnlyList<CatalogueStep>))]
[JsonSerializable(typeof(IReadOnlyList<LanguageRow>))]
[JsonSerializable(typeof(IReadOnlyList<LevelledFile>))]
[JsonSerializable(typeof(IReadOnlyList<EasedFile>))]
[JsonSerializable(typeof(ComparedFiles))]
[JsonSerializable(typeof(IReadOnlyList<HeardTrackRow>))]
[JsonSerializable(typeof(IReadOnlyList<FittedTrackRow>))]
[JsonSerializable(typeof(IReadOnlyList<MatchRow>))]
[JsonSerializable(typeof(CallsRow))]
[JsonSerializable(typeof(IReadOnlyList<BookClassRow>))]
[JsonSerializable(typeof(IReadOnlyList<BookSessionRow>))]
[JsonSerializable(typeof(BookShown))]
[JsonSerializable(typeof(IReadOnlyList<BookDueRow>))]
[JsonSerializable(typeof(IReadOnlyList<BookAlikeRow>))]
[JsonSerializable(typeof(IReadOnlyList<NightRow>))]
[JsonSerializable(typeof(NightFile))]
[JsonSerializable(typeof(LessonFile))]
internal sealed partial class ScuffJson : JsonSerializerContext
{
    // Counts such as 3& stay readable; the answer is no part of a web page.
    private static readonly ScuffJson Readable = new(new JsonSerializerOptions
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    });

    /// <summary>Writes what check found.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<CheckedFile> files) => Write(writer, files, Readable.IReadOnlyListCheckedFile);

    /// <summary>Writes what explain found.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<ExplainedFile> files) => Write(writer, files, Readable.IReadOnlyListExplainedFile);

    /// <summary>Writes what level found.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<LevelledFile> files) => Write(writer, files, Readable.IReadOnlyListLevelledFile);

    /// <summary>Writes easier ways.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<EasedFile> files) => Write(writer, files, Readable.IReadOnlyListEasedFile);

    /// <summary>Writes what a class is about to forget.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<BookDueRow> dances) => Write(writer, dances, Readable.IReadOnlyListBookDueRow);

    /// <summary>Writes dances that resemble each other.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<BookAlikeRow> dances) => Write(writer, dances, Readable.IReadOnlyListBookAlikeRow);

    /// <summary>Writes evenings.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<NightRow> evenings) => Write(writer, evenings, Readable.IReadOnlyListNightRow);

    /// <summary>Writes a planned evening.</summary>
    public static void Write(TextWriter writer, NightFile evening) => Write(writer, evening, Readable.NightFile);

    /// <summary>Writes entries of the catalogue.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<CatalogueStep> steps) => Write(writer, steps, Readable.IReadOnlyListCatalogueStep);

    /// <summary>Writes languages.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<LanguageRow> languages) => Write(writer, languages, Readable.IReadOnlyListLanguageRow);

    /// <summary>Writes what was heard.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<HeardTrackRow> tracks) => Write(writer, tracks, Readable.IReadOnlyListHeardTrackRow);

    /// <summary>Writes what fit found.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<FittedTrackRow> fits) => Write(writer, fits, Readable.IReadOnlyListFittedTrackRow);

    /// <summary>Writes what match found.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<MatchRow> matches) => Write(writer, matches, Readable.IReadOnlyListMatchRow);

    /// <summary>Writes classes.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<BookClassRow> classes) => Write(writer, classes, Readable.IReadOnlyListBookClassRow);

    /// <summary>Writes sessions.</summary>
    public static void Write(TextWriter writer, IReadOnlyList<BookSessionRow> sessions) => Write(writer, sessions, Readable.IReadOnlyListBookSessionRow);

    /// <summary>Writes what a class knows.</summary>
    public static void Write(TextWriter writer, BookShown shown) => Write(writer, shown, Readable.BookShown);

    /// <summary>Writes how a dance is taught.</summary>
    public static void Write(TextWriter writer, LessonFile lesson) => Write(writer, lesson, Readable.LessonFile);

    /// <summary>Writes what compare found.</summary>
    public static void Write(TextWriter writer, ComparedFiles files) => Write(writer, files, Readable.ComparedFiles);

    /// <summary>The calls of a dance as text, with a line end.</summary>
    public static string Text(CallsRow calls) => JsonSerializer.Serialize(calls, Readable.CallsRow) + "\n";

    private static void Write<T>(TextWriter writer, T value, JsonTypeInfo<T> type)
    {
        writer.Write(JsonSerializer.Serialize(value, type));
        writer.WriteLine();
    }
}
