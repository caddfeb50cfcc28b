using System.Globalization;
using System.Text;

namespace Scuff.Sheets.Formats.Pdf;

/// <summary>Turns words into lines of type: finds a face for every character, breaks lines, and orders what runs from right to left.</summary>
internal static class TypeSetter
{
    // So many numbers in one pair of brackets; a longer one would not fit on a line.
    private const int MostNumbers = 3;

    // A line shorter than this, in parts of the size, is a column: there a word often stands alone.
    private const double LongLine = 22;

    // Every letter before it is in the usual face: the Latin ones.
    private const char FirstRare = '\u0180';

    /// <summary>Height of a line of type in parts of its size, from the top of its accents to the bottom of its tails.</summary>
    public const double Height = 1.2;

    /// <summary>From the top of a line to its baseline, in parts of its size.</summary>
    public const double Rise = 0.95;

    /// <summary>Sets a paragraph.</summary>
    /// <param name="wordings">Its words.</param>
    /// <param name="size">Size of the type in points.</param>
    /// <param name="width">Longest line in points. A word that is longer is broken.</param>
    /// <param name="atCommas">Whether lines rather end after a comma, so that no move is cut in two, where that takes no more lines.</param>
    /// <returns>Its lines; none when there are no words.</returns>
    public static List<SetLine> Set(IEnumerable<Wording> wordings, double size, double width, bool atCommas = false)
    {
        List<Word> words = [.. wordings.SelectMany(Words)];
        List<SetLine> lines = Broken(words, size, width, atCommas: false);
        bool endsAtCommas = false;
        if (atCommas && lines.Count > 1 && Broken(words, size, width, atCommas: true) is var better && better.Count <= lines.Count)
        {
            (lines, endsAtCommas) = (better, true);
        }

        // the last word is not left alone: not on a long line, and not in a column either where a line may end after an earlier comma
        if (lines.Count > 1
            && (endsAtCommas || width > LongLine * size)
            && words[^1] is { HasSpaceBefore: true, IsBound: false } last
            && lines[^1].Width <= (last.Width * size) + 0.01
            && Broken([.. words[..^1], last with { IsBound = true }], size, width, endsAtCommas) is var kept
            && kept.Count == lines.Count)
        {
            return kept;
        }

        return lines;
    }

    /// <summary>Sets words on one line, however long.</summary>
    public static SetLine One(string words, double size, bool isBold = false)
        => Set([new Wording(words, isBold)], size, double.PositiveInfinity) is [var line] ? line : new SetLine([], size, 0, null);

    /// <summary>Sets as many of the words on one line as there is room for; three dots tell that there are more.</summary>
    public static SetLine Short(string words, double size, double width)
    {
        SetLine whole = One(words, size);
        if (whole.Width <= width)
        {
            return whole;
        }

        string[] elements = [.. Elements(words)];
        SetLine fits = One("…", size);
        int least = 0;
        int most = elements.Length - 1;
        while (least < most)
        {
            int middle = (least + most + 1) / 2;
            SetLine tried = One(string.Concat(elements.Take(middle)).TrimEnd() + "…", size);
            (least, most, fits) = tried.Width <= width ? (middle, most, tried) : (least, middle - 1, fits);
        }

        return fits;
    }

    /// <summary>Whether something in the words has no letter in any face and nothing that stands for it, so that its number is printed.</summary>
    public static bool LacksLetters(string words) => words.Any(c => c >= FirstRare && !FontFaces.Plain.Has(c))
        && Elements(Substitutes.Clean(words))
            .SelectMany(e => Printed(e, isBold: false))
            .Any(e => FontFaces.FaceFor(e, isBold: false) is null && Known(Substitutes.For(e), isBold: false) is null);

    private static List<SetLine> Broken(List<Word> words, double size, double width, bool atCommas)
    {
        bool fromRight = Bidi.StartsRight(string.Concat(words.Select(w => w.Drawn)));
        double room = width / size;
        List<SetLine> lines = [];
        List<Word> line = [];
        double length = 0;
        foreach (Word word in words)
        {
            double gap = line.Count > 0 && word.HasSpaceBefore ? word.Space : 0;
            while (line.Count > 0 && length + gap + word.Width > room)
            {
                int end = atCommas && AfterComma(line, word.IsBound) is > 0 and var after ? after
                    : word.IsBound && line.Count > 1 ? line.Count - 1
                    : line.Count;
                bool goesOn = end < line.Count ? line[end].HasSpaceBefore : word.HasSpaceBefore;
                lines.Add(Finish(line[..end], size, fromRight, goesOn));
                line = line[end..];
                length = line.Select((w, i) => w.Width + (i > 0 && w.HasSpaceBefore ? w.Space : 0)).Sum();
                gap = line.Count > 0 && word.HasSpaceBefore ? word.Space : 0;
            }

            Word rest = word;
            while (rest.Width > room && rest.Split(room) is { } split)
            {
                lines.Add(Finish([split.First], size, fromRight));
                rest = split.Second;
            }

            line.Add(rest);
            length += gap + rest.Width;
        }

        if (line.Count > 0)
        {
            lines.Add(Finish(line, size, fromRight));
        }

        return lines;
    }

