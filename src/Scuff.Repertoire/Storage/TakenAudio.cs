namespace Scuff.Repertoire.Storage;

/// <summary>A sound file that is on the disk, but not yet under its name; it goes again if it never gets that.</summary>
/// <param name="folder">Where it lies.</param>
/// <param name="temporary">Full path of its passing name.</param>
/// <param name="digest">The digest of its content.</param>
/// <param name="bytes">Its size.</param>
internal sealed class TakenAudio(MusicFolder folder, string temporary, string digest, long bytes) : IDisposable
{
    /// <summary>The digest of its content.</summary>
    public string Digest { get; } = digest;

    /// <summary>Its size.</summary>
    public long Bytes { get; } = bytes;

    /// <summary>Gives it its name, in one move.</summary>
    /// <exception cref="IOException">It could not be moved.</exception>
    public void Settle(string ending) => File.Move(temporary, folder.PathOf(Digest, ending), overwrite: true);

    public void Dispose() => MusicFolder.Delete(temporary);
}
