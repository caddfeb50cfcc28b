using Scuff.Analysis.Planning;

namespace Scuff.App.Programmes;

/// <summary>What a decision of hers makes of a plan. The programme is left as it is: it is made anew afterwards.</summary>
internal static class EveningChange
{
    /// <summary>Pins a dance to a place. A dance that is pinned there takes the place this one leaves. What forbade it is let go.</summary>
    public static EveningPlan Pin(EveningPlan plan, string danceId, int stretch, int place)
    {
        EveningItem? line = plan.Programme?.Items.FirstOrDefault(i => i.SongKey.Length > 0 && (i.DanceId == danceId || i.OtherId == danceId));
        List<EveningPin> pins = [.. plan.Pins.Where(p => p.DanceId != danceId || p.Kind is not (EveningPinKind.At or EveningPinKind.Within or EveningPinKind.Somewhere or EveningPinKind.Never))];
        int there = pins.FindIndex(p => p.Kind == EveningPinKind.At && p.Stretch == stretch && p.Place == place);
        if (there >= 0)
        {
            pins[there] = line is null
                ? pins[there] with { Kind = EveningPinKind.Somewhere, Stretch = 0, Place = 0 }
                : pins[there] with { Stretch = line.Stretch, Place = line.Place };
        }

        pins.Add(new EveningPin { Kind = EveningPinKind.At, DanceId = danceId, Stretch = stretch, Place = place });

        // two that share a floor stay together where she puts one of them
        if (line is { OtherId.Length: > 0 } && !pins.Exists(p => p.Kind == EveningPinKind.Split && p.DanceId == line.DanceId && p.OtherId == line.OtherId))
        {
            pins.Add(new EveningPin { Kind = EveningPinKind.Split, DanceId = line.DanceId, OtherId = line.OtherId });
        }

        return plan with { Pins = pins };
    }

    /// <summary>Lets go what pins a dance.</summary>
    public static EveningPlan Unpin(EveningPlan plan, string danceId) => plan with
    {
        Pins =
        [
            .. plan.Pins.Where(p => p.Kind switch
            {
                EveningPinKind.At or EveningPinKind.Within or EveningPinKind.Somewhere or EveningPinKind.Closing => p.DanceId != danceId,
                EveningPinKind.Split => p.DanceId != danceId && p.OtherId != danceId,
                _ => true,
            }),
        ],
    };

    /// <summary>Forbids a dance; what pinned it is let go.</summary>
    public static EveningPlan Forbid(EveningPlan plan, string danceId)
    {
        EveningPlan free = Unpin(Allow(plan, danceId), danceId);
        return free with { Pins = [.. free.Pins, new EveningPin { Kind = EveningPinKind.Never, DanceId = danceId }] };
    }

    /// <summary>Lets go what forbids a dance.</summary>
    public static EveningPlan Allow(EveningPlan plan, string danceId)
        => plan with { Pins = [.. plan.Pins.Where(p => p.Kind != EveningPinKind.Never || p.DanceId != danceId)] };

    /// <summary>Decides that a dance is danced, wherever.</summary>
    public static EveningPlan Must(EveningPlan plan, string danceId)
    {
        EveningPlan allowed = Allow(plan, danceId);
        bool isPinned = allowed.Pins.Any(p => p.DanceId == danceId && p.Kind is EveningPinKind.At or EveningPinKind.Within or EveningPinKind.Somewhere);
        return isPinned ? allowed : allowed with { Pins = [.. allowed.Pins, new EveningPin { Kind = EveningPinKind.Somewhere, DanceId = danceId }] };
    }

    /// <summary>Says which song a dance is danced to.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="danceId">The dance.</param>
    /// <param name="songKey">Key of the song; empty for any.</param>
    public static EveningPlan Song(EveningPlan plan, string danceId, string songKey)
    {
        List<EveningPin> pins = [.. plan.Pins.Where(p => p.Kind != EveningPinKind.Song || p.DanceId != danceId)];
        if (songKey.Length > 0)
        {
            pins.Add(new EveningPin { Kind = EveningPinKind.Song, DanceId = danceId, SongKey = songKey });
        }

        return plan with { Pins = pins };
    }

    /// <summary>Notes that one more has asked for a dance; what forbade it is let go.</summary>
    public static EveningPlan Request(EveningPlan plan, string danceId)
    {
        EveningPlan allowed = Allow(plan, danceId);
        List<EveningRequest> requests = [.. allowed.Requests];
        int there = requests.FindIndex(r => r.DanceId == danceId);
        if (there >= 0)
        {
            requests[there] = requests[there] with { People = requests[there].People + 1 };
        }
        else
        {
            requests.Add(new EveningRequest { DanceId = danceId });
        }

        return allowed with { Requests = requests };
    }

    /// <summary>Takes back that a dance was asked for.</summary>
    public static EveningPlan Unrequest(EveningPlan plan, string danceId)
        => plan with { Requests = [.. plan.Requests.Where(r => r.DanceId != danceId)] };

    /// <summary>Whether a wish that is not met could still be met if she insists.</summary>
    public static bool CanInsist(ProgrammeMissedKind kind)
        => kind is not (ProgrammeMissedKind.NotThere or ProgrammeMissedKind.NoSong or ProgrammeMissedKind.NoCommonSong);
}
