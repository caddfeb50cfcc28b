using Tests.Corpus;

namespace Tests.Prose;

/// <summary>
/// Classes of wording that two more corpora of everyday sheets showed, each with neighbours that stand in no corpus: other feet, other moves,
/// another order. What is wanted is written out by hand, as in the corpus.
/// </summary>
public sealed class EverydayWordingTests
{
    [Theory]

    // a press that is recovered from had part of the weight
    [InlineData("R", "1-2 Press R forward, recover onto L", "1 R>R press:forward; 2 L>L recover")]
    [InlineData("L", "1-2 Press ball of L to side (1), recover R (2)", "1 L>L press:side; 2 R>R recover")]
    [InlineData("R", "1-2 Press R forward, touch R together", "1 R>L press:forward; 2 R>L touch:together")]

    // the heels come back to the centre
    [InlineData("both", "1-3 Twist right, left, return to the center with the weight on the left", "1 B>B twist; 2 B>B twist; 3 B>L twist")]
    [InlineData("both", "1-2 Swivel heels left, recover to centre", "1 B>B swivel-heels; 2 B>B swivel-heels")]

    // crossed jumps
    [InlineData("R", "1-2 Jump both feet apart, jump both feet crossed with right over left", "1 B>B jump:out; 2 B>B jump:cross-front")]
    [InlineData("R", "1-2 Jump out, jump with R crossed over L", "1 B>B jump:out; 2 B>B jump:cross-front")]
    [InlineData("R", "1-2 Jump with both feet forward, clap", "1 B>B jump:forward; 2 ->B clap")]

    // a turn of each step, said first
    [InlineData("R", "1-4 Turning 1/8 left on each count touch R to side four times",
        "1 R>L touch:side @10:30; 2 R>L touch:side @9:00; 3 R>L touch:side @7:30; 4 R>L touch:side @6:00")]
    [InlineData("R", "1-4 Turn 1/4 right on every step, walk R, L, R, L",
        "1 R>R step:forward @3:00; 2 L>L step:forward @6:00; 3 R>R step:forward @9:00; 4 L>L step:forward @12:00")]
    [InlineData("L", "1-2 1/4 left on each step: L forward, R forward", "1 L>L step:forward @9:00; 2 R>R step:forward @6:00")]

    // the foot a turn is made on is not where the weight ends
    [InlineData("R", "1-2 Point R to side, on the ball of L turn 1/4 right closing R beside L", "1 R>L point:side; 2 R>R step:together @3:00")]
    [InlineData("L", "1-2 Point L to side, on ball of R turn 1/2 left closing L beside R", "1 L>R point:side; 2 L>L step:together @6:00")]

    // feet behind a name are its own, with their places
    [InlineData("L", "1&2 coaster: L, R, L", "1 L>L step:back; 1& R>R step:together; 2 L>L step:forward")]
    [InlineData("L", "1-4 vine left: L, R, L, scuff R", "1 L>L step:side; 2 R>R step:cross-behind; 3 L>L step:side; 4 R>L scuff")]

    // lists without commas
    [InlineData("R", "1-4 walk R L clap hold", "1 R>R step:forward; 2 L>L step:forward; 3 ->L clap; 4 ->L hold")]

    // counts that are told in sentences
    [InlineData("L", "On counts 1 to 4 sway to the left, to the right, to the left and to the right", "1 L>L sway; 2 R>R sway; 3 L>L sway; 4 R>R sway")]
    [InlineData("R", "For 1&2 step the right foot back, bring the left foot next to it and step the right foot forward",
        "1 R>R step:back; 1& L>L step:together; 2 R>R step:forward")]
    [InlineData("L", "Counts 1 and 2: step left to the side, close the right foot to it", "1 L>L step:side; 2 R>R step:together")]
    [InlineData("L", "On count 1 step forward on the left foot, and on count 2 pivot half a turn to the right so that you face the back wall",
        "1 L>L step:forward; 2 R>R pivot @6:00")]

