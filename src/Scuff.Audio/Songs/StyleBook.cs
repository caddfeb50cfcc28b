namespace Scuff.Audio.Songs;

/// <summary>
/// What our band can play in each style: stock rhythms of dance music in our own writing, several of each so that no song need be
/// like the last. Lines are <see cref="Pattern"/>s.
/// </summary>
internal static class StyleBook
{
    // Bass signs: r root, f fifth, F fifth below, o octave, t third, s sixth, a step towards the next root.
    // Chord signs: X struck hard, x struck, c chopped. Broken chords: the number of the chord's tone from below.

    /// <summary>Rhythms of the drums: groups of (instrument, line), for playing held back and with all there is.</summary>
    public static (string[] Light, string[] Full, string[] HalfTime) DrumsOf(SongStyle style) => style switch
    {
        SongStyle.TwoStep => (
            [
                "Kick 8.......7.......|SideStick ....8.......8...|ClosedHat 6...5.4.6...5.4.",
                "Kick 8.......8.......|BrushTap 4.3.7.3.4.3.7.3.",
                "SideStick ....8.......8...|ClosedHat 5...5...5...5...|Kick 8...............",
            ],
            [
                "Kick 9.......9.......|Snare ....9.......9...|Ride 7...6.6.7...6.6.|PedalHat ....5.......5...",
                "Kick 9.......9.......|Snare 4.4.9.4.4.4.9.5.",
                "Kick 9.......9.......|Snare ....8.......8...|ClosedHat 6.4.6.4.6.4.6.4.",
                "Kick 9...7...9...7...|Snare ..5...5...5...5.|Tambourine ....6.......6...",
                "Kick 9.....5.9.......|Snare ....9.......9..4|ClosedHat 6.4.6.4.6.4.6.4.|Tambourine ....5.......5...",
            ],
            ["Kick 9...............|Snare ........9.......|ClosedHat 5...5...5...5...", "Kick 8.......5.......|SideStick ........8.......|Ride 5...5...5...5..."]),
        SongStyle.EastCoastSwing => (
            [
                "Kick 5...5...5...5...|Ride 7...7.5.7...7.5.|PedalHat ....7.......7...",
                "BrushSweep 5...5...5...5...|BrushTap ....7.5.....7.5.|Kick 4...4...4...4...",
                "ClosedHat 6.4.6.4.6.4.6.4.|SideStick ....7.......7...|Kick 7.......7.......",
            ],
            [
                "Kick 8.......8.......|Snare ....9.......9...|Ride 8...7.6.8...7.6.|PedalHat ....6.......6...",
                "Kick 7...7...7...7...|Snare ....9.5.....9...|Ride 7...7.6.7...7.6.",
                "Kick 9.....6.9.......|Snare ....9.......9.4.|ClosedHat 7.5.7.5.7.5.7.5.",
                "Kick 8.......8.......|Snare ....8.......8...|Clap ....6.......6...|OpenHat 5...5...5...5...",
                "Snare 5.4.8.4.5.4.8.4.|Kick 8.......8.......|Ride 5...5...5...5...",
            ],
            ["Kick 8...............|SideStick ........8.......|Ride 6...6.4.6...6.4.", "Kick 9...............|Snare ........9.......|ClosedHat 5.4.5.4.5.4.5.4."]),
        SongStyle.ChaCha => (
            [
                "Cowbell 6.......6.......|LongScrape 6.......6.......|ShortScrape ....5.5.....5.5.|MutedConga ....7...........|HighConga ............8.8.",
                "Shaker 6.4.6.4.6.4.6.4.|MutedConga ....7...........|HighConga ............8.7.|Kick 7...............",
                "SideStick ............7...|LongScrape 6...6...6...6...|ShortScrape ..4...4...4...4.|LowConga ............7.7.",
            ],
            [
                "Cowbell 8...6...8...6...|LongScrape 6.......6.......|ShortScrape ....6.6.....6.6.|MutedConga ....8...........|HighConga ............9.9.|Kick 8...............",
                "Kick 8.......8.......|Snare ............7.7.|ClosedHat 5.5.5.5.5.5.5.5.|Cowbell 7...7...7...7...|LowConga ..............8.",
                "Kick 9.......9...9...|SideStick ....8.......8...|Shaker 6.4.6.4.6.4.6.4.|HighConga ............8.8.|Cowbell ........6.......",
                "Kick 8.....7.8.......|Clap ............8...|ShortScrape 6.4.6.4.6.4.6.4.|MutedConga 5..5..5...5.5...|LowConga ..............8.",
            ],
            ["MutedConga ....7...........|HighConga ............8.8.|Shaker 5.5.5.5.5.5.5.5.", "Kick 8...............|SideStick ........8.......|Shaker 5.4.5.4.5.4.5.4."]),
        SongStyle.PopRock => (
            [
                "Kick 8.......8.......|SideStick ....8.......8...|ClosedHat 6.4.6.4.6.4.6.4.",
                "Kick 8.........7.....|ClosedHat 6.5.6.5.6.5.6.5.|Tambourine ....6.......6...",
                "Kick 9...9...9...9...|ClosedHat 4...4...4...4...",
                "LowTom 6.4.6.4.6.4.6.4.|Kick 8.......8.......",
            ],
            [
                "Kick 9.......9.......|Snare ....9.......9...|ClosedHat 7.5.7.5.7.5.7.5.",
                "Kick 9.....8.9.......|Snare ....9.......9...|OpenHat 6...6...6...6...",
                "Kick 9.......9.8.....|Snare ....9.......9...|Ride 6.5.6.5.6.5.6.5.",
                "Kick 9.8.......8.....|Snare ....9.......9...|ClosedHat 7.5.7.5.7.5.7.5.|Tambourine ..4...4...4...4.",
                "Kick 9.....8...8...8.|Snare ....9.......9...|ClosedHat 6...6...6...6...",
                "Kick 9..8....9.8.....|Snare ....9..4....9...|ClosedHat 6.5.6.5.6.5.6.5.",
                "Kick 9...8...9...8...|Snare 4.4.9.4.4.4.9.4.|Crash 5...............",
                "Kick 9.........8.....|Snare ....9.......9...|Ride 7...7...7...7...|ClosedHat ..5...5...5...5.",
            ],
            ["Kick 9.....8.........|Snare ........9.......|Ride 7...7...7...7...", "Kick 9..........8....|Snare ........9.......|ClosedHat 6.4.6.4.6.4.6.4."]),
        SongStyle.DancePop => (
            [
                "Kick 9...9...9...9...|Shaker 6.4.5.4.6.4.5.4.",
                "Kick 9...9...9...9...|ClosedHat ..6...6...6...6.",
                "Clap ....8.......8...|ClosedHat 6.5.6.5.6.5.6.5.",
            ],
            [
                "Kick 9...9...9...9...|Clap ....9.......9...|OpenHat ..8...8...8...8.|Shaker 5445544554455445",
                "Kick 9...9...9...9...|Snare ....8.......8...|ClosedHat 6466646664666466",
                "Kick 9...9...9...9...|Clap ....9.......9...|ClosedHat 4.7.4.7.4.7.4.7.|Tambourine 5...5...5...5...",
                "Kick 9...9...9...9.8.|Clap ....9.......9..6|OpenHat ..7...7...7...7.|Cowbell 4..4..4...4.4...",
                "Kick 9.......9..8....|Clap ....9.......9...|ClosedHat 7.5.7.5.7.5.7.5.|OpenHat ..............7.",
                "Kick 9...9...9...9...|ClosedHat ..7...7...7...7.",
            ],
            ["Kick 9...............|Clap ........9.......|ClosedHat 6.5.6.5.6.5.6.5.", "Kick 9.....8.........|Snare ........9.......|ClosedHat 6464646464646464"]),
        SongStyle.Nightclub => (
            [
                "Kick 7.........6.....|SideStick ....7.......7...|ClosedHat 5.4.5.4.5.4.5.4.",
                "Shaker 5.4.5.4.5.4.5.4.|Kick 7...............",
                "BrushSweep 5.......5.......|BrushTap ....6.......6...|Kick 6...............",
            ],
            [
                "Kick 8.....7.8.......|Snare ....9.......9...|ClosedHat 6.4.6.4.6.4.6.4.",
                "Kick 9.........8.....|Snare ....9.......9...|ClosedHat 6454645464546454",
                "Kick 9...............|SideStick ........8.......|ClosedHat 5.5.5.5.5.5.5.5.|LowTom ..............5.",
                "Kick 8.......8.8.....|Snare ....8.......8...|Ride 6.4.6.4.6.4.6.4.|Tambourine ............5...",
                "Kick 8......78.......|Snare ....9.......9...|Shaker 5.4.5.4.5.4.5.4.",
            ],
            ["Kick 8...............|SideStick ........8.......|Shaker 4.4.4.4.4.4.4.4.", "Kick 8...............|Snare ........8.......|Ride 5...5...5...5..."]),
        SongStyle.Waltz => (
            [
                "Kick 8...........|SideStick ....6...6...",
                "Kick 7...........|BrushTap ....6...6...",
                "BrushSweep 5...5...5...|Kick 6...........",
            ],
            [
                "Kick 9...........|Snare ....7...7...|ClosedHat 5...5...5...",
                "Kick 9...........|Snare ........8...|ClosedHat 6...5.5.5...",
                "Kick 9...........|SideStick ....7...7...|Ride 6...5...5...",
                "Kick 8...........|Snare ....6...6...|Tambourine ........5...|ClosedHat 5.4.5.4.5.4.",
                "Kick 9.........6.|Snare ....8.......|Ride 6...5.5.6...",
                "Kick 9...........|ClosedHat ....6...6...",
            ],
            ["Kick 7...........|Shaker 4...4...4...", "Kick 8...........|Ride 5...........|SideStick ........5..."]),
        SongStyle.Polka => (
            [
                "Kick 7...7...7...7...|PedalHat ..6...6...6...6.",
                "Kick 7.......7.......|ClosedHat ..6...6...6...6.",
                "Kick 7...7...7...7...|SideStick ..6...6...6...6.",
            ],
            [
                "Kick 9...8...9...8...|Snare ..8...8...8...8.|ClosedHat ..5...5...5...5.",
                "Kick 9...7...9...7...|Snare ..7...7...7...77|Tambourine ..5...5...5...5.",
                "Kick 8...8...8...8...|Snare 4.7.4.7.4.7.4.74|Crash 4...............",
                "Kick 9.......9.......|Snare ..7...8...7...8.|ClosedHat 5...5...5...5...",
            ],
            ["Kick 8.......8.......|Snare ....8.......8...", "Kick 8.......8.......|SideStick ....7.......7...|ClosedHat ..4...4...4...4."]),
        SongStyle.Groove => (
            [
                "Kick 8.........8.....|SideStick ....8.......8...|ClosedHat 6.4.6.4.6.4.6.4.",
                "Kick 8......7........|ClosedHat 6454645464546454|Clap ............7...",
                "Shaker 6454645464546454|Kick 8.....7.........|HighConga ..6..6......6...",
            ],
            [
                "Kick 9......8..8.....|Snare ....9.......9..4|ClosedHat 6454645464546454",
                "Kick 9..8......8.....|Snare ....9..4....9...|ClosedHat 7.5.7.5.7.5.7.5.|OpenHat ..............6.",
                "Kick 9........88.....|Snare ....9.......9.4.|ClosedHat 6454645464546454",
                "Kick 9.....8....8....|Clap ....9.......9...|Shaker 5454545454545454",
                "Kick 9.8.......8.....|Snare ....9.4..4..9...|Ride 6...6...6...6...|ClosedHat ..4...4...4...4.",
                "Kick 9..8..8...8..8..|Snare ....9.......9...|ClosedHat 5.5.5.5.5.5.5.5.|LowConga ......6.....6.6.",
            ],
            ["Kick 9..........8....|Clap ........9.......|ClosedHat 6454645464546454", "Kick 9.....8.........|Snare ........9.......|Shaker 5.5.5.5.5.5.5.5."]),
        SongStyle.Rumba => (
            [
                "SideStick 7.....7.....7...|Shaker 5.4.5.4.5.4.5.4.|HighConga ............7.7.",
                "MutedConga 4.4.7.4.4.4.....|HighConga ............7.7.|Kick 7.........7.....",
            ],
            [
                "Kick 8.....7.8.......|SideStick 7.....7.....7...|Shaker 5.4.5.4.5.4.5.4.|HighConga ............8.8.",
                "Kick 8.......8.......|SideStick ....7.......7...|ClosedHat 5.5.5.5.5.5.5.5.|LowConga ......7.....7.7.",
                "Kick 8.........7.....|Cowbell 5.......5.......|MutedConga ....8...........|HighConga ............8.8.|ShortScrape 5.4.5.4.5.4.5.4.",
            ],
            ["SideStick 7...........7...|Shaker 4.4.4.4.4.4.4.4."]),
        SongStyle.Samba => (
            [
                "Shaker 6446644664466446|Kick 6..56...6..56...",
                "Shaker 6446644664466446|SideStick 7..7..7...7..7..",
            ],
            [
                "Kick 7..69...7..69...|Shaker 6446644664466446|SideStick 7..7..7...7.7...",
                "LowTom ....9.......9...|Kick 7..6....7..6....|Snare 5445544554455446|Tambourine 6..6..6..6..6.6.",
                "Kick 8..78...8..78...|Cowbell 7.7..7.77.7..7.7|Shaker 5454545454545454",
                "Kick 8...8...8...8...|Snare 5.45.45.5.45.4.5|HighConga ..7..7....7..7..",
            ],
            ["Kick 7.......8.......|Shaker 5.4.5.4.5.4.5.4."]),
        _ => (
            [
                "Kick 7.....7.....|Tambourine ..5..5..5..5",
                "BrushTap 6.46.46.46.4|Kick 6.....6.....",
            ],
            [
                "Kick 9.....9.....|Snare ...8.....8..|ClosedHat 645645645645",
                "Kick 8..8..8..8..|Snare ..5..7..5..7|Tambourine 5..5..5..5..",
                "Kick 9....79.....|Snare ...9.....9..|Ride 6.56.56.56.5",
                "LowTom 7.57.57.57.5|Kick 8.....8.....|Clap ...7.....7..",
            ],
            ["Kick 8...........|SideStick ......8.....|Shaker 5..5..5..5.."]),
    };

