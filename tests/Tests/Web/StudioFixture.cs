using System.Net.Http.Json;
using System.Text.Json;
using Scuff.App.Clubs;
using Scuff.App.Web;
using Scuff.Repertoire;

namespace Tests.Web;

/// <summary>A studio on a free port, with a club of its own in a folder that goes with it.</summary>
public sealed class StudioFixture : IAsyncLifetime
{
    private readonly string _folder = Path.Combine(Path.GetTempPath(), "scuff-web-" + Path.GetRandomFileName());
    private readonly List<string> _troubles = [];
    private Club? _club;
    private Studio? _studio;
    private StudioServer? _server;

    /// <summary>Its folder.</summary>
    public string Folder => _folder;

    /// <summary>Talks with it.</summary>
    public HttpClient Client { get; } = new();

    /// <summary>Troubles that the program told as its own: none in a good run.</summary>
    public IReadOnlyList<string> Troubles => _troubles;

    public async ValueTask InitializeAsync()
    {
        _club = Club.Open(_folder, TimeProvider.System, new DanceFactReader());
        _studio = new Studio(_club, TimeProvider.System, _troubles.Add);
        _server = await StudioServer.Start(_studio, 0);
        Client.BaseAddress = _server.Address;
    }

    public async ValueTask DisposeAsync()
    {
        Client.Dispose();
        if (_server is not null)
        {
            await _server.DisposeAsync();
        }

        _studio?.Dispose();
        _club?.Dispose();
        Directory.Delete(_folder, recursive: true);
    }

    /// <summary>Sends JSON and reads the answer's.</summary>
    public async Task<(int Status, JsonElement Body)> Send(HttpMethod method, string path, object? body)
    {
        using HttpRequestMessage request = new(method, path) { Content = body is null ? null : JsonContent.Create(body) };
        using HttpResponseMessage answer = await Client.SendAsync(request);
        string text = await answer.Content.ReadAsStringAsync();
        return ((int)answer.StatusCode, text.Length == 0 ? default : JsonDocument.Parse(text).RootElement.Clone());
    }
}