    // a full turn has a half on each of its two feet
    [InlineData("L", "1-2 full turn R travelling forward on L, R", "1 L>L step:back @6:00; 2 R>R step:forward @12:00")]
    [InlineData("L", "1-2 full turn over your right shoulder, stepping left then right", "1 L>L step:back @6:00; 2 R>R step:forward @12:00")]
    [InlineData("L", "1-2 full turn R fwd L & R", "1 L>L step:back @6:00; 2 R>R step:forward @12:00")]

    // the weight behind a turn, with what the body does
    [InlineData("R", "1-2 cross R behind L, unwind 1/2 R with weight R", "1 R>R step:cross-behind; 2 R>R unwind @6:00")]
    [InlineData("L", "1-2 Step L forward, turn 1/4 R rolling the hips, weight on R", "1 L>L step:forward; 2 R>R pivot @3:00")]

    // degrees that are a way, and degrees that turn
    [InlineData("L", "1-2 Step L to L 45 deg, touch R beside L", "1 L>L step:diag-forward; 2 R>L touch:together")]
    [InlineData("L", "1-2 turn 45 degrees L stepping L fwd, touch R", "1 L>L step:forward @10:30; 2 R>L touch:together")]

    // where the turn stands before the name of a figure to the side, and where it is in it
    [InlineData("L", "1&2 1/4 L chasse L", "1 L>L step:side @9:00; 1& R>R step:together; 2 L>L step:side")]
    [InlineData("L", "1&2 turn 1/2 left with a shuffle, L R L", "1 L>L step:side @9:00; 1& R>R step:together; 2 L>L step:forward @6:00")]

    // on one count
    [InlineData("L", "1-2 hop on R hooking L, step L", "1 R>R hop; 1 L>R hook; 2 L>L step")]
    [InlineData("L", "1-2 jump back on L kicking R, step R", "1 L>L jump:back; 1 R>L kick; 2 R>R step")]

    // how a figure ends, said once more; how far it turns, said anew
    [InlineData("L", "1&2 Mambo back left, bringing left next to right", "1 L>L rock:back; 1& R>R recover; 2 L>L step:together")]
    [InlineData("L", "1-4 Monterey 1/2 L: point L to side, 1/2 turn L bringing L next to R, point R to side, step R next to L\n5-8 Repeat with a 1/4 turn L",
        "1 L>R point:side; 2 L>L step:together @6:00; 3 R>L point:side; 4 R>R step:together; 5 L>R point:side; 6 L>L step:together @3:00; 7 R>L point:side; 8 R>R step:together")]

    // words before the move that have its way, or none
    [InlineData("both", "1-4 Travelling left: swivel heels left, toes left, heels left, clap", "1 B>B swivel; 2 B>B swivel; 3 B>B swivel; 4 ->B clap")]
    [InlineData("L", "1-2 Step, pivot: L forward, pivot ½ R", "1 L>L step:forward; 2 R>R pivot @6:00")]
    [InlineData("L", "1-2 LF swing forward, LF step together", "1 L>R sweep:forward; 2 L>L step:together")]

    // feet behind a row of places
    [InlineData("L", "7&8 behind, side, cross (L-R-L)", "7 L>L step:cross-behind; 7& R>R step:side; 8 L>L step:cross-front")]
    [InlineData("R", "1-4 side, behind, side, forward R L R L", "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:side; 4 L>L step:forward")]

    // a step with several bumps
    [InlineData("L", "1-3 Step L to side bumping hips L three times", "1 L>L step:side; 2 ->L bump; 3 ->L bump")]
    [InlineData("L", "1&2 Step L forward bumping hips L, then R, then L", "1 L>L step:forward; 1& ->L bump; 2 ->L bump")]

    // a ball between two moves is a step, however the counts could be shared out
    [InlineData("R", "1-6 shuffle forward R, L rock forward, recover, L kick ball cross",
        "1 R>R step:forward; 1& L>L step:together; 2 R>R step:forward; 3 L>L rock:forward; 4 R>R recover; 5 L>R kick; 5& L>L step:together; 6 R>R step:cross-front")]

