namespace Scuff.Audio.Songs;

/// <summary>Writes the notes of a song: section by section, each player from the label's shared music.</summary>
internal sealed class SongWriter
{
    private readonly SongRecipe _recipe;
    private readonly SongGrid _grid;
    private readonly Band _band;
    private readonly Dice _dice;
    private readonly Dictionary<string, LabelMusic> _music = [];
    private readonly List<(SongPart Part, double At, double Length, int Pitch, double Force)> _written = [];

    public SongWriter(SongRecipe recipe, SongGrid grid)
    {
        _recipe = recipe;
        _grid = grid;
        _band = recipe.Players;
        _dice = new Dice(recipe.Seed).Fork("notes");
    }

    private int Meter => _recipe.Meter;

    public ValueList<SongNote> Write()
    {
        Lead();
        for (int s = 0; s < _recipe.Sections.Count; s++)
        {
            Section(s);
        }

        if (_recipe.HasFinalChord)
        {
            FinalChord();
        }

        return Played();
    }

    private void Add(SongPart part, double at, double length, int pitch, double force)
        => _written.Add((part, at, length, pitch, Math.Clamp(force + AccentAt(at), 0.08, 1)));

    private double AccentAt(double at)
        => _recipe.Manner is { Accent: not 0 } manner && at % 1 == 0 && (int)at < _grid.Beats.Count && _grid.Beats[(int)at].Position == 1 ? manner.Accent : 0;

    private void Strike(DrumVoice voice, double at, double force) => Add(SongPart.Drums, at, 0.2, (int)voice, force);

    private LabelMusic MusicOf(SectionRecipe section)
    {
        if (!_music.TryGetValue(section.Label, out LabelMusic? music))
        {
            int bars = _recipe.Sections.Where(s => s.Label == section.Label).Max(s => s.Bars + s.ExtraBars + (s.ShortBar > 0 ? 1 : 0));
            music = LabelMusic.Make(new Dice(_recipe.Seed).Fork("label " + section.Label), _recipe, _band, bars);
            _music.Add(section.Label, music);
        }

        return music;
    }

    // What stands before the first section: clicks, then a few notes or strokes that lead in.
    private void Lead()
    {
        for (int k = 0; k < _recipe.CountInBeats; k++)
        {
            Strike(DrumVoice.Sticks, k, k % Meter == 0 ? 0.95 : 0.8);
        }

        bool hasDrums = _recipe.Sections[0].Drums is DrumPart.Full or DrumPart.Light or DrumPart.HalfTime;
        bool isFill = hasDrums && _dice.Chance(0.5);
        int tonic = 60 + ((_recipe.Key + 5) % 12);
        for (int k = 0; k < _recipe.PickupBeats; k++)
        {
            double at = _recipe.CountInBeats + k;
            if (isFill)
            {
                Strike(_dice.Pick(DrumVoice.Snare, DrumVoice.HighTom, DrumVoice.MiddleTom, DrumVoice.LowTom), at, 0.75);
                Strike(_dice.Pick(DrumVoice.Snare, DrumVoice.LowTom), at + 0.5, 0.65);
            }
            else
            {
                int step = (2 * (k - _recipe.PickupBeats)) - 1;
                Add(SongPart.Lead, at, 0.45, tonic + Chord.Scale(step, _recipe.IsMinor), 0.75);
                Add(SongPart.Lead, at + 0.5, 0.45, tonic + Chord.Scale(step + 1, _recipe.IsMinor), 0.7);
            }
        }
    }

    private void Section(int index)
    {
        SectionRecipe section = _recipe.Sections[index];
        LabelMusic music = MusicOf(section);
        Dice dice = _dice.Fork($"section {index}");
        int first = _grid.Firsts[index];
        int length = _grid.Lengths[index];
        double? stop = section.StopBeats > 0 ? length - section.StopBeats : null;
        int key = _recipe.Key + section.Transpose;
        double strength = StrengthOf(section.Name);
        int bars = section.Bars + section.ExtraBars + (section.ShortBar > 0 ? 1 : 0);
        bool isStart = index == 0 || _recipe.Sections[index - 1].Label != section.Label;
        if (index > 0 && _recipe.HasCrashes && section.Drums is DrumPart.Full or DrumPart.HalfTime && (isStart || dice.Chance(0.3)) && dice.Chance(0.8))
        {
            Strike(DrumVoice.Crash, first, 0.8 * strength);
        }

        for (int bar = 0; bar < bars; bar++)
        {
            int from = bar * Meter;
            BarPlan plan = new(
                first + from,
                Math.Min(Meter, length - from),
                bar,
                stop - from,
                Chord.On(music.Degrees[bar], key, _recipe.IsMinor, music.Colour),
                Chord.On(music.LateDegrees[bar], key, _recipe.IsMinor, music.Colour),
                Chord.On(music.Degrees[(bar + 1) % music.Degrees.Count], key, _recipe.IsMinor, music.Colour),
                bar > 0 && stop is null && dice.Chance(_recipe.PushedChords) ? 0.5 : 0,
                strength);
            Drums(section, music, plan, bar == bars - 1 && index + 1 < _recipe.Sections.Count && stop is null, dice);
            if (section.HasBass)
            {
                Bass(music, plan);
            }

            Chords(section, music, plan, dice);
            if (plan.Stop is double hit && hit >= 0 && hit < plan.Beats)
            {
                Hit(section, plan, hit);
            }
        }

        if (section.HasLead)
        {
            Melody(section, music, first, length, stop, key, dice);
            Under(section, music, first, length, stop, key);
        }
    }

