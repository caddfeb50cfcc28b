using Scuff.Stance;

namespace Scuff.Analysis.Floor;

/// <summary>The dancer when an action is done.</summary>
/// <param name="At">The count of the action.</param>
/// <param name="Arrives">The count on which the feet are where it takes them: later only for what stretches (a drag over two counts).</param>
/// <param name="Left">The left foot.</param>
/// <param name="Right">The right foot.</param>
/// <param name="Body">The point below the hips.</param>
/// <param name="Facing">Where the dance faces: degrees clockwise from 12:00, not reduced.</param>
/// <param name="BodyAngle">Styling turn of the body against the facing, degrees to the right.</param>
/// <param name="Weight">Where the weight is afterwards.</param>
/// <param name="LeftMotion">How the left foot came there.</param>
/// <param name="RightMotion">How the right foot came there.</param>
/// <param name="IsCertain">Whether all words up to here could be read; if not, place and facing are only a guess.</param>
public readonly record struct FloorKey(
    double At,
    double Arrives,
    FootPose Left,
    FootPose Right,
    FloorPoint Body,
    double Facing,
    double BodyAngle,
    Weight Weight,
    FootMotion LeftMotion,
    FootMotion RightMotion,
    bool IsCertain)
{
    /// <summary>One of the feet.</summary>
    public FootPose Of(Foot foot) => foot == Foot.Left ? Left : Right;

    /// <summary>How one of the feet came there.</summary>
    public FootMotion MotionOf(Foot foot) => foot == Foot.Left ? LeftMotion : RightMotion;
}