    // such figures are quick or slow alike within a line
    [InlineData("L", "1-8 L shuffle fwd, R rock fwd, R shuffle back, L rock back",
        "1 L>L step:forward; 1& R>R step:together; 2 L>L step:forward; 3 R>R rock:forward; 4 L>L recover; 5 R>R step:back; 5& L>L step:together; 6 R>R step:back; "
        + "7 L>L rock:back; 8 R>R recover")]

    // as often as is said
    [InlineData("R", "1-2 step R fwd, pivot 1/2 L\n3-8 repeat 1-2 three more times",
        "1 R>R step:forward; 2 L>L pivot @6:00; 3 R>R step:forward; 4 L>L pivot @12:00; 5 R>R step:forward; 6 L>L pivot @6:00; 7 R>R step:forward; 8 L>L pivot @12:00")]

    // the same to the other side with a turn, and its end
    [InlineData("L", "1-4 Vine L, touch R\n5-8 same to R with 1/4 turn R, brush L",
        "1 L>L step:side; 2 R>R step:cross-behind; 3 L>L step:side; 4 R>L touch:together; 5 R>R step:side; 6 L>L step:cross-behind; 7 R>R step:forward @3:00; 8 L>R brush:forward")]
    [InlineData("R", "1-4 Vine R, touch L\n5-8 Repeat to the left with a 1/4 turn left",
        "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:side; 4 L>R touch:together; 5 L>L step:side; 6 R>R step:cross-behind; 7 L>L step:forward @9:00; 8 R>L touch:together")]

    // a knee that is up while the other foot hops
    [InlineData("L", "1-2 step L back, hop on L hitching R", "1 L>L step:back; 2 L>L hop; 2 R>L hitch")]

    // how it looks has no weight
    [InlineData("both", "1-2 Bounce both heels twice, shoulders loose, weight ends on R", "1 B>B bounce; 2 B>R bounce")]
    [InlineData("L", "1-4 Stomp L forward (weight stays on R), fan L toes out, in, out taking weight on L", "1 L>R stomp-up:forward; 2 L>R fan; 3 L>R fan; 4 L>L fan")]

    // which way a diagonal goes
    [InlineData("R", "1-2 RF step diagonal R back, LF touch beside", "1 R>R step:diag-back; 2 L>R touch:together")]

    // heels turn, nobody turns round
    [InlineData("both", "1-2 Both heels turn left and back to the centre", "1 B>B swivel-heels; 2 B>B swivel-heels")]

    // how far stands with the name
    [InlineData("R", "1-2 Paddle a quarter turn to the left: step forward on the right and turn onto the left", "1 R>R step:forward; 2 L>L step @9:00")]

    // no counts anywhere: the usual ones, where they come to an eight
    [InlineData("L", "L vine with touch, R vine with touch",
        "1 L>L step:side; 2 R>R step:cross-behind; 3 L>L step:side; 4 R>L touch:together; 5 R>R step:side; 6 L>L step:cross-behind; 7 R>R step:side; 8 L>R touch:together")]
    [InlineData("R", "walk R, L, kick ball change R\nrocking chair R",
        "1 R>R step:forward; 2 L>L step:forward; 3 R>L kick; 3& R>R step; 4 L>L step; 5 R>R rock:forward; 6 L>L recover; 7 R>R rock:back; 8 L>L recover")]

    // a paddle turns each time
    [InlineData("R", "1-4 1/4 L touch R side x4", "1 R>L touch:side @9:00; 2 R>L touch:side @6:00; 3 R>L touch:side @3:00; 4 R>L touch:side @12:00")]

    // walks, however many, share a turn
    [InlineData("L", "1-3 3 walks making 3/4 turn right", "1 L>L step:forward @3:00; 2 R>R step:forward @6:00; 3 L>L step:forward @9:00")]