    /// <summary>Lines of the bass.</summary>
    public static string[] BassOf(SongStyle style) => style switch
    {
        SongStyle.TwoStep => ["r------.f------.", "r------.F------.", "r------.f--.a--.", "r--.r--.f--.f--.", "r------.f------.r------.f--.t--."],
        SongStyle.EastCoastSwing => ["r---t---f---s---", "r---f---o---f---", "r-..t-..f-..a-..", "r---r---f---a---", "r-----r-f-----f-", "r------.f------."],
        SongStyle.ChaCha => ["r-----f-r---f---", "r-----f-----o---", "r---....r-f-o-..", "r-......f-..r-..", "..r-..f-..r-f-..", "r--.r.f.r--.f---"],
        SongStyle.PopRock => ["r-r-r-r-r-r-r-r-", "r------.r------.", "r-----r-r-----f-", "r--r--r-........", "r-----r---r-f-a-", "r---....r-r-o-..", "r-..r-..r-..f-a-"],
        SongStyle.DancePop => ["..r-..r-..r-..r-", "r-r-r-r-r-r-r-r-", "r.rr..r.r.rr..o.", "r--r--r-..r-..r-", "..r-..o-..r-..o-", "r-----------r-..", "r..r..r...r.r..."],
        SongStyle.Nightclub => ["r-----r-f-------", "r---------------", "r-----r-r-----f-", "r-------f-------", "r------or-----a-", "r----.r-t-----f-"],
        SongStyle.Waltz => ["r---........", "r--.f--.f--.", "r-----------", "r-------a---", "r---........f---........", "r---....f---", "r---t---f---"],
        SongStyle.Polka => ["r--.f--.r--.f--.", "r--.F--.r--.F--.", "r-......f-......", "r--.f--.t--.f--.", "r-..r-..f-..a-.."],
        SongStyle.Groove => ["r--r....o-r-....", "r--...r-..o-.f..", "r.r.......r-.fo.", "r-..r..r..o-..a-", "r--.....r..r.o..", "..r-..r-..r-.o.."],
        SongStyle.Rumba => ["r-----f-f---....", "r-----f-----o---", "r------.f--.o--.", "......f-....o---", "r-----r-f-------"],
        SongStyle.Samba => ["r--rf---r--rf---", "r--of--or--of--o", "r...f..fr...f..f", "r--.f--.r--.f-a-"],
        _ => ["r-----f-----", "r--r--f--f--", "r----rf----a", "r-.r-.f-.f-."],
    };

