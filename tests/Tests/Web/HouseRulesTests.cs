using System.Net;
using System.Net.Sockets;
using System.Text;

namespace Tests.Web;

/// <summary>
/// Who may talk with the studio. Sources: RFC 9110, 7.2 (Host); the Fetch standard, 3.2 (Origin) and Fetch Metadata (Sec-Fetch-Site); Content Security
/// Policy Level 3; the OWASP cheat sheets on cross-site request forgery and DNS rebinding, from memory.
/// </summary>
public sealed class HouseRulesTests(StudioFixture studio) : IClassFixture<StudioFixture>
{
    [Theory]
    [InlineData("evil.example")]
    [InlineData("localhost.evil.example")]
    [InlineData("127.0.0.1.evil.example")]
    [InlineData("192.168.1.7")]
    [InlineData("10.0.0.1")]
    public async Task A_foreign_host_name_is_refused(string host)
    {
        string answer = await Raw($"GET /api/club HTTP/1.1\r\nHost: {host}:{Port}\r\nConnection: close\r\n\r\n");

        Assert.StartsWith("HTTP/1.1 403 ", answer, StringComparison.Ordinal);
        Assert.Contains("answers only to this machine", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("folder", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_right_name_at_another_port_is_foreign_too()
        => Assert.StartsWith("HTTP/1.1 403 ", await Raw($"GET /api/club HTTP/1.1\r\nHost: 127.0.0.1:{Port + 1}\r\nConnection: close\r\n\r\n"), StringComparison.Ordinal);

    [Theory]
    [InlineData("localhost")]
    [InlineData("127.0.0.1")]
    [InlineData("[::1]")]
    public async Task This_machine_is_answered_by_each_of_its_names(string host)
        => Assert.StartsWith("HTTP/1.1 200 ", await Raw($"GET /api/club HTTP/1.1\r\nHost: {host}:{Port}\r\nConnection: close\r\n\r\n"), StringComparison.Ordinal);

    [Theory]
    [InlineData("Origin", "http://evil.example")]
    [InlineData("Origin", "null")]
    [InlineData("Origin", "http://127.0.0.1:1")]
    [InlineData("Origin", "https://127.0.0.1")]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Sec-Fetch-Site", "same-site")]
    public async Task A_foreign_page_can_neither_ask_nor_write(string header, string value)
    {
        foreach (HttpMethod method in (HttpMethod[])[HttpMethod.Get, HttpMethod.Post])
        {
            using HttpRequestMessage request = new(method, "/api/dances");
            request.Headers.Add(header, value);
            if (method == HttpMethod.Post)
            {
                request.Content = new StringContent("""{"text":"Planted"}""", Encoding.UTF8, "application/json");
            }

            using HttpResponseMessage answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);

            Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
        }

        Assert.Equal(0, (await studio.Send(HttpMethod.Get, "/api/dances?words=Planted", null)).Body.GetProperty("total").GetInt32());
    }

    [Fact]
    public async Task A_form_of_a_foreign_page_is_no_question()
    {
        // what a form can send without asking first: text/plain
        using StringContent form = new("""{"text":"Planted by a form"}""", Encoding.UTF8, "text/plain");
        using HttpResponseMessage answer = await studio.Client.PostAsync(new Uri("/api/dances", UriKind.Relative), form, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.UnsupportedMediaType, answer.StatusCode);
    }

    [Theory]
    [InlineData("/../../etc/passwd")]
    [InlineData("/..%2f..%2fetc%2fpasswd")]
    [InlineData("/assets/..%5c..%5cwindows%5cwin.ini")]
    [InlineData("/assets/%2e%2e/%2e%2e/etc/passwd.txt")]
    [InlineData("/web/index.html")]
    [InlineData("/api/dances/..%2f..%2fclub.db")]
    [InlineData("/%00.html")]
    public async Task No_path_leads_out_of_the_page(string path)
    {
        string answer = await Raw($"GET {path} HTTP/1.1\r\nHost: 127.0.0.1:{Port}\r\nConnection: close\r\n\r\n");

        // a path that comes to lie within the page is answered by the page
        Assert.True(answer.StartsWith("HTTP/1.1 4", StringComparison.Ordinal) || answer.Contains("<div id=\"page\">", StringComparison.Ordinal), answer);
        Assert.DoesNotContain("root:", answer, StringComparison.Ordinal);
        Assert.DoesNotContain("SQLite", answer, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_may_run_only_its_own_scripts_and_talk_only_to_its_program()
    {
        using HttpResponseMessage answer = await studio.Client.GetAsync(new Uri("/write", UriKind.Relative), TestContext.Current.CancellationToken);
        string page = await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        string policy = string.Join("; ", answer.Headers.GetValues("Content-Security-Policy"));

        Assert.Contains("default-src 'none'", policy, StringComparison.Ordinal);
        Assert.Contains("script-src 'self'", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-inline'; script", policy, StringComparison.Ordinal);
        Assert.DoesNotMatch("script-src[^;]*unsafe", policy);
        Assert.DoesNotMatch("<script(?![^>]*src=)", page);
        Assert.DoesNotContain("http://", page.Replace("http://www.w3.org", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.Equal("nosniff", answer.Headers.GetValues("X-Content-Type-Options").Single());
        Assert.Equal("no-referrer", answer.Headers.GetValues("Referrer-Policy").Single());
    }

    [Fact]
    public async Task A_question_that_is_too_large_is_refused_with_a_sentence()
    {
        using StringContent large = new("{\"text\":\"" + new string('a', 5_000_000) + "\",\"dance\":null}", Encoding.UTF8, "application/json");
        using HttpRequestMessage request = new(HttpMethod.Post, "/api/read") { Content = large };
        request.Headers.ExpectContinue = true;
        using HttpResponseMessage answer = await studio.Client.SendAsync(request, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.RequestEntityTooLarge, answer.StatusCode);
        Assert.Contains("too large", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Equal(413, (await studio.Send(HttpMethod.Post, "/api/read", new { text = new string('a', 500_000), dance = (string?)null })).Status);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not json")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"text\":5}")]
    [InlineData("{\"text\":null,\"dance\":null}")]
    [InlineData("{}")]
    public async Task What_is_no_question_gets_a_sentence(string body)
    {
        using StringContent content = new(body, Encoding.UTF8, "application/json");
        using HttpResponseMessage answer = await studio.Client.PostAsync(new Uri("/api/read", UriKind.Relative), content, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("sentence", await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
        Assert.Empty(studio.Troubles);
    }

    private int Port => studio.Client.BaseAddress!.Port;

    private async Task<string> Raw(string request)
    {
        using TcpClient client = new();
        await client.ConnectAsync(IPAddress.Loopback, Port, TestContext.Current.CancellationToken);
        NetworkStream stream = client.GetStream();
        await stream.WriteAsync(Encoding.ASCII.GetBytes(request), TestContext.Current.CancellationToken);
        using StreamReader reader = new(stream);
        return await reader.ReadToEndAsync(TestContext.Current.CancellationToken);
    }
}
