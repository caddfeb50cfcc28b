using System.Text.Json.Serialization;
using Scuff.App.Web.Contract;

namespace Scuff.App.Web;

/// <summary>The JSON between the program and its page; its code is made by the compiler, because reflection would slow the start.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true)]
[JsonSerializable(typeof(ReadQuestion))]
[JsonSerializable(typeof(ReadAnswer))]
[JsonSerializable(typeof(FloorQuestion))]
[JsonSerializable(typeof(FloorAnswer))]
[JsonSerializable(typeof(CompleteQuestion))]
[JsonSerializable(typeof(CompleteAnswer))]
[JsonSerializable(typeof(SheetQuestion))]
[JsonSerializable(typeof(SheetOffers))]
[JsonSerializable(typeof(CompareQuestion))]
[JsonSerializable(typeof(CompareAnswer))]
[JsonSerializable(typeof(TextBody))]
[JsonSerializable(typeof(ClubAnswer))]
[JsonSerializable(typeof(DanceList))]
[JsonSerializable(typeof(DanceBody))]
[JsonSerializable(typeof(DanceSave))]
[JsonSerializable(typeof(DanceSaved))]
[JsonSerializable(typeof(DanceClash))]
[JsonSerializable(typeof(DanceVersions))]
[JsonSerializable(typeof(VersionName))]
[JsonSerializable(typeof(VersionReturn))]
[JsonSerializable(typeof(TagsBody))]
[JsonSerializable(typeof(DuplicateList))]
[JsonSerializable(typeof(FolderBody))]
[JsonSerializable(typeof(FolderAnswer))]
[JsonSerializable(typeof(DoneAnswer))]
[JsonSerializable(typeof(ClubNews))]
[JsonSerializable(typeof(Refusal))]
internal sealed partial class StudioJson : JsonSerializerContext;
