using Scuff.Analysis;
using Scuff.Dances;
using Scuff.Prose;
using Scuff.Sheets;
using Scuff.Sheets.Drawings;
using Scuff.Sheets.Languages;
using Scuff.Stance;
using Scuff.Steps;
using Tests.Golden;
using Tests.House;

namespace Tests.Sheets;

public sealed class SheetLanguageTests
{
    private static readonly char[] Separators = [' ', '\u00a0', ',', '(', ')', ':', '.', ';', '„', '“', '”', '«', '»', '‘', '’', '\''];

    public static TheoryData<string> Codes => [.. SheetLanguage.Codes];

    public static TheoryData<string> Others => [.. SheetLanguage.Codes.Where(c => c != "en")];

    [Fact]
    public void The_languages_are_those_that_have_a_file()
        => Assert.Equal(["da", "de", "en", "es", "fr", "it", "nl", "sv"], SheetLanguage.Codes);

    [Theory]
    [MemberData(nameof(Codes))]
    public void A_language_says_everything(string code)
    {
        SheetLanguage language = SheetLanguage.Find(code)!;
        List<string> needed =
        [
            .. Enum.GetNames<ActionKind>().Select(k => "verb." + SheetLanguage.KeyOf(k)),
            .. Enum.GetNames<Direction>().Where(d => d != nameof(Direction.Unstated)).Select(d => "place." + SheetLanguage.KeyOf(d)),
            .. Enum.GetNames<Level>().Select(l => "level." + SheetLanguage.KeyOf(l)),
            "act.jump-crossed",
            "act.jump.across.alone",
            .. Enum.GetNames<StepSize>().Where(s => s != nameof(StepSize.Usual)).Select(s => "size." + SheetLanguage.KeyOf(s)),
            .. Enum.GetNames<Foot>().SelectMany(f => new[] { "foot.", "side.", "way.", "turn." }.Select(k => k + SheetLanguage.KeyOf(f))),
            .. SheetLanguage.KeysOf(typeof(SheetLabels), "label"),
            .. SheetLanguage.KeysOf(typeof(DrawingLabels), "drawing"),
            .. SheetLanguage.KeysOf(typeof(CautionLabels), "caution"),
            .. SheetLanguage.KeysOf(typeof(ChangeLabels), "change"),
        ];

        Assert.Empty(language.Gaps);
        Assert.DoesNotContain(needed, k => language.FindOwn(k) is null or "");
    }

    // The sheet and the tidy text must never tell one move in two ways.
    [Fact]
    public void English_tells_every_action_as_the_canonical_words_do()
    {
        MovePhrasing english = SheetLanguage.English.Moves;
        int told = 0;
        foreach (ActionKind kind in Enum.GetValues<ActionKind>())
        {
            foreach (ActingFoot foot in Enum.GetValues<ActingFoot>())
            {
                foreach (WeightEffect effect in Enum.GetValues<WeightEffect>())
                {
                    foreach (Direction direction in Enum.GetValues<Direction>())
                    {
                        Same(new StepAction(kind, foot, direction, Contact.Flat, effect));
                    }

                    foreach (StepSize size in Enum.GetValues<StepSize>())
                    {
                        foreach (int eighths in (ReadOnlySpan<int>)[-16, -10, -8, -3, -1, 2, 4, 6, 8, 12])
                        {
                            Same(new StepAction(kind, foot, Direction.CrossFront, Contact.Flat, effect, Turn.FromEighths(eighths), size));
                        }
                    }
                }
            }
        }

        Assert.True(told > 50_000);

        void Same(StepAction action)
        {
            told++;
            if (Phrasing.Describe(action) != english.Describe(action))
            {
                Assert.Equal(Phrasing.Describe(action), english.Describe(action));
            }
        }
    }

    [Fact]
    public void English_tells_every_move_of_the_club_as_the_canonical_words_do()
    {
        int told = 0;
        foreach (string file in DanceFiles())
        {
            foreach (WrittenMove move in Analyse(file).Dance.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Moves))
            {
                told++;
                Assert.Equal(Phrasing.Describe(move), SheetLanguage.English.Moves.Describe(move));
            }
        }