    /// <summary>Rhythms of the chords.</summary>
    public static string[] ChordsOf(SongStyle style) => style switch
    {
        SongStyle.TwoStep => ["....c.......c...", "....x-c.....x-c.", "x---c---x---c---", "..c...c...c...c.", "x-x-x-x-x-x-x-x-", "x...c.c.x...c.c."],
        SongStyle.EastCoastSwing => ["c.....x-........c.....x-......c.", "....c.......c...", "c...c...c...c...", "..c...c...c...c.", "x-----x-----x---", "......c.......c."],
        SongStyle.ChaCha => ["x.x...x...x...x-..x...x.x.x...x-", "x-----x-----x---", "....c.......c.c.", "..x...x...x...x.", "x--.x-x.x--.x-x."],
        SongStyle.PopRock => ["x-x-x-x-x-x-x-x-", "x-------x---x---", "X---x-x---x-x---", "X-----------....", "..x---x---x---x-", "x.xxx.xxx.xxx.xx", "X--X--X---X-X---", "....c.......c..."],
        SongStyle.DancePop => ["X--x--X---x--x--", "..x-..x-..x-..x-", "X---------------", "x-x-x-x-x-x-x-x-", "..x...x-...x..x-", "X-----X-----X---"],
        SongStyle.Nightclub => ["X-------x-------", "X---x---x---x---", "X-----x-x-------", "X---------------", "x-x-x-x-x-x-x-x-", "..x-..x-..x-..x-"],
        SongStyle.Waltz => ["....x---x---", "....c...c...", "x-----------", "x---x---x---", "....x-x-x-..", "x--.x-x-x-x-", "........x---"],
        SongStyle.Polka => ["..c...c...c...c.", "..x-..x-..x-..xx", "..c..cc...c..cc.", "....x-......x-..", "x-c.x-c.x-c.x-c."],
        SongStyle.Groove => ["..c..c..x-....c.", "c..c..c...c..c..", "....c.......c...", "..x-....x--x....", "cccccccccccccccc", "X---------x-..x-", "...x-..x...x-..x"],
        SongStyle.Rumba => ["x--.x-x.x--.x-x.", "....x-......x-x-", "X-----x-x---x---", "..x...x...x...x.", "X-------x-------"],
        SongStyle.Samba => ["x..x..x...x..x..", "..x..x....x..x-.", "x-..x..xx-..x..x", "..c...c...c...c."],
        _ => ["x--x--x--x--", "..c..c..c..c", "x-cx-cx-cx-c", "x-----x-----", "...x-....x-."],
    };

