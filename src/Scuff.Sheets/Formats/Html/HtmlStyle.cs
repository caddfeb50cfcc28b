using System.Reflection;

namespace Scuff.Sheets.Formats.Html;

/// <summary>
/// How the page looks: a printed sheet that lies on the floor. Sizes are the look's scale of 16 px and a ratio of 1.25; lines of
/// words stay below 75 characters; pictures are measured in rem (a twelfth of one is a point), so that large print takes them along.
/// </summary>
internal static class HtmlStyle
{
    private static readonly string Screen = $$"""
        {{Face("Regular", 400)}}
        {{Face("Bold", 700)}}
        :root { color-scheme: light dark; {{Tokens(Look.Light)}} }
        @media (prefers-color-scheme: dark) { :root { {{Tokens(Look.Dark)}} } }
        @media (prefers-contrast: more) { :root { --soft: var(--ink); --line: var(--ink); --tide: var(--ink); --floor: var(--paper); } }
        * { box-sizing: border-box; }
        html { background: var(--floor); }
        html.large { font-size: 150%; }
        body { margin: 0; color: var(--ink); overflow-wrap: anywhere;
          font: 1.0625rem/1.5 "Atkinson Hyperlegible Next", "Atkinson Hyperlegible", Verdana, "DejaVu Sans", sans-serif; }
        main { background: var(--paper); max-width: 47rem; margin: 0 auto; padding: 2rem 1.25rem; }
        @media (min-width: 50rem) { main { margin: 2.5rem auto; padding: 3rem 3.25rem; } }
        h1 { font-size: 2.4375rem; line-height: 1.15; margin: 0; }
        h2, h3 { font-size: 1.25rem; line-height: 1.3; margin: 0 0 0.375rem; text-align: start; }
        h2.part { font-size: 1.5625rem; margin-top: 3rem; }
        p { margin: 0.5rem 0; } p, td, li { text-wrap: pretty; }
        header { display: flex; flex-wrap: wrap; gap: 1rem 2rem; align-items: flex-start; }
        .told { flex: 1 1 16rem; min-width: 0; }
        .by { font-size: 1.25rem; margin: 0.25rem 0 0; }
        .facts { font-size: 1.25rem; line-height: 1.4; margin-top: 1rem; }
        .by, .key, .note, .foot, .soft { color: var(--soft); }
        .key { font-size: 0.875rem; margin-top: 0.75rem; }
        .walls { margin: 0; flex: none; }
        .walls svg { font-weight: normal; }
        section { margin-top: 2rem; } .track + p { margin-top: -0.5rem; }
        table { width: 100%; border-collapse: collapse; table-layout: fixed; }
        caption { text-align: start; }
        thead th { padding: 0; line-height: 0; } thead th.counts { width: 6.25rem; } thead th.facing { width: 7.25rem; }
        tbody th, td { vertical-align: top; text-align: start; padding: 0.1875rem 0; }
        tbody th { padding-inline-end: 0.75rem; font-weight: bold; font-variant-numeric: tabular-nums; }
        td.facing { text-align: end; white-space: nowrap; font-variant-numeric: tabular-nums; color: var(--soft); }
        .wide thead th.facing { width: 11rem; }
        td.turns { color: var(--ink); font-weight: bold; }
        td.facing svg { width: 2.25rem; height: 1.25rem; vertical-align: -0.25rem; margin-inline-end: 0.375rem; }
        td p { margin: 0; } .one { white-space: nowrap; }
        .away { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
        ul { margin: 0.375rem 0; padding: 0; list-style: none; }
        li { margin: 0.25rem 0; }
        svg { display: inline-block; width: calc(var(--w) * 1rem / 12); height: calc(var(--h) * 1rem / 12); max-width: 100%; fill: none; }
        svg text { fill: currentColor; font-variant-numeric: tabular-nums; }
        .strip { margin-top: 0.5rem; line-height: 0; display: flex; flex-wrap: wrap; row-gap: 0.75rem; }
        path { stroke-linecap: round; stroke-linejoin: round; }
        .fi { fill: currentColor; } .fp { fill: var(--paper); } .fl { fill: var(--line); }
        .si { stroke: currentColor; } .sp { stroke: var(--paper); } .sl { stroke: var(--line); }
        .signs { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(14.5rem, 100%), 1fr)); gap: 0.25rem 1.5rem; font-size: 0.875rem; line-height: 1.3; }
        .signs li { display: flex; align-items: center; gap: 0.625rem; margin: 0; }
        .signs svg { flex: none; }
        .foot { margin-top: 2.5rem; font-size: 0.875rem; }
        .card main { padding-top: 1.5rem; padding-bottom: 1.5rem; }
        .card section { margin-top: 1rem; break-inside: avoid; }
        .card .facts { font-size: 1rem; }
        .card thead th.counts { width: 4.75rem; } .card thead th.facing { width: 3.25rem; } .card td.facing svg { display: none; }
        @media (min-width: 50rem) { .card .steps { columns: 2; column-gap: 2.5rem; margin-top: 1rem; } .card .steps section:first-child { margin-top: 0; } }
        @media (max-width: 34rem) {
          h1 { font-size: 1.9375rem; }
          .facts, .by { font-size: 1.0625rem; }
          thead th.counts { width: 4.5rem; } thead th.facing { width: 3.25rem; }
          tbody th { padding-inline-end: 0.5rem; } .wide thead th.facing { width: 6.75rem; } .wide td.facing { white-space: normal; }
          td.facing svg { display: none; }
        }
        """;

