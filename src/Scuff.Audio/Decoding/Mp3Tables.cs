namespace Scuff.Audio.Decoding;

/// <summary>
/// The tables of MPEG audio, layer III. Source: ISO/IEC 11172-3 (1993), annex B (the Huffman codes: table B.7, the bands: B.8, the window:
/// B.3) and 2.4; ISO/IEC 13818-3 (1998) for the lower rates; the bands of the three lowest rates as the encoders of MPEG 2.5 have them.
/// </summary>
internal static class Mp3Tables
{
    /// <summary>Bits that follow a value of 15, by the number of the table.</summary>
    public static readonly byte[] LinBits = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 2, 3, 4, 6, 8, 10, 13, 4, 5, 6, 7, 8, 9, 11, 13];

    /// <summary>Codes of pairs by the number of the table; null where a table has no code (0, 4, 14).</summary>
    public static readonly Mp3Code?[] Pairs = MakePairs();

    /// <summary>Codes of four values of 0 or 1; which of the two is said in the side information.</summary>
    public static readonly Mp3Code[] Quads =
    [
        new("0b0f0d0e07050906030a0c0201040800", "6666665555544441"),
        new("0f0e0d0c0b0a09080706050403020100", "4444444444444444"),
    ];

    /// <summary>
    /// First line of every band of long blocks and the end of the last, by the row of the rate: 44.1, 48, 32, 22.05, 24, 16, 11.025, 12, 8 kHz.
    /// </summary>
    public static readonly int[][] LongBands =
    [
        [0, 4, 8, 12, 16, 20, 24, 30, 36, 44, 52, 62, 74, 90, 110, 134, 162, 196, 238, 288, 342, 418, 576],
        [0, 4, 8, 12, 16, 20, 24, 30, 36, 42, 50, 60, 72, 88, 106, 128, 156, 190, 230, 276, 330, 384, 576],
        [0, 4, 8, 12, 16, 20, 24, 30, 36, 44, 54, 66, 82, 102, 126, 156, 194, 240, 296, 364, 448, 550, 576],
        [0, 6, 12, 18, 24, 30, 36, 44, 54, 66, 80, 96, 116, 140, 168, 200, 238, 284, 336, 396, 464, 522, 576],
        [0, 6, 12, 18, 24, 30, 36, 44, 54, 66, 80, 96, 114, 136, 162, 194, 232, 278, 332, 394, 464, 540, 576],
        [0, 6, 12, 18, 24, 30, 36, 44, 54, 66, 80, 96, 116, 140, 168, 200, 238, 284, 336, 396, 464, 522, 576],
        [0, 6, 12, 18, 24, 30, 36, 44, 54, 66, 80, 96, 116, 140, 168, 200, 238, 284, 336, 396, 464, 522, 576],
        [0, 6, 12, 18, 24, 30, 36, 44, 54, 66, 80, 96, 116, 140, 168, 200, 238, 284, 336, 396, 464, 522, 576],
        [0, 12, 24, 36, 48, 60, 72, 88, 108, 132, 160, 192, 232, 280, 336, 400, 476, 566, 568, 570, 572, 574, 576],
    ];

    /// <summary>The same for one window of short blocks.</summary>
    public static readonly int[][] ShortBands =
    [
        [0, 4, 8, 12, 16, 22, 30, 40, 52, 66, 84, 106, 136, 192],
        [0, 4, 8, 12, 16, 22, 28, 38, 50, 64, 80, 100, 126, 192],
        [0, 4, 8, 12, 16, 22, 30, 42, 58, 78, 104, 138, 180, 192],
        [0, 4, 8, 12, 18, 24, 32, 42, 56, 74, 100, 132, 174, 192],
        [0, 4, 8, 12, 18, 26, 36, 48, 62, 80, 104, 136, 180, 192],
        [0, 4, 8, 12, 18, 26, 36, 48, 62, 80, 104, 134, 174, 192],
        [0, 4, 8, 12, 18, 26, 36, 48, 62, 80, 104, 134, 174, 192],
        [0, 4, 8, 12, 18, 26, 36, 48, 62, 80, 104, 134, 174, 192],
        [0, 8, 16, 24, 36, 52, 72, 96, 124, 160, 162, 164, 166, 192],
    ];

    /// <summary>Bits of a scale factor in the lower and the upper bands, by the code of the side information (MPEG 1).</summary>
    public static readonly byte[][] ScaleBits = [[0, 0, 0, 0, 3, 1, 1, 1, 2, 2, 2, 3, 3, 3, 4, 4], [0, 1, 2, 3, 0, 1, 2, 3, 1, 2, 3, 1, 2, 3, 2, 3]];

    /// <summary>Scale factors in each of four groups (MPEG 2), by the kind of code, then for long, short and mixed blocks.</summary>
    public static readonly byte[][][] ScaleGroups =
    [
        [[6, 5, 5, 5], [9, 9, 9, 9], [6, 9, 9, 9]],
        [[6, 5, 7, 3], [9, 9, 12, 6], [6, 9, 12, 6]],
        [[11, 10, 0, 0], [18, 18, 0, 0], [15, 18, 0, 0]],
        [[7, 7, 7, 0], [12, 12, 12, 0], [6, 15, 12, 0]],
        [[6, 6, 6, 3], [12, 9, 9, 6], [6, 12, 9, 6]],
        [[8, 8, 5, 0], [15, 12, 9, 0], [6, 18, 9, 0]],
    ];

    /// <summary>What the pre-emphasis flag adds to the scale factors of long blocks.</summary>
    public static readonly byte[] Preemphasis = [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 2, 2, 3, 3, 3, 2, 0];

    // The first half and the middle in steps of 2^-16; the other half is its mirror image, with the other sign outside every 64th place.
    private static readonly int[] HalfWindow =
    [
        0, -1, -1, -1, -1, -1, -1, -2, -2, -2, -2, -3, -3, -4, -4, -5,
        -5, -6, -7, -7, -8, -9, -10, -11, -13, -14, -16, -17, -19, -21, -24, -26,
        -29, -31, -35, -38, -41, -45, -49, -53, -58, -63, -68, -73, -79, -85, -91, -97,
        -104, -111, -117, -125, -132, -139, -147, -154, -161, -169, -176, -183, -190, -196, -202, -208,
        213, 218, 222, 225, 227, 228, 228, 227, 224, 221, 215, 208, 200, 189, 177, 163,
        146, 127, 106, 83, 57, 29, -2, -36, -72, -111, -153, -197, -244, -294, -347, -401,
        -459, -519, -581, -645, -711, -779, -848, -919, -991, -1064, -1137, -1210, -1283, -1356, -1428, -1498,
        -1567, -1634, -1698, -1759, -1817, -1870, -1919, -1962, -2001, -2032, -2057, -2075, -2085, -2087, -2080, -2063,
        2037, 2000, 1952, 1893, 1822, 1739, 1644, 1535, 1414, 1280, 1131, 970, 794, 605, 402, 185,
        -45, -288, -545, -814, -1095, -1388, -1692, -2006, -2330, -2663, -3004, -3351, -3705, -4063, -4425, -4788,
        -5153, -5517, -5879, -6237, -6589, -6935, -7271, -7597, -7910, -8209, -8491, -8755, -8998, -9219, -9416, -9585,
        -9727, -9838, -9916, -9959, -9966, -9935, -9863, -9750, -9592, -9389, -9139, -8840, -8492, -8092, -7640, -7134,
        6574, 5959, 5288, 4561, 3776, 2935, 2037, 1082, 70, -998, -2122, -3300, -4533, -5818, -7154, -8540,
        -9975, -11455, -12980, -14548, -16155, -17799, -19478, -21189, -22929, -24694, -26482, -28289, -30112, -31947, -33791, -35640,
        -37489, -39336, -41176, -43006, -44821, -46617, -48390, -50137, -51853, -53534, -55178, -56778, -58333, -59838, -61289, -62684,
        -64019, -65290, -66494, -67629, -68692, -69679, -70590, -71420, -72169, -72835, -73415, -73908, -74313, -74630, -74856, -74992,
        75038,
    ];

    /// <summary>The window of the synthesis, 512 weights.</summary>
    public static readonly float[] Window = MakeWindow();

    private static float[] MakeWindow()
    {
        float[] window = new float[512];
        for (int i = 0; i < 512; i++)
        {
            int weight = i <= 256 ? HalfWindow[i] : i % 64 == 0 ? HalfWindow[512 - i] : -HalfWindow[512 - i];
            window[i] = weight / 65536f;
        }

        return window;
    }

    // Each code is given by its values in the order of the code words, and the lengths of these (base 36): that says all of a code.
    private static Mp3Code?[] MakePairs()
    {
        Mp3Code sixteen = new(
            "effedffdcffcbffbaffa9ff9f88f7ff76ff6ff5ff54ff4f3f03fceecdddee9ead9eeedebbecddcdbaeccadda7eaccac97d5ebdf22f0f1ff19ebccb8e" +
            "e89de7bb8dd86ee69cabbae5d74ee48cc83e6dd69bb9aae1d4b8a97bb7d0e30ee05dd57cc74d8b9a6cc63d5cc50d8aa8994cb67a3c5b891cc09879e2" +
            "2e1ed32dd2d13b97881dc46bc3a72cc2b5c10c4bb46aa6b35aa52bb21bb10bb069964aa47887a33a592a9568a1867794495767a21a0aa03993588529" +
            "927609199190488475388366288247741881800856377365462772645507177170366345542662166106605335442552511505344350244233144104" +
            "40233213310330221221022011011000",
            "bbbbbbbbabbbbaaaaa8aa9999aghhffggeffeeffeeffffeffed89988deeeeeeeeeeddeeeedeedddeeeeddeedeecddddddddddddddcddddddcddccddb" +
            "cccccccddbccccbccccccccbccbbbbccccccccbccbccbccbccbaabbbbbbaabbaabbbbbbbbabbaaabbaabbaabba99aaaaaa999aa9aa99899999999889" +
            "9887788766664431");
        Mp3Code twentyFour = new(
            "effedffdcffcbffbfaaf9ff9f88f7ff76ff65ff54ff43ff32ff2f11ff00feedeedceecddbeebcddcaeeabddbcc9ee9addabccb8ee89dd97ee7acffca" +
            "bb8dd80ee00de66e9cc95ebae5ab7dd7e48cc84e2e3e6dd6e39bb9aae21ee15dd57cc74d8bb8d49aa96cc63dd32dd21d7bb7d15cc58aa8994cc46bb6" +
            "d00c3cc37aa72cc25bb51c8998c14bc00b3bb00a1ab46aa67997a00990b3882b5ab2a51bb16996a44a78873aa359952aa2a168867749943993588529" +
            "677692199148845775388366288218477481088056651707707337277246645571366345542662166106603553442552150550513443244233144104" +
            "40233213310330221221022011011000",
            "888888887887788777777777777889bbbbbbbbbbbbbbbbbbbbbbbbbbbb4bbbbccbabbaaaabbaaaabbaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa" +
            "bbaaaaaaaaaaaaabbabba9aaaabba99aa9aaaa99aa999999999999999999999999999999999999aa999aa89988888888888889988888899788777778" +
            "8776677655664444");
        Mp3Code?[] pairs = new Mp3Code?[32];
        pairs[1] = new("11011000", "3321");
        pairs[2] = new("220212212011011000", "665553331");
        pairs[3] = new("220212212010110100", "665553222");
        pairs[5] = new("33233231130330221221022011011000", "8876777766663331");
        pairs[6] = new("33032332301331220212212001111000", "7766655554443233");
        pairs[7] = new("554554533544255215510534504333244214414004233203133130221221022011011000", "aaaa99998899899887778888777765664331");
        pairs[8] = new("555445533544255205155134435033244214410440233213310330220220122111011000", "bba9aa999889999888788888888666442332");
        pairs[9] = new("554535535405442552155134435004244233401441233213310330220212212011011000", "998899888877788777766665566554443333");
        pairs[10] = new(
            "776776577566477456653773465554632772640770624535065344177136262552155134431661600550244233041441402332031331302212210220" +
            "11011000",
            "bbbbbbaaaaaaabba99aa99aa9aa8899aa99aa888999999888888777766664331");
        pairs[11] = new(
            "776776756647745755566537734645543553277264077117703663604425520515622606166151345043332442144104402332133103302221120220" +
            "11011000",
            "aaaaaaabbaa999aaaa8899788888999987887788899888888776677654553332");
        pairs[12] = new(
            "776776577566477465563773552772466417710770366345544406052662611660355325521551344350042442143341233240033013312212210220" +
            "00110110",
            "aa99999998899888888998888899777888888777788777666677655544554333");
        pairs[13] = new(
            "fefcfdedffefdfeecfdebffbcedcafe9ecddfacdbeeb9ff9eabddb8ff8ccae9e8e7f7ef7daadbccbf66fe85f9dd9f5e7acbb4ff4cae6f33f8dd82ff2" +
            "6e9c0fc95eab7dd74ec8d63eb99baa1ff1f0bae5e48c6de3e22e0e1ee1e05dd57cc74d8bb8d49aa96cc63dd37b2dd21db75cc5997ac3a7974bd10dd0" +
            "8aa84cc46bb63c2cc25bb5891cc1980cc0b46aa6793bb3885a2ba569a47887947776b21bb10bb0964a3aa359952aa21aa10a68a08649933958856729" +
            "925775388366477456657319910990488472466428821837271771550770366345542662358108801661066053442552051551344350244233144104" +
            "40233213310330221221022011011000",
            "jjihgggggggggghhffggffffffffffggfggeeffffeeeeeeeeeeeffedeeddeedeedeedeeddeecccddddddcddccddddddddddddccddccccddddcddcbcc" +
            "ccccccbbbbccbbccbccccbbccbccbccbccaaabbbbbbbbaaaabbabbabbbbaabbaabbbbbb99aaaaabb999aa99aaaaaaaaaa8999999aa99988999999878" +
            "8887777766664431");
        pairs[15] = new(
            "ffeffedfeefdcffcdeedbffbceecddaffabeebcddc9ff9eabddb8ff8cc9ee97ff7addabc6fae0fcbf68ee85f9df57ee7accabbd98d4ff43ff3d8e62f" +
            "f26ef01ff19cc95eabbae57dd74ee48cc83e6dd6e39bb92eaae21ee10ee05dd57cc74d8bd4b89aa96cc63dd3d22d0d1d7bb7d15cd0c58aa84cc46bb6" +
            "990c3cc37aa7a6c00bc22c5bb51c8998c14bb46a3b79b397882b5ab2a51bb1b069964aa478873aa359952aa21aa10aa0688649943993770958852967" +
            "769291199048845775388366472882188174088056653773462772641755710770366345542662160660356153442552155105503443244233411404" +
            "23324003133130221221022011011000",
            "ddddcddddddcddcccccccccccccccccccccccddbbccccbbbbbbccbbbbbbbbccbbbbbbbbbbbbbbbbbbbbbbbbbccbbbbbbabbbbbbaabbaaaabbaaaaaaa" +
            "bbaaaaabb9aaaaaaaaaaaa9aaaa9aa9aaaaaaaa9999999aa999999aa9999998999999999988889999999988888899888888899878877778877777677" +
            "6677666555553443");
        for (int i = 16; i < 32; i++)
        {
            pairs[i] = i < 24 ? sixteen : twentyFour;
        }

        return pairs;
    }
}
