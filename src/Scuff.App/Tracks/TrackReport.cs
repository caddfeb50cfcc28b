using System.Globalization;
using Scuff.App.Complaints;
using Scuff.Music;

namespace Scuff.App.Tracks;

/// <summary>Says in plain words what a dancer needs to know of a track.</summary>
internal static class TrackReport
{
    private const string Indent = "  ";
    private const int Column = 10;
    private const int LeastWidth = 30;

    /// <summary>Writes it.</summary>
    public static void Write(HeardTrack track, Terminal terminal)
    {
        TrackMap map = track.Map!;
        string title = map.Title.Length > 0 ? map.Title : track.Stem;
        string artist = map.Artist.Length > 0 ? $" by {map.Artist}" : "";
        terminal.Out.WriteLine(terminal.Paint.Of(Tone.Name, Plain.Line(title + artist))
            + terminal.Paint.Of(Tone.Soft, Plain.Line($"  ({track.Name}, {TrackWords.Length(map.Seconds)})")));
        if (map.Beats.Count > 0)
        {
            Line("tempo", $"{TrackWords.Tempo(map.Tempo.Value)} beats a minute, {TrackWords.Sure(map.Tempo.Confidence)}{Instead(map.Tempo)}");
            Line("meter", $"{TrackWords.Meter(map.Meter.Value)}, {TrackWords.Sure(map.Meter.Confidence)}");
            Line("swing", $"{TrackWords.Swing(map.Swing.Value)}, {TrackWords.Sure(map.Swing.Confidence)}");
            Line("intro", Intro(map));
            Sections();
            Line("stops", string.Join("; ", map.Breaks.Select(b => TrackWords.Break(map, b))));
            foreach (OddEight odd in OddEight.In(map))
            {
                Line("odd", Odd(map, odd));
            }
        }

        Line("note", map.Remark, Tone.Open);
        Line("note", track.Warning ?? "", Tone.Open);
        if (track.Doubts.Count > 0)
        {
            Line("check", $"No more than a guess: {string.Join(", ", track.Doubts)}. Listen, and say it right in a file for --corrections.", Tone.Open);
        }

        void Sections()
        {
            if (map.Sections.Count == 0)
            {
                return;
            }

            Line("sections", "start    counts  music");
            foreach (TrackSection section in map.Sections)
            {
                string row = string.Create(
                    CultureInfo.InvariantCulture,
                    $"{TrackWords.Time(map.Beats[section.FirstBeat].Seconds),-7}  {section.Beats,6}  {TrackWords.Section(section)}");

                // the first one begins where the music does
                Line("", section.FirstBeat > map.Sections[0].FirstBeat && section.Confidence < HeardTrack.Doubtful ? row + "  (its start is a guess)" : row);
            }
        }

        void Line(string name, string text, Tone? tone = null)
        {
            bool isFirst = true;
            if (text.Length == 0)
            {
                return;
            }

            foreach (string row in Wrapping.Wrap(Plain.Line(text), Math.Max(LeastWidth, terminal.Width - Indent.Length - Column)))
            {
                terminal.Out.WriteLine(Indent + (isFirst ? name : "").PadRight(Column) + (tone is { } colour ? terminal.Paint.Of(colour, row) : row));
                isFirst = false;
            }
        }
    }

    private static string Instead(Estimate<double> tempo) => tempo.Alternatives.Count == 0
        ? ""
        : $" (felt otherwise: {string.Join(" or ", tempo.Alternatives.Select(a => TrackWords.Tempo(Math.Round(a.Value))))})";

    private static string Intro(TrackMap map)
    {
        if (map.FirstCount.Value < 0)
        {
            return "";
        }

        int counts = TrackWords.IntroOf(map);
        int pickup = TrackWords.PickupOf(map);
        string after = pickup == 0 ? "" : $" after a pickup of {TrackWords.Counts(pickup)}";
        string start = TrackWords.Time(map.Beats[map.FirstCount.Value].Seconds);
        string sure = TrackWords.Sure(map.FirstCount.Confidence);
        return counts == 0
            ? $"none: dance from the first count 1 at {start}{after}, {sure}"
            : $"{TrackWords.Counts(counts)}{after}: dance from {start}, {sure}";
    }

    private static string Odd(TrackMap map, OddEight odd)
    {
        string where = TrackWords.SectionAt(map, odd.FirstBeat) is { } section
            ? $" in {TrackWords.Section(section)}, {TrackWords.Counts(odd.FirstBeat - section.FirstBeat)} into it"
            : "";
        string eight = odd.Expected == 8 ? "an eight" : "a six";
        return $"{TrackWords.Time(map.Beats[odd.FirstBeat].Seconds)}{where}: {eight} of {TrackWords.Counts(odd.Beats)}, then 1 again";
    }
}
