namespace Scuff.App.Json;

/// <summary>A dance that resembles another one.</summary>
/// <param name="Id">The dance.</param>
/// <param name="Title">Its title.</param>
/// <param name="Percent">How much, from 0 to 100.</param>
/// <param name="IsMirrored">Whether it resembles it in the other foot.</param>
/// <param name="Shared">Sections that both have, a few words each.</param>
internal sealed record BookAlikeRow(string Id, string Title, int Percent, bool IsMirrored, IReadOnlyList<string> Shared);
