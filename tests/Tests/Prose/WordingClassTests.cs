using Tests.Corpus;

namespace Tests.Prose;

/// <summary>
/// Classes of everyday wording, each by a few lines that stand in no corpus. What is wanted is written out by hand, as in the corpus:
/// count, foot that acts, foot that has the weight, action, place and the new facing.
/// </summary>
public sealed class WordingClassTests
{
    [Theory]

    // clock times with a dot
    [InlineData("R", "1-2 Step R forward, pivot ½ L 6.00", "1 R>R step:forward; 2 L>L pivot @6:00")]
    [InlineData("R", "1-2 Walk R, turn 1/4 R stepping L to side (3.00)", "1 R>R step:forward; 2 L>L step:side @3:00")]

    // degrees
    [InlineData("R", "1-2 Step forward on right, pivot 180 left", "1 R>R step:forward; 2 L>L pivot @6:00")]
    [InlineData("R", "1-2 Step forward on right, turn 90° left", "1 R>R step:forward; 2 L>L pivot @9:00")]

    // a quick count with a line of its own
    [InlineData("R", "1 Cross R over L\na Step L to side\n2 Step R in place", "1 R>R step:cross-front; 1a L>L step:side; 2 R>R step:in-place")]

    // quick counts that only the brackets know, and counts within a run
    [InlineData("R", "1-4 Point R to side (1), close R (2), heel L forward (3), close L (&), stomp R (4)",
        "1 R>L point:side; 2 R>R step:together; 3 L>R dig:forward; 3& L>L step:together; 4 R>R stomp")]
    [InlineData("R", "1 Long step R to side 2& rock L back, recover R 3 step L to side", "1 R>R step:side; 2 L>L rock:back; 2& R>R recover; 3 L>L step:side")]

    // the steps of a figure after "stepping"
    [InlineData("R", "1&2 3-4 R sailor with 1/4 R stepping R behind L, L to side, R forward, rock L forward, recover R",
        "1 R>R step:cross-behind; 1& L>L step:side; 2 R>R step:forward @3:00; 3 L>L rock:forward; 4 R>R recover")]

    // the weight after both feet have moved
    [InlineData("R", "1 Swivel heels right\n2 Swivel heels left\n3 Swivel heels centre\n4 Hold, weight on R",
        "1 B>B swivel-heels; 2 B>B swivel-heels; 3 B>B swivel-heels; 4 ->R hold")]
    [InlineData("L", "1-2 Step L to side, slide R beside it, taking the weight on the R", "1 L>L step:side; 2 R>R slide:together")]
    [InlineData("R", "1-2 Stomp R forward but keep your weight off it, stomp R together", "1 R>L stomp-up:forward; 2 R>R stomp:together")]

    // both feet at once
    [InlineData("R", "1-2 Small hop forward on both, small hop back on both", "1 B>B jump:forward; 2 B>B jump:back")]
    [InlineData("R", "1-2 Jump R+L apart, jump together", "1 B>B jump:out; 2 B>B jump:in")]
    [InlineData("R", "1-2 Lift both heels and put them down, two times", "1 B>B bounce; 2 B>B bounce")]
    [InlineData("R", "1-2 Pop both knees twice", "1 B>L knee; 2 B>L knee")]

    // boots and hands
    [InlineData("R", "1-2 Step R to side, slap L boot behind with R hand", "1 R>R step:side; 2 L>R slap")]

    // spirals
    [InlineData("R", "1-2 R forward into a full spiral L, L forward", "1 R>R step:forward; 2 L>L step:forward")]
    [InlineData("L", "1-2 Cross L over R, spiral full turn R, hooking R", "1 L>L step:cross-front; 2 L>L pivot")]

    // rolling turns by their feet
    [InlineData("R", "1-3 Full turn right stepping R, L, R", "1 R>R step:forward @3:00; 2 L>L step:back @9:00; 3 R>R step:side @12:00")]
    [InlineData("R", "1-4 Full turn to the right: R, L, R, clap", "1 R>R step:forward @3:00; 2 L>L step:back @9:00; 3 R>R step:side @12:00; 4 ->R clap")]

