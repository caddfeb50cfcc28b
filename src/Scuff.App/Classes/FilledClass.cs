using Scuff.Repertoire;

namespace Scuff.App.Classes;

/// <summary>A session whose time was filled.</summary>
/// <param name="Items">What is danced, in the order of a class.</param>
/// <param name="Missed">What found no room, a sentence each.</param>
internal sealed record FilledClass(ValueList<SessionItem> Items, ValueList<string> Missed);
