using Microsoft.AspNetCore.Http;
using Scuff.Analysis.Calls;
using Scuff.App.Calling;
using Scuff.App.Web.Contract;
using Scuff.App.Web.Routes;
using Scuff.App.Web.Tracks;
using Scuff.Audio.Decoding;
using Scuff.Audio.Mixing;
using Scuff.Audio.Songs;
using Scuff.Audio.Voices;
using Scuff.Repertoire;
using Scuff.Sheets.Captions;

namespace Scuff.App.Web;

/// <summary>Makes files of calls for the page: call tracks, captions, chapter marks, counts.</summary>
internal static class CallFiles
{
    // Beside the club's database: sound files named after their words.
    private const string VoiceFolder = "voice";

    // One at a time: the samples of a song and its stretched copy are large.
    private static readonly SemaphoreSlim Turn = new(1, 1);

    /// <summary>The file: its media type, its ending, its content, and what is missing from it in a sentence (empty for nothing).</summary>
    /// <param name="studio">The studio.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="cancel">Ends it early.</param>
    /// <exception cref="RefusalException">There is no such kind, or the music cannot be used.</exception>
    public static async Task<(string Type, string Ending, byte[] Content, string Missing)> Of(Studio studio, CallFileQuestion asked, CancellationToken cancel)
    {
        (CalledDance called, CallOptions options) = CallRoutes.Called(studio, asked.Calls, fromZero: true);
        if (CaptionFormats.Find(asked.Kind) is { } captions)
        {
            CallScript script = CallWriter.Write(called.Dance, called.Timeline, called.Clock, options);
            string text = captions.Write(CaptionBuilder.Build(called.Dance, called.Timeline, called.Clock, script));
            return (captions.MediaType + "; charset=utf-8", captions.Extension, System.Text.Encoding.UTF8.GetBytes(text), MissingFrom(script, null));
        }

        string ending = "." + asked.Kind;
        if (SoundWriter.Endings.FirstOrDefault(e => e.Ending == ending) is not { Ending: not null } kind)
        {
            throw new RefusalException(
                StatusCodes.Status400BadRequest,
                $"Calls are kept as {string.Join(", ", SoundWriter.Endings.Select(e => e.Ending[1..]).Concat(CaptionFormats.All.Select(f => f.Name)))}.");
        }

        string? path = asked.Calls.Plays is { } track ? PathOf(studio, track) : null;
        string recordings = Path.Combine(studio.Club.Folder, VoiceFolder);
        await Turn.WaitAsync(cancel).ConfigureAwait(false);
        try
        {
            (byte[] sound, string missing) = await Task.Run(() => Mixed(called, options, path, recordings, asked, kind.Format, cancel), cancel).ConfigureAwait(false);
            return (TypeOf(kind.Format), ".calls" + ending, sound, missing);
        }
        catch (AudioException trouble)
        {
            throw new RefusalException(StatusCodes.Status422UnprocessableEntity, trouble.Message);
        }
        finally
        {
            Turn.Release();
        }
    }

    private static (byte[] Sound, string Missing) Mixed(
        CalledDance called, CallOptions options, string? path, string recordings, CallFileQuestion asked, SoundFormat format, CancellationToken cancel)
    {
        StereoSound? music = path is null ? null : CalledMusic.Read(path, asked.Calls.Speed, out _);

        // her own words first, where she keeps any with her club
        Speaker speaker = new(Directory.Exists(recordings) ? [RecordedVoice.OfFolder(recordings), new ShippedVoice()] : [new ShippedVoice()]);
        CallScript script = CallWriter.Write(called.Dance, called.Timeline, called.Clock, options with { SecondsToSay = speaker.SecondsToSay });
        CallTrack made = CallTrackMixer.Mix(CallTrackPlanner.Of(called, script, music, music is null || asked.Clicks), speaker, cancel: cancel);
        using MemoryStream written = new();
        SoundWriter.Write(made.Sound, format, written, called.Dance.Title, cancel: cancel);
        return (written.ToArray(), MissingFrom(script, made));
    }

    private static string MissingFrom(CallScript script, CallTrack? made)
    {
        List<string> said = [];
        if (script.Unsaid.Count > 0)
        {
            said.Add($"There is no room for {Quoted(script.Unsaid.Select(c => c.Words))} before it is danced.");
        }

        if (made is { Unspoken.Count: > 0 })
        {
            said.Add($"No voice can say {Quoted(made.Unspoken)}: record it, and put it into the folder {VoiceFolder} of your club.");
        }

        if (made is { Overlong.Count: > 0 })
        {
            said.Add($"Too long for its place even when said quickly: {Quoted(made.Overlong.Select(c => c.Words))}.");
        }

        return string.Join(' ', said);
    }

    private static string Quoted(IEnumerable<string> words) => string.Join(", ", words.Distinct(StringComparer.Ordinal).Select(w => "“" + w + "”"));

    private static string PathOf(Studio studio, string track)
    {
        TrackRow row = studio.Tracks.Find(track);
        return studio.Club.Tracks.AudioPath(row.Id) ?? throw new RefusalException(
            StatusCodes.Status409Conflict, $"The club keeps no sound for {KnownTrack.TitleOf(row)}. Drop its file once more, then make the call track.");
    }

    private static string TypeOf(SoundFormat format) => format switch
    {
        SoundFormat.Wav => "audio/wav",
        SoundFormat.Mp3 => "audio/mpeg",
        SoundFormat.M4a => "audio/mp4",
        _ => throw new ArgumentOutOfRangeException(nameof(format)),
    };
}