    // a turn that stands for the step that makes it
    [InlineData("R", "1-4 Side R, behind, 1/4 right, scuff L", "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:forward @3:00; 4 L>R scuff:forward")]
    [InlineData("L", "1-4 Vine left with half turn, hitch the right on the turn",
        "1 L>L step:side; 2 R>R step:cross-behind; 3 L>L step:side; 4 R>L hitch @6:00")]
    [InlineData("R", "1-2 Grind the right heel, a quarter turn right as you do it, then step back on the left", "1 R>R grind:forward @3:00; 2 L>L step:back")]
    [InlineData("R", "3&4 1/2 shuffle turn right", "3 R>R step:side @3:00; 3& L>L step:together; 4 R>R step:forward @6:00")]

    [InlineData("R", "1-4 Quarter right, half right, quarter right, touch",
        "1 R>R step:forward @3:00; 2 L>L step:back @9:00; 3 R>R step:side @12:00; 4 L>R touch")]
    [InlineData("R", "1-4 2 x 1/4 paddle L", "1 R>L press:forward; 2 L>L pivot @9:00; 3 R>L press:forward; 4 L>L pivot @6:00")]
    [InlineData("R", "1-4 Two 1/4 pivot turns left", "1 R>R step:forward; 2 L>L pivot @9:00; 3 R>R step:forward; 4 L>L pivot @6:00")]

    // half of a monterey
    [InlineData("R", "1-2 Monterey 1/2 turn right\n3-4 Point L to side, step L next to R",
        "1 R>L point:side; 2 R>R step:together @6:00; 3 L>R point:side; 4 L>L step:together")]

    // two words for one move, two moves for one count
    [InlineData("R", "1-2 Step/rock R forward, replace weight on L", "1 R>R rock:forward; 2 L>L recover")]
    [InlineData("R", "1-2 Step R forward and slightly across L, point L to left", "1 R>R step:cross-front; 2 L>R point:side")]
    [InlineData("R", "1-2 Rock back on R and kick L forward at the same time, recover on L", "1 R>R rock:back; 1 L>R kick:forward; 2 L>L recover")]
    [InlineData("R", "1-2 Long step R to side, drag L towards R and touch", "1 R>R step:side; 2 L>R touch:together")]

    // feet that are lifted or swung step nowhere
    [InlineData("R", "1-2 Lift R behind L, step R to side", "1 R>L hook:cross-behind; 2 R>R step:side")]
    [InlineData("R", "1-2 Step R back, lifting L in front", "1 R>R step:back; 2 L>R hitch")]
    [InlineData("R", "1-2 Swing right leg across left, step right side", "1 R>L sweep; 2 R>R step:side")]
    [InlineData("R", "1-2 Lunge forward R, recover", "1 R>R lunge:forward; 2 L>L recover")]

    // the place before the verb, the foot at the end
    [InlineData("R", "1-4 To right steps R foot, behind R crosses L foot, to right steps R foot, beside R touches L toe",
        "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:side; 4 L>R touch:together")]
    [InlineData("R", "1-2 Right make big step back, left drag toward right", "1 R>R step:back; 2 L>R drag")]

    // stops after short forms
    [InlineData("R", "1-2 RF step diag. right fwd, LF touch tog.", "1 R>R step:diag-forward; 2 L>R touch:together")]

    // titles in front of the steps
    [InlineData("R", "1-2 Jump back: jump back on both feet, clap", "1 B>B jump:back; 2 ->B clap")]
    [InlineData("R", "1-4 Hips: R, L, R, R", "1 ->L bump; 2 ->L bump; 3 ->L bump; 4 ->L bump")]

    [InlineData("R", "1-4 Swivel right: heels, toes, heels, hold (weight on L)", "1 B>B swivel-heels; 2 B>B swivel-toes; 3 B>L swivel-heels; 4 ->L hold")]
    [InlineData("R", "1-2 Swivel right toe out, centre", "1 R>L fan-toe; 2 R>L fan-toe")]
    [InlineData("R", "1-2 Open heels, close heels", "1 B>B split-heels; 2 B>B split-heels")]
    [InlineData("R", "&7-8 Jump back R, L with feet together, clap", "6& R>R step:back; 7 L>L step:back; 8 ->L clap")]

    // slow moves, and what rises after a dip
    [InlineData("R", "1-4 Slow walk R, L", "1 R>R step:forward; 3 L>L step:forward")]
    [InlineData("R", "1-3 Toe heel kick R", "1 R>L touch; 2 R>L dig; 3 R>L kick:forward")]
    [InlineData("L", "1-2 Strut forward on L, heel then toe", "1 L>R dig:forward; 2 L>L drop")]

