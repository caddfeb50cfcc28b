using System.Globalization;
using System.Text;
using Scuff;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timing;

namespace Tests.Analysis;

/// <summary>
/// Makes dances without the reader, for tests of what is computed from a dance. A line is <c>1&amp;2: R step side, L touch together [3:00]</c>:
/// counts, then for each count foot, primitive, direction, and perhaps <c>+2</c> (turn in eighths), <c>keeps</c>, <c>takes</c> or
/// <c>shares</c> (weight against the usual), <c>stated</c> (weight stated), <c>unnamed</c> (foot not named). Round brackets join
/// actions into one figure.
/// </summary>
internal sealed class DanceBuilder
{
    private readonly StringBuilder _text = new();
    private readonly List<(string Name, Counts? Claimed, List<Section> Sections)> _parts = [];
    private readonly List<Tag> _tags = [];
    private Dance _dance = new();

    public DanceBuilder With(Func<Dance, Dance> change)
    {
        _dance = change(_dance);
        return this;
    }

    public DanceBuilder Counts(int counts) => With(d => d with { ClaimedCounts = new NumberClaim(counts, Written("counts")) });

    public DanceBuilder Walls(int walls) => With(d => d with { ClaimedWalls = new NumberClaim(walls, Written("walls")) });

    public DanceBuilder Part(string name, int? claimed = null)
    {
        _parts.Add((name, claimed is { } length ? Scuff.Timing.Counts.FromWhole(length) : null, []));
        return this;
    }

    public DanceBuilder Section(params string[] lines) => Section(null, lines);

    public DanceBuilder Section(int? claimed, params string[] lines)
    {
        if (_parts.Count == 0)
        {
            Part("");
        }

        List<Section> sections = _parts[^1].Sections;
        sections.Add(ToSection(sections.Count + 1, lines) with
        {
            ClaimedLength = claimed is { } length ? Scuff.Timing.Counts.FromWhole(length) : null,
        });
        return this;
    }

    public DanceBuilder Tag(string name, int claimed, params string[] lines)
    {
        _tags.Add(new Tag(name, false, Scuff.Timing.Counts.FromWhole(claimed), ToSection(0, lines), Written("tag " + name)));
        return this;
    }

    /// <summary>An interruption of walls after counts.</summary>
    public DanceBuilder Break(int wall, int? after, params InterruptionAct[] acts) => Break([wall], after, acts);

    public DanceBuilder Break(int[] walls, int? after, params InterruptionAct[] acts) => With(d => d with
    {
        Interruptions = [.. d.Interruptions, new Interruption
        {
            Walls = walls.ToValueList(),
            AfterCounts = after is { } counts ? Scuff.Timing.Counts.FromWhole(counts) : null,
            Acts = acts.ToValueList(),
            Span = Written("wall"),
            Line = 1,
            Verbatim = "wall",
        }],
    });

    /// <summary>An option on the last line of the last section.</summary>
    public DanceBuilder Option(string line)
    {
        List<Section> sections = _parts[^1].Sections;
        Section last = sections[^1];
        WrittenLine option = ToLine(line);
        WrittenLine home = last.Lines[^1];
        WrittenLine with = home with { Options = [new StepOption("easier", option.Counts, option.Moves, option.Span, 1) { Label = option.Label }] };
        sections[^1] = last with { Lines = [.. last.Lines.Take(last.Lines.Count - 1), with] };
        return this;
    }

    public Dance Dance() => _dance with
    {
        Parts = _parts.Select(p => new Part(p.Name, p.Sections.ToValueList(), default, p.Claimed)).ToValueList(),
        Tags = _tags.ToValueList(),
    };

    public Draft Draft(params Diagnostic[] complaints) => new(_text.ToString(), Dance(), new Report(complaints));

    private static Counts PlaceOf(int count, char letter) => Scuff.Timing.Counts.FromWhole(count - 1)
        + (letter == ' ' ? Scuff.Timing.Counts.Zero : CountGrid.OffsetOf(letter)!.Value);

    private static List<WrittenCount> PlacesOf(string label)
    {
        List<WrittenCount> places = [];
        int count = 0;
        for (int i = 0; i < label.Length; i++)
        {
            char c = label[i];
            if (char.IsAsciiDigit(c))
            {
                count = c - '0';
                places.Add(new WrittenCount(c.ToString(), PlaceOf(count, ' ')));
            }
            else if (c == '-')
            {
                int end = label[++i] - '0';
                while (count < end)
                {
                    count++;
                    places.Add(new WrittenCount(count.ToString(CultureInfo.InvariantCulture), PlaceOf(count, ' ')));
                }
            }
            else
            {
                // an & before the first digit belongs to the count before it
                int of = count == 0 ? label[i + 1] - '0' - 1 : count;
                places.Add(new WrittenCount(c.ToString(), PlaceOf(of, c)));
            }
        }

        return places;
    }

