using Scuff.Stance;
using Scuff.Steps;

namespace Scuff.Prose.Words;

/// <summary>
/// Every phrase the reader knows: the words of the language file and the names of the catalogue, in one tree of words.
/// Immutable once made, except for the moves a dance defines itself, which make a lexicon of their own.
/// </summary>
internal sealed class Lexicon
{
    private static readonly Lazy<Lexicon> LazyDefault = new(() => new Lexicon(StepCatalogue.Default));

    private readonly Node _root = new();
    private readonly Dictionary<string, byte> _words = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string[]> _aliases = new(StringComparer.Ordinal);
    private readonly Dictionary<string, string> _slips = new(StringComparer.Ordinal);
    private readonly HashSet<string> _ordinary = new(StringComparer.Ordinal);
    private readonly HashSet<string> _beforeHour = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _afterHour = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string> _arrive = new(StringComparer.Ordinal);
    private readonly HashSet<string> _arriveAlong = new(StringComparer.Ordinal);
    private readonly Lexicon? _base;

    // what letters stand for the feet in this text; null without a key
    private Dictionary<string, string>? _feet;

    public Lexicon(StepCatalogue catalogue)
    {
        Catalogue = catalogue;
        foreach ((string kind, string value, string forms) in LanguageFile.Entries("english.words"))
        {
            if (kind == "alias")
            {
                AddAlias(value, forms);
                continue;
            }

            if (kind == "slip")
            {
                foreach (string form in forms.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
                {
                    _slips[form] = value;
                }

                continue;
            }

            if (kind == "ordinary")
            {
                _ordinary.UnionWith(forms.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
                continue;
            }

            if (kind == "hour")
            {
                (value switch { "before" => _beforeHour, "after" => _afterHour, "arrive" => _arrive, _ => _arriveAlong }).UnionWith(
                    forms.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries));
                continue;
            }

            AddEntry(kind, value, forms);
        }

        foreach (StepDefinition definition in catalogue.Definitions)
        {
            AddDefinition(definition);
        }

        Verbs = VerbTable.From(catalogue);
    }

    private Lexicon(Lexicon original, IEnumerable<StepDefinition> own)
    {
        _base = original;
        Catalogue = original.Catalogue;
        Verbs = original.Verbs;
        foreach (StepDefinition definition in own)
        {
            AddDefinition(definition);
        }
    }

    public static Lexicon Default => LazyDefault.Value;

    public StepCatalogue Catalogue { get; }

    public VerbTable Verbs { get; }

    /// <summary>The same words and some moves of the dance's own.</summary>
    public Lexicon With(IEnumerable<StepDefinition> own) => new(this, own);

    /// <summary>The same words, and the letters that stand for the feet in one text ("JL is the right leg").</summary>
    public Lexicon WithFeet(Dictionary<string, string> letters) => new(this, []) { _feet = letters };

    /// <summary>The foot or the side that letters stand for where the text tells it in a key, or null.</summary>
    public string? FootOf(string word) => _feet?.GetValueOrDefault(word) ?? _base?.FootOf(word);

    /// <summary>The longest phrase that starts at a token; hyphens between words are passed over.</summary>
    /// <param name="tokens">The line's tokens.</param>
    /// <param name="at">Where to start.</param>
    /// <param name="plain">Leave out names that may as well be detail ("back touch").</param>
    /// <returns>Meaning and number of tokens used, or null.</returns>
    public (Meaning Meaning, int Tokens)? Longest(List<WordToken> tokens, int at, bool plain = false)
    {
        (Meaning Meaning, int Tokens)? own = LongestHere(tokens, at, plain);
        if (_base is not null)
        {
            (Meaning Meaning, int Tokens)? other = _base.Longest(tokens, at, plain);
            return own is null || (other is not null && other.Value.Tokens > own.Value.Tokens) ? other : own;
        }

        return own;
    }

    /// <summary>The words that a short form stands for, or null.</summary>
    public IReadOnlyList<string>? StandsFor(string word) => _aliases.GetValueOrDefault(word) ?? _base?.StandsFor(word);

    /// <summary>
    /// The word of the dance that a word of every day may have been typed for, or that a telephone has put in its place ("shuttle" for shuffle, "tow" for toe);
    /// it is meant only where it stands as the other does. Null for other words.
    /// </summary>
    public string? SlipFor(string word) => _slips.GetValueOrDefault(word) ?? _base?.SlipFor(word);

    /// <summary>Whether a word beside a number makes it an hour of the clock ("kl 9", "9 uhr").</summary>
    /// <param name="word">The word.</param>
    /// <param name="before">Whether it stands before the number.</param>
    public bool TellsHour(ReadOnlySpan<char> word, bool before)
        => (before ? _beforeHour : _afterHour).GetAlternateLookup<ReadOnlySpan<char>>().Contains(word) || (_base?.TellsHour(word, before) ?? false);

    /// <summary>Whether a word says that one comes to stand at a wall ("we finish at 6:00"), or may go along with one that does.</summary>
    /// <param name="word">The word, in small letters.</param>
    /// <param name="along">Whether words that only go along are meant too.</param>
    public bool TellsArrival(string word, bool along)
        => _arrive.Contains(word) || (along && _arriveAlong.Contains(word)) || (_base?.TellsArrival(word, along) ?? false);

    /// <summary>The meaning of a single word, or null.</summary>
    public Meaning? Word(string word) => _root.Next(word)?.Meaning ?? _base?.Word(word);

    /// <summary>
    /// A known word that differs from this one by one slip of the fingers (a letter missing, doubled, wrong or two exchanged),
    /// when it is the only one; null otherwise. Short words are never guessed at.
    /// </summary>
    public string? Corrected(string word)
    {
        if (word.Length < 3 || IsOrdinary(word))
        {
            return null;
        }

        // two neighbours exchanged is the commonest slip, and the only one believed of a short word
        string? exchanged = null;
        for (int i = 0; i + 1 < word.Length; i++)
        {
            if (word[i] == word[i + 1])
            {
                continue;
            }

            string candidate = word[..i] + word[i + 1] + word[i] + word[(i + 2)..];
            if (MayBeMeant(candidate))
            {
                if (exchanged is not null)
                {
                    return null;
                }

                exchanged = candidate;
            }
        }

        if (exchanged is not null || word.Length < 4)
        {
            return exchanged;
        }

        // a letter doubled: "stepp", "heell"
        for (int i = 0; i + 1 < word.Length; i++)
        {
            if (word[i] == word[i + 1] && word[..i] + word[(i + 1)..] is string single && MayBeMeant(single))
            {
                return single;
            }
        }

        string? found = null;
        bool isClear = true;
        foreach (string slip in Slips.Of(word))
        {
            // a short form is meant no more than the word it stands for
            string candidate = StandsFor(slip) is [string whole] ? whole : slip;
            if (!MayBeMeant(candidate) || string.Equals(candidate, found, StringComparison.Ordinal))
            {
                continue;
            }

            // a word that means something by itself is likelier meant than one that only stands in phrases
            bool weaker = found is not null && Word(candidate) is null && Word(found) is not null;
            bool stronger = found is not null && Word(candidate) is not null && Word(found) is null;
            if (found is null || stronger)
            {
                found = candidate;
                isClear = true;
            }
            else if (!weaker && !SameMeaning(candidate, found))
            {
                isClear = false;
            }
        }

        return isClear ? found : null;
    }

    // "bright" is a word, and no slip for "right"
    private bool IsOrdinary(string word) => _ordinary.Contains(word) || (_base?.IsOrdinary(word) ?? false);

    // numbers are written with care: "give" is no slip for "five"
    private bool MayBeMeant(string word) => KnowsWord(word) && Word(word) is not { Kind: TermKind.Number };

    /// <summary>Whether the word stands in any known phrase.</summary>
    public bool KnowsWord(string word) => word.Length >= 3 && (_words.ContainsKey(word) || (_base?.KnowsWord(word) ?? false));

    private bool SameMeaning(string a, string b)
    {
        Meaning? first = Word(a);
        Meaning? second = Word(b);
        return first is not null && second is not null && (first with { IsIng = false }) == (second with { IsIng = false });
    }

    private (Meaning Meaning, int Tokens)? LongestHere(List<WordToken> tokens, int at, bool plain)
    {
        Node node = _root;
        bool footInside = false;
        int inside = -1;
        Meaning? prefix = null;
        (Meaning, int)? best = null;
        for (int i = at; i < tokens.Count; i++)
        {
            WordToken token = tokens[i];
            if (token.Kind == WordTokenKind.Mark)
            {
                bool glued = i > at && token.Text is "-" or "/" or "'" && !token.SpaceBefore && i + 1 < tokens.Count && !tokens[i + 1].SpaceBefore;
                bool stop = i > at && token.Text is "." && !token.SpaceBefore;
                if (glued)
                {
                    continue;
                }

                if (!stop && token.Text is not ("&" or "+"))
                {
                    break;
                }

                if (stop)
                {
                    break;
                }
            }

            Node? next = node.Next(token.Text);
            if (next is null)
            {
                // "lower the heel", "on the ball of your left foot"
                if (i > at && token.Text is "the" or "your" or "a" or "an" or "my" or "its")
                {
                    continue;
                }

                // "kick R ball change": one foot inside a name
                if (i > at && !footInside && IsFoot(token.Text) && i + 1 < tokens.Count && node.Next(tokens[i + 1].Text) is not null)
                {
                    footInside = true;
                    inside = i;
                    prefix = node.Meaning;
                    continue;
                }

                break;
            }

            node = next;
            if (footInside && (prefix is not null || tokens[inside - 1].Text is "recover" or "rec" or "replace" or "return")
                && PartsMoves(tokens, at, inside, i))
            {
                continue;
            }

            if (node.Meaning is not null && !(footInside
                && (node.Meaning.Kind != TermKind.Move || (node.Meaning.IsComposable && tokens[inside + 1].Text != "ball")
                || (node.Meaning.Verb is null && !node.Meaning.Figures.Any(f => f.Rows.Count > 1))))
                && !(plain && node.Meaning.IsComposable && node.Meaning.Verb is null))
            {
                best = (node.Meaning, i - at + 1);
            }
        }

        return best;
    }

    /// <summary>"Recover left back left", "left back right sailor": the foot inside begins a move of its own, and this is no name.</summary>
    private bool PartsMoves(List<WordToken> tokens, int at, int foot, int last)
    {
        bool oneWord = last - foot == 1 && last + 1 < tokens.Count;
        bool footFollows = oneWord && IsFoot(tokens[last + 1].Text);
        bool wayFollows = oneWord && Word(tokens[last].Text)?.Verb is not null && Word(tokens[last + 1].Text)?.Kind is TermKind.Dir;
        bool turnFollows = oneWord && (tokens[last + 1].Kind == WordTokenKind.Fraction || Word(tokens[last + 1].Text)?.Kind is TermKind.Amount);
        bool nameFollows = oneWord && tokens[last + 1].Kind == WordTokenKind.Word
            && LongestHere(tokens, last, false) is ({ Kind: TermKind.Move, Figures: { Count: > 0 } named }, > 1) && named.All(f => f.Rows.Count > 1);
        bool ownFoot = at > 0 && IsFoot(tokens[at - 1].Text);
        bool placeFollows = last + 2 < tokens.Count && IsFoot(tokens[last + 1].Text) && Word(tokens[last + 2].Text)?.Kind is TermKind.Dir
            && Word(tokens[last].Text)?.Verb is not null;
        return placeFollows || footFollows || wayFollows || turnFollows || nameFollows || ownFoot;
    }

    private static bool IsFoot(string word) => word is "r" or "l" or "right" or "left" or "rf" or "lf" or "rt" or "lt";

    private void AddAlias(string words, string forms)
    {
        foreach (string form in forms.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (!form.Contains(' ', StringComparison.Ordinal) && !form.Contains('/', StringComparison.Ordinal))
            {
                _aliases[form] = words.Split(' ');
            }
        }
    }

    private void AddEntry(string kind, string value, string forms)
    {
        foreach (string raw in forms.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            string form = raw.ToLowerInvariant();
            switch (kind)
            {
                case "verb":
                    bool up = value == "stomp-up";
                    bool walking = value is "walk" or "run";
                    ActionKind verb = up ? ActionKind.Stomp : walking ? ActionKind.Step : ActionTraits.FromWord(value)!.Kind;
                    Meaning move = new(TermKind.Move) { Verb = verb, VerbKeepsWeight = up, Special = value };
                    foreach ((string inflected, bool ing) in Inflections.OfPhrase(form))
                    {
                        Add(inflected, move with { IsIng = ing });
                    }

                    break;
                case "turn":
                    Add(form, new Meaning(TermKind.Turn) { IsIng = form.EndsWith("ing", StringComparison.Ordinal) });
                    foreach ((string inflected, bool ing) in Inflections.OfPhrase(form))
                    {
                        Add(inflected, new Meaning(TermKind.Turn) { IsIng = ing });
                    }

                    break;
                case "foot":
                    Add(form, new Meaning(TermKind.Foot) { Side = SideOf(value) });
                    break;
                case "lead":
                    Add(form, new Meaning(TermKind.Lead) { Side = SideOf(value) });
                    break;
                case "side":
                    Add(form, new Meaning(TermKind.Side) { Side = SideOf(value) });
                    break;
                case "feet":
                    Add(form, new Meaning(value == "both" ? TermKind.BothFeet : TermKind.Filler));
                    break;
                case "part":
                    Add(form, new Meaning(TermKind.Part) { Part = value });
                    break;
                case "dir":
                    Add(form, DirectionMeaning(value));
                    break;
                case "amount":
                    Add(form, new Meaning(TermKind.Amount) { Value = int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) });
                    break;
                case "size":
                    Add(form, new Meaning(TermKind.Size) { Value = value == "small" ? -1 : 1 });
                    break;
                case "join":
                    Add(form, new Meaning(value switch
                    {
                        "amp" => TermKind.Amp,
                        "then" => TermKind.Then,
                        "with" or "aside" => TermKind.With,
                        _ => TermKind.Join
                    })
                    { Special = value == "aside" ? value : "" });
                    break;
                case "weight":
                    Add(form, new Meaning(value switch
                    {
                        "on" => TermKind.WeightOn,
                        "none" => TermKind.WeightNone,
                        "both" =>
                        TermKind.WeightBoth,
                        _ => TermKind.WeightTakes
                    }));
                    break;
                case "times":
                    Add(form, new Meaning(TermKind.Times) { Value = int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) });
                    break;
                case "repeat":
                    Add(form, new Meaning(value == "mirrored" ? TermKind.RepeatMirrored : TermKind.Repeat));
                    break;
                case "wall":
                    Add(form, new Meaning(TermKind.Clock) { Value = int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) });
                    break;
                case "number":
                    Add(form, new Meaning(TermKind.Number) { Value = int.Parse(value, System.Globalization.CultureInfo.InvariantCulture) });
                    break;
                case "style":
                    Add(form, new Meaning(TermKind.Style));
                    break;
                case "filler":
                    Add(form, new Meaning(TermKind.Filler) { Special = value == "filler" ? "" : value });
                    break;
                default:
                    throw new InvalidDataException($"The word file has an unknown kind of entry: {kind}.");
            }
        }
    }

    private static Foot SideOf(string value) => value == "right" ? Foot.Right : Foot.Left;

    private static Meaning DirectionMeaning(string value)
    {
        (string word, Foot? side) = value.EndsWith("-right", StringComparison.Ordinal) ? (value[..^6], Foot.Right)
            : value.EndsWith("-left", StringComparison.Ordinal) ? (value[..^5], (Foot?)Foot.Left)
            : (value, null);
        Direction direction = word switch
        {
            "forward" => Direction.Forward,
            "back" => Direction.Back,
            "side" => Direction.Side,
            "together" => Direction.Together,
            "in-place" => Direction.InPlace,
            "cross-front" => Direction.CrossFront,
            "cross-behind" => Direction.CrossBehind,
            "lock" or "lock-behind" => Direction.LockBehind,
            "lock-front" => Direction.LockFront,
            "diag" => Direction.DiagonalForward,
            "out" => Direction.Out,
            "in" => Direction.In,
            "home" => Direction.Home,
            "centre" => Direction.Centre,
            "up" => Direction.Up,
            "down" => Direction.Down,
            "clockwise" => Direction.Clockwise,
            "anticlockwise" => Direction.Anticlockwise,
            "shoulder" => Direction.Unstated,
            _ => throw new InvalidDataException($"The word file has an unknown direction: {value}."),
        };
        string special = word is "lock" or "diag" or "shoulder" ? word : "";
        return new Meaning(TermKind.Dir) { Direction = direction, Side = side, Special = special };
    }

    private void AddDefinition(StepDefinition definition)
    {
        HashSet<string> names = new(StringComparer.Ordinal);
        foreach (string name in definition.Aliases.Prepend(definition.Name))
        {
            string form = NormaliseName(name);
            if (form.Length > 0)
            {
                names.Add(form);
            }
        }

        foreach (string name in names)
        {
            bool amount = name.Contains("quarter", StringComparison.Ordinal) || name.Contains("half", StringComparison.Ordinal)
                || name.Contains("full", StringComparison.Ordinal) || name.Contains("1/", StringComparison.Ordinal)
                    || name.Contains("3/4", StringComparison.Ordinal);
            bool composable = name.Contains(' ', StringComparison.Ordinal)
                && name.Split(' ').All(w => Word(w) is { Kind: not (TermKind.Style or TermKind.Filler) } or { Kind: TermKind.Style }
                && Word(w) is not { Kind: TermKind.Move, Verb: null });
            Meaning meaning = new(TermKind.Move) { Figures = [definition], NamesAmount = amount, IsComposable = composable };
            Add(name, meaning);
            foreach (string other in Inflections.OfName(name))
            {
                if (!names.Contains(other))
                {
                    Add(other, meaning);
                }
            }
        }
    }

    private static string NormaliseName(string name)
    {
        System.Text.StringBuilder words = new(name.Length);
        foreach (char c in name.ToLowerInvariant())
        {
            words.Append(char.IsLetterOrDigit(c) || c is '/' or '&' ? c : ' ');
        }

        return string.Join(' ', words.ToString().Split(' ', StringSplitOptions.RemoveEmptyEntries));
    }

    private void Add(string form, Meaning meaning)
    {
        Node node = _root;
        foreach (WordToken token in WordScanner.Scan(form, 0, form.Length))
        {
            if (token.Kind == WordTokenKind.Mark && token.Text is "-" or "/" or "'" or ".")
            {
                continue;
            }

            if (token.Kind == WordTokenKind.Word)
            {
                _words.TryAdd(token.Text, 0);
            }

            node = node.Make(token.Text);
        }

        if (node == _root)
        {
            return;
        }

        Meaning? present = node.Meaning ?? _base?.Word(form);
        if (present is null)
        {
            node.Meaning = meaning;
        }
        else if (present.Kind == TermKind.Move && meaning.Kind == TermKind.Move)
        {
            // a single-row entry of the same primitive adds nothing to the verb
            bool same = present.Verb is ActionKind verb && meaning.Figures.Count == 1
                && meaning.Figures[0].Rows.Count == 1 && meaning.Figures[0].Rows[0].Action.Kind == verb;
            if (!same)
            {
                node.Meaning = present with
                {
                    Verb = present.Verb ?? meaning.Verb,
                    Figures = present.Figures.Concat(meaning.Figures).Distinct().ToValueList(),
                    NamesAmount = present.NamesAmount || meaning.NamesAmount,
                    IsComposable = present.IsComposable || meaning.IsComposable,
                };
            }
        }
        else if (meaning.Kind == TermKind.Move && meaning.Figures.Count > 0 && present.Kind is TermKind.Filler or TermKind.Style or TermKind.Unknown)
        {
            node.Meaning = meaning;
        }
        else
        {
            // the first meaning stands: the word file is in order of importance
            node.Meaning = present;
        }
    }

    private sealed class Node
    {
        private Dictionary<string, Node>? _next;

        public Meaning? Meaning { get; set; }

        public Node? Next(string word) => _next?.GetValueOrDefault(word);

        public Node Make(string word)
        {
            _next ??= new Dictionary<string, Node>(StringComparer.Ordinal);
            if (!_next.TryGetValue(word, out Node? node))
            {
                node = new Node();
                _next.Add(word, node);
            }

            return node;
        }
    }
}