    // a name that stands for its first step, with the others after it
    [InlineData("R", "1-4 Vine R, L behind, R side, touch L", "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:side; 4 L>R touch")]
    [InlineData("R", "1&2 3-4 Lock step forward R, L behind, R, rock L forward, recover",
        "1 R>R step:forward; 1& L>L step:lock-behind; 2 R>R step; 3 L>L rock:forward; 4 R>R recover")]

    // hips that go on, while the feet stay
    [InlineData("R", "1&2 Touch R toe forward & bump hip forward, back, forward", "1 R>L touch:forward; 1& ->L bump; 2 ->L bump")]
    [InlineData("R", "1-4 Step R to side swaying hips R, L, R, L", "1 R>R step:side; 2 L>L sway; 3 R>R sway; 4 L>L sway")]

    // struts by the parts of the foot
    [InlineData("R", "1-4 R toe-heel, L toe-heel", "1 R>L touch; 2 R>R drop; 3 L>R touch; 4 L>L drop")]
    [InlineData("R", "1-4 R heel, toe, L heel, toe", "1 R>L dig; 2 R>R drop; 3 L>R dig; 4 L>L drop")]
    [InlineData("R", "1-3 R toe, heel, cross", "1 R>L touch; 2 R>L dig; 3 R>R step:cross-front")]

    // between forward and the side; a turn within the name of a figure
    [InlineData("R", "1-2 Step R forward and to the right, step L forward and out", "1 R>R step:diag-forward; 2 L>L step:diag-forward")]
    [InlineData("L", "1-3 Waltz 1/2 turn left", "1 L>L step:forward; 2 R>R step @6:00; 3 L>L step")]

    // toes of one foot and heel of the other
    [InlineData("R", "1-2 Swivel R toe and L heel to right, return to centre", "1 B>B swivet; 2 B>B swivel")]

    // in front and at the back, as other languages say it; turns to a wall, and round a circle
    [InlineData("R", "1-2 RF step before, LF tip behind", "1 R>R step:forward; 2 L>R touch:back")]
    [InlineData("L", "3&4 Turning to face the back over the right shoulder, shuffle forward left, right, left",
        "3 L>L step:forward @6:00; 3& R>R step; 4 L>L step:forward")]
    [InlineData("R", "1-4 Walk right, left, right, left in a circle to the left, a full turn",
        "1 R>R step @9:00; 2 L>L step @6:00; 3 R>R step @3:00; 4 L>L step @12:00")]

    // the way of a figure and of its first action
    [InlineData("R", "1-4 Paddle 1/4 L twice (R presses out to side)", "1 R>L press:side; 2 L>L pivot @9:00; 3 R>L press:side; 4 L>L pivot @6:00")]
    [InlineData("R", "1&2 Run cha R-L-R", "1 R>R step:forward; 1& L>L step:forward; 2 R>R step:forward")]
    [InlineData("R", "1-2 Sweep R in a half circle from front to back, step R behind L", "1 R>L sweep; 2 R>R step:cross-behind")]
    [InlineData("R", "1-2 Fan R toe to right, return to centre", "1 R>L fan-toe; 2 R>L fan-toe")]
    [InlineData("R", "1-2 Step R diagonally forward, step L diagonally back to centre", "1 R>R step:diag-forward; 2 L>L step:diag-back")]

    // once more to the other corner
    [InlineData("R", "1-2 Step R to right diagonal, touch L beside it\n3-4 Do the same to the left front corner, starting with your left foot",
        "1 R>R step:diag-forward; 2 L>R touch:together; 3 L>L step:diag-forward; 4 R>L touch:together")]

    // a bare way after a list is where it goes
    [InlineData("L", "1-2 Walk L then R, backwards", "1 L>L step:back; 2 R>R step:back")]
    [InlineData("R", "1&2 Shuffle right left right, backwards", "1 R>R step:back; 1& L>L step; 2 R>R step:back")]

