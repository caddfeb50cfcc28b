namespace Scuff.App.Web.Contract;

/// <summary>The dance danced, ready to draw. Lengths in metres, angles in degrees clockwise from 12:00 and not reduced.</summary>
internal sealed record FloorAnswer
{
    /// <summary>Moments for each count.</summary>
    public required int PerCount { get; init; }

    /// <summary>The count of the first moment: one before the first action, which is under way for so long.</summary>
    public required double First { get; init; }

    /// <summary>Counts danced.</summary>
    public required double Length { get; init; }

    /// <summary>Whether it goes round: after the last count the first comes again without a jump in weight or facing.</summary>
    public required bool GoesRound { get; init; }

    /// <summary>Height of the dancer.</summary>
    public required double Height { get; init; }

    /// <summary>From the ball of a foot to its heel.</summary>
    public required double HeelToBall { get; init; }

    /// <summary>From hip to floor, standing.</summary>
    public required double Leg { get; init; }

    /// <summary>The left foot.</summary>
    public required FloorFoot Left { get; init; }

    /// <summary>The right foot.</summary>
    public required FloorFoot Right { get; init; }

    /// <summary>The body.</summary>
    public required FloorBody Body { get; init; }

    /// <summary>What is danced when: walls, tags, the ending.</summary>
    public required IReadOnlyList<FloorStretch> Stretches { get; init; }

    /// <summary>Every action in danced order.</summary>
    public required IReadOnlyList<FloorStep> Steps { get; init; }

    /// <summary>What is learned as one piece, in danced order: the sections of every wall, each tag, the ending.</summary>
    public required IReadOnlyList<FloorSection> Sections { get; init; }

    /// <summary>Whether the text has easier options that can be danced instead.</summary>
    public required bool HasEasier { get; init; }
}

/// <summary>A foot at every moment.</summary>
/// <param name="X">Its ball, to the right of the start, in millimetres.</param>
/// <param name="Y">Its ball, forward of the start, in millimetres.</param>
/// <param name="Angle">Where the toe points, in tenths of a degree.</param>
/// <param name="Lift">Millimetres above the floor.</param>
/// <param name="Contact">A letter each: f flat, b ball, h heel, t toe, a air.</param>
internal sealed record FloorFoot(int[] X, int[] Y, int[] Angle, int[] Lift, string Contact);

/// <summary>The body at every moment.</summary>
/// <param name="X">Below the hips, to the right of the start, in millimetres.</param>
/// <param name="Y">Below the hips, forward of the start, in millimetres.</param>
/// <param name="Hips">Height of the hips in millimetres.</param>
/// <param name="Facing">Where the dance faces, in tenths of a degree.</param>
/// <param name="Turned">Styling turn of the body against it, in tenths of a degree.</param>
/// <param name="Weight">A letter each: L, R, B both, ? unknown.</param>
internal sealed record FloorBody(int[] X, int[] Y, int[] Hips, int[] Facing, int[] Turned, string Weight);

/// <summary>A wall, a tag or the ending as danced.</summary>
/// <param name="At">Danced count of its start.</param>
/// <param name="Counts">Its length.</param>
/// <param name="Wall">The wall, from 1.</param>
/// <param name="Kind">wall, tag, quote, wait or ending.</param>
/// <param name="Name">Part or tag name, or empty.</param>
/// <param name="Facing">Facing at its start, or null.</param>
/// <param name="Words">What it is, in words.</param>
/// <param name="StartsWall">Whether a wall begins with it.</param>
internal sealed record FloorStretch(double At, double Counts, int Wall, string Kind, string Name, string? Facing, string Words, bool StartsWall);

/// <summary>A section, a tag or the ending as danced, or what is danced of it before a restart.</summary>
/// <param name="At">Danced count of its start.</param>
/// <param name="Counts">How much of it is danced.</param>
/// <param name="Wall">The wall, from 1.</param>
/// <param name="Kind">As of its stretch: wall, tag, quote, wait or ending.</param>
/// <param name="Name">What it is called: <c>section 2</c>, <c>tag</c>.</param>
/// <param name="Title">Its heading, or empty.</param>
/// <param name="Lines">Its lines.</param>
internal sealed record FloorSection(double At, double Counts, int Wall, string Kind, string Name, string Title, IReadOnlyList<FloorLine> Lines);

/// <summary>A line of a section as danced.</summary>
/// <param name="At">Danced count of its start.</param>
/// <param name="Counts">How much of it is danced.</param>
/// <param name="Label">Its counts as printed.</param>
/// <param name="From">Where it starts in the text.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Number">Its number in the text, from 1.</param>
internal sealed record FloorLine(double At, double Counts, string Label, int From, int To, int Number);

/// <summary>An action as danced.</summary>
/// <param name="At">Danced count.</param>
/// <param name="Count">The printed count.</param>
/// <param name="Foot">L, R, both or none.</param>
/// <param name="Words">What is danced.</param>
/// <param name="Weight">Weight after it.</param>
/// <param name="Facing">Facing after it, or null.</param>
/// <param name="From">Where its words start in the text.</param>
/// <param name="To">Where they end.</param>
/// <param name="Line">One-based line of the text.</param>
internal sealed record FloorStep(double At, string Count, string Foot, string Words, string Weight, string? Facing, int From, int To, int Line);

/// <summary>What the page asks to see danced.</summary>
/// <param name="Text">The text.</param>
/// <param name="Track">Title of the track whose tags and restarts are danced; null as the sheet has it; <c>none</c> for plain repetitions.</param>
/// <param name="Height">Height of the dancer in metres; null for the usual.</param>
/// <param name="Ending">Whether the ending is danced.</param>
/// <param name="Easier">Whether the easier options of the text are danced.</param>
/// <param name="Plays">A track of the club that it is danced to by the plan in the text, in place of track, height and ending; null for none.</param>
internal sealed record FloorQuestion(string Text, string? Track, double? Height, bool Ending, bool Easier = false, string? Plays = null);
