using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Http;
using Scuff.App.Web.Contract;
using Scuff.Music.Corrections;
using Scuff.Repertoire;

namespace Scuff.App.Web.Tracks;

/// <summary>Takes in what she says of a track: read by the same reader as a file of corrections, kept with a revision.</summary>
internal static class TrackSaying
{
    // Her own hand never says so much; a page that went astray might.
    private const int MostSaid = 500;

    /// <summary>Adds what is said, or takes something back, and keeps it.</summary>
    /// <exception cref="RefusalException">It cannot be understood, or something else was said in the meantime.</exception>
    public static void Say(Studio studio, string id, TrackSayQuestion asked)
    {
        TrackRow row = studio.Tracks.Find(id);
        if (row.CorrectionsRevision != asked.Revision)
        {
            throw Clash();
        }

        CorrectionsReading reading = studio.Tracks.SaidOf(row);
        TrackCorrections said = reading.Corrections
            ?? throw new RefusalException(StatusCodes.Status409Conflict, $"What was said of this track cannot be read. {reading.Troubles[0]}");
        if (asked.TakeBack is { } back)
        {
            if (back < 0 || back >= said.All.Count)
            {
                throw Clash();
            }

            said = new TrackCorrections([.. said.All.Where((_, i) => i != back)]);
        }

        if (asked.Say is { } say)
        {
            said = said.And(One(Json(say)));
        }

        if (asked.Again is { } again)
        {
            said = said.And(One(again));
        }

        if (said.All.Count > MostSaid)
        {
            throw new RefusalException(
                StatusCodes.Status409Conflict,
                "So much was said of this track already that nobody can follow it. Take some of it back first.");
        }

        Keep(studio, id, said, asked.Revision);
    }

    /// <summary>Puts what a file of corrections says in the place of all that was said.</summary>
    public static void Replace(Studio studio, string id, string text, int revision)
    {
        studio.Tracks.Find(id);
        CorrectionsReading reading = CorrectionsText.Read(text);
        Keep(studio, id, reading.Corrections ?? throw new RefusalException(StatusCodes.Status422UnprocessableEntity, reading.Troubles[0]), revision);
    }

    /// <summary>One thing said, as it stands in a file of corrections.</summary>
    public static string Text(Correction correction)
    {
        using JsonDocument file = JsonDocument.Parse(CorrectionsText.Write(new TrackCorrections([correction])));
        return file.RootElement.GetProperty("said")[0].GetRawText();
    }

    private static void Keep(Studio studio, string id, TrackCorrections said, int revision)
    {
        string text = said.All.Count == 0 ? "" : CorrectionsText.Write(said);
        switch (studio.Club.Tracks.SaveCorrections(id, text, revision))
        {
            case SaveOutcome.Saved:
                return;
            case SaveOutcome.Changed:
                throw Clash();
            default:
                studio.Tracks.Find(id);
                return;
        }
    }

    private static RefusalException Clash() => new(
        StatusCodes.Status409Conflict,
        "Something else was said of this track in the meantime, on another page. Nothing is lost: look at it as it is now, and say yours again.");

    private static Correction One(string json)
    {
        CorrectionsReading reading = CorrectionsText.Read($"{{\"corrections\": {CorrectionsText.Version}, \"said\": [{json}]}}");
        return reading.Corrections is { All: [var one] }
            ? one
            : throw new RefusalException(
                StatusCodes.Status422UnprocessableEntity,
                reading.Troubles.Count > 0 ? $"This cannot be said of a track. {reading.Troubles[0]}" : "One thing can be said at a time.");
    }

    private static string Json(TrackSay say)
    {
        using MemoryStream text = new();
        using (Utf8JsonWriter writer = new(text))
        {
            writer.WriteStartObject();
            writer.WriteString("kind", say.Kind);
            if (say.Seconds is { } seconds)
            {
                writer.WriteStartArray("seconds");
                foreach (double tap in seconds)
                {
                    writer.WriteNumberValue(tap);
                }

                writer.WriteEndArray();
            }

            Number(writer, "from", say.From);
            Number(writer, "to", say.To);
            Words(writer, "is", say.Is);
            Number(writer, "beats-later", say.BeatsLater);
            Number(writer, "at", say.At);
            Words(writer, "label", say.Label);
            Words(writer, "name", say.Name);
            Number(writer, "ratio", say.Ratio);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(text.ToArray());
    }

    private static void Number(Utf8JsonWriter writer, string name, double? value)
    {
        if (value is { } number)
        {
            writer.WriteNumber(name, number);
        }
    }

    private static void Words(Utf8JsonWriter writer, string name, string? value)
    {
        if (value is not null)
        {
            writer.WriteString(name, value);
        }
    }
}