    // parts of both feet
    [InlineData("R", "1-2 Both heels move outwards and together again", "1 B>B split:out; 2 B>B split:in")]
    [InlineData("R", "1-2 R & L toes apart, toes together", "1 B>B split:out; 2 B>B split:in")]
    [InlineData("L", "1-4 Two L heel fans (out, in, out, in)", "1 L>R fan; 2 L>R fan; 3 L>R fan; 4 L>R fan")]
    [InlineData("R", "1-2 Fan the right toe out and back again", "1 R>L fan:out; 2 R>L fan:in")]
    [InlineData("both", "1-2 Kick R forward, step together", "1 R>L kick:forward; 2 R>R step:together")]

    // how a foot is put down, and the move spoken of once more
    [InlineData("R", "1-2 Step R to side, close L to R with a touch", "1 R>R step:side; 2 L>R touch:together")]
    [InlineData("R", "1-2 Kick R forward twice, small kicks", "1 R>L kick:forward; 2 R>L kick:forward")]
    [InlineData("R", "1-2 Kick R, snapping your fingers as you kick, step R together", "1 R>L kick; 2 R>R step:together")]
    [InlineData("R", "1-4 Jazz box 1/4 R with scuff", "1 R>R step:cross-front; 2 L>L step:back; 3 R>R step:side @3:00; 4 L>R scuff")]
    [InlineData("L", "1-2 Shimmy as you step left to the side, close right beside left", "1 L>L step:side; 2 R>R step:together")]

    // which step turns
    [InlineData("R", "1-4 R jazz box turning 1/4 R on the side step", "1 R>R step:cross-front; 2 L>L step:back; 3 R>R step:side @3:00; 4 L>L step:together")]
    [InlineData("L", "1-4 Jazz box left, turning a quarter left as you step back",
        "1 L>L step:cross-front; 2 R>R step:back @9:00; 3 L>L step:side; 4 R>R step:together")]
    [InlineData("R", "1-2 Turn a half to the right over two steps, stepping forward on the right and back on the left",
        "1 R>R step:forward @3:00; 2 L>L step:back @6:00")]
    [InlineData("L", "1-4 Point L to side, turn 1/4 left on ball of R and close L beside R, point R to side, close R beside L",
        "1 L>R point:side; 2 L>L step:together @9:00; 3 R>L point:side; 4 R>R step:together")]
    [InlineData("L", "1-4 Step L fwd, bounce heels three times turning 1/2 R, weight on R",
        "1 L>L step:forward; 2 B>B bounce; 3 B>B bounce; 4 B>R bounce @6:00")]
    [InlineData("L", "1-2 L heel forward, turn 1/4 left on it and step back R", "1 L>L grind:forward; 2 R>R step:back @9:00")]
    [InlineData("L", "1-2 Step L forward, spin a full turn left on the left foot with right hooked", "1 L>L step:forward; 2 L>L turn")]

    // several labels in one line go on with bare numbers
    [InlineData("L", "1 LF big step left 2-3 RF drag 4 RF tap next to LF", "1 L>L step:side; 2 R>L drag; 4 R>L touch:together")]

    // a figure that turns on its third count, with that step told once more
    [InlineData("L", "1-4 Vine to the left, turning a quarter to your left on the third count as you step forward on the left, and brush the right forward",
        "1 L>L step:side; 2 R>R step:cross-behind; 3 L>L step:forward @9:00; 4 R>L brush:forward")]
    [InlineData("R", "1-4 Grapevine to the right making a quarter turn right on the third beat, and scuff the left",
        "1 R>R step:side; 2 L>L step:cross-behind; 3 R>R step:forward @3:00; 4 L>R scuff")]

    // a sway or a bump, and the step that goes with it
    [InlineData("R", "1-2 Sway to the right as you step your right foot out to the side, sway left", "1 R>R sway:side; 2 L>L sway:side")]
    [InlineData("R", "1-2 Sway your hips right as you step to the right, sway left", "1 R>R sway:side; 2 L>L sway:side")]
    [InlineData("R", "1-2 Sway right stepping right to right side, sway left", "1 R>R sway:side; 2 L>L sway:side")]
    [InlineData("R", "1-2 Bump hips right as you step right to right side, bump left", "1 R>R step:side; 1 ->R bump; 2 ->R bump")]

