using System.Text;

namespace Scuff.Sheets.Formats.Html;

/// <summary>Words on their way into a page.</summary>
internal static class HtmlText
{
    /// <summary>Text made safe: nothing in it can be taken for markup, in an element or in an attribute.</summary>
    public static string Safe(string words)
    {
        StringBuilder safe = new(words.Length);
        for (int i = 0; i < words.Length; i++)
        {
            char c = words[i];
            switch (c)
            {
                case '&':
                    safe.Append("&amp;");
                    break;
                case '<':
                    safe.Append("&lt;");
                    break;
                case '>':
                    safe.Append("&gt;");
                    break;
                case '"':
                    safe.Append("&quot;");
                    break;
                case '\'':
                    safe.Append("&#39;");
                    break;
                case '\t' or '\n':
                    safe.Append(c);
                    break;
                default:
                    Append(safe, words, ref i);
                    break;
            }
        }

        return safe.ToString();
    }

    // Control characters and halves of a pair are no text in HTML.
    private static void Append(StringBuilder safe, string words, ref int i)
    {
        char c = words[i];
        if (char.IsHighSurrogate(c) && i + 1 < words.Length && char.IsLowSurrogate(words[i + 1]))
        {
            safe.Append(c).Append(words[++i]);
        }
        else if (!char.IsControl(c) && !char.IsSurrogate(c) && c is not ('\uFFFE' or '\uFFFF'))
        {
            safe.Append(c);
        }
    }
}
