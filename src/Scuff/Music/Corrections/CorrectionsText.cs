using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Scuff.Music.Corrections;

/// <summary>
/// Corrections as JSON, for a file beside the track (<c>.corrections.json</c>): <c>{"corrections": 1, "said": [...]}</c>, where the number is the version
/// of the form. What has a kind of its own that this Scuff does not know is kept as it stands.
/// </summary>
public static class CorrectionsText
{
    /// <summary>The version of the form that is written.</summary>
    public const int Version = 1;

    private const double Longest = 36_000;

    private static readonly JavaScriptEncoder Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping;

    /// <summary>The corrections as JSON, one to a line, ending with a line end.</summary>
    public static string Write(TrackCorrections corrections)
    {
        ArgumentNullException.ThrowIfNull(corrections);
        StringBuilder text = new();
        text.Append(CultureInfo.InvariantCulture, $"{{\n  \"corrections\": {Version},\n  \"said\": [");
        for (int i = 0; i < corrections.All.Count; i++)
        {
            text.Append(i == 0 ? "\n    " : ",\n    ").Append(One(corrections.All[i]));
        }

        return text.Append(corrections.All.Count == 0 ? "]\n}\n" : "\n  ]\n}\n").ToString();
    }

    /// <summary>Reads what <see cref="Write"/> writes. Never throws; what is not understood is told, and then nothing is read.</summary>
    public static CorrectionsReading Read(string json)
    {
        ArgumentNullException.ThrowIfNull(json);
        try
        {
            using JsonDocument document = JsonDocument.Parse(json.TrimStart('\uFEFF'));
            return Read(document.RootElement);
        }
        catch (JsonException trouble)
        {
            return Refused(string.Create(CultureInfo.InvariantCulture, $"This is not JSON: line {(trouble.LineNumber ?? 0) + 1} could not be read."));
        }
    }

    private static CorrectionsReading Read(JsonElement root)
    {
        if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("corrections", out JsonElement version) || version.ValueKind != JsonValueKind.Number)
        {
            return Refused("These are no corrections of a track: \"corrections\" with the number of the version is missing.");
        }

        if (!version.TryGetInt32(out int number) || number != Version)
        {
            return Refused($"The corrections are written in version {version.GetRawText()}; this Scuff reads version {Version}.");
        }

        if (!root.TryGetProperty("said", out JsonElement said) || said.ValueKind != JsonValueKind.Array)
        {
            return Refused("The list \"said\" is missing.");
        }

        List<Correction> read = [];
        List<string> troubles = [];
        foreach (JsonElement one in said.EnumerateArray())
        {
            Fields fields = new(one);
            Correction? correction = One(fields, one);
            if (fields.Trouble is { } trouble)
            {
                troubles.Add(string.Create(CultureInfo.InvariantCulture, $"Correction {read.Count + troubles.Count + 1}: {trouble}"));
            }
            else if (correction is not null)
            {
                read.Add(correction);
            }
        }

