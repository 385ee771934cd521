using System.Net;

namespace Coilwright.Web.Tests;

/// <summary>A page of another name that points at this computer reads nothing and changes nothing.</summary>
public sealed class KnownHostsTests
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("evil.example", false)]
    [InlineData("evil.example:5210", false)]
    [InlineData("localhost.evil.example", false)]
    [InlineData("10.0.0.7", false)]
    [InlineData("2130706433", false)]
    [InlineData("winding-room.local", true)]
    [InlineData("Winding-Room.local:5210", true)]
    [InlineData("localhost", true)]
    [InlineData("127.0.0.1", true)]
    [InlineData("127.8.9.10", true)]
    [InlineData("[::1]:5210", true)]
    public async Task Only_own_and_named_hosts_are_answered(string host, bool answered)
    {
        await using ServedShop shop = await ServedShop.StartAsync(null, "winding-room.local");
        using HttpRequestMessage read = new(HttpMethod.Get, "/shop") { Headers = { Host = host } };
        using HttpResponseMessage page = await shop.Client.SendAsync(read, Cancel);
        Assert.Equal(answered ? HttpStatusCode.OK : HttpStatusCode.MisdirectedRequest, page.StatusCode);

        using HttpRequestMessage write = new(HttpMethod.Post, "/room")
        {
            Headers = { Host = host },
            Content = Form(("room", "25"), ("person", "Mara")),
        };
        write.Headers.Add("Origin", "http://" + host);
        using HttpResponseMessage stored = await shop.Client.SendAsync(write, Cancel);
        Assert.Equal(answered, await shop.Services.Records.Room.LatestAsync(Cancel) is not null);
        string said = await page.Content.ReadAsStringAsync(Cancel);
        Assert.Equal(!answered, said.Contains("--host NAME", StringComparison.Ordinal));
    }

    internal static FormUrlEncodedContent Form(params (string Name, string Value)[] fields) =>
        new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
}
