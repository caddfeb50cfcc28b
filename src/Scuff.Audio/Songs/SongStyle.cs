namespace Scuff.Audio.Songs;

/// <summary>The rhythms that the trade dances to, as our band plays them.</summary>
public enum SongStyle
{
    /// <summary>Country two-step: shuffle, train beat or boom-chuck.</summary>
    TwoStep,

    /// <summary>East coast swing.</summary>
    EastCoastSwing,

    /// <summary>Cha cha.</summary>
    ChaCha,

    /// <summary>Pop and rock in eighths.</summary>
    PopRock,

    /// <summary>Four on the floor.</summary>
    DancePop,

    /// <summary>Nightclub two-step ballad.</summary>
    Nightclub,

    /// <summary>Waltz, in 3/4.</summary>
    Waltz,

    /// <summary>Polka: bass on the beat, chords between.</summary>
    Polka,

    /// <summary>Sixteenth feel.</summary>
    Groove,

    /// <summary>Rumba.</summary>
    Rumba,

    /// <summary>Samba.</summary>
    Samba,

    /// <summary>6/8 felt in two, written with two such bars to a bar of four beats.</summary>
    Jig,
}
