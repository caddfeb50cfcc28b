using System.Globalization;
using System.Text;

namespace Bench;

/// <summary>Texts that are measured: a dance of the demo club, and dances of any length put together from eights.</summary>
public static class Texts
{
    // Each eight begins and ends with the weight on L, so that they follow each other in any order.
    private static readonly string[] Eights =
    [
        "1-2   step R to side, step L together\n3&4   shuffle R forward\n5-6   step L to side, step R together\n7&8   shuffle L back\n",
        "1-2   rock R back, recover\n3-4   step R forward, pivot 1/2 left\n5-6   cross R over L, step L to side\n7&8   step R behind L, step L to side, cross R over L\n&     step L together\n",
        "1-4   vine right, touch L together\n5-8   vine left, touch R together\n",
        "1-4   rocking chair R\n5-8   jazz box R\n",
        "1&2   kick ball change R\n3-4   walk R, walk L\n5&6   kick ball change R\n7-8   step R forward, pivot 1/2 left\n      style: low and soft over the knees\n",
        "1-2   rock R forward, recover\n3&4   coaster step R\n5-6   rock L forward, recover\n7&8   coaster step L\n",
        "1-2   side rock R, recover\n3&4   cross shuffle R\n5-6   side rock L, recover\n7&8   cross shuffle L\n",
        "1&2   sailor step R\n3&4   sailor step L\n5-8   monterey R 1/2 right\n",
        "1-2   right toe strut forward\n3-4   left toe strut forward\n5-6   right toe strut back\n7-8   left toe strut back\n",
        "1&2&  heel switches R\n3-4   rock R forward, recover\n5&6   triple step R in place\n7-8   rock L back, recover R\n&     step L together\n",
        "1-4   walk R, walk L, walk R, kick L\n5-8   walk back L, R, L, touch R together\n",
        "1-4   weave right\n5-6   side rock R, recover\n7-8   stomp R together, stomp L together\n",
    ];

    /// <summary>A 64-count dance with options, styling, a tag and tracks.</summary>
    public static string SixtyFourCounts { get; } = File.ReadAllText(Find("demo/dances/lighthouse-keeper.dance"));

    /// <summary>A dance of eights in an order that follows from a number.</summary>
    public static string Dance(int number, int eights)
    {
        Random random = new(number);
        StringBuilder text = new(string.Create(CultureInfo.InvariantCulture, $"Dance number {number}\n\nby: the measuring bench\nlevel: improver\nstart: weight on L\n"));
        for (int i = 1; i <= eights; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"\nsection {i}: eight {i}\n").Append(Eights[random.Next(Eights.Length)]);
        }

        return text.ToString();
    }

    /// <summary>A dance of at least so many lines.</summary>
    public static string OfLines(int lines)
    {
        string text = Dance(1, lines / 4);
        return string.Join('\n', text.Split('\n').Take(lines)) + "\n";
    }

    /// <summary>A text of so many lines, every third of which nobody understands.</summary>
    public static string DoubtfulOfLines(int lines) => string.Join('\n', OfLines(lines).Split('\n')
        .Select((line, i) => i > 8 && i % 3 == 0 && line.Length > 0 && char.IsAsciiDigit(line[0]) ? line.Split(' ')[0] + "   flummox the wotsit twice" : line));

    private static string Find(string path)
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Scuff.slnx")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder?.FullName ?? throw new InvalidOperationException("The bench runs outside the repository."), path);
    }
}
