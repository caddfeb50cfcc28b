using Scuff.Stance;
using Scuff.Steps;

namespace Tests.Steps;

/// <summary>
/// The catalogue held against the glossaries of the trade. Each fact has the key and the address of the page that states it beside
/// it; the facts were taken from those pages, the sentences are ours.
/// </summary>
public sealed class CatalogueOutsideTests
{
    /// <summary>
    /// Entry, what the page says, the positions that follow from it, key and address of the page. A position is count, foot (S the
    /// named foot, O the other), action, direction, contact, weight and turn in eighths to the right, all as the right foot names it.
    /// </summary>
    public static TheoryData<string, string, string, string, string> Facts => new()
    {
        { "sailor_step", "A sailor starts by crossing behind with the foot it is named by, then side, side.", "1 S step cross-behind ball weight, & O step side ball weight, 2 S step side flat weight", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "sailor_forward", "A forward sailor crosses in front first.", "1 S step cross-front flat weight, & O step side ball weight, 2 S step side flat weight", "triples", "https://kandykane-ck.blogspot.com/2019/11/getting-to-know-line-dancing-actions.html" },
        { "coaster_back", "A coaster goes back, together, forward; the third step opposite to the first.", "1 S step back ball weight, & O step together ball weight, 2 S step forward flat weight", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "coaster_forward", "A forward coaster goes forward, together, back.", "1 S step forward ball weight, & O step together ball weight, 2 S step back flat weight", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "slow_coaster", "A slow coaster takes a count a step and holds the fourth.", "1 S step back ball weight, 2 O step together ball weight, 3 S step forward flat weight, 4 - hold in-place none free", "horndal_se", "https://www.horndals-linedance.se/steg-terminologi/" },
        { "coaster_cross", "A coaster cross ends across instead of forward.", "1 S step back ball weight, & O step together ball weight, 2 S step cross-front flat weight", "skive_dk", "https://www.skivecountryliners.dk/info?id=25" },
        { "vine", "A vine goes side, behind, side, touch, named by its direction.", "1 S step side flat weight, 2 O step cross-behind ball weight, 3 S step side flat weight, 4 O touch together ball free", "evo_ch", "https://evolution-gl.ch/index.php/tanzrepertoire/grundschritte" },
        { "vine_quarter", "A vine with a quarter turns on the third step.", "1 S step side flat weight, 2 O step cross-behind ball weight, 3 S step forward flat weight turn +2, 4 O touch together ball free", "evo_ch", "https://evolution-gl.ch/index.php/tanzrepertoire/grundschritte" },
        { "weave_cross", "A weave may start in front: over, side, behind, side.", "1 O step cross-front flat weight, 2 S step side flat weight, 3 O step cross-behind ball weight, 4 S step side flat weight", "mavericks", "http://www.midlandmavericks.com/line-dancing-terms.html" },
        { "behind_side_cross", "Behind, side, cross in two counts.", "1 S step cross-behind ball weight, & O step side ball weight, 2 S step cross-front flat weight", "horndal_se", "https://www.horndals-linedance.se/steg-terminologi/" },
        { "behind_quarter_step", "Behind, quarter, step turns away from the foot that crosses.", "1 S step cross-behind ball weight, & O step forward ball weight turn -2, 2 S step forward flat weight", "horndal_se", "https://www.horndals-linedance.se/steg-terminologi/" },
        { "pivot_half", "A half pivot steps forward and turns away from the stepping foot, weight ending on the other foot.", "1 S step forward ball weight, 2 O pivot in-place ball weight turn -4", "taipei_p", "https://taipeidancers.blogspot.com/2013/09/terminology-p.html" },
        { "pivot_quarter", "So does a quarter pivot.", "1 S step forward ball weight, 2 O pivot in-place ball weight turn -2", "taipei_p", "https://taipeidancers.blogspot.com/2013/09/terminology-p.html" },
        { "pivot_three_quarter", "And one of three quarters.", "1 S step forward ball weight, 2 O pivot in-place ball weight turn -6", "n51_fr", "http://www.thenewfiftyone.fr/voici-la-liste-des-pas-de-bases.html" },
        { "military_turn", "A military turn is two half pivots.", "1 S step forward ball weight, 2 O pivot in-place ball weight turn -4, 3 S step forward ball weight, 4 O pivot in-place ball weight turn -4", "taipei_p", "https://taipeidancers.blogspot.com/2013/09/terminology-p.html" },
        { "paddle_turn", "A paddle keeps the weight on the turning foot.", "1 S press forward ball free, 2 O pivot in-place ball free turn -2", "dancedict", "http://dancedictionary.com/DictP.html" },
        { "chug_turn", "A chug pushes round with one foot and never moves the weight.", "1 S press side ball free turn -2, 2 S press side ball free turn -2, 3 S press side ball free turn -2, 4 S press side ball free turn -2", "lforever", "http://linedanceforever.com/htmls/terminology.html" },
        { "monterey_half", "A monterey points, turns towards the pointing foot as it closes, points the other and closes.", "1 S point side toe free, 2 S step together flat weight turn +4, 3 O point side toe free, 4 O step together flat weight", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "monterey_quarter", "So does a quarter monterey.", "1 S point side toe free, 2 S step together flat weight turn +2, 3 O point side toe free, 4 O step together flat weight", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "unwind_behind", "Unwinding from a cross behind turns towards the foot that crossed.", "1 S touch cross-behind ball free, 2 O unwind in-place ball weight turn +4", "dusty_dk", "https://dustyboots.dk/step-ordbog" },
        { "unwind_front", "Unwinding from a cross in front turns away from the foot that crossed.", "1 S step cross-front ball both, 2 O unwind in-place ball weight turn -4", "berner_de", "https://www.berner-liners.de/grundbegriffe/" },
        { "chaine_turn", "A chaine turn is a full turn in two steps.", "1 S step forward ball weight turn +2, 2 O step together ball weight turn +6", "sowbugs", "https://www.sowbugs-linedancers.de/was-ist-line-dance/line-dance-schrittlexikon/" },
        { "full_turn_forward", "A travelling full turn to the right starts with the left foot.", "1 O step back flat weight turn +4, 2 S step forward flat weight turn +4", "ede_nl", "https://countrylinedanceede.nl/dans-begrippen/" },
        { "shuffle_forward", "A shuffle goes step, together, step in two counts.", "1 S step forward flat weight, & O step together ball weight, 2 S step forward flat weight", "passion", "http://passion-linedance-club.blogspot.com/p/linedance-terms-1.html" },
        { "shuffle_back", "A shuffle back likewise.", "1 S step back ball weight, & O step together ball weight, 2 S step back flat weight", "passion", "http://passion-linedance-club.blogspot.com/p/linedance-terms-1.html" },
        { "chasse", "A chasse goes side, together, side.", "1 S step side flat weight, & O step together ball weight, 2 S step side flat weight", "lforever", "http://linedanceforever.com/htmls/terminology.html" },
        { "triple_in_place", "A triple step is danced on the spot.", "1 S step in-place flat weight, & O step in-place ball weight, 2 S step in-place flat weight", "palm", "http://palmcoastlinedance.weebly.com/steps-and-defs.html" },
        { "cross_shuffle", "A cross shuffle crosses, steps side, crosses again with the same foot.", "1 S step cross-front flat weight, & O step side ball weight, 2 S step cross-front flat weight", "ede_nl", "https://countrylinedanceede.nl/dans-begrippen/" },
        { "lock_step_forward", "A lock step locks the second foot behind.", "1 S step forward flat weight, 2 O step lock-behind ball weight, 3 S step forward flat weight, 4 O brush forward ball free", "passion", "http://passion-linedance-club.blogspot.com/p/linedance-terms-1.html" },
        { "lock_shuffle_forward", "A locking shuffle locks on the and.", "1 S step forward flat weight, & O step lock-behind ball weight, 2 S step forward flat weight", "n51_fr", "http://www.thenewfiftyone.fr/voici-la-liste-des-pas-de-bases.html" },
        { "camel_walk", "A camel walk slides the second foot up behind.", "1 S step forward flat weight, 2 O step lock-behind ball weight", "lforever", "http://linedanceforever.com/htmls/terminology.html" },
        { "anchor_step", "An anchor step locks behind and changes weight twice in place.", "1 S step lock-behind ball weight, & O step in-place ball weight, 2 S step in-place flat weight", "berner_de", "https://www.berner-liners.de/grundbegriffe/" },
        { "cross_rock", "A cross rock comes back to the other foot.", "1 S rock cross-front flat weight, 2 O recover in-place flat weight", "skive_dk", "https://www.skivecountryliners.dk/info?id=25" },
        { "rock_recover_back", "A rock back comes forward again on the other foot.", "1 S rock back ball weight, 2 O recover in-place flat weight", "n51_fr", "http://www.thenewfiftyone.fr/voici-la-liste-des-pas-de-bases.html" },
        { "ball_change", "A ball change is an and before its count, weight on both steps.", "& S step back ball weight, 1 O step in-place flat weight", "palm", "http://palmcoastlinedance.weebly.com/steps-and-defs.html" },
        { "kick_ball_change", "A kick ball change kicks without weight, and changes on the and.", "1 S kick forward none free, & S step together ball weight, 2 O step in-place flat weight", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "kick_ball_cross", "A kick ball cross ends across.", "1 S kick diag-forward none free, & S step together ball weight, 2 O step cross-front flat weight", "ale_se", "https://danceinlineale.se/Stegbeskrivning.html" },
        { "kick_ball_point", "A kick ball point ends pointing without weight.", "1 S kick forward none free, & S step together ball weight, 2 O point side toe free", "ale_se", "https://danceinlineale.se/Stegbeskrivning.html" },
        { "heel_ball_change", "A heel ball change digs the heel first.", "1 S dig forward heel free, & S step together ball weight, 2 O step in-place flat weight", "stompers_de", "https://linedancestompers.de/?p=2509" },
        { "jazz_box", "A jazz box goes across, back, side, together.", "1 S step cross-front flat weight, 2 O step back flat weight, 3 S step side flat weight, 4 O step together flat weight", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "rumba_box_forward", "A rumba box goes side, together, forward, then side, together, back.", "1 S step side flat weight, 2 O step together flat weight, 3 S step forward flat weight, 4 - hold in-place none free, 5 O step side flat weight, 6 S step together flat weight, 7 O step back flat weight, 8 - hold in-place none free", "ede_nl", "https://countrylinedanceede.nl/dans-begrippen/" },
        { "box_step", "A box step goes forward, side, together, then back, side, together.", "1 S step forward flat weight, 2 O step side flat weight, 3 S step together flat weight, 4 - hold in-place none free, 5 O step back flat weight, 6 S step side flat weight, 7 O step together flat weight, 8 - hold in-place none free", "renegades_nl", "http://www.renegades-linedance.nl/index.php?option=com_content&view=article&id=92&Itemid=44" },
        { "scissor", "A scissor step goes side, together, cross.", "1 S step side flat weight, & O step together ball weight, 2 S step cross-front flat weight", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "heel_switches", "Heel switches close on the and between the heels.", "1 S dig forward heel free, & S step together ball weight, 2 O dig forward heel free, & O step together ball weight", "stompers_de", "https://linedancestompers.de/?p=2509" },
        { "charleston_touch", "A charleston touches forward, steps back, touches back, steps forward.", "1 S touch forward toe free, 2 S step back flat weight, 3 O touch back toe free, 4 O step forward flat weight", "palm", "http://palmcoastlinedance.weebly.com/steps-and-defs.html" },
        { "charleston_kick", "The kicking charleston steps, kicks, steps back and touches back.", "1 S step forward flat weight, 2 O kick forward none free, 3 O step back flat weight, 4 S touch back toe free", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "nightclub_basic", "A nightclub basic goes side, then rocks behind and recovers.", "1 S step side flat weight, 2 O rock cross-behind ball weight, & S recover in-place flat weight", "nc2s_dc", "http://www.dancecentral.info/ballroom/club-dances/two-step" },
        { "heel_grind_quarter", "A heel grind turns towards the grinding foot.", "1 S grind forward heel weight, 2 O step back flat weight turn +2", "ede_nl", "https://countrylinedanceede.nl/dans-begrippen/" },
        { "heel_strut", "A heel strut puts the heel down without weight, then lowers the foot.", "1 S dig forward heel free, 2 S drop in-place flat weight", "granville_fr", "https://justcountrygranville.blog4ever.com/articles/lexique-des-pas-de-danse" },
        { "heel_split", "A heel split opens both heels and closes them.", "1 B split-heels out ball both, 2 B split-heels in ball both", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "toe_fan", "A toe fan swings the toe out and in, weight unchanged.", "1 S fan-toe out heel free, 2 S fan-toe in heel free", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "applejack", "An applejack opens the toe of one foot with the heel of the other to one side, then to the other, weight shared.", "1 B applejack to-same heel both, & B swivel centre flat both, 2 B applejack to-other heel both, & B swivel centre flat both", "nta_de", "http://linedance-connection.de/linedance/terminologie" },
        { "cha_cha_basic", "A cha cha basic rocks forward, dances three steps, rocks back, dances three steps.", "1 S rock forward flat weight, 2 O recover in-place flat weight, 3 S step back flat weight, & O step together ball weight, 4 S step back flat weight, 5 O rock back ball weight, 6 S recover in-place flat weight, 7 O step forward flat weight, & S step together ball weight, 8 O step forward flat weight", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "samba_basic", "A samba basic steps on 1, a, 2.", "1 S step forward flat weight, a O step together ball weight, 2 S step in-place flat weight", "samba_idta", "https://www.freezingblue.com/flashcards/print_preview.cgi?cardsetID=167105" },
        { "volta", "A volta crosses on the beats and steps side on the a.", "1 S step cross-front flat weight, a O step side ball weight, 2 S step cross-front flat weight", "samba_intro", "https://pdfslide.us/documents/introduction-to-samba-sb-intro-1-introduction-to-samba-history-the-samba-is.html" },
        { "botafogo", "A botafogo crosses, steps side on the a, and replaces the weight.", "1 S step cross-front flat weight, a O step side ball weight, 2 S recover in-place flat weight", "samba_kk", "https://ck-kandykane.blogspot.com/2014/08/samba-syllabus-figures-8-16.html" },
        { "whisk", "A samba whisk goes side, behind on the a, and replaces the weight.", "1 S step side flat weight, a O step cross-behind ball weight, 2 S recover in-place flat weight", "samba_idta", "https://www.freezingblue.com/flashcards/print_preview.cgi?cardsetID=167105" },
        { "twinkle", "A twinkle crosses, steps side and closes in three counts.", "1 S step cross-front flat weight, 2 O step side ball weight, 3 S step together flat weight", "triples", "https://kandykane-ck.blogspot.com/2019/11/getting-to-know-line-dancing-actions.html" },
        { "waltz_basic_forward", "A waltz basic steps forward, closes and changes weight in place.", "1 S step forward flat weight, 2 O step together ball weight, 3 S step together flat weight", "dusty_dk", "https://dustyboots.dk/step-ordbog" },
        { "waltz_balance", "A balance closes without weight and holds.", "1 S step side flat weight, 2 O touch together ball free, 3 - hold in-place none free", "fm", "http://www.fmlinedancers.com/glossary.html" },
        { "vaudeville", "A vaudeville crosses, steps side, shows the heel and closes, then does it to the other side.", "1 S step cross-front flat weight, & O step side ball weight, 2 S dig diag-forward heel free, & S step together ball weight, 3 O step cross-front flat weight, & S step side ball weight, 4 O dig diag-forward heel free, & O step together ball weight", "granville_fr", "https://justcountrygranville.blog4ever.com/articles/lexique-des-pas-de-danse" },
        { "touch", "A touch takes no weight.", "1 S touch together ball free", "taipei_t", "https://taipeidancers.blogspot.com/2013/09/terminology-t.html" },
        { "stomp", "A stomp takes the weight.", "1 S stomp together flat weight", "stepsinline", "https://stepsinline.com/classes/basic-steps-terms/" },
        { "scuff", "A scuff is made with the heel, without weight.", "1 S scuff forward heel free", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "brush", "A brush is made with the ball, without weight.", "1 S brush forward ball free", "basic_terms", "https://sound-a-motion.tripod.com/basicsteps.html" },
        { "hook", "A hook takes no weight.", "1 S hook across none free", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "hitch", "A hitch lifts the knee and takes no weight.", "1 S hitch up none free", "rays", "http://text.therayslinedanceclub.com/GLOSSARY-OF-BASIC-STEPS-FOR-BEGINNERS" },
        { "point", "A point takes no weight.", "1 S point side toe free", "stepsinline", "https://stepsinline.com/classes/basic-steps-terms/" },
        { "hip_bump", "A bump moves no foot and no weight.", "1 - bump to-same none free", "palm", "http://palmcoastlinedance.weebly.com/steps-and-defs.html" },
        { "bronco", "A bronco points to the side and lifts across.", "1 S point side toe free, 2 S hitch across none free", "apple_se", "http://www.appeljack.se/stegkombinationer.htm" },
    };