        return troubles.Count > 0 ? new CorrectionsReading(null, [.. troubles]) : new CorrectionsReading(new TrackCorrections([.. read]), []);
    }

    private static CorrectionsReading Refused(string sentence) => new(null, [sentence]);

    private static Correction? One(Fields fields, JsonElement one)
    {
        string? kind = fields.Kind();
        Correction? correction = kind switch
        {
            null => null,
            "taps" => new Correction.TapAlong(fields.Places("seconds"), fields.MaybePlace("from"), fields.MaybePlace("to")),
            "beat" => new Correction.ChangeBeat(
                fields.Word("is", "half", "double", "off-beat") switch { "half" => BeatLevel.Half, "double" => BeatLevel.Double, _ => BeatLevel.OffBeat },
                fields.MaybePlace("from"),
                fields.MaybePlace("to")),
            "one" => new Correction.ShiftOne((int)fields.Number("beats-later", -64, 64, isWhole: true), fields.MaybePlace("from")),
            "meter" => new Correction.SetMeter(fields.Word("is", "4/4", "3/4", "6/8") switch
            {
                "3/4" => Meter.Three,
                "6/8" => new Meter(4, IsCompound: true),
                _ => Meter.Four,
            }),
            "boundary-moved" => new Correction.MoveBoundary(fields.Place("from"), fields.Place("to")),
            "boundary-added" => new Correction.AddBoundary(fields.Place("at"), fields.MaybeText("label") ?? ""),
            "boundary-removed" => new Correction.RemoveBoundary(fields.Place("at")),
            "section" => new Correction.NameSection(fields.Place("at"), fields.MaybeText("label"), fields.MaybeText("name")),
            "swing" => new Correction.SetSwing(fields.Number("ratio", 0.5, 4, isWhole: false)),
            "first-count" => new Correction.SetFirstCount(fields.Place("at")),
            _ => new Correction.Unknown(one.GetRawText()),
        };
        if (correction is not (null or Correction.Unknown))
        {
            fields.RefuseOthers();
        }

        return correction;
    }

    private static string One(Correction correction) => correction switch
    {
        Correction.TapAlong c => Object("taps", ("seconds", c.Seconds.Span.ToArray()), ("from", c.From), ("to", c.To)),
        Correction.ChangeBeat c => Object(
            "beat",
            ("is", c.Level switch { BeatLevel.Half => "half", BeatLevel.Double => "double", _ => "off-beat" }),
            ("from", c.From),
            ("to", c.To)),
        Correction.ShiftOne c => Object("one", ("beats-later", (double)c.Beats), ("from", c.From)),
        Correction.SetMeter c => Object("meter", ("is", c.Meter.IsCompound ? "6/8" : c.Meter.BeatsInBar == 3 ? "3/4" : "4/4")),
        Correction.MoveBoundary c => Object("boundary-moved", ("from", c.From), ("to", c.To)),
        Correction.AddBoundary c => Object("boundary-added", ("at", c.At), ("label", c.Label.Length > 0 ? c.Label : null)),
        Correction.RemoveBoundary c => Object("boundary-removed", ("at", c.At)),
        Correction.NameSection c => Object("section", ("at", c.At), ("label", c.Label), ("name", c.Name)),
        Correction.SetSwing c => Object("swing", ("ratio", c.Ratio)),
        Correction.SetFirstCount c => Object("first-count", ("at", c.At)),
        Correction.Unknown c => c.Json.ReplaceLineEndings(" "),
        _ => throw new ArgumentOutOfRangeException(nameof(correction)),
    };

    private static string Object(string kind, params ReadOnlySpan<(string Name, object? Value)> fields)
    {
        StringBuilder text = new($"{{\"kind\": \"{kind}\"");
        foreach ((string name, object? value) in fields)
        {
            if (value is not null)
            {
                text.Append(", \"").Append(name).Append("\": ").Append(value switch
                {
                    double number => Number(number),
                    double[] numbers => "[" + string.Join(", ", numbers.Select(Number)) + "]",
                    _ => Quoted((string)value),
                });
            }
        }

        return text.Append('}').ToString();
    }

    private static string Number(double number) => number.ToString("R", CultureInfo.InvariantCulture);

    private static string Quoted(string text) => "\"" + JsonEncodedText.Encode(text, Encoder) + "\"";

    // The fields of one correction; the first thing that is wrong with them is kept.
    private sealed class Fields(JsonElement one)
    {
        private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

        public string? Trouble { get; private set; }

        public string? Kind()
        {
            if (one.ValueKind != JsonValueKind.Object)
            {
                Refuse("it is no object.");
                return null;
            }

            return Text("kind");
        }

        public double Place(string name) => Number(name, 0, Longest, isWhole: false);

        public double? MaybePlace(string name) => Has(name) ? Place(name) : null;

        public ValueList<double> Places(string name)
        {
            if (!Has(name) || one.GetProperty(name) is not { ValueKind: JsonValueKind.Array } list)
            {
                Refuse($"\"{name}\" must be a list of seconds.");
                return [];
            }

            List<double> places = [];
            foreach (JsonElement item in list.EnumerateArray())
            {
                if (item.ValueKind != JsonValueKind.Number || !item.TryGetDouble(out double value) || !double.IsFinite(value) || value is < 0 or > Longest)
                {
                    Refuse($"\"{name}\" holds {item.GetRawText()}, which is no place in a track, in seconds.");
                    return [];
                }

                places.Add(value);
            }

            return [.. places];
        }

        public double Number(string name, double least, double most, bool isWhole)
        {
            if (!Has(name) || one.GetProperty(name) is not { ValueKind: JsonValueKind.Number } value || !value.TryGetDouble(out double number))
            {
                Refuse($"\"{name}\" must be a number.");
                return least;
            }

            if (!(number >= least && number <= most) || (isWhole && number != Math.Floor(number)))
            {
                Refuse(string.Create(
                    CultureInfo.InvariantCulture,
                    $"\"{name}\" is {value.GetRawText()}, and must be {(isWhole ? "a whole number" : "a number")} from {least} to {most}."));
                return least;
            }

            return number;
        }

        public string? Text(string name)
        {
            if (!Has(name) || one.GetProperty(name) is not { ValueKind: JsonValueKind.String } value)
            {
                Refuse($"\"{name}\" must be a text.");
                return null;
            }

            return value.GetString();
        }

        public string? MaybeText(string name) => Has(name) ? Text(name) : null;

        public string Word(string name, params string[] words)
        {
            string? word = Text(name);
            if (word is not null && !words.Contains(word))
            {
                Refuse($"\"{name}\" is {word}, and must be one of {string.Join(", ", words)}.");
            }

            return word ?? words[0];
        }

        public void RefuseOthers()
        {
            foreach (JsonProperty property in one.EnumerateObject().Where(p => !_asked.Contains(p.Name)))
            {
                Refuse($"\"{property.Name}\" is not known here; {string.Join(", ", _asked)} are.");
            }
        }

        private bool Has(string name)
        {
            _asked.Add(name);
            return one.TryGetProperty(name, out JsonElement value) && value.ValueKind != JsonValueKind.Null;
        }

        private void Refuse(string sentence) => Trouble ??= sentence;
    }
}