    // Only what is worked off has boxes to tick.
    private const string Box = """

        .box { display: inline-block; width: 0.875em; height: 0.875em; border: 1.5px solid currentColor; border-radius: 2px;
          margin-inline-end: 0.5em; vertical-align: -0.0625em; }
        """;

    /// <summary>The style of a sheet's page.</summary>
    public static string Of(SheetModel sheet) => Screen
        + (sheet.Parts.Any(p => p.Sections.Any(s => s.Lines.Any(l => l.HasBox))) ? Box : "")
        + Print(sheet)
        + (sheet.PageSign is null ? "" : Scanned);

    // Some cameras read dark squares on light ground only, so on a dark screen too the picture of an address has the light colours.
    private static readonly string Scanned = $$"""

        .scan { display: flex; flex-wrap: wrap; align-items: center; gap: 0.5rem 1rem; break-inside: avoid; }
        .scan p { flex: 1 1 10rem; min-width: 0; } .scan a { color: inherit; }
        .scan svg { --paper: {{Look.Light.Paper}}; color: {{Look.Light.Ink}}; flex: none; }
        @media print { .scan svg { --paper: #FFFFFF; color: #000000; } }
        """;

    private static string Print(SheetModel sheet) => $$"""

        @media print {
          @page { size: {{(sheet.Paper == Paper.Letter ? "letter" : "A4")}}; margin: {{(sheet.IsCard ? "10mm 12mm" : "12mm 16mm")}}; }
          :root { --paper: #FFFFFF; --floor: #FFFFFF; --ink: #000000; --soft: #000000; --line: #000000; --lamp: #000000; --buoy: #000000; --tide: #000000; }
          html { font-size: 12pt; background: none; } html.large { font-size: 18pt; }
          body { font-size: 0.84375rem; line-height: 1.27; }
          main { max-width: none; margin: 0; padding: 0; }
          h1 { font-size: 1.75rem; } .facts, .by { font-size: 0.9375rem; } h2, h3 { font-size: 0.9375rem; margin-bottom: 0; } h2.part { font-size: 1.125rem; margin-top: 1rem; }
          .by { margin: 0; } .facts { margin-top: 0.375rem; } .key { font-size: 0.75rem; margin-top: 0.375rem; } p { margin: 0.1875rem 0; } .track + p { margin-top: -0.1875rem; }
          section { margin-top: 0.625rem; } .walls svg { width: calc(var(--w) * 1rem / 15); height: calc(var(--h) * 1rem / 15); } .strip { margin-top: 0.125rem; } .strip svg { width: calc(var(--w) * 1rem / 13.5); height: calc(var(--h) * 1rem / 13.5); } tbody th, td { padding: 0; } .signs, .foot { font-size: 0.75rem; } .signs li { gap: 0.25rem; } .foot { margin-top: 0.75rem; }
          td.facing svg { height: 0.875rem; vertical-align: -0.125rem; } .foot p { display: inline; margin-inline-end: 1rem; }
          .signs svg { height: 1.375rem; } .signs { line-height: 1.15; gap: 0 0.75rem; grid-template-columns: repeat(auto-fill, minmax(min(9.75rem, 100%), 1fr)); }
          .large .by { margin-top: 0.25rem; } .large .signs { line-height: 1.3; row-gap: 0.25rem; }
          .card body { font-size: 0.8125rem; } .card section { margin-top: 0.4375rem; } .card .steps { columns: 2; column-gap: 2rem; }
          tr, li, h2, h3, caption, .strip, svg { break-inside: avoid; } h2, h3, caption, thead { break-after: avoid; } section { break-inside: avoid; }
          .wide thead th.counts { width: 4.5rem; } .wide thead th.facing { width: 8.5rem; } .notice section { break-inside: auto; }
        }
        """;

    private static string Tokens(Look look) => string.Join(
        ' ',
        $"--paper: {look.Paper};",
        $"--floor: {look.Floor};",
        $"--ink: {look.Ink};",
        $"--soft: {look.Soft};",
        $"--line: {look.Line};",
        $"--lamp: {look.Lamp};",
        $"--buoy: {look.Buoy};",
        $"--tide: {look.Tide};");

    // The page carries its type with it, since it may be opened where there is no net and no such font.
    private static string Face(string name, int weight)
    {
        using Stream font = Assembly.GetExecutingAssembly().GetManifestResourceStream($"AtkinsonHyperlegibleNext-{name}.woff2")
            ?? throw new InvalidOperationException($"The font {name} is not in the program.");
        byte[] bytes = new byte[font.Length];
        font.ReadExactly(bytes);
        return $"@font-face {{ font-family: \"Atkinson Hyperlegible Next\"; font-weight: {weight}; font-display: swap; "
            + $"src: url(data:font/woff2;base64,{Convert.ToBase64String(bytes)}) format(\"woff2\"); }}";
    }
}