    // walks round on listed feet
    [InlineData("R", "1-4 Walk in a full circle left R, L, R, L",
        "1 R>R step:forward @9:00; 2 L>L step:forward @6:00; 3 R>R step:forward @3:00; 4 L>L step:forward @12:00")]
    [InlineData("R", "1-2 Four-step walk-around left: turn 1/4 left stepping R forward, turn 1/4 left stepping L forward",
        "1 R>R step:forward @9:00; 2 L>L step:forward @6:00")]

    // titles before a dash
    [InlineData("R", "1-4 Hip sways - sway R, sway L, sway R, sway L", "1 R>R sway:side; 2 L>L sway:side; 3 R>R sway:side; 4 L>L sway:side")]
    [InlineData("R", "1-4 Back rock and stomps - rock R back, recover L, stomp R, stomp L", "1 R>R rock:back; 2 L>L recover; 3 R>R stomp; 4 L>L stomp")]
    [InlineData("L", "1-4 Points and steps - point L to side, step L together, point R to side, step R together",
        "1 L>R point:side; 2 L>L step:together; 3 R>L point:side; 4 R>R step:together")]
    [InlineData("R", "1&2 Right shuffle forward stepping - Right, Left, Right.", "1 R>R step:forward; 1& L>L step; 2 R>R step:forward")]

    [InlineData("R", "1-4 Walk forward: R, L, R, L", "1 R>R step:forward; 2 L>L step:forward; 3 R>R step:forward; 4 L>L step:forward")]

    // a touch with its own foot and place is no step touch
    [InlineData("L", "1-2 step left to side touch right behind left", "1 L>L step:side; 2 R>L touch:cross-behind")]
    [InlineData("R", "1-2 step R to side touch L across R", "1 R>R step:side; 2 L>R touch:cross-front")]

    // a slow pivot, with the step and its hold on the line before
    [InlineData("R", "1-2 Step right forward, hold\n3-4 Pivot 1/2 turn left, hold", "1 R>R step:forward; 2 ->R hold; 3 L>L pivot @6:00; 4 ->L hold")]
    [InlineData("L", "1-2 Step L forward, hold\n3-4 Pivot 1/4 right, hold", "1 L>L step:forward; 2 ->L hold; 3 R>R pivot @3:00; 4 ->R hold")]

    // & that is the word where no & is counted, and a first bump that rides on the step
    [InlineData("R", "1-2 Step right to right side & bump hips right, right", "1 R>R step:side; 1 ->R bump; 2 ->R bump")]
    [InlineData("R", "1-2 Step R to side & sway right, sway left", "1 R>R sway:side; 2 L>L sway:side")]

    // counts danced once more
    [InlineData("R", "1-2 Step R to side, touch L together\n3-4 Same as 1-2 (on the other foot)",
        "1 R>R step:side; 2 L>R touch:together; 3 L>L step:side; 4 R>L touch:together")]
    [InlineData("R", "1-2 Rock R forward, recover L\n3-4 As 1-2 (12:00)", "1 R>R rock:forward; 2 L>L recover; 3 R>R rock:forward; 4 L>L recover")]
    [InlineData("R", "1-2 Rock R forward, recover L\n3-4 Do these two counts once more", "1 R>R rock:forward; 2 L>L recover; 3 R>R rock:forward; 4 L>L recover")]
    [InlineData("R", "1-2 Step R to side, touch L together\n3-4 Dance the last two counts again to the left",
        "1 R>R step:side; 2 L>R touch:together; 3 L>L step:side; 4 R>L touch:together")]

    // the foot inside the name
    [InlineData("R", "1&2 kick right ball change", "1 R>L kick:forward; 1& R>R step:together; 2 L>L step:in-place")]
    [InlineData("L", "1&2 Kick left, ball change", "1 L>R kick:forward; 1& L>L step:together; 2 R>R step:in-place")]

    // a weave without feet
    [InlineData("R", "1-4 Weave R: side, behind, side, front", "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:side; 4 L>L step:cross-front")]

    // the turn that stands for the last step of a chassé
    [InlineData("R", "3&4 R side, L tog, 1/4 R", "3 R>R step:side; 3& L>L step:together; 4 R>R step:forward @3:00")]

