using System.Globalization;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Timing;

namespace Scuff.Steps;

/// <summary>
/// Reads the line format of <c>data/steps/*.steps</c>, described in the README beside those files. Strict: whatever it does not
/// understand is told with its file and line, and never becomes part of a move.
/// </summary>
/// <param name="judges">Whether entries are judged beyond their lines (weight, shared names, keys that lead nowhere). The files that
/// come with Scuff are judged by its tests, so a start need not wait for it.</param>
internal sealed class StepCatalogueReader(bool judges)
{
    private static readonly string[] Levels = ["absolute beginner", "beginner", "improver", "intermediate", "advanced"];

    private readonly List<StepDefinition> _definitions = [];
    private readonly Dictionary<string, StepSource> _sources = new(StringComparer.Ordinal);
    private readonly HashSet<string> _ids = new(StringComparer.Ordinal);
    private readonly List<CatalogueComplaint> _complaints = [];

    // Keys that entries point at, judged when every file has been read.
    private readonly List<Pointer> _pointers = [];
    private readonly Dictionary<string, Place> _places = new(StringComparer.Ordinal);

    private Place _place = new("", 0, default);
    private Entry? _entry;

    /// <summary>Reads one file.</summary>
    public void ReadFile(string file, string text)
    {
        int start = 0;
        int number = 0;
        while (start < text.Length)
        {
            int end = text.IndexOf('\n', start);
            end = end < 0 ? text.Length : end;
            number++;
            int length = end > start && text[end - 1] == '\r' ? end - start - 1 : end - start;
            _place = new Place(file, number, new TextSpan(start, length));
            ReadLine(text.AsSpan(start, length));
            start = end + 1;
        }

        CloseEntry();
    }

    /// <summary>Judges what needs all files, and hands over the catalogue.</summary>
    public (StepCatalogue Catalogue, ValueList<CatalogueComplaint> Complaints) Finish()
    {
        if (judges)
        {
            JudgePointers();
            JudgeSharedNames();
        }

        return (new StepCatalogue(_definitions.ToValueList(), _sources), _complaints.ToValueList());
    }

    private void JudgePointers()
    {
        foreach (Pointer pointer in _pointers)
        {
            if (!pointer.IsSource && !_ids.Contains(pointer.Key))
            {
                Complain(pointer.Place, CatalogueRules.UnknownId, ("entry", pointer.Entry), ("id", pointer.Key));
            }
            else if (pointer.IsSource && !_sources.ContainsKey(pointer.Key))
            {
                Complain(pointer.Place, CatalogueRules.UnknownSource, ("entry", pointer.Entry), ("key", pointer.Key));
            }
        }
    }

    private static int IndentOf(ReadOnlySpan<char> line)
    {
        int indent = 0;
        while (indent < line.Length && line[indent] == ' ')
        {
            indent++;
        }

        return indent;
    }

    private static (string Head, string Tail) SplitWord(ReadOnlySpan<char> text)
    {
        int space = text.IndexOf(' ');
        return space < 0 ? (text.ToString(), "") : (text[..space].ToString(), text[(space + 1)..].Trim().ToString());
    }

