using System.Text.Json.Serialization;

namespace Scuff.App.Programmes;

/// <summary>The document of an evening; its code is made by the compiler. What is not known is passed over.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase,
    UseStringEnumConverter = true,
    RespectNullableAnnotations = true,
    DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(EveningPlan))]
internal sealed partial class EveningJson : JsonSerializerContext;
