namespace Scuff.App.Handouts;

/// <summary>A form in which something can be taken out, as one file.</summary>
/// <typeparam name="T">What is taken out.</typeparam>
/// <param name="Name">Its word, which is a name of a file with its ending: <c>programme.pdf</c>.</param>
/// <param name="Title">What it is, for a menu: <c>Programme for the wall (PDF)</c>.</param>
/// <param name="MediaType">Its media type.</param>
/// <param name="IsText">Whether it is text, which a terminal can show.</param>
/// <param name="WriteAsync">Writes it into a stream that is not closed and need not be able to seek.</param>
internal sealed record Handout<T>(string Name, string Title, string MediaType, bool IsText, Func<T, Stream, CancellationToken, Task> WriteAsync)
{
    /// <summary>Its ending, with the dot.</summary>
    public string Extension => Path.GetExtension(Name);

    /// <summary>A name for the file, safe on every system: <c>Harbour Social programme.pdf</c>.</summary>
    /// <param name="title">What is taken out.</param>
    public string FileNameFor(string title) => $"{SafeFileName.StemOf(title)} {Name}";
}