    private static string[] Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries);

    private static IEnumerable<string> Items(string text) => text.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);

    private static bool TryNumber(string text, out int number)
        => int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number);

    private static bool IsKey(string key)
    {
        foreach (char c in key)
        {
            if (!char.IsAsciiLetterLower(c) && !char.IsAsciiDigit(c) && c != '_')
            {
                return false;
            }
        }

        return key.Length > 0;
    }

    // A letter alone belongs to the number before it; before any number it is a pick-up before count 1.
    private static Counts? PlaceOf(string label, ref int beat)
    {
        int digits = 0;
        while (digits < label.Length && char.IsAsciiDigit(label[digits]))
        {
            digits++;
        }

        if (label.Length - digits > 1 || label.Length == 0 || digits > 3)
        {
            return null;
        }

        int at = beat;
        if (digits > 0)
        {
            at = int.Parse(label.AsSpan(0, digits), NumberStyles.None, CultureInfo.InvariantCulture);
            if (at == 0)
            {
                return null;
            }
        }

        Counts place = Counts.FromWhole(at - 1);
        if (digits < label.Length)
        {
            if (CountGrid.OffsetOf(label[digits]) is not { } offset)
            {
                return null;
            }

            place += offset;
        }

        beat = at;
        return place;
    }

    private static Direction? DirectionOf(string word) => word switch
    {
        "forward" => Direction.Forward,
        "back" => Direction.Back,
        "side" => Direction.Side,
        "diag-forward" => Direction.DiagonalForward,
        "diag-back" => Direction.DiagonalBack,
        "diag-forward-across" => Direction.DiagonalForwardAcross,
        "diag-back-across" => Direction.DiagonalBackAcross,
        "cross-front" => Direction.CrossFront,
        "cross-behind" => Direction.CrossBehind,
        "lock-front" => Direction.LockFront,
        "lock-behind" => Direction.LockBehind,
        "together" => Direction.Together,
        "home" => Direction.Home,
        "in-place" => Direction.InPlace,
        "out" => Direction.Out,
        "in" => Direction.In,
        "up" => Direction.Up,
        "down" => Direction.Down,
        "across" => Direction.Across,
        "behind" => Direction.Behind,
        "to-same" => Direction.Right,
        "to-other" => Direction.Left,
        "centre" => Direction.Centre,
        "any" => Direction.Unstated,
        "clockwise" => Direction.Clockwise,
        "anticlockwise" => Direction.Anticlockwise,
        _ => null,
    };

    private static string WeightWord(Weight weight) => weight switch
    {
        Weight.Right => "S",
        Weight.Left => "O",
        Weight.Shared => "both",
        _ => "an unknown foot",
    };

    private static Weight WeightOf(RelativeWeight weight) => weight switch
    {
        RelativeWeight.Same => Weight.Right,
        RelativeWeight.Other => Weight.Left,
        RelativeWeight.Both => Weight.Shared,
        _ => Weight.Unknown,
    };

    private void ReadLine(ReadOnlySpan<char> line)
    {
        ReadOnlySpan<char> words = line.Trim();
        if (words.IsEmpty || words[0] == '#')
        {
            return;
        }

        int indent = IndentOf(line);
        if (indent < line.Length && line[indent] == '\t')
        {
            Complain(CatalogueRules.Indentation, ("indent", "tab"));
            return;
        }

        if (indent == 0)
        {
            CloseEntry();
            OpenEntry(words);
        }
        else if (indent == 2)
        {
            ReadField(words);
        }
        else if (indent == 4 && _entry is { Other: not null } && words.StartsWith("row "))
        {
            ReadRow(words[4..].Trim().ToString(), _entry, _entry.Other.Rows);
        }
        else
        {
            Complain(CatalogueRules.Indentation, ("indent", indent.ToString(CultureInfo.InvariantCulture)));
        }
    }

    private void OpenEntry(ReadOnlySpan<char> words)
    {
        (string kind, string id) = SplitWord(words);
        if (kind is not ("step" or "source"))
        {
            Complain(CatalogueRules.UnknownEntry, ("words", words.ToString()));
            return;
        }

        if (!IsKey(id))
        {
            Complain(CatalogueRules.BadId, ("id", id));
        }

        bool isNew = kind == "source" ? !_sources.ContainsKey(id) : _ids.Add(id);
        if (!isNew)
        {
            Complain(CatalogueRules.RepeatedId, ("id", id));
        }

        _entry = new Entry(id, kind == "source", _place, isNew);
    }

    private void CloseEntry()
    {
        if (_entry is not { } entry)
        {
            return;
        }

        _entry = null;
        CloseOther(entry);
        if (entry.IsSource)
        {
            if (Require(entry, "title") && entry.IsNew)
            {
                _sources[entry.Id] = new StepSource(entry.Id, entry.Text("title"), entry.Text("url"), entry.Text("kind"));
            }

            return;
        }

        bool complete = Require(entry, "name") & Require(entry, "level") & Require(entry, "named-by");
        if (entry.Rows.Count == 0 && !entry.HasFaultyRow)
        {
            Complain(entry.Place, CatalogueRules.MissingField, ("entry", entry.Id), ("field", "row"));
        }

        if (!complete || entry.Rows.Count == 0 || !entry.IsNew)
        {
            return;
        }

        // one cause, one complaint: what a left-out row would have done is not judged
        if (judges && !entry.HasFaultyRow)
        {
            JudgeWeight(entry);
            JudgeSpread(entry);
            JudgeRhythms(entry);
        }

        _places[entry.Id] = entry.Place;
        _definitions.Add(new StepDefinition
        {
            Id = entry.Id,
            Name = entry.Text("name"),
            Aliases = entry.Aliases.ToValueList(),
            Cues = entry.Cues.ToValueList(),
            IsDefaultOfName = entry.IsDefault,
            Level = entry.Text("level"),
            NamedBy = entry.NamedBy,
            Meter = entry.Meter,
            Call = entry.Text("call"),
            Rows = entry.Rows.ToValueList(),
            From = entry.From,
            To = entry.To,
            Amounts = entry.Amounts.ToValueList(),
            Spread = entry.Spread.ToValueList(),
            TurnedForms = entry.TurnedForms.ToValueList(),
            Rhythms = RhythmsOf(entry),
            Others = entry.Others.ToValueList(),
            Note = entry.Find("note"),
            Conflict = entry.Find("conflict"),
            Sources = entry.Sources.ToValueList(),
            NamedIn = entry.NamedIn.ToValueList(),
            Confidence = entry.Confidence,
        });
    }

    private bool Require(Entry entry, string field)
    {
        if (entry.Find(field) is not null)
        {
            return true;
        }

        Complain(entry.Place, CatalogueRules.MissingField, ("entry", entry.Id), ("field", field));
        return false;
    }

    private void ReadField(ReadOnlySpan<char> words)
    {
        if (_entry is not { } entry)
        {
            Complain(CatalogueRules.UnknownEntry, ("words", words.ToString()));
            return;
        }

        (string field, string value) = SplitWord(words);
        CloseOther(entry);
        if (entry.IsSource ? field is not ("title" or "url" or "kind") : !IsStepField(field))
        {
            Complain(CatalogueRules.UnknownField, ("field", field), ("entry", entry.Id));
        }
        else if (value.Length == 0)
        {
            Complain(CatalogueRules.EmptyField, ("field", field), ("entry", entry.Id));
        }
        else if (!MayRepeat(field) && !entry.TryKeep(field, value))
        {
            Complain(CatalogueRules.RepeatedField, ("field", field), ("entry", entry.Id));
        }
        else if (!entry.IsSource)
        {
            ReadValue(entry, field, value);
        }
    }

    private static bool IsStepField(string field) => field is "name" or "also" or "level" or "named-by" or "meter" or "call" or "from" or "to"
        or "row" or "amounts" or "spread" or "with-turn" or "rhythm" or "other" or "cue" or "note" or "conflict" or "source" or "named-in"
        or "confidence";

    private static bool MayRepeat(string field) => field is "also" or "row" or "with-turn" or "rhythm" or "other" or "cue" or "source" or "named-in";

    private void ReadValue(Entry entry, string field, string value)
    {
        switch (field)
        {
            case "also":
                entry.Aliases.AddRange(Items(value));
                break;
            case "level":
                Choose(field, value, Levels);
                break;
            case "named-by":
                entry.NamedBy = (NamedBy)Math.Max(0, Choose(field, value, "none", "first-foot", "acting-foot", "travel", "turn", "standing-foot"));
                break;
            case "meter":
                entry.Meter = Choose(field, value, "any", "4/4", "3/4") switch { 1 => 4, 2 => 3, _ => null };
                break;
            case "from":
                entry.From = (RelativeWeight)Math.Max(0, Choose(field, value, "any", "S", "O", "B"));
                break;
            case "to":
                entry.To = (RelativeWeight)Math.Max(0, Choose(field, value, "keep", "S", "O", "B"));
                break;
            case "confidence":
                entry.Confidence = (Confidence)Math.Max(0, Choose(field, value.Replace('-', ' '), "sourced", "common practice", "from memory"));
                break;
            case "row":
                ReadRow(value, entry, entry.Rows);
                break;
            case "amounts":
                foreach (string amount in Words(value))
                {
                    if (Number(field, amount) is { } number)
                    {
                        entry.Amounts.Add(number);
                    }
                }

                break;
            case "spread":
                ReadSpread(entry, value);
                break;
            case "with-turn":
                ReadTurnedForm(entry, value);
                break;
            case "rhythm":
                ReadRhythm(entry, value);
                break;
            case "other":
                ReadOther(entry, value);
                break;
            case "cue":
                ReadCue(entry, value);
                break;
            case "source":
                ReadSources(entry, value, entry.Sources);
                break;
            case "named-in":
                ReadSources(entry, value, entry.NamedIn);
                break;
            default:
                break; // name, call, note and conflict are kept as they are
        }
    }

    private int Choose(string field, string value, params string[] allowed)
    {
        int index = Array.IndexOf(allowed, value);
        if (index < 0)
        {
            Complain(CatalogueRules.UnknownValue, ("value", value), ("field", field), ("allowed", string.Join(", ", allowed)));
        }

        return index;
    }

    private int? Number(string field, string value)
    {
        if (TryNumber(value, out int number))
        {
            return number;
        }

        Complain(CatalogueRules.BadNumber, ("value", value), ("field", field));
        return null;
    }

    private void ReadSpread(Entry entry, string value)
    {
        foreach (string word in Words(value))
        {
            int colon = word.IndexOf(':', StringComparison.Ordinal);
            string label = colon < 0 ? word : word[..colon];
            int? share = colon < 0 ? 1 : Number("spread", word[(colon + 1)..]);
            if (share is >= 1)
            {
                entry.Spread.Add(new TurnShare(label, share.Value));
            }
            else if (share is not null)
            {
                Complain(CatalogueRules.BadNumber, ("value", word), ("field", "spread"));
            }
        }
    }

    private void ReadTurnedForm(Entry entry, string value)
    {
        (string amount, string id) = SplitWord(value);
        int? eighths = null;
        if (amount != "any")
        {
            eighths = Number("with-turn", amount);
            if (eighths is null)
            {
                return;
            }
        }

        entry.TurnedForms.Add(new TurnedForm(eighths, id));
        _pointers.Add(new Pointer(_place, entry.Id, id, false));
    }

    private void ReadRhythm(Entry entry, string value)
    {
        foreach (string rhythm in Items(value))
        {
            string[] labels = Words(rhythm);
            int beat = 0;
            foreach (string label in labels)
            {
                if (PlaceOf(label, ref beat) is null)
                {
                    Complain(CatalogueRules.BadLabel, ("label", label));
                }
            }

            entry.Rhythms.Add(new Rhythm(labels, _place));
        }
    }

    private void ReadOther(Entry entry, string value)
    {
        int end = value[0] == '"' ? value.IndexOf('"', 1) : -1;
        if (end < 0)
        {
            Complain(CatalogueRules.UnknownValue, ("value", value), ("field", "other"), ("allowed", "words in quotation marks, then a key"));
            return;
        }

        string words = value[1..end];
        string id = value[(end + 1)..].Trim();
        if (id.Length == 0)
        {
            entry.Other = new Other(words, _place);
            return;
        }

        entry.Others.Add(new OtherReading(words, id, default));
        _pointers.Add(new Pointer(_place, entry.Id, id, false));
    }

    private void CloseOther(Entry entry)
    {
        if (entry.Other is not { } other)
        {
            return;
        }

        entry.Other = null;
        if (other.Rows.Count == 0)
        {
            if (entry.HasFaultyRow)
            {
                return;
            }

            Complain(other.Place, CatalogueRules.MissingField, ("entry", entry.Id), ("field", "row"));
            return;
        }

        entry.Others.Add(new OtherReading(other.Words, null, other.Rows.ToValueList()));
    }

    private static void ReadCue(Entry entry, string value)
    {
        foreach (string item in Items(value))
        {
            string cue = item;
            if (cue == "default" || cue.StartsWith("default ", StringComparison.Ordinal))
            {
                entry.IsDefault = true;
                cue = cue["default".Length..].Trim();
            }

            if (cue.Length > 0)
            {
                entry.Cues.Add(cue);
            }
        }
    }

    private void ReadSources(Entry entry, string value, List<string> keys)
    {
        foreach (string key in value.Split([' ', ';', ','], StringSplitOptions.RemoveEmptyEntries))
        {
            keys.Add(key);
            _pointers.Add(new Pointer(_place, entry.Id, key, true));
        }
    }

    private void ReadRow(string value, Entry entry, List<PatternRow> rows)
    {
        if (TryRow(value, rows) is { } row)
        {
            rows.Add(row);
        }
        else
        {
            entry.HasFaultyRow = true;
        }
    }

    private PatternRow? TryRow(string value, List<PatternRow> rows)
    {
        string[] words = Words(value);
        if (words.Length < 6)
        {
            Complain(CatalogueRules.ShortRow, ("count", words.Length.ToString(CultureInfo.InvariantCulture)));
            return null;
        }

        int beat = rows.Count == 0 ? 0 : rows[^1].At.Value.Floor + 1;
        Counts? at = PlaceOf(words[0], ref beat);
        if (at is null)
        {
            Complain(CatalogueRules.BadLabel, ("label", words[0]));
        }

        RelativeFoot? foot = words[1] switch
        {
            "S" => RelativeFoot.Same,
            "O" => RelativeFoot.Other,
            "B" => RelativeFoot.Both,
            "-" => RelativeFoot.None,
            _ => null,
        };
        if (foot is null)
        {
            Complain(CatalogueRules.UnknownFoot, ("word", words[1]));
        }

        ActionTraits? traits = ActionTraits.FromWord(words[2]);
        if (traits is null || traits.Kind == ActionKind.Unknown)
        {
            traits = null;
            Complain(CatalogueRules.UnknownAction, ("word", words[2]));
        }

        Direction? direction = DirectionOf(words[3]);
        if (direction is null)
        {
            Complain(CatalogueRules.UnknownDirection, ("word", words[3]));
        }

        Contact? contact = words[4] switch
        {
            "flat" => Contact.Flat,
            "ball" => Contact.Ball,
            "heel" => Contact.Heel,
            "toe" => Contact.Toe,
            "none" or "air" or "-" => Contact.Air,
            _ => null,
        };
        if (contact is null)
        {
            Complain(CatalogueRules.UnknownContact, ("word", words[4]));
        }

        WeightEffect? effect = words[5] switch
        {
            "weight" => WeightEffect.Takes,
            "free" => WeightEffect.Keeps,
            "both" => WeightEffect.Shares,
            _ => null,
        };
        if (effect is null)
        {
            Complain(CatalogueRules.UnknownWeight, ("word", words[5]));
        }

        RowEnd end = ReadRowEnd(words);
        if (at is null || foot is null || traits is null || direction is null || contact is null || effect is null)
        {
            return null;
        }

        if (effect == WeightEffect.Takes && foot == RelativeFoot.None)
        {
            Complain(CatalogueRules.WeightWithoutFoot);
            return null;
        }

        if (rows.Count > 0 && IsOutOfOrder(rows[^1], at.Value, foot.Value))
        {
            Complain(CatalogueRules.LabelOrder, ("label", words[0]));
            return null;
        }

        ActingFoot acting = foot.Value switch
        {
            RelativeFoot.Same => ActingFoot.Right,
            RelativeFoot.Other => ActingFoot.Left,
            RelativeFoot.Both => ActingFoot.Both,
            _ => ActingFoot.None,
        };
        StepAction action = new(traits.Kind, acting, direction.Value, contact.Value, effect.Value, Turn.FromEighths(end.Turn), end.Size);
        return new PatternRow(words[0], at.Value, foot.Value, action, end.IsFinish, end.Stretches);
    }

    private static bool IsOutOfOrder(PatternRow before, Counts at, RelativeFoot foot)
        => at < before.At || (at == before.At && foot != RelativeFoot.None && before.Foot != RelativeFoot.None);

    private RowEnd ReadRowEnd(string[] words)
    {
        RowEnd end = new(0, false, false, StepSize.Usual);
        for (int i = 6; i < words.Length; i++)
        {
            switch (words[i])
            {
                case "turn" when i + 1 < words.Length:
                    i++;
                    end = end with { Turn = Eighths(words[i]) };
                    break;
                case "finish":
                    end = end with { IsFinish = true };
                    break;
                case "stretch":
                    end = end with { Stretches = true };
                    break;
                case "small":
                    end = end with { Size = StepSize.Small };
                    break;
                case "large":
                    end = end with { Size = StepSize.Large };
                    break;
                default:
                    Complain(CatalogueRules.UnknownRowWord, ("word", words[i]));
                    break;
            }
        }

        return end;
    }

    // Eighths, or a fraction of them (3/2) where a turn is shared out over three positions.
    private Ratio Eighths(string word)
    {
        int slash = word.IndexOf('/', StringComparison.Ordinal);
        if (TryNumber(slash < 0 ? word : word[..slash], out int upper))
        {
            if (slash < 0)
            {
                return upper;
            }

            if (TryNumber(word[(slash + 1)..], out int lower) && lower > 0)
            {
                return new Ratio(upper, lower);
            }
        }

        Complain(CatalogueRules.BadNumber, ("value", word), ("field", "turn"));
        return 0;
    }

    private void JudgeWeight(Entry entry)
    {
        Weight weight = WeightOf(entry.From);
        foreach (PatternRow row in entry.Rows)
        {
            StepAction action = row.Action;
            if (action.Traits.FootRule == FootRule.Free && weight.StandingFoot() is { } standing && action.Foot == standing.ToActingFoot())
            {
                Complain(
                    entry.Place,
                    CatalogueRules.FootNotFree,
                    ("label", row.Label),
                    ("foot", row.Foot == RelativeFoot.Same ? "named" : "other"),
                    ("action", action.Traits.Word));
                return;
            }

            weight = action.WeightAfter(weight);
        }

        Weight said = WeightOf(entry.To);
        bool differs = entry.To == RelativeWeight.Any
            ? entry.From != RelativeWeight.Any && weight != WeightOf(entry.From)
            : weight != Weight.Unknown && weight != said;
        if (entry.Find("to") is not null && differs)
        {
            string saidWords = entry.To == RelativeWeight.Any ? WeightWord(WeightOf(entry.From)) : WeightWord(said);
            Complain(entry.Place, CatalogueRules.WeightDiffers, ("entry", entry.Id), ("said", saidWords), ("found", WeightWord(weight)));
        }
    }

    private void JudgeSpread(Entry entry)
    {
        foreach (TurnShare share in entry.Spread)
        {
            if (!entry.Rows.Exists(r => r.Label == share.Label))
            {
                Complain(entry.Place, CatalogueRules.SpreadLabel, ("entry", entry.Id), ("label", share.Label));
            }
        }
    }

    private void JudgeRhythms(Entry entry)
    {
        foreach (Rhythm rhythm in entry.Rhythms)
        {
            if (rhythm.Labels.Length != entry.Rows.Count)
            {
                Complain(
                    rhythm.Place,
                    CatalogueRules.RhythmLength,
                    ("rhythm", string.Join(' ', rhythm.Labels)),
                    ("counts", rhythm.Labels.Length.ToString(CultureInfo.InvariantCulture)),
                    ("entry", entry.Id),
                    ("rows", entry.Rows.Count.ToString(CultureInfo.InvariantCulture)));
            }
        }
    }

    private static ValueList<ValueList<string>> RhythmsOf(Entry entry)
    {
        if (entry.Rhythms.Count == 0)
        {
            return default;
        }

        ValueList<string>[] rhythms = new ValueList<string>[entry.Rhythms.Count];
        for (int i = 0; i < rhythms.Length; i++)
        {
            rhythms[i] = new ValueList<string>(entry.Rhythms[i].Labels);
        }

        return new ValueList<ValueList<string>>(rhythms);
    }

    // A name that several entries have must lead to one of them, with a cue and without.
    private void JudgeSharedNames()
    {
        Dictionary<string, List<StepDefinition>> byName = new(StringComparer.Ordinal);
        foreach (StepDefinition definition in _definitions)
        {
            AddName(byName, definition.Name, definition);
            foreach (string alias in definition.Aliases)
            {
                AddName(byName, alias, definition);
            }
        }

        foreach ((string name, List<StepDefinition> sharing) in byName)
        {
            if (sharing.Count > 1)
            {
                JudgeSharedName(name, sharing);
            }
        }
    }

    private static void AddName(Dictionary<string, List<StepDefinition>> byName, string name, StepDefinition definition)
    {
        if (!byName.TryGetValue(name, out List<StepDefinition>? sharing))
        {
            byName[name] = sharing = [];
        }

        if (sharing.Count == 0 || sharing[^1] != definition)
        {
            sharing.Add(definition);
        }
    }

    private void JudgeSharedName(string name, List<StepDefinition> sharing)
    {
        StepDefinition? meant = null;
        foreach (StepDefinition definition in sharing)
        {
            Place place = _places[definition.Id];
            if (definition.Cues.Count == 0)
            {
                Complain(place, CatalogueRules.NoCue, ("entry", definition.Id), ("name", name));
            }

            if (definition.IsDefaultOfName && meant is not null)
            {
                Complain(place, CatalogueRules.TwoDefaults, ("name", name), ("first", meant.Id), ("second", definition.Id));
            }

            meant = definition.IsDefaultOfName ? definition : meant;
        }

        if (meant is null)
        {
            Complain(_places[sharing[^1].Id], CatalogueRules.NoDefault, ("name", name), ("first", sharing[0].Id), ("second", sharing[^1].Id));
        }
    }

    private void Complain(Rule rule, params ReadOnlySpan<(string Name, string Value)> arguments) => Complain(_place, rule, arguments);

    private void Complain(Place place, Rule rule, params ReadOnlySpan<(string Name, string Value)> arguments)
        => _complaints.Add(new CatalogueComplaint(place.File, place.Line, rule.At(place.Span, arguments)));

    // Classes, not structs: lists of a struct of our own would be compiled anew at every start.
    private sealed record Place(string File, int Line, TextSpan Span);

    private sealed record Pointer(Place Place, string Entry, string Key, bool IsSource);

    private sealed record Rhythm(string[] Labels, Place Place);

    private sealed record RowEnd(Ratio Turn, bool IsFinish, bool Stretches, StepSize Size);

    private sealed class Other(string words, Place place)
    {
        public string Words { get; } = words;

        public Place Place { get; } = place;

        public List<PatternRow> Rows { get; } = [];
    }

    private sealed class Entry(string id, bool isSource, Place place, bool isNew)
    {
        // few enough to be looked through: field, value, field, value
        private readonly List<string> _texts = new(16);

        public string Id { get; } = id;

        public bool IsSource { get; } = isSource;

        public bool IsNew { get; } = isNew;

        public Place Place { get; } = place;

        public List<string> Aliases { get; } = [];

        public List<string> Cues { get; } = [];

        public bool IsDefault { get; set; }

        public NamedBy NamedBy { get; set; }

        public int? Meter { get; set; }

        public RelativeWeight From { get; set; }

        public RelativeWeight To { get; set; }

        public List<PatternRow> Rows { get; } = [];

        public List<int> Amounts { get; } = [];

        public List<TurnShare> Spread { get; } = [];

        public List<TurnedForm> TurnedForms { get; } = [];

        public List<Rhythm> Rhythms { get; } = [];

        public List<OtherReading> Others { get; } = [];

        public Other? Other { get; set; }

        public List<string> Sources { get; } = [];

        public List<string> NamedIn { get; } = [];

        public Confidence Confidence { get; set; }

        public bool HasFaultyRow { get; set; }

        public bool TryKeep(string field, string value)
        {
            if (Find(field) is not null)
            {
                return false;
            }

            _texts.Add(field);
            _texts.Add(value);
            return true;
        }

        public string? Find(string field)
        {
            for (int i = 0; i < _texts.Count; i += 2)
            {
                if (_texts[i] == field)
                {
                    return _texts[i + 1];
                }
            }

            return null;
        }

        public string Text(string field) => Find(field) ?? "";
    }
}
