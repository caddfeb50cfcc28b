namespace Scuff.Analysis.Floor;

/// <summary>Where the body is at one moment.</summary>
/// <param name="X">Point below the hips, metres to the right of the start.</param>
/// <param name="Y">Point below the hips, metres forward of the start.</param>
/// <param name="HipHeight">Height of the hips in metres: as high as both legs allow.</param>
/// <param name="Facing">Where the dance faces: degrees clockwise from 12:00, not reduced.</param>
/// <param name="Angle">Styling turn of the body against the facing, degrees to the right.</param>
public readonly record struct BodyPose(double X, double Y, double HipHeight, double Facing, double Angle);
