namespace Scuff.Audio.Songs;

/// <summary>Bands by chance: mostly what suits the style, now and then what does not, so that no habit holds everywhere.</summary>
internal static class BandDrawing
{
    private static readonly Voice[] AnyChords =
        [Voice.SteelGuitar, Voice.CleanGuitar, Voice.Piano, Voice.ElectricPiano, Voice.Organ, Voice.NylonGuitar, Voice.MutedGuitar, Voice.Accordion];

    private static readonly Voice[] AnyPad = [Voice.Strings, Voice.SynthPad, Voice.Choir, Voice.Organ, Voice.Brass];

    private static readonly Voice[] AnyLead =
        [Voice.Singer, Voice.Singer, Voice.Fiddle, Voice.Flute, Voice.MutedTrumpet, Voice.Saxophone, Voice.Clarinet, Voice.Harmonica, Voice.Piano, Voice.SynthLead];

    public static Band Draw(Dice dice, SongStyle style)
    {
        (Voice[] bass, Voice[] chords, Voice[] lead, double hard) = UsualOf(style);
        Voice second = dice.Pick<Voice>(dice.Chance(0.5) ? AnyLead : lead);
        return new()
        {
            Bass = dice.Pick<Voice>(bass),
            Chords = dice.Pick<Voice>(dice.Chance(0.2) ? AnyChords : chords),
            Broken = dice.Chance(0.35) ? dice.Pick(Voice.NylonGuitar, Voice.Harp, Voice.Piano, Voice.Vibes, Voice.SteelGuitar, Voice.CleanGuitar, Voice.SynthLead) : null,
            Pad = dice.Pick<Voice>(AnyPad),
            Lead = dice.Pick<Voice>(dice.Chance(0.25) ? AnyLead : lead),
            Second = second,
            DrumHardness = Math.Clamp(hard + dice.Between(-0.3, 0.3), 0, 1),
            DrumLevel = dice.Between(-5, 2.5),
            KickLevel = dice.Between(-7, 4),
            BassLevel = dice.Between(-4, 3),
            ChordLevel = dice.Between(-4, 3),
            LeadLevel = dice.Between(-3, 2.5),
            Brightness = dice.Between(0.25, 0.95),
            Room = dice.Between(0, 0.65),
            Loudness = dice.Between(-16, -12),
            Syncopation = dice.Between(0.05, 0.6),
            OffBeats = dice.Chance(0.25) ? dice.Between(0.3, 1) : 0,
        };
    }

    private static (Voice[] Bass, Voice[] Chords, Voice[] Lead, double Hardness) UsualOf(SongStyle style) => style switch
    {
        SongStyle.TwoStep => (
            [Voice.UprightBass, Voice.ElectricBass, Voice.PickedBass],
            [Voice.SteelGuitar, Voice.CleanGuitar, Voice.Piano, Voice.Banjo],
            [Voice.Fiddle, Voice.Singer, Voice.Harmonica, Voice.Banjo, Voice.CleanGuitar],
            0.45),
        SongStyle.EastCoastSwing => (
            [Voice.UprightBass, Voice.UprightBass, Voice.ElectricBass],
            [Voice.Piano, Voice.CleanGuitar, Voice.Organ, Voice.Brass],
            [Voice.Saxophone, Voice.Singer, Voice.MutedTrumpet, Voice.Clarinet],
            0.4),
        SongStyle.ChaCha => (
            [Voice.UprightBass, Voice.ElectricBass, Voice.SynthBass],
            [Voice.Piano, Voice.NylonGuitar, Voice.ElectricPiano],
            [Voice.Flute, Voice.MutedTrumpet, Voice.Singer, Voice.Brass],
            0.5),
        SongStyle.PopRock => (
            [Voice.ElectricBass, Voice.PickedBass, Voice.PickedBass],
            [Voice.DrivenGuitar, Voice.CleanGuitar, Voice.SteelGuitar, Voice.Piano],
            [Voice.Singer, Voice.DrivenGuitar, Voice.Singer, Voice.Organ],
            0.7),
        SongStyle.DancePop => (
            [Voice.SynthBass, Voice.SynthBass, Voice.ElectricBass],
            [Voice.SynthPad, Voice.Piano, Voice.ElectricPiano, Voice.MutedGuitar],
            [Voice.SynthLead, Voice.Singer, Voice.Singer, Voice.Brass],
            0.85),
        SongStyle.Nightclub => (
            [Voice.ElectricBass, Voice.SynthBass, Voice.UprightBass],
            [Voice.ElectricPiano, Voice.Piano, Voice.NylonGuitar, Voice.SteelGuitar],
            [Voice.Singer, Voice.Saxophone, Voice.Flute, Voice.Fiddle],
            0.35),
        SongStyle.Waltz => (
            [Voice.UprightBass, Voice.ElectricBass, Voice.Tuba],
            [Voice.SteelGuitar, Voice.Accordion, Voice.Piano, Voice.NylonGuitar],
            [Voice.Fiddle, Voice.Singer, Voice.Accordion, Voice.Harmonica],
            0.35),
        SongStyle.Polka => (
            [Voice.Tuba, Voice.UprightBass, Voice.ElectricBass],
            [Voice.Accordion, Voice.Accordion, Voice.SteelGuitar, Voice.Banjo],
            [Voice.Accordion, Voice.Clarinet, Voice.MutedTrumpet, Voice.Fiddle],
            0.45),
        SongStyle.Groove => (
            [Voice.ElectricBass, Voice.SynthBass, Voice.PickedBass],
            [Voice.MutedGuitar, Voice.ElectricPiano, Voice.CleanGuitar, Voice.Organ],
            [Voice.Singer, Voice.Saxophone, Voice.Brass, Voice.SynthLead],
            0.7),
        SongStyle.Rumba or SongStyle.Samba => (
            [Voice.UprightBass, Voice.ElectricBass],
            [Voice.NylonGuitar, Voice.NylonGuitar, Voice.Piano, Voice.ElectricPiano],
            [Voice.Flute, Voice.Singer, Voice.MutedTrumpet, Voice.Vibes],
            0.45),
        _ => (
            [Voice.UprightBass, Voice.ElectricBass],
            [Voice.SteelGuitar, Voice.Accordion, Voice.Harp],
            [Voice.Fiddle, Voice.Flute, Voice.Accordion, Voice.Harmonica],
            0.4),
    };
}
