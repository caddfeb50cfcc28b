using System.Net;
using System.Net.Http.Json;
using System.Text.Json;
using Scuff.App.Clubs;
using Scuff.App.Web;
using Scuff.App.Web.Hall;
using Scuff.Repertoire;

namespace Tests.Web;

/// <summary>A studio whose hall opens on this machine only, at any free port.</summary>
public sealed class HallFixture : IAsyncDisposable
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "scuff-hall-" + Path.GetRandomFileName());
    private readonly List<string> _troubles = [];
    private readonly Club _club;
    private StudioServer? _server;

    private HallFixture(TimeProvider clock)
    {
        _club = Club.Open(_folder, TimeProvider.System, new DanceFactReader());
        Studio = new Studio(_club, clock, _troubles.Add);
        Studio.Hall.Place = HallPlace.At(new IPEndPoint(IPAddress.Loopback, 0));
    }

    internal Studio Studio { get; }

    internal StudioServer Server => _server!;

    /// <summary>Her page on this machine.</summary>
    public HttpClient Her { get; } = new();

    /// <summary>Troubles that the program told as its own: none in a good run.</summary>
    public IReadOnlyList<string> Troubles => _troubles;

    public static async Task<HallFixture> Start(TimeProvider? clock = null)
    {
        HallFixture fixture = new(clock ?? TimeProvider.System);
        fixture._server = await StudioServer.Start(fixture.Studio, 0);
        fixture.Her.BaseAddress = fixture._server.Address;
        return fixture;
    }

    public async ValueTask DisposeAsync()
    {
        Her.Dispose();
        await Server.DisposeAsync();
        _club.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>Opens the hall from her page.</summary>
    /// <returns>Its address and its code.</returns>
    public async Task<(Uri Address, string Code)> Open(string guests)
    {
        (int status, JsonElement body) = await Send(Her, HttpMethod.Post, "/api/hall/open", new { guests });
        Assert.Equal(200, status);
        return (new Uri(body.GetProperty("addresses")[0].GetProperty("address").GetString()!), body.GetProperty("code").GetString()!);
    }

    /// <summary>A device in the hall that has typed no code.</summary>
    public static HttpClient Device(Uri address) => new(new SocketsHttpHandler { AllowAutoRedirect = false, ResponseDrainTimeout = TimeSpan.Zero })
    {
        BaseAddress = new Uri(address.GetLeftPart(UriPartial.Authority)),
    };

    /// <summary>A device in the hall that was let in.</summary>
    public async Task<HttpClient> Paired(string guests)
    {
        (Uri address, string code) = await Open(guests);
        HttpClient device = Device(address);
        (int status, JsonElement body) = await Send(device, HttpMethod.Post, "/api/hall/pair", new { code });
        Assert.Equal(200, status);
        Assert.Equal(guests, body.GetProperty("circle").GetString());
        return device;
    }

    /// <summary>Sends JSON and reads the answer's.</summary>
    public static async Task<(int Status, JsonElement Body)> Send(HttpClient client, HttpMethod method, string path, object? body = null)
    {
        using HttpRequestMessage request = new(method, path) { Content = body is null ? null : JsonContent.Create(body) };
        using HttpResponseMessage answer = await client.SendAsync(request);
        string text = await answer.Content.ReadAsStringAsync();
        bool isJson = answer.Content.Headers.ContentType?.MediaType == "application/json";
        return ((int)answer.StatusCode, isJson ? JsonDocument.Parse(text).RootElement.Clone() : default);
    }

    /// <summary>A playhead as a page tells it.</summary>
    public static object Tell(double count, string hand = "laptop", bool takes = false, double pace = 2, string view = "above")
        => new
        {
            hand,
            takes,
            playhead = new
            {
                at = 0.0,
                count,
                playing = true,
                pace,
                speed = 1.0,
                countIn = 0.0,
                waits = 0.0,
                loopFrom = (double?)null,
                loopTo = (double?)null,
                view,
            },
        };

    /// <summary>A dance as a page tells it.</summary>
    public static object TellDance(string title, string step, string hand = "laptop", bool takes = false)
        => new
        {
            hand,
            takes,
            title,
            eight = 8,
            floor = new
            {
                text = $"{title}\n\nsection 1\n1-2   {step}, touch L together\n",
                track = (string?)null,
                height = (double?)null,
                ending = false,
            },
        };
}
