using Scuff.Analysis;
using Scuff.Analysis.Easier;
using Scuff.Analysis.Levels;
using Scuff.Dances;
using Scuff.Diagnostics;
using Scuff.Prose;
using Scuff.Steps;

namespace Scuff.App.Easing;

/// <summary>An easier version of a dance, as a text of its own.</summary>
/// <param name="Text">The text: its title says what it is, its author stays, and a note says whom to ask.</param>
/// <param name="Taken">What was made easier.</param>
/// <param name="Left">Moves for which no easier way was found.</param>
internal sealed record EasierText(string Text, ValueList<EasierOffer> Taken, ValueList<EasierPlace> Left)
{
    private const string Mark = " (easier)";

    /// <summary>Makes it.</summary>
    /// <param name="analysis">The dance.</param>
    /// <param name="question">What has to be easier in it.</param>
    public static EasierText Of(DanceAnalysis analysis, EasierQuestion question)
    {
        // tidied first: every count line then has a line of its own and says itself what is danced, not "repeat 1-4"
        Draft tidy = DanceReader.Read(DanceWriter.Tidy(analysis.Draft));
        EasierOffers offers = new(DanceAnalysis.Of(tidy), question);
        List<EasierOffer> taken = [.. offers.BestForAll(besideOptions: false)];
        HashSet<int> spelled = [];
        while (true)
        {
            Dance meant = EasierDance.Take(tidy.Dance, taken.Select(offer => offer.Way));
            string text = EditWriter.Apply(tidy.Text, LineRewriter.Edits(tidy, meant, spelled));
            HashSet<Section> wrong = Wrong(tidy.Dance, meant, DanceReader.Read(text).Dance);
            if (wrong.Count == 0)
            {
                return new EasierText(
                    Headed(text, analysis.Dance),
                    taken.ToValueList(),
                    offers.Places.Where(place => !taken.Exists(offer => Covers(offer.Way, place))).ToValueList());
            }

            // words of a section that are read otherwise: action by action, and if that is no help, as it was
            HashSet<int> lines = [.. wrong.SelectMany(section => section.Lines).Select(line => line.Number)];
            if (lines.IsSubsetOf(spelled))
            {
                taken.RemoveAll(offer => wrong.Contains(offer.Way.Section));
            }

            spelled.UnionWith(lines);
        }
    }

    private static bool Covers(EasierWay way, EasierPlace place)
        => ReferenceEquals(way.Section, place.Section) && way.Counts.Contains(place.Move.Steps[0].Count.Place);

    // Sections (as they were) that are not danced as they should be.
    private static HashSet<Section> Wrong(Dance before, Dance meant, Dance written)
    {
        HashSet<Section> wrong = new(ReferenceEqualityComparer.Instance);
        Section[] was = [.. AllOf(before)];
        Section[] shall = [.. AllOf(meant)];
        Section[] are = [.. AllOf(written)];
        for (int i = 0; i < was.Length; i++)
        {
            if (i >= are.Length || shall[i].Length != are[i].Length || !Bare(shall[i]).SequenceEqual(Bare(are[i])))
            {
                wrong.Add(was[i]);
            }
        }

        return wrong;
    }

    private static IEnumerable<Section> AllOf(Dance dance) => dance.Sections.Concat(dance.Tags.Select(tag => tag.Body));

    private static IEnumerable<(Timing.Counts Place, StepAction Action)> Bare(Section section)
        => section.Steps.OrderBy(step => step.Count.Place).Select(step => (step.Count.Place, step.Action with { Contact = default }));

    // The sheets' custom: the title says that it is another dance, the author stays named, and she is asked before it is handed on.
    private static string Headed(string text, Dance dance)
    {
        Draft draft = DanceReader.Read(text);
        Level level = DanceAnalysis.Of(draft).Level.Level;
        if (draft.Dance.Header.Any(field => field.Key == "level"))
        {
            text = EditWriter.Apply(text, EditWriter.ToTextEdits(draft, new DanceEdit.SetHeader("level", LevelPhrases.Name(level))));
            draft = DanceReader.Read(text);
        }

        string title = dance.Title.Length > 0 ? dance.Title : "this dance";
        string author = dance.Header.FirstOrDefault(field => field.Key == "by")?.Value is { Length: > 0 } by ? by : "the choreographer";
        string words = $"made easier from {title}; ask {author} before you hand it on";
        List<TextEdit> edits =
        [
            draft.Dance.Header.FirstOrDefault(field => field.Key == "permission") is { } permission
                ? new TextEdit(new TextSpan(permission.Span.End, 0), "; " + words)
                : EditWriter.ToTextEdits(draft, new DanceEdit.SetHeader("permission", words))[0],
        ];
        if (draft.Dance.TitleSpan.Length > 0)
        {
            edits.Add(new TextEdit(new TextSpan(draft.Dance.TitleSpan.End, 0), Mark));
        }

        return EditWriter.Apply(text, edits);
    }
}