        Assert.True(told > 500);
    }

    // To a reader abroad the two must not be the same jump: the legs come apart in one way only.
    [Theory]
    [MemberData(nameof(Codes))]
    public void A_jump_onto_crossed_feet_tells_which_is_in_front(string code)
    {
        SheetLanguage language = SheetLanguage.Find(code)!;
        StepAction right = new(ActionKind.Jump, ActingFoot.Both, Direction.CrossFront, Contact.Ball, WeightEffect.Shares);
        string front = language.Words("foot.right");
        string back = language.Words("foot.left");

        string told = language.Moves.Describe(right);
        string mirrored = language.Moves.Describe(right.Mirrored());
        string open = language.Moves.Describe(right with { Direction = Direction.Across });

        Assert.True(told.IndexOf(front, StringComparison.Ordinal) is >= 0 and int at && at < told.LastIndexOf(back, StringComparison.Ordinal), told);
        Assert.NotEqual(told, mirrored);
        Assert.Equal(Words(told).Order(), Words(mirrored).Order());
        Assert.DoesNotContain(front, Words(open));
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void A_whole_sheet_looks_as_it_was_last_read(string code)
        => GoldenFile.Matches($"tin-lantern.{code}.txt", SheetSamples.Draw(In(code, SheetSamples.Lantern), "text"));

    [Theory]
    [MemberData(nameof(Codes))]
    public void Every_dance_of_the_club_can_be_told(string code)
    {
        foreach (string file in DanceFiles())
        {
            string sheet = SheetSamples.Draw(SheetBuilder.Build(Analyse(file), new SheetChoices { Language = code }), "text");

            Assert.DoesNotContain("{", sheet, StringComparison.Ordinal);
        }
    }

    // Each word of a line comes from the language's file or is part of a figure's name; words that could not be read stay hers.
    [Theory]
    [MemberData(nameof(Others))]
    public void No_English_word_stands_in_a_line_unless_dancers_of_the_language_keep_it(string code)
    {
        SheetLanguage language = SheetLanguage.Find(code)!;
        HashSet<string> known = new(
            language.Entries.SelectMany(e => Words(e.Text)).Concat(StepCatalogue.Default.Definitions.SelectMany(s => Words(s.Name))),
            StringComparer.OrdinalIgnoreCase);
        foreach (string file in DanceFiles())
        {
            DanceAnalysis analysis = Analyse(file);
            foreach (WrittenMove move in analysis.Dance.Sections.SelectMany(s => s.Lines).SelectMany(l => l.Moves).Where(m => m.Steps.All(s => s.Action.Kind != ActionKind.Unknown)))
            {
                HashSet<string> hers = new(
                    analysis.Dance.OwnMoves.SelectMany(m => Words(m.Name)).Concat(move.Steps.SelectMany(s => Words(s.Gesture))),
                    StringComparer.OrdinalIgnoreCase);
                string told = language.Moves.Describe(move);

                Assert.DoesNotContain(Words(told), w => !known.Contains(w) && !hers.Contains(w) && w.Any(char.IsLetter));
            }
        }
    }

    // What a figure is made of is told in the language even where its name is English.
    [Theory]
    [MemberData(nameof(Others))]
    public void An_action_told_in_English_is_marked_as_kept(string code)
    {
        SheetLanguage language = SheetLanguage.Find(code)!;
        HashSet<string> verbs = new(SheetLanguage.English.Entries.Where(e => e.Key.StartsWith("verb.", StringComparison.Ordinal)).SelectMany(e => Words(e.Text)), StringComparer.OrdinalIgnoreCase);
        foreach (LanguageEntry entry in language.Entries.Where(e => !e.IsEnglishKept && e.Key.Split('.')[0] is "verb" or "act" or "walk" or "run"))
        {
            // "hop" is Danish for a jump
            Assert.DoesNotContain(Words(entry.Text), w => verbs.Contains(w) && (code, w) != ("da", "hop"));
        }

        foreach (LanguageEntry entry in language.Entries.Where(e => !e.IsEnglishKept && e.Key.Split('.')[0] is "label" or "start" or "break" or "do" or "heading" or "key" or "progress"))
        {
            // "section" is French as well
            string[] english = [.. Words(SheetLanguage.English.FindOwn(entry.Key)!.ToLowerInvariant()).Except(["section"])];
            Assert.True(english.Length == 0 || !english.SequenceEqual(Words(entry.Text.ToLowerInvariant()).Except(["section"])), entry.Key);
        }
    }

    [Theory]
    [MemberData(nameof(Others))]
    public void Every_entry_says_how_sure_it_is(string code)
    {
        SheetLanguage language = SheetLanguage.Find(code)!;

        Assert.NotEmpty(language.Sources);
        Assert.All(language.Sources, s => Assert.True(Uri.TryCreate(s.Address, UriKind.Absolute, out _), s.Address));
        Assert.Contains(language.Entries, e => e.Confidence == Confidence.FromMemory);
        Assert.All(language.Entries.Where(e => e.Source.Length > 0), e => Assert.Equal(Confidence.Sourced, e.Confidence));
    }

    // No Italian glossary of line dance was found: only words of dancing at large are sourced.
    [Fact]
    public void Most_of_the_Italian_is_from_memory()
    {
        SheetLanguage italian = SheetLanguage.Find("it")!;

        Assert.True(italian.Entries.Count(e => e.Confidence == Confidence.Sourced) < 20);
        Assert.True(italian.Entries.Count(e => e.Confidence == Confidence.FromMemory) * 2 > italian.Entries.Count);
    }

    [Theory]
    [InlineData("de", "RF über LF kreuzen, LF Schritt nach links mit ¼ Drehung links herum")]
    [InlineData("fr", "croiser PD devant PG, pas PG à gauche avec 1/4 de tour à gauche")]
    [InlineData("es", "cruzar derecho por delante del izquierdo, paso izquierdo a la izquierda con ¼ de vuelta a la izquierda")]
    [InlineData("it", "incrociare dx davanti al sx, passo sx a sinistra con 1/4 di giro a sinistra")]
    [InlineData("nl", "RV kruis over LV, LV stap opzij met ¼ draai linksom")]
    [InlineData("da", "kryds H foran V, trin V til siden med ¼ drejning til venstre")]
    [InlineData("sv", "korsa H framför V, steg V åt sidan med ¼ vändning åt vänster")]
    [InlineData("en", "cross R over L, step L to side turning 1/4 left")]
    public void Words_stand_in_the_order_of_the_language(string code, string told)
        => Assert.Equal(told, LineIn(code, "1-2  cross R over L, step L to side turning 1/4 left"));

    [Theory]
    [InlineData("de", "Kick Ball Change RF, Shuffle LF vor")]
    [InlineData("fr", "kick ball change PD, shuffle PG avant")]
    [InlineData("nl", "kick ball change RV, shuffle LV voor")]
    public void A_figure_keeps_its_English_name_with_the_foot_of_the_language(string code, string told)
        => Assert.Equal(told, LineIn(code, "1&2 3&4 kick ball change R, shuffle L forward"));

    [Theory]
    [InlineData("de", "großer")]
    [InlineData("fr", "grand")]
    [InlineData("es", "gran")]
    [InlineData("sv", "stort")]
    public void The_size_of_a_step_is_told(string code, string size)
        => Assert.Contains(size + " ", LineIn(code, "1-2  big step R to side, hold"), StringComparison.Ordinal);

    [Theory]
    [InlineData("de", "4 Counts, 1 Wand.")]
    [InlineData("fr", "4 temps, 1 mur.")]
    [InlineData("es", "4 tiempos, 1 pared.")]
    [InlineData("it", "4 tempi, 1 parete.")]
    [InlineData("nl", "4 tellen, 1 muur.")]
    [InlineData("da", "4 counts, 1 væg.")]
    [InlineData("sv", "4 taktslag, 1 vägg.")]
    public void One_is_told_from_many(string code, string end)
        => Assert.EndsWith(end, In(code, "Short\n\nwalls: 1\n\nsection 1\n1-4  step R to side, touch L together, step L to side, touch R together\n").Facts[0], StringComparison.Ordinal);

    [Theory]
    [InlineData("de", "17,1")]
    [InlineData("en", "17.1")]
    public void Numbers_have_the_point_or_comma_of_the_language(string code, string number)
        => Assert.Contains(number, In(code, SheetSamples.Lantern).Tracks[0].Facts, StringComparison.Ordinal);

    [Fact]
    public void Her_own_words_stay_as_she_wrote_them()
    {
        SheetModel sheet = In("de", SheetSamples.Lantern);

        Assert.Equal("Tin Lantern", sheet.Title);
        Assert.Contains("Harbour Lights Out", sheet.Tracks[0].Name, StringComparison.Ordinal);
        Assert.Equal("small steps; let the hip settle on the closing foot", sheet.Parts[0].Sections[0].Lines[3].Notes[0].Words);
        Assert.Equal("Section 2: rock, quarter, behind side cross", sheet.Parts[0].Sections[1].Heading);
    }

    [Fact]
    public void A_turn_to_the_front_is_told_without_an_amount()
    {
        string text = SheetSamples.Lantern.Replace("ending: wall 9, after 8 counts: step R forward, pivot 1/2 left, stomp R", "ending: last wall, after 8 counts: step R forward, pivot to the front, stomp R", StringComparison.Ordinal);

        Assert.Equal("step R forward, pivot to the front, stomp R", In("en", text).Ending!.What);
        Assert.Equal("pas PD avant, pivot jusqu’à 12:00, stomp PD à côté du PG", In("fr", text).Ending!.What);
    }

    [Theory]
    [InlineData("key only\n", "line 1: it is not of the form: key, confidence, words")]
    [InlineData("\nlabel.by sure von\n", "line 2: sure is no confidence")]
    [InlineData("label.by memory von\nlabel.by memory von\n", "line 2: the key label.by stands twice")]
    [InlineData("label.by sourced:nowhere von\n", "line 1: the source nowhere is not named above")]
    [InlineData("label.buy memory von\n", "there is no key label.buy")]
    [InlineData("verb.jig memory Jig\n", "there is no key verb.jig")]
    [InlineData("act.step.sideways memory {foot}\n", "there is no key act.step.sideways")]
    [InlineData("figure.no_such memory {foot}\n", "there is no key figure.no_such")]
    [InlineData("break.wall memory Wand {nummer}\n", "break.wall has no {nummer}; it may have {number}")]
    [InlineData("break.wall memory Wand\n", "break.wall leaves out {number}")]
    [InlineData("break.wall memory Wand {number\n", "line 1: its braces do not pair")]
    [InlineData("figures-told memory clap_thrice\n", "figures-told names clap_thrice")]
    [InlineData("label.by\tmemory\tvon\n", "line 1: a tab stands in it")]
    public void A_faulty_file_is_refused_with_its_reason(string text, string reason)
    {
        InvalidDataException refused = Assert.Throws<InvalidDataException>(() => SheetLanguage.Read("xx", new StringReader(text)));

        Assert.StartsWith("xx.sheet", refused.Message, StringComparison.Ordinal);
        Assert.Contains(reason, refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_language_that_lacks_an_entry_has_the_English_words_there_and_says_so()
    {
        SheetLanguage started = SheetLanguage.Read("xx", new StringReader("label.by memory vun\n"));

        Assert.Equal("vun", started.Labels.By);
        Assert.Equal("Music", started.Labels.Music);
        Assert.Contains("label.music", started.Gaps);
        Assert.DoesNotContain("label.by", started.Gaps);
        Assert.Equal("step R forward", started.Moves.Describe(new StepAction(ActionKind.Step, ActingFoot.Right, Direction.Forward, Contact.Flat, WeightEffect.Takes)));
    }

    [Fact]
    public void A_language_that_is_none_is_refused()
        => Assert.Throws<ArgumentException>(() => SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read("A")), new SheetChoices { Language = "xx" }));

    private static SheetModel In(string code, string text)
        => SheetBuilder.Build(DanceAnalysis.Of(DanceReader.Read(text)), new SheetChoices { Language = code });

    private static string LineIn(string code, string line) => In(code, "Line\n\nsection 1\n" + line + "\n").Parts[0].Sections[0].Lines[0].Words;

    private static DanceAnalysis Analyse(string file) => DanceAnalysis.Of(DanceReader.Read(File.ReadAllText(file)));

    private static IEnumerable<string> DanceFiles() => Directory.EnumerateFiles(Path.Combine(Repository.Root, "demo"), "*.dance", SearchOption.AllDirectories);

    private static IEnumerable<string> Words(string text)
    {
        // what stands in braces is no word
        string plain = System.Text.RegularExpressions.Regex.Replace(text, @"\{[^}]*\}", " ");
        return plain.Split(Separators, StringSplitOptions.RemoveEmptyEntries);
    }
}
