using Scuff.Analysis;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Formats;

namespace Tests.Sheets;

/// <summary>Sheets to draw.</summary>
internal static class SheetSamples
{
    /// <summary>A dance with options, a tag, a bridge, restarts, a track and an ending.</summary>
    public const string Lantern = """
        Tin Lantern

        by: Scuff demo
        level: improver
        counts: 32
        walls: 4
        rhythm: cha cha
        start: weight on L
        version: 2
        ending: wall 9, after 8 counts: step R forward, pivot 1/2 left, stomp R

        section 1: box with shuffles
        1-2   step R to side, step L together
        3&4   shuffle R forward
        5-6   step L to side, step R together
        7&8   shuffle L back                            [12:00]
              style: small steps; let the hip settle on the closing foot

        section 2: rock, quarter, behind side cross
        1-2   rock R back, recover
        3-4   step R forward, pivot 1/4 left            [9:00]
        5-6   cross R over L, step L to side
        7&8   step R behind, step L to side, cross R over L
              option 7&8 "easier": triple R in place

        section 3: vine, kick ball change
        1-4   vine left, touch R
        5&6   kick ball change R
        7-8   stomp R together, hold

        section 4: rocking chair, scuff
        1-4   rocking chair L
        5-6   step L forward, scuff R
        7-8   step R back, step L together              [9:00]

        tag "Lamps" 4 counts
        1-4   sway R, sway L, sway R, sway L

        track: "Harbour Lights Out" by The Demo Band, 112 bpm, intro 32
        wall 2: after 32 tag "Lamps"
        wall 4: after 16 restart, with count 8: touch R together
        wall 5: after 8 bridge "Lamps", then go on
        wall 7: after 24 tag "Lamps", then section 1 counts 1-2, then restart
        """;

    /// <summary>A phrased dance.</summary>
    public const string Phrased = """
        Two Piers

        by: Scuff demo
        level: intermediate
        sequence: A A B A tag "Gangway" B

        part A

        section 1
        1-4   vine right, touch L
        5-8   vine left, touch R

        section 2
        1-2   step R forward, pivot 1/2 left
        3-4   step R forward, touch L together
        5-6   step L back, touch R together
        7-8   stomp R together, stomp L together

        part B

        section 1
        1&2   shuffle R forward
        3&4   shuffle L forward
        5-6   step R forward, pivot 1/2 left
        7-8   step R to side, touch L together

        section 2
        1-4   vine left, touch R
        5-6   step R to side, touch L together
        7-8   step L to side, touch R together

        tag "Gangway" 4 counts
        1-4   sway R, sway L, sway R, sway L
        """;

    /// <summary>Reads a text and makes its sheet.</summary>
    public static SheetModel Build(string text) => SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)));

    /// <summary>Draws a sheet.</summary>
    public static string Draw(SheetModel sheet, string format)
    {
        using MemoryStream drawn = new();
        SheetFormats.Find(format)!.Write(sheet, drawn);
        return System.Text.Encoding.UTF8.GetString(drawn.ToArray());
    }

    /// <summary>A page without the bytes of its type, which nobody reads.</summary>
    public static string WithoutFonts(string page) => System.Text.RegularExpressions.Regex.Replace(page, "(?<=;base64,)[A-Za-z0-9+/=]+", "...");

    /// <summary>A sheet of one line, which holds the given words wherever a sheet can hold words.</summary>
    public static SheetModel FullOf(string words)
    {
        SheetNote note = new(words, words);
        SheetLine line = new()
        {
            Counts = words,
            Words = words,
            Facing = "4:30",
            Turns = true,
            Notes = [note],
            Options = [new SheetOption(words, words, words)],
        };
        SheetSection section = new(words, [line], [note]);
        SheetBreak pause = new(words, words);
        return new SheetModel
        {
            Title = words,
            Author = words,
            ByLine = words,
            Facts = [words],
            Particulars = [note],
            Key = words,
            Parts = [new SheetPart(words, [section])],
            Tags = [section],
            Sequence = [words],
            Breaks = [pause],
            Ending = pause,
            Tracks = [new SheetTrack(words, words, [words], [pause], pause, [note])],
            Moves = [section],
            Notes = [note],
        };
    }
}
