using System.Globalization;
using Scuff.Audio.Decoding;
using Scuff.Audio.Songs;
using Scuff.Audio.Stretching;

namespace Scuff.App.Calling;

/// <summary>The music under the calls.</summary>
internal static class CalledMusic
{
    // the samples of a longer one, several times over, would fill the memory; no dance lasts as long
    private const int LongestMinutes = 15;
    private const int SecondsPerMinute = 60;

    /// <summary>A sound file at a practice speed, its pitch kept.</summary>
    /// <param name="path">Where it is.</param>
    /// <param name="speed">The speed: 1 as it is.</param>
    /// <param name="warning">What a person should know of the file, or null.</param>
    /// <exception cref="AudioException">It cannot be read, or is too long.</exception>
    public static StereoSound Read(string path, double speed, out string? warning)
    {
        HeardSides read = AudioFile.ReadSides(path);
        warning = read.Warning;
        return read.Sound.Seconds > LongestMinutes * SecondsPerMinute
            ? throw new AudioException(string.Create(
                CultureInfo.InvariantCulture, $"It lasts more than {LongestMinutes} minutes; a call track is made for one dance. Cut out the part you dance to."))
            : MusicStretch.Stretch(read.Sound, TimeMap.AtSpeed(speed));
    }
}