    [Theory]
    [MemberData(nameof(Facts))]
    public void The_catalogue_says_what_the_glossary_says(string id, string fact, string positions, string key, string url)
    {
        StepDefinition? entry = StepCatalogue.Default.Find(id);

        Assert.True(entry is not null, $"{fact} ({url}), but there is no {id}");
        Assert.True(positions == string.Join(", ", entry.Rows.Select(Position)), $"{fact} ({key}, {url})\n  page: {positions}\n  ours: {string.Join(", ", entry.Rows.Select(Position))}");
    }

    [Theory]
    [MemberData(nameof(Facts))]
    public void The_entry_names_the_page(string id, string fact, string positions, string key, string url)
    {
        Assert.NotEmpty(positions);
        Assert.True(StepCatalogue.Default.Find(id)!.Sources.Contains(key), $"{fact}: {id} does not name {key}");
        Assert.Equal(url, StepCatalogue.Default.Sources[key].Url);
    }

    [Fact]
    public void What_the_pages_agree_on_about_turning()
    {
        // turns of figures named by their first foot; towards that foot is positive
        (string Id, int Eighths)[] turns =
        [
            ("pivot_quarter", -2), ("pivot_half", -4), ("pivot_three_quarter", -6), ("military_turn", -8), ("unwind_front", -4), ("unwind_behind", 4),
            ("monterey_quarter", 2), ("monterey_half", 4), ("chaine_turn", 8), ("heel_grind_quarter", 2), ("vine_quarter", 2), ("full_turn_forward", 8),
        ];

        Assert.All(turns, t => Assert.Equal(Turn.FromEighths(t.Eighths), StepCatalogue.Default.Find(t.Id)!.TotalTurn));
    }

