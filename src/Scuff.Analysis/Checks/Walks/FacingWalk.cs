using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Analysis.Checks.Walks;

/// <summary>
/// Walks through lines with the facing in mind and compares each printed facing. After words that could not be read the
/// facing is unknown until the next printed one, which is then believed.
/// </summary>
internal sealed class FacingWalk
{
    private readonly List<ClaimTrouble> _troubles = [];
    private Facing? _facing;
    private ClaimTrouble? _open;

    private FacingWalk(Facing? start) => _facing = start;

    /// <summary>The false claims, in order.</summary>
    public IReadOnlyList<ClaimTrouble> Troubles => _troubles;

    /// <summary>The false claim that all later ones follow up to the end, or null when the last claim is true.</summary>
    public ClaimTrouble? Open => _open;

    /// <summary>Walks over the lines.</summary>
    /// <param name="lines">In order.</param>
    /// <param name="start">Facing before them; unknown when null.</param>
    /// <param name="isDoubtful">Whether the reader complained about a line.</param>
    public static FacingWalk Over(IEnumerable<WrittenLine> lines, Facing? start, Func<WrittenLine, bool> isDoubtful)
    {
        FacingWalk walk = new(start);
        foreach (WrittenLine line in lines)
        {
            walk.Take(line, isDoubtful(line));
        }

        return walk;
    }

    /// <summary>The walk with the fewest false claims among several possible starts.</summary>
    public static FacingWalk Best(IReadOnlyList<WrittenLine> lines, IEnumerable<Facing?> starts, Func<WrittenLine, bool> isDoubtful)
    {
        FacingWalk? best = null;
        foreach (Facing? start in starts)
        {
            FacingWalk walk = Over(lines, start, isDoubtful);
            if (best is null || walk._troubles.Count < best._troubles.Count)
            {
                best = walk;
            }
        }

        return best ?? Over(lines, null, isDoubtful);
    }

    private void Take(WrittenLine line, bool isDoubtful)
    {
        List<FacingClaim> waiting = [.. line.Claims.OrderBy(claim => claim.At)];
        WrittenStep? last = null;
        foreach (WrittenStep step in line.Steps)
        {
            while (waiting.Count > 0 && waiting[0].At < step.Count.Place)
            {
                Compare(waiting[0], last, isDoubtful);
                waiting.RemoveAt(0);
            }

            _facing = step.Action.Kind == ActionKind.Unknown ? null : _facing + step.Action.Turn;
            last = step;
        }

        if (isDoubtful)
        {
            _facing = null;
        }

        foreach (FacingClaim claim in waiting)
        {
            Compare(claim, last, isDoubtful);
        }
    }

    private void Compare(FacingClaim claim, WrittenStep? last, bool isDoubtful)
    {
        if (_facing is not { } facing || isDoubtful)
        {
            _facing = claim.Facing;
            _open = null;
            return;
        }

        if (facing == claim.Facing)
        {
            _open = null;
            return;
        }

        if (_open is { } open && open.Offset == claim.Facing - facing)
        {
            open.Followers.Add(claim);
            return;
        }

        string? count = last is null ? null : CountGrid.LabelOf(last.Count.Place);
        _open = new ClaimTrouble(claim, facing, count, []);
        _troubles.Add(_open);
    }
}
