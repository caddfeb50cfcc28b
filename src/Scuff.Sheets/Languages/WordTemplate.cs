using System.Text;

namespace Scuff.Sheets.Languages;

/// <summary>Words with places in braces.</summary>
internal static class WordTemplate
{
    /// <summary>The names of the places, in order, each once.</summary>
    public static IReadOnlyList<string> PlacesOf(string template)
    {
        List<string> places = [];
        int from = 0;
        while ((from = template.IndexOf('{', from)) >= 0)
        {
            int end = template.IndexOf('}', from);
            string name = template[(from + 1)..end];
            if (!places.Contains(name))
            {
                places.Add(name);
            }

            from = end;
        }

        return places;
    }

    /// <summary>Whether a place is in it.</summary>
    public static bool Has(string template, string place)
        => template.Contains("{" + place + "}", StringComparison.Ordinal);

    /// <summary>The words with the places filled; where a place is filled with nothing, the space around it goes as well.</summary>
    /// <exception cref="InvalidOperationException">A place has nothing given for it.</exception>
    public static string Fill(string template, params ReadOnlySpan<(string Place, string Words)> parts)
    {
        StringBuilder filled = new();
        int from = 0;
        while (from < template.Length)
        {
            int open = template.IndexOf('{', from);
            if (open < 0)
            {
                filled.Append(template, from, template.Length - from);
                break;
            }

            filled.Append(template, from, open - from);
            int close = template.IndexOf('}', open);
            string words = Given(template[(open + 1)..close], parts);
            filled.Append(words);
            from = close + 1;
            if (words.Length == 0)
            {
                // one of the two spaces, and none before a comma
                while (from < template.Length && template[from] == ' ' && (filled.Length == 0 || filled[^1] == ' '))
                {
                    from++;
                }

                bool endsHere = from == template.Length || template[from] is ',' or ')' or ':' or '.';
                if (endsHere && filled.Length > 0 && filled[^1] == ' ')
                {
                    filled.Length--;
                }
            }
        }

        return filled.ToString();

        string Given(string place, ReadOnlySpan<(string Place, string Words)> given)
        {
            foreach ((string name, string words) in given)
            {
                if (name == place)
                {
                    return words;
                }
            }

            throw new InvalidOperationException($"Nothing is given for {{{place}}} of: {template}");
        }
    }
}