    private static double StrengthOf(string name) => name switch
    {
        "chorus" => 1,
        "verse" => 0.86,
        "intro" or "interlude" => 0.84,
        "pre-chorus" => 0.93,
        "bridge" => 0.88,
        _ => 0.92,
    };

    private void Drums(SectionRecipe section, LabelMusic music, BarPlan plan, bool mayFill, Dice dice)
    {
        if (section.Drums == DrumPart.None)
        {
            return;
        }

        if (section.Drums == DrumPart.Hand)
        {
            HandOf(plan);
            return;
        }

        DrumBar pattern = section.Drums switch
        {
            DrumPart.Full => music.Full,
            DrumPart.Light => music.Light,
            _ => music.HalfTime,
        };
        double fillFrom = mayFill && dice.Chance(0.7) ? plan.Beats - dice.Pick(1, 1, 2) : double.MaxValue;
        bool isSmallFill = !mayFill && plan.Bar % 4 == 3 && dice.Chance(0.25) && !plan.IsSilent(plan.Beats - 0.5);
        foreach ((DrumVoice voice, double at, double force) in pattern.In(plan.Beats, Meter, plan.Bar))
        {
            if (plan.IsSilent(at) || (at >= fillFrom && voice != DrumVoice.Kick))
            {
                continue;
            }

            double push = voice == DrumVoice.Kick && at == 0 ? plan.Push : 0;
            Strike(voice, plan.First + at - push, force * plan.Strength);
        }

        if (isSmallFill)
        {
            Strike(DrumVoice.Snare, plan.First + plan.Beats - 0.5, 0.5);
        }

        if (fillFrom < plan.Beats)
        {
            Fill(plan, fillFrom, dice);
        }
    }

    private void Fill(BarPlan plan, double from, Dice dice)
    {
        bool isSwung = _recipe.Swing > 1.1 && _recipe.SwingLevel == SwingLevel.Eighth;
        double step = _recipe.Style == SongStyle.Jig ? 1.0 / 3 : isSwung || _recipe.Tempo > 145 ? 0.5 : 0.25;
        DrumVoice[] drums = dice.Pick<DrumVoice[]>(
            [DrumVoice.Snare, DrumVoice.HighTom, DrumVoice.MiddleTom, DrumVoice.LowTom],
            [DrumVoice.Snare, DrumVoice.Snare, DrumVoice.Snare, DrumVoice.LowTom],
            [DrumVoice.HighConga, DrumVoice.HighConga, DrumVoice.LowConga, DrumVoice.LowConga]);
        int steps = (int)Math.Round((plan.Beats - Math.Max(0, from)) / step);
        for (int i = 0; i < steps; i++)
        {
            if (dice.Chance(0.82))
            {
                Strike(drums[i * drums.Length / steps], plan.First + Math.Max(0, from) + (i * step), dice.Between(0.6, 0.95));
            }
        }
    }

    private void HandOf(BarPlan plan)
    {
        Dice dice = new Dice(_recipe.Seed).Fork("hand");
        DrumVoice hand = dice.Pick(DrumVoice.Shaker, DrumVoice.Tambourine, DrumVoice.Clap, DrumVoice.BrushTap);
        double step = _recipe.Style == SongStyle.Jig ? 1.0 / 3 : 0.5;
        for (double at = 0; at < plan.Beats - 0.01; at += hand == DrumVoice.Shaker ? step : 1)
        {
            bool isDue = hand == DrumVoice.Shaker || (Meter == 3 ? at > 0.5 : at % 2 == 1);
            if (isDue && !plan.IsSilent(at))
            {
                Strike(hand, plan.First + at, at % 1 == 0 ? 0.6 : 0.45);
            }
        }
    }