    // Where a line may end after a comma, or 0; what is bound takes the last word of the line with it.
    private static int AfterComma(List<Word> line, bool isBound)
        => line[..^(isBound ? 1 : 0)].FindLastIndex(w => w.Drawn.EndsWith(',')) + 1;

    private static SetLine Finish(List<Word> words, double size, bool fromRight, bool goesOn = false)
        => words.TrueForAll(w => w.IsUsual) ? FinishUsual(words, size, goesOn) : FinishAny(words, size, fromRight, goesOn);

    // Nearly every line: drawn as written, from left to right, in one face or two.
    private static SetLine FinishUsual(List<Word> words, double size, bool goesOn)
    {
        List<SetRun> runs = [];
        StringBuilder run = new();
        double start = 0;
        double x = 0;
        for (int i = 0; i < words.Count; i++)
        {
            Word word = words[i];
            if (i > 0 && words[i - 1].IsBold != word.IsBold)
            {
                runs.Add(new SetRun(Face(words[i - 1].IsBold), run.ToString(), start * size));
                run.Clear();
                start = x;
            }

            if (i > 0 && word.HasSpaceBefore)
            {
                run.Append(' ');
                x += word.Space;
            }

            run.Append(word.Drawn);
            x += word.Width;
        }

        // a space that is not seen keeps the last word apart from the first of the next line for those who hear or copy it
        runs.Add(new SetRun(Face(words[^1].IsBold), goesOn ? run.Append(' ').ToString() : run.ToString(), start * size));
        return new SetLine(runs, size, x * size, null);
    }

    private static SetLine FinishAny(List<Word> words, double size, bool fromRight, bool goesOn)
    {
        List<(string Drawn, bool IsBold)> elements = [];
        StringBuilder spoken = new();
        StringBuilder drawn = new();
        foreach (Word word in words)
        {
            if (spoken.Length > 0 && word.HasSpaceBefore)
            {
                elements.Add((" ", word.IsBold));
                spoken.Append(' ');
                drawn.Append(' ');
            }

            elements.AddRange(Elements(word.Drawn).Select(e => (e, word.IsBold)));
            spoken.Append(word.Spoken);
            drawn.Append(word.Drawn);
        }

        bool turns = Bidi.Concerns(drawn.ToString());
        if (turns)
        {
            elements = [.. Bidi.Order([.. elements.Select(e => e.Drawn)], fromRight)
                .Select(o => (o.IsMirrored ? Bidi.Mirror(elements[o.Index].Drawn) : elements[o.Index].Drawn, elements[o.Index].IsBold))];
        }

        List<SetRun> runs = [];
        double x = 0;
        double start = 0;
        FontFace? face = null;
        StringBuilder run = new();
        foreach ((string element, bool isBold) in elements)
        {
            FontFace next = FaceOf(element, isBold);
            if (next != face && run.Length > 0)
            {
                runs.Add(new SetRun(face!, run.ToString(), start * size));
                run.Clear();
                start = x;
            }

            face = next;
            run.Append(element);
            x += WidthOf(next, element);
        }

        if (run.Length > 0)
        {
            // the same unseen space as at the end of a usual line
            runs.Add(new SetRun(face!, goesOn && !turns ? run.Append(' ').ToString() : run.ToString(), start * size));
        }

        // the library tells copiers of text a wrong number for characters beyond the first 65,536, so these are spoken as well
        string said = spoken.ToString();
        return new SetLine(runs, size, x * size, turns || said != drawn.ToString() || said.Any(char.IsSurrogate) ? said + (goesOn ? " " : "") : null);
    }

    private static IEnumerable<Word> Words(Wording wording)
    {
        bool isFirst = true;
        bool followsNumber = false;
        foreach (string part in Substitutes.Clean(wording.Words).Split(' '))
        {
            // a wording that begins with a space stands apart from the one before
            bool hasSpace = !isFirst;
            isFirst = false;
            if (part.Length == 0)
            {
                continue;
            }

            bool isBound = followsNumber && char.IsLetter(part[0]);
            followsNumber = IsNumber(part);
            foreach (Word word in Printable(part, wording.IsBold))
            {
                yield return word with { HasSpaceBefore = hasSpace, IsBound = isBound && hasSpace };
                hasSpace = false;
            }
        }
    }

    // 16, 8.3, 1/4, ½: what it counts stays on its line
    private static bool IsNumber(string part)
        => char.IsNumber(part[0]) && char.IsNumber(part[^1]) && part.All(c => char.IsNumber(c) || c is '.' or ',' or '/');

