using Scuff.Dances;
using Scuff.Stance;
using Scuff.Timing;

namespace Tests.Analysis.Checks;

public sealed class SequenceChecksTests
{
    private static readonly string[] Eight =
    [
        "1-2: R step side, L touch together", "3-4: L step side, R touch together",
        "5-6: R step side, L touch together", "7-8: L step side, R touch together",
    ];

    private static readonly string[] Four = ["1-2: R step side, L touch together", "3-4: L step side, R touch together"];

    [Fact]
    public void A_part_of_another_length_than_stated_and_a_part_that_is_not_there()
        => Assert.Equal(["sequence/length-differs", "sequence/unknown-part"], Phrased("A", "B", "A", "C")
            .Part("A", 8).Section(Eight).Part("B", 16).Section(Eight).Section(Eight).Section(Four).Ids());

    [Fact]
    public void Sound_parts_have_no_complaint()
        => Assert.Empty(Phrased("A", "B", "A").Part("A", 8).Section(Eight).Part("B", 12).Section(Eight).Section(Four).Ids());

    [Fact]
    public void A_part_has_to_lead_into_the_next()
        => Assert.Equal(["sequence/foot-not-free"], Phrased("A", "B", "A")
            .Part("A").Section(Eight).Part("B").Section(Eight[0], Eight[1], Eight[2], "7-8: L step side, R step together").Ids());

    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    public void An_ending_faces_the_front(int turn)
        => Assert.Equal(turn == 0 ? [] : ["ending/facing"], new DanceBuilder().Section(Eight).With(d => d with
        {
            Ending = new Ending
            {
                Wall = 3,
                AfterCounts = Counts.FromWhole(4),
                Body = new DanceBuilder().Section("1: R step forward +" + turn).Dance().Parts[0].Sections[0],
                Span = default,
                Line = 1,
                Verbatim = "",
            },
        }).Ids());

    [Fact]
    public void An_ending_that_prints_its_facing_is_taken_at_its_word()
        => Assert.Empty(new DanceBuilder().Section(Eight).With(d => d with
        {
            Ending = new Ending
            {
                Wall = 3,
                AfterCounts = Counts.FromWhole(4),
                Body = new DanceBuilder().Section("1: R step forward +2").Dance().Parts[0].Sections[0],
                Claim = new FacingClaim(Facing.FromEighths(2), Counts.One, default),
                Span = default,
                Line = 1,
                Verbatim = "",
            },
        }).Ids());

    private static DanceBuilder Phrased(params string[] names) => new DanceBuilder().With(d => d with
    {
        Sequence = [.. names.Select((name, i) => new SequenceItem(name, false, null, new Scuff.Diagnostics.TextSpan(i, 1)))],
    });
}
