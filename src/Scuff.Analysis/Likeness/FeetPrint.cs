using System.Text;
using Scuff.Dances;
using Scuff.Stance;
using Scuff.Steps;
using Scuff.Timelines;
using Scuff.Timing;

namespace Scuff.Analysis.Likeness;

/// <summary>
/// What the feet of a dance do, section by section, in a form to keep and to compare: which foot does what, which way, with what turn and for how long. Words,
/// styling, arms and the part of the foot play no role. Equal by value.
/// </summary>
/// <param name="Sections">Its sections in order, without tags.</param>
public sealed record FeetPrint(ValueList<FeetSection> Sections)
{
    // Twelve parts of a count hold halves, thirds and quarters.
    private const int Parts = 12;
    private const char Between = '/';
    private const int StepLength = 6;

    // Numbers are written as printable characters from here on, two of them for lengths.
    private const char Zero = '0';
    private const int Digits = 72;
    private const int Straight = 32;

    /// <summary>The print of a dance as text; empty when it has no steps.</summary>
    /// <param name="analysis">The dance.</param>
    public static string Of(DanceAnalysis analysis)
    {
        ArgumentNullException.ThrowIfNull(analysis);
        StringBuilder print = new();
        Dictionary<Section, List<TimedStep>> danced = new(ReferenceEqualityComparer.Instance);
        foreach (TimedStep step in analysis.OnceTimeline.Steps)
        {
            if (step.Action.Kind is not (ActionKind.Hold or ActionKind.Unknown))
            {
                (danced.TryGetValue(step.Section, out List<TimedStep>? steps) ? steps : danced[step.Section] = []).Add(step);
            }
        }

        foreach (Part part in analysis.Dance.Parts)
        {
            foreach (Section section in part.Sections)
            {
                if (danced.TryGetValue(section, out List<TimedStep>? steps))
                {
                    print.Append(print.Length == 0 ? "" : Between).Append(part.Name).Append(section.Number).Append(' ');
                    Write(print, steps);
                }
            }
        }

        return print.ToString();
    }

    /// <summary>Reads the text of a print; sections that are none are passed over.</summary>
    public static FeetPrint Read(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        List<FeetSection> sections = [];
        foreach (string section in text.Split(Between, StringSplitOptions.RemoveEmptyEntries))
        {
            int space = section.LastIndexOf(' ');
            if (space < 0 || (section.Length - space - 1) % StepLength != 0)
            {
                continue;
            }

            List<FeetStep> steps = [];
            for (int i = space + 1; i < section.Length; i += StepLength)
            {
                steps.Add(new FeetStep(
                    ((section[i] - Zero) * Digits) + section[i + 1] - Zero, section[i + 2] - Zero, section[i + 3] - Zero, section[i + 4] - Zero, section[i + 5] - Zero - Straight));
            }

            sections.Add(new FeetSection(section[..space], steps.ToValueList()));
        }

        return new FeetPrint(sections.ToValueList());
    }

    private static void Write(StringBuilder print, List<TimedStep> steps)
    {
        for (int i = 0; i < steps.Count; i++)
        {
            Ratio lasts = i + 1 < steps.Count ? (steps[i + 1].At - steps[i].At).Value : steps[i].Whole.Length.Value;
            int parts = Math.Clamp((lasts * Parts).Floor, 0, (Digits * Digits) - 1);
            StepAction action = steps[i].Action;
            print.Append((char)(Zero + (parts / Digits))).Append((char)(Zero + (parts % Digits)));
            print.Append((char)(Zero + (int)Plain(action.Kind))).Append((char)(Zero + (int)action.Foot)).Append((char)(Zero + (int)Plain(action.Direction)));
            print.Append((char)(Zero + Straight + Math.Clamp(action.Turn.Sign * action.Turn.Amount.Floor, -Straight, Straight)));
        }
    }

    // A rock is a step until one knows what follows, and a tap is a touch: the feet do the same.
    private static ActionKind Plain(ActionKind kind) => kind switch
    {
        ActionKind.Rock => ActionKind.Step,
        ActionKind.Tap => ActionKind.Touch,
        _ => kind,
    };

    private static Direction Plain(Direction direction) => direction is Direction.Unstated ? Direction.InPlace : direction;
}
