namespace Scuff.App.Web;

/// <summary>Something the page asked for is not done; told to her as it stands.</summary>
/// <param name="status">The HTTP status.</param>
/// <param name="sentence">Why, and the way out.</param>
internal sealed class RefusalException(int status, string sentence) : Exception(sentence)
{
    /// <summary>The HTTP status.</summary>
    public int Status { get; } = status;
}
