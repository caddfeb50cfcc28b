using Scuff.Stance;

namespace Scuff.Sheets.Drawings;

/// <summary>A foot as it stands on the floor at one moment.</summary>
/// <param name="Foot">Which foot.</param>
/// <param name="Contact">The part that meets the floor.</param>
/// <param name="CarriesWeight">Whether it carries weight.</param>
internal readonly record struct Sole(Foot Foot, Contact Contact, bool CarriesWeight);
