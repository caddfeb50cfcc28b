using System.Diagnostics;
using System.Globalization;
using Scuff;
using Scuff.Analysis.Planning;
using Scuff.Dances;
using Scuff.Solving;

namespace Bench;

/// <summary>
/// How good the programme of an evening is after how long: 300 invented dances, three hours, four groups, a lesson, two rests, requests, near-same dances and
/// songs of two dances. Figures of dances are drawn at random from ranges that clubs have (common practice, no source).
/// </summary>
internal static class Nights
{
    /// <summary>Prints a line a question.</summary>
    public static void Measure(TextWriter output, int dances, int questions, double seconds)
    {
        output.WriteLine("question  dances   points    bound    gap   took    search alone");
        for (int i = 1; i <= questions; i++)
        {
            ProgrammeQuestion question = Question(i, dances);
            Stopwatch clock = Stopwatch.StartNew();
            Programme alone = new ProgrammeSearch().Solve(question, seconds, CancellationToken.None);
            double search = clock.Elapsed.TotalSeconds;
            clock.Restart();
            Programme best = new ExactProgrammeSolver().Solve(question, seconds, CancellationToken.None);
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{i,8} {best.Items.Count(p => p.SongKey.Length > 0),7} {best.Points,8} {best.Bound,8} {100.0 * (best.Bound - best.Points) / best.Bound,5:F2}% {clock.Elapsed.TotalSeconds,5:F1}s {alone.Points,8} in {search:F1}s"));
        }
    }

    /// <summary>An evening of three hours, drawn at random.</summary>
    public static ProgrammeQuestion Question(int seed, int dances)
    {
        Random luck = new(seed);
        int Between(int low, int high) => luck.Next(low, high + 1);
        Level[] levels = [Level.Beginner, Level.Improver, Level.Intermediate, Level.Advanced];
        List<ProgrammeGroup> groups = [new("Monday", Level.Beginner, 24), new("Tuesday", Level.Improver, 22), new("Wednesday", Level.Intermediate, 14), new("guests", Level.Improver, 20)];
        List<ProgrammeDance> list = [];
        for (int d = 0; d < dances; d++)
        {
            Level level = levels[luck.Next(10) switch { < 4 => 0, < 7 => 1, < 9 => 2, _ => 3 }];
            int tempo = Between(80, 160);
            // some dances share a song with another one
            string song = luck.Next(8) == 0 && d > 0 ? list[luck.Next(d)].Songs[0].Key : $"song {d}";
            List<ProgrammeSong> songs = [new(song, song, Between(150, 270), "")];
            if (luck.Next(4) == 0)
            {
                songs.Add(new ProgrammeSong($"other song {d}", "", Between(150, 270), ""));
            }

            list.Add(new ProgrammeDance
            {
                Id = $"d{d}",
                Title = $"Dance {d}",
                Level = level,
                CountsPerMinute = tempo,
                Effort = 30 + ((tempo - 80) / 3) + Between(0, 15),
                Songs = songs.ToValueList(),
                Shares = Shares(luck, groups, level),
                Due = luck.Next(5) == 0 ? Between(10, 100) : 0,
                Requests = luck.Next(25) == 0 ? Between(1, 3) : 0,
                DaysSinceDanced = luck.Next(4) == 0 ? null : Between(0, 120),
            });
        }

        return new ProgrammeQuestion
        {
            Stretches =
            [
                new() { Kind = StretchKind.Dancing, Seconds = 50 * 60, EffortAtStart = 40, EffortAtEnd = 58 },
                new() { Kind = StretchKind.Rest, Seconds = 10 * 60 },
                new() { Kind = StretchKind.Lesson, Seconds = 20 * 60, DanceId = "d7" },
                new() { Kind = StretchKind.Dancing, Seconds = 45 * 60, EffortAtStart = 50, EffortAtEnd = 65 },
                new() { Kind = StretchKind.Rest, Seconds = 15 * 60 },
                new() { Kind = StretchKind.Dancing, Seconds = 40 * 60, EffortAtStart = 60, EffortAtEnd = 40 },
            ],
            Groups = groups.ToValueList(),
            Dances = list.ToValueList(),
            Likenesses = [.. Enumerable.Range(0, dances / 6).Select(_ => new ProgrammeLikeness($"d{luck.Next(dances)}", $"d{luck.Next(dances)}", Between(40, 100)))],
            Pins = [new ProgrammePin.Somewhere("d11"), new ProgrammePin.Never("d12"), new ProgrammePin.At("d20", 0, 1)],
        };
    }

    // What is taught spreads: harder classes know most of what easier ones do. Guests are judged by their level alone.
    private static ValueList<int> Shares(Random luck, List<ProgrammeGroup> groups, Level level)
    {
        double common = luck.NextDouble();
        return groups.Select(g =>
        {
            int above = (int)g.Level - (int)level;
            double known = above switch { < -1 => 0, -1 => 0.08, 0 => 0.35, 1 => 0.5, _ => 0.6 };
            return g.Name == "guests" ? (above >= 0 ? 60 : above == -1 ? 30 : 0)
                : common < known ? 60 + (10 * luck.Next(5))
                : above >= 1 ? 40 : above == 0 ? 20 : 0;
        }).ToValueList();
    }
}
