using System.Text;

namespace Scuff.App;

/// <summary>Makes other people's text safe to show on a terminal.</summary>
internal static class Plain
{
    /// <summary>
    /// The text as one line: tabs and line ends become spaces, other control characters a dot, so that a text cannot
    /// steer the terminal. The length stays the same, so columns stay true.
    /// </summary>
    public static string Line(string text)
    {
        if (!text.AsSpan().ContainsAnyInRange('\0', '\u001f') && !text.AsSpan().ContainsAnyInRange('\u007f', '\u009f'))
        {
            return text;
        }

        StringBuilder safe = new(text.Length);
        foreach (char c in text)
        {
            safe.Append(c is '\t' or '\n' or '\r' ? ' ' : char.IsControl(c) ? '·' : c);
        }

        return safe.ToString();
    }
}