    private static string Position(PatternRow row)
    {
        string foot = row.Foot switch { RelativeFoot.Same => "S", RelativeFoot.Other => "O", RelativeFoot.Both => "B", _ => "-" };
        string weight = row.Action.Effect switch { WeightEffect.Takes => "weight", WeightEffect.Shares => "both", _ => "free" };
        string turn = row.Action.Turn.Sign == 0 ? "" : $" turn {(row.Action.Turn.Sign > 0 ? "+" : "")}{row.Action.Turn.Eighths}";
        return $"{row.Label} {foot} {row.Action.Traits.Word} {Hyphened(row.Action.Direction)} {Contact(row.Action.Contact)} {weight}{turn}";
    }

    private static string Contact(Contact contact) => contact == Scuff.Stance.Contact.Air ? "none" : contact.ToString().ToLowerInvariant();

    // DiagonalForward is written diag-forward in the data; a movement towards the named side is one to the right
    private static string Hyphened(Direction direction)
    {
        string words = string.Concat(direction.ToString().Replace("Diagonal", "Diag", StringComparison.Ordinal).Select(c => char.IsUpper(c) ? "-" + char.ToLowerInvariant(c) : char.ToString(c)));
        return direction switch { Direction.Unstated => "any", Direction.Right => "to-same", Direction.Left => "to-other", _ => words[1..] };
    }
}