    // a slide that must have taken the weight
    [InlineData("R", "1-3 Step right forward, slide left next to right, step right forward", "1 R>R step:forward; 2 L>L slide:together; 3 R>R step:forward")]

    // one gesture in two verbs
    [InlineData("R", "1-2 Swing your right foot out and point it to the right side, then bring it back in next to your left foot and step on it",
        "1 R>L point:side; 2 R>R step:together")]
    [InlineData("R", "1-2 RF back, LF touch in front crossed over RF", "1 R>R step:back; 2 L>R touch:cross-front")]

    // knees
    [InlineData("R", "1-2 Bend both knees, straighten both knees", "1 L>L dip; 2 ->L bounce")]

    // round the shoulder
    [InlineData("R", "1-2 RF forward, both feet 1/2 turn over left", "1 R>R step:forward; 2 L>L pivot @6:00")]

    // short forms and slips
    [InlineData("L", "1-2 LF xrk, rec RF", "1 L>L rock:cross-front; 2 R>R recover")]
    [InlineData("R", "1-2 RF bk, LF drag twd RF", "1 R>R step:back; 2 L>R drag:together")]
    [InlineData("R", "1-2 Hitch R kn, RF XB", "1 R>L hitch; 2 R>R step:cross-behind")]
    [InlineData("R", "3&4 Chases R", "3 R>R step:side; 3& L>L step:together; 4 R>R step:side")]
    [InlineData("R", "1-2 R hell fwd, R tog", "1 R>L dig:forward; 2 R>R step:together")]
    [InlineData("R", "1&2 Rt kb chg", "1 R>L kick:forward; 1& R>R step:together; 2 L>L step:in-place")]

    // other people's English
    [InlineData("R", "1-2 Lunge R to the right side, push back onto L", "1 R>R lunge:side; 2 L>L recover")]
    [InlineData("R", "1-2 Rock back with the right, give back the weight to the left", "1 R>R rock:back; 2 L>L recover")]
    [InlineData("R", "1-2 Step on right to the right side, gather left with weight beside right", "1 R>R step:side; 2 L>L step:together")]
    [InlineData("L", "1-2 Cross left in over right, small step to the right on right", "1 L>L step:cross-front; 2 R>R step:side")]
    public void A_line_is_read_as_a_teacher_reads_it(string free, string lines, string wanted)
    {
        CorpusCase example = new("own", "own", 1, free == "both" ? "both, 12:00" : free + " free, 12:00", lines.Split('\n'), wanted);

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{outcome}: {why}\n  read as {got}");
    }

    [Theory]
    [InlineData("1-4 SIDE TOGETHER SIDE TOUCH TO THE LEFT: Step right to right side, close left, step right to right side, touch left")]
    [InlineData("1&2 Chasse to the left")]
    [InlineData("1&2 CHASSE TO THE LEFT: Step right to right side, close left, step right to right side")]
    [InlineData("1-4 Jazz box 1/4 right: cross R over L, step L back turning 1/4 left, step R side, step L together")]
    [InlineData("1-2 PIVOT 1/2 LEFT: step R forward, pivot 1/4 left")]
    [InlineData("1-4 STEP TOUCHES FORWARD: R side, touch L, L side, touch R")]
    [InlineData("1&2 SHUFFLE BACK: Step right forward, close left, step right forward")]
    [InlineData("1-2 ROCK BACK: rock R forward, recover L")]
    [InlineData("1-2 Rock to the left: rock R to side, recover L")]
    [InlineData("1&2 Shuffle turning right")]
    [InlineData("1&2 Triple step with a turn")]
    [InlineData("1-2 rock R, recover L")]
    [InlineData("coaster step R, L shuffle")]
    public void A_name_that_its_steps_do_not_bear_out_is_asked_about(string line)
    {
        CorpusCase example = new("own", "own", 1, "R free, 12:00", [line], "?");

        (CorpusCase.Outcome outcome, string got, _) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"taken in silence: {got}");
    }
}
