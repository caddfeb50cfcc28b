namespace Scuff.App.Web.Contract;

/// <summary>Calls to be kept as a file.</summary>
/// <param name="Calls">What is called; where <see cref="CallQuestion.Plays"/> names a track of the club, over its music.</param>
/// <param name="Kind">wav, mp3 or m4a for a call track; vtt, srt, chapters, counts or counts-srt for what goes with a film.</param>
/// <param name="Clicks">Whether a call track has clicks; without a track it always has.</param>
internal sealed record CallFileQuestion(CallQuestion Calls, string Kind, bool Clicks);
