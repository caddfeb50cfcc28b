namespace Scuff.Audio.Songs;

/// <summary>A bar of drums: the book's, changed a little by chance.</summary>
internal sealed class DrumBar
{
    private readonly List<(DrumVoice Voice, Pattern Line)> _lines = [];

    /// <summary>Reads lines of the form <c>Kick 8...7...|Snare ....9...</c>, now and then changing, leaving out or replacing one.</summary>
    public static DrumBar Read(string text, Dice dice)
    {
        DrumBar bar = new();
        foreach (string line in text.Split('|'))
        {
            int space = line.IndexOf(' ', StringComparison.Ordinal);
            DrumVoice voice = Changed(Enum.Parse<DrumVoice>(line[..space]), dice);
            char[] signs = line[(space + 1)..].Replace(" ", "", StringComparison.Ordinal).ToCharArray();
            bool isTime = voice is DrumVoice.ClosedHat or DrumVoice.Ride or DrumVoice.Shaker or DrumVoice.Tambourine or DrumVoice.OpenHat;
            if (isTime && dice.Chance(0.12))
            {
                continue;
            }

            if (voice == DrumVoice.Kick && dice.Chance(0.2))
            {
                // one more, or one less
                int at = 1 + dice.Below(signs.Length - 1);
                signs[at] = signs[at] == '.' && at % 2 == 0 ? '6' : '.';
            }

            if (voice is DrumVoice.Snare or DrumVoice.BrushTap && dice.Chance(0.25))
            {
                int at = dice.Below(signs.Length);
                signs[at] = signs[at] == '.' ? '3' : signs[at];
            }

            bar._lines.Add((voice, new(new string(signs))));
        }

        return bar;
    }

    /// <summary>What is struck in a bar.</summary>
    public IEnumerable<(DrumVoice Voice, double At, double Force)> In(int beats, int meter, int bar)
    {
        foreach ((DrumVoice voice, Pattern line) in _lines)
        {
            foreach ((double at, _, char sign) in line.In(beats, meter, bar))
            {
                yield return (voice, at, (sign - '0') / 9.0);
            }
        }
    }

    private static DrumVoice Changed(DrumVoice voice, Dice dice) => voice switch
    {
        DrumVoice.ClosedHat when dice.Chance(0.2) => dice.Pick(DrumVoice.Shaker, DrumVoice.Ride, DrumVoice.Tambourine, DrumVoice.BrushTap),
        DrumVoice.Snare when dice.Chance(0.15) => dice.Pick(DrumVoice.Clap, DrumVoice.SideStick, DrumVoice.BrushTap),
        DrumVoice.Ride when dice.Chance(0.2) => DrumVoice.ClosedHat,
        DrumVoice.Shaker when dice.Chance(0.2) => DrumVoice.ClosedHat,
        _ => voice,
    };
}
