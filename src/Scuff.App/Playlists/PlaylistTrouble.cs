namespace Scuff.App.Playlists;

/// <summary>Why a playlist was not written: a sentence for whoever asked for it. Nothing was changed when it is thrown.</summary>
/// <param name="sentence">The sentence, with its full stop.</param>
/// <param name="cause">What was met beneath, or null.</param>
internal sealed class PlaylistTrouble(string sentence, Exception? cause = null) : Exception(sentence, cause);
