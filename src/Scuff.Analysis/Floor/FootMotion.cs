namespace Scuff.Analysis.Floor;

/// <summary>How a foot gets from one place to the next.</summary>
public enum FootMotion
{
    /// <summary>It stays; if the body turns, it turns on its ball.</summary>
    Still,

    /// <summary>Lifted, carried, put down.</summary>
    Travel,

    /// <summary>Along the floor.</summary>
    Slide,

    /// <summary>Round the other foot in a curve, at the height it has.</summary>
    Swing,

    /// <summary>Off the floor together with the dancer.</summary>
    Jump,

    /// <summary>It turns on its heel.</summary>
    OnHeel,
}