    private void Bass(LabelMusic music, BarPlan plan)
    {
        int next = 28 + ((plan.Next.Root + 8) % 12);
        foreach ((double at, double length, char sign) in music.Bass.In(plan.Beats, Meter, plan.Bar))
        {
            if (plan.IsSilent(at))
            {
                continue;
            }

            Chord chord = plan.At(at);
            int root = 28 + ((chord.Root + 8) % 12);
            int fifth = chord.Tones.Contains(6) ? 6 : 7;
            int third = chord.Tones.Length > 1 && chord.Tones[1] is 3 or 4 ? chord.Tones[1] : 7;
            int pitch = sign switch
            {
                'f' => root + fifth > 45 ? root + fifth - 12 : root + fifth,
                'F' => root + fifth - 12 < 28 ? root + fifth : root + fifth - 12,
                'o' => root + 12,
                't' => root + third,
                's' => root + 9,
                'a' => next == root ? root + fifth : next > root ? next - 1 - (plan.Bar % 2) : next + 1 + (plan.Bar % 2),
                _ => root,
            };
            double push = at == 0 ? plan.Push : 0;
            double room = plan.Stop is double stop && stop > at ? Math.Min(length, stop - at) : length;
            Add(SongPart.Bass, plan.First + at - push, (room * 0.95) + push, pitch, (at == 0 ? 0.85 : 0.74) * plan.Strength);
        }
    }

    private void Chords(SectionRecipe section, LabelMusic music, BarPlan plan, Dice dice)
    {
        int middle = _band.Chords is Voice.SteelGuitar or Voice.NylonGuitar or Voice.CleanGuitar or Voice.DrivenGuitar or Voice.MutedGuitar ? 56 : 60;
        int count = _band.Chords == Voice.DrivenGuitar ? 3 : 4;
        if (section.HasChords)
        {
            foreach ((double at, double length, char sign) in music.Chords.In(plan.Beats, Meter, plan.Bar))
            {
                if (plan.IsSilent(at))
                {
                    continue;
                }

                double force = (sign == 'X' ? 0.85 : sign == 'c' ? 0.7 : 0.74) * plan.Strength * dice.Between(0.92, 1.05);
                double room = plan.Stop is double stop && stop > at ? Math.Min(length, stop - at) : length;
                Together(SongPart.Chords, plan.At(at).Near(middle, count), plan.First + at - (at == 0 ? plan.Push : 0), sign == 'c' ? 0.2 : room * 0.93, force);
            }

            if (music.Broken is not null)
            {
                foreach ((double at, double length, char sign) in music.Broken.In(plan.Beats, Meter, plan.Bar))
                {
                    if (!plan.IsSilent(at) && char.IsDigit(sign))
                    {
                        int[] tones = plan.At(at).Near(64, 5);
                        Add(SongPart.Broken, plan.First + at, length * 1.4, tones[Math.Min(sign - '1', tones.Length - 1)], 0.6 * plan.Strength);
                    }
                }
            }
        }

        if (section.HasPad)
        {
            LongChord(plan.Chord, 0, plan.Chord.Root == plan.Late.Root ? plan.Beats : Math.Min(2, plan.Beats));
            if (plan.Chord.Root != plan.Late.Root && plan.Beats > 2)
            {
                LongChord(plan.Late, 2, plan.Beats);
            }
        }

        void LongChord(Chord chord, double from, double to)
        {
            double end = plan.Stop is double stop && stop > from ? Math.Min(to, stop) : to;
            if (!plan.IsSilent(from))
            {
                foreach (int pitch in chord.Near(63, 4))
                {
                    Add(SongPart.Pad, plan.First + from - (from == 0 ? plan.Push : 0), Math.Max(0.3, (end - from) * 0.98), pitch, 0.55 * plan.Strength);
                }
            }
        }
    }

    // strings are struck one after the other, keys almost together
    private void Together(SongPart part, int[] pitches, double at, double length, double force)
    {
        double spread = _band.Chords is Voice.SteelGuitar or Voice.NylonGuitar or Voice.CleanGuitar or Voice.Banjo ? 0.012 : 0.002;
        for (int i = 0; i < pitches.Length; i++)
        {
            Add(part, at + (i * spread), length, pitches[i], force);
        }
    }

    // Where everything stops there is one hit of all who are there.
    private void Hit(SectionRecipe section, BarPlan plan, double at)
    {
        if (section.Drums is DrumPart.Full or DrumPart.Light or DrumPart.HalfTime)
        {
            Strike(DrumVoice.Kick, plan.First + at, 0.95);
            Strike(_recipe.HasCrashes ? DrumVoice.Crash : DrumVoice.Snare, plan.First + at, 0.8);
        }

        if (section.HasBass)
        {
            Add(SongPart.Bass, plan.First + at, 0.4, 28 + ((plan.At(at).Root + 8) % 12), 0.9);
        }

        if (section.HasChords || !section.HasBass)
        {
            Together(SongPart.Chords, plan.At(at).Near(60, 4), plan.First + at, 0.4, 0.9);
        }
    }

