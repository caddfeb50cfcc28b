using System.Globalization;
using System.Text;
using Scuff.Analysis;
using Scuff.Prose;
using Tests.Prose;

namespace Tests.Analysis.Lessons;

/// <summary>Dances to plan lessons for: those of the demo club, and written ones of which a class of each kind would say that they are ordinary.</summary>
internal static class LessonSamples
{
    /// <summary>Eights that need no turn, in beginners' words; each begins and ends with the weight on L.</summary>
    private static readonly string[] Easy =
    [
        "1-4   vine right, touch L\n5-8   vine left, touch R",
        "1-2   step R to side, touch L together\n3-4   step L to side, touch R together\n5-6   rock R forward, recover\n7-8   step R together, step L in place",
        "1-4   rocking chair R\n5-8   jazz box R",
        "1-2   heel strut R\n3-4   heel strut L\n5-6   step R forward, pivot 1/4 left\n7-8   stomp R, stomp L",
        "1&2   shuffle R forward\n3-4   rock L forward, recover\n5&6   shuffle L back\n7-8   rock R back, recover",
        "1-2   dig R heel forward, step R together\n3-4   dig L heel forward, step L together\n5-6   walk R, walk L\n7-8   sway R, sway L",
    ];

    /// <summary>Eights as an intermediate class dances them; each begins and ends with the weight on L.</summary>
    private static readonly string[] Hard =
    [
        "1-2   rock R to side, recover\n3&4   behind side cross R\n5-6   step L to side, touch R together\n7&8   kick ball change R",
        "1&2   shuffle R turning 1/2 left\n3-4   rock L back, recover\n5&6   shuffle L turning 1/2 right\n7-8   rock R back, recover",
        "1&2   sailor step R\n3&4   sailor step L turning 1/4 left\n5-6   step R forward, pivot 1/2 left\n7-8   full turn left travelling forward",
        "1-2   cross rock R over L, recover\n3&4   side shuffle R turning 1/4 right\n5-6   step L forward, pivot 1/2 right\n7&8   shuffle L forward",
        "1-2&  dorothy R\n3-4&  dorothy L\n5-6   rock R forward, recover\n7&8   coaster cross R",
        "1-4   rolling vine right, touch L\n5-8   rolling vine left, touch R",
        "&1-2  out out R, hold\n&3-4  in in R, hold\n5-6   heel grind R turning 1/4 right\n7&8   coaster step R",
        "1&2&  heel switches R\n3-4   step R forward, pivot 1/4 left\n5&6   cross shuffle R\n7-8   step L to side, touch R together",
    ];

    /// <summary>Names of the demo dances.</summary>
    public static TheoryData<string> Demo => [.. SeedTexts.Demo.Select(d => d.Name)];

    /// <summary>A demo dance.</summary>
    public static DanceAnalysis Club(string name) => Read(SeedTexts.Demo.Single(d => d.Name == name).Text);

    /// <summary>All demo dances.</summary>
    public static IEnumerable<DanceAnalysis> AllOfClub => SeedTexts.Demo.Select(d => Read(d.Text));

    /// <summary>A text, read.</summary>
    public static DanceAnalysis Read(string text) => DanceAnalysis.Of(DanceReader.Read(text));

    /// <summary>Beginner dances of 32 counts: every choice of four easy eights in a row of the list, round and round, at several tempi.</summary>
    public static IEnumerable<DanceAnalysis> Beginner() => Made("beginner", Easy, 4, [88, 104, 120]);

    /// <summary>Intermediate dances of 64 counts: eight of the harder eights from each place of the list on, at several tempi.</summary>
    public static IEnumerable<DanceAnalysis> Intermediate() => Made("intermediate", Hard, 8, [92, 108, 124]);

    private static IEnumerable<DanceAnalysis> Made(string level, string[] eights, int many, int[] tempi)
    {
        foreach (int tempo in tempi)
        {
            for (int first = 0; first < eights.Length; first++)
            {
                StringBuilder text = new();
                text.Append(CultureInfo.InvariantCulture, $"Made {level} {first}\n\nlevel: {level}\ncounts: {many * 8}\nstart: weight on L\n");
                for (int i = 0; i < many; i++)
                {
                    text.Append(CultureInfo.InvariantCulture, $"\nsection {i + 1}\n{eights[(first + i) % eights.Length]}\n");
                }

                text.Append(CultureInfo.InvariantCulture, $"\ntrack: \"Made\" by The Makers, {tempo} bpm, intro 16, 3:10\n");
                yield return Read(text.ToString());
            }
        }
    }
}
