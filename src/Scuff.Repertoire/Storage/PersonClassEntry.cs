namespace Scuff.Repertoire.Storage;

/// <summary>That a person comes to a class.</summary>
internal sealed class PersonClassEntry
{
    public long PersonKey { get; set; }

    public long ClassKey { get; set; }
}
