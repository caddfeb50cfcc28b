namespace Scuff.Repertoire.Storage;

/// <summary>A setting by its name.</summary>
internal sealed class SettingEntry
{
    public string Name { get; set; } = "";

    public string Value { get; set; } = "";
}