    // A word is one piece unless characters in it have to be told by their numbers.
    private static IEnumerable<Word> Printable(string part, bool isBold)
    {
        FontFace usual = Face(isBold);
        double width = 0;
        bool isUsual = true;
        foreach (char c in part)
        {
            isUsual &= usual.Has(c);
            width += usual.WidthOf(c);
        }

        if (isUsual)
        {
            yield return new Word(part, part, isBold, false, width) { IsUsual = true };
            yield break;
        }

        StringBuilder drawn = new();
        StringBuilder spoken = new();
        List<string> unknown = [];
        foreach (string element in Elements(part).SelectMany(e => Printed(e, isBold)))
        {
            string? print = FontFaces.FaceFor(element, isBold) is not null ? element : Known(Substitutes.For(element), isBold);
            if (print is null)
            {
                if (drawn.Length > 0)
                {
                    yield return Word.Of(ArabicForms.Join(drawn.ToString()), spoken.ToString(), isBold);
                    drawn.Clear();
                    spoken.Clear();
                }

                unknown.Add(element);
                if (unknown.Count == MostNumbers)
                {
                    yield return Word.Of(Substitutes.Numbers(unknown), string.Concat(unknown), isBold);
                    unknown.Clear();
                }

                continue;
            }

            if (unknown.Count > 0)
            {
                yield return Word.Of(Substitutes.Numbers(unknown), string.Concat(unknown), isBold);
                unknown.Clear();
            }

            drawn.Append(print);
            spoken.Append(element);
        }

        if (unknown.Count > 0)
        {
            yield return Word.Of(Substitutes.Numbers(unknown), string.Concat(unknown), isBold);
        }

        if (drawn.Length > 0)
        {
            yield return Word.Of(ArabicForms.Join(drawn.ToString()), spoken.ToString(), isBold);
        }
    }

    // Where no face has a letter together with its marks, each is printed by itself.
    private static IEnumerable<string> Printed(string element, bool isBold) => FontFaces.FaceFor(element, isBold) is not null
        ? [element]
        : element.EnumerateRunes().Select(r => r.ToString());

    private static string? Known(string? substitute, bool isBold)
        => substitute is not null && Elements(substitute).All(e => FontFaces.FaceFor(e, isBold) is not null) ? substitute : null;

    private static FontFace Face(bool isBold) => isBold ? FontFaces.Bold : FontFaces.Plain;

    private static FontFace FaceOf(string element, bool isBold) => FontFaces.FaceFor(element, isBold) ?? Face(isBold);

    private static double WidthOf(FontFace face, string element)
    {
        double width = 0;
        foreach (Rune rune in element.EnumerateRunes())
        {
            width += face.WidthOf(rune.Value);
        }

        return width;
    }

    private static IEnumerable<string> Elements(string words)
    {
        if (words.All(c => c < '\u0300'))
        {
            return words.Select(c => c.ToString());
        }

        List<string> elements = [];
        TextElementEnumerator each = StringInfo.GetTextElementEnumerator(words);
        while (each.MoveNext())
        {
            elements.Add(each.GetTextElement());
        }

        return elements;
    }

    /// <summary>A word as it is drawn and as it is spoken; widths in parts of the size.</summary>
    private sealed record Word(string Drawn, string Spoken, bool IsBold, bool HasSpaceBefore, double Width)
    {
        /// <summary>Whether it is drawn as written, in the usual face of its weight.</summary>
        public bool IsUsual { get; init; }

        /// <summary>Whether it tells what the number before it counts, and so stays on its line.</summary>
        public bool IsBound { get; init; }

        public double Space => Face(IsBold).WidthOf(' ');

        public static Word Of(string drawn, string spoken, bool isBold)
            => new(drawn, spoken, isBold, false, Elements(drawn).Sum(e => WidthOf(FaceOf(e, isBold), e)));

        /// <summary>The most of it that fits, at least one character, and the rest; null when it is one character.</summary>
        public (Word First, Word Second)? Split(double room)
        {
            List<string> elements = [.. Elements(Drawn)];
            if (elements.Count < 2)
            {
                return null;
            }

            int fitting = 0;
            double width = 0;
            foreach (string element in elements)
            {
                width += WidthOf(FaceOf(element, IsBold), element);
                if (width > room)
                {
                    break;
                }

                fitting++;
            }

            int cut = elements.Take(Math.Clamp(fitting, 1, elements.Count - 1)).Sum(e => e.Length);

            // what is drawn otherwise than spoken cannot be cut alike; then each half speaks as it is drawn
            string spoken = Spoken == Drawn || Spoken.Length != Drawn.Length ? Drawn : Spoken;
            return (
                Of(Drawn[..cut], spoken[..cut], IsBold) with { HasSpaceBefore = HasSpaceBefore },
                Of(Drawn[cut..], spoken[cut..], IsBold));
        }
    }
}
