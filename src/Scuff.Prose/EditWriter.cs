using System.Globalization;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Steps;
using Scuff.Timing;

namespace Scuff.Prose;

/// <summary>Writes a mend that was told in dance terms into the author's text.</summary>
public static class EditWriter
{
    /// <summary>
    /// The replacements that carry out a mend; empty when its place is no longer in the text.
    /// Spans are those of the draft's text.
    /// </summary>
    /// <exception cref="ArgumentException">The mend is of a kind this writer does not know.</exception>
    public static ValueList<TextEdit> ToTextEdits(Draft draft, Remedy remedy) => remedy switch
    {
        TextRemedy text => text.Edits,
        DanceEdit.SetFacing facing => [new TextEdit(facing.Claim.Span, facing.Facing.ToString())],
        DanceEdit.SetHeader header => SetHeader(draft, header),
        DanceEdit.ReplaceStep replace => Rewrite(draft, replace.Old, (steps, at) => steps[at] = (steps[at].Place, replace.New)),
        DanceEdit.DropStep drop => Rewrite(draft, drop.Old, (steps, at) => steps.RemoveAt(at)),
        DanceEdit.AddStep add => AddStep(draft, add),
        DanceEdit.ChangeLastCount change =>
            [new TextEdit(new TextSpan(change.At.Span.End, 0), ", with count " + change.Label + ": " + Phrasing.Describe(change.New))],
        DanceEdit.WriteTrack track => TrackWriter.ToTextEdits(draft, track),
        DanceEdit.AddOption option => OptionWriter.ToTextEdits(draft, option),
        DanceEdit.SetIntroSeconds intro => SetIntroSeconds(draft.Text, intro),
        _ => throw new ArgumentException("This mend has no words: " + remedy.GetType().Name, nameof(remedy)),
    };

    /// <summary>The text after the replacements, which must not overlap.</summary>
    public static string Apply(string text, IEnumerable<TextEdit> edits)
    {
        // what is put in at a place where something is replaced comes before it
        foreach (TextEdit edit in edits.OrderByDescending(e => e.Span.Start).ThenByDescending(e => e.Span.Length))
        {
            text = string.Concat(text.AsSpan(0, edit.Span.Start), edit.NewText, text.AsSpan(edit.Span.End));
        }

        return text;
    }

    private static ValueList<TextEdit> SetHeader(Draft draft, DanceEdit.SetHeader edit)
    {
        HeaderField? field = draft.Dance.Header.FirstOrDefault(f => f.Key == edit.Key);
        if (field is not null)
        {
            // keep what she wrote around the number ("32 counts")
            string old = field.Value;
            int start = old.AsSpan().IndexOfAnyInRange('0', '9');
            if (start >= 0)
            {
                int stop = start;
                while (stop < old.Length && char.IsAsciiDigit(old[stop]))
                {
                    stop++;
                }

                return [new TextEdit(new TextSpan(field.Span.Start + start, stop - start), edit.Value)];
            }

            return [new TextEdit(field.Span, edit.Value)];
        }

        int after = draft.Dance.Header.Count > 0 ? draft.Dance.Header[^1].Span.End : draft.Dance.TitleSpan.End;
        string gap = draft.Dance.Header.Count > 0 ? "\n" : "\n\n";
        return [new TextEdit(new TextSpan(after, 0), gap + edit.Key + ": " + edit.Value)];
    }

