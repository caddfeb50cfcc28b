using Scuff.App.Web.Hall;

namespace Tests.Web;

/// <summary>Six digits let a device in; guessing does not.</summary>
public sealed class HallPairingTests
{
    private readonly SteppedClock _clock = new();

    [Fact]
    public void The_right_code_lets_in_whom_it_is_for()
    {
        HallPairing pairing = Made(HallCircle.Floor);

        Assert.Matches("^[0-9]{6}$", pairing.Digits);
        Assert.Equal(HallCircle.Floor, pairing.Try("a", pairing.Digits!).Circle);
        Assert.Equal(HallCircle.Floor, pairing.Try("b", $" {pairing.Digits![..3]} {pairing.Digits[3..]} ").Circle);
    }

    [Fact]
    public void A_code_for_her_tablet_lets_in_once()
    {
        HallPairing pairing = Made(HallCircle.Tablet);
        string code = pairing.Digits!;

        Assert.Equal(HallCircle.Tablet, pairing.Try("a", code).Circle);
        Assert.Null(pairing.Try("b", code).Circle);
        Assert.Null(pairing.Digits);
        Assert.NotEmpty(pairing.Why);
    }

    [Fact]
    public void Codes_are_not_alike()
    {
        HallPairing pairing = new(_clock);
        HashSet<string> made = [];
        for (int i = 0; i < 50; i++)
        {
            pairing.MakeCode(HallCircle.Floor);
            made.Add(pairing.Digits!);
        }

        // fifty of a million: two alike come once in eight hundred runs, five alike never
        Assert.True(made.Count > 45);
    }

    [Fact]
    public void A_code_runs_out()
    {
        HallPairing pairing = Made(HallCircle.Floor);
        string code = pairing.Digits!;
        _clock.Advance(HallPairing.Lifetime - TimeSpan.FromSeconds(1));
        Assert.Equal(HallCircle.Floor, pairing.Try("a", code).Circle);
        _clock.Advance(TimeSpan.FromSeconds(1));

        Assert.Null(pairing.Try("a", code).Circle);
        Assert.Null(pairing.Digits);
        Assert.Equal(TimeSpan.Zero, pairing.Left);
    }

    [Fact]
    public void A_new_code_takes_the_place_of_the_old()
    {
        HallPairing pairing = Made(HallCircle.Floor);
        string old = pairing.Digits!;
        do
        {
            pairing.MakeCode(HallCircle.Floor);
        }
        while (pairing.Digits == old);

        Assert.Null(pairing.Try("a", old).Circle);
        Assert.Equal(HallCircle.Floor, pairing.Try("b", pairing.Digits!).Circle);
    }

    [Fact]
    public void Who_guesses_waits_longer_each_time_and_even_the_right_code_waits_with_it()
    {
        HallPairing pairing = Made(HallCircle.Floor);
        List<double> waits = [];
        for (int i = 0; i < 7; i++)
        {
            HallTry tried = pairing.Try("a", Wrong(pairing));
            waits.Add(tried.Wait.TotalSeconds);
            if (tried.Wait > TimeSpan.Zero)
            {
                Assert.Null(pairing.Try("a", pairing.Digits!).Circle);
                Assert.Equal(HallCircle.Floor, pairing.Try($"another {i}", pairing.Digits!).Circle);
                _clock.Advance(tried.Wait);
            }
        }

        Assert.Equal([0, 0, 2, 4, 8, 16, 32], waits);
        Assert.Equal(HallCircle.Floor, pairing.Try("a", pairing.Digits!).Circle);
    }

    [Fact]
    public void One_device_has_ten_tries()
    {
        HallPairing pairing = Made(HallCircle.Floor);
        for (int i = 0; i < HallPairing.MostWrongOfOne; i++)
        {
            _clock.Advance(pairing.Try("a", Wrong(pairing)).Wait);
        }

        Assert.Null(pairing.Try("a", pairing.Digits!).Circle);
        Assert.Equal(HallCircle.Floor, pairing.Try("b", pairing.Digits!).Circle);
    }

    [Fact]
    public void Many_devices_together_have_thirty()
    {
        HallPairing pairing = Made(HallCircle.Floor);
        string code = pairing.Digits!;
        string wrong = Wrong(pairing);
        for (int i = 0; i < HallPairing.MostWrongInAll; i++)
        {
            Assert.Equal(code, pairing.Digits);
            pairing.Try($"device {i}", wrong);
        }

        Assert.Null(pairing.Try("honest", code).Circle);
        Assert.Contains("wrong codes", pairing.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("12345")]
    [InlineData("1234567")]
    [InlineData("１２３４５６")]
    [InlineData("abcdef")]
    public void What_is_no_code_is_a_wrong_one(string typed) => Assert.Null(Made(HallCircle.Floor).Try("a", typed).Circle);

    private static string Wrong(HallPairing pairing) => pairing.Digits == "000000" ? "000001" : "000000";

    private HallPairing Made(HallCircle circle)
    {
        HallPairing pairing = new(_clock);
        pairing.MakeCode(circle);
        return pairing;
    }
}
