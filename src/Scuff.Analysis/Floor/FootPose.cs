using Scuff.Stance;

namespace Scuff.Analysis.Floor;

/// <summary>Where one foot is at one moment.</summary>
/// <param name="X">Place of its ball, metres to the right of the start, seen by a dancer who faces 12:00.</param>
/// <param name="Y">Place of its ball, metres forward of the start.</param>
/// <param name="Angle">Where the toe points: degrees clockwise from 12:00. Not reduced: a full turn to the right adds 360.</param>
/// <param name="Contact">The part that meets the floor.</param>
/// <param name="Height">Metres above the floor; zero unless the foot is in the air.</param>
public readonly record struct FootPose(double X, double Y, double Angle, Contact Contact, double Height)
{
    /// <summary>The place of its ball.</summary>
    public FloorPoint Place => new(X, Y);

    /// <summary>The same foot elsewhere.</summary>
    public FootPose At(FloorPoint place) => this with { X = place.X, Y = place.Y };

    /// <summary>The place of the heel.</summary>
    public FloorPoint Heel(DancerSize size) => Place - new FloorPoint(0, size.HeelToBall).Turned(Angle);
}