    // how it looks, behind a row of feet
    [InlineData("L", "1-3 Waltz basic forward left, right, left floating up tall", "1 L>L step:forward; 2 R>R step:together; 3 L>L step:together")]
    [InlineData("R", "1-2 Walk right, left sinking into the floor", "1 R>R step:forward; 2 L>L step:forward")]
    [InlineData("R", "1-2 Walk right, left gliding along the floor", "1 R>R step:forward; 2 L>L step:forward")]

    // how many counts a move takes
    [InlineData("R", "1-4 Hip roll to the left in two counts, walk R, L", "1 ->L hips; 3 R>R step:forward; 4 L>L step:forward")]
    [InlineData("R", "1-4 Walk R, L, R, L in four counts", "1 R>R step:forward; 2 L>L step:forward; 3 R>R step:forward; 4 L>L step:forward")]

    // a hold leaves the weight where the move before it brought it, both feet turn
    [InlineData("R", "1-4 Cross R over L, hold, unwind 1/2 left, pause (weight on L)", "1 R>R step:cross-front; 2 ->R hold; 3 L>L unwind @6:00; 4 ->L hold")]
    [InlineData("R", "1-2 RF step forward, R+L 1/2 turn left", "1 R>R step:forward; 2 L>L pivot @6:00")]
    [InlineData("R", "1-2 RF cross over LF, R+L unwind 1/2 left", "1 R>R step:cross-front; 2 L>L unwind @6:00")]

    // the toe or the heel goes out and comes home, nobody steps
    [InlineData("R", "1-2 Fan of the R toe: open to the right, come back to the center", "1 R>L fan:out; 2 R>L fan:in")]
    [InlineData("R", "1-2 Fan of the R heel: open it to the right, bring it back to the centre", "1 R>L fan-heel:out; 2 R>L fan-heel:in")]
    [InlineData("R", "1-2 Fan right toe: open to the right, come back to the centre", "1 R>L fan:out; 2 R>L fan:in")]
    [InlineData("R", "1-2 R toe fan, open to right, return to centre", "1 R>L fan:out; 2 R>L fan:in")]
    [InlineData("R", "1-2 Fan right heel out, bring right heel home", "1 R>L fan-heel:out; 2 R>L fan-heel:in")]
    [InlineData("R", "1-2 Fan right heel out, return right heel home", "1 R>L fan-heel:out; 2 R>L fan-heel:in")]
    [InlineData("L", "1-2 L lunge forward diagonally, recover R", "1 L>L lunge:diag-forward; 2 R>R recover")]

    // the steps of several names together, and a repeat that says how it ends
    [InlineData("R", "1&2 3&4 Shuffle right, shuffle left: R forward, L together, R forward, L back, R together, L back",
        "1 R>R step:forward; 1& L>L step:together; 2 R>R step:forward; 3 L>L step:back; 3& R>R step:together; 4 L>L step:back")]
    [InlineData("R", "1-2 R side, touch L\n3-4 Repeat starting with L, touch R", "1 R>R step:side; 2 L>R touch; 3 L>L step:side; 4 R>L touch")]

    // a bare "n" is "and", between words and between counts
    [InlineData("L", "1-2 rock L side n recover, 3 n 4 L behind R side L cross",
        "1 L>L rock:side; 2 R>R recover; 3 L>L step:cross-behind; 3& R>R step:side; 4 L>L step:cross-front")]
    [InlineData("R", "1-2 R side 'n' touch L\n3-4 L SIDE N TOUCH R", "1 R>R step:side; 2 L>R touch; 3 L>L step:side; 4 R>L touch")]

    // T for a turn, and "bk to frt"
    [InlineData("R", "1-2 stp R fwd, ½ piv T L\n3-4 T ¼ R stp R fwd, stp L fwd",
        "1 R>R step:forward; 2 L>L pivot @6:00; 3 R>R step:forward @9:00; 4 L>L step:forward")]
    [InlineData("L", "1-2 stp L fwd, sweep RF bk to frt\n3-4 stp R fwd, swp L frt to bk",
        "1 L>L step:forward; 2 R>L sweep:forward; 3 R>R step:forward; 4 L>R sweep:back")]

    // the sum of the turns told once more
    [InlineData("R", "1-2 Turn half left stepping back on R, and another half left stepping forward on L, so that you have made one full turn (12:00)",
        "1 R>R step:back @6:00; 2 L>L step:forward @12:00")]
    [InlineData("R", "1-2 1/4 turn L stepping back on R, 1/4 turn L stepping side on L, so you have turned a half",
        "1 R>R step:back @9:00; 2 L>L step:side @6:00")]

