using Tests.Corpus;

namespace Tests.Prose;

/// <summary>
/// Classes of wordings that were once read wrong in silence, or asked about without need, each by a few lines that stand in no corpus.
/// </summary>
public sealed class SurelyReadTests
{
    [Theory]

    // a diagonal said beside a side
    [InlineData("R", "1&2 Right shuffle to the right diagonal", "1 R>R step:diag-forward; 1& L>L step; 2 R>R step:diag-forward")]
    [InlineData("R", "1-2 Big step R to the right diagonal, touch L", "1 R>R step:diag-forward; 2 L>R touch")]
    [InlineData("R", "1-2 R to the right back corner, touch L beside it", "1 R>R step:diag-back; 2 L>R touch:together")]

    // arms take no foot that walks
    [InlineData("R", "1-2 Walk R, L waving the arms", "1 R>R step:forward; 2 L>L step:forward")]
    [InlineData("R", "1-2 Walk R L arms out", "1 R>R step:forward; 2 L>L step:forward")]
    [InlineData("R", "1-2 R forward arms up, L forward", "1 R>R step:forward; 2 L>L step:forward")]
    [InlineData("R", "1-2 Rock R back pulling both fists in, recover L", "1 R>R rock:back; 2 L>L recover")]
    [InlineData("R", "1-2 Sway R, hips loose, sway L", "1 R>R sway:side; 2 L>L sway:side")]

    // both feet have a side, too
    [InlineData("R", "1-2 Swivet to the left", "1 B>B swivet; 2 B>B swivet")]
    [InlineData("R", "1-2 Swivet right, return to centre with weight on left", "1 B>B swivet; 2 B>L swivet")]
    [InlineData("R", "1-2 RF+LF swivel heels right, swivel heels to centre", "1 B>B swivel-heels; 2 B>B swivel-heels")]
    [InlineData("R", "1-4 Fan R toe out to R, back to centre, out to R, back to centre", "1 R>L fan; 2 R>L fan; 3 R>L fan; 4 R>L fan")]

    // grinds told by what the heel does
    [InlineData("R", "1-2 Step on your right heel and grind it to the right, recover L", "1 R>R grind:forward; 2 L>L recover")]
    [InlineData("R", "5-6 Heel grind 1/4: R heel forward grinding 1/4 right, step L back", "5 R>R grind:forward @3:00; 6 L>L step:back")]

    // how a figure ends, and where its listed feet go
    [InlineData("R", "1&2 Mambo R forward ending with R back", "1 R>R rock:forward; 1& L>L recover; 2 R>R step:back")]
    [InlineData("R", "1&2 Side mambo R closing R to L", "1 R>R rock:side; 1& L>L recover; 2 R>R step:together")]
    [InlineData("R", "1&2 Triple step R, L, R in place", "1 R>R step:in-place; 1& L>L step:in-place; 2 R>R step:in-place")]
    [InlineData("R", "1-2 Prowling walks: step R back sweeping L, step L back sweeping R", "1 R>R step:back; 2 L>L step:back")]

    // a turn that listed walks share
    [InlineData("R", "1-4 Walk R L R L in a full circle right",
        "1 R>R step:forward @3:00; 2 L>L step:forward @6:00; 3 R>R step:forward @9:00; 4 L>L step:forward @12:00")]

    // brought back in beside the other foot
    [InlineData("R", "1-2 R heel forward, step R back in place beside L", "1 R>L dig:forward; 2 R>R step:together")]
    [InlineData("R", "1-2 Touch R to side, close it in with the weight on it", "1 R>L touch:side; 2 R>R step:together")]
    [InlineData("R", "1-2 Lift the right foot, put it down", "1 R>L hitch; 2 R>R step")]
    [InlineData("R", "1-2 R steps to the side, L rejoins R", "1 R>R step:side; 2 L>L step:together")]

    // heels that leave the floor
    [InlineData("R", "1-2 Lift R heel, lower R heel", "1 R>L bounce; 2 R>L drop")]
    [InlineData("R", "1-2 Raise both heels, lower both heels", "1 B>B bounce; 2 ->B bounce")]

    // places under a title of gestures
    [InlineData("R", "1-3 Kicks: R forward, R side, R forward", "1 R>L kick:forward; 2 R>L kick:side; 3 R>L kick:forward")]
    [InlineData("R", "1-2 Swing right foot across left, swing it back", "1 R>L sweep; 2 R>L sweep")]
    [InlineData("R", "1-4 Rumba box forward", "1 R>R step:side; 2 L>L step:together; 3 R>R step:forward; 4 ->R hold")]

    // places first, and then a foot for each
    [InlineData("R", "1-2 Behind side R L", "1 R>R step:cross-behind; 2 L>L step:side")]
    [InlineData("R", "1-4 Cross back side cross R L R L", "1 R>R step:cross-front; 2 L>L step:back; 3 R>R step:side; 4 L>L step:cross-front")]
    [InlineData("R", "1-2 Return to centre with right, touch left", "1 R>R step:home; 2 L>R touch")]

    // slips
    [InlineData("R", "1-2 Rok R back, recover no L", "1 R>R rock:back; 2 L>L recover")]
    [InlineData("R", "1-2 Rock R forward, recover L L", "1 R>R rock:forward; 2 L>L recover")]

    // remarks
    [InlineData("R", "1-2 Step R to side, L behind, that's the start of a vine", "1 R>R step:side; 2 L>L step:cross-behind")]
    [InlineData("R", "1-2 Kick R forward, kick R to side, mind your neighbour", "1 R>L kick:forward; 2 R>L kick:side")]
    public void A_line_is_read_as_a_teacher_reads_it(string free, string line, string wanted)
    {
        CorpusCase example = new("own", "own", 1, free + " free, 12:00", [line], wanted);

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{outcome}: {why}\n  read as {got}");
    }

    [Theory]

    // words of every day are no slips for words of dancing
    [InlineData("1-2 Step R to side, money L")]
    [InlineData("1-4 Wind R, touch L")]
    [InlineData("1-2 Hatch R, step R together")]

    // fewer moves than counts: nobody turns a quarter for two of them
    [InlineData("1-4 Step R to side, step L together and quarter turn left")]
    [InlineData("1-4 Vine R & L")]
    [InlineData("1-2 Throw the right foot back, set it down")]
    [InlineData("1-2 Swivet left: on right heel and left ball turn both feet to the right, and back to the middle")]
    [InlineData("4-6 Balance step back R")]
    [InlineData("1-4 Grind R heel turning 1/4 R, rock back L, recover")]
    public void What_is_not_sure_is_asked(string line)
    {
        CorpusCase example = new("own", "own", 1, "R free, 12:00", [line], "?");

        (CorpusCase.Outcome outcome, string got, _) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"taken in silence: {got}");
    }

    [Theory]
    [InlineData("Resart on wal 3 after 16 conuts", "plan 3/16 restart")]
    [InlineData("Rst on W3 and W6 after 8 cts", "plan 3,6/8 restart")]
    [InlineData("Brdige at teh end of wall 2", "plan 2/32 tag")]
    public void Slips_in_a_sentence_are_mended(string sentence, string wanted)
    {
        CorpusCase example = new("own", "own", 1, "sentences", [sentence], wanted);

        (CorpusCase.Outcome outcome, string got, string why) = example.Run();

        Assert.True(outcome == CorpusCase.Outcome.Right, $"{outcome}: {why}\n  read as {got}");
    }
}
