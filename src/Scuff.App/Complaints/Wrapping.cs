namespace Scuff.App.Complaints;

/// <summary>Breaks sentences into lines.</summary>
internal static class Wrapping
{
    /// <summary>The words in lines of at most <paramref name="width"/> characters; a longer word has a line of its own.</summary>
    public static IEnumerable<string> Wrap(string words, int width)
    {
        int start = 0;
        while (words.Length - start > width)
        {
            int cut = words.LastIndexOf(' ', start + width, width + 1);
            if (cut <= start)
            {
                cut = words.IndexOf(' ', start + width);
            }

            if (cut < 0)
            {
                break;
            }

            yield return words[start..cut].TrimEnd();
            start = cut + 1;
        }

        yield return words[start..];
    }
}
