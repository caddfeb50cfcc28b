using Scuff.Dances;
using Scuff.Stance;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>A printed facing that is not the computed one.</summary>
/// <param name="Claim">The printed one.</param>
/// <param name="Computed">The computed one.</param>
/// <param name="Count">The count it belongs to, as printed, or null.</param>
/// <param name="Followers">Later printed facings that are off by the same turn: the same fault.</param>
internal sealed record ClaimTrouble(FacingClaim Claim, Facing Computed, string? Count, List<FacingClaim> Followers)
{
    /// <summary>How far the print is ahead of the dance.</summary>
    public Turn Offset => Claim.Facing - Computed;
}