    private static StepAction ToAction(string[] words)
    {
        ActingFoot foot = words[0] switch
        {
            "R" => ActingFoot.Right,
            "L" => ActingFoot.Left,
            "B" => ActingFoot.Both,
            _ => ActingFoot.None,
        };
        ActionKind kind = ActionTraits.FromWord(words[1])!.Kind;
        WeightEffect effect = kind switch
        {
            ActionKind.Unknown => WeightEffect.Unknown,
            ActionKind.Step or ActionKind.Rock or ActionKind.Recover or ActionKind.Stomp or ActionKind.Lunge or ActionKind.Hop
                or ActionKind.Leap or ActionKind.Drop or ActionKind.Shift or ActionKind.Sway when foot != ActingFoot.None => WeightEffect.Takes,
            ActionKind.Jump or ActionKind.SwivelHeels or ActionKind.SplitHeels or ActionKind.Twist => WeightEffect.Shares,
            _ => WeightEffect.Keeps,
        };
        StepAction action = new(kind, foot, Direction.Unstated, Contact.Flat, effect);
        foreach (string word in words.Skip(2))
        {
            action = word switch
            {
                "keeps" => action with { Effect = WeightEffect.Keeps },
                "takes" => action with { Effect = WeightEffect.Takes },
                "shares" => action with { Effect = WeightEffect.Shares },
                "stated" or "unnamed" => action,
                _ when word[0] is '+' or '-' => action with { Turn = Turn.FromEighths(int.Parse(word, CultureInfo.InvariantCulture)) },
                _ => action with { Direction = Enum.Parse<Direction>(word.Replace("-", "", StringComparison.Ordinal), ignoreCase: true) },
            };
        }

        return action;
    }

    private TextSpan Written(string words)
    {
        TextSpan span = new(_text.Length, words.Length);
        _text.Append(words).Append('\n');
        return span;
    }

    private Section ToSection(int number, string[] lines)
    {
        TextSpan heading = Written("section");
        WrittenLine[] written = [.. lines.Select(ToLine)];
        Counts end = written.Length == 0 ? Scuff.Timing.Counts.Zero : written.Max(line => line.Counts.End);
        return new Section { Number = number, Length = Scuff.Timing.Counts.FromWhole(end.Value.Floor), Lines = written.ToValueList(), Span = heading };
    }

    private WrittenLine ToLine(string line)
    {
        int colon = line.IndexOf(':', StringComparison.Ordinal);
        string label = line[..colon];
        TextSpan span = Written(line);
        List<WrittenCount> places = PlacesOf(label);
        Counts lineEnd = Scuff.Timing.Counts.FromWhole(places[^1].Place.Value.Floor + 1);
        List<FacingClaim> claims = [];
        int bracket = line.IndexOf('[', StringComparison.Ordinal);
        string body = line[(colon + 1)..];
        if (bracket >= 0)
        {
            string[] clock = line[(bracket + 1)..line.IndexOf(']', StringComparison.Ordinal)].Split(':');
            Facing facing = Facing.FromClock(int.Parse(clock[0], CultureInfo.InvariantCulture), int.Parse(clock[1], CultureInfo.InvariantCulture))!.Value;
            claims.Add(new FacingClaim(facing, lineEnd, new TextSpan(span.Start + bracket, 6)));
            body = line[(colon + 1)..bracket];
        }

        List<WrittenMove> moves = [];
        List<WrittenStep> figure = [];
        bool isInFigure = false;
        string[] items = body.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        for (int i = 0; i < items.Length; i++)
        {
            isInFigure |= items[i][0] == '(';
            string[] words = items[i].Trim('(', ')').Split(' ', StringSplitOptions.RemoveEmptyEntries);
            Counts next = i + 1 < items.Length ? places[i + 1].Place : lineEnd;
            int at = line.IndexOf(items[i], StringComparison.Ordinal);
            figure.Add(new WrittenStep(places[i], next - places[i].Place, ToAction(words), new TextSpan(span.Start + at, items[i].Length), 1)
            {
                FootIsNamed = !words.Contains("unnamed"),
                WeightIsStated = words.Contains("stated"),
            });
            isInFigure &= items[i][^1] != ')';
            if (!isInFigure)
            {
                moves.Add(new WrittenMove { Steps = figure.ToValueList(), Span = figure[0].Span, Words = items[i] });
                figure.Clear();
            }
        }

        return new WrittenLine
        {
            Label = label,
            Counts = new CountSpan(places[0].Place, lineEnd),
            Moves = moves.ToValueList(),
            Claims = claims.ToValueList(),
            Span = span,
            LabelSpan = new TextSpan(span.Start, label.Length),
            Places = places.ToValueList(),
            Number = 1,
        };
    }
}
