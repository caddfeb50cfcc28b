using System.Text.Json;
using System.Text.Json.Serialization;

namespace Scuff.Audio.Evaluation;

/// <summary>How the files of a corpus are written: names in snake case, what is unknown left out, lists of ours as arrays.</summary>
internal static class ScoreJson
{
    public static readonly JsonSerializerOptions Options = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Converters = { new ListsOfOurs() },
    };

    private sealed class ListsOfOurs : JsonConverterFactory
    {
        public override bool CanConvert(Type typeToConvert)
            => typeToConvert.IsGenericType && typeToConvert.GetGenericTypeDefinition() == typeof(ValueList<>);

        public override JsonConverter CreateConverter(Type typeToConvert, JsonSerializerOptions options)
            => (JsonConverter)Activator.CreateInstance(typeof(ListOf<>).MakeGenericType(typeToConvert.GetGenericArguments()))!;
    }

    private sealed class ListOf<T> : JsonConverter<ValueList<T>>
    {
        public override ValueList<T> Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options)
            => ValueList.Create<T>(JsonSerializer.Deserialize<T[]>(ref reader, options));

        public override void Write(Utf8JsonWriter writer, ValueList<T> value, JsonSerializerOptions options)
            => JsonSerializer.Serialize(writer, value.Span.ToArray(), options);
    }
}
