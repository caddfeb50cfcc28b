using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;

namespace Scuff.App.Json;

/// <summary>Where a count stands: the number of a section, or a name (<c>A1</c>, a tag's name, <c>ending</c>).</summary>
/// <param name="Number">The number when it has no name.</param>
/// <param name="Name">The name, or null.</param>
[JsonConverter(typeof(Converter))]
internal readonly record struct SectionName(int Number, string? Name)
{
    public override string ToString() => Name ?? Number.ToString(CultureInfo.InvariantCulture);

    /// <summary>Writes a number as a number and a name as a text.</summary>
    internal sealed class Converter : JsonConverter<SectionName>
    {
        public override SectionName Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
            => reader.TokenType == JsonTokenType.Number
                ? new SectionName(reader.GetInt32(), null)
                : new SectionName(0, reader.GetString());

        public override void Write(Utf8JsonWriter writer, SectionName value, JsonSerializerOptions options)
        {
            if (value.Name is null)
            {
                writer.WriteNumberValue(value.Number);
            }
            else
            {
                writer.WriteStringValue(value.Name);
            }
        }
    }
}