    private void Melody(SectionRecipe section, LabelMusic music, int first, int length, double? stop, int key, Dice dice)
    {
        bool isSecond = section.Name is "solo" or "interlude" or "intro";
        SongPart part = isSecond ? SongPart.Second : SongPart.Lead;
        Voice voice = isSecond ? _band.Second : _band.Lead;
        int tonic = (voice is Voice.Flute or Voice.Fiddle or Voice.Clarinet or Voice.Harmonica ? 67 : voice is Voice.DrivenGuitar or Voice.Saxophone or Voice.Singer ? 58 : 62)
            + ((key + 5) % 12) - 5;
        double strength = StrengthOf(section.Name);
        bool mayLeadIn = first - _recipe.CountInBeats >= 2 && !_recipe.Sections.Any(s => s.StopBeats > 0);
        foreach (MelodyNote note in music.Melody)
        {
            double at = (note.Bar * Meter) + note.At;
            if (at >= length - 0.01 || (stop is double s && at > s - 0.01) || (at < 0 && !mayLeadIn))
            {
                continue;
            }

            double room = Math.Min(note.Length, (stop ?? length) - at);
            int pitch = tonic + Chord.Scale(note.Step, _recipe.IsMinor);

            // each time a little different: a note left out, a grace before it
            if (dice.Chance(0.04))
            {
                continue;
            }

            Add(part, first + at, Math.Max(0.15, room), pitch, (note.At % 1 == 0 ? 0.78 : 0.7) * strength);
        }
    }

    private void Under(SectionRecipe section, LabelMusic music, int first, int length, double? stop, int key)
    {
        int tonic = 50 + ((key + 5) % 12);
        foreach (MelodyNote note in music.Under)
        {
            double at = (note.Bar * Meter) + note.At;
            double end = stop ?? length;
            if (at < end - 0.01)
            {
                Add(SongPart.Second, first + at, Math.Max(0.15, Math.Min(note.Length, end - at)), tonic + Chord.Scale(note.Step, _recipe.IsMinor), 0.66 * StrengthOf(section.Name));
            }
        }
    }

    private void FinalChord()
    {
        SectionRecipe last = _recipe.Sections[^1];
        Chord chord = Chord.On(0, _recipe.Key + last.Transpose, _recipe.IsMinor, 0);
        double at = _grid.Beats.Count - 1;
        Together(SongPart.Chords, chord.Near(60, 4), at, 3, 0.85);
        Add(SongPart.Bass, at, 3, 28 + ((chord.Root + 8) % 12), 0.85);
        foreach (int pitch in chord.Near(64, 3))
        {
            Add(SongPart.Pad, at, 3, pitch, 0.5);
        }

        if (_recipe.Sections.Any(s => s.Drums is DrumPart.Full or DrumPart.Light))
        {
            Strike(DrumVoice.Kick, at, 0.9);
            Strike(DrumVoice.Crash, at, 0.8);
        }
    }

    // From the written place to the played moment: every player has a habit, every note its own slip.
    private ValueList<SongNote> Played()
    {
        Dice dice = new Dice(_recipe.Seed).Fork("hands");
        double deviation = _recipe.Looseness / 1000;
        SongPart[] parts = Enum.GetValues<SongPart>();
        double[] habits = [.. parts.Select(p => p == SongPart.Drums || deviation == 0 ? 0 : dice.Between(-0.004, 0.009))];
        List<SongNote> notes = new(_written.Count);
        foreach ((SongPart part, double at, double length, int pitch, double force) in _written)
        {
            double slip = habits[(int)part] + (deviation * dice.Bell() * (part == SongPart.Drums ? 0.6 : 1));
            double start = Math.Max(0, _grid.TimeOf(at) + slip);
            double end = Math.Max(start + 0.03, _grid.TimeOf(at + length) + slip);
            double played = deviation == 0 ? force : Math.Clamp(force + (0.04 * dice.Bell()), 0.08, 1);
            notes.Add(new(part, Math.Round(start, 5), Math.Round(end - start, 5), pitch, Math.Round(played, 4)));
        }

        return [.. notes.OrderBy(n => n.Start).ThenBy(n => n.Part).ThenBy(n => n.Pitch)];
    }

    // A bar as all players see it. Stop: beats from the bar's start to the last hit before silence, null for none.
    private sealed record BarPlan(int First, int Beats, int Bar, double? Stop, Chord Chord, Chord Late, Chord Next, double Push, double Strength)
    {
        public Chord At(double at) => at < 2 ? Chord : Late;

        public bool IsSilent(double at) => Stop is double stop && at > stop - 0.01;
    }
}
