using System.Globalization;
using Scuff.Analysis.Floor;
using Scuff.Stance;

namespace Scuff.Sheets.Drawings;

/// <summary>A foot diagram told in words.</summary>
internal static class FootWords
{
    /// <summary>The words of a diagram.</summary>
    public static string Of(IEnumerable<FootMoment> moments, DancerSize size, string heading, string? up, DrawingLabels labels)
    {
        string first = up is null ? Format(labels.Feet, heading) : Format(labels.FeetFacing, heading, up);
        return string.Join(' ', moments.Select(m => Format(labels.OnCount, m.Label, Of(m, size, labels))).Prepend(first));
    }

    private static string Of(FootMoment moment, DancerSize size, DrawingLabels labels)
    {
        if (!moment.IsCertain)
        {
            return labels.NotUnderstood;
        }

        List<string> words = [];
        if (moment.Turn != Turn.None)
        {
            words.Add(Format(moment.Turn.Sign > 0 ? labels.TurnRight : labels.TurnLeft, SheetWords.Amount(moment.Turn.Amount / 8)));
        }

        foreach (Foot foot in (ReadOnlySpan<Foot>)[Foot.Right, Foot.Left])
        {
            FootPose after = moment.After.Of(foot);
            bool travels = moment.Travels(foot);
            if (travels || moment.Twists(foot, size) || after.Contact != moment.Before.Of(foot).Contact)
            {
                string way = travels ? Way(after.Place - moment.Before.Of(foot).Place, moment.After.Facing, labels) : labels.InPlace;
                words.Add(Format(foot == Foot.Right ? labels.RightFoot : labels.LeftFoot, way + Meets(after.Contact, labels)));
            }
        }

        if (moment.After.Weight != moment.Before.Weight)
        {
            switch (moment.After.Weight)
            {
                case Weight.Left:
                    words.Add(labels.WeightOnLeft);
                    break;
                case Weight.Right:
                    words.Add(labels.WeightOnRight);
                    break;
                case Weight.Shared:
                    words.Add(labels.WeightOnBoth);
                    break;
                case Weight.Unknown:
                    break;
                default:
                    throw new ArgumentOutOfRangeException(nameof(moment));
            }
        }

        return words.Count == 0 ? labels.FeetStay : string.Join(", ", words);
    }

    // As the dancer feels it: relative to the body after the turn, to the nearest eighth.
    private static string Way(FloorPoint way, double facing, DrawingLabels labels)
    {
        FloorPoint felt = way.Turned(-facing);
        int eighth = (int)Math.Round(Math.Atan2(felt.X, felt.Y) / (Math.PI / 4), MidpointRounding.AwayFromZero);
        return eighth switch
        {
            0 => labels.Forward,
            1 => labels.ForwardRight,
            2 => labels.ToTheRight,
            3 => labels.BackRight,
            4 or -4 => labels.Back,
            -3 => labels.BackLeft,
            -2 => labels.ToTheLeft,
            _ => labels.ForwardLeft,
        };
    }

    private static string Meets(Contact contact, DrawingLabels labels) => contact switch
    {
        Contact.Flat => "",
        Contact.Ball => " " + labels.OnBall,
        Contact.Heel => " " + labels.OnHeel,
        Contact.Toe => " " + labels.OnToe,
        Contact.Air => " " + labels.InTheAir,
        _ => throw new ArgumentOutOfRangeException(nameof(contact)),
    };

    private static string Format(string words, params object[] arguments) => string.Format(CultureInfo.InvariantCulture, words, arguments);
}