    /// <summary>Broken chords.</summary>
    public static string[] BrokenOf(SongStyle style) => style switch
    {
        SongStyle.Waltz => ["1-3-2-4-3-2-", "1-2-3-4-3-2-", "1---3-4-3-2-"],
        SongStyle.Jig => ["123412341234", "1-31-31-41-4"],
        SongStyle.DancePop or SongStyle.Groove => ["1.3.2.4.1.3.2.4.", "4..3..1.4..3..2.", "1234123412341234", "..4...3...4...2."],
        _ => ["1-3-2-3-4-3-2-3-", "1-2-3-4-3-2-3-2-", "1---3-2-4---3-2-", "1-34 2-34 1-34 2-34"],
    };

    /// <summary>Chords by degree of the scale, from 0, one a bar.</summary>
    public static int[][] ProgressionsOf(SongStyle style, bool isMinor) => (style, isMinor) switch
    {
        (SongStyle.EastCoastSwing, false) =>
            [[0, 0, 0, 0, 3, 3, 0, 0, 4, 3, 0, 4], [0, 3, 0, 0, 3, 3, 0, 0, 4, 3, 0, 0], [0, 5, 1, 4], [0, 0, 3, 3, 0, 4, 0, 4], [0, 0, 4, 0]],
        (SongStyle.TwoStep or SongStyle.Polka or SongStyle.Waltz or SongStyle.Jig, false) =>
            [[0, 0, 3, 0, 0, 4, 0, 0], [0, 3, 0, 4], [0, 0, 4, 4, 4, 4, 0, 0], [3, 3, 0, 0, 4, 4, 0, 4], [0, 5, 3, 4], [0, 4, 5, 3, 0, 4, 0, 0], [3, 0, 4, 0], [5, 5, 3, 3, 0, 0, 4, 4]],
        (_, false) => [[0, 4, 5, 3], [5, 3, 0, 4], [0, 5, 3, 4], [0, 2, 3, 4], [3, 4, 0, 5], [0, 0, 3, 4], [3, 0, 4, 5], [0, 3], [1, 4, 0, 0], [0, 4, 3, 3, 5, 4, 3, 3]],
        (_, true) => [[0, 5, 2, 6], [0, 3, 4, 0], [0, 6, 5, 4], [0, 0, 3, 4], [5, 6, 0, 0], [0, 3, 6, 2], [0, 0, 5, 6], [0, 6], [3, 0, 4, 0]],
    };
}