    // the last number of the piece that tells of the intro is its seconds, a clock (0:17) or a figure (17.1 seconds)
    private static ValueList<TextEdit> SetIntroSeconds(string text, DanceEdit.SetIntroSeconds edit)
    {
        TextSpan line = edit.Track.Span;
        int intro = text.IndexOf("intro", line.Start, line.Length, StringComparison.OrdinalIgnoreCase);
        if (intro < 0)
        {
            return default;
        }

        int end = text.IndexOfAny([',', ';'], intro, line.End - intro);
        int stop = end < 0 ? line.End : end;
        while (stop > intro && !char.IsAsciiDigit(text[stop - 1]))
        {
            stop--;
        }

        int start = stop;
        while (start > intro && (char.IsAsciiDigit(text[start - 1]) || text[start - 1] is '.' or ':'))
        {
            start--;
        }

        if (start == stop)
        {
            return default;
        }

        bool isClock = text.AsSpan(start, stop - start).Contains(':');
        int whole = (edit.Seconds + new Ratio(1, 2)).Floor;
        string seconds = isClock
            ? string.Create(CultureInfo.InvariantCulture, $"{whole / 60}:{whole % 60:00}")
            : edit.Seconds.ToDouble().ToString("0.#", CultureInfo.InvariantCulture);
        return [new TextEdit(TextSpan.FromBounds(start, stop), seconds)];
    }

    private static IEnumerable<WrittenLine> Lines(Dance dance) => dance.Sections.Concat(dance.Tags.Select(t => t.Body)).SelectMany(s => s.Lines);

    private static ValueList<TextEdit> Rewrite(Draft draft, WrittenStep old, Action<List<(Counts Place, StepAction Action)>, int> change)
    {
        foreach (WrittenLine line in Lines(draft.Dance))
        {
            foreach (WrittenMove move in line.Moves.Concat(line.Options.SelectMany(o => o.Moves)))
            {
                List<WrittenStep> written = [.. move.Steps];
                int at = written.FindIndex(s => ReferenceEquals(s, old));
                if (at < 0)
                {
                    at = written.FindIndex(s => s == old);
                }

                if (at < 0)
                {
                    continue;
                }

                List<(Counts Place, StepAction Action)> steps = written.Select(s => (s.Count.Place, s.Action)).ToList();
                change(steps, at);
                return [new TextEdit(move.Span, string.Join(", ", steps.Select(s => Phrasing.Describe(s.Action))))];
            }
        }

        return default;
    }

    private static ValueList<TextEdit> AddStep(Draft draft, DanceEdit.AddStep add)
    {
        foreach (WrittenLine line in Lines(draft.Dance))
        {
            List<WrittenStep> steps = [.. line.Steps];
            int at = steps.FindIndex(s => ReferenceEquals(s, add.After) || s == add.After);
            if (at < 0)
            {
                continue;
            }

            Counts place = PlaceOf(add.Label) ?? steps[at].Count.Place + Counts.Half;
            List<Counts> places = [.. line.Places.Select(p => p.Place)];
            if (!places.Contains(place))
            {
                int before = places.FindLastIndex(p => p < place);
                places.Insert(before + 1, place);
            }

            List<TextEdit> edits = [new TextEdit(line.LabelSpan, CountWriter.Label(places))];

            // the new words come after the move that holds the step
            WrittenMove owner = line.Moves.First(m => m.Steps.Any(s => s == steps[at]));
            if (owner.Steps.Count == 1 || owner.Steps[^1] == steps[at])
            {
                edits.Add(new TextEdit(new TextSpan(owner.Span.End, 0), ", " + Phrasing.Describe(add.New)));
            }
            else
            {
                List<string> words = [];
                foreach (WrittenStep step in owner.Steps)
                {
                    words.Add(Phrasing.Describe(step.Action));
                    if (step == steps[at])
                    {
                        words.Add(Phrasing.Describe(add.New));
                    }
                }

                edits.Add(new TextEdit(owner.Span, string.Join(", ", words)));
            }

            return edits.ToValueList();
        }

        return default;
    }

    private static Counts? PlaceOf(string label)
    {
        int stop = 0;
        int number = 0;
        while (stop < label.Length && char.IsAsciiDigit(label[stop]) && number < 10000)
        {
            number = (number * 10) + (label[stop] - '0');
            stop++;
        }

        if (stop == 0)
        {
            return null;
        }

        Counts place = Counts.FromWhole(number - 1);
        return stop < label.Length && CountGrid.OffsetOf(label[stop]) is Counts offset ? place + offset : place;
    }
}
