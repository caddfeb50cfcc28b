using System.Net;
using System.Net.Sockets;
using System.Text;
using System.Text.Json;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Scuff.App.Web.Hall;

namespace Tests.Web;

/// <summary>Who is let in from the hall's network, and to what. Sources as in <see cref="HouseRulesTests"/>.</summary>
public sealed class HallDoorTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_hall_is_shut_until_she_opens_it()
    {
        await using HallFixture studio = await HallFixture.Start();
        int asked = 0;
        studio.Studio.Hall.Place = studio.Studio.Hall.Place with
        {
            Addresses = () =>
            {
                asked++;
                return [];
            },
        };

        JsonElement standing = (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall")).Body;

        Assert.False(standing.GetProperty("isOpen").GetBoolean());
        Assert.Equal(JsonValueKind.Null, standing.GetProperty("code").ValueKind);
        Assert.Empty(standing.GetProperty("addresses").EnumerateArray());
        Assert.Null(studio.Studio.Hall.Opening);
        Assert.Equal(0, asked);
    }

    [Fact]
    public async Task Without_a_network_it_stays_shut_and_says_why()
    {
        await using HallFixture studio = await HallFixture.Start();
        studio.Studio.Hall.Place = new HallPlace(() => [], 0);

        (int status, JsonElement body) = await HallFixture.Send(studio.Her, HttpMethod.Post, "/api/hall/open", new { guests = "floor" });

        Assert.Equal(409, status);
        Assert.Contains("Wi-Fi", body.GetProperty("sentence").GetString(), StringComparison.Ordinal);
        Assert.Null(studio.Studio.Hall.Opening);
    }

    [Fact]
    public async Task A_taken_port_is_passed_over()
    {
        await using HallFixture studio = await HallFixture.Start();
        using TcpListener other = new(IPAddress.Loopback, 0);
        other.Start();
        int taken = ((IPEndPoint)other.LocalEndpoint).Port;
        studio.Studio.Hall.Place = HallPlace.At(new IPEndPoint(IPAddress.Loopback, taken));

        (Uri address, _) = await studio.Open("floor");

        Assert.NotEqual(taken, address.Port);
    }

    [Fact]
    public async Task A_stranger_gets_the_page_that_asks_for_the_code_and_nothing_else()
    {
        await using HallFixture studio = await HallFixture.Start();
        (Uri address, _) = await studio.Open("tablet");
        using HttpClient stranger = HallFixture.Device(address);

        using HttpResponseMessage page = await stranger.GetAsync(address, Stop);
        string text = await page.Content.ReadAsStringAsync(Stop);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        Assert.Contains("<div id=\"page\">", text, StringComparison.Ordinal);
        Assert.Contains("script-src 'self'", string.Join(';', page.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
        Assert.DoesNotMatch("script-src[^;]*unsafe", string.Join(';', page.Headers.GetValues("Content-Security-Policy")));

        string script = System.Text.RegularExpressions.Regex.Match(text, "src=\"(/assets/[^\"]+)\"").Groups[1].Value;
        Assert.Equal(200, (await HallFixture.Send(stranger, HttpMethod.Get, script)).Status);

        foreach (string room in (string[])["/", "/write", "/book", "/print/abc", "/hallway", "/hall/x"])
        {
            using HttpResponseMessage led = await stranger.GetAsync(new Uri(room, UriKind.Relative), Stop);
            Assert.Equal(HttpStatusCode.Redirect, led.StatusCode);
            Assert.Equal("/hall", led.Headers.Location?.OriginalString);
        }

        Assert.Equal(401, (await HallFixture.Send(stranger, HttpMethod.Get, "/api/nothing")).Status);
        Assert.Equal(401, (await HallFixture.Send(stranger, HttpMethod.Get, "/sw.js")).Status);
        Assert.Equal(401, (await HallFixture.Send(stranger, HttpMethod.Post, "/hall", new { code = "1" })).Status);
    }

    [Fact]
    public async Task Of_all_routes_a_stranger_may_only_pair_and_a_screen_may_only_watch()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        using HttpClient stranger = HallFixture.Device(screen.BaseAddress!);
        List<string> forStrangers = [];
        List<string> forScreens = [];
        int routes = 0;
        foreach ((HttpMethod method, string path) in Routes(studio))
        {
            routes++;
            if (await Answered(stranger, method, path) is not 401)
            {
                forStrangers.Add($"{method} {path}");
            }

            if (await Answered(screen, method, path) is not 403)
            {
                forScreens.Add($"{method} {path}");
            }
        }

        Assert.True(routes > 30);
        Assert.Equal(["POST /api/hall/pair"], forStrangers);

        // pairing is not refused to a screen; with no code in it, it is no question
        Assert.Equal(
            ["GET /api/hall/dance", "GET /api/hall/follow", "GET /api/hall/me", "GET /api/hall/time", "POST /api/hall/pair"],
            forScreens.Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Her_tablet_does_what_the_page_does_but_neither_opens_doors_nor_chooses_folders()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");
        List<string> refused = [];
        foreach ((HttpMethod method, string path) in Routes(studio))
        {
            if (await Answered(tablet, method, path) is 401 or 403)
            {
                refused.Add($"{method} {path}");
            }
        }

        // who meets when and who knows what has no business in the hall
        string[] ofTheBook = [.. Routes(studio).Where(r => IsOfTheBook(r.Path)).Select(r => $"{r.Method} {r.Path}")];
        Assert.NotEmpty(ofTheBook);
        Assert.Empty(ofTheBook.Except(refused));
        Assert.Equal(
            [
                "GET /api/hall",
                "POST /api/folder",
                "POST /api/folder/export",
                "POST /api/folder/import",
                "POST /api/hall/open",
                "POST /api/hall/shut",
                "POST /api/restore",
            ],
            refused.Except(ofTheBook).Where(r => !r.EndsWith("/api/hall/pair", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        Assert.Equal(201, (await HallFixture.Send(tablet, HttpMethod.Post, "/api/dances", new { text = "From The Tablet" })).Status);
        Assert.Equal(1, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/dances?words=Tablet")).Body.GetProperty("total").GetInt32());
        using HttpResponseMessage page = await tablet.GetAsync(new Uri("/write", UriKind.Relative), Stop);
        Assert.Equal(HttpStatusCode.OK, page.StatusCode);
    }

    [Fact]
    public async Task The_cookie_is_out_of_reach_of_scripts_and_of_other_sites()
    {
        await using HallFixture studio = await HallFixture.Start();
        (Uri address, string code) = await studio.Open("floor");
        using HttpClient device = HallFixture.Device(address);
        using StringContent body = new($$"""{"code":"{{code}}"}""", Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await device.PostAsync(new Uri("/api/hall/pair", UriKind.Relative), body, Stop);

        string cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));

        Assert.Matches("^scuff-hall=[A-Za-z0-9_-]{43}; path=/; samesite=strict; httponly$", cookie);
    }

    [Theory]
    [InlineData("")]
    [InlineData("scuff-hall=")]
    [InlineData("scuff-hall=AAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAAA")]
    public async Task A_made_up_cookie_lets_nobody_in(string cookie)
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        using HttpClient forger = new(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = screen.BaseAddress };
        using HttpRequestMessage request = new(HttpMethod.Get, "/api/hall/me");
        request.Headers.TryAddWithoutValidation("Cookie", cookie);
        using HttpResponseMessage answer = await forger.SendAsync(request, Stop);

        Assert.Equal(HttpStatusCode.Unauthorized, answer.StatusCode);
    }

    [Fact]
    public async Task Wrong_codes_are_refused_with_a_growing_wait()
    {
        await using HallFixture studio = await HallFixture.Start(new SteppedClock());
        (Uri address, string code) = await studio.Open("floor");
        using HttpClient device = HallFixture.Device(address);
        object wrong = new { code = code == "000000" ? "000001" : "000000" };
        for (int i = 0; i < 3; i++)
        {
            Assert.Equal(403, (await HallFixture.Send(device, HttpMethod.Post, "/api/hall/pair", wrong)).Status);
        }

        (int status, JsonElement body) = await HallFixture.Send(device, HttpMethod.Post, "/api/hall/pair", new { code });

        Assert.Equal(403, status);
        Assert.Equal("Too many wrong codes. Wait 2 seconds and try again.", body.GetProperty("sentence").GetString());
        Assert.Equal(401, (await HallFixture.Send(device, HttpMethod.Get, "/api/hall/me")).Status);
    }

    [Theory]
    [InlineData("localhost")]
    [InlineData("evil.example")]
    [InlineData("192.168.1.7")]
    public async Task The_hall_answers_at_its_own_address_only(string host)
    {
        await using HallFixture studio = await HallFixture.Start();
        (Uri address, _) = await studio.Open("floor");

        Assert.StartsWith("HTTP/1.1 200 ", await Raw(address.Port, $"127.0.0.1:{address.Port}"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 403 ", await Raw(address.Port, $"{host}:{address.Port}"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 403 ", await Raw(address.Port, $"127.0.0.1:{studio.Server.Address.Port}"), StringComparison.Ordinal);
        Assert.StartsWith("HTTP/1.1 403 ", await Raw(studio.Server.Address.Port, $"127.0.0.1:{address.Port}"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "http://127.0.0.1:1")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task A_foreign_page_on_a_paired_tablet_can_do_nothing(string header, string value)
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");
        using StringContent content = new("""{"text":"Planted"}""", Encoding.UTF8, "application/json");
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/dances") { Content = content };
        request.Headers.Add(header, value);
        using HttpResponseMessage answer = await tablet.SendAsync(request, Stop);

        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        Assert.Equal(0, (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/dances?words=Planted")).Body.GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task Shutting_ends_every_guest_and_nothing_listens_any_more()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        using HallStream stream = await HallStream.Of(screen, Stop);
        Assert.NotNull(await stream.Next(Stop));

        (int status, JsonElement standing) = await HallFixture.Send(studio.Her, HttpMethod.Post, "/api/hall/shut", new { });

        Assert.Equal(200, status);
        Assert.False(standing.GetProperty("isOpen").GetBoolean());
        Assert.Null(await stream.Next(Stop));
        await Assert.ThrowsAsync<HttpRequestException>(() => screen.GetAsync(new Uri("/hall", UriKind.Relative), Stop));
        using TcpClient knock = new();
        await Assert.ThrowsAsync<SocketException>(async () => await knock.ConnectAsync(IPAddress.Loopback, screen.BaseAddress!.Port, Stop));
        Assert.Empty(studio.Troubles);
    }

    [Fact]
    public async Task Shutting_ends_what_a_tablet_listens_to_without_end()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");
        await using Stream news = await tablet.GetStreamAsync(new Uri("/api/news", UriKind.Relative), Stop);

        await HallFixture.Send(studio.Her, HttpMethod.Post, "/api/hall/shut", new { });

        // cut off in the middle or at its end, but over
        byte[] rest = new byte[4096];
        await Assert.ThrowsAnyAsync<IOException>(async () =>
        {
            while (await news.ReadAsync(rest, Stop) > 0)
            {
            }

            throw new EndOfStreamException();
        });
        Assert.Empty(studio.Troubles);
    }

    [Fact]
    public async Task Who_was_in_before_is_a_stranger_after_it_was_opened_again()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient screen = await studio.Paired("floor");
        int port = screen.BaseAddress!.Port;
        await HallFixture.Send(studio.Her, HttpMethod.Post, "/api/hall/shut", new { });
        studio.Studio.Hall.Place = HallPlace.At(new IPEndPoint(IPAddress.Loopback, port));
        (Uri address, _) = await studio.Open("floor");

        Assert.Equal(port, address.Port);
        Assert.Equal(401, (await HallFixture.Send(screen, HttpMethod.Get, "/api/hall/me")).Status);
    }

    [Fact]
    public async Task She_sees_who_is_there()
    {
        await using HallFixture studio = await HallFixture.Start();
        using HttpClient tablet = await studio.Paired("tablet");
        using HttpClient first = await studio.Paired("floor");
        using HttpClient second = await studio.Paired("floor");
        JsonElement standing = (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall")).Body;

        Assert.Equal(1, standing.GetProperty("tablets").GetInt32());
        Assert.Equal(2, standing.GetProperty("screens").GetInt32());
        JsonElement sign = standing.GetProperty("addresses")[0].GetProperty("sign");
        Assert.Matches("^(M[0-9]+ [0-9]+h[0-9]+v1h-[0-9]+z)+$", sign.GetProperty("path").GetString());
    }

    [Fact]
    public async Task This_machine_needs_no_code()
    {
        await using HallFixture studio = await HallFixture.Start();

        Assert.Equal(409, (await HallFixture.Send(studio.Her, HttpMethod.Post, "/api/hall/pair", new { code = "123456" })).Status);
        Assert.Equal("here", (await HallFixture.Send(studio.Her, HttpMethod.Get, "/api/hall/me")).Body.GetProperty("circle").GetString());
    }

    [Theory]
    [InlineData("192.168.1.20", true)]
    [InlineData("10.1.2.3", true)]
    [InlineData("172.16.0.1", true)]
    [InlineData("172.31.255.255", true)]
    [InlineData("169.254.7.7", true)]
    [InlineData("127.0.0.1", true)]
    [InlineData("::ffff:192.168.1.20", true)]
    [InlineData("172.15.0.1", false)]
    [InlineData("172.32.0.1", false)]
    [InlineData("192.169.1.1", false)]
    [InlineData("11.0.0.1", false)]
    [InlineData("100.64.0.1", false)]
    [InlineData("8.8.8.8", false)]
    [InlineData("0.0.0.0", false)]
    [InlineData("2001:db8::1", false)]
    public void Only_addresses_of_private_networks_are_listened_at(string address, bool isPrivate)
        => Assert.Equal(isPrivate, HallPlace.IsPrivate(IPAddress.Parse(address)));

    [Fact]
    public void The_networks_around_are_private_and_not_this_machine_itself()
        => Assert.All(HallPlace.Around.Addresses(), a => Assert.True(HallPlace.IsPrivate(a.Address) && !IPAddress.IsLoopback(a.Address)));

    private static IEnumerable<(HttpMethod Method, string Path)> Routes(HallFixture studio)
        => from route in studio.Server.Routes
           from method in route.Metadata.GetMetadata<HttpMethodMetadata>()!.HttpMethods
           select (new HttpMethod(method), Filled(route));

    private static bool IsOfTheBook(string path)
        => path.StartsWith("/api/classes", StringComparison.Ordinal) || path.StartsWith("/api/book", StringComparison.Ordinal);

    // any number is a value of any part of a path
    private static string Filled(RouteEndpoint route)
        => "/" + string.Join('/', route.RoutePattern.PathSegments.Select(Filled));

    private static string Filled(RoutePatternPathSegment segment) => string.Concat(segment.Parts.Select(p => (p as RoutePatternLiteralPart)?.Content ?? "1"));

    // the question is empty: whether it is taken is all that is asked
    private static async Task<int> Answered(HttpClient device, HttpMethod method, string path)
    {
        using HttpRequestMessage request = new(method, path);
        using HttpResponseMessage answer = await device.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, Stop);
        return (int)answer.StatusCode;
    }

    private static async Task<string> Raw(int port, string host)
    {
        using TcpClient client = new();
        await client.ConnectAsync(IPAddress.Loopback, port, Stop);
        NetworkStream stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes($"GET /hall HTTP/1.1\r\nHost: {host}\r\nConnection: close\r\n\r\n"), Stop);
        using StreamReader reader = new(stream);
        return await reader.ReadToEndAsync(Stop);
    }
}
