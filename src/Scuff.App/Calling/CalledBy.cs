using System.CommandLine;
using System.Globalization;
using Scuff.Analysis;
using Scuff.App.Explaining;
using Scuff.App.Files;
using Scuff.App.Tracks;

namespace Scuff.App.Calling;

/// <summary>Makes a dance ready to be called from what was typed: a track, or a tempo, and a practice speed. Shared by the commands that call.</summary>
internal static class CalledBy
{
    private const double SlowestPace = 20;
    private const double FastestPace = 400;
    private const double SlowestSpeed = 25;
    private const double FastestSpeed = 200;

    /// <summary>The dance, ready to be called; null after telling what is wrong.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="options">The options on tracks.</param>
    /// <param name="analysis">The dance.</param>
    /// <param name="input">Where its text came from.</param>
    /// <param name="track">The file of the track, or null for an even pace.</param>
    /// <param name="bpm">The pace typed, or null.</param>
    /// <param name="speed">The practice speed typed, in per cent, or null.</param>
    /// <param name="on">The track of the text whose breaks are danced, or null; only at an even pace.</param>
    /// <param name="terminal">Where troubles are told.</param>
    public static CalledDance? Read(
        ParseResult parsed, TrackOptions options, DanceAnalysis analysis, DanceInput input, string? track, string? bpm, string? speed, string? on, Terminal terminal)
    {
        if (Number(speed, "--speed", SlowestSpeed, FastestSpeed, "per cent", terminal, out double? percent)
            && Number(bpm, "--bpm", SlowestPace, FastestPace, "counts a minute", terminal, out double? pace))
        {
            double factor = (percent ?? 100) / 100;
            return track is null ? Even(analysis, input, on, pace, factor, terminal)
                : pace is not null || on is not null ? Told(terminal, "The track gives the tempo and the breaks; leave out --bpm and --on, or the track.")
                : OnTrack(parsed, options, analysis, track, factor, terminal);
        }

        return null;
    }

    private static CalledDance? Even(DanceAnalysis analysis, DanceInput input, string? on, double? pace, double speed, Terminal terminal)
        => TimelineChoice.Of(analysis, on) is { } choice
            ? CalledDance.Even(analysis.Dance, choice.Timeline, choice.TrackTitle, pace, speed)
            : Told(terminal, $"{input.Spoken} names no track {on}.");

    private static CalledDance? OnTrack(ParseResult parsed, TrackOptions options, DanceAnalysis analysis, string track, double speed, Terminal terminal)
    {
        HeardTrack[]? heard = options.Read(parsed, [track], terminal)?.ToArray();
        return heard switch
        {
            null or [] => null,
            [{ Titled: { } map }] => CalledDance.On(analysis, map, speed)
                ?? Told(terminal, $"There is no way to dance it to {track}: scuff fit says why."),
            [_] => null,
            _ => Told(terminal, "A dance is called to one track at a time; name one."),
        };
    }

    private static bool Number(string? typed, string option, double least, double most, string unit, Terminal terminal, out double? number)
    {
        number = null;
        if (typed is null)
        {
            return true;
        }

        if (double.TryParse(typed.TrimEnd('%'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double read) && read >= least && read <= most)
        {
            number = read;
            return true;
        }

        terminal.Tell(string.Create(CultureInfo.InvariantCulture, $"{option} takes {unit} between {least} and {most}, and not {typed}."));
        return false;
    }

    private static CalledDance? Told(Terminal terminal, string trouble)
    {
        terminal.Tell(trouble);
        return null;
    }
}
