namespace Tests.Analysis.Checks;

/// <summary>
/// The faulty lines of the trade's rule table, each put into a whole dance that is sound but for it, with the rules that it
/// must break and no other. The texts are the table's own made-up lines in the words of the step text.
/// </summary>
internal static class FaultyLines
{
    private const string Right = """
        1-2  step R to side, step L together
        3-4  step R to side, touch L together
        """;

    private const string Home = """
        5-6  step L to side, step R together
        7-8  step L to side, touch R together
        """;

    /// <summary>Name, text and expected rule ids.</summary>
    public static TheoryData<string, string, string[]> All { get; } = new()
    {
        {
            "1 a section that stops at six",
            """
            section 1
            1-2  walk R, L
            3&4  shuffle forward R-L-R
            5-6  rock L forward, recover R
            """,
            ["count/missing"]
        },
        {
            "2 the closing foot moves again",
            $"""
            section 1
            1-2  step R side, step L together
            3-4  step L side, touch R together
            5-6  step R side, step L together
            7-8  step R side, step L together
            """,
            ["weight/foot-not-free"]
        },
        {
            "3 a kick with the standing foot",
            $"""
            section 1
            1-2  step R side, touch L together
            3-4  kick R forward twice
            {Home}
            """,
            ["weight/gesture-not-free"]
        },
        {
            "4 heels without a step between",
            """
            section 1
            1-2  R heel forward, L heel forward
            3-4  R toe back, hold
            5-6  step R side, touch L together
            7-8  step L side, touch R together
            """,
            ["weight/switch-needs-step"]
        },
        {
            "5 four walls with no net turn",
            """
            counts: 32
            walls: 4

            section 1
            1-2  step R forward, pivot 1/2 left
            3-4  step R side, touch L together
            5-6  step L side, step R together
            7-8  step L side, touch R together

            section 2
            1-2  turn 1/4 right step R forward, touch L together
            3-4  step L back, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            section 3
            1-2  turn 1/4 right step R forward, touch L together
            3-4  step L back, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            section 4
            1-2  rock R forward, recover
            3-4  rock R back, recover
            5-6  step R side, touch L together
            7-8  step L side, touch R together
            """,
            ["facing/walls-differ"]
        },
        {
            "6 a quarter left from the front is not 3:00",
            $"""
            section 1
            {Right}
            5-6  step L to side, touch R together
            7-8  step R forward, pivot 1/4 left (3:00)
            """,
            ["facing/claim-differs"]
        },
        {
            "7 a pivot towards the stepping foot",
            $"""
            section 1
            1-2  step R forward, pivot 1/2 right
            3-4  step R to side, touch L together
            {Home}
            """,
            ["turn/pivot-direction"]
        },
        {
            "8 a restart on the foot that has the weight",
            """
            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            section 2
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L forward, step R together

            section 3
            1-2  step L side, touch R together
            3-4  step R side, touch L together
            5-6  step L side, touch R together
            7-8  step R side, step L together

            Restart on wall 3 after 16 counts
            """,
            ["interruption/foot-not-free"]
        },
        {
            "9 a restart in the middle of a shuffle",
            """
            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            section 2
            1-2  walk R, L
            3&4  shuffle forward R
            5-6  rock L forward, recover
            7-8  step L back, touch R together

            Restart after count 11 of wall 4
            """,
            ["interruption/cuts-figure"]
        },
        {
            "10 a right coaster step that begins left",
            """
            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, step L together
            7&8  right coaster step (L back, R together, L forward)
            """,
            ["figure/foot-differs"]
        },
        {
            "11 two steps for three labels",
            """
            section 1
            1-2  walk R, L
            3&4  shuffle forward R, L
            5-6  rock L forward, recover
            7-8  step L back, touch R together
            """,
            ["count/moves-do-not-fit"]
        },
        {
            "12 a stomp that must stay up",
            $"""
            section 1
            1-2  stomp R together, kick R forward
            3-4  step R to side, touch L together
            {Home}
            """,
            ["weight/stomp-unclear"]
        },
        {
            "13 a step by the foot that stepped before",
            $"""
            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-8  jazz box (cross R, L back, R side, touch L)

            section 2
            1-2  step L forward, step R forward
            3-4  step R back, touch L together
            {Home}
            """,
            ["weight/foot-not-free"]
        },
        {
            "14 an unwind that does not say where the weight is",
            """
            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, step L together
            7-8  cross R over L, unwind 1/2 left
            """,
            ["weight/end-unstated"]
        },
        {
            "15 no count seven",
            """
            section 1
            1-2  step R side, step L together
            3&4  shuffle R forward
            5-6  rock L forward, recover
            8    step L together
            """,
            ["count/missing"]
        },
        {
            "16 the same & twice",
            """
            section 1
            1-2    step R side, touch L together
            3-4    step L side, touch R together
            5-6    step R side, touch L together
            &7&8&  step L together, R heel, together, L heel, together

            section 2
            &1-2   jump feet apart, hold, hold
            3-4    step R side, touch L together
            5-6    step L side, touch R together
            7-8    step R side, step L together
            """,
            ["count/and-twice"]
        },
        {
            "17 a tag of three sways in four counts",
            """
            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            tag "Buoys" 4 counts
            1-4  sway R, L, R

            wall 2: after 8 tag "Buoys"
            """,
            ["count/moves-do-not-fit", "tag/foot-not-free"]
        },
        {
            "19 eight counts in a waltz",
            """
            rhythm: waltz

            section 1
            1-3  basic forward L
            4-6  basic back R
            7-8  step L forward, touch R together
            """,
            ["count/section-length"]
        },
        {
            "20 part B of another length, part C nowhere",
            """
            sequence: A B A C

            part A 8 counts

            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            part B 16 counts

            section 1
            1-2  step R forward, touch L together
            3-4  step L back, touch R together
            5-6  step R forward, touch L together
            7-8  step L back, touch R together

            section 2
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            section 3
            1-2  step R forward, touch L together
            3-4  step L back, touch R together
            """,
            ["sequence/length-differs", "sequence/unknown-part"]
        },
        {
            "21 an option that leaves the other foot free",
            """
            section 1
            1-2  step R side, touch L together
            3-4  step L side, step R together
            5-8  rolling vine left, touch R
                 option 5-8 "easier": vine left, step R together
            """,
            ["option/differs"]
        },
        {
            "22 a turn without a direction",
            """
            section 1
            1-2  step R side, touch L together
            3-4  1/4 turn, step L; touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together
            """,
            ["turn/direction-missing"]
        },
        {
            "23 one restart said, two danced",
            """
            restarts: 1

            section 1
            1-2  step R side, touch L together
            3-4  step L side, touch R together
            5-6  step R side, touch L together
            7-8  step L side, touch R together

            wall 3: after 4 restart
            wall 6: after 4 restart
            """,
            ["interruption/restarts-differ"]
        },
    };
}
