using System.Globalization;
using Scuff.Music.Corrections;

namespace Scuff.App.Tracks;

/// <summary>What a person said about a track, in words.</summary>
internal static class CorrectionWords
{
    /// <summary>One of them.</summary>
    public static string Of(Correction correction) => correction switch
    {
        Correction.TapAlong taps => string.Create(CultureInfo.InvariantCulture, $"tapped along: {taps.Seconds.Count} taps{Stretch(taps.From, taps.To)}"),
        Correction.ChangeBeat { Level: BeatLevel.Half } half => $"the beat is half as fast{Stretch(half.From, half.To)}",
        Correction.ChangeBeat { Level: BeatLevel.Double } twice => $"the beat is twice as fast{Stretch(twice.From, twice.To)}",
        Correction.ChangeBeat between => $"the beats lie halfway between{Stretch(between.From, between.To)}",
        Correction.ShiftOne shift => $"count 1 comes {Beats(Math.Abs(shift.Beats))} {(shift.Beats < 0 ? "earlier" : "later")}{Stretch(shift.From, null)}",
        Correction.SetMeter meter => $"the meter is {TrackWords.Meter(meter.Meter)}",
        Correction.MoveBoundary move => $"a section begins at {TrackWords.Time(move.To)} instead of {TrackWords.Time(move.From)}",
        Correction.AddBoundary add => $"a section{(add.Label.Length > 0 ? " " + add.Label : "")} begins at {TrackWords.Time(add.At)}",
        Correction.RemoveBoundary remove => $"no section begins at {TrackWords.Time(remove.At)}",
        Correction.NameSection name => $"the section at {TrackWords.Time(name.At)} is {string.Join(' ', new[] { name.Label, name.Name }.Where(w => w is { Length: > 0 }))}".TrimEnd(),
        Correction.SetSwing swing => $"the beat is {TrackWords.Swing(swing.Ratio)}",
        Correction.SetFirstCount first => $"the dance starts at {TrackWords.Time(first.At)}",
        Correction.Unknown => "something that a newer Scuff understands",
        _ => throw new ArgumentOutOfRangeException(nameof(correction)),
    };

    private static string Beats(int beats) => string.Create(CultureInfo.InvariantCulture, $"{beats} {(beats == 1 ? "beat" : "beats")}");

    private static string Stretch(double? from, double? to) => (from, to) switch
    {
        (null, null) => "",
        ({ } start, null) => $", from {TrackWords.Time(start)} on",
        (null, { } end) => $", up to {TrackWords.Time(end)}",
        ({ } start, { } end) => $", from {TrackWords.Time(start)} to {TrackWords.Time(end)}",
    };
}
