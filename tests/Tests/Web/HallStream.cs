using System.Text.Json;

namespace Tests.Web;

/// <summary>What a screen in the hall is told, one change after the other.</summary>
internal sealed class HallStream : IDisposable
{
    private readonly HttpResponseMessage _answer;
    private readonly StreamReader _lines;

    private HallStream(HttpResponseMessage answer, Stream stream)
    {
        _answer = answer;
        _lines = new StreamReader(stream);
    }

    public static async Task<HallStream> Of(HttpClient device, CancellationToken stop)
    {
        using HttpRequestMessage request = new(HttpMethod.Get, "/api/hall/follow");
        HttpResponseMessage answer = await device.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
        answer.EnsureSuccessStatusCode();
        return new HallStream(answer, await answer.Content.ReadAsStreamAsync(stop));
    }

    /// <summary>The next change; null when the stream has ended.</summary>
    public async Task<JsonElement?> Next(CancellationToken stop)
    {
        while (true)
        {
            (string name, string content) = await Event(stop);
            if (name is "" or "shut")
            {
                return null;
            }

            if (name == "message")
            {
                return JsonDocument.Parse(content).RootElement.Clone();
            }
        }
    }

    /// <summary>Reads until a change with this number, or a later one.</summary>
    public async Task<JsonElement> Until(long number, CancellationToken stop)
    {
        while (await Next(stop) is { } news)
        {
            if (news.GetProperty("number").GetInt64() >= number)
            {
                return news;
            }
        }

        throw new EndOfStreamException("The hall was shut before.");
    }

    /// <summary>The next event with its name; empty when the stream has ended.</summary>
    public async Task<(string Name, string Content)> Event(CancellationToken stop)
    {
        string name = "message";
        string content = "";
        while (await _lines.ReadLineAsync(stop) is { } line)
        {
            if (line.StartsWith("event: ", StringComparison.Ordinal))
            {
                name = line[7..];
            }
            else if (line.StartsWith("data: ", StringComparison.Ordinal))
            {
                content = line[6..];
            }
            else if (line.Length == 0)
            {
                return (name, content);
            }
        }

        return ("", "");
    }

    public void Dispose()
    {
        _lines.Dispose();
        _answer.Dispose();
    }
}