    // toes that return to the centre
    [InlineData("R", "7-8 Fan right toes out to right, return toes to centre (weight stays on left)", "7 R>L fan:out; 8 R>L fan:in")]

    // a count goes on with those before it, whatever its label looks like
    [InlineData("L", "5 6 sway left sway right 7 sway left 8 drag right next to left no weight",
        "5 L>L sway:side; 6 R>R sway:side; 7 L>L sway:side; 8 R>L drag:together")]
    [InlineData("R", "&1 RF out, LF out 2 hld &3 RF in, LF in 4 clap",
        "0& R>R step:out; 1 L>L step:out; 2 ->L hold; 2& R>R step:in; 3 L>L step:in; 4 ->L clap")]
    [InlineData("R", "1-2 walk R L 3 hold", "1 R>R step:forward; 2 L>L step:forward; 3 ->L hold")]

    // a name with its counts in brackets, and a foot that swings into its kick
    [InlineData("R", "Heel Jack (&1&2): step R back, L heel forward, step L home, touch R beside L",
        "0& R>R step:back; 1 L>R dig:forward; 1& L>L step:home; 2 R>L touch:together")]
    [InlineData("L", "5-6 Swing left forward and kick, step left together", "5 L>R kick:forward; 6 L>L step:together")]

    // a repeat of a move that is not among those counts is no repeat of them
    [InlineData("R", "1-2 step R fwd, step L fwd\n3-4 Repeat the heel split",
        "1 R>R step:forward; 2 L>L step:forward; 3 B>B split-heels:out; 4 B>B split-heels:in")]
    public void A_class_of_wording_is_read_as_a_teacher_reads_it(string free, string lines, string wanted)
    {
        CorpusCase example = new("own", "own", 1, $"{free} free, 12:00", lines.Split('\n'), wanted);

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{outcome}: {why}\n  read as {got}");
    }

    [Theory]
    [InlineData("1-2 Turn both heels to centre, kick")]
    [InlineData("3-4 Mabmo")]
    [InlineData("5-8 Shimmy and move to the side over four counts")]
    [InlineData("5-8 Bump hips R, L, R, take the weight on the left")]
    [InlineData("1-4 walk fwd R, L, R, kick L\n5-8 repeat counts 1-4")]
    [InlineData("1-4 vine R, touch L\n5-8 repeat 1-4")]
    public void What_could_be_danced_in_two_ways_is_asked(string line)
    {
        CorpusCase example = new("own", "own", 1, "R free, 12:00", line.Split('\n'), "?");

        (CorpusCase.Outcome outcome, string got, _) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"taken in silence: {got}");
    }

    [Theory]
    [InlineData("Just the one restart, on wall 4, when you have 16 counts done.", "plan 4/16 restart")]
    [InlineData("Restart 1: wall 2 after 16 counts. Restart 2: wall 5 after 8 counts", "plan 2/16 restart; 5/8 restart")]
    [InlineData("On wall 7 restart after 8 counts, then dance to the end", "plan 7/8 restart")]
    [InlineData("n restart on wall 3 after 8", "plan 3/8 restart")]
    [InlineData("dont forget the tag at the end of wall 2 n again wall 4", "plan 2/32 tag; 4/32 tag")]
    [InlineData("tag end of wall 2 (4 counts sways)", "plan 2/32 tag")]
    [InlineData("4ct tag EOW 7", "plan 7/32 tag")]
    [InlineData("On wall 4, after 16 counts add hip sways R, L, R, L, then continue with count 17", "plan 4/16 tag go-on")]
    [InlineData("Walls 3 and 6 are only 16 counts long", "plan 3,6/16 restart")]
    public void A_sentence_is_read_as_a_teacher_reads_it(string sentence, string wanted)
    {
        CorpusCase example = new("own", "own", 1, "sentences", [sentence], wanted);

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{outcome}: {why}\n  read as {got}");
    }

    [Fact]
    public void An_article_is_no_count()
    {
        CorpusCase example = new("own", "own", 1, "R free, 12:00", ["1-2 step R to side,", "a touch of L beside R"], "1 R>R step:side; 2 L>R touch:together");

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{outcome}: {why}\n  read as {got}");
    }
}
